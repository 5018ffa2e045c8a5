"""A project that has to come near to a finished size becomes one with its rows, columns and border chosen.

Every number of rows and columns and every width of the outermost border on the ruler's marks is a candidate; the
nearest is taken, by what its width and its height are off together. Of equally near ones the one is taken whose border
is changed least, then the larger one: a quilt a little too large still covers.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from evenseam.exact import Number, Unit
from evenseam.pattern import Assumed, Border, Choosing, Fit, Project, Quantity, derived
from evenseam.problems import Report
from evenseam.sizing.any_centre import size_any_centre
from evenseam.sizing.borders import size_borders
from evenseam.sizing.codes import FIT_FAR_OFF, FIT_KEEPS_LAYOUT, NOTHING_FITS
from evenseam.sizing.finishing import size_finish
from evenseam.sizing.fit_layout import MOST_BLOCKS, columns_of, keeps_layout, laid_out, numbers, rows_of
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.on_point import settle_float
from evenseam.sizing.sized import SizedProject

BORDER_MARK = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}
"""Borders are widened by whole marks of this kind (common practice)."""
_MOST_WIDTHS = 200
_MOST_TRIED = 400
"""Candidates with a border of blocks that are tried, the nearest first."""
_FAR = Fraction(1, 10)
"""A side off by more than this share of what was asked for is told as a warning."""


_Side = tuple[int, Number]
"""A number of rows or columns, and the finished side it makes."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """One way to lay out a project, and what it comes to."""

    rows: int
    columns: int
    wider: Fraction
    """What the outermost border is wider than the author wrote."""
    width: Number
    """Finished."""
    height: Number

    def rank(self, fit: Fit) -> tuple[Number, Fraction, Number, int]:
        """Return what candidates are compared by: the least is the best."""
        off = _distance(self.width, fit.width.value) + _distance(self.height, fit.height.value)
        return off, self.wider, -(self.width + self.height), self.rows * self.columns


def fit_project(project: Project, report: Report) -> Project | None:
    """Return the project with rows, columns and border chosen.

    A project that has nothing to come near to is returned as it is. There is no project when nothing can be sized.
    """
    fit = project.fit
    if fit is None:
        return project
    if Choosing.ROWS_AND_COLUMNS in fit.may_choose and keeps_layout(project):
        report.add(
            FIT_KEEPS_LAYOUT, fit.place or project.place,
            f"blocks on point that differ are not repeated: there stay {project.arrangement.rows.number} rows of "
            f"{project.arrangement.columns.number}",
            hint="write `choose: borders`; or write one `block`, with or without `alternate`, which can be repeated",
        )  # fmt: skip
    best = choose(project, fit)
    if best is None:
        report.add(
            NOTHING_FITS, fit.place or project.place,
            f"no number of blocks comes to a size that can be made near {fit.width.number} × {fit.height.text}",
            hint="look at the size asked for and at the size of the blocks",
        )  # fmt: skip
        return None
    _report_far(fit, best, project, report)
    return _chosen(project, fit, best)


def choose(project: Project, fit: Fit) -> Candidate | None:
    """Return the nearest candidate that can be made.

    The width of a top follows from its columns and the height from its rows, so each is measured once for every
    number, and a border that is widened outermost adds twice as much to both.
    """
    may_count = Choosing.ROWS_AND_COLUMNS in fit.may_choose
    row_numbers = numbers(project, of_rows=True) if may_count else (rows_of(project),)
    column_numbers = numbers(project, of_rows=False) if may_count else (columns_of(project),)
    widths = [(number, _size(laid_out(project, rows_of(project), number))[0][0]) for number in column_numbers]
    heights = [(number, _size(laid_out(project, number, columns_of(project)))[0][1]) for number in row_numbers]
    # Only a border of blocks that does not come even keeps a candidate from being made.
    is_sure = all(border.pieced is None for border in project.borders)
    found: list[Candidate] = []
    for wider in _wider(project, fit):
        wanted = fit.width.value - 2 * wider, fit.height.value - 2 * wider
        near = _paired(_nearest(widths, wanted[0]), _nearest(heights, wanted[1]), wider) if is_sure else []
        found += near or _paired(widths, heights, wider)
    found.sort(key=lambda candidate: candidate.rank(fit))
    for candidate in found[:_MOST_TRIED]:
        if is_sure or _size(_with(project, candidate))[1]:
            return candidate
    return None


def _paired(widths: list[_Side], heights: list[_Side], wider: Fraction) -> list[Candidate]:
    return [
        Candidate(rows, columns, wider, width + 2 * wider, height + 2 * wider)
        for columns, width in widths
        for rows, height in heights
        if rows * columns <= MOST_BLOCKS
    ]


def _nearest(sides: list[_Side], wanted: Number) -> list[_Side]:
    """Return the numbers whose side is nearest to the one wanted: at most two, one below it and one above."""
    least: Number | None = None
    for _, side in sides:
        apart = _distance(side, wanted)
        least = apart if least is None or apart < least else least
    return [(number, side) for number, side in sides if _distance(side, wanted) == least]


def _distance(one: Number, other: Number) -> Number:
    apart = one - other
    return -apart if apart < 0 else apart


def _size(project: Project) -> tuple[tuple[Number, Number], bool]:
    """Return the finished size of a project, worked out like every other, and whether its borders come even."""
    ledger, report = Ledger(), Report()
    project = settle_float(project)
    centre = size_any_centre(project, ledger)
    borders = size_borders(project, centre.width, centre.height, ledger, report)
    last = borders[-1] if borders else centre
    ledger.enter("top_width", last.width)
    ledger.enter("top_height", last.height)
    width, height = size_finish(project.finish, project.seam_allowance, ledger)
    return (width.value, height.value), not report.has_errors()


def _widened(project: Project) -> Border | None:
    """Return the border that may be widened: the outermost, unless it is pieced from blocks."""
    border = project.borders[-1] if project.borders else None
    return border if border is not None and border.pieced is None else None


def _wider(project: Project, fit: Fit) -> Iterator[Fraction]:
    """Yield by how much the outermost border may be wider, on the ruler's marks, nothing first."""
    yield Fraction(0)
    border = _widened(project)
    if border is None or Choosing.BORDER_WIDTHS not in fit.may_choose or not isinstance(border.width.value, Fraction):
        return
    stated = border.width.value
    widest = 2 * stated if fit.widest_border is None else fit.widest_border.value
    mark = BORDER_MARK[project.unit]
    for step in range(1, _MOST_WIDTHS):
        wider = step * mark
        if stated + wider > widest:
            return
        yield wider


