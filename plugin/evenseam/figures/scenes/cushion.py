"""The back of a cushion cover: its panels hemmed, and sewn to the front."""

from __future__ import annotations

from evenseam.figures.cloth_work import draw_cloth
from evenseam.figures.drawing import Pen, Side, Stroke
from evenseam.figures.frame import Frame, at, rectangle
from evenseam.figures.plane import Polygon, decimal
from evenseam.figures.scene import Scene
from evenseam.figures.scenes.layers import raw
from evenseam.pattern import CloseEnvelope, EnvelopeBack, HemPanel, Step

WIDE = 106
HIGH = 84
FOLD = 14
GAP = 14


def draw_hem_panel(scene: Scene, step: Step, operation: HemPanel) -> None:
    """Draw the lower edge of a panel folded once, folded twice, and stitched."""
    finish = scene.sheet.project.finish
    assert isinstance(finish, EnvelopeBack)  # only a cushion cover has this step
    pen, fabric = scene.pen, finish.panel_fabric
    for number, text in enumerate(("1 fold once", "2 fold again", "3 sew down")):
        left, high = number * (WIDE + GAP), HIGH - min(number, 1) * FOLD
        pen.cloth((rectangle(left, 0, WIDE, high),), fabric, Side.WRONG)
        pen.cloth((rectangle(left, high - FOLD, WIDE, FOLD),), fabric)
        if number == 2:
            pen.line((at(left, high - FOLD + 3), at(left + WIDE, high - FOLD + 3)), Stroke.SEWN)
            pen.measure(at(left + WIDE + 10, high - FOLD), at(left + WIDE + 10, high), operation.hem.text)
        else:
            middle = left + WIDE // 2
            pen.arrow(at(middle, high + 12), at(middle, high - FOLD - 6), at(middle + 22, high))
        pen.caption(at(left + WIDE / 2, HIGH + 28), text, WIDE + GAP / 2)


def draw_close_envelope(scene: Scene, step: Step, operation: CloseEnvelope) -> None:
    """Draw the front with one panel laid on it, and then with both, the overlap and the seam all round."""
    finish = scene.sheet.project.finish
    assert isinstance(finish, EnvelopeBack)  # only a cushion cover has this step
    pen, front = scene.pen, raw(scene.bench(step).uses[operation.front])
    frame = Frame.fitting(front.width, front.height, 150.0, 220.0)
    panel = decimal(scene.sheet.figure("hemmed_panel_height").value)
    hem, seam = decimal(finish.hem.value), decimal(operation.seam.value)
    draw_cloth(pen, ((patch.fabric, frame.polygon(patch.outline)) for patch in front.patches))
    width, low = front.width, front.height - panel
    upper = rectangle(0, 0, width, panel), rectangle(0, panel - hem, width, hem)
    lower = rectangle(0, low, width, panel), rectangle(0, low, width, hem)
    both = frame.moved_by(frame.length(width) + 26, 0)
    _draw_panel(pen, frame, finish.panel_fabric, *upper)
    _draw_panel(pen, both, finish.panel_fabric, *upper)
    _draw_panel(pen, both, finish.panel_fabric, *lower)
    ring = rectangle(seam, seam, front.width - 2 * seam, front.height - 2 * seam)
    pen.outline(both.polygon(ring), Stroke.SEWN)
    # The hem of the upper panel lies hidden under the lower one.
    hidden = both.spot(0, panel)
    pen.line((hidden, both.spot(front.width, panel)), Stroke.HELP)
    side = both.spot(front.width, low)
    pen.measure(at(side.x + 12, side.y), at(side.x + 12, hidden.y), operation.overlap.text)
    for place, text in ((frame, "1 the upper panel"), (both, "2 both, sew all round")):
        below = place.spot(front.width / 2, front.height)
        pen.caption(at(below.x, below.y + 16), text, 170.0)


def _draw_panel(pen: Pen, place: Frame, fabric: str, panel: Polygon, hem: Polygon) -> None:
    """Draw a panel with its wrong side up; its hem shows a fold of the right side."""
    pen.cloth((place.polygon(panel),), fabric, Side.WRONG)
    pen.cloth((place.polygon(hem),), fabric)
