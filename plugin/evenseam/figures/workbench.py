"""The program walked step by step: for every step, what lies on the table before it and what it leaves."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from evenseam.exact import Number
from evenseam.figures.border_rings import Ring, with_mitres, with_passing_strips
from evenseam.figures.diagonal_rows import end_shape, endings, with_triangles
from evenseam.figures.plane import Point, Polygon, convex_hull, decimal, shaped
from evenseam.figures.workpiece import Patch, Workpiece, in_a_row, plain
from evenseam.pattern import (
    BATTING,
    BATTINGS,
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    AddSettingTriangles,
    AttachCornerPockets,
    AttachLoops,
    AttachRings,
    AttachSleeve,
    Bind,
    Block,
    CloseEnvelope,
    CloseKnifeEdge,
    Cut,
    CutShape,
    Face,
    HemPanel,
    JoinDiagonalRows,
    JoinPieces,
    JoinRun,
    LayerForQuilting,
    LayerTurned,
    MakeBinding,
    MakeCornerPockets,
    MakeLoop,
    MakeSleeve,
    MakeUnits,
    PieceSection,
    QuiltLayers,
    RoundCorners,
    Run,
    SquareUp,
    Step,
    Topstitch,
    TrimForKnifeEdge,
    TrimPart,
    TrimTop,
    TurnOut,
)
from evenseam.sheet import PatternSheet


@dataclass(frozen=True, slots=True)
class Bench:
    """One step with the workpieces it uses, by name, and the one it makes."""

    step: Step
    uses: Mapping[str, Workpiece]
    makes: Workpiece


def walk(sheet: PatternSheet) -> Mapping[str, Bench]:
    """Return every step of the program with what it uses and makes, by step id."""
    return _Walk(sheet).benches()


def block_workpiece(block: Block, seam: Number, piece_ids: tuple[str, ...] = ()) -> Workpiece:
    """Return a block, or some of its pieces, at its finished size; all pieces when none are named."""
    across, down = block.scale
    chosen = tuple(piece for piece in block.pieces if not piece_ids or piece.id in piece_ids)
    patches = tuple(
        Patch(shaped(piece.outline, across, down), piece.fabric, piece.id, f"block:{block.id}") for piece in chosen
    )
    if len(chosen) == len(block.pieces):
        return Workpiece(block.id, patches, shaped(block.outline, across, down), decimal(seam))
    work = Workpiece(block.id, patches, outline_of(patches), decimal(seam))
    left, top, _, _ = work.outline.bounds
    return work.moved(Point(-left, -top))


def outline_of(patches: tuple[Patch, ...]) -> Polygon:
    """Return the outline of patches that are sewn together: straight seams leave it convex."""
    return convex_hull(corner for patch in patches for corner in patch.outline.corners)


class _Walk:
    def __init__(self, sheet: PatternSheet) -> None:
        self._sheet = sheet
        self._seam = sheet.project.seam_allowance.value
        self._table: dict[str, Workpiece] = {}

    def benches(self) -> Mapping[str, Bench]:
        benches: dict[str, Bench] = {}
        for step in self._sheet.program.steps:
            uses = {name: self._take(name) for name in used_names(step)}
            made = self._make(step, uses)
            self._table[step.makes] = made
            benches[step.id] = Bench(step, uses, made)
        return benches

    def _take(self, name: str) -> Workpiece:
        return self._table[name] if name in self._table else self._cut(self._sheet.cuts.cut(name))

    def _cut(self, cut: Cut) -> Workpiece:
        width, height = cut.width.value, cut.height.value
        if cut.material in BATTINGS:
            return plain(cut.id, BATTING, width, height, Fraction(0), cut.part)
        if cut.shape in (CutShape.BINDING, CutShape.BIAS_BINDING):
            return plain(cut.id, cut.material, width, height, Fraction(0), cut.part)
        return plain(cut.id, cut.material, width, height, self._seam, cut.part)

    def _make(self, step: Step, uses: Mapping[str, Workpiece]) -> Workpiece:
        match step.operation:
            case PieceSection(block=block, patches=patches):
                return self._of_block(step, block, tuple(use.piece for use in patches))
            case JoinPieces(block=block, first_pieces=first, second_pieces=second):
                return self._of_block(step, block, first + second)
            case TrimPart(block=block, pieces=pieces) | MakeUnits(block=block, pieces=pieces):
                return self._of_block(step, block, pieces)
            case JoinRun(parts=parts, run=run, quarter_turns=turns):
                turned = (uses[part].turned(turns[number] if turns else 0) for number, part in enumerate(parts))
                return in_a_row(step.makes, turned, is_across=run is Run.ACROSS)
            case AddBorderStrips(centre=centre, strip=strip, run=run) as adding:
                opposite = uses[adding.opposite or strip].turned(adding.opposite_turns)
                sides = (uses[strip].turned(adding.quarter_turns), uses[centre], opposite)
                return in_a_row(step.makes, sides, is_across=run is Run.ACROSS)
            case AddMitredBorder(centre=centre, borders=borders):
                return with_mitres(step.makes, uses[centre], (self._ring(id) for id in borders))
            case AddPartialSeamBorder(centre=centre, border=border):
                return with_passing_strips(step.makes, uses[centre], self._ring(border))
            case AddSettingTriangles() as adding:
                return self._diagonal_row(step, adding, uses[adding.row])
            case JoinDiagonalRows() | TrimTop():
                return self._on_point(step)
            case LayerTurned(top=name) | LayerForQuilting(top=name):
                return uses[name]
            case TurnOut(layered=name) | Topstitch(turned=name) | QuiltLayers(layered=name):
                return uses[name]
            case SquareUp(quilted=name) | Bind(trimmed=name):
                return uses[name]
            case AttachSleeve(project=name) | AttachCornerPockets(project=name):
                return uses[name]
            case MakeBinding(binding=name) | MakeSleeve(sleeve=name) | MakeCornerPockets(square=name):
                return uses[name]
            case RoundCorners(trimmed=name) | Face(trimmed=name) | CloseEnvelope(front=name):
                return uses[name]
            case TrimForKnifeEdge(quilted=name) | CloseKnifeEdge(trimmed=name):
                return uses[name]
            case HemPanel(panel=name) | MakeLoop(loop=name):
                return uses[name]
            case AttachLoops(project=name) | AttachRings(project=name):
                return uses[name]

    def _ring(self, border_id: str) -> Ring:
        border = next(border for border in self._sheet.project.borders if border.id == border_id)
        return Ring(border.fabric, decimal(border.width.value), f"border:{border.id}")

    def _diagonal_row(self, step: Step, adding: AddSettingTriangles, row: Workpiece) -> Workpiece:
        row = row.turned(adding.quarter_turns)
        cuts = [self._sheet.cuts.cut(id) for id in (adding.start, adding.end)]
        seam = decimal(self._seam)
        start, end = (
            end_shape(cut, ending, row.height, seam)
            for cut, ending in zip(cuts, endings(self._sheet.project.arrangement, adding.number), strict=True)
        )
        return with_triangles(step.makes, row, start, end, (cuts[0].material, cuts[1].material))

    def _on_point(self, step: Step) -> Workpiece:
        """Return the top as it looks once it is trimmed."""
        placed = [
            piece
            for piece in self._sheet.sized.placed
            if not piece.part.startswith("border:") and piece.part != "binding"
        ]
        patches = tuple(Patch(shaped(piece.outline), piece.fabric, part=piece.part) for piece in placed)
        left, top, right, bottom = Polygon(tuple(c for patch in patches for c in patch.outline.corners)).bounds
        outline = Polygon.rectangle(left, top, right - left, bottom - top)
        work = Workpiece(step.makes, patches, outline, decimal(self._seam))
        return work.moved(Point(-left, -top))

    def _of_block(self, step: Step, block: str, pieces: tuple[str, ...]) -> Workpiece:
        work = block_workpiece(self._sheet.project.block(block), self._seam, pieces)
        return Workpiece(step.makes, work.patches, work.outline, work.seam)


def used_names(step: Step) -> tuple[str, ...]:
    """Return the names of the workpieces and cuts a step uses, once each."""
    match step.operation:
        case PieceSection(patches=patches):
            return tuple(dict.fromkeys(use.cut for use in patches))
        case JoinPieces(first=first, second=second):
            return tuple(dict.fromkeys((first, second)))
        case MakeUnits(squares=squares):
            return tuple(dict.fromkeys(squares))
        case TrimPart(part=part):
            return (part,)
        case JoinRun(parts=parts):
            return tuple(dict.fromkeys(parts))
        case AddBorderStrips(centre=centre, strip=strip, opposite=opposite):
            return (centre, strip, opposite) if opposite else (centre, strip)
        case AddMitredBorder(centre=centre, sides=sides, top_bottom=top_bottom):
            return (centre, sides, top_bottom)
        case AddPartialSeamBorder(centre=centre, sides=sides, top_bottom=top_bottom):
            return (centre, sides, top_bottom)
        case AddSettingTriangles(row=row, start=start, end=end):
            return tuple(dict.fromkeys((row, start, end)))
        case JoinDiagonalRows(rows=rows, corner=corner):
            return tuple(dict.fromkeys((*rows, corner)))
        case TrimTop(top=top):
            return (top,)
        case LayerTurned(top=top, backing=backing, batting=batting, insulation=further):
            return (top, backing, batting, *((further,) if further else ()))
        case LayerForQuilting(top=top, backing=backing, batting=batting, insulation=further):
            return (top, backing, batting, *((further,) if further else ()))
        case TurnOut(layered=name) | Topstitch(turned=name) | QuiltLayers(layered=name) | SquareUp(quilted=name):
            return (name,)
        case MakeBinding(binding=name) | MakeSleeve(sleeve=name) | MakeCornerPockets(square=name):
            return (name,)
        case RoundCorners(trimmed=name) | TrimForKnifeEdge(quilted=name) | CloseKnifeEdge(trimmed=name):
            return (name,)
        case HemPanel(panel=name) | MakeLoop(loop=name) | AttachRings(project=name):
            return (name,)
        case Face(trimmed=trimmed, sides=sides, top_bottom=top_bottom):
            return (trimmed, sides, top_bottom)
        case CloseEnvelope(front=front, panel=panel):
            return (front, panel)
        case AttachLoops(project=project, loop=loop):
            return (project, loop)
        case Bind(trimmed=trimmed, binding=binding):
            return (trimmed, binding)
        case AttachSleeve(project=project, sleeve=other) | AttachCornerPockets(project=project, pockets=other):
            return (project, other)
