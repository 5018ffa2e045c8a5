"""One section of a foundation: the printed paper, the first patches going on, and the sewn section."""

from __future__ import annotations

from evenseam.figures.allowance import raw_outline
from evenseam.figures.callouts import Callout, draw_callouts
from evenseam.figures.cloth_work import draw_letter, draw_work
from evenseam.figures.diagonal_rows import cut_off
from evenseam.figures.drawing import LABEL_SIZE, SMALL_SIZE, Ink, Side, Stroke, Tone
from evenseam.figures.folding import mirrored
from evenseam.figures.frame import WIDE, Frame, at
from evenseam.figures.lettering import text_width
from evenseam.figures.plane import Point, Polygon, placed, shaped
from evenseam.figures.scene import Scene
from evenseam.figures.section_plan import Lettered, as_printed, plan_section
from evenseam.figures.spot import label_spot, middle_of
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import PieceSection, Step
from evenseam.piecing import Section

SMALL_GAP = 34.0
SMALL_PANEL = 132.0
CLOSER = 34.0
"""A first patch narrower than this is looked at more closely."""


def draw_section(scene: Scene, step: Step, operation: PieceSection) -> None:
    """Draw the section's printed paper (mirrored, as it is printed) and beside it the section as sewn.

    For the first section of the program the laying, sewing and flipping of its first two patches is drawn above.
    """
    work = _section_work(scene, step, operation)
    raw = raw_outline(work.outline, work.seam)
    labels = {use.piece: use.label for use in operation.patches}
    lettered = tuple(
        Lettered(patch, labels[patch.piece], _both(scene, labels[patch.piece], patch.fabric)) for patch in work.patches
    )
    plan = plan_section(lettered, raw)
    above = 0.0
    if _is_first(scene, step) and len(operation.patches) > 1:
        above = _draw_first_patches(scene, work, labels, operation) + 26
    left, top, right, bottom = raw.bounds
    paper = plan.paper.moved_by(plan.paper_left, above)
    paper_wide, paper_high = paper.length(right - left), paper.length(bottom - top)
    sewn = plan.sewn.moved_by(plan.sewn_left, above)
    sewn_wide, sewn_high = sewn.length(right - left), sewn.length(bottom - top)
    _draw_paper(scene, lettered, raw, paper)
    # The smaller of the two stands level with the middle of the larger one.
    sewn = sewn.moved_by(0, (paper_high - sewn_high) / 2)
    _draw_sewn(scene, work, lettered, raw, sewn, has_callouts=plan.has_callouts_sewn)
    level, (start, end) = above + paper_high / 2, plan.arrow
    scene.pen.arrow(at(start, level), at(end, level))
    below = above + paper_high + 14
    for middle, text in (
        (plan.paper_left + paper_wide / 2, "printed side"), (plan.sewn_left + sewn_wide / 2, "fabric side")
    ):  # fmt: skip
        half = text_width(text, SMALL_SIZE) / 2
        scene.pen.caption(at(min(max(middle, half), WIDE - half), below), text)


def _draw_sewn(
    scene: Scene, work: Workpiece, lettered: tuple[Lettered, ...], raw: Polygon, frame: Frame, *, has_callouts: bool
) -> None:
    """Draw the sewn section, its top left raw corner at the frame's; label the pieces that hold their labels, and the
    others beside it where there is room.
    """
    left, top, _, _ = raw.bounds
    place = frame.moved_by(-frame.length(left), -frame.length(top))
    draw_work(scene.pen, work, place)
    small: list[Callout] = []
    for one in lettered:
        outline = place.polygon(one.patch.outline)
        for words in (one.longer, one.label):
            if draw_letter(scene.pen, outline, words, one.patch.fabric):
                break
        else:
            small.append(Callout(outline, one.label))
    if has_callouts:
        start, _, end, low = place.polygon(raw).bounds
        draw_callouts(scene.pen, small, start, end, low - 4)


