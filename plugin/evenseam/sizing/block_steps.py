"""The steps that make one block: its sections, and the seams that join them."""

from __future__ import annotations

from evenseam.geometry import Polygon
from evenseam.pattern import Block, JoinPieces, Method, PatchUse, PieceSection, Quantity, Step, TrimPart, derived
from evenseam.piecing import PiecedBlock, SectionJoin
from evenseam.sizing.block_cuts import cut_groups, cuts_by_piece
from evenseam.sizing.ledger import named_after
from evenseam.sizing.rotary import is_upright_rectangle
from evenseam.sizing.rotary_units import RotaryUnits, part_slug
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.unit_squares import chosen_ways, make_units


def block_steps(sized: SizedProject, pieced: PiecedBlock) -> tuple[list[Step], str]:
    """Return the steps of one block, each done for as many blocks as stand in the project, and the block's workpiece.

    A block of a single rotary piece needs no step: its workpiece is the cut.
    """
    block = sized.project.block(pieced.block)
    times = sized.figure(f"{named_after(block.id, 'block')}_count").whole
    cuts = cuts_by_piece(cut_groups(block, pieced, sized))
    whole = f"{block.id}-block"
    steps: list[Step] = []
    parts: dict[str, str] = {}
    if block.method is Method.FOUNDATION:
        for section in pieced.sections:
            is_whole = len(pieced.sections) == 1
            makes = whole if is_whole else f"{block.id}-section-{section.name.lower()}"
            id = f"piece-{block.id}" if is_whole else f"piece-{block.id}-{section.name.lower()}"
            patches = tuple(PatchUse(member.piece, member.label, cuts[member.piece]) for member in section.pieces)
            measures = _measured(sized, block, section.name, section.outline)
            steps.append(Step(id, PieceSection(block.id, section.name, patches), makes, times, measures))
            parts[section.name] = makes
    else:
        return _rotary_steps(sized, block, pieced, cuts)
    outlines = {section.name: section.outline for section in pieced.sections}
    for join in pieced.joins:
        is_last = join is pieced.joins[-1]
        makes = whole if is_last else part_slug(block.id, join.makes)
        id = f"join-{part_slug(block.id, join.makes)}"
        outlines[join.makes] = _together(block, join)
        measures = _measured(sized, block, join.makes, outlines[join.makes])
        operation = JoinPieces(
            block.id, parts[join.first], join.first_pieces, parts[join.second], join.second_pieces, join.press
        )
        steps.append(Step(id, operation, makes, times, measures))
        parts[join.makes] = makes
    return steps, parts[pieced.joins[-1].makes if pieced.joins else pieced.sections[0].name]


def _rotary_steps(
    sized: SizedProject, block: Block, pieced: PiecedBlock, cuts: dict[str, str]
) -> tuple[list[Step], str]:
    """Return the steps of a block cut to size: each unit once, as often as it is needed, trimmed where it must be."""
    if not pieced.joins:
        return [], cuts[pieced.sections[0].pieces[0].piece]
    blocks = sized.figure(f"{named_after(block.id, 'block')}_count").whole
    found = RotaryUnits.of(block, pieced, sized.project)
    parts = {section.name: cuts[section.pieces[0].piece] for section in pieced.sections}
    for name, unit in found.used.items():
        is_whole = unit is found.units[-1]
        parts[name] = f"{block.id}-block" if is_whole else part_slug(block.id, unit.join.makes)
    steps: list[Step] = []
    ways = {way.pieces: way for way in chosen_ways(block, pieced, sized)}
    replaced = {id for way in ways.values() for id in way.method.steps}
    for unit in found.units:
        if unit.pieces in ways:
            way, made = ways[unit.pieces], _measured(sized, block, unit.join.makes, _together(block, unit.join))
            steps.append(make_units(way, parts[unit.join.makes], sized, made))
        if f"join-{part_slug(block.id, unit.join.makes)}" in replaced:
            continue
        join, times = unit.join, blocks * unit.in_block
        makes, slug = parts[join.makes], part_slug(block.id, join.makes)
        outline = _together(block, join)
        measures = _measured(sized, block, join.makes, outline)
        operation = JoinPieces(
            block.id, parts[join.first], join.first_pieces, parts[join.second], join.second_pieces, join.press,
            tuple(unit.also),
        )  # fmt: skip
        if not unit.is_trimmed:
            steps.append(Step(f"join-{slug}", operation, makes, times, None if unit.loose else measures))
            continue
        untrimmed = f"{makes}-untrimmed"
        steps.append(Step(f"join-{slug}", operation, untrimmed, times, None))
        trim = TrimPart(block.id, untrimmed, unit.pieces, sized.project.seam_allowance)
        steps.append(Step(f"trim-{slug}", trim, makes, times, measures))
    return steps, parts[pieced.joins[-1].makes]


def _together(block: Block, join: SectionJoin) -> Polygon:
    """Return the bounds of two joined parts if they fill them, or a shape that is no rectangle if they do not."""
    members = {*join.first_pieces, *join.second_pieces}
    outlines = [piece.outline for piece in block.pieces if piece.id in members]
    corners = tuple(corner for outline in outlines for corner in outline.corners)
    left, top, right, bottom = Polygon(corners).bounds
    area = sum((outline.area for outline in outlines[1:]), start=outlines[0].area)
    bounds = Polygon.rectangle(left, top, right - left, bottom - top)
    return bounds if area == bounds.area else Polygon(bounds.corners[:3])


def _measured(sized: SizedProject, block: Block, part: str, outline: Polygon) -> tuple[Quantity, Quantity] | None:
    """Return what a part measures from raw edge to raw edge; None for a part that is no upright rectangle."""
    if not is_upright_rectangle(outline):
        return None
    seam = sized.project.seam_allowance
    left, top, right, bottom = outline.bounds
    across, down = block.scale
    width, height = (right - left) * across, (bottom - top) * down
    name = named_after(block.id, "block")
    if width == block.width.value and height == block.height.value:
        return sized.figure(f"{name}_raw_width"), sized.figure(f"{name}_raw_height")
    return (
        derived(f"unfinished width of {part} of {block.name}", block.width * (width / block.width.value) + 2 * seam),
        derived(
            f"unfinished height of {part} of {block.name}", block.height * (height / block.height.value) + 2 * seam
        ),
    )
