r"""Projects that are no rectangle: one block with any convex outline, by itself, turned or bound.

::

       ___________
      /           \        finished: the outline of the block; raw: a seam allowance beyond every edge, corners mitred.
     /             \       Backing and batting are cut as rectangles round the raw outline, and trimmed to it.
     \             /
      \___________/
"""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, format_length
from evenseam.geometry import Point, Polygon, length_of, mitred_offset, without_straight_corners
from evenseam.pattern import Block, Bound, Expression, Project, Quantity, Setting, Turned
from evenseam.problems import Report
from evenseam.sizing.centre import Centre
from evenseam.sizing.codes import NOT_YET, OPENING_TOO_LONG
from evenseam.sizing.ledger import Ledger, named_after
from evenseam.sizing.rotary import is_upright_rectangle
from evenseam.sizing.sized import Placed
from evenseam.sizing.standing_shapes import stand

_RAW = "reach of the outline and of its seam allowance, corners mitred"
_LAYER = "a rectangle round the raw outline, with the overage on each side"
_ROUND = "all edges of the outline"
_EXTRA = "the way round, with something over for the corners and the join"


def outlined_block(project: Project) -> Block | None:
    """Return the block whose outline is the project's, if it is no rectangle and stands by itself."""
    positions = [position for row in project.arrangement.positions for position in row]
    block = project.block(positions[0].block)
    return block if len(positions) == 1 and not is_upright_rectangle(block.outline) else None


def check_outlines(project: Project, report: Report) -> None:
    """Report blocks that are no rectangles where they cannot be: among others, or with what goes round rectangles."""
    arrangement = project.arrangement
    positions = [position for row in arrangement.positions for position in row]
    for id in dict.fromkeys(position.block for position in positions):
        block = project.block(id)
        if is_upright_rectangle(block.outline):
            continue
        is_alone = len(positions) == 1 and arrangement.setting is Setting.STRAIGHT and not arrangement.sashing
        what = _cannot_be(project) if is_alone else "cannot be arranged with others yet"
        if what:
            report.add(
                NOT_YET, block.place, f"{block.name} is no rectangle; a block of another shape {what}",
                hint="let it be the whole project, without borders, turned or bound, or draw it inside a rectangle "
                "with background in the corners",
            )  # fmt: skip


def _cannot_be(project: Project) -> str:
    """Return what a project of another shape cannot be yet; nothing for one that can be sewn."""
    position, finish = project.arrangement.positions[0][0], project.finish
    if project.borders:
        return "cannot have borders"
    if position.quarter_turns or position.is_mirrored:
        return "cannot be turned or mirrored: draw it as it stands"
    if project.hanging is not None:
        return "cannot be hung yet"
    if isinstance(finish, Bound) and (finish.corner_radius is not None or finish.binding.shows is not None):
        return "is bound with the pattern's own seam allowance and plain corners"
    return "" if isinstance(finish, (Turned, Bound)) else "is turned or bound, not finished otherwise yet"


def finished_outline(block: Block) -> Polygon:
    """Return the seam lines of a block at its finished size, clockwise, without straight corners."""
    return without_straight_corners(block.outline.scaled(*block.scale).clockwise())


def size_outlined(project: Project, block: Block, ledger: Ledger) -> Centre:
    """Work out the one block and the raw outline round it; enter every figure."""
    seam, name = project.seam_allowance, named_after(block.id, "block")
    ledger.enter("rows", project.arrangement.rows)
    ledger.enter("columns", project.arrangement.columns)
    ledger.enter(f"{name}_width", block.width)
    ledger.enter(f"{name}_height", block.height)
    wide, high = _reach(finished_outline(block))
    raw_wide, raw_high = _reach(mitred_offset(finished_outline(block), seam.value))
    across, down = (
        block.width + seam * ((raw_wide - wide) / seam.value),
        block.height + seam * ((raw_high - high) / seam.value),
    )
    ledger.work_out(f"{name}_raw_width", across, label=f"unfinished width of {block.name}", rule=_RAW)
    ledger.work_out(f"{name}_raw_height", down, label=f"unfinished height of {block.name}", rule=_RAW)
    ledger.count(f"{name}_count", 1, f"number of {block.name} blocks", "they stand in the arrangement")
    ledger.work_out("block_count", ledger["rows"] * ledger["columns"])
    return Centre(
        1, 1, block.width, block.height, None,
        ledger.work_out("centre_width", across, rule=_RAW), ledger.work_out("centre_height", down, rule=_RAW),
    )  # fmt: skip