def _both(scene: Scene, label: str, fabric: str) -> str:
    return f"{label} ({scene.looks[fabric].letter})"


def _is_first(scene: Scene, step: Step) -> bool:
    steps = scene.sheet.program.steps
    longer = (one for one in steps if isinstance(one.operation, PieceSection) and len(one.operation.patches) > 1)
    return next(longer, None) == step


def _section_work(scene: Scene, step: Step, operation: PieceSection) -> Workpiece:
    block = scene.sheet.project.block(operation.block)
    section = _section(scene, operation)
    across, down = block.scale
    outlines = {piece.id: piece for piece in block.pieces}
    patches = tuple(
        Patch(shaped(outlines[use.piece].outline, across, down), outlines[use.piece].fabric, use.piece)
        for use in operation.patches
    )
    work = Workpiece(step.makes, patches, shaped(section.outline, across, down).clockwise(), scene.seam)
    left, top, _, _ = work.outline.bounds
    return work.moved(Point(-left, -top))


def _section(scene: Scene, operation: PieceSection) -> Section:
    return scene.sheet.sized.pieced(operation.block).section(operation.section)


def _draw_paper(scene: Scene, lettered: tuple[Lettered, ...], raw: Polygon, frame: Frame) -> None:
    """Draw the section as printed: mirrored, its seam lines, its cutting line, a label in each piece."""
    pen = scene.pen
    small: list[Callout] = []
    edge = frame.polygon(as_printed(raw, raw))
    pen.area(edge, Tone.PAPER)
    pen.outline(edge, Stroke.CUTTING_LINE)
    for one in lettered:
        outline = frame.polygon(as_printed(one.patch.outline, raw))
        pen.outline(outline, Stroke.SEWING_LINE)
        for words in (one.longer, one.label):
            found = label_spot(outline, words, LABEL_SIZE)
            if found is not None:
                pen.label(found[0], words, size=found[1], ink=Ink.ON_PAPER)
                break
        else:
            small.append(Callout(outline, one.label))
    left, _, right, bottom = edge.bounds
    draw_callouts(pen, small, left, right, bottom - 4)


# --- the first two patches, seen from the fabric side of the paper ---------------------------------------------


def _draw_first_patches(scene: Scene, work: Workpiece, labels: dict[str, str], operation: PieceSection) -> float:
    """Draw place, sew, flip and press for the first two patches; return how far down it reaches.

    ::

        1 right side up     2 right sides together, sew     3 flip and press
    """
    first, second = work.patches[0], work.patches[1]
    seam = _seam(scene, work, operation)
    raw = raw_outline(work.outline, work.seam)
    one, two = (_cut_patch(scene, work, patch, seam) for patch in (first, second))
    left, top, right, bottom = _bounds_of(raw, one, two)
    frame = Frame.fitting(right - left, bottom - top, (WIDE - 2 * SMALL_GAP) / 3, SMALL_PANEL)
    if min(frame.length(side) for side in _sides(one)) < CLOSER:
        # Small patches in the middle of a large section: only the paper round them.
        left, top, right, bottom = _closer(one, two, mirrored(two, *seam))
        frame = Frame.fitting(right - left, bottom - top, (WIDE - 2 * SMALL_GAP) / 3, SMALL_PANEL)
        raw = cut_off(raw, Polygon.rectangle(left, top, right - left, bottom - top)) or raw
    wide, high = frame.length(right - left), frame.length(bottom - top)
    for number, words in enumerate(("1 lay", "2 sew", "3 flip, press")):
        place = frame.moved_to(at((wide + SMALL_GAP) * number - frame.length(left), -frame.length(top)))
        scene.pen.area(place.polygon(raw), Tone.PAPER)
        scene.pen.cloth((place.polygon(one),), first.fabric)
        if number == 0:
            for patch in work.patches[:2]:
                scene.pen.outline(place.polygon(patch.outline), Stroke.SEAM)
            _name(scene, place.polygon(first.outline), place.polygon(one), labels[first.piece], first.fabric)
        elif number == 1:
            over = mirrored(two, *seam)
            scene.pen.cloth((place.polygon(over),), second.fabric, Side.WRONG)
            scene.pen.line(tuple(place.point(end) for end in _longer(seam, scene.seam)), Stroke.SEWN)
            piece = place.polygon(mirrored(second.outline, *seam))
            _name(scene, piece, place.polygon(over), labels[second.piece], second.fabric, side=Side.WRONG)
        else:
            scene.pen.cloth((place.polygon(two),), second.fabric)
            _name(scene, place.polygon(second.outline), place.polygon(two), labels[second.piece], second.fabric)
            draw_letter(scene.pen, place.polygon(first.outline), labels[first.piece], first.fabric)
        middle = (wide + SMALL_GAP) * number + wide / 2
        scene.pen.caption(at(middle, high + 13), words, wide + SMALL_GAP)
    return high + 20


