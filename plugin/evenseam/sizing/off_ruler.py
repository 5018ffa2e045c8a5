"""Cut sizes that lie on no mark of the ruler: a warning, with the sizes that would."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, Unit, format_length, is_multiple
from evenseam.pattern import Block, Cut, CutShape, Derived, Quantity, TrimPart
from evenseam.problems import Report
from evenseam.sizing.block_steps import block_steps
from evenseam.sizing.codes import OFF_THE_RULER
from evenseam.sizing.cut_list import cut_list
from evenseam.sizing.sized import SizedProject


def check_ruler(sized: SizedProject, report: Report) -> None:
    """Warn once for each stated length, or block drawn on a grid, that puts cut sizes off the ruler.

    Foundation patches are rounded up to a mark and batting is cut with scissors: neither is looked at.
    """
    mark = sized.project.unit.ruler_mark
    told: set[str] = set()
    for cut in cut_list(sized).cuts:
        if cut.shape is CutShape.PATCH:
            continue
        for size, side in ((cut.width, "wide"), (cut.height, "high")):
            if is_multiple(size.value, mark):
                continue
            culprits = _culprits(size, sized)
            for culprit in culprits:
                if culprit.name not in told:
                    told.add(culprit.name)
                    _tell_length(culprit, cut, size, sized, report)
            block_id = cut.part.removeprefix("block:")
            if not culprits and cut.part.startswith("block:") and cut.part not in told:
                told.add(cut.part)
                what = f"{cut.label} would be cut"
                _tell_grid(sized.project.block(block_id), what, size, side, sized, report)
    _check_trims(sized, report, told)


def _check_trims(sized: SizedProject, report: Report, told: set[str]) -> None:
    """Warn where units of triangles would be trimmed to no mark; the squares they are cut from always lie on one."""
    mark = sized.project.unit.ruler_mark
    for pieced in sized.blocks:
        block = sized.project.block(pieced.block)
        for step in block_steps(sized, pieced)[0]:
            if not isinstance(step.operation, TrimPart) or step.measures is None or f"block:{block.id}" in told:
                continue
            for size, side in zip(step.measures, ("wide", "high"), strict=True):
                if not is_multiple(size.value, mark) and not _culprits(size, sized):
                    told.add(f"block:{block.id}")
                    _tell_grid(block, f"a unit of {block.name} would be trimmed to", size, side, sized, report)
                    break


def _culprits(size: Quantity, sized: SizedProject) -> list[Quantity]:
    return [stated for stated in _stated(size) if _is_to_blame(stated, sized)]


def _tell_length(culprit: Quantity, cut: Cut, size: Quantity, sized: SizedProject, report: Report) -> None:
    unit = sized.project.unit
    report.add(
        OFF_THE_RULER, culprit.place or sized.project.place,
        f"{culprit.name} is {culprit.text}, so that {cut.label} would be cut {size.text}: on no mark of a ruler with "
        f"marks every {format_length(unit.ruler_mark, unit)}",
        hint=f"the nearest sizes that can be cut are {_either_side(culprit.value, unit.ruler_mark, Fraction(1), unit)}",
    )  # fmt: skip


def _tell_grid(block: Block, what: str, size: Quantity, side: str, sized: SizedProject, report: Report) -> None:
    unit, whole, cells = block.width.unit, block.width, block.grid_width
    if side == "high":
        whole, cells = block.height, block.grid_height
    cell, mark = whole.value / cells, unit.ruler_mark
    message = f"{what} {size.text} {side}: on no mark of a ruler with marks every "
    if is_multiple(cell, mark):
        finished = size.value - 2 * sized.project.seam_allowance.value
        message += format_length(mark, unit)
        hint = f"draw it to finish {_either_side(finished, mark, Fraction(1), unit, 'or')} {side}"
    else:
        message += (
            f"{format_length(mark, unit)}, because a grid cell of {block.name} finishes at {format_length(cell, unit)}"
        )
        hint = f"the nearest sizes whose grid can be cut are {_either_side(cell, mark, cells, unit)} {side}"
    report.add(OFF_THE_RULER, whole.place or block.place, message, hint=hint)


def _either_side(length: Number, mark: Fraction, times: Number, unit: Unit, word: str = "and") -> str:
    """Return the marks below and above a length, each taken so many times."""
    found = [Rounding("ruler", mark, way).apply(length) for way in (Direction.DOWN, Direction.UP)]
    return f" {word} ".join(format_length(at * times, unit) for at in found if at > 0)


def _is_to_blame(stated: Quantity, sized: SizedProject) -> bool:
    # A seam allowance is always taken twice: 0.75 cm is on no mark, but 1.5 cm is.
    times = 2 if stated is sized.project.seam_allowance else 1
    return not is_multiple(times * stated.value, sized.project.unit.ruler_mark)


def _stated(figure: Quantity) -> list[Quantity]:
    """Return the lengths a figure was worked out from, down to those that were stated or re-drafted."""
    if not isinstance(figure.because, Derived) or figure.because.rounding is not None:
        return [figure] if figure.unit is not Unit.COUNT else []
    return [leaf for part in figure.because.expression.quantities for leaf in _stated(part)]
