"""One section of a foundation: the printed paper, the first patches going on, and the sewn section."""

from __future__ import annotations

from evenseam.figures.allowance import raw_outline
from evenseam.figures.callouts import Callout, draw_callouts
from evenseam.figures.cloth_work import draw_letter, draw_work
from evenseam.figures.drawing import LABEL_SIZE, SMALL_SIZE, Ink, Side, Stroke, Tone
from evenseam.figures.folding import mirrored
from evenseam.figures.frame import Frame, at
from evenseam.figures.plane import Point, Polygon, placed, shaped
from evenseam.figures.scene import Scene
from evenseam.figures.spot import label_spot
from evenseam.figures.workpiece import Patch, Workpiece
from evenseam.pattern import PieceSection, Step
from evenseam.piecing import Section

PANEL = 176.0
BETWEEN = 64.0
SMALL_PANEL = 92.0
SMALL_GAP = 34.0


def draw_section(scene: Scene, step: Step, operation: PieceSection) -> None:
    """Draw the section's printed paper (mirrored, as it is printed) and beside it the section as sewn.

    For the first section of the program the laying, sewing and flipping of its first two patches is drawn above.
    """
    work = _section_work(scene, step, operation)
    raw = raw_outline(work.outline, work.seam)
    left, top, right, bottom = raw.bounds
    wide, high = right - left, bottom - top
    frame = Frame.fitting(wide, high, PANEL, PANEL + 60)
    labels = {use.piece: use.label for use in operation.patches}
    above = 0.0
    if _is_first(scene, step) and len(operation.patches) > 1:
        above = _draw_first_patches(scene, work, labels, operation) + 26
    width, height = frame.length(wide), frame.length(high)
    paper_frame = frame.moved_to(at(0, above))
    _draw_paper(scene, work, labels, raw, paper_frame)
    middle = above + height / 2
    scene.pen.arrow(at(width + 20, middle), at(width + BETWEEN - 20, middle))
    sewn = frame.moved_to(at(width + BETWEEN - frame.length(left), above - frame.length(top)))
    draw_work(scene.pen, work, sewn)
    _label_sewn(scene, work, labels, sewn)
    below = above + height + 13
    scene.pen.label(at(width / 2, below), "printed side", size=SMALL_SIZE, ink=Ink.QUIET)
    scene.pen.label(at(width * 3 / 2 + BETWEEN, below), "fabric side", size=SMALL_SIZE, ink=Ink.QUIET)


def _label_sewn(scene: Scene, work: Workpiece, labels: dict[str, str], frame: Frame) -> None:
    """Label every piece of the sewn section, the smallest beside it."""
    small: list[Callout] = []
    for patch in work.patches:
        outline = frame.polygon(patch.outline)
        label = labels[patch.piece]
        for words in (_both(scene, label, patch.fabric), label):
            if draw_letter(scene.pen, outline, words, patch.fabric):
                break
        else:
            small.append(Callout(outline, label))
    left, _, right, bottom = frame.polygon(raw_outline(work.outline, work.seam)).bounds
    draw_callouts(scene.pen, small, left, right, bottom - 4)


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


def _draw_paper(scene: Scene, work: Workpiece, labels: dict[str, str], raw: Polygon, frame: Frame) -> None:
    """Draw the section as printed: mirrored, its seam lines, its cutting line, a label in each piece."""
    _, top, right, _ = raw.bounds

    def place(polygon: Polygon) -> Polygon:
        flipped = Polygon(tuple(Point(right - corner.x, corner.y - top) for corner in reversed(polygon.corners)))
        return frame.polygon(flipped)

    pen = scene.pen
    small: list[Callout] = []
    pen.area(place(raw), Tone.PAPER)
    pen.outline(place(raw), Stroke.CUTTING_LINE)
    for patch in work.patches:
        outline = place(patch.outline)
        pen.outline(outline, Stroke.SEWING_LINE)
        text = _both(scene, labels[patch.piece], patch.fabric)
        for words in (text, labels[patch.piece]):
            found = label_spot(outline, words, LABEL_SIZE)
            if found is not None:
                pen.label(found[0], words, size=found[1], ink=Ink.ON_PAPER)
                break
        else:
            small.append(Callout(outline, labels[patch.piece]))
    left, _, edge, bottom = place(raw).bounds
    draw_callouts(pen, small, left, edge, bottom - 4)


# --- the first two patches, seen from the fabric side of the paper ---------------------------------------------


def _draw_first_patches(scene: Scene, work: Workpiece, labels: dict[str, str], operation: PieceSection) -> float:
    """Draw place, sew, flip and press for the first two patches; return how far down it reaches.

    ::

        1 right side up     2 right sides together, sew     3 flip and press
    """
    first, second = work.patches[0], work.patches[1]
    seam = _seam(scene, work, operation)
    raw = raw_outline(work.outline, work.seam)
    left, top, right, bottom = _bounds_of(raw, *(_cut_patch(scene, work, patch, seam) for patch in (first, second)))
    frame = Frame.fitting(right - left, bottom - top, (PANEL * 2 + BETWEEN - 2 * SMALL_GAP) / 3, SMALL_PANEL + 40)
    wide, high = frame.length(right - left), frame.length(bottom - top)
    one, two = (_cut_patch(scene, work, patch, seam) for patch in (first, second))
    for number, words in enumerate(("1 lay", "2 sew", "3 flip, press")):
        place = frame.moved_to(at((wide + SMALL_GAP) * number - frame.length(left), -frame.length(top)))
        scene.pen.area(place.polygon(raw), Tone.PAPER)
        scene.pen.cloth((place.polygon(one),), first.fabric)
        if number == 0:
            for patch in work.patches[:2]:
                scene.pen.outline(place.polygon(patch.outline), Stroke.SEAM)
            if not draw_letter(scene.pen, place.polygon(first.outline), labels[first.piece], first.fabric):
                draw_letter(scene.pen, place.polygon(one), labels[first.piece], first.fabric)
        elif number == 1:
            over = mirrored(two, *seam)
            scene.pen.cloth((place.polygon(over),), second.fabric, Side.WRONG)
            draw_letter(scene.pen, place.polygon(over), labels[second.piece], second.fabric, side=Side.WRONG)
            scene.pen.line(tuple(place.point(end) for end in _longer(seam, scene.seam)), Stroke.SEWN)
        else:
            scene.pen.cloth((place.polygon(two),), second.fabric)
            draw_letter(scene.pen, place.polygon(second.outline), labels[second.piece], second.fabric)
            draw_letter(scene.pen, place.polygon(first.outline), labels[first.piece], first.fabric)
        middle = (wide + SMALL_GAP) * number + wide / 2
        scene.pen.label(at(middle, high + 11), words, size=SMALL_SIZE, ink=Ink.QUIET)
    return high + 18


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
