"""The cuts of blocks on point: setting and corner triangles, sashes, cornerstones, longer pieces at the ends."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, Cut, CutShape, Quantity, Sashing, StripJoin, derived
from evenseam.sizing.on_point import diagonal_rows, sashing_on_point, sashing_rows, triangles_of
from evenseam.sizing.sized import SizedProject

SETTING_TRIANGLE = "setting-triangles"
SIDE_TRIANGLE = "setting-triangles-sides"
TOP_BOTTOM_TRIANGLE = "setting-triangles-top-bottom"
CORNER_TRIANGLE = "corner-triangles"
ROW_SASH = "sashing-in-rows"
SASHING_ROW_SASH = "sashing-in-sashing-rows"
END_SASH = "sashing-ends"
INNER_CORNERSTONE = "sashing-cornerstone"
END_CORNERSTONE = "sashing-end-cornerstone"
_PER_SQUARE = 4


def on_point_cuts(sized: SizedProject) -> list[Cut]:
    """Return the cuts that lie between and around blocks on point, in the order of the making."""
    sashing = sashing_on_point(sized.project.arrangement)
    return [*(_sashing(sashing, sized) if sashing else []), *_triangles(sized)]


def sashing_strip_id(sashes: int) -> str:
    """Return the cut id of a long strip of sashing that lies along so many blocks."""
    return f"sashing-along-{sashes}"


def triangle_id(sized: SizedProject, *, is_at_side: bool, number: int) -> str:
    """Return the cut id of one of the setting triangles of the left and right edges, or of the top and bottom ones.

    `number` counts them, even along the left edge or the bottom one and odd along the opposite one. Of a fabric with
    an up, the squares cut in four give one triangle for every edge; where the sides are longer than the top, the last
    triangles of the sides come from squares of their own.
    """
    if not sized.project.fabric(triangles_of(sized.project).fabric).is_directional:
        return SETTING_TRIANGLE
    rows, columns = sized.figure("rows").whole, sized.figure("columns").whole
    if number < 2 * (min(rows, columns) - 1):
        return SETTING_TRIANGLE
    return SIDE_TRIANGLE if is_at_side else TOP_BOTTOM_TRIANGLE


def _is_upright(sized: SizedProject, fabric: str) -> bool:
    return sized.project.fabric(fabric).is_directional


def _triangles(sized: SizedProject) -> list[Cut]:
    triangles, known = triangles_of(sized.project), dict(sized.figures)
    cuts = []
    if "setting_triangle_count" in known:
        square = known["setting_triangle_square"]
        cuts += _setting_triangles(triangles.fabric, square, sized)
    square = known["corner_triangle_square"]
    cuts.append(
        Cut(
            CORNER_TRIANGLE, "corner triangles", triangles.corner_fabric, CutShape.HALF_SQUARE_TRIANGLE, square, square,
            known["corner_triangle_count"], "setting", _is_upright(sized, triangles.corner_fabric),
        )
    )  # fmt: skip
    return cuts


def _setting_triangles(fabric: str, square: Quantity, sized: SizedProject) -> list[Cut]:
    rows, columns, count = sized.figure("rows"), sized.figure("columns"), sized.figure("setting_triangle_count")
    label, shape = "setting triangles", CutShape.QUARTER_SQUARE_TRIANGLE
    if not _is_upright(sized, fabric):
        return [Cut(SETTING_TRIANGLE, label, fabric, shape, square, square, count, "setting")]
    fewer, more = (rows, columns) if rows.value <= columns.value else (columns, rows)
    cuts = []
    if fewer.whole > 1:
        each = derived(f"number of {label}, as many for every edge", 4 * (fewer - 1))
        cuts.append(Cut(SETTING_TRIANGLE, label, fabric, shape, square, square, each, "setting", True))
    if more.whole > fewer.whole:
        at_sides = more is rows
        edges = "left and right edges" if at_sides else "top and bottom edges"
        rest = derived(f"number of further {label} for the {edges}", 2 * (more - fewer))
        id = SIDE_TRIANGLE if at_sides else TOP_BOTTOM_TRIANGLE
        further = f"further {label} for the {edges}"
        cuts.append(Cut(id, further, fabric, shape, square, square, rest, "setting", True, used_of_square=2))
    return cuts


def _sashing(sashing: Sashing, sized: SizedProject) -> list[Cut]:
    known = dict(sized.figures)
    wide, long = known["sashing_strip_width"], known["sash_length"]
    cuts = []

    # A print with an up lies askew here, but upright cuts make it lean one way in all strips, and in the blocks too.
    upright = _is_upright(sized, sashing.fabric)

    def strip(id: str, label: str, width: Quantity, height: Quantity, count: Quantity) -> None:
        cuts.append(Cut(id, label, sashing.fabric, CutShape.STRIP, width, height, count, "sashing", upright))

    if "row_sash_count" in known:
        strip(ROW_SASH, "sashing strips for the rows of blocks", wide, long, known["row_sash_count"])
    if sashing.cornerstone_fabric is None:
        rows = sashing_rows(diagonal_rows(sized.project.arrangement), sashing)
        for sashes in sorted({row.sashes for row in rows}):
            number = sum(row.sashes == sashes for row in rows)
            name = f"long sashing strips along {sashes} blocks" if sashes > 1 else "sashing strips along one block"
            cuts.append(
                Cut(
                    sashing_strip_id(sashes), name, sashing.fabric, CutShape.STRIP,
                    known[f"sashing_strip_{sashes}_length"], wide, _count(name, number), "sashing", upright,
                    # A diagonal join shows less, but it would set a directional print athwart.
                    StripJoin.STRAIGHT if upright else StripJoin.DIAGONAL,
                )
            )  # fmt: skip
        return cuts
    if "sashing_row_sash_count" in known:
        label = "sashing strips for the rows of sashing"
        strip(SASHING_ROW_SASH, label, long, wide, known["sashing_row_sash_count"])
    if "end_sash_count" in known:
        label = "longer sashing strips for the ends of the rows of sashing"
        strip(END_SASH, label, known["end_sash_length"], wide, known["end_sash_count"])
    fabric, size = sashing.cornerstone_fabric, known["cornerstone_size"]
    if "cornerstone_count" in known:
        cuts.append(
            Cut(
                INNER_CORNERSTONE, "cornerstones of the sashing", fabric, CutShape.SQUARE, size, size,
                known["cornerstone_count"], "sashing", _is_upright(sized, fabric),
            )
        )  # fmt: skip
    if "end_cornerstone_count" in known:
        cuts.append(
            Cut(
                END_CORNERSTONE, "longer cornerstones for the ends of the rows of sashing", fabric, CutShape.RECTANGLE,
                known["end_cornerstone_length"], size, known["end_cornerstone_count"], "sashing",
                _is_upright(sized, fabric),
            )
        )  # fmt: skip
    return cuts


def _count(what: str, number: int) -> Quantity:
    reason = "so many go into one project"
    return Quantity(f"number of {what}", Fraction(number), Unit.COUNT, Assumed(reason, "counted"))
