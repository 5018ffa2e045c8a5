"""Two finished tops side by side at one scale, with what differs between them marked on both."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Number
from evenseam.geometry import Polygon
from evenseam.publish.html_text import colour, escape
from evenseam.review import PlacedChanges
from evenseam.sheet import PatternSheet
from evenseam.sizing import Placed

LARGEST = 420
"""Drawing units of the longer side of the larger top."""
ROOM = 6


@dataclass(frozen=True, slots=True)
class Marks:
    """Pieces to mark on one top, by how they are marked."""

    changed: tuple[Placed, ...]
    """There on one side only, or of another size or fabric: a full line."""
    moved: tuple[Placed, ...]
    """The same piece elsewhere: dots."""


def marks_of(found: PlacedChanges) -> tuple[Marks, Marks]:
    """Return what is marked before and after."""
    pairs = (*found.recoloured, *found.reshaped)
    before = Marks((*found.removed, *(old for old, _ in pairs)), tuple(old for old, _ in found.moved))
    after = Marks((*found.added, *(new for _, new in pairs)), tuple(new for _, new in found.moved))
    return before, after


def common_scale(old: PatternSheet, new: PatternSheet) -> Fraction:
    """Return drawing units for one unit of the project, so that both tops fit and can be held against each other."""
    sides = [
        side.value
        for sheet in (old, new)
        for side in (sheet.sized.finished_width, sheet.sized.finished_height)
    ]  # fmt: skip
    return Fraction(LARGEST) / max(Fraction(float(side)) for side in sides)


def draw_top(sheet: PatternSheet, marks: Marks, scale: Fraction, title: str) -> str:
    """Return one top as SVG: its cloth, the lines between its pieces, and the marks over them."""
    width, height = (
        float(side.value) * float(scale) for side in (sheet.sized.finished_width, sheet.sized.finished_height)
    )
    colours = {fabric.id: fabric.colour for fabric in sheet.project.fabrics}
    shapes = [
        f'<path class="cloth" fill="{colour(colours.get(fabric, ""))}" d="{path}"/>'
        for fabric, path in _by_fabric(sheet.sized.placed, scale).items()
    ]
    for kind, pieces in (("moved", marks.moved), ("changed", marks.changed)):
        if pieces:
            path = "".join(_path(placed.outline, scale) for placed in pieces)
            halo = f'<path class="halo" d="{path}"/>' if kind == "changed" else ""
            shapes.append(f'{halo}<path class="{kind}" d="{path}"/>')
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{escape(title)}" '
        f'width="{width + 2 * ROOM:.0f}" height="{height + 2 * ROOM:.0f}" '
        f'viewBox="{-ROOM} {-ROOM} {width + 2 * ROOM:.1f} {height + 2 * ROOM:.1f}">' + "".join(shapes) + "</svg>"
    )


def _by_fabric(placed: Iterable[Placed], scale: Fraction) -> Mapping[str, str]:
    paths: dict[str, list[str]] = {}
    for piece in placed:
        paths.setdefault(piece.fabric, []).append(_path(piece.outline, scale))
    return {fabric: "".join(parts) for fabric, parts in paths.items()}


def _path(outline: Polygon, scale: Fraction) -> str:
    points = [f"{_written(corner.x, scale)} {_written(corner.y, scale)}" for corner in outline.corners]
    return f"M{'L'.join(points)}Z"


def _written(value: Number, scale: Fraction) -> str:
    return f"{float(value) * float(scale):.1f}".removesuffix(".0")
