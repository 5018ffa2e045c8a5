"""What to call the things on the sewing table: section A, the Lantern block, a row, the center."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from evenseam.pattern import (
    AddBorderStrips,
    AddMitredBorder,
    AddSettingTriangles,
    Cut,
    CutShape,
    HemPanel,
    JoinDiagonalRows,
    JoinPieces,
    JoinRun,
    MakeCornerPockets,
    MakeLoop,
    MakeSleeve,
    MakeUnits,
    Method,
    PieceSection,
    Run,
    Step,
    TrimPart,
)
from evenseam.sheet import PatternSheet
from evenseam.sizing.on_point_cuts import END_CORNERSTONE, END_SASH
from evenseam.wording.catalogue import language
from evenseam.wording.figure_names import FigureNames
from evenseam.wording.marked import Markdown, escape
from evenseam.wording.scribe import Scribe
from evenseam.wording.step_groups import step_groups

STRIP_KINDS = ("longer_strip", "mitred_strips", "block_strip")
"""Runs that make strips of a border."""
_LONGER = {END_CORNERSTONE: "longer_cornerstone", END_SASH: "longer_sashing"}
"""What lies at the ends of a row of sashing on point."""
TRIANGLES = (CutShape.HALF_SQUARE_TRIANGLE, CutShape.QUARTER_SQUARE_TRIANGLE)


@dataclass(frozen=True, slots=True)
class Called:
    """The name of a workpiece: one of it, and several."""

    one: Markdown
    many: Markdown
    kind: str
    """The key in the language's words: section, block, row, …; cut for a piece that is called by its label."""

    is_name: bool = False
    """True when `one` names this very workpiece (section A, row 2), so that no number or article goes before it."""

    is_placed: bool = False
    """True when `many` names all of them by their places (rows 1 and 6), so that no number goes before it either."""

    def of(self, count: int) -> Markdown:
        """Return the form that goes with a count."""
        return self.one if count == 1 else self.many


