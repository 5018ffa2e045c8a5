"""Rows and columns: the parts side by side with room between them, and what they become."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_work
from evenseam.figures.drawing import Stroke
from evenseam.figures.frame import HIGH, WIDE, Frame, at
from evenseam.figures.measure_line import room_beside
from evenseam.figures.scene import Scene
from evenseam.figures.workpiece import Workpiece
from evenseam.pattern import JoinRun, Run, Step

GAP = 30.0
NARROW_GAP = 10.0
MANY = 6
FIRST, LAST = 3, 2
"""Parts that are drawn of a long and thin run."""
THIN = 30.0
MANY_PATCHES = 60
"""A part of more patches than this is a picture by itself: letters would only clutter it."""


def draw_run(scene: Scene, step: Step, operation: JoinRun) -> None:
    """Draw the parts pulled apart, arrows in the gaps, and the size of the whole."""
    bench = scene.bench(step)
    turns = operation.quarter_turns
    parts = [bench.uses[name].turned(turns[number] if turns else 0) for number, name in enumerate(operation.parts)]
    is_across = operation.run is Run.ACROSS
    wide = WIDE - _room_beside(step, is_across=is_across)
    gap, frame = _fitted(parts, wide, is_across=is_across)
    left_out = 0
    if len(parts) > FIRST + LAST and frame.length(_over(parts, is_across=is_across)) < THIN:
        # Too thin to see how it is sewn: its two ends, and a break between them.
        left_out = len(parts) - FIRST - LAST
        gap, frame = _fitted([*parts[:FIRST], *parts[-LAST:]], wide, is_across=is_across)
    start = 0.0
    for number, part in enumerate(parts):
        if FIRST <= number < FIRST + left_out:
            continue
        seam = frame.length(part.seam)
        long = frame.length(part.width if is_across else part.height) + 2 * seam
        over = frame.length(part.height if is_across else part.width) + 2 * seam
        corner = at(start + seam, seam) if is_across else at(seam, start + seam)
        # Letters once for parts that are alike, and none where parts are whole rows.
        is_new = operation.parts.index(operation.parts[number]) == number and len(part.patches) <= MANY_PATCHES
        draw_work(scene.pen, part, frame.moved_to(corner), has_letters=is_new)
        if left_out and number == FIRST + left_out:
            _break(scene, start - gap, gap, over, is_across=is_across)
        elif number:
            _meet(scene, start - gap, gap, over, is_across=is_across)
        start = start + long + gap
    _measure(scene, step, frame, bench.makes, start - gap, is_across=is_across)


def _room_beside(step: Step, *, is_across: bool) -> float:
    """Return how much of the width the figure beside the work takes."""
    if step.measures is None:
        return 0.0
    _, height = step.measures
    return room_beside(height.text if is_across else f"joined: {height.text}")


def _over(parts: list[Workpiece], *, is_across: bool) -> float:
    return max(part.raw_height if is_across else part.raw_width for part in parts)


def _fitted(parts: list[Workpiece], wide: float, *, is_across: bool) -> tuple[float, Frame]:
    """Return the gap between parts and the largest scale at which they fit."""
    # The gaps of a long row must leave the row itself most of the width.
    gap = GAP if len(parts) <= MANY else min(NARROW_GAP, wide / 4 / len(parts))
    long = sum(part.raw_width if is_across else part.raw_height for part in parts)
    over = _over(parts, is_across=is_across)
    gaps = gap * (len(parts) - 1)
    if is_across:
        return gap, Frame.fitting(long, over, wide - gaps, HIGH - 60)
    return gap, Frame.fitting(over, long, wide, HIGH + 60 - gaps)


def _meet(scene: Scene, start: float, gap: float, over: float, *, is_across: bool) -> None:
    """Draw the arrows that close a gap, where there is room for them."""
    if gap < GAP:
        return
    middle = over / 2
    for tail, head in ((start + 1, start + gap / 2 - 2), (start + gap - 1, start + gap / 2 + 2)):
        if is_across:
            scene.pen.arrow(at(tail, middle), at(head, middle))
        else:
            scene.pen.arrow(at(middle, tail), at(middle, head))


def _break(scene: Scene, start: float, gap: float, over: float, *, is_across: bool) -> None:
    """Draw the line that says: something is left out here."""
    spots = [(start + gap * (0.7 if turn % 2 else 0.3), over * turn / 6) for turn in range(7)]
    scene.pen.line((at(along, aside) if is_across else at(aside, along) for along, aside in spots), Stroke.EDGE)


def _measure(scene: Scene, step: Step, frame: Frame, made: Workpiece, long: float, *, is_across: bool) -> None:
    """Write the raw size of the whole; along the run as words, for here the gaps make it longer."""
    if step.measures is None:
        return
    width, height = step.measures
    over = frame.length(made.raw_height if is_across else made.raw_width)
    if is_across:
        scene.pen.measure(at(long + 12, 0), at(long + 12, over), height.text)
        scene.pen.measure(at(0, over + 16), at(long, over + 16), f"joined: {width.text}")
    else:
        scene.pen.measure(at(over + 12, 0), at(over + 12, long), f"joined: {height.text}")
        scene.pen.measure(at(0, long + 16), at(over, long + 16), width.text)
