"""Cut sizes that lie on no mark of the ruler: a warning, with the sizes that would."""

from __future__ import annotations

from evenseam.exact import Direction, Rounding, Unit, format_length, is_multiple
from evenseam.pattern import Derived, Project, Quantity
from evenseam.problems import Report
from evenseam.sizing.codes import OFF_THE_RULER
from evenseam.sizing.ledger import Ledger

_CUT_SIZES = ("_strip_width", "_strip_length", "_sash_length", "cornerstone_size", "_cut_width", "_cut_height", "_cut_length", "_square")  # fmt: skip


def check_ruler(project: Project, ledger: Ledger, report: Report) -> None:
    """Warn once for every stated size that puts a cut size off the ruler, and for cut sizes that are off by themselves."""
    mark = project.unit.ruler_mark
    told: set[Quantity] = set()
    for name, figure in ledger.as_tuple():
        if not name.endswith(_CUT_SIZES) or figure.unit is not project.unit or is_multiple(figure.value, mark):
            continue
        culprits = [stated for stated in _stated(figure) if not is_multiple(stated.value, mark)] or [figure]
        for culprit in culprits:
            if culprit in told:
                continue
            told.add(culprit)
            down, up = (
                format_length(Rounding("ruler", mark, way).apply(culprit.value), project.unit)
                for way in (Direction.DOWN, Direction.UP)
            )
            cut = "" if culprit is figure else f", so that {figure.name} would be {figure.text}"
            report.add(
                OFF_THE_RULER, culprit.place or project.place,
                f"{culprit.name} is {culprit.text}{cut}: on no mark of a ruler with marks every "
                f"{format_length(mark, project.unit)}",
                hint=f"the nearest sizes that can be cut are {down} and {up}",
            )  # fmt: skip


def _stated(figure: Quantity) -> list[Quantity]:
    """Return the lengths a figure was worked out from, down to those that were stated or re-drafted."""
    if not isinstance(figure.because, Derived) or figure.because.rounding is not None:
        return [figure] if figure.unit is not Unit.COUNT else []
    return [leaf for part in figure.because.expression.quantities for leaf in _stated(part)]
