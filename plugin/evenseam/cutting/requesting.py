"""From the cuts of one fabric to requests: turning, triangles from squares, joined strips and panels."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from evenseam.cutting.bias import bias_square
from evenseam.cutting.codes import (
    BIAS_BINDING_TOO_LONG,
    PIECE_WIDER_THAN_CLOTH,
    SIZE_NOT_CUTTABLE,
    STRIPS_AGAINST_THE_PRINT,
    TOO_MANY_PIECES,
)
from evenseam.cutting.joining import join_cost, joined_lengths, to_spare
from evenseam.cutting.request import BiasRequest, FabricRequest, JoinedStrip, Lie, Request
from evenseam.cutting.scale import Scale, common_scale
from evenseam.cutting.where import place_of
from evenseam.exact import Number, format_length
from evenseam.pattern import Cut, CutShape, Project, Quantity, StripDirection, StripJoin
from evenseam.problems import Report

MOST_PIECES = 20_000
"""More equal pieces than this are taken for a slip of the pen."""
_PER_RECTANGLE = {CutShape.HALF_SQUARE_TRIANGLE: 2, CutShape.QUARTER_SQUARE_TRIANGLE: 4}


@dataclass(slots=True)
class _Asking:
    """Collects the requests of one fabric."""

    project: Project
    scale: Scale
    width: int
    report: Report
    shorter: Mapping[str, int]
    requests: list[Request] = field(default_factory=list)
    long: list[Cut] = field(default_factory=list)
    joined: list[JoinedStrip] = field(default_factory=list)
    bias: list[BiasRequest] = field(default_factory=list)


def request_fabric(
    cuts: tuple[Cut, ...],
    project: Project,
    usable_width: Quantity,
    report: Report,
    shorter: Mapping[str, int] | None = None,
) -> FabricRequest:
    """Return what is asked of one fabric; what cannot be cut is reported and left out.

    `shorter` names joined strips whose lengths are to be no longer than so many steps, in place of the cloth's width.
    """
    sizes = [size for cut in cuts for size in (cut.width.value, cut.height.value)]
    sizes += [spare.value for cut in cuts if cut.join is not None and (spare := to_spare(cut))]
    seams = [(cut.join_seam or project.seam_allowance).value for cut in cuts if cut.join is not None]
    scale = common_scale([*sizes, *seams, usable_width.value, Fraction(1, 2)], project.unit)
    asking = _Asking(project, scale, scale.below(usable_width.value), report, shorter or {})
    for cut in cuts:
        if not _is_cuttable(cut, report):
            continue
        if cut.shape is CutShape.BIAS_BINDING:
            _ask_bias(cut, usable_width, asking)
        else:
            _ask(cut, asking)
    for together in _sharing(asking.long, project):
        _ask_joined_strip(together, asking)
    return FabricRequest(scale, asking.width, tuple(asking.requests), tuple(asking.joined), tuple(asking.bias))


def rectangles(cut: Cut) -> int:
    """Return how many rectangles are cut: two half-square or four quarter-square triangles come from one square."""
    return -(-cut.count.whole // _PER_RECTANGLE.get(cut.shape, 1))


def _is_cuttable(cut: Cut, report: Report) -> bool:
    if cut.width.value <= 0 or cut.height.value <= 0:
        report.add(
            SIZE_NOT_CUTTABLE,
            place_of(cut.width, cut.height),
            f"{cut.label}: {cut.width.text} × {cut.height.text} cannot be cut",
            "check the sizes this cut is worked out from",
        )
        return False
    if cut.count.whole > MOST_PIECES:
        report.add(
            TOO_MANY_PIECES,
            place_of(cut.count),
            f"{cut.label}: {cut.count.whole} pieces of one kind, more than {MOST_PIECES}",
            "check the rows and columns",
        )
        return False
    return cut.count.whole > 0


def _ask(cut: Cut, asking: _Asking) -> None:
    width, height = asking.scale.whole(cut.width.value), asking.scale.whole(cut.height.value)
    lies = _lies(cut, width, height, asking)
    fitting = tuple(lie for lie in lies if lie.across <= asking.width)
    if cut.join is not None and max(width, height) > asking.width:
        if min(width, height) > asking.width:
            _ask_panels(cut, asking)
        elif cut.shape is CutShape.BINDING or not fitting or _is_shorter_joined(cut, fitting[0], asking):
            _ask_joined(cut, lies, asking)
        else:
            asking.requests.append(Request(cut, fitting, rectangles(cut), is_lengthwise=_is_strip(cut)))
    elif fitting:
        is_lengthwise = cut.direction is StripDirection.ALONG or all(lie.along > asking.width for lie in fitting)
        asking.requests.append(Request(cut, fitting, rectangles(cut), is_lengthwise=is_lengthwise and _is_strip(cut)))
    else:
        _report_too_wide(cut, asking)


def _ask_bias(cut: Cut, usable_width: Quantity, asking: _Asking) -> None:
    found = bias_square(cut, cut.join_seam or asking.project.seam_allowance, usable_width)
    if found is None:
        asking.report.add(
            BIAS_BINDING_TOO_LONG,
            place_of(cut.height, cut.width),
            f"{cut.label}: {cut.height.text} of bias strip {cut.width.text} wide needs more than a dozen squares",
            "bind with straight strips",
        )
        return
    side, squares = found
    whole = asking.scale.whole(side.value)
    asking.requests.append(Request(cut, (Lie(whole, whole, False),), squares, is_length=True, side=side))
    asking.bias.append(BiasRequest(cut, side, squares))


def _is_strip(cut: Cut) -> bool:
    """Tell whether a piece that lies lengthwise is cut as a lengthwise strip: it is, unless it is a panel."""
    return cut.part != "backing"


def _lies(cut: Cut, width: int, height: int, asking: _Asking) -> tuple[Lie, ...]:
    upright, turned = Lie(width, height, False), Lie(height, width, True)
    if cut.is_upright:
        wanted = {StripDirection.ALONG: height < width, StripDirection.ACROSS: height > width}
        if cut.shape is CutShape.STRIP and wanted.get(cut.direction, False):
            asking.report.add(
                STRIPS_AGAINST_THE_PRINT,
                place_of(cut.width, cut.height),
                f"{cut.label}: strips {cut.direction.value} the cloth would turn the print on its side",
                "the print is kept upright; leave out the strip direction, or call the fabric not directional",
            )
        return (upright,)
    if width == height:
        return (upright,)
    longer_along = (upright, turned) if height > width else (turned, upright)
    match cut.direction:
        case StripDirection.ALONG:
            return longer_along[:1]
        case StripDirection.ACROSS:
            return longer_along[1:]
        case StripDirection.EITHER:
            return (upright, turned)


def _is_shorter_joined(cut: Cut, lie: Lie, asking: _Asking) -> bool:
    """Tell whether joined strips across the cloth need less of it than the same pieces cut whole along it."""
    if cut.direction is StripDirection.ALONG or (cut.is_upright and lie.along >= lie.across):
        return False
    count = rectangles(cut)
    in_a_row = asking.width // lie.across
    whole = -(-count // in_a_row) * lie.along
    strip = min(lie.across, lie.along)
    total = count * (lie.along + _spare(cut, asking))
    lengths = joined_lengths(_steps(total), _steps(asking.width), _steps(_cost(cut, strip, asking)))
    return len(lengths) * strip < whole


def _spare(cut: Cut, asking: _Asking) -> int:
    """Return what a joined strip is planned longer than one piece, in steps."""
    spare = to_spare(cut)
    return asking.scale.whole(spare.value) if spare else 0


def _steps(value: int) -> Number:
    return Scale(1).length(value)


def _cost(cut: Cut, strip: int, asking: _Asking) -> int:
    seam = asking.scale.whole((cut.join_seam or asking.project.seam_allowance).value)
    cost = join_cost(cut.join or StripJoin.STRAIGHT, _steps(strip), _steps(seam))
    return Scale(1).whole(cost)


def _ask_joined(cut: Cut, lies: tuple[Lie, ...], asking: _Asking) -> None:
    strip = min(lies[0].across, lies[0].along)
    is_against_print = cut.is_upright and lies[0].across == strip and cut.shape is not CutShape.BINDING
    if is_against_print or _cost(cut, strip, asking) >= asking.width:
        _report_too_wide(cut, asking)
    else:
        asking.long.append(cut)


def _sharing(cuts: Iterable[Cut], project: Project) -> list[list[Cut]]:
    """Put together the cuts that one joined strip can serve: same part, strip width and kind of join."""
    together: dict[tuple[object, ...], list[Cut]] = {}
    for cut in cuts:
        seam = (cut.join_seam or project.seam_allowance).value
        strip = min(cut.width.value, cut.height.value)
        key = (cut.part, cut.shape, strip, cut.join, seam)
        together.setdefault(key, []).append(cut)
    return list(together.values())


def _joined_lie(cut: Cut) -> bool:
    """Tell whether the lengths of a joined piece are turned: its long side always lies across the cloth."""
    return cut.height.value > cut.width.value


def _ask_joined_strip(cuts: list[Cut], asking: _Asking) -> None:
    first = cuts[0]
    strip = asking.scale.whole(min(first.width.value, first.height.value))
    total = sum(
        rectangles(cut) * (asking.scale.whole(max(cut.width.value, cut.height.value)) + _spare(cut, asking))
        for cut in cuts
    )
    cost = _cost(first, strip, asking)
    longest = _steps(asking.shorter.get(first.id, asking.width))
    lengths = [Scale(1).whole(length) for length in joined_lengths(_steps(total), longest, _steps(cost))]
    if len(lengths) > MOST_PIECES:
        asking.report.add(
            TOO_MANY_PIECES,
            place_of(first.width, first.height),
            f"{first.label}: {len(lengths)} strips to join, more than {MOST_PIECES}",
            "check the sizes this cut is worked out from",
        )
        return
    _ask_lengths(first, lengths, strip, _joined_lie(first), asking)
    join = first.join or StripJoin.STRAIGHT
    asking.joined.append(JoinedStrip(first.id, tuple(cuts), join, len(lengths), panels=False))


def _ask_lengths(cut: Cut, lengths: list[int], along: int, is_turned: bool, asking: _Asking) -> None:
    for length in dict.fromkeys(lengths):
        lie = Lie(length, along, is_turned)
        asking.requests.append(Request(cut, (lie,), lengths.count(length), is_length=True))


def _ask_panels(cut: Cut, asking: _Asking) -> None:
    """Ask for the panels of a piece wider than the cloth both ways, seams in the direction that takes less cloth."""
    width, height = asking.scale.whole(cut.width.value), asking.scale.whole(cut.height.value)
    cost = _cost_straight(cut, asking)
    ways: list[tuple[int, int, list[int], bool]] = []
    for across, along, is_turned in ((width, height, False), (height, width, True)):
        if (is_turned and cut.is_upright) or cost >= asking.width:
            continue
        lengths = [Scale(1).whole(x) for x in joined_lengths(_steps(across), _steps(asking.width), _steps(cost))]
        ways.append((len(lengths) * along, along, lengths, is_turned))
    if not ways:
        _report_too_wide(cut, asking)
        return
    _, along, lengths, is_turned = min(ways)
    count = rectangles(cut)
    _ask_lengths(cut, lengths * count, along, is_turned, asking)
    asking.joined.append(JoinedStrip(cut.id, (cut,), StripJoin.STRAIGHT, len(lengths) * count, True, is_turned))


def _cost_straight(cut: Cut, asking: _Asking) -> int:
    seam = (cut.join_seam or asking.project.seam_allowance).value
    return asking.scale.whole(join_cost(StripJoin.STRAIGHT, seam, seam))


def _report_too_wide(cut: Cut, asking: _Asking) -> None:
    unit = asking.project.unit
    usable = format_length(asking.scale.length(asking.width), unit)
    kept = " and its print must stay upright" if cut.is_upright else ""
    ways_out = ["make it smaller", "plan on wider cloth with `usable width`"]
    if cut.part.startswith("block"):
        ways_out.insert(0, "divide it in its block by a seam")
    if cut.is_upright and min(cut.width.value, cut.height.value) <= asking.project.usable_width.value:
        ways_out.insert(0, "take a fabric that is not directional")
    asking.report.add(
        PIECE_WIDER_THAN_CLOTH,
        place_of(cut.width, cut.height),
        f"{cut.label}: {cut.width.text} × {cut.height.text}{kept}, but the usable width is {usable}",
        f"{', '.join(ways_out[:-1])}, or {ways_out[-1]}",
    )
