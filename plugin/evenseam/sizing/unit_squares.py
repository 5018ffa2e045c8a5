"""Units that the author has sewn from whole squares: the squares to cut, and the step that sews them."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.pattern import Block, Cut, CutShape, MakeUnits, Method, Quantity, Step, UnitMethodKind
from evenseam.piecing import PiecedBlock
from evenseam.problems import Report
from evenseam.sizing.codes import UNIT_METHOD_UNUSED
from evenseam.sizing.rotary_units import RotaryUnits, part_slug
from evenseam.sizing.sized import SizedProject
from evenseam.sizing.unit_methods import UnitMethod, chosen_units

ON_CORNERS = (UnitMethodKind.CORNER_SQUARES, UnitMethodKind.ONE_GOOSE)
"""Ways that sew squares on the corners of a whole piece."""


@dataclass(frozen=True, slots=True)
class ChosenWay:
    """One unit of a block and the way it is sewn."""

    slug: str
    """Of the unit: lantern-a-b."""
    method: UnitMethod
    places: tuple[tuple[str, ...], ...]
    """Where in the block the unit is used, piece for piece; the first of them is the unit's own place."""
    everywhere: frozenset[str]
    """The pieces of the unit in all its places."""
    corners: tuple[int, ...] = ()
    """For squares on corners: which of the method's squares each piece is made of, piece for piece."""

    @property
    def pieces(self) -> tuple[str, ...]:
        """Piece ids of the unit."""
        return self.method.pieces

    def cut_id(self, number: int) -> str:
        """Return the cut id of one of the method's squares."""
        return f"{self.slug}-squares-{number + 1}"


def chosen_ways(block: Block, pieced: PiecedBlock, sized: SizedProject) -> tuple[ChosenWay, ...]:
    """Return the units of a block that are sewn from whole squares, in sewing order."""
    if block.unit_method is None:
        return ()
    units = RotaryUnits.of(block, pieced, sized.project)
    return tuple(
        ChosenWay(
            part_slug(block.id, unit.join.makes), method, (unit.pieces, *unit.also),
            units.everywhere(unit), _corners(block, units, method),
        )
        for unit, method in chosen_units(sized, pieced, units)
    )  # fmt: skip


def chosen_methods(sized: SizedProject) -> tuple[UnitMethod, ...]:
    """Return the ways the author chose, block by block, in sewing order."""
    pairs = [(sized.project.block(pieced.block), pieced) for pieced in sized.blocks]
    return tuple(way.method for block, pieced in pairs for way in chosen_ways(block, pieced, sized))


def check_units(sized: SizedProject, report: Report) -> None:
    """Warn of a block whose author chose to sew units from whole squares, where it has none."""
    for pieced in sized.blocks:
        block = sized.project.block(pieced.block)
        if block.unit_method is not None and not chosen_ways(block, pieced, sized):
            if block.method is Method.FOUNDATION:
                message, hint = "is sewn on foundations", "take `unit method` out, or set `method: rotary`"
            else:
                message = "has no units of triangles that can be sewn so from whole squares"
                hint = "take `unit method` out, or choose another; half-square triangles come two at a time"
            told = f"the {block.name} block is to be sewn {block.unit_method.value}, but it {message}"
            report.add(UNIT_METHOD_UNUSED, block.place, told, hint)


def whole_square_cuts(block: Block, way: ChosenWay, sized: SizedProject) -> list[Cut]:
    """Return the cuts of one unit."""
    method = way.method
    cuts = []
    for number, square in enumerate(method.squares):
        height = square.height or square.side
        shape = CutShape.SQUARE if square.height is None else CutShape.RECTANGLE
        nouns = "squares" if shape is CutShape.SQUARE else "pieces"
        units = "unit" if method.units.value == 1 else "units"
        label = f"{nouns} for {units} {'+'.join(method.labels)} of the {block.name} block"
        cuts.append(
            Cut(
                way.cut_id(number), label, square.fabric, shape, square.side, height, square.count,
                f"block:{block.id}", is_upright=sized.project.fabric(square.fabric).is_directional,
            )
        )  # fmt: skip
    return cuts


def make_units(way: ChosenWay, makes: str, sized: SizedProject, measures: tuple[Quantity, Quantity] | None) -> Step:
    """Return the step that sews the units of one kind, batch by batch."""
    method = way.method
    if way.corners:
        squares = tuple(way.cut_id(number) for number in way.corners)
    else:
        squares = tuple(way.cut_id(n) for n, square in enumerate(method.squares) for _ in range(square.each))
    operation = MakeUnits(
        method.block, method.kind, squares, method.pieces, way.places[1:], sized.project.seam_allowance,
        method.at_a_time, method.spare,
    )  # fmt: skip
    return Step(f"make-{way.slug}", operation, makes, method.batches, measures)


def _corners(block: Block, units: RotaryUnits, method: UnitMethod) -> tuple[int, ...]:
    if method.kind not in ON_CORNERS:
        return ()
    return tuple(_corner_of(block, units, method, piece) for piece in method.pieces)


def _corner_of(block: Block, units: RotaryUnits, method: UnitMethod, piece: str) -> int:
    """Return which square a piece is made of: the whole piece the first, a corner the one of its fabric and size."""
    fabric = next(drawn.fabric for drawn in block.pieces if drawn.id == piece)
    if units.cuts[piece].shape is not CutShape.HALF_SQUARE_TRIANGLE:
        return 0
    leg = units.cuts[piece].recognised.width
    return next(
        number
        for number, square in enumerate(method.squares)
        if number and (square.fabric, square.leg) == (fabric, leg)
    )