class Workpieces:
    """Names for every workpiece of a sheet's program."""

    def __init__(self, scribe: Scribe) -> None:
        self._scribe = scribe
        steps = scribe.sheet.program.steps
        self._makers = {step.makes: step for step in steps}
        self._numbers: dict[str, int] = {}
        self._cuts = {cut.id: cut for cut in scribe.sheet.cuts.cuts}
        self._in_runs = {part for step in steps if isinstance(step.operation, JoinRun) for part in step.operation.parts}
        self._diagonal = _diagonal_rows(scribe)
        self._in_runs |= {*self._diagonal}
        self._places = dict(_places(scribe))
        self._border_strips = dict(_border_strips(scribe))

    @property
    def groups(self) -> tuple[tuple[Step, ...], ...]:
        """The steps in their order, those that are told together in one group."""
        return step_groups(self._scribe.sheet, self.run_kind)

    @property
    def numbers(self) -> Mapping[str, int]:
        """The number under which every step of the program is told, by its id."""
        if not self._numbers:
            told = enumerate(self.groups, start=1)
            self._numbers = {step.id: number for number, group in told for step in group}
        return self._numbers

    def called(self, name: str) -> Called:
        """Return what a workpiece or a cut piece is called."""
        if name in self._cuts:
            return self._cut(self._cuts[name])
        step = self._makers[name]
        match step.operation:
            case PieceSection(block=block) as piecing:
                pieces = tuple(patch.piece for patch in piecing.patches)
                return self.part(block, pieces, step)
            case JoinPieces(block=block) as joining:
                return self.part(block, joining.first_pieces + joining.second_pieces, step)
            case TrimPart(block=block, pieces=pieces) | MakeUnits(block=block, pieces=pieces):
                return self.part(block, pieces, step)
            case JoinRun():
                return self._run(step)
            case MakeCornerPockets():
                return self._named("corner_pocket")
            case MakeSleeve():
                return self._named("sleeve")
            case MakeLoop():
                return self._named("loop")
            case HemPanel():
                return self._named("back_panel")
            case _:
                return self._named("center")

    def part(self, block: str, pieces: tuple[str, ...], step: Step | None = None) -> Called:
        """Return what a part of a block is called, by the pieces it is made of."""
        pieced = self._scribe.sheet.sized.pieced(block)
        whole = self._scribe.sheet.project.block(block)
        wanted = frozenset(pieces)
        if wanted == {piece.id for piece in whole.pieces}:
            return self._named("block", whole.name)
        for section in pieced.sections:
            if wanted == {piece.piece for piece in section.pieces}:
                if whole.method is Method.ROTARY and len(section.pieces) == 1:
                    return self._named(self._kind_of_piece(block, section.name), section.name)
                return self._named("section", section.name)
        for join in pieced.joins:
            if wanted == {*join.first_pieces, *join.second_pieces}:
                is_short = join.makes.count("+") < 3 and " to " not in join.makes
                if is_short or step is None:
                    return self._named("unit", join.makes)
                return self._from_step(step)
        raise KeyError(f"no part of block {block} is made of {sorted(wanted)}")

    def _kind_of_piece(self, block: str, label: str) -> str:
        """Return what a single piece cut to size is: a triangle, or just a piece."""
        for cut in self._cuts.values():
            if cut.part == f"block:{block}" and label in cut.labels:
                return "triangle" if cut.shape in TRIANGLES else "piece"
        return "piece"

    def makes_whole_block(self, step: Step) -> bool:
        """Tell whether a step leaves a whole block."""
        return self.called(step.makes).kind == "block"

    def holds_blocks(self, name: str) -> bool:
        """Tell whether a workpiece is a block or has blocks in it."""
        if name in self._cuts:
            return self._cuts[name].part.startswith("block:")
        step = self._makers.get(name)
        match step.operation if step else None:
            case PieceSection() | JoinPieces() | TrimPart() | MakeUnits():
                return True
            case JoinRun(parts=parts):
                return any(self.holds_blocks(part) for part in parts)
        return False

    def _run(self, step: Step) -> Called:
        kind = self.run_kind(step)
        if kind == "diagonal_row":
            numbers = [str(number) for number in self._diagonal[step.makes]]
            return replace(self._named(kind, self._scribe.language.listed(numbers)), is_name=True)
        alike = self.steps_of_kind(kind)
        if len(alike) > 1 and (places := self._places.get(step.makes)):
            return self._placed(self._named(kind), places)
        return (
            self._numbered(self._named(kind), alike.index(step) + 1)
            if len(alike) > 1 and kind not in STRIP_KINDS
            else self._named(kind)
        )

    def steps_of_kind(self, kind: str) -> tuple[Step, ...]:
        """Return the steps that join a row, a column, a sashing row, … in order."""
        steps = self._scribe.sheet.program.steps
        return tuple(step for step in steps if isinstance(step.operation, JoinRun) and self.run_kind(step) == kind)

    def row_numbers(self, step: Step) -> str:
        """Return the numbers of the rows that a step makes, as they are told: 1 and 14."""
        if numbers := self._diagonal.get(step.makes) or self._places.get(step.makes):
            return self._scribe.language.listed([str(number) for number in numbers])
        return str(self.steps_of_kind(self.run_kind(step)).index(step) + 1)

    def runs_in(self, run: JoinRun) -> tuple[JoinRun, ...]:
        """Return the runs that joined the rows of a run, once each."""
        makers = [self._makers[part] for part in dict.fromkeys(run.parts) if part in self._makers]
        rows = [step.operation for step in makers if self.holds_blocks(step.makes)]
        return tuple(row for row in rows if isinstance(row, JoinRun))

    def run_kind(self, step: Step) -> str:
        """Return what a run makes: row, column, sashing_row, one of STRIP_KINDS, or center."""
        run = step.operation
        if not isinstance(run, JoinRun):
            raise ValueError(f"step {step.id} joins no run")
        if step.makes in self._border_strips:
            return self._border_strips[step.makes]
        if step.makes not in self._in_runs:
            return "center"
        if not self.holds_blocks(step.makes):
            return "sashing_row"
        if step.makes in self._diagonal:
            return "diagonal_row"
        return "row" if run.run is Run.ACROSS else "column"

    def _cut(self, cut: Cut) -> Called:
        part = cut.part.partition(":")[0]
        if part in ("sashing", "border"):
            if cut.id in _LONGER:
                return self._named(_LONGER[cut.id])
            is_square = cut.shape is CutShape.SQUARE
            return self._named("cornerstone" if is_square else "sashing" if part == "sashing" else "border_strip")
        if part == "spacer":
            return self._spacer(cut)
        if part == "setting":
            is_corner = cut.shape is CutShape.HALF_SQUARE_TRIANGLE
            return self._named("corner_triangle" if is_corner else "setting_triangle")
        if part == "block":
            return self._named("block", self._scribe.sheet.project.block(cut.part.partition(":")[2]).name)
        words = escape(self._scribe.language.phrase(cut.label))
        return Called(words, words, "cut")

    def _spacer(self, cut: Cut) -> Called:
        """Return what a spacer is called, so that it can be told from the others in its rows."""
        kind = f"{cut.label.partition(' ')[0]}_spacer"
        called = self._named(kind if kind in self._scribe.language.words["called"] else "spacer")
        runs = [
            step.operation.parts for step in self._scribe.sheet.program.steps if isinstance(step.operation, JoinRun)
        ]
        spacers = [[self._cuts[part] for part in parts if part in self._cuts] for parts in runs]
        fabrics = [{each.material for each in beside if each.part == "spacer"} for beside in spacers]
        if not any(cut.material in beside and len(beside) > 1 for beside in fabrics):
            return called
        fabric = escape(self._scribe.sheet.project.fabric(cut.material).name)
        one, many = (
            form.replace("{one}", called.one).replace("{many}", called.many).replace("{fabric}", fabric)
            for form in self._scribe.language.words["called"]["in_fabric"]
        )
        return Called(Markdown(one), Markdown(many), called.kind)

    def _from_step(self, step: Step) -> Called:
        noun = self._scribe.language.noun
        unit = Called(Markdown(noun("unit", 1)), Markdown(noun("unit", 2)), "unit_from_step")
        return self._counted_off("from_step", unit, self.numbers[step.id])

    def _numbered(self, called: Called, number: int) -> Called:
        return self._counted_off("numbered", called, number)

    def _placed(self, called: Called, places: list[int]) -> Called:
        named = self._scribe.language.listed([str(place) for place in places])
        one = self._counted_off("placed", called, places[0]).one
        many = self._scribe.language.words["called"]["placed"][1].replace("{many}", called.many)
        written = Markdown(many.replace("{number}", named))
        return Called(one, written if len(places) > 1 else one, called.kind, is_name=True, is_placed=True)

    def _counted_off(self, phrase: str, called: Called, number: int) -> Called:
        one, many = (
            form.replace("{one}", called.one).replace("{many}", called.many).replace("{number}", str(number))
            for form in self._scribe.language.words["called"][phrase]
        )
        return Called(Markdown(one), Markdown(many), called.kind, is_name=True)

    def _named(self, kind: str, name: str = "") -> Called:
        one, many = self._scribe.language.words["called"][kind]
        written = escape(name)
        is_name = kind in ("section", "unit", "piece", "triangle")
        return Called(
            Markdown(one.replace("{name}", written)), Markdown(many.replace("{name}", written)), kind, is_name
        )