def _with(project: Project, chosen: Candidate) -> Project:
    """Return the project with what was chosen."""
    laid = laid_out(project, chosen.rows, chosen.columns)
    border = _widened(project)
    if not chosen.wider or border is None:
        return laid
    wider = replace(border, width=replace(border.width, value=border.width.value + chosen.wider))
    return replace(laid, borders=(*laid.borders[:-1], wider))


def _chosen(project: Project, fit: Fit, best: Candidate) -> Project:
    """Return the project with what was chosen, each figure with its reason."""
    chosen = laid_out(project, best.rows, best.columns)
    asked = f"{fit.width.number} × {fit.height.text}" + (f", {fit.name}" if fit.name else "")
    if Choosing.ROWS_AND_COLUMNS in fit.may_choose:
        arrangement = chosen.arrangement
        if len(numbers(project, of_rows=True)) > 1:
            beside = _neighbours(project, best.rows, of_rows=True)
            arrangement = replace(arrangement, rows=_counted("rows", best.rows, asked, beside))
        if len(numbers(project, of_rows=False)) > 1:
            beside = _neighbours(project, best.columns, of_rows=False)
            arrangement = replace(arrangement, columns=_counted("columns", best.columns, asked, beside))
        chosen = replace(chosen, arrangement=arrangement)
    border = _widened(project)
    if best.wider and border is not None:
        wider = Quantity(
            f"{border.name} widened by", best.wider, project.unit,
            Assumed(f"chosen so that the project comes nearest to {asked}", "the nearest of all that were compared"),
        )  # fmt: skip
        width = derived(border.width.name, border.width + wider, rule="widened to come near to the size asked for")
        chosen = replace(chosen, borders=(*chosen.borders[:-1], replace(border, width=width)))
    return replace(chosen, fit=None)


def _counted(name: str, number: int, asked: str, beside: str) -> Quantity:
    reason = f"chosen so that the project comes nearest to {asked}" + (f"; {beside}" if beside else "")
    return Quantity(name, Fraction(number), Unit.COUNT, Assumed(reason, "the nearest of all that were compared"))


def _neighbours(project: Project, number: int, *, of_rows: bool) -> str:
    """Return what one fewer and one more would come to, with the border as the author wrote it."""
    known = numbers(project, of_rows=of_rows)
    said = []
    for other in (max((n for n in known if n < number), default=0), min((n for n in known if n > number), default=0)):
        if not other:
            continue
        rows, columns = (other, columns_of(project)) if of_rows else (rows_of(project), other)
        side = _size(laid_out(project, rows, columns))[0][1 if of_rows else 0]
        length = Quantity("side", side, project.unit, Assumed("worked out"))
        said.append(f"{other} {'rows' if of_rows else 'columns'} come to {length.text}")
    return " and ".join(said) + (", before any border is widened" if said and _widened(project) else "")


_SMALLER_BLOCKS = "use smaller blocks, or let the outermost border become wider: `widest border`"
_WIDER_ROWS = (
    "unequal rows are repeated downwards only: put more, or fewer, blocks into each row; or let the outermost border "
    "become wider: `widest border`"
)


def _report_far(fit: Fit, best: Candidate, project: Project, report: Report) -> None:
    for side, asked in ((best.width, fit.width), (best.height, fit.height)):
        if _distance(side, asked.value) > _FAR * asked.value:
            found = Quantity("side", side, project.unit, Assumed("worked out"))
            report.add(
                FIT_FAR_OFF, fit.place or project.place,
                f"the nearest that can be made comes to {found.text} where {asked.text} is asked for",
                hint=_WIDER_ROWS if project.arrangement.unequal_rows and side is best.width else _SMALLER_BLOCKS,
            )  # fmt: skip
            return


def fitted_figures(project: Project, sized: SizedProject) -> tuple[tuple[str, Quantity], ...]:
    """Return the size that was asked for, and by how much the project is larger; below zero where it is smaller.

    `project` is the one before anything was chosen.
    """
    fit = project.fit
    if fit is None:
        return ()
    rule = "what it comes to, less what was asked for"
    found: tuple[tuple[str, Quantity], ...] = (
        ("fit_width", fit.width),
        ("fit_height", fit.height),
        ("fit_width_more", derived("wider than asked for", sized.finished_width - fit.width, rule=rule)),
        ("fit_height_more", derived("higher than asked for", sized.finished_height - fit.height, rule=rule)),
    )
    if fit.drop is not None:
        found = (*found, ("fit_drop", fit.drop))
    border = _widened(project)
    if border is not None and Choosing.BORDER_WIDTHS in fit.may_choose:
        widest = fit.widest_border or derived(f"widest {border.name}", 2 * border.width, rule="twice its own width")
        found = (*found, ("fit_border_from", border.width), ("fit_border_to", widest))
    return found
