"""Edges without binding: faced, or a knife edge, sized, cut and sewn.

A facing takes one seam allowance from every edge, and so does an edge folded in: both finish at the size of the top
less its outer seam allowances, like a turned edge.
"""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import (
    Assumed,
    CloseKnifeEdge,
    Cut,
    CutShape,
    EnvelopeBack,
    Face,
    Faced,
    KnifeEdge,
    Quantity,
    Step,
    StripJoin,
    TrimForKnifeEdge,
)
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.sized import SizedProject

FACING_SIDES = "facing-sides"
FACING_TOP_BOTTOM = "facing-top-bottom"


def size_seamed_edge(
    finish: Faced | KnifeEdge | EnvelopeBack, seam: Quantity, ledger: Ledger
) -> tuple[Quantity, Quantity]:
    """Return the finished width and height of an edge that is sewn and turned, or folded in, all round."""
    match finish:
        case Faced():
            rule = "the seam of the facing takes one seam allowance from every edge of the raw top"
        case KnifeEdge():
            rule = "every edge is folded in by one seam allowance"
        case EnvelopeBack():
            rule = "the seam round the back panels takes one seam allowance from every edge of the raw top"
    return (
        ledger.work_out("finished_width", ledger["top_width"] - 2 * seam, rule=rule),
        ledger.work_out("finished_height", ledger["top_height"] - 2 * seam, rule=rule),
    )


def size_facing(finish: Faced, seam: Quantity, ledger: Ledger) -> None:
    """Work out the facing strips and enter every figure.

    The sides are faced first, over the whole raw height. They are turned before the top and bottom strips are sewn
    on, which reach over the turned sides and a seam allowance beyond them at either end, to be folded in: the raw
    width of the top once more.
    """
    ledger.enter("backing_seam", finish.backing_seam)
    width = ledger.enter("facing_strip_width", finish.facing_width)
    fold = ledger.enter("facing_fold", finish.facing_fold)
    ledger.work_out(
        "facing_finished_width", width - seam - fold,
        rule="one edge is sewn on, the other one is turned under",
    )  # fmt: skip
    ledger.work_out(
        "facing_side_strip_length", ledger["top_height"],
        label="length of the facing strips for the sides", rule="as long as the squared-up sides",
    )  # fmt: skip
    ledger.work_out(
        "facing_top_strip_length", ledger["finished_width"] + 2 * seam,
        label="length of the facing strips for top and bottom",
        rule="as wide as the project with its sides turned, and a seam allowance to fold in at either end",
    )  # fmt: skip


def size_knife_edge(finish: KnifeEdge, ledger: Ledger) -> None:
    """Enter the figures of an edge that is folded in."""
    ledger.enter("backing_seam", finish.backing_seam)
    ledger.enter("quilting_stop", finish.quilting_stop)
    ledger.enter("edge_stitch_distance", finish.stitch)


def facing_cuts(sized: SizedProject, finish: Faced) -> list[Cut]:
    """Return the strips of a facing."""
    strip, fabric = sized.figure("facing_strip_width"), finish.facing_fabric
    # Nobody sees which way a print runs on the back.
    two = Quantity("number of facing strips", Fraction(2), Unit.COUNT, Assumed("one for each edge", "counted"))
    return [
        Cut(
            FACING_SIDES, "side strips of the facing", fabric, CutShape.STRIP, strip,
            sized.figure("facing_side_strip_length"), two, "facing", join=StripJoin.DIAGONAL,
        ),
        Cut(
            FACING_TOP_BOTTOM, "top and bottom strips of the facing", fabric, CutShape.STRIP,
            sized.figure("facing_top_strip_length"), strip, two, "facing", join=StripJoin.DIAGONAL,
        ),
    ]  # fmt: skip


def facing_steps(sized: SizedProject, finish: Faced, trimmed: str, edged: str) -> list[Step]:
    """Return the steps from the squared-up project to the faced one."""
    face = Face(trimmed, FACING_SIDES, FACING_TOP_BOTTOM, sized.project.seam_allowance, finish.facing_fold)
    return [Step("face", face, edged, 1, (sized.finished_width, sized.finished_height))]


def knife_edge_steps(sized: SizedProject, finish: KnifeEdge, quilted: str, edged: str) -> list[Step]:
    """Return the steps from the quilted layers to the project with its edges folded in."""
    seam, raw = sized.project.seam_allowance, (sized.top_width, sized.top_height)
    finished = (sized.finished_width, sized.finished_height)
    return [
        Step("trim-edges", TrimForKnifeEdge(quilted, seam), "trimmed-for-knife-edge", 1, raw),
        Step("close-edges", CloseKnifeEdge("trimmed-for-knife-edge", seam, finish.stitch), edged, 1, finished),
    ]
