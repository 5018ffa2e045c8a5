"""Figures nobody wrote: the usual ones of the trade, each with its reason and where it is published."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Assumed, Quantity

LARGE_FROM = {Unit.INCH: Fraction(36), Unit.CENTIMETRE: Fraction(90)}
"""Where the defaults for small pieces end: the longer side of the blocks laid edge to edge. Our own line; the
published figures are for wall pieces and place mats on one side, for quilts on the other."""


@dataclass(frozen=True, slots=True)
class Default:
    """A usual figure in inches, its metric counterpart on a metric ruler, the reason and the source."""

    inches: str
    centimetres: str
    reason: str
    source: str = "common practice"

    def quantity(self, name: str, unit: Unit) -> Quantity:
        """Return it as a named figure of an edition."""
        value = Fraction(self.inches if unit is Unit.INCH else self.centimetres)
        return Quantity(name, value, unit, Assumed(self.reason, self._source(unit)))

    def _source(self, unit: Unit) -> str:
        if unit is Unit.INCH or self.source == "common practice" or self is SEAM_ALLOWANCE:
            return self.source
        return f"{self.source}; the inch figure on a metric ruler"


SEAM_ALLOWANCE = Default(
    "1/4", "0.75",
    "the usual seam allowance of patchwork",
    "weednstitch, Metric Flying Geese, 2012, and lonesockproductions, 2010, for 0.75 cm; 1/4 in is common practice",
)  # fmt: skip
USABLE_WIDTH = Default(
    "42", "107", "the usual width of quilting cotton between the selvages", "American Patchwork & Quilting, 2017"
)
PATCH_MARGIN = Default(
    "1/4", "0.75", "with the seam allowance, 1/2 in beyond the piece on every side",
    "Gail Garber, Cutting the Main Fabric for Paper Foundation Piecing; McCall's / Quilting Daily, Stumbling Blocks, "
    "2022",
)  # fmt: skip
BACKING_TURNED = Default(
    "1", "2.5", "2 in longer than the top in all; trimmed after sewing", "sewspecialwithdenise, 2015"
)
BACKING_BOUND_SMALL = Default(
    "2", "5", "the usual extra for small quilts", "W. Robertson, small wall quilt; about.com quilting guide"
)
BACKING_BOUND_LARGE = Default(
    "4",
    "10",
    "the usual extra for quilts, 8 in in all",
    "Log House Quilting, Preparing Your Quilt; Quilts of Valor Foundation",
)
BACKING_SEAM = Default(
    "1/2", "1.5", "backing seams are sewn wider than patchwork seams", "Janet Wickell, Quilt backing, about.com"
)
BATTING_TURNED = Default(
    "1", "2.5", "a little larger than the top; trimmed after sewing", "Fabric Mill, Pre-Bind a Quilt"
)
BATTING_BOUND_SMALL = Default(
    "1", "2.5", "half the extra of the backing, for small quilts", "W. Robertson, small wall quilt"
)
BATTING_BOUND_LARGE = Default("3", "7.5", "6 in larger than the top in all", "Log House Quilting, Preparing Your Quilt")
OPENING_SMALL = Default("4", "10", "wide enough for a hand on a small piece", "beebees, place mat tutorial, 2013")
OPENING_LARGE = Default("15", "38", "the opening grows with the quilt", "Fabric Mill, Pre-Bind a Quilt")
TOPSTITCH = Default("1/8", "0.3", "close to the edge")
BINDING_STRIP = Default("9/4", "6", "strips for a double-fold binding", "angiequilts, Brilliant Binding")
BINDING_EXTRA = Default("10", "25", "for the corners and the last join", "Monica Curry, 2019")
_SHOW_RULE = "International Quilt Association, Instructions for Making Sleeves"
SLEEVE_DEPTH = Default("17/2", "22", "finishes about 4 in deep when folded and sewn", _SHOW_RULE)
SLEEVE_EXTRA = Default("2", "5", "hemmed, it ends a little inside the edges", _SHOW_RULE)
SLEEVE_HEM = Default("3/2", "4", "hemmed twice at each end", _SHOW_RULE)
SLEEVE_DROP = Default("1", "2.5", "so that it does not show above the edge", _SHOW_RULE)
POCKET_SQUARE = Default(
    "4",
    "10",
    "the usual square for pockets of a small piece",
    "from memory; aliceanjo, Easy Way to Hang a Small Quilt, 2009, has larger ones",
)
_HOME_RULE = "W. Robertson, sleeves of 6 in for small pieces and 8 in for others, the ends hemmed 1/2 in twice"
SLEEVE_DEPTH_HOME_SMALL = Default("6", "15", "for a rod at home, on a small piece", _HOME_RULE)
SLEEVE_DEPTH_HOME_LARGE = Default("8", "20", "for a rod at home", _HOME_RULE)
SLEEVE_EXTRA_HOME = Default(
    "0", "0", "cut as long as the project is wide; hemmed, it ends inside the edges", _HOME_RULE
)
SLEEVE_HEM_HOME = Default("1", "2.5", "folded under 1/2 in twice at each end", _HOME_RULE)
CORNER_RADIUS = Default("2", "5", "about the curve of a saucer")
FACING_STRIP = Default("5/2", "6", "wide enough to lie flat on the back")
FACING_FOLD = Default("1/4", "0.5", "hides the raw edge")
QUILTING_STOP = Default("1/2", "1.5", "leaves room to fold both edges in")
PANEL_OVERLAP = Default("4", "10", "so that the back does not gape over a full pad")
PANEL_HEM = Default("1/2", "1", "1/2 to 3/4 in is folded", "quiltsbyjen, Another no-binding finish for a quilt")
LOOP_WIDTH = Default("4", "10", "finishes a little less than half as wide")
LOOP_LENGTH = Default("6", "15", "folded to a 3 in loop", "52quilts, 2012, for pot holders")
RING_DROP = Default("1/2", "1.5", "so that they do not show above the edge")

SHOP_STEPS = {
    "1/8 yd": (Fraction(1, 8), Unit.YARD),
    "1/4 yd": (Fraction(1, 4), Unit.YARD),
    "1/3 yd": (Fraction(1, 3), Unit.YARD),
    "10 cm": (Fraction(1, 10), Unit.METRE),
    "25 cm": (Fraction(1, 4), Unit.METRE),
}
"""The steps cloth is sold by, in yards and metres. Without one the usual step holds, which planning assumes."""
