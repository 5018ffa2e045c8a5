"""Parts that are the same under another name: what ids of one version are called in the other."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Renames:
    """New ids by old ones, for parts that are the same under another name."""

    fabrics: tuple[tuple[str, str], ...] = ()
    borders: tuple[tuple[str, str], ...] = ()
    blocks: tuple[tuple[str, str], ...] = ()

    def fabric(self, old: str) -> str:
        """Return the id a fabric has now."""
        return dict(self.fabrics).get(old, old)

    def part(self, old: str) -> str:
        """Return what a part of the project is called now: border:outer-border."""
        kind, _, id = old.partition(":")
        known = {"border": dict(self.borders), "block": dict(self.blocks)}.get(kind, {})
        return f"{kind}:{known.get(id, id)}" if id else old

    def within(self, old: str) -> str:
        """Return an id that begins with the id of a border or block, as it begins now."""
        for before, after in sorted((*self.borders, *self.blocks), key=lambda pair: -len(pair[0])):
            if old == before or old.startswith(f"{before}-"):
                return after + old[len(before) :]
        return old

    def step(self, old: str) -> str:
        """Return what a step is called now: its id has the id of a border or block in it."""
        for before, after in self.blocks:
            for stem in ("piece", "join"):
                if old == f"{stem}-{before}" or old.startswith(f"{stem}-{before}-"):
                    return f"{stem}-{after}{old[len(stem) + 1 + len(before) :]}"
        return self.within(old)