def _sides(patch: Polygon) -> tuple[float, float]:
    """Return the lengths of the sides of a patch, which is a rectangle in any direction."""
    start, corner, end = patch.corners[:3]
    return (corner - start).length, (end - corner).length


def _closer(*shapes: Polygon) -> tuple[float, float, float, float]:
    """Return the bounds of shapes with some room round them."""
    left, top, right, bottom = _bounds_of(*shapes)
    room = (right - left + bottom - top) / 8
    return left - room, top - room, right + room, bottom + room


def _name(scene: Scene, piece: Polygon, cloth: Polygon, text: str, fabric: str, *, side: Side = Side.RIGHT) -> None:
    """Write a label inside a piece where it fits, else on a plate of its own in the middle of its cloth."""
    if not draw_letter(scene.pen, piece, text, fabric, side=side):
        scene.pen.label(middle_of(cloth), text, size=SMALL_SIZE, has_ground=True)


def _seam(scene: Scene, work: Workpiece, operation: PieceSection) -> tuple[Point, Point]:
    """Return the seam between the first two pieces, in the workpiece's own place."""
    block = scene.sheet.project.block(operation.block)
    section = _section(scene, operation)
    across, down = block.scale
    left, top, _, _ = shaped(section.outline, across, down).bounds
    seam = section.pieces[1].seam
    assert seam is not None  # every piece but the first has one
    move = Point(-left, -top)
    return placed(seam.start, across, down) + move, placed(seam.end, across, down) + move


def _cut_patch(scene: Scene, work: Workpiece, patch: Patch, seam: tuple[Point, Point]) -> Polygon:
    """Return the patch as it is cut: a rectangle along the seam that covers the piece with its allowance and margin."""
    spare = scene.seam + float(scene.sheet.project.patch_margin.value)
    way = seam[1] - seam[0]
    along = Point(way.x / way.length, way.y / way.length)
    over = Point(-along.y, along.x)
    lengths = [along.dot(corner - seam[0]) for corner in patch.outline.corners]
    depths = [over.dot(corner - seam[0]) for corner in patch.outline.corners]
    low, high = min(lengths) - spare, max(lengths) + spare
    near, far = min(depths) - spare, max(depths) + spare
    # At the seam itself a patch reaches just one allowance past the line.
    if min(depths) >= -spare / 100:
        near = -scene.seam
    elif max(depths) <= spare / 100:
        far = scene.seam
    return Polygon(
        tuple(
            seam[0] + along.scaled(x, x) + over.scaled(y, y)
            for x, y in ((low, near), (high, near), (high, far), (low, far))
        )
    ).clockwise()


def _longer(seam: tuple[Point, Point], more: float) -> tuple[Point, Point]:
    way = seam[1] - seam[0]
    share = more / way.length
    return seam[0] - way.scaled(share, share), seam[1] + way.scaled(share, share)


def _bounds_of(*polygons: Polygon) -> tuple[float, float, float, float]:
    corners = tuple(corner for polygon in polygons for corner in polygon.corners)
    return Polygon(corners).bounds
