"""The finish and the hanging: layers, edges, binding, sleeve and pockets, sized.

What a finish does to the size is decided here. A turned edge is sewn at the pattern's seam allowance round the raw
top, so the outermost strips lose exactly the seam allowance they were cut with and finish at the width the author
gave. A bound edge keeps the raw size: the binding is sewn on at the same seam allowance, covers what would be the
seam allowance of the outermost strips, and again leaves them their full finished width to see.
"""

from __future__ import annotations

from evenseam.pattern import (
    Bound,
    CornerPockets,
    EnvelopeBack,
    Faced,
    Finish,
    Hanging,
    KnifeEdge,
    Loops,
    Quantity,
    Rings,
    Sleeve,
    Turned,
)
from evenseam.sizing.binding_width import binding_seam
from evenseam.sizing.envelope import size_envelope
from evenseam.sizing.faced import size_facing, size_knife_edge, size_seamed_edge
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.loops import size_loops_or_rings
from evenseam.sizing.rods import size_rod, weigh

_TURNED_SOURCE = "Pre-Bind a Quilt, pillowcase method, Fabric Mill"
_LAYERS_SOURCE = "Preparing Your Quilt, Log House Quilting"
_BINDING_SOURCE = "Tips and Tricks, onceuponaquilt"
_SLEEVE_SOURCE = "Instructions for Making Sleeves, International Quilt Association"


def size_finish(finish: Finish, seam: Quantity, ledger: Ledger) -> tuple[Quantity, Quantity]:
    """Work out the finished size, the layers and the edge; enter every figure and return finished width and height."""
    width, height = ledger["top_width"], ledger["top_height"]
    match finish:
        case Turned():
            rule = "the turning seam takes one seam allowance from every edge of the raw top"
            size = (
                ledger.work_out("finished_width", width - 2 * seam, rule=rule, source=_TURNED_SOURCE),
                ledger.work_out("finished_height", height - 2 * seam, rule=rule, source=_TURNED_SOURCE),
            )
        case Faced() | KnifeEdge() | EnvelopeBack():
            size = size_seamed_edge(finish, seam, ledger)
        case Bound():
            rule = "bound at the raw size of the top: the binding covers the outer seam allowance"
            size = (
                ledger.work_out("finished_width", width, rule=rule),
                ledger.work_out("finished_height", height, rule=rule),
            )
    _size_layers(finish, ledger)
    way_round = ledger.work_out("way_round", 2 * (size[0] + size[1]), label="way round the finished project")
    match finish:
        case Turned():
            ledger.enter("opening_length", finish.opening)
            ledger.enter("topstitch_distance", finish.topstitch)
        case Bound():
            ledger.enter("backing_seam", finish.backing_seam)
            _size_binding(finish, way_round, seam, ledger)
        case Faced():
            size_facing(finish, seam, ledger)
        case KnifeEdge():
            size_knife_edge(finish, ledger)
        case EnvelopeBack():
            size_envelope(finish, ledger)
    return size


def _size_binding(finish: Bound, way_round: Quantity, seam: Quantity, ledger: Ledger) -> None:
    strip = ledger.enter("binding_strip_width", finish.binding.strip_width)
    extra = ledger.enter("binding_extra_length", finish.binding.extra_length)
    rule = "the way round, with something over for the corners and the join"
    ledger.work_out("binding_length", way_round + extra, rule=rule, source=_BINDING_SOURCE)
    ledger.work_out("binding_folded_width", strip / 2, rule="folded in half along its length")
    front = binding_seam(finish.binding, seam)
    ledger.work_out("binding_front_width", front, rule="the seam it is sewn on with; the rest folds to the back")
    if finish.corner_radius is not None:
        radius = ledger.enter("corner_radius", finish.corner_radius)
        ledger.work_out("corner_circle_width", 2 * radius, label="width of something round to draw the corners by")


def _size_layers(finish: Finish, ledger: Ledger) -> None:
    for layer, overage in (("backing", finish.backing_overage), ("batting", finish.batting_overage)):
        ledger.enter(f"{layer}_overage", overage)
        for side in ("width", "height"):
            ledger.work_out(
                f"{layer}_{side}", ledger[f"top_{side}"] + 2 * overage,
                rule=f"the raw top, and {overage.text} more on each of the two sides", source=_LAYERS_SOURCE,
            )  # fmt: skip


def size_hanging(hanging: Hanging | None, seam: Quantity, ledger: Ledger) -> None:
    """Work out what the project hangs by, its rod and its weight; enter every figure."""
    match hanging:
        case Sleeve():
            depth = ledger.enter("sleeve_cut_width", hanging.cut_depth)
            extra, hem = ledger.enter("sleeve_cut_extra", hanging.cut_extra), ledger.enter("sleeve_hem", hanging.hem)
            length = ledger.work_out("sleeve_cut_length", ledger["finished_width"] + extra, source=_SLEEVE_SOURCE)
            ledger.work_out(
                "sleeve_finished_length", length - 2 * hem,
                rule="a hem is turned under at either end", source=_SLEEVE_SOURCE,
            )  # fmt: skip
            ledger.work_out(
                "sleeve_finished_depth", (depth - 2 * seam) / 2,
                rule="sewn into a tube with one seam, and laid flat", source=_SLEEVE_SOURCE,
            )  # fmt: skip
            ledger.enter("sleeve_drop", hanging.drop)
        case CornerPockets():
            ledger.enter("corner_pocket_square", hanging.square)
        case Loops() | Rings():
            size_loops_or_rings(hanging, seam, ledger)
    if hanging is not None:
        size_rod(hanging, seam, ledger)
        weigh(ledger)
