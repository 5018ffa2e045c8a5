"""Ways to sew equal units from whole squares: chosen by the author, or offered where there are enough units.

What is offered is an alternative: the cut list and the steps are then those of single triangles, which come out for
any number. What is chosen is the cut list and the steps.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Direction, Number, Rounding, Unit, square_root
from evenseam.pattern import Assumed, Block, CutShape, Derived, Method, Quantity, UnitMethodKind, derived
from evenseam.piecing import PiecedBlock
from evenseam.sizing.ledger import named_after
from evenseam.sizing.rotary import is_upright_rectangle, rotary_name
from evenseam.sizing.rotary_units import RotaryUnit, RotaryUnits, part_slug
from evenseam.sizing.sized import SizedProject

CORNER_SOURCE = "Snowball Fight, week two, Katie Mae Quilts, 2013"
EIGHT_SOURCE = "Half-square triangle tip, Mesquite Quilt Guild, 2014"
FOUR_SOURCE = "The real maths for four-at-a-time HSTs and the 0.64 number, montsemgm, r/quilting, 2025"
TRIM_SOURCE = "How to Sew a Basic Hourglass, fabric406; Half-Square Triangles Four Ways, lesson handout"
TO_TRIM = {Unit.INCH: Fraction(1, 8), Unit.CENTIMETRE: Fraction(3, 10)}
"""What a maker likes to have to trim; a square brought up to the next mark of the ruler may leave less."""
LARGER_STEP = {Unit.INCH: Fraction(1, 4), Unit.CENTIMETRE: Fraction(1, 2)}
_HALF, _QUARTER = CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE


@dataclass(frozen=True, slots=True)
class WholeSquares:
    """Squares of one fabric that are left whole."""

    fabric: str
    side: Quantity
    count: Quantity
    height: Quantity | None = None
    """Of a rectangle, whose width `side` then is."""
    each: int = 1
    """How many go into one batch."""
    larger: Quantity | None = None
    """The side of squares that leave more to trim; None where these leave enough, or must be exact."""
    leg: Number | None = None
    """Of squares on corners: the finished short side of the corner."""


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
    at_a_time: int = 1
    batches: int = 0
    pieces: tuple[str, ...] = ()
    """Piece ids of one unit, in its own order."""

    @property
    def spare(self) -> int:
        """How many units of the last batch the project does not need."""
        return self.batches * self.at_a_time - self.units.whole


NOT_OFFERED = (UnitMethodKind.FOUR_HALF_SQUARE, UnitMethodKind.ONE_GOOSE)
"""Only an author decides for edges on the bias, or for cloth that is cut away."""


def unit_methods(sized: SizedProject) -> tuple[UnitMethod, ...]:
    """Return every way that is worth offering, block by block, in sewing order."""
    found: list[UnitMethod] = []
    for pieced in sized.blocks:
        block = sized.project.block(pieced.block)
        if block.method is not Method.ROTARY:
            continue
        units = RotaryUnits.of(block, pieced, sized.project)
        chosen = {unit.pieces for unit, _ in chosen_units(sized, pieced, units)}
        for unit in units.units:
            if unit.pieces not in chosen:
                found += [
                    way
                    for way in _Ways(sized, block, units, unit).every()
                    if way.kind not in NOT_OFFERED and way.units.value >= way.at_a_time
                ]
    return tuple(found)


def chosen_units(
    sized: SizedProject, pieced: PiecedBlock, units: RotaryUnits
) -> tuple[tuple[RotaryUnit, UnitMethod], ...]:
    """Return the units of a block that are sewn the way its author chose, in sewing order.

    The author says how many at a time at most. Of the ways there are for a unit it is the one that makes the most at
    once, but no more than were asked for and, if there is another, no more than are needed.
    """
    block = sized.project.block(pieced.block)
    if block.unit_method is None or block.method is not Method.ROTARY:
        return ()
    most = block.unit_method.number
    found = []
    for unit in units.units:
        ways = [way for way in _Ways(sized, block, units, unit).every() if way.at_a_time <= most]
        # Edges on the bias are a decision of their own: four, where four were asked for.
        ways = [way for way in ways if way.kind is not UnitMethodKind.FOUR_HALF_SQUARE or most == way.at_a_time]
        if ways:
            few = [way for way in ways if way.at_a_time <= way.units.value] or ways
            found.append((unit, max(few, key=lambda way: way.at_a_time)))
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Ways:
    sized: SizedProject
    block: Block
    units: RotaryUnits
    unit: RotaryUnit

    def every(self) -> list[UnitMethod]:
        """Return the ways there are for one unit; none for a unit of no known kind."""
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
        if self._fabric(one) == self._fabric(two):
            return []
        side = self._side(one)
        large = derived(
            "square for eight half-square triangle units", 2 * side,
            rule="twice the square for two units", source=EIGHT_SOURCE,
        )  # fmt: skip
        seam, root = self.sized.project.seam_allowance, square_root(2)
        round_about = derived(
            "square for four half-square triangle units", self._unfinished()[0] * root + 2 * seam,
            rule="sewn all round, cut on both diagonals: √2 × the unfinished unit, and a seam allowance on either side",
            source=FOUR_SOURCE, rounding=self._up,
        )  # fmt: skip
        ways = (
            (UnitMethodKind.TWO_HALF_SQUARE, 2, side, self._larger(side)),
            (UnitMethodKind.FOUR_HALF_SQUARE, 4, round_about, None),
            (UnitMethodKind.EIGHT_HALF_SQUARE, 8, large, self._larger(side, 2)),
        )
        return [
            self._method(kind, at_a_time, [(self._fabric(piece), square, 1, larger) for piece in (one, two)])
            for kind, at_a_time, square, larger in ways
        ]

    def _geese(self) -> list[UnitMethod]:
        goose = next(piece for piece in self.unit.pieces if self.units.cuts[piece].shape is _QUARTER)
        sky = [piece for piece in self.unit.pieces if piece != goose]
        fabrics = {self._fabric(piece) for piece in sky}
        ways = self._corner_squares(UnitMethodKind.ONE_GOOSE, goose)
        if len(fabrics) == 1 and self._fabric(goose) not in fabrics:
            # One large square and four small ones make four geese.
            side = self._side(sky[0])
            squares = [(self._fabric(goose), self._side(goose), 1, None), (fabrics.pop(), side, 4, self._larger(side))]
            ways.append(self._method(UnitMethodKind.FOUR_GEESE, 4, squares))
        return ways

    def _hourglasses(self) -> list[UnitMethod]:
        """Squares of both fabrics make pairs, and pairs laid on each other make units."""
        opposite: dict[bool, list[str]] = {True: [], False: []}
        for piece in self.unit.pieces:
            opposite[self._is_level(piece)].append(self._fabric(piece))
        side = self._side(self.unit.pieces[0])
        larger = self._larger(side)
        level, upright = opposite[True], opposite[False]
        if len(set(level)) > len(set(upright)):
            level, upright = upright, level
        if len(level) != 2 or len(set(level)) > 1 or level[0] in upright:
            return []
        if len(set(upright)) == 1:
            pair = [(upright[0], side, 1, larger), (level[0], side, 1, larger)]
            return [self._method(UnitMethodKind.TWO_QUARTER_SQUARE, 2, pair)]
        three = [(upright[0], side, 1, larger), (upright[1], side, 1, larger), (level[0], side, 2, larger)]
        return [self._method(UnitMethodKind.FOUR_QUARTER_SQUARE, 4, three)]

    def _corner_squares(
        self, kind: UnitMethodKind = UnitMethodKind.CORNER_SQUARES, whole: str | None = None
    ) -> list[UnitMethod]:
        """A square on each corner of a whole piece, sewn along its diagonal and folded back."""
        left, top, right, bottom = self.units.outline(self.unit.pieces).bounds
        whole = whole or next(p for p in self.unit.pieces if self.units.cuts[p].shape is CutShape.TEMPLATE)
        corners = [piece for piece in self.unit.pieces if piece != whole]
        right_angles = {(left, top), (right, top), (right, bottom), (left, bottom)}
        if not all(self._right_angle(piece) in right_angles for piece in corners):
            return []
        seam = self.sized.project.seam_allowance
        wide, high = self._unfinished()
        is_square = right - left == bottom - top
        squares = [WholeSquares(self._fabric(whole), wide, self._units(), None if is_square else high)]
        for fabric, leg in dict.fromkeys((self._fabric(piece), self._leg(piece)) for piece in corners):
            alike = sum(1 for piece in corners if (self._fabric(piece), self._leg(piece)) == (fabric, leg))
            finished = self.block.width * (leg / self.block.width.value)
            side = derived(
                "square for a corner", finished + 2 * seam,
                rule="finished corner and a seam allowance on either side", source=CORNER_SOURCE,
            )  # fmt: skip
            name = self.sized.project.fabric(fabric).name
            count = derived(f"squares of {name}", self._units() * alike)
            squares.append(WholeSquares(fabric, side, count, each=alike, leg=leg))
        return [self._finished_method(kind, squares, 1, self._units().whole)]

    def _method(
        self, kind: UnitMethodKind, at_a_time: int, squares: list[tuple[str, Quantity, int, Quantity | None]]
    ) -> UnitMethod:
        """Return a method from its squares: fabric, side, how many go into one batch, and a side with more to trim."""
        batches = derived(
            "batches", self._units() / at_a_time, rounding=Rounding("whole squares", Fraction(1), Direction.UP)
        )
        whole = [
            WholeSquares(
                fabric, side, derived(f"squares of {self.sized.project.fabric(fabric).name}", batches * each),
                each=each, larger=larger,
            )
            for fabric, side, each, larger in squares
        ]  # fmt: skip
        return self._finished_method(kind, whole, at_a_time, batches.whole)

    def _finished_method(
        self, kind: UnitMethodKind, squares: list[WholeSquares], at_a_time: int, batches: int
    ) -> UnitMethod:
        labels = tuple(map(self._label, self.unit.pieces))
        return UnitMethod(
            kind, self.block.id, tuple(squares), self._units(), labels, self._steps(), *self._unfinished(),
            at_a_time, batches, self.unit.pieces,
        )  # fmt: skip

    def _larger(self, side: Quantity, times: int = 1) -> Quantity | None:
        """Return the side of a square with a good 1/8 in to trim from each unit; `times` units lie side by side in it.

        None where the side itself leaves so much.
        """
        unit = self.sized.project.unit
        assert isinstance(side.because, Derived)
        exact = side.because.expression
        if side.value - exact.value >= TO_TRIM[unit]:
            return None
        to_trim = Quantity("what is trimmed from a unit", TO_TRIM[unit], unit, Assumed("enough to trim true"))
        return derived(
            "square with more to trim", times * (exact + to_trim),
            rule="the exact square, and more to trim", source=TRIM_SOURCE,
            rounding=Rounding("square to trim", LARGER_STEP[unit] * times, Direction.UP),
        )  # fmt: skip

    @property
    def _up(self) -> Rounding:
        return Rounding("cut size", self.sized.project.unit.ruler_mark, Direction.UP)

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
