"""Two strips of a border and the edges they go to."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_work
from evenseam.figures.frame import HIGH, WIDE, Frame, at
from evenseam.figures.measure_line import room_beside
from evenseam.figures.scene import Scene
from evenseam.pattern import AddBorderStrips, Run, Step

PULL = 30.0


def draw_border(scene: Scene, step: Step, operation: AddBorderStrips) -> None:
    """Draw the centre with the two strips pulled away from it, arrows in between, and their length."""
    bench = scene.bench(step)
    centre, strip = bench.uses[operation.centre], bench.uses[operation.strip].turned(operation.quarter_turns)
    opposite = bench.uses[operation.opposite or operation.strip].turned(operation.opposite_turns)
    is_across = operation.run is Run.ACROSS
    wide = centre.raw_width + (2 * strip.raw_width if is_across else 0)
    high = centre.raw_height + (0 if is_across else 2 * strip.raw_height)
    pulls = 2 * PULL
    across, down = scene.measured(operation.strip)
    if operation.quarter_turns % 2:
        across, down = down, across
    beside = pulls + room_beside(down) if is_across else 0.0
    frame = Frame.fitting(wide, high, WIDE - beside, HIGH - (0 if is_across else pulls) + 30)
    seam = frame.length(centre.seam)
    thick = frame.length(strip.raw_width if is_across else strip.raw_height) + PULL
    long = frame.length(centre.raw_height if is_across else centre.raw_width)
    body = frame.length(centre.raw_width if is_across else centre.raw_height)

    def spot(along: float, over: float) -> Frame:
        return frame.moved_to(at(over + seam, along + seam) if is_across else at(along + seam, over + seam))

    zero = 0.0
    first, last = zero, thick + body + PULL
    draw_work(scene.pen, centre, spot(zero, thick), has_letters=False)
    for place, one in ((first, strip), (last, opposite)):
        draw_work(scene.pen, one, spot(zero, place), has_letters=not any(patch.piece for patch in one.patches))
    for share in (0.25, 0.75):
        for start, end in ((thick - PULL, thick), (thick + body + PULL, thick + body)):
            tail, head = start + (end - start) / 8, end - (end - start) / 8
            if is_across:
                scene.pen.arrow(at(tail, long * share), at(head, long * share))
            else:
                scene.pen.arrow(at(long * share, tail), at(long * share, head))
    whole = last + thick - PULL
    if is_across:
        scene.pen.measure(at(whole + 12, 0), at(whole + 12, long), down)
    else:
        scene.pen.measure(at(0, whole + 14), at(long, whole + 14), across)
