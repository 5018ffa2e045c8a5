"""Random projects of every arrangement, border, finish and way of hanging that there is, in both units.

Whatever is drawn may still be a project that no maker would start (a sleeve deeper than the mat, a corner block that
does not fit): sizing says so, and such a one is passed over.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.geometry import Polygon
from evenseam.pattern import (
    Arrangement,
    Assumed,
    Block,
    BlockPiece,
    BlockPosition,
    Border,
    BorderCorners,
    BorderOrder,
    Bound,
    EnvelopeBack,
    Faced,
    Finish,
    Grain,
    Hanging,
    KnifeEdge,
    Loops,
    Method,
    PiecedBorder,
    Project,
    Quantity,
    Rings,
    Sashing,
    Setting,
    SettingTriangles,
    Spacer,
    StripDirection,
    StripJoin,
    UnequalRow,
)
from hypothesis import strategies as st

from support.samples import count
from support.strategies import FABRICS, arrangements, blocks, finishes, hangings, lengths

_FABRIC_IDS = st.sampled_from([fabric.id for fabric in FABRICS])
_TURNS = st.sampled_from([0, 0, 1, 2, 3])


def exactly(name: str, value: Fraction, unit: Unit) -> Quantity:
    """Return a length as if it were drawn."""
    return Quantity(name, value, unit, Assumed("drawn at random"))


def plain(id: str, width: Fraction, height: Fraction, unit: Unit, fabric: str) -> Block:
    """Return a block of one piece."""
    outline = Polygon.rectangle(Fraction(0), Fraction(0), Fraction(1), Fraction(1))
    return Block(
        id, id.capitalize(), exactly(f"{id} width", width, unit), exactly(f"{id} height", height, unit), Fraction(1),
        Fraction(1), outline, (BlockPiece("p1", fabric, outline),), Method.ROTARY,
    )  # fmt: skip


@st.composite
def on_point(draw: st.DrawFn, unit: Unit, ids: tuple[str, ...], most: int = 3) -> Arrangement:
    """Return blocks set on point, with or without sashing, floated or not."""
    rows, columns = draw(st.integers(1, most)), draw(st.integers(1, most))
    position = st.builds(BlockPosition, st.sampled_from(ids), _TURNS)
    positions = tuple(tuple(draw(position) for _ in range(columns - line % 2)) for line in range(2 * rows - 1))
    sashing = draw(
        st.none()
        | st.builds(
            Sashing, lengths("sashing width", unit, "3/4", "2"), _FABRIC_IDS, st.booleans(), st.none() | _FABRIC_IDS
        )
    )
    nothing = st.just(exactly("float", Fraction(0), unit))
    floats = st.one_of(nothing, lengths("float", unit, "1/4", "2"))
    is_chosen = draw(st.booleans())
    triangles = SettingTriangles(
        draw(_FABRIC_IDS), draw(_FABRIC_IDS), draw(nothing if is_chosen else floats), None,
        None if is_chosen else draw(st.none() | floats), is_chosen,
        draw(st.none() | lengths("least float", unit, "1/4", "2")) if is_chosen else None,
    )  # fmt: skip
    return Arrangement(
        count("rows", rows), count("columns", columns), Setting.ON_POINT, positions, sashing,
        setting_triangles=triangles,
    )  # fmt: skip


@st.composite
def unequal_rows(draw: st.DrawFn, unit: Unit, by_height: dict[Fraction, tuple[str, ...]]) -> Arrangement:
    """Return rows of blocks of one height each, and spacers, with or without sashing; every row has one spacer that
    takes a share.
    """
    rows = []
    for _ in range(draw(st.integers(1, 3))):
        ids = by_height[draw(st.sampled_from(sorted(by_height)))]
        parts: list[BlockPosition | Spacer] = [Spacer(draw(_FABRIC_IDS), None)]
        for _ in range(draw(st.integers(1, 3))):
            parts.append(BlockPosition(draw(st.sampled_from(ids)), draw(st.sampled_from([0, 0, 2]))))
            if draw(st.booleans()):
                width = draw(st.none() | lengths("spacer", unit, "1", "3"))
                parts.append(Spacer(draw(_FABRIC_IDS), width))
        rows.append(UnequalRow(tuple(parts)))
    positions = tuple(tuple(part for part in row.parts if isinstance(part, BlockPosition)) for row in rows)
    sashing = draw(
        st.none()
        | st.builds(
            Sashing, lengths("sashing width", unit, "3/4", "2"), _FABRIC_IDS, st.booleans(),
            between_blocks=st.booleans(),
        )
    )  # fmt: skip
    return Arrangement(
        count("rows", len(rows)), count("columns", max(map(len, positions))), Setting.UNEQUAL_ROWS, positions, sashing,
        unequal_rows=tuple(rows),
    )  # fmt: skip


@st.composite
def every_border(draw: st.DrawFn, unit: Unit, edge: Block, corner: Block) -> tuple[Border, ...]:
    """Return up to three borders with corners of every kind, some of them of blocks."""
    made = []
    for place in ("inner", "middle", "outer")[: draw(st.integers(0, 3))]:
        corners = draw(st.sampled_from(BorderCorners))
        border = Border(
            f"{place}-border", f"{place} border", draw(lengths(f"{place} border width", unit, "1/2", "4")),
            draw(_FABRIC_IDS), draw(st.sampled_from(BorderOrder)), corners,
            draw(_FABRIC_IDS) if corners is BorderCorners.CORNERSTONES else None, draw(st.sampled_from(StripJoin)),
            draw(st.sampled_from(StripDirection)),
            ease=draw(st.none() | lengths("ease", unit, "1", "10", "1/2")),
        )  # fmt: skip
        if draw(st.integers(0, 3)) == 0:
            pieced = PiecedBorder(
                edge.id, draw(st.sampled_from([None, corner.id])), draw(_FABRIC_IDS),
                draw(st.none() | lengths("least spacer", unit, "1/2", "1")),
            )  # fmt: skip
            border = replace(border, width=edge.height, corners=BorderCorners.BUTTED, pieced=pieced, ease=None)
        made.append(border)
    return tuple(made)


@st.composite
def every_finish(draw: st.DrawFn, unit: Unit) -> Finish:
    """Return any finish."""
    plain_finish = draw(finishes(unit))
    layers = {
        "backing_fabric": draw(_FABRIC_IDS), "backing_overage": draw(lengths("backing overage", unit, "1", "4")),
        "batting_overage": draw(lengths("batting overage", unit, "1", "4")),
        "backing_seam": draw(lengths("backing seam allowance", unit, "1/2", "1/2")),
    }  # fmt: skip
    match draw(st.integers(0, 5)):
        case 1:
            return Faced(
                **layers, facing_fabric=draw(_FABRIC_IDS), facing_width=draw(lengths("facing width", unit, "2", "3")),
                facing_fold=draw(lengths("facing fold", unit, "1/4", "1/2")),
            )  # fmt: skip
        case 2:
            step = "1/8" if unit is Unit.INCH else "1/10"
            return KnifeEdge(
                **layers, quilting_stop=draw(lengths("quilting stop", unit, "1", "3/2")),
                stitch=draw(lengths("stitch", unit, "1/8", "1/8", step)),
            )  # fmt: skip
        case 3:
            return EnvelopeBack(
                **layers, panel_fabric=draw(_FABRIC_IDS), overlap=draw(lengths("overlap", unit, "1", "4")),
                hem=draw(lengths("hem", unit, "1/2", "1")),
            )  # fmt: skip
    if isinstance(plain_finish, Bound) and draw(st.integers(0, 2)) == 0:
        binding = replace(plain_finish.binding, grain=Grain.BIAS)
        return replace(plain_finish, binding=binding, corner_radius=draw(lengths("corner radius", unit, "3/2", "2")))
    return plain_finish


@st.composite
def every_hanging(draw: st.DrawFn, unit: Unit, finish: Finish) -> Hanging | None:
    """Return any way of hanging that goes with a finish."""
    if isinstance(finish, EnvelopeBack):
        return None
    match draw(st.integers(0, 4)):
        case 1:
            return Rings(count("number of rings", draw(st.integers(1, 4))), draw(lengths("drop", unit, "1/2", "1")))
        case 2:
            return Loops(
                draw(_FABRIC_IDS), count("number of loops", draw(st.integers(1, 3))),
                draw(lengths("loop width", unit, "2", "3")), draw(lengths("loop length", unit, "4", "8")),
            )  # fmt: skip
    hanging = draw(hangings(unit))
    is_caught = not isinstance(finish, KnifeEdge)
    return hanging if is_caught or hanging is None or hasattr(hanging, "hem") else None


@st.composite
def every_project(
    draw: st.DrawFn,
    units: tuple[Unit, ...] = (Unit.INCH, Unit.CENTIMETRE),
    settings: tuple[Setting, ...] = tuple(Setting),
    most: int = 3,
) -> Project:
    """Return a project in one of `units`, drafted in that unit or in the other one; its blocks stand in one of
    `settings`, on point in at most so many rows and columns.
    """
    edition = draw(st.sampled_from(units))
    unit = draw(st.sampled_from([edition, edition, Unit.INCH, Unit.CENTIMETRE]))
    is_inch = unit is Unit.INCH
    setting = draw(st.sampled_from(settings))
    method = draw(st.sampled_from(Method))
    across = draw(st.integers(3, 6))
    down = across if setting is Setting.ON_POINT or draw(st.booleans()) else draw(st.integers(3, 6))
    cell = draw(st.sampled_from([Fraction(1), Fraction(5, 4)] if is_inch else [Fraction(3), Fraction(5, 2)]))
    ids = ("gull", "buoy")[: draw(st.integers(1, 2))]
    made = [draw(blocks(id, unit, (across, down), cell, method)) for id in ids]
    wide, high = draw(st.sampled_from([(3, 2), (4, 2), (2, 2)]))
    edge, corner = (
        plain(id, Fraction(side) * (1 if is_inch else 2), Fraction(high) * (1 if is_inch else 2), unit, draw(_FABRIC_IDS))
        for id, side in (("edge", wide), ("corner", high))
    )  # fmt: skip
    if setting is Setting.ON_POINT:
        arrangement = draw(on_point(unit, ids, most))
    elif setting is Setting.UNEQUAL_ROWS:
        by_height = {made[0].height.value: ids, edge.height.value: ("edge", "corner")}
        arrangement = draw(unequal_rows(unit, by_height))  # type: ignore[arg-type]
    else:
        arrangement = draw(arrangements(unit, ids, across == down))
    finish = draw(every_finish(unit))
    sample = Assumed("a sample")
    seam = draw(st.sampled_from(["1/4", "3/8"] if is_inch else ["3/4", "3/5"]))
    return Project(
        "sample", "Sample", edition, Quantity("seam allowance", Fraction(seam), unit, sample),
        Quantity("usable width", Fraction(42 if is_inch else 107), unit, sample),
        tuple(replace(fabric, is_directional=draw(st.integers(0, 5)) == 0) for fabric in FABRICS),
        (*made, edge, corner), arrangement, draw(every_border(unit, edge, corner)), finish,
        draw(every_hanging(unit, finish)),
        Quantity("patch margin", Fraction(1, 4) if is_inch else Fraction(3, 5), unit, sample), "Cotton batting",
    )  # fmt: skip
