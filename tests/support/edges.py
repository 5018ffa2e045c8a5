"""Finishes without binding, rounded corners, loops and rings, as values; and projects whose edge cannot be made so."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import (
    Assumed,
    Binding,
    Bound,
    Choosing,
    EnvelopeBack,
    Faced,
    Finish,
    Fit,
    Given,
    Grain,
    Hanging,
    KnifeEdge,
    Loops,
    Project,
    Quantity,
    Rings,
)
from evenseam.problems import Place
from hypothesis import strategies as st

from support.borders import bordered, of_blocks, pennant
from support.samples import BOUND, MUG_RUG, POCKETS, WALL_HANGING, count, length
from support.strategies import finishes, hangings, lengths, projects

PLACE = Place("patterns/sample/pattern.yaml", 7, 3, 7, 9)

_LAYERS = (
    "sea", length("backing overage", "2"), length("batting overage", "1"), length("backing seam allowance", "1/2"),
)  # fmt: skip
FACED = Faced(*_LAYERS, "reed", length("facing strip width", "2 1/2"), length("facing fold", "1/4"))
KNIFE_EDGE = KnifeEdge(*_LAYERS, length("quilting stop", "1/2"), length("edge stitch distance", "1/8"))
ENVELOPE = EnvelopeBack(*_LAYERS, "fog", length("overlap of the back panels", "4"), length("hem", "1/2"))
BIAS = replace(BOUND.binding, grain=Grain.BIAS)
ROUNDED = replace(BOUND, binding=BIAS, corner_radius=length("corner radius", "2"))
LOOPS = Loops("lamp", count("number of loops", 3), length("loop cut width", "4"), length("loop cut length", "6"))
RINGS = Rings(count("number of rings", 3), length("ring drop", "1/2"))


def showing(text: str, unit: Unit = Unit.INCH, grain: Grain = Grain.STRAIGHT) -> Bound:
    """Return a bound finish that shows so much of its binding."""
    binding = replace(BOUND.binding, shows=length("width of binding that shows", text, unit), grain=grain)
    return replace(BOUND, binding=binding)


def fitted(project: Project, width: str, height: str, **changes: object) -> Project:
    """Return a project that is to come near to a finished size."""
    unit = project.unit
    fit = Fit("", length("width asked for", width, unit), length("height asked for", height, unit), place=PLACE)
    return replace(project, fit=replace(fit, **changes))  # type: ignore[arg-type]


def _at_place(quantity: Quantity) -> Quantity:
    return replace(quantity, because=Given(PLACE))


def _plain(finish: Finish, hanging: Hanging | None = None) -> Project:
    return replace(MUG_RUG, finish=replace(finish, place=PLACE), hanging=hanging, use="")


def _hung(hanging: Hanging, finish: Finish = BOUND) -> Project:
    return replace(WALL_HANGING, finish=finish, hanging=replace(hanging, place=PLACE))


def _placed_radius(text: str, grain: Grain = Grain.BIAS) -> Project:
    radius = _at_place(length("corner radius", text))
    return _plain(replace(BOUND, binding=replace(BIAS, grain=grain), corner_radius=radius))


def _never_even() -> Project:
    ring = of_blocks("ring", "pennant", spacer=None)
    project = bordered(ring, blocks=(pennant("2 1/2"),))
    return fitted(project, "20", "30", may_choose=(Choosing.BORDER_WIDTHS,))


EDGE_CASES = [
    ("rounded-corners-need-bias", _placed_radius("2", Grain.STRAIGHT), "flat round a curve", "grain: bias"),
    ("corners-too-round", _placed_radius("6"), "6 in do not fit on an edge of 8 1/2 in", "smaller"),
    ("corners-too-round", _placed_radius("1/2"), "shows 1/4 in", "larger"),
    ("binding-shows-too-little", _plain(showing("1/8")), "1/8 in does not reach the seam lines, which lie 1/4 in", "1/4 in"),
    (
        "binding-covers-blocks", replace(_plain(showing("3/8")), borders=()),
        "3/8 in covers 1/8 in of the blocks", "border",
    ),
    ("finish-does-not-fit", _plain(replace(FACED, facing_width=length("w", "6"))), "5 1/2 in wide", "less than half"),
    ("finish-does-not-fit", _plain(replace(FACED, facing_width=length("w", "1/2"))), "0 in wide", "half an inch"),
    ("finish-does-not-fit", _plain(replace(KNIFE_EDGE, quilting_stop=length("s", "1/4"))), "1/4 in be folded", "further"),
    ("finish-does-not-fit", _plain(replace(KNIFE_EDGE, quilting_stop=length("s", "4"))), "leaves nothing", "nearer"),
    ("finish-does-not-fit", _plain(replace(ENVELOPE, overlap=length("o", "10"))), "overlap by 10 in", "quarter"),
    ("hanging-not-caught", _hung(LOOPS, ENVELOPE), "nothing to hang by", "none"),
    ("hanging-not-caught", _hung(POCKETS, KNIFE_EDGE), "no seam catches", "sleeve"),
    ("hanging-too-large", _hung(replace(LOOPS, number=count("n", 30))), "30 loops, each 1 3/4 in", "fewer"),
    ("hanging-too-large", _hung(replace(LOOPS, cut_length=length("l", "1/2"))), "showing 0 in", "inches long"),
    ("hanging-too-large", _hung(replace(RINGS, drop=length("d", "20"))), "20 in below", "nearer"),
    ("fit-far-off", fitted(MUG_RUG, "3", "4"), "8 in where 3 in", "widest border"),
    ("nothing-fits", _never_even(), "near 20 × 30 in", "size of the blocks"),
]  # fmt: skip
"""Code, project, words of the message, words of the way out."""


@st.composite
def edge_finishes(draw: st.DrawFn, unit: Unit) -> Finish:
    """Return any finish, with every choice it leaves, that every project of the common strategies has room for."""
    base = draw(finishes(unit))
    seam = draw(lengths("backing seam allowance", unit, "1/2", "1/2"))
    layers = (base.backing_fabric, base.backing_overage, base.batting_overage, seam)
    fabric = draw(st.sampled_from(["sea", "fog", "lamp", "reed"]))
    match draw(st.integers(0, 5)):
        case 0:
            return base
        case 1:
            shows = draw(st.none() | lengths("width of binding that shows", unit, "3/8", "3/4", _eighth(unit)))
            radius = draw(st.none() | lengths("corner radius", unit, "2", "2"))
            grain = Grain.BIAS if radius else draw(st.sampled_from(Grain))
            extra, strip = length("binding extra length", "10", unit), length("binding strip width", "3", unit)
            strip = replace(strip, value=strip.value * (1 if unit is Unit.INCH else Fraction(5, 2)))
            if radius is not None and shows is not None:
                shows = replace(shows, value=Fraction(3, 8) if unit is Unit.INCH else Fraction(9, 10))
            return Bound(*layers, Binding(fabric, strip, extra, grain, shows=shows), corner_radius=radius)
        case 2:
            fold = Quantity("facing fold", Fraction(1, 4) if unit is Unit.INCH else Fraction(1, 2), unit, _SAMPLE)
            return Faced(*layers, fabric, draw(lengths("facing strip width", unit, "3/2", "7/4")), fold)
        case 3:
            stitch = draw(lengths("edge stitch distance", unit, "1/8", "1/4", _eighth(unit)))
            return KnifeEdge(*layers, draw(lengths("quilting stop", unit, "1/2", "1")), stitch)
        case _:
            overlap = draw(lengths("overlap of the back panels", unit, "1/2", "3/4"))
            return EnvelopeBack(*layers, fabric, overlap, draw(lengths("hem", unit, "1/4", "1/4", _eighth(unit))))


_SAMPLE = Assumed("drawn at random")


def _eighth(unit: Unit) -> str:
    return "1/8" if unit is Unit.INCH else "1/10"


@st.composite
def edged_projects(draw: st.DrawFn) -> Project:
    """Return a random project with any finish, hung by anything that goes with it."""
    project = draw(projects())
    unit = project.blocks[0].width.unit
    finish = draw(edge_finishes(unit))
    hanging: Hanging | None
    match draw(st.integers(0, 3)):
        case 0:
            number = count("number of loops", draw(st.integers(1, 2)))
            wide = draw(lengths("loop cut width", unit, "3/2", "2"))
            hanging = Loops("lamp", number, wide, draw(lengths("loop cut length", unit, "3", "6")))
        case 1:
            hanging = Rings(
                count("number of rings", draw(st.integers(1, 4))), draw(lengths("ring drop", unit, "1/2", "1"))
            )
        case _:
            hanging = draw(hangings(unit))
    if isinstance(finish, EnvelopeBack):
        hanging = None
    return replace(project, finish=finish, hanging=hanging)
