"""What a finish and a hanging must satisfy; every mistake at once, each with its place."""

from __future__ import annotations

from evenseam.exact import format_length
from evenseam.pattern import Bound, CornerPockets, EnvelopeBack, Faced, Grain, KnifeEdge, Loops, Project, Rings
from evenseam.problems import Report
from evenseam.sizing.binding_width import binding_seam
from evenseam.sizing.codes import (
    BINDING_COVERS_BLOCKS,
    BINDING_SHOWS_TOO_LITTLE,
    CORNERS_TOO_ROUND,
    FINISH_DOES_NOT_FIT,
    HANGING_NOT_CAUGHT,
    HANGING_TOO_LARGE,
    ROUNDED_CORNERS_NEED_BIAS,
)
from evenseam.sizing.ledger import Ledger


def check_edges(project: Project, ledger: Ledger, report: Report) -> None:
    """Report what is wrong about the edge of a sized project and what it hangs by."""
    match project.finish:
        case Bound() as finish:
            _check_binding(project, finish, report)
            _check_corners(project, finish, ledger, report)
        case Faced() as finish:
            _check_facing(finish, ledger, report)
        case KnifeEdge() as finish:
            _check_knife_edge(project, finish, ledger, report)
        case EnvelopeBack() as finish:
            _check_envelope(finish, ledger, report)
    _check_hanging(project, ledger, report)


def _check_binding(project: Project, finish: Bound, report: Report) -> None:
    shows, seam = finish.binding.shows, project.seam_allowance
    if shows is None:
        return
    if shows.value < seam.value:
        report.add(
            BINDING_SHOWS_TOO_LITTLE, shows.place or finish.place,
            f"a binding that shows {shows.text} does not reach the seam lines, which lie {seam.text} inside the edge",
            hint=f"let it show {seam.text} or more",
        )  # fmt: skip
    elif shows.value > seam.value and not project.borders:
        over = format_length(shows.value - seam.value, project.unit)
        report.add(
            BINDING_COVERS_BLOCKS, shows.place or finish.place,
            f"a binding that shows {shows.text} covers {over} of the blocks all round; points there lose their tips",
            hint=f"let it show {seam.text}, or put a border round the blocks",
        )  # fmt: skip


def _check_corners(project: Project, finish: Bound, ledger: Ledger, report: Report) -> None:
    radius = finish.corner_radius
    if radius is None:
        return
    if finish.binding.grain is not Grain.BIAS:
        report.add(
            ROUNDED_CORNERS_NEED_BIAS, radius.place or finish.place,
            "binding cut along the straight grain does not lie flat round a curve",
            hint="write `grain: bias` under the binding, or leave the corners square",
        )  # fmt: skip
    shorter = min((ledger["finished_width"], ledger["finished_height"]), key=lambda side: side.value)
    if 2 * radius.value > shorter.value:
        report.add(
            CORNERS_TOO_ROUND, radius.place or finish.place,
            f"two corners with a radius of {radius.text} do not fit on an edge of {shorter.text}",
            hint="write a smaller radius",
        )  # fmt: skip
    front = binding_seam(finish.binding, project.seam_allowance)
    if radius.value <= 2 * front.value:
        report.add(
            CORNERS_TOO_ROUND, radius.place or finish.place,
            f"a binding that shows {front.text} cannot be sewn flat round corners with a radius of {radius.text}",
            hint="write a larger radius: a saucer or a small plate serves to draw round",
        )  # fmt: skip


def _check_facing(finish: Faced, ledger: Ledger, report: Report) -> None:
    width, shorter = ledger["facing_finished_width"], min(
        (ledger["finished_width"], ledger["finished_height"]), key=lambda side: side.value
    )  # fmt: skip
    if not 0 < 2 * width.value <= shorter.value:
        report.add(
            FINISH_DOES_NOT_FIT, finish.facing_width.place or finish.place,
            f"a facing cut {finish.facing_width.text} wide lies {width.text} wide on the back of a project "
            f"{shorter.text} across",
            hint="cut the strips so wide that at least half an inch is left, and less than half of the project",
        )  # fmt: skip


def _check_knife_edge(project: Project, finish: KnifeEdge, ledger: Ledger, report: Report) -> None:
    stop, shorter = finish.quilting_stop, min(
        (ledger["finished_width"], ledger["finished_height"]), key=lambda side: side.value
    )  # fmt: skip
    if stop.value <= project.seam_allowance.value:
        report.add(
            FINISH_DOES_NOT_FIT, stop.place or finish.place,
            f"quilting that stops {stop.text} inside the edge does not let {project.seam_allowance.text} be folded in",
            hint="stop the quilting further inside",
        )  # fmt: skip
    elif 2 * stop.value >= shorter.value:
        report.add(
            FINISH_DOES_NOT_FIT, stop.place or finish.place,
            f"quilting that stops {stop.text} inside the edge leaves nothing to quilt on {shorter.text}",
            hint="let the quilting come nearer to the edge",
        )  # fmt: skip


def _check_envelope(finish: EnvelopeBack, ledger: Ledger, report: Report) -> None:
    overlap, height = ledger["back_overlap"], ledger["finished_height"]
    if overlap.value + 2 * finish.hem.value >= height.value:
        report.add(
            FINISH_DOES_NOT_FIT, finish.overlap.place or finish.place,
            f"back panels that overlap by {overlap.text} leave no way into a cover {height.text} high",
            hint="let them overlap less: a quarter of the height is usual",
        )  # fmt: skip


def _check_hanging(project: Project, ledger: Ledger, report: Report) -> None:
    hanging, finish = project.hanging, project.finish
    if hanging is None:
        return
    if isinstance(finish, EnvelopeBack):
        report.add(
            HANGING_NOT_CAUGHT, hanging.place, "a cushion cover has nothing to hang by",
            hint="leave `hanging` out, or write `hanging: none` in this size",
        )  # fmt: skip
    elif isinstance(finish, KnifeEdge) and isinstance(hanging, CornerPockets):
        report.add(
            HANGING_NOT_CAUGHT, hanging.place, "no seam catches corner pockets when the edges are folded in",
            hint="hang it by a sleeve, by loops or by rings, or finish it another way",
        )  # fmt: skip
    width, height = ledger["finished_width"], ledger["finished_height"]
    if isinstance(hanging, Loops):
        wide = ledger["loop_finished_width"]
        if not 0 < wide.value * hanging.number.value <= width.value or ledger["loop_shows"].value <= 0:
            report.add(
                HANGING_TOO_LARGE, hanging.place,
                f"{hanging.number.text} loops, each {wide.text} wide and showing {ledger['loop_shows'].text}, do not "
                f"fit along an edge of {width.text}",
                hint="cut fewer or narrower loops, and each at least a few inches long",
            )  # fmt: skip
    if isinstance(hanging, Rings) and hanging.drop.value >= height.value / 2:
        report.add(
            HANGING_TOO_LARGE, hanging.drop.place or hanging.place,
            f"rings {hanging.drop.text} below the top edge would let a project {height.text} high fall forward",
            hint="sew them nearer to the top edge",
        )  # fmt: skip
