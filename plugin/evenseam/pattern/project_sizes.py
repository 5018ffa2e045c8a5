"""The trade's usual project sizes by name, and a quilt's size from a mattress and a drop.

Published sizes differ; each entry says what was chosen and from what range. They are where a pattern may begin, never
a rule a project must keep.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern.quantity import Assumed, Quantity, derived


@dataclass(frozen=True, slots=True)
class UsualSize:
    """A finished size, or a mattress, by one of the names the trade knows it by."""

    name: str
    unit: Unit
    width: Fraction
    height: Fraction
    choice: str
    """What was chosen out of which range."""
    source: str
    is_mattress: bool = False
    is_pad: bool = False


_TABLE = "Manchester Quilters, Standard quilt sizes; bcquilter"
_MATTRESSES = "sewwhatquiltshop, Standard Mattress Sizes, 2010; Honey Be Good, 2012; delawarequilts; shopbedding"
_EUROPE = "Soak & Sleep, Mattress & Bed Size Guide; Barker and Stonehouse; Sleep and Snooze"


def _size(name: str, width: int, height: int, choice: str, source: str) -> UsualSize:
    return UsualSize(name, Unit.INCH, Fraction(width), Fraction(height), choice, source)


def _bed(name: str, width: int, height: int, choice: str = "") -> UsualSize:
    return UsualSize(name, Unit.INCH, Fraction(width), Fraction(height), choice, _MATTRESSES, is_mattress=True)


def _european(name: str, width: int, height: int, choice: str = "") -> UsualSize:
    return UsualSize(name, Unit.CENTIMETRE, Fraction(width), Fraction(height), choice, _EUROPE, is_mattress=True)


USUAL_SIZES = (
    _size(
        "mug rug", 8, 6, "published sizes run from 5 × 7 in to 6 × 10 in", "Patchwork Posse; Judy's; ediewarren, 2014"
    ),
    _size("pot holder", 8, 8, "published sizes run from 6 in to 9 1/2 in; 8 1/2 in cut", "52quilts, 2012"),
    _size(
        "place mat", 18, 12, "published sizes run from 11 × 15 in to 16 × 18 in",
        "American Patchwork & Quilting, Quilt-as-you-go place mat, 2017; Manchester Quilters",
    ),
    _size("table runner", 48, 14, "published sizes run from 12 to 18 in by 40 to 72 in", _TABLE),
    _size("table topper", 36, 36, "the size both pages give", _TABLE),
    _size("wall hanging", 36, 36, "any size hangs; 36 in lets one pair of hands hang it", "common practice"),
    UsualSize(
        "cushion", Unit.INCH, Fraction(18), Fraction(18),
        "pads are sold from 12 to 24 in; the cover is made as large as the pad, so that it sits full",
        "common practice", is_pad=True,
    ),
    _size(
        "cot", 36, 50, "published sizes run from 30 × 46 in to 45 × 60 in; this one is in both charts",
        "Runaway Quilting, Quilt sizes; thequiltinggarden, Quilt Size Reference Chart, 2010",
    ),
    _size(
        "baby", 42, 52, "published sizes run from 36 × 36 in to 52 × 52 in", "quilterspantry, Quilt measurements, 2011"
    ),
    _size(
        "lap", 60, 72, "published sizes run from 36 × 47 in to 52 × 78 in; this is one of them", "quilterspantry, 2011"
    ),
    _size(
        "throw", 50, 72, "published sizes run from 50 to 52 in by 72 to 78 in",
        "Manchester Quilters, Standard quilt sizes",
    ),
    _bed("twin", 39, 75, "38 × 75 in and 39 × 74 in are sold too"),
    _bed("twin XL", 39, 80, "36 × 80 in is sold too"),
    _bed("full", 54, 75, "53 × 75 in and 54 × 74 in are sold too"),
    _bed("queen", 60, 80),
    _bed("king", 76, 80, "78 × 80 in is sold too"),
    _bed("California king", 72, 84),
    UsualSize(
        "cushion", Unit.CENTIMETRE, Fraction(45), Fraction(45),
        "pads are sold from 30 to 60 cm; the cover is made as large as the pad, so that it sits full",
        "common practice", is_pad=True,
    ),
    _european("cot", 60, 120),
    _european("cot bed", 70, 140),
    _european("small single", 75, 190),
    _european("single", 90, 190),
    _european("small double", 120, 190),
    _european("double", 135, 190),
    _european("king", 150, 200, "a bed called king elsewhere is wider"),
    _european("super king", 180, 200),
    _european("European single", 90, 200),
    _european("European double", 140, 200),
    _european("European king", 160, 200),
)  # fmt: skip
"""In inches as they are known in America, in centimetres as in Britain and on the Continent."""

USUAL_DROP = {Unit.INCH: Fraction(12), Unit.CENTIMETRE: Fraction(30)}
_DROP_SOURCE = "CIA's Palette, Standard Mattress Sizes"
_COT_DROP = Fraction(15)
"""Over the sides of a European cot mattress; a cot quilt for the floor or the pram needs no more (common practice)."""


def usual_size(name: str, unit: Unit) -> UsualSize | None:
    """Return a size by its name, as it is known where a pattern in this unit is drafted, or else elsewhere."""
    wanted = " ".join(name.lower().split())
    found = [size for size in USUAL_SIZES if size.name.lower() == wanted]
    return next((size for size in found if size.unit is unit), found[0] if found else None)


def known_names() -> tuple[str, ...]:
    """Return every name once."""
    return tuple(dict.fromkeys(size.name for size in USUAL_SIZES))


def usual_drop(size: UsualSize) -> Quantity:
    """Return the drop that holds for a mattress when nobody gave one."""
    if size.name in ("cot", "cot bed"):
        return Quantity(
            "drop", _COT_DROP, size.unit, Assumed("a cot quilt lies on the floor or the pram", "common practice")
        )
    return Quantity("drop", USUAL_DROP[size.unit], size.unit, Assumed("the usual drop over the sides", _DROP_SOURCE))


def sides_of(size: UsualSize) -> tuple[Quantity, Quantity]:
    """Return width and height of a usual size, with its reason."""
    what = "mattress" if size.is_mattress else "pad" if size.is_pad else "usual size"
    reason = f"the usual size of a {size.name}" if not size.is_mattress else f"the mattress of a {size.name} bed"
    because = Assumed(f"{reason}; {size.choice}" if size.choice else reason, size.source)
    return (
        Quantity(f"width of the {what}", size.width, size.unit, because),
        Quantity(f"length of the {what}", size.height, size.unit, because),
    )


def over_a_mattress(
    width: Quantity, length: Quantity, drop: Quantity, tuck: Quantity | None
) -> tuple[Quantity, Quantity]:
    """Return the finished width and height of a quilt that hangs over both sides and the foot of a bed.

    `tuck` is what goes round the pillows at the head, if anything does.
    """
    over = length + drop if tuck is None else length + drop + tuck
    at_head = "" if tuck is None else ", and what is tucked round the pillows"
    across, down = "the mattress, and a drop at either side", f"the mattress, and a drop at the foot{at_head}"
    return (
        derived("width asked for", width + 2 * drop, rule=across, source=_DROP_SOURCE),
        derived("height asked for", over, rule=down, source=_DROP_SOURCE),
    )
