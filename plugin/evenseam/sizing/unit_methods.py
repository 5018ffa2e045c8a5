"""Ways to sew several equal units at once from whole squares, offered where there are enough units to be worth it.

They are alternatives: the cut list, the steps and the simulator are those of single triangles, which always come out.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, Unit
from evenseam.pattern import Assumed, Block, CutShape, Method, Quantity, derived
from evenseam.sizing.ledger import named_after
from evenseam.sizing.rotary import is_upright_rectangle, rotary_name
from evenseam.sizing.rotary_units import RotaryUnit, RotaryUnits, part_slug
from evenseam.sizing.sized import SizedProject

CORNER_SOURCE = "Snowball Fight, week two, Katie Mae Quilts, 2013"
EIGHT_SOURCE = "Half-square triangle tip, Mesquite Quilt Guild, 2014"
_HALF, _QUARTER = CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE


class UnitMethodKind(Enum):
    """Which way, by what it makes and how many at a time."""

    TWO_HALF_SQUARE = "half-square triangle units, two at a time"
    EIGHT_HALF_SQUARE = "half-square triangle units, eight at a time"
    FOUR_GEESE = "flying geese, four at a time"
    TWO_QUARTER_SQUARE = "quarter-square triangle units, two at a time"
    """Of two fabrics, each in two opposite triangles."""
    FOUR_QUARTER_SQUARE = "quarter-square triangle units, four at a time"
    """Of three fabrics: one in two opposite triangles, and one in each of the other two."""
    CORNER_SQUARES = "squares sewn on the corners of a whole piece"
    """The corners of a square or rectangle, cut off by triangles."""


@dataclass(frozen=True, slots=True)
class WholeSquares:
    """Squares of one fabric that are left whole."""

    fabric: str
    side: Quantity
    count: Quantity
    height: Quantity | None = None
    """Of a rectangle, whose width `side` then is."""


@dataclass(frozen=True, slots=True)
class UnitMethod:
    """One way to make one kind of unit."""

    kind: UnitMethodKind
    block: str
    squares: tuple[WholeSquares, ...]
    """For geese the large squares first; for units of three fabrics the one in opposite triangles last; for corners
    the large piece first."""
    units: Quantity
    """How many the project needs."""
    labels: tuple[str, ...]
    """Of the pieces of one unit, in the key of the block."""
    steps: tuple[str, ...]
    """Ids of the steps this way replaces, in sewing order."""
    width: Quantity
    """What a unit is trimmed to."""
    height: Quantity


def unit_methods(sized: SizedProject) -> tuple[UnitMethod, ...]:
    """Return every way that is worth offering, block by block, in sewing order."""
    found: list[UnitMethod] = []
    for pieced in sized.blocks:
        block = sized.project.block(pieced.block)
        if block.method is not Method.ROTARY:
            continue
        units = RotaryUnits.of(block, pieced, sized.project)
        for unit in units.units:
            found += _Offer(sized, block, units, unit).methods()
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Offer:
    sized: SizedProject
    block: Block
    units: RotaryUnits
    unit: RotaryUnit

    def methods(self) -> list[UnitMethod]:
        """Return the ways there are for one unit; none for a unit of no known kind, or too few of it."""
        shapes = [self.units.cuts[piece].shape for piece in self.unit.pieces]
        if not is_upright_rectangle(self.units.outline(self.unit.pieces)) or not self._is_by_itself():
            return []
        match shapes.count(_HALF), shapes.count(_QUARTER), len(shapes):
            case 2, 0, 2:
                return self._half_squares()
            case 2, 1, 3:
                return self._geese()
            case 0, 4, 4:
                return self._hourglasses()
            case corners, 0, count if corners == count - 1 and shapes.count(CutShape.TEMPLATE) == 1:
                return self._corner_squares()
        return []

    def _half_squares(self) -> list[UnitMethod]:
        one, two = self.unit.pieces
        if self._fabric(one) == self._fabric(two) or self._needed < 2:
            return []
        side = self._side(one)
        pairs = [(fabric, side, 2) for fabric in (self._fabric(one), self._fabric(two))]
        made = [self._method(UnitMethodKind.TWO_HALF_SQUARE, pairs)]
        if self._needed >= 8:
            large = derived(
                "square for eight half-square triangle units", 2 * side,
                rule="twice the square for two units", source=EIGHT_SOURCE,
            )  # fmt: skip
            made.append(self._method(UnitMethodKind.EIGHT_HALF_SQUARE, [(fabric, large, 8) for fabric, _, _ in pairs]))
        return made

    def _geese(self) -> list[UnitMethod]:
        goose = next(piece for piece in self.unit.pieces if self.units.cuts[piece].shape is _QUARTER)
        sky = [piece for piece in self.unit.pieces if piece != goose]
        fabrics = {self._fabric(piece) for piece in sky}
        if len(fabrics) > 1 or self._fabric(goose) in fabrics or self._needed < 4:
            return []
        # One large square and four small ones make four geese.
        squares = [(self._fabric(goose), self._side(goose), 4), (self._fabric(sky[0]), self._side(sky[0]), 1)]
        return [self._method(UnitMethodKind.FOUR_GEESE, squares, in_fours=True)]

    def _hourglasses(self) -> list[UnitMethod]:
        """Squares of both fabrics make pairs, and pairs laid on each other make units."""
        opposite: dict[bool, list[str]] = {True: [], False: []}
        for piece in self.unit.pieces:
            opposite[self._is_level(piece)].append(self._fabric(piece))
        side = self._side(self.unit.pieces[0])
        level, upright = opposite[True], opposite[False]
        if len(set(level)) > len(set(upright)):
            level, upright = upright, level
        if len(level) != 2 or len(set(level)) > 1 or level[0] in upright:
            return []
        if len(set(upright)) == 1:
            if self._needed < 2:
                return []
            return [self._method(UnitMethodKind.TWO_QUARTER_SQUARE, [(upright[0], side, 2), (level[0], side, 2)])]
        if self._needed < 4:
            return []
        squares = [(upright[0], side, 4), (upright[1], side, 4), (level[0], side, 2)]
        return [self._method(UnitMethodKind.FOUR_QUARTER_SQUARE, squares, in_fours=True)]

    def _corner_squares(self) -> list[UnitMethod]:
        """A square on each corner of a whole piece, sewn along its diagonal and folded back."""
        left, top, right, bottom = self.units.outline(self.unit.pieces).bounds
        whole = next(piece for piece in self.unit.pieces if self.units.cuts[piece].shape is CutShape.TEMPLATE)
        corners = [piece for piece in self.unit.pieces if piece != whole]
        right_angles = {(left, top), (right, top), (right, bottom), (left, bottom)}
        if not all(self._right_angle(piece) in right_angles for piece in corners):
            return []
        seam = self.sized.project.seam_allowance
        wide, high = self._unfinished()
        squares = [
            WholeSquares(self._fabric(whole), wide, self._units(), None if right - left == bottom - top else high)
        ]
        for fabric, leg in dict.fromkeys((self._fabric(piece), self._leg(piece)) for piece in corners):
            alike = sum(1 for piece in corners if (self._fabric(piece), self._leg(piece)) == (fabric, leg))
            finished = self.block.width * (leg / self.block.width.value)
            side = derived(
                "square for a corner", finished + 2 * seam,
                rule="finished corner and a seam allowance on either side", source=CORNER_SOURCE,
            )  # fmt: skip
            name = self.sized.project.fabric(fabric).name
            squares.append(WholeSquares(fabric, side, derived(f"squares of {name}", self._units() * alike)))
        return [self._finished_method(UnitMethodKind.CORNER_SQUARES, squares)]

    def _method(
        self, kind: UnitMethodKind, squares: list[tuple[str, Quantity, int]], *, in_fours: bool = False
    ) -> UnitMethod:
        """Return a method; each square of a fabric goes into so many units, and units may come in fours."""
        units, whole = self._units(), []
        for fabric, side, makes in squares:
            batch = 4 if in_fours else makes
            batches = derived("batches", units / batch, rounding=Rounding("whole squares", Fraction(1), Direction.UP))
            count = derived(f"squares of {self.sized.project.fabric(fabric).name}", batches * (batch // makes))
            whole.append(WholeSquares(fabric, side, count))
        return self._finished_method(kind, whole)

    def _finished_method(self, kind: UnitMethodKind, squares: list[WholeSquares]) -> UnitMethod:
        labels = tuple(map(self._label, self.unit.pieces))
        return UnitMethod(
            kind, self.block.id, tuple(squares), self._units(), labels, self._steps(), *self._unfinished()
        )

    def _units(self) -> Quantity:
        """Return how many of the unit the project needs."""
        blocks = self.sized.figure(f"{named_after(self.block.id, 'block')}_count")
        each = Quantity(
            "such units in one block", Fraction(self.unit.in_block), Unit.COUNT,
            Assumed("their places in the drawing", "counted"),
        )  # fmt: skip
        return derived("number of units", each * blocks)

    def _unfinished(self) -> tuple[Quantity, Quantity]:
        """Return what the unit measures from raw edge to raw edge."""
        seam = self.sized.project.seam_allowance
        left, top, right, bottom = self.units.outline(self.unit.pieces).bounds
        wide, high = (
            derived(f"unfinished {name} of a unit", self.block.width * (reach / self.block.width.value) + 2 * seam)
            for name, reach in (("width", right - left), ("height", bottom - top))
        )
        return wide, high

    @property
    def _needed(self) -> int:
        blocks = self.sized.figure(f"{named_after(self.block.id, 'block')}_count").whole
        return self.unit.in_block * blocks

    def _parts(self) -> list[RotaryUnit]:
        """Return the smaller units this one is made of, as often as it takes them, in sewing order."""
        parts: list[RotaryUnit] = []
        waiting = [self.unit]
        while waiting:
            join = waiting.pop().join
            smaller = [self.units.used[name] for name in (join.first, join.second) if name in self.units.used]
            parts += smaller
            waiting += smaller
        return sorted(parts, key=self.units.units.index)

    def _is_by_itself(self) -> bool:
        """Tell whether what this unit is made of goes into nothing else."""
        parts = self._parts()
        return all(part.in_block == parts.count(part) * self.unit.in_block for part in parts)

    def _steps(self) -> tuple[str, ...]:
        made = [*self._parts(), self.unit]
        return tuple(dict.fromkeys(f"join-{part_slug(self.block.id, part.join.makes)}" for part in made))

    def _fabric(self, piece: str) -> str:
        return next(drawn.fabric for drawn in self.block.pieces if drawn.id == piece)

    def _label(self, piece: str) -> str:
        return next(section.name for section in self.units.pieced.sections if section.pieces[0].piece == piece)

    def _side(self, piece: str) -> Quantity:
        return self.sized.figure(f"{rotary_name(self.block.id, self._label(piece))}_width")

    def _leg(self, piece: str) -> Number:
        """Return the finished short side of a half-square triangle."""
        return self.units.cuts[piece].recognised.width

    def _right_angle(self, piece: str) -> tuple[Number, Number]:
        """Return where the right angle of a half-square triangle lies: at the corner of its bounds."""
        corners = {(corner.x, corner.y) for corner in self.units.outline((piece,)).corners}
        return next(one for one in corners if all(one[0] == x or one[1] == y for x, y in corners))

    def _is_level(self, piece: str) -> bool:
        """Tell whether the long side of a quarter-square triangle lies level."""
        left, top, right, bottom = self.units.outline((piece,)).bounds
        return right - left > bottom - top
