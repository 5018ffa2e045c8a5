"""Random projects for property tests: valid ones, built as values, small enough to be looked at.

Blocks are cut out of their outline by straight cuts from edge to edge, so that they can always be sewn. Lengths lie
on the marks of their ruler. A project may hold lengths in the other unit, to be re-drafted.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.geometry import Point, Polygon
from evenseam.pattern import (
    Arrangement,
    Assumed,
    Binding,
    Block,
    BlockPiece,
    BlockPosition,
    Border,
    BorderCorners,
    BorderOrder,
    Bound,
    CornerPockets,
    Finish,
    Grain,
    Hanging,
    Method,
    Project,
    Quantity,
    Sashing,
    Setting,
    Sleeve,
    StripDirection,
    StripJoin,
    Turned,
)
from hypothesis import strategies as st

from support.samples import FOG, LAMP, REED, SEA, count

FABRICS = (SEA, FOG, LAMP, REED)
_FABRIC_IDS = st.sampled_from([fabric.id for fabric in FABRICS])
_LEAST_AREA = Fraction(1)
"""In grid units: smaller pieces would be slivers."""


def lengths(name: str, unit: Unit, least: str, most: str, step: str = "") -> st.SearchStrategy[Quantity]:
    """Return lengths from `least` to `most` inches, or as many times 2.5 cm, on marks of `step` (1/4 in, 0.5 cm)."""
    stretch = Fraction(1) if unit is Unit.INCH else Fraction(5, 2)
    mark = Fraction(step) if step else Fraction(1, 4) if unit is Unit.INCH else Fraction(1, 2)
    low, high = (int(Fraction(bound) * stretch / mark) for bound in (least, most))
    return st.integers(max(low, 1), max(high, 1)).map(
        lambda marks: Quantity(name, marks * mark, unit, Assumed("drawn at random"))
    )


@st.composite
def guillotine_pieces(draw: st.DrawFn, width: int, height: int, upright: bool = False) -> tuple[Polygon, ...]:
    """Return convex polygons that fill a rectangle, cut out of it by straight cuts right across one polygon each.

    With `upright` all cuts are upright or level and lie on the grid, so that every piece is a rectangle.
    """
    pieces = [Polygon.rectangle(Fraction(0), Fraction(0), Fraction(width), Fraction(height))]
    for _ in range(draw(st.integers(0, 6))):
        chosen = draw(st.integers(0, len(pieces) - 1))
        halves = draw(_upright_cut(pieces[chosen]) if upright else _slanted_cut(pieces[chosen]))
        if all(half.area >= _LEAST_AREA for half in halves):
            pieces[chosen : chosen + 1] = halves
    return tuple(piece.clockwise() for piece in pieces)


@st.composite
def rotary_pieces(draw: st.DrawFn, width: int, height: int) -> tuple[Polygon, ...]:
    """Return squares and rectangles that fill a rectangle, some of them units of triangles.

    Squares may be two half-square or four quarter-square triangles, or a square set on its corner with four corners;
    rectangles twice as long as wide may be flying geese, and others two triangles of no simple shape.
    """
    pieces: list[Polygon] = []
    for box in draw(guillotine_pieces(width, height, upright=True)):
        one, two, three, four = box.corners
        across, down = two.x - one.x, four.y - one.y
        top, right, bottom, left = (_middle(*edge) for edge in box.edges)
        middle = _middle(one, three)
        half = [[(one, two, four), (two, three, four)], [(one, two, three), (one, three, four)]]
        units: list[list[tuple[Point, ...]]]
        if across == down:
            quarter = [(one, two, middle), (two, three, middle), (three, four, middle), (four, one, middle)]
            corners = [(one, top, left), (top, two, right), (right, three, bottom), (bottom, four, left)]
            units = [*half, quarter, quarter, [(top, right, bottom, left), *corners]]
        elif across == 2 * down:
            units = [[(one, two, bottom), (two, three, bottom), (one, bottom, four)], half[0]]
        elif down == 2 * across:
            units = [[(one, right, four), (one, two, right), (right, three, four)], half[1]]
        else:
            units = half
        chosen = draw(st.integers(-1, len(units) - 1))
        pieces += [box] if chosen < 0 else [Polygon(corners).clockwise() for corners in units[chosen]]
    return tuple(pieces)


def _middle(start: Point, end: Point) -> Point:
    half = Fraction(1, 2)
    return (start + end).scaled(half, half)


@st.composite
def _slanted_cut(draw: st.DrawFn, piece: Polygon) -> list[Polygon]:
    """Cut a convex polygon between two of its corners or quarter points; nothing is cut if they are on one edge."""
    corners = piece.corners
    first, second = sorted(draw(st.lists(st.integers(0, len(corners) - 1), min_size=2, max_size=2, unique=True)))
    quarters = st.sampled_from([Fraction(0), Fraction(1, 4), Fraction(1, 2), Fraction(3, 4)])
    ends = []
    for index in (first, second):
        start, end = piece.edges[index]
        share = draw(quarters)
        ends.append(start + (end - start).scaled(share, share))
    one = _without_doubles((ends[0], *corners[first + 1 : second + 1], ends[1]))
    other = _without_doubles((ends[1], *corners[second + 1 :], *corners[: first + 1], ends[0]))
    if len(one) < 3 or len(other) < 3:
        return [piece]
    halves = [Polygon(one), Polygon(other)]
    return halves if all(half.area > 0 for half in halves) else [piece]


@st.composite
def _upright_cut(draw: st.DrawFn, piece: Polygon) -> list[Polygon]:
    left, top, right, bottom = (int(bound) for bound in piece.bounds)  # type: ignore[arg-type]
    width, height = right - left, bottom - top
    if draw(st.booleans()) and width > 1:
        at = draw(st.integers(1, width - 1))
        boxes = [(left, top, at, height), (left + at, top, width - at, height)]
    elif height > 1:
        at = draw(st.integers(1, height - 1))
        boxes = [(left, top, width, at), (left, top + at, width, height - at)]
    else:
        return [piece]
    return [Polygon.rectangle(*(Fraction(side) for side in box)) for box in boxes]


def _without_doubles(corners: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple(corner for corner, after in zip(corners, (*corners[1:], corners[0]), strict=True) if corner != after)


@st.composite
def blocks(draw: st.DrawFn, id: str, unit: Unit, grid: tuple[int, int], cell: Fraction, method: Method) -> Block:
    """Return a block with square grid cells of a stated finished size."""
    across, down = grid
    outlines = draw(rotary_pieces(across, down) if method is Method.ROTARY else guillotine_pieces(across, down))
    pieces = tuple(
        BlockPiece(f"p{number}", draw(_FABRIC_IDS), outline) for number, outline in enumerate(outlines, start=1)
    )
    reason = Assumed("drawn at random")
    return Block(
        id, id.capitalize(),
        Quantity(f"{id} width", across * cell, unit, reason), Quantity(f"{id} height", down * cell, unit, reason),
        Fraction(across), Fraction(down), Polygon.rectangle(Fraction(0), Fraction(0), Fraction(across), Fraction(down)),
        pieces, method,
    )  # fmt: skip


@st.composite
def arrangements(draw: st.DrawFn, unit: Unit, block_ids: tuple[str, ...], is_square: bool) -> Arrangement:
    """Return rows and columns of equal blocks, some of them turned, with or without sashing."""
    rows, columns = draw(st.integers(1, 4)), draw(st.integers(1, 4))
    turns = st.sampled_from([0, 0, 1, 2, 3] if is_square else [0, 0, 2])
    position = st.builds(BlockPosition, st.sampled_from(block_ids), turns, st.sampled_from([False, False, True]))
    positions = tuple(tuple(draw(position) for _ in range(columns)) for _ in range(rows))
    if draw(st.booleans()):
        positions = tuple(positions[0] for _ in range(rows))
    cornerstone = st.none() | _FABRIC_IDS
    sashing = st.none() | st.builds(
        Sashing, lengths("sashing width", unit, "1/2", "3"), _FABRIC_IDS, st.booleans(), cornerstone
    )
    return Arrangement(count("rows", rows), count("columns", columns), Setting.STRAIGHT, positions, draw(sashing))


@st.composite
def border_lists(draw: st.DrawFn, unit: Unit, cornerstones: bool = False) -> tuple[Border, ...]:
    """Return up to three borders, each with its own order; with `cornerstones` some of them have cornerstones."""
    made = []
    for place in ("inner", "middle", "outer")[: draw(st.integers(0, 3))]:
        has_cornerstones = cornerstones and draw(st.integers(0, 2)) == 0
        made.append(
            Border(
                f"{place}-border", f"{place} border", draw(lengths(f"{place} border width", unit, "1/2", "4")),
                draw(_FABRIC_IDS), draw(st.sampled_from(BorderOrder)),
                BorderCorners.CORNERSTONES if has_cornerstones else BorderCorners.BUTTED,
                draw(_FABRIC_IDS) if has_cornerstones else None, draw(st.sampled_from(StripJoin)),
                draw(st.sampled_from(StripDirection)),
            )
        )  # fmt: skip
    return tuple(made)


@st.composite
def finishes(draw: st.DrawFn, unit: Unit) -> Finish:
    """Return a turned or a bound finish that every project of these strategies has room for."""
    backing, batting = (draw(lengths(f"{layer} overage", unit, "1", "4")) for layer in ("backing", "batting"))
    fabric = draw(_FABRIC_IDS)
    if draw(st.booleans()):
        topstitch = lengths("topstitch distance", unit, "1/8", "1/4", "1/8" if unit is Unit.INCH else "1/10")
        return Turned(fabric, backing, batting, draw(lengths("opening", unit, "2", "3")), draw(topstitch))
    binding = Binding(
        draw(_FABRIC_IDS),
        draw(lengths("binding strip width", unit, "2", "3")),
        draw(lengths("binding extra length", unit, "8", "16")),
        draw(st.sampled_from(Grain)),
        draw(st.sampled_from(StripJoin)),
    )
    return Bound(fabric, backing, batting, draw(lengths("backing seam allowance", unit, "1/2", "1/2")), binding)


@st.composite
def hangings(draw: st.DrawFn, unit: Unit) -> Hanging | None:
    """Return nothing, a sleeve, or corner pockets that every project of these strategies has room for."""
    match draw(st.integers(0, 2)):
        case 1:
            return Sleeve(
                draw(_FABRIC_IDS), draw(lengths("sleeve cut depth", unit, "6", "9")),
                draw(lengths("sleeve extra", unit, "1/4", "1")), draw(lengths("sleeve hem", unit, "3/4", "3/2")),
                draw(lengths("sleeve drop", unit, "1/2", "1")),
            )  # fmt: skip
        case 2:
            return CornerPockets(draw(_FABRIC_IDS), draw(lengths("corner pocket square", unit, "1", "3/2")))
    return None


@st.composite
def projects(
    draw: st.DrawFn, units: tuple[Unit, ...] = (Unit.INCH, Unit.CENTIMETRE), border_cornerstones: bool = True
) -> Project:
    """Return a valid project in one of `units`, drafted in that unit or in the other one, to be re-drafted."""
    edition = draw(st.sampled_from(units))
    unit = draw(st.sampled_from([edition, edition, Unit.INCH, Unit.CENTIMETRE]))
    method = draw(st.sampled_from(Method))
    across = draw(st.integers(3, 8))
    down = across if draw(st.booleans()) else draw(st.integers(3, 8))
    cells = [Fraction(1), Fraction(3, 2), Fraction(5, 4)] if unit is Unit.INCH else [Fraction(3), Fraction(5, 2)]
    cell = draw(st.sampled_from([*cells, cells[0] * 2]))
    ids = ("gull", "buoy")[: draw(st.integers(1, 2))]
    made = tuple(draw(blocks(id, unit, (across, down), cell, method)) for id in ids)
    seam = st.sampled_from(["1/4", "3/8"] if unit is Unit.INCH else ["3/4", "3/5"])
    sample = Assumed("a sample")
    fabrics = tuple(replace(fabric, is_directional=draw(st.integers(0, 4)) == 0) for fabric in FABRICS)
    width = Fraction(42) if unit is Unit.INCH else Fraction(107)
    margin = Fraction(1, 4) if unit is Unit.INCH else Fraction(3, 5)
    return Project(
        "sample", "Sample", edition,
        Quantity("seam allowance", Fraction(draw(seam)), unit, sample), Quantity("usable width", width, unit, sample),
        fabrics, made, draw(arrangements(unit, ids, across == down)), draw(border_lists(unit, border_cornerstones)), draw(finishes(unit)),
        draw(hangings(unit)), Quantity("patch margin", margin, unit, sample), "Cotton batting",
    )  # fmt: skip
