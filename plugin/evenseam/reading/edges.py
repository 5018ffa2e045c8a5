"""How the edge of a project is finished, and what it hangs by, read."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import (
    Assumed,
    Binding,
    Bound,
    CornerPockets,
    EnvelopeBack,
    Faced,
    Finish,
    Grain,
    Hanging,
    KnifeEdge,
    Loops,
    Quantity,
    Rings,
    Sleeve,
    StripJoin,
    Turned,
)
from evenseam.problems import Label, Place
from evenseam.reading import codes, defaults
from evenseam.reading.edge_keys import BACKING, BINDING, FACING, FINISH, HANGING, PANELS, TURNED_BACKING
from evenseam.reading.entries import Entries, Reader
from evenseam.reading.leaves import read_choice
from evenseam.reading.parts import MISSING, Missing
from evenseam.reading.tree import Entry, Mapping, is_inside, is_none


def read_finish(reader: Reader, entry: Entry | None, is_large: bool) -> Finish | None:
    """Return how the edge is closed. `is_large` chooses between the usual figures of small pieces and of quilts."""
    if entry is None or not isinstance(entry.value, Mapping):
        return None
    word = _deciding_word(reader, entry.value, FINISH.key, FINISH.options, "finish", entry.key.place)
    if word is None:
        return None
    entries = Entries(reader, entry.value, FINISH.record(word), _decided_at(entry, entry.value, FINISH.key))
    if word == "turned":
        return _read_turned(entries, is_large)
    layers = _read_layers(entries, is_large)
    match word:
        case "bound":
            return _read_bound(entries, layers)
        case "faced":
            return _read_faced(entries, layers)
        case "knife edge":
            return _read_knife_edge(entries, layers)
        case _:
            return _read_envelope(entries, layers)


def _decided_at(entry: Entry, mapping: Mapping, key: str) -> Place:
    """Return where a part was decided: its key, or the word for its kind where a size says another one than the base.

    What the new kind needs is missing in the size then, and not where the base says something else.
    """
    kind = mapping.entry(key)
    if kind is None or is_inside(kind.key.place, mapping.place):
        return entry.key.place
    return kind.key.place


def _read_turned(entries: Entries, is_large: bool) -> Turned | None:
    backing = entries.inner("backing", TURNED_BACKING)
    fabric = backing.fabric("fabric") if backing else None
    overage = backing.length("overage", "backing overage", defaults.BACKING_TURNED) if backing else None
    batting = entries.length("batting overage", "batting overage", defaults.BATTING_TURNED)
    opening = entries.length("opening", "opening", defaults.OPENING_LARGE if is_large else defaults.OPENING_SMALL)
    topstitch = entries.length("topstitch", "topstitch distance", defaults.TOPSTITCH)
    if fabric is None or overage is None or batting is None or opening is None or topstitch is None:
        return None
    return Turned(fabric, overage, batting, opening, topstitch, entries.at)


_Layers = tuple[str, Quantity, Quantity, Quantity]
"""Of a quilted project: fabric of the backing, overage of backing and batting, seam allowance of the backing."""


def _read_layers(entries: Entries, is_large: bool) -> _Layers | None:
    backing = entries.inner("backing", BACKING)
    usual_backing = defaults.BACKING_BOUND_LARGE if is_large else defaults.BACKING_BOUND_SMALL
    usual_batting = defaults.BATTING_BOUND_LARGE if is_large else defaults.BATTING_BOUND_SMALL
    fabric = backing.fabric("fabric") if backing else None
    overage = backing.length("overage", "backing overage", usual_backing) if backing else None
    seam = backing.length("seam allowance", "backing seam allowance", defaults.BACKING_SEAM) if backing else None
    batting = entries.length("batting overage", "batting overage", usual_batting)
    if fabric is None or overage is None or seam is None or batting is None:
        return None
    return fabric, overage, batting, seam


def _read_bound(entries: Entries, layers: _Layers | None) -> Bound | None:
    binding = _read_binding(entries.inner("binding", BINDING))
    corners = entries.choice("corners", "square")
    radius = entries.length("radius", "corner radius", defaults.CORNER_RADIUS if corners == "rounded" else None)
    given_radius = entries.get("radius")
    if given_radius is not None and corners == "square":
        entries.reader.report.add(
            codes.SAID_TWO_WAYS, given_radius.key.place, "square corners have no radius",
            "write `corners: rounded` beside it, or take the radius out",
        )  # fmt: skip
        return None
    if layers is None or binding is None or corners is None or (corners == "rounded" and radius is None):
        return None
    return Bound(*layers, binding, entries.at, radius)


def _read_binding(entries: Entries | None) -> Binding | None:
    if entries is None:
        return None
    fabric = entries.fabric("fabric")
    width = entries.length("strip width", "binding strip width", defaults.BINDING_STRIP)
    shows = entries.length("shows", "width of binding that shows")
    extra = entries.length("extra length", "binding extra length", defaults.BINDING_EXTRA)
    grain = entries.choice("grain", Grain.STRAIGHT.value)
    join = entries.choice("join", StripJoin.DIAGONAL.value)
    one, two = entries.get("strip width"), entries.get("shows")
    if one is not None and two is not None:
        entries.reader.report.add(
            codes.SAID_TWO_WAYS, two.key.place, "the binding has both a strip width and how much of it shows",
            "keep one of them: each follows from the other", (Label(one.key.place, "the strip width"),),
        )  # fmt: skip
        return None
    if fabric is None or width is None or extra is None or grain is None or join is None:
        return None
    if two is not None and shows is None:
        return None
    return Binding(fabric, width, extra, Grain(grain), StripJoin(join), shows)


def _read_faced(entries: Entries, layers: _Layers | None) -> Faced | None:
    inner = entries.inner("facing", FACING)
    if inner is None:
        return None
    fabric = inner.fabric("fabric")
    width = inner.length("strip width", "facing strip width", defaults.FACING_STRIP)
    fold = inner.length("fold", "facing fold", defaults.FACING_FOLD)
    if layers is None or fabric is None or width is None or fold is None:
        return None
    return Faced(*layers, fabric, width, fold, entries.at)


def _read_knife_edge(entries: Entries, layers: _Layers | None) -> KnifeEdge | None:
    stop = entries.length("quilting stop", "quilting stop", defaults.QUILTING_STOP)
    stitch = entries.length("stitch", "edge stitch distance", defaults.TOPSTITCH)
    if layers is None or stop is None or stitch is None:
        return None
    return KnifeEdge(*layers, stop, stitch, entries.at)


def _read_envelope(entries: Entries, layers: _Layers | None) -> EnvelopeBack | None:
    inner = entries.inner("panels", PANELS)
    if inner is None:
        return None
    fabric = inner.fabric("fabric")
    overlap = inner.length("overlap", "overlap of the back panels", defaults.PANEL_OVERLAP)
    hem = inner.length("hem", "hem of the back panels", defaults.PANEL_HEM)
    if layers is None or fabric is None or overlap is None or hem is None:
        return None
    return EnvelopeBack(*layers, fabric, overlap, hem, entries.at)


def read_hanging(reader: Reader, entry: Entry | None, is_large: bool) -> Hanging | Missing | None:
    """Return how the project hangs; None when it does not. `is_large` tells a quilt from a small piece."""
    if entry is None:
        return None
    if not isinstance(entry.value, Mapping):
        return MISSING
    word = _deciding_word(reader, entry.value, HANGING.key, HANGING.options, "hanging", entry.key.place)
    if word is None:
        return MISSING
    entries = Entries(reader, entry.value, HANGING.record(word), _decided_at(entry, entry.value, HANGING.key))
    match word:
        case "sleeve":
            return _read_sleeve(entries, is_large) or MISSING
        case "corner pockets":
            fabric = entries.fabric("fabric")
            square = entries.length("square", "corner pocket square", defaults.POCKET_SQUARE)
            return CornerPockets(fabric, square, entries.at) if fabric is not None and square is not None else MISSING
        case "loops":
            return _read_loops(entries, is_large) or MISSING
        case _:
            number = _number(entries, "number of rings", is_large)
            drop = entries.length("drop", "ring drop", defaults.RING_DROP)
            return Rings(number, drop, entries.at) if number is not None and drop is not None else MISSING


def _read_sleeve(entries: Entries, is_large: bool) -> Sleeve | None:
    fabric = entries.fabric("fabric")
    rule = entries.choice("rule", "show")
    home_depth = defaults.SLEEVE_DEPTH_HOME_LARGE if is_large else defaults.SLEEVE_DEPTH_HOME_SMALL
    usual = {
        "show": (defaults.SLEEVE_DEPTH, defaults.SLEEVE_EXTRA, defaults.SLEEVE_HEM),
        "home": (home_depth, defaults.SLEEVE_EXTRA_HOME, defaults.SLEEVE_HEM_HOME),
    }
    if rule is None:
        return None
    depth_usual, extra_usual, hem_usual = usual[rule]
    depth = entries.length("cut depth", "sleeve cut depth", depth_usual)
    extra = entries.length("cut extra", "sleeve extra", extra_usual)
    hem = entries.length("hem", "sleeve hem", hem_usual)
    drop = entries.length("drop", "sleeve drop", defaults.SLEEVE_DROP)
    if fabric is None or depth is None or extra is None or hem is None or drop is None:
        return None
    return Sleeve(fabric, depth, extra, hem, drop, entries.at)


def _read_loops(entries: Entries, is_large: bool) -> Loops | None:
    fabric = entries.fabric("fabric")
    number = _number(entries, "number of loops", is_large)
    width = entries.length("cut width", "loop cut width", defaults.LOOP_WIDTH)
    length = entries.length("cut length", "loop cut length", defaults.LOOP_LENGTH)
    if fabric is None or number is None or width is None or length is None:
        return None
    return Loops(fabric, number, width, length, entries.at)


def _number(entries: Entries, name: str, is_large: bool) -> Quantity | None:
    if entries.get("number") is not None:
        return entries.count("number", name)
    reason = "one at either end and one for every foot or so between (common practice)"
    return Quantity(name, Fraction(5 if is_large else 3), Unit.COUNT, Assumed(reason))


def _deciding_word(
    reader: Reader, mapping: Mapping, key: str, options: tuple[str, ...], noun: str, at: Place
) -> str | None:
    value = mapping.value(key)
    if value is None or is_none(value):
        message = f"the {noun} has no {key!r}"
        reader.report.add(codes.MISSING_KEY, at, message, f"add '{key}: {options[0]}' or '{key}: {options[1]}'")
        return None
    return read_choice(value, options, reader.report)
