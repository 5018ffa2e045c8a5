"""From two derivations of one figure to the reasons why its value differs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from evenseam.pattern import Quantity
from evenseam.review.changes import Cause, InputCause, OwnCause, PartCause, in_order
from evenseam.review.derivation import Derivations, is_counted
from evenseam.review.part_words import block_words
from evenseam.review.parts import PartsCompared
from evenseam.sheet import PatternSheet

_ARRANGED = ("rows", "columns")


class Causes:
    """Knows what the author's two projects differ in, and which of it moves a figure.

    A figure is moved by the figures at the ends of its derivation whose values differ. Where the derivation itself has
    another shape, what the author decided otherwise about the same part of the project moves it as well.
    """

    def __init__(self, old: PatternSheet, new: PatternSheet, parts: PartsCompared) -> None:
        self.parts = parts.causes
        self._derivations = Derivations()
        self._now = dict(parts.leaf_names)
        before = self._by_name(_figures(old), renamed=True)
        after = self._by_name(_figures(new), renamed=False)
        self._one_sided = set(before) ^ set(after)
        differing = [
            (before[name], after[name]) for name in before if name in after and _differ(before[name], after[name])
        ]
        self._inputs = _grouped(differing, _block_names(old), _block_names(new))
        self.inputs = tuple(dict.fromkeys(self._inputs.values()))
        """All figures of the author, and usual figures, that differ."""

    def of(self, old: Iterable[Quantity], new: Iterable[Quantity], scope: str) -> tuple[Cause, ...]:
        """Return why figures of one part of the project differ; `scope` names the part as a cut does."""
        old, new = tuple(old), tuple(new)
        found: list[Cause] = []
        for before, after in zip(old, new, strict=False):
            if before.value != after.value or before.unit is not after.unit:
                found += self._of_one(before, after, scope)
        return in_order(found) or self.of_part(scope)

    def of_input(self, cause: InputCause) -> tuple[Cause, ...]:
        """Return why an input differs: itself, unless it is a usual figure that goes with another decision."""
        if not _is_usual(cause):
            return (cause,)
        finish = [part for part in self.parts if part.part == "finish" and part.about == ""]
        # What is usual depends on the finish, and on how large the blocks are together.
        sizes = [
            each for each in self.inputs if not _is_usual(each) and each.subject.endswith(("arrangement", " block"))
        ]
        return in_order([*finish, *([] if finish else sizes)]) or (cause,)

    def of_part(self, scope: str) -> tuple[Cause, ...]:
        """Return why a part of the project is there, gone or made otherwise."""
        near: list[Cause] = [cause for cause in self.parts if _touches(cause, scope)]
        return in_order(near or self._arrangement() or self._others()) or (OwnCause(),)

    def _of_one(self, old: Quantity, new: Quantity, scope: str) -> list[Cause]:
        before = self._by_name((old,), renamed=True)
        after = self._by_name((new,), renamed=False)
        found: list[Cause] = []
        for name in dict.fromkeys((*before, *after)):
            if name in self._inputs:
                found += self.of_input(self._inputs[name])
            elif name in self._one_sided:
                found += [part for part in self.parts if name in part.leaves]
        if self._counts_differ(old, new):
            found += self._arrangement()
        if self._derivations.shape(old) != self._derivations.shape(new):
            found += [part for part in self.parts if _touches(part, scope)]
        return found

    def _arrangement(self) -> list[Cause]:
        inputs: list[Cause] = [self._inputs[name] for name in _ARRANGED if name in self._inputs]
        return inputs + [part for part in self.parts if part.part in ("layout", "blocks")]

    def _others(self) -> list[Cause]:
        return [part for part in self.parts if part.about != "name"] or list(self.inputs)

    def _counts_differ(self, old: Quantity, new: Quantity) -> bool:
        before, after = (
            sorted(str(leaf.value) for leaf in self._derivations.leaves(figure) if is_counted(leaf))
            for figure in (old, new)
        )
        return before != after

    def _by_name(self, figures: Iterable[Quantity], *, renamed: bool) -> dict[str, Quantity]:
        found: dict[str, Quantity] = {}
        for figure in figures:
            for leaf in sorted(self._derivations.leaves(figure), key=lambda leaf: (leaf.name, str(leaf.value))):
                if not is_counted(leaf):
                    found.setdefault(self._now.get(leaf.name, leaf.name) if renamed else leaf.name, leaf)
        return found


def subject_of(name: str, blocks: Mapping[str, str]) -> str:
    """Return what a figure of the author belongs to, for figures that are told in one breath."""
    if name in _ARRANGED:
        return "arrangement"
    for side in (" block width", " block height"):
        if name.endswith(side):
            id = name.removesuffix(side)
            return block_words(blocks.get(id, id))
    return name


def _grouped(
    differing: list[tuple[Quantity, Quantity]], old_blocks: Mapping[str, str], new_blocks: Mapping[str, str]
) -> dict[str, InputCause]:
    subjects: dict[tuple[str, str], list[tuple[Quantity, Quantity]]] = {}
    for old, new in differing:
        names = (subject_of(old.name, old_blocks), subject_of(new.name, new_blocks))
        subjects.setdefault(names, []).append((old, new))
    causes: dict[str, InputCause] = {}
    for (old_name, name), figures in subjects.items():
        # Width before height, columns after rows: in the order of their names whichever revision is called old.
        ordered = tuple(sorted(figures, key=lambda pair: _order(pair[1].name)))
        for _, new in figures:
            causes[new.name] = InputCause(name, ordered, "" if name == old_name else old_name)
    return causes


def _block_names(sheet: PatternSheet) -> dict[str, str]:
    return {block.id: block.name for block in sheet.project.blocks}


def _order(name: str) -> tuple[bool, str]:
    return name.endswith(("height", "columns")), name


def _figures(sheet: PatternSheet) -> Iterable[Quantity]:
    for _, figure in sheet.figures:
        yield figure
    for cut in sheet.cuts.cuts:
        yield from (cut.width, cut.height, cut.count)
    for material in sheet.materials:
        yield from (material.needed, material.buy)


def _differ(old: Quantity, new: Quantity) -> bool:
    return old.value != new.value or old.unit is not new.unit


def _is_usual(cause: Cause) -> bool:
    """Tell whether nobody gave the figures, before or after."""
    return isinstance(cause, InputCause) and all(side.place is None for pair in cause.figures for side in pair)


def _touches(cause: PartCause, scope: str) -> bool:
    if cause.about == "name":
        return False
    if scope in ("", cause.part) or scope.startswith(f"{cause.part}-"):
        return True
    kind = cause.part.partition(":")[0]
    match scope.partition(":")[0]:
        case "block":
            return kind == "layout"
        case "sashing" | "layout" | "setting" | "spacer":
            return kind in ("layout", "sashing", "setting")
        case "border":
            return kind in ("layout", "borders") or _is_structural(cause)
        case "backing" | "batting" | "binding":
            return kind in ("finish", "layout") or _is_structural(cause)
        case "hanging":
            return kind == "layout" or _is_structural(cause)
        case _:
            return False


def _is_structural(cause: PartCause) -> bool:
    """Tell whether a decision changes how large the top is, whatever the figures."""
    structural = {"sashing": ("", "reach"), "setting": ("float",)}
    return cause.about in structural.get(cause.part, ()) or (cause.part.startswith("border:") and cause.about == "")
