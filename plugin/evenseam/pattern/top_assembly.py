r"""Operations of the assembly program for tops set on point and for borders that are not butted.

Sashing on point. Blocks lie on a lattice whose cells are one block and one sashing width apart; with the page turned,
column m and row k of it begin at (m, k) × (block + sashing). A row of blocks runs from its first to its last block,
with an upright sash between neighbours, and one at either end where sashing goes all round. Between two neighbouring
rows lies a row of sashing: at either end it reaches as far as the longer of the two rows there (all round: one such
row lies outside the first row and one outside the last, as long as they are). It is sewn on for itself, not to one of
the rows first, because where rows are shifted against each other it belongs to another row at either end.

::

        all round, cornerstones          not all round                 s sash, c cornerstone, B block,
           c s c s c                        S s c s S                  C, S the same, cut longer:
           s B s B s                        B s B s B                  they are cut through when
         C s c s c s C  <- both ends                                   the top is squared up
         s B s B s B s

The edge of the top runs at 45 degrees through the outermost corners of blocks and strips, through the middle of the
end cornerstones. A row of sashing that ended where the longer row ends would not reach it with its seam allowance, so
its end pieces (or the whole strip, when it is one strip without cornerstones) are cut longer outwards, and the same at
either end: by √2 × (float + seam allowance), the larger of the two floats, brought up to the next mark of the ruler.

The square for setting triangles is as large as their finished long side and 5 × the seam allowance, that for corner
triangles as their finished short side and 3 1/2 × the seam allowance, both brought up to the next mark: the terms of
the published tables (1 1/4 in and 7/8 in), which hold (2 + 2√2) × and (2 + √2) × the seam allowance and a little ease.

Where an edge of the trimmed top has a square root in it, a strip that is sewn to it is cut to the next mark up and
trimmed even with the edge; so are the layers and the binding cut to the next mark up.
"""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.pattern.quantity import Quantity


@dataclass(frozen=True, slots=True)
class AddSettingTriangles:
    r"""Sew a triangle to each end of a diagonal row.

    A setting triangle is sewn on by a short side, its right angle level with the edge of the row that looks to the
    middle of the top at that end (where the neighbouring row is the longer one); a corner triangle is sewn on by its
    long side, middle to middle. With the page turned so that the row lies across from left to right:

    ::

             ,+---+---+---+.             +---+---+---+--,           +---+---+---+
            / |   |   |   | \           |   |   |   | /           <|   |   |   |>
           /--+---+---+---+--\          +---+---+---+'            +---+---+---+
        both ends: row below is longer   end: row above is         corner triangles
    """

    row: str
    """Workpiece: a block, a row of blocks, or a row of blocks with the upright sashes between them and at its ends."""
    start: str
    """Cut id of the triangle at the lower left end (the left one, with the page turned)."""
    end: str
    """Cut id of the triangle at the upper right end."""
    number: int
    """Which diagonal row it is, counted from 0 at the top left corner of the finished top."""
    quarter_turns: int = 0
    """How far a row that is a single block is turned clockwise before the triangles are sewn on, 0 to 3."""


@dataclass(frozen=True, slots=True)
class JoinDiagonalRows:
    """Sew the diagonal rows together, first to last, and the last two corner triangles to the first and last row."""

    rows: tuple[str, ...]
    """Workpieces, from the top left corner of the finished top to the bottom right one: rows with their triangles, and
    rows of sashing where there are any."""
    corner: str
    """Cut id of the corner triangles: one for the top left corner, one for the bottom right."""


@dataclass(frozen=True, slots=True)
class TrimTop:
    """Trim a top set on point to an upright rectangle, the same distance beyond the blocks on all sides."""

    top: str
    beyond: Quantity
    """From the outermost corners of the blocks (all round: of the sashing strips, which is the middle of the end
    cornerstones) to the new raw edge at the left and right: float and seam allowance."""
    beyond_top_bottom: Quantity | None = None
    """The same at the top and bottom; None when it is the same distance."""


@dataclass(frozen=True, slots=True)
class AddMitredBorder:
    """Sew four strips round the centre, from seam line to seam line, and sew the four corners at 45 degrees.

    The strips reach at least from raw point to raw point: the raw edge of the centre and twice the finished width of
    all the borders; what they are longer is the same for all four, a whole number of half inches or half centimetres.

    Several borders may be one strip: then the strips were joined lengthwise before, innermost first. A border whose
    print has an up is mitred by itself: a joined strip turned half round would stand it on its head.
    """

    borders: tuple[str, ...]
    """Border ids, innermost first."""
    centre: str
    sides: str
    """Workpiece or cut id of the left and right strips, two of each are used; as it lies on the left-hand side when it
    is a joined one (outermost border at the left), turned half round for the other side."""
    top_bottom: str
    """Likewise, as it lies along the top: outermost border at the top."""


@dataclass(frozen=True, slots=True)
class AddPartialSeamBorder:
    """Sew four strips round the centre one after the other, each past one corner, the first in part and closed last.

    ::

        +-------+--+     the top strip starts at the left and passes the top right corner no further than the centre;
        | top   |  |     each strip is one edge of the centre and one finished width of the border long, and a seam
        +--+----+ r|     allowance at either end
        |l |    |  |
        |  |    |  |
        |  +----+--+
        +--+ bottom|
        +--+-------+
    """

    border: str
    centre: str
    sides: str
    """Cut id of the left and right strips."""
    top_bottom: str
    """Cut id of the top and bottom strips."""
