"""A project as the author decided it becomes a project with every size and position worked out."""

from __future__ import annotations

from dataclasses import replace

from evenseam.pattern import Method, Project
from evenseam.piecing import PiecedBlock, piece_block
from evenseam.problems import Outcome, Report
from evenseam.sizing.any_centre import size_any_centre
from evenseam.sizing.border_blocks import border_blocks, count_border_blocks
from evenseam.sizing.border_checks import check_borders
from evenseam.sizing.borders import size_borders
from evenseam.sizing.centre import blocks_used
from evenseam.sizing.checks import check_before_sizing, check_sized
from evenseam.sizing.codes import FIGURE_NAME_TAKEN
from evenseam.sizing.envelope import settle_overlap
from evenseam.sizing.finishing import size_finish, size_hanging
from evenseam.sizing.fit import fit_project, fitted_figures
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.off_ruler import check_ruler
from evenseam.sizing.on_point import settle_float
from evenseam.sizing.on_point_checks import check_floated
from evenseam.sizing.outlined import check_outlined, outlined_block, place_outlined, size_outlined_finish
from evenseam.sizing.patches import size_patches
from evenseam.sizing.placing import place_pieces
from evenseam.sizing.redraft import redraft
from evenseam.sizing.rotary import size_rotary_pieces
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.standing import draw_standing
from evenseam.sizing.thin_pieces import check_thin
from evenseam.sizing.unit_squares import check_units


def size_project(project: Project) -> Outcome[SizedProject]:
    """Re-draft a project if its edition needs it and work out every figure of it.

    The report holds the problems of the drawing of its blocks too. With an error there is no value.
    """
    report = Report()
    outcome = redraft(project)
    report.problems += outcome.problems
    if outcome.value is None or outcome.errors:
        return Outcome(None, report.as_tuple())
    fitted = fit_project(outcome.value, report)
    if fitted is None:
        return Outcome(None, report.as_tuple())
    project = draw_standing(fitted)
    check_before_sizing(project, report)
    check_borders(project, report)
    pieced: list[PiecedBlock] = []
    for id in dict.fromkeys((*blocks_used(project), *border_blocks(project))):
        sewn = piece_block(project.block(id))
        report.problems += sewn.problems
        if sewn.value is not None:
            pieced.append(sewn.value)
    if report.has_errors():
        return Outcome(None, report.as_tuple())
    sized = _work_out(settle_float(project), tuple(pieced), report)
    sized = replace(sized, figures=(*sized.figures, *fitted_figures(outcome.value, sized)))
    return Outcome(None if report.has_errors() else sized, report.as_tuple())


def _work_out(project: Project, pieced: tuple[PiecedBlock, ...], report: Report) -> SizedProject:
    ledger = Ledger()
    seam = ledger.enter("seam_allowance", project.seam_allowance)
    ledger.enter("usable_width", project.usable_width)
    centre = size_any_centre(project, ledger)
    for sewn in pieced:
        block = project.block(sewn.block)
        if block.method is Method.FOUNDATION:
            ledger.enter("patch_margin", project.patch_margin)
            size_patches(block, sewn, project, ledger)
        else:
            size_rotary_pieces(block, sewn, project, ledger)
    borders = size_borders(project, centre.width, centre.height, ledger, report)
    count_border_blocks(project, blocks_used(project), borders, ledger)
    last = borders[-1] if borders else centre
    top_width = ledger.work_out("top_width", last.width, rule="raw edge to raw edge of the sewn top")
    top_height = ledger.work_out("top_height", last.height, rule="raw edge to raw edge of the sewn top")
    shaped = outlined_block(project)
    if shaped is None:
        finished_width, finished_height = size_finish(project.finish, seam, ledger)
    else:
        finished_width, finished_height = size_outlined_finish(project, shaped, ledger)
        check_outlined(project, shaped, report)
    size_hanging(project.hanging, seam, ledger)
    check_sized(project, ledger, report)
    check_floated(project, ledger, report)
    if ledger.taken:
        report.add(
            FIGURE_NAME_TAKEN, project.place,
            f"different figures would have the same names: {', '.join(dict.fromkeys(ledger.taken))}",
            hint="rename the block or border they come from",
        )  # fmt: skip
    placed, outline = place_outlined(project, shaped) if shaped else (place_pieces(project, centre, borders), None)
    sized = SizedProject(
        settle_overlap(project, ledger), pieced, ledger.as_tuple(), top_width, top_height, finished_width,
        finished_height, placed, outline,
    )  # fmt: skip
    if not report.has_errors():
        check_ruler(sized, report)
        check_units(sized, report)
        check_thin(sized, report)
    return sized