def step_numbers(sheet: PatternSheet) -> Mapping[str, int]:
    """Return the number under which every step of a sheet's program is told, by its id."""
    return Workpieces(Scribe(sheet, language(), FigureNames(sheet.figures))).numbers


def _diagonal_rows(scribe: Scribe) -> dict[str, list[int]]:
    """Return what joins the top of blocks on point, with the numbers of the diagonal rows it is used for."""
    found: dict[str, list[int]] = {}
    for step in scribe.sheet.program.steps:
        match step.operation:
            case AddSettingTriangles(row=row, number=number):
                found.setdefault(row, []).append(number + 1)
            case JoinDiagonalRows(rows=rows):
                for name in rows:
                    found.setdefault(name, [])
    return found


def _places(scribe: Scribe) -> Iterator[tuple[str, list[int]]]:
    """Yield what is told by its places, counted from the top: rows of unequal blocks, and rows of sashing on point."""
    steps = scribe.sheet.program.steps
    made = {step.makes for step in steps if isinstance(step.operation, JoinRun)}
    triangled = {step.makes for step in steps if isinstance(step.operation, AddSettingTriangles)}
    for step in steps:
        rows: list[str] = []
        match step.operation:
            case JoinDiagonalRows(rows=all_rows):
                rows = [name for name in all_rows if name not in triangled]
            case JoinRun(parts=parts) if scribe.sheet.project.arrangement.unequal_rows:
                rows = [name for name in parts if name in made]
        for name in dict.fromkeys(rows):
            if name in made:
                yield name, [place for place, row in enumerate(rows, start=1) if row == name]


def _border_strips(scribe: Scribe) -> Iterator[tuple[str, str]]:
    """Yield what is sewn on as a border strip, and which of STRIP_KINDS it is when it was joined."""
    pieced = {border.id for border in scribe.sheet.project.borders if border.pieced is not None}
    for step in scribe.sheet.program.steps:
        match step.operation:
            case AddBorderStrips(border=border, strip=strip, opposite=opposite):
                kind = "block_strip" if border in pieced else "longer_strip"
                yield strip, kind
                if opposite is not None:
                    yield opposite, kind
            case AddMitredBorder(sides=sides, top_bottom=top_bottom):
                yield sides, "mitred_strips"
                yield top_bottom, "mitred_strips"
