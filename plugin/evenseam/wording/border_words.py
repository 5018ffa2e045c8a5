"""Borders in words: strips to opposite edges, mitred corners, passing strips, and strips of blocks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from evenseam.pattern import (
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    Border,
    JoinRun,
    PiecedBorder,
    Quantity,
    Run,
    Step,
)
from evenseam.sizing.ledger import named_after
from evenseam.wording.scribe import Scribe
from evenseam.wording.workpieces import Workpieces


def border_facts(scribe: Scribe) -> list[dict[str, Any]]:
    """Return what is told of every border beside the others: its width, and for one of blocks what was worked out."""
    return [_facts(scribe, border) for border in scribe.sheet.project.borders]


def _facts(scribe: Scribe, border: Border) -> dict[str, Any]:
    project = scribe.sheet.project
    facts: dict[str, Any] = {"name": border.name, "width": border.width, "is_pieced": border.pieced is not None}
    if border.pieced is None:
        return {**facts, "fabric": project.fabric(border.fabric).name}
    ring = Ring.of(scribe, border, border.pieced)
    return {
        **facts,
        "fabric": "",
        "block": project.block(border.pieced.block).name,
        "across": ring.across,
        "down": ring.down,
        "side_spacer": ring.side_spacer,
        "top_spacer": ring.top_spacer,
        "is_filled_alike": ring.is_filled_alike,
    }


@dataclass(frozen=True, slots=True)
class Ring:
    """What was worked out for a border of blocks."""

    across: Quantity
    down: Quantity
    side_spacer: Quantity | None
    top_spacer: Quantity | None

    @property
    def is_filled_alike(self) -> bool:
        """Tell whether all four spacer strips are equally wide."""
        one, other = self.side_spacer, self.top_spacer
        return one is not None and other is not None and one.value == other.value

    @staticmethod
    def of(scribe: Scribe, border: Border, pieced: PiecedBorder) -> Ring:
        """Find the figures of one border; they are named after it."""
        figures = dict(scribe.sheet.sized.figures)
        known = {name.removeprefix(_stem(border)): figure for name, figure in figures.items()}
        return Ring(
            known["blocks_across"], known["blocks_down"], known.get("side_spacer_width"), known.get("top_spacer_width")
        )


@dataclass(frozen=True, slots=True)
class BorderWords:
    """Says the steps of borders."""

    scribe: Scribe
    pieces: Workpieces

    def strips(self, adding: AddBorderStrips) -> dict[str, Any]:
        """Return what the words for two strips at opposite edges are filled with, all but the pressing."""
        border, is_across = self._border(adding.border), adding.run is Run.ACROSS
        sides, across = self._edges(is_across=is_across)
        sizes = self._strip_size(adding.strip, adding.quarter_turns)
        steps = [step.operation for step in self.scribe.sheet.program.steps]
        first = next(one for one in steps if isinstance(one, AddBorderStrips) and one.border == adding.border)
        what = "strips"
        fabric = self.scribe.sheet.project.fabric(border.fabric)
        if border.pieced is not None:
            cut = next((cut for cut in self.scribe.sheet.cuts.cuts if cut.id == adding.strip), None)
            what = "spacers" if cut is not None and cut.part.startswith("border:") else "blocks"
            fabric = self.scribe.sheet.project.fabric(cut.material) if cut is not None else fabric
        return {
            "border": border.name,
            "what": what,
            "is_first": first == adding,
            "sides": sides,
            "across": across,
            "length": sizes[1] if is_across else sizes[0],
            "fabric": fabric.name,
            "is_directional": fabric.is_directional and what != "blocks",
            "is_turned": bool(adding.quarter_turns or adding.opposite_turns),
            "has_corners": what == "blocks" and not is_across,
        }

    def strip_of(self, step: Step) -> dict[str, Any]:
        """Return which border and sides a joined strip is for."""
        for other in self.scribe.sheet.program.steps:
            match other.operation:
                case AddBorderStrips() as adding if step.makes in (adding.strip, adding.opposite):
                    sides, _ = self._edges(is_across=adding.run is Run.ACROSS)
                    if adding.opposite is not None:
                        sides = (sides[step.makes == adding.opposite],)
                    return {"border": self._border(adding.border).name, "sides": sides, **self._blocks(step)}
                case AddMitredBorder() as adding if step.makes in (adding.sides, adding.top_bottom):
                    sides, _ = self._edges(is_across=step.makes == adding.sides)
                    return {**_NO_BLOCKS, "border": "", "sides": sides, "borders": self._names(adding)}
        return {"border": "", "sides": (), **_NO_BLOCKS}

    def mitred(self, adding: AddMitredBorder) -> dict[str, Any]:
        """Return what the words for mitred borders are filled with."""
        project = self.scribe.sheet.project
        borders = [self._border(id) for id in adding.borders]
        outer = borders[-1]
        figures = dict(self.scribe.sheet.sized.figures)
        fabric = project.fabric(outer.fabric)
        return {
            "borders": self._names(adding),
            "inside": (figures[f"{_stem(borders[0])}inside_width"], figures[f"{_stem(borders[0])}inside_height"]),
            "ease": figures[f"{_stem(outer)}mitre_ease"],
            "is_directional": any(project.fabric(border.fabric).is_directional for border in borders),
            "fabric": fabric.name,
        }

    def partial(self, adding: AddPartialSeamBorder) -> dict[str, Any]:
        """Return what the words for passing strips are filled with."""
        border = self._border(adding.border)
        fabric = self.scribe.sheet.project.fabric(border.fabric)
        cuts = self.scribe.sheet.cuts
        return {
            "border": border.name,
            "top_length": cuts.cut(adding.top_bottom).width,
            "side_length": cuts.cut(adding.sides).height,
            "is_square": cuts.cut(adding.top_bottom).width.value == cuts.cut(adding.sides).height.value,
            "is_directional": fabric.is_directional,
            "fabric": fabric.name,
        }

    def _blocks(self, step: Step) -> dict[str, Any]:
        """Return what a strip of blocks is made of; nothing of the kind for other strips."""
        if not isinstance(step.operation, JoinRun) or self.pieces.run_kind(step) != "block_strip":
            return _NO_BLOCKS
        parts = step.operation.parts
        inner = parts[len(parts) // 2]
        ends = [self.pieces.called(part) for part in (parts[0], parts[-1]) if part != inner]
        is_block = bool(ends) and ends[0].kind == "block"
        return {
            "borders": (),
            "block": self.pieces.called(inner),
            "block_count": sum(part == inner for part in parts),
            "end": ends[0] if ends else None,
            "ends_are_blocks": is_block,
        }

    def _names(self, adding: AddMitredBorder) -> tuple[str, ...]:
        return tuple(self._border(id).name for id in adding.borders)

    def _border(self, id: str) -> Border:
        return next(border for border in self.scribe.sheet.project.borders if border.id == id)

    def _edges(self, *, is_across: bool) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """Return the two edges strips are sewn to, and the other two."""
        edges = self.scribe.language.words["edges"]
        left_right, top_bottom = (edges["left"], edges["right"]), (edges["top"], edges["bottom"])
        return (left_right, top_bottom) if is_across else (top_bottom, left_right)

    def _strip_size(self, strip: str, quarter_turns: int) -> tuple[Quantity, Quantity]:
        """Return width and height of a border strip as it is sewn on: as cut, or as sewn when it was joined."""
        maker = next((step for step in self.scribe.sheet.program.steps if step.makes == strip), None)
        if maker is not None and maker.measures is not None:
            size = maker.measures
        else:
            cut = self.scribe.sheet.cuts.cut(strip)
            size = (cut.width, cut.height)
        return (size[1], size[0]) if quarter_turns % 2 else size


_NO_BLOCKS: dict[str, Any] = {
    "borders": (), "block": None, "block_count": 0, "end": None, "ends_are_blocks": False,
}  # fmt: skip


def _stem(border: Border) -> str:
    """Return what the names of a border's figures begin with."""
    return named_after(border.id, "border") + "_"