def size_outlined_finish(project: Project, block: Block, ledger: Ledger) -> tuple[Quantity, Quantity]:
    """Work out the finished size, layers and edge of a project of any outline; enter every figure."""
    finish, seam = project.finish, project.seam_allowance
    outline = finished_outline(block)
    up = Rounding("cut size", project.unit.ruler_mark, Direction.UP)
    for layer, overage in (("backing", finish.backing_overage), ("batting", finish.batting_overage)):
        ledger.enter(f"{layer}_overage", overage)
        for side in ("width", "height"):
            ledger.work_out(f"{layer}_{side}", ledger[f"top_{side}"] + 2 * overage, rule=_LAYER, rounding=up)
    if isinstance(finish, Turned):
        rule = "the turning seam takes the seam allowance from every edge"
        size = (
            ledger.work_out("finished_width", block.width * 1, rule=rule),
            ledger.work_out("finished_height", block.height * 1, rule=rule),
        )
        ledger.work_out("way_round", _way_round(block, outline), label="way round the finished project", rule=_ROUND)
        ledger.enter("opening_length", finish.opening)
        ledger.enter("topstitch_distance", finish.topstitch)
        return size
    assert isinstance(finish, Bound)  # checked before
    longest = block.width * (_longest(outline) / block.width.value)
    ledger.work_out("longest_edge", longest, label="longest edge of the outline")
    rule = "bound at the raw outline of the top: the binding covers the outer seam allowance"
    size = (
        ledger.work_out("finished_width", ledger["top_width"] * 1, rule=rule),
        ledger.work_out("finished_height", ledger["top_height"] * 1, rule=rule),
    )
    corners = seam * (2 * _at_corners(outline))
    rule = "all edges of the outline, and what its seam allowance adds at the corners"
    way = ledger.work_out(
        "way_round", _way_round(block, outline) + corners, label="way round the finished project", rule=rule
    )
    ledger.enter("backing_seam", finish.backing_seam)
    strip = ledger.enter("binding_strip_width", finish.binding.strip_width)
    extra = ledger.enter("binding_extra_length", finish.binding.extra_length)
    ledger.work_out("binding_length", way + extra, rule=_EXTRA, rounding=up)
    ledger.work_out("binding_folded_width", strip / 2, rule="folded in half along its length")
    ledger.work_out("binding_front_width", seam, rule="the seam it is sewn on with; the rest folds to the back")
    return size


def check_outlined(project: Project, block: Block, report: Report) -> None:
    """Report an opening that is on no edge of the outline."""
    if not isinstance(project.finish, Turned):
        return
    opening, longest = project.finish.opening, _longest(finished_outline(block))
    if opening.value >= longest:
        report.add(
            OPENING_TOO_LONG, opening.place or project.finish.place,
            f"the opening is {opening.text} long, but no edge of the project is longer than "
            f"{format_length(longest, project.unit)}",
            hint="leave about half of one edge open",
        )  # fmt: skip


def opening_edge(block: Block, opening: Quantity) -> str:
    """Return the edge that is left open: a level one at the bottom if it is long enough, or else the longest."""
    outline = finished_outline(block)
    _, _, _, bottom = outline.bounds
    for start, end in outline.edges:
        if start.y == end.y == bottom and length_of(end - start) > opening.value:
            return "bottom"
    return "longest"


def place_outlined(project: Project, block: Block) -> tuple[tuple[Placed, ...], Polygon]:
    """Return what is seen of the finished project, and its outline, both from the top left corner of its bounds."""
    position = project.arrangement.positions[0][0]
    pieces = stand(block, position)
    inner = finished_outline(block)
    outer, binding = inner, list[Placed]()
    if isinstance(project.finish, Bound):
        outer = mitred_offset(inner, project.seam_allowance.value)
        left, top, _, _ = outer.bounds
        step = Point(-left, -top)
        pieces = tuple((fabric, outline.moved(step)) for fabric, outline in pieces)
        outer, inner = outer.moved(step), inner.moved(step)
        fabric = project.finish.binding.fabric
        binding = [
            Placed(Polygon((start, end, inner_end, inner_start)), fabric, "binding")
            for (start, end), (inner_start, inner_end) in zip(outer.edges, inner.edges, strict=True)
        ]
    placed = [Placed(outline, fabric, f"block:{block.id}", 0, 0) for fabric, outline in pieces]
    return (*placed, *binding), outer


def _way_round(block: Block, outline: Polygon) -> Expression:
    """Return the formula for the length of all edges, as a share of the width they follow from."""
    total: Number = Fraction(0)
    for start, end in outline.edges:
        total = total + length_of(end - start)
    return block.width * (total / block.width.value)


def _at_corners(outline: Polygon) -> Number:
    """Return the cotangents of half the angles at all corners: how far each edge of the raw outline runs on there."""
    total: Number = Fraction(0)
    corners = outline.corners
    for before, here, after in zip((corners[-1], *corners), corners, (*corners[1:], corners[0]), strict=False):
        one, two = before - here, after - here
        total = total + (length_of(one) * length_of(two) + one.dot(two)) / two.cross(one)
    return total


def _longest(outline: Polygon) -> Number:
    lengths = [length_of(end - start) for start, end in outline.edges]
    return max(lengths)


def _reach(outline: Polygon) -> tuple[Number, Number]:
    left, top, right, bottom = outline.bounds
    return right - left, bottom - top
