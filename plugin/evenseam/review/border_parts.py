"""Two versions of a border become what the author decided otherwise about its blocks and corners, in words."""

from __future__ import annotations

from collections.abc import Iterator

from evenseam.pattern import Border, BorderCorners, Project

_STRIPS = "plain strips"
_SQUARES = "plain squares"


def border_text(border: Border, project: Project) -> str:
    """Return what a border is made of, for one that is new or gone."""
    if border.pieced is not None:
        return f"of {_blocks(border, project)}"
    return f"{border.width.text} wide, in {project.fabric(border.fabric).name}"


def blocks_of_borders(
    before: Border, old: Project, after: Border, new: Project
) -> Iterator[tuple[str, tuple[str, str]]]:
    """Yield what of two versions is compared and how each says it; nothing for plain strips on both sides."""
    if before.pieced is None and after.pieced is None:
        return
    yield "pieces", (_blocks(before, old), _blocks(after, new))
    if before.pieced is not None and after.pieced is not None:
        yield "corner blocks", (_corners(before, old), _corners(after, new))
        spacers = [border.pieced is not None and border.pieced.spacer_fabric is not None for border in (before, after)]
        yield "spacer strips", ("allowed" if spacers[0] else "none", "allowed" if spacers[1] else "none")


def has_order(border: Border) -> bool:
    """Tell whether it matters which strips are sewn on first."""
    return border.pieced is None and border.corners in (BorderCorners.BUTTED, BorderCorners.CORNERSTONES)


def corner_fabric(border: Border) -> str | None:
    """Return the fabric of the squares at the corners; None where there are none."""
    has_corners = border.corners is BorderCorners.CORNERSTONES
    if border.pieced is not None:
        has_corners = border.pieced.corner_block is None
    return (border.corner_fabric or border.fabric) if has_corners else None


def _blocks(border: Border, project: Project) -> str:
    return _STRIPS if border.pieced is None else f"{project.block(border.pieced.block).name} blocks"


def _corners(border: Border, project: Project) -> str:
    corner = border.pieced.corner_block if border.pieced else None
    return _SQUARES if corner is None else f"{project.block(corner).name} blocks"
