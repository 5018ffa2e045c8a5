"""A step of the program in words: which template says it, and with what."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import groupby
from typing import Any

from evenseam.pattern import (
    AddBorderStrips,
    AddMitredBorder,
    AddPartialSeamBorder,
    AddSettingTriangles,
    AttachCornerPockets,
    AttachLoops,
    AttachRings,
    AttachSleeve,
    Bind,
    Bound,
    CloseEnvelope,
    CloseKnifeEdge,
    CornerPockets,
    Cut,
    EnvelopeBack,
    Face,
    Faced,
    HemPanel,
    JoinDiagonalRows,
    JoinPieces,
    JoinRun,
    KnifeEdge,
    LayerForQuilting,
    LayerTurned,
    MakeBinding,
    MakeCornerPockets,
    MakeLoop,
    MakeSleeve,
    MakeUnits,
    Operation,
    PieceSection,
    Press,
    Quantity,
    QuiltLayers,
    RoundCorners,
    Run,
    Setting,
    SquareUp,
    Step,
    StripJoin,
    Topstitch,
    TrimForKnifeEdge,
    TrimPart,
    TrimTop,
    Turned,
    TurnOut,
    needs_insulation,
)
from evenseam.wording import edge_words, on_point_words
from evenseam.wording.block_words import BlockWords
from evenseam.wording.border_words import BorderWords
from evenseam.wording.edge_words import edge_values, layered_thing
from evenseam.wording.marked import Markdown, escape
from evenseam.wording.on_point_words import OnPointWords
from evenseam.wording.patch_words import section_patches
from evenseam.wording.scribe import Scribe
from evenseam.wording.shared_steps import SharedSteps
from evenseam.wording.step_groups import is_in_turn
from evenseam.wording.working_figures import binding_ends
from evenseam.wording.workpieces import Called, Workpieces

TEMPLATES: Mapping[type[Operation], str] = {
    PieceSection: "steps/piece_section",
    JoinPieces: "steps/join_pieces",
    TrimPart: "steps/trim_part",
    MakeUnits: "steps/make_units",
    JoinRun: "steps/join_run",
    AddBorderStrips: "steps/add_border_strips",
    AddMitredBorder: "steps/add_mitred_border",
    AddPartialSeamBorder: "steps/add_partial_seam_border",
    LayerTurned: "steps/layer_turned",
    TurnOut: "steps/turn_out",
    Topstitch: "steps/topstitch",
    LayerForQuilting: "steps/layer_for_quilting",
    QuiltLayers: "steps/quilt_layers",
    SquareUp: "steps/square_up",
    MakeBinding: "steps/make_binding",
    Bind: "steps/bind",
    MakeSleeve: "steps/make_sleeve",
    AttachSleeve: "steps/attach_sleeve",
    MakeCornerPockets: "steps/make_corner_pockets",
    AttachCornerPockets: "steps/attach_corner_pockets",
    **edge_words.TEMPLATES,
    **on_point_words.TEMPLATES,
}


@dataclass(slots=True)
class StepWords:
    """Says the steps of one sheet, in order; remembers what was already taught."""

    scribe: Scribe
    pieces: Workpieces
    taught: dict[str, int] = field(default_factory=dict)
    """Number of the step in which something was explained in full, by what it was."""

    def markdown(self, step: Step, number: int) -> str:
        """Return a step as Markdown: a heading, a picture named `picture`, its text."""
        operation = step.operation
        values = {"step": step, "number": number, "times": step.times, **self.values(step, number)}
        return self.scribe.markdown(TEMPLATES[type(operation)], values)

    def shared_markdown(self, group: tuple[Step, ...], number: int) -> str:
        """Return several steps that are told as one, like `markdown`; pictures bear the places of their steps."""
        return SharedSteps(self.scribe, self.pieces, self.taught).markdown(group, number)

    def values(self, step: Step, number: int) -> dict[str, Any]:
        """Return what the step's template is filled with."""
        match step.operation:
            case PieceSection() as piecing:
                return self._section(piecing, step, number)
            case JoinPieces() as joining:
                return self._blocks.join(joining, step, self._press)
            case TrimPart() as trimming:
                return self._blocks.trim(trimming, step)
            case MakeUnits() as making:
                return self._blocks.units(making, step)
            case JoinRun() as run:
                return self._run(run, step)
            case AddBorderStrips() as adding:
                return {**self._borders.strips(adding), "press": self._press(adding.press, None, None)}
            case AddMitredBorder() as adding:
                return self._borders.mitred(adding)
            case AddPartialSeamBorder() as adding:
                return self._borders.partial(adding)
            case AddSettingTriangles() | JoinDiagonalRows() | TrimTop() as on_point:
                return OnPointWords(self.scribe, self.pieces, self.taught).values(on_point, number)
            case LayerTurned() | LayerForQuilting() as layering:
                return self._layers(layering)
            case Topstitch(distance=distance):
                return {"distance": distance}
            case SquareUp(width=width, height=height):
                is_lining = isinstance(self.scribe.sheet.project.finish, EnvelopeBack)
                return {"width": width, "height": height, "is_lining": is_lining, "what": self._layered()}
            case MakeBinding(binding=binding, folded_width=folded_width):
                return {"folded_width": folded_width, **self._binding(binding)}
            case Bind(seam=seam):
                return {"seam": seam, **self._bind(step)}
            case MakeSleeve() as making:
                return {
                    "sleeve": self._cut(making.sleeve), "hem": making.hem, "seam": making.seam,
                    "finished_length": making.finished_length, "finished_depth": making.finished_depth,
                }  # fmt: skip
            case AttachSleeve(drop=drop):
                return {"drop": drop}
            case TurnOut() | AttachCornerPockets():
                project = self.scribe.sheet.project
                return {
                    "is_turned": isinstance(project.finish, Turned),
                    "is_faced": isinstance(project.finish, Faced),
                    "has_pockets": isinstance(project.hanging, CornerPockets),
                }
            case QuiltLayers():
                finish = self.scribe.sheet.project.finish
                return {"stop": finish.quilting_stop if isinstance(finish, KnifeEdge) else None}
            case MakeCornerPockets():
                return {}
            case (
                RoundCorners() | Face() | TrimForKnifeEdge() | CloseKnifeEdge() | HemPanel() | CloseEnvelope()
                | MakeLoop() | AttachLoops() | AttachRings()
            ) as edge:  # fmt: skip
                return edge_values(self.scribe, edge, step)

    def _section(self, piecing: PieceSection, step: Step, number: int) -> dict[str, Any]:
        project = self.scribe.sheet.project
        patches = section_patches(self.scribe.sheet, piecing)
        is_first = len(patches) > 1 and "section" not in self.taught
        if is_first:
            self.taught["section"] = number
        return {
            "block": project.block(piecing.block).name,
            "section": piecing.section,
            "is_whole_block": self.pieces.makes_whole_block(step),
            "is_one_of_blocks": self._has_several_blocks,
            "patches": patches,
            "rest": [patch["label"] for patch in patches[2:]],
            "is_first": is_first,
            "first_step": self.taught.get("section", number),
        }

    def _run(self, run: JoinRun, step: Step) -> dict[str, Any]:
        distinct = list(dict.fromkeys(run.parts))
        called = {name: self.pieces.called(name) for name in distinct}
        made = self.pieces.called(step.makes)
        order = _order(run, [called[name].kind for name in distinct], is_sashing=made.kind == "sashing_row")
        joins_rows = any(part.kind in ("row", "column", "sashing_row") for part in called.values())
        rows = self.pieces.steps_of_kind(made.kind) if made.kind in ("row", "column") else ()
        presses = {part.press for part in self.pieces.runs_in(run)}
        return {
            "made": made,
            "is_numbered": len(rows) > 1,
            "order": order,
            "seams": len(run.parts) - 1,
            "is_across": run.run is Run.ACROSS,
            "rows_in_order": self._rows_in_order(run.parts, called),
            "parts": [
                self._turned(called[name], turns, len(list(alike)))
                for (name, turns), alike in groupby(zip(run.parts, _turns(run), strict=True))
            ],
            "first": called[run.parts[1 if order == "ends" else 0]].one,
            "told": [self._counted(called[name], run.parts.count(name)) for name in distinct],
            "has_turns": any(run.quarter_turns),
            "press": Markdown(self.scribe.language.word("press", "strip"))
            if made.kind == "longer_strip"
            else self._press_run(run),
            "joins_rows": joins_rows,
            "is_unequal": self.scribe.sheet.project.arrangement.setting is Setting.UNEQUAL_ROWS,
            "seams_nest": presses == {Press.FIRST, Press.SECOND},
            "holds_blocks": any(part.kind == "block" for part in called.values()),
            "block_parts": sum(self.pieces.holds_blocks(part) for part in run.parts),
            **self._borders.strip_of(step),
        }

    def _rows_in_order(self, parts: tuple[str, ...], called: Mapping[str, Called]) -> dict[str, Any] | None:
        """Return where sashing lies among rows that are told by their places; None where it must be told in a list."""
        rows = [called[name].is_placed for name in parts]
        strips = {called[name].one for name, is_row in zip(parts, rows, strict=True) if not is_row}
        ways = {
            "none": [True] * len(parts),
            "between": [place % 2 == 0 for place in range(len(parts))],
            "around": [place % 2 == 1 for place in range(len(parts))],
        }
        way = next((way for way, wanted in ways.items() if rows == wanted), None)
        if way is None or len(strips) > 1 or (len(parts) % 2 == 0 and way != "none") or not any(rows):
            return None
        return {"sashing": way, "strip": next(iter(strips), ""), "count": sum(rows)}

    def _turned(self, called: Called, quarter_turns: int, count: int) -> Markdown:
        said = called.one if count == 1 else self._counted(called, count)
        return Markdown(f"{said}{self.scribe.language.words['turns']['clockwise'][quarter_turns]}")

    def _counted(self, called: Called, count: int) -> Markdown:
        if called.is_placed or (count == 1 and called.is_name):
            return called.of(count)
        return Markdown(f"{self.scribe.language.in_words(count)} {called.of(count)}")

    def _layered(self) -> str:
        """Return what is layered, squared up and finished, as it is called within a sentence."""
        return self.scribe.language.word("layered", layered_thing(self.scribe.sheet))

    def _layers(self, layering: LayerTurned | LayerForQuilting) -> dict[str, Any]:
        finish = self.scribe.sheet.project.finish
        values: dict[str, Any] = {
            "backing": self._cut(layering.backing),
            "batting": self._cut(layering.batting),
            "backing_overage": finish.backing_overage,
            "batting_overage": finish.batting_overage,
            "is_lining": isinstance(finish, EnvelopeBack),
            "is_insulated": needs_insulation(self.scribe.sheet.project),
            "what": self._layered(),
        }
        if isinstance(layering, LayerTurned):
            edge = self.scribe.language.words["edges"].get(layering.opening_edge, layering.opening_edge)
            values |= {"seam": layering.seam, "opening": layering.opening, "edge": edge}
        return values

    def _binding(self, binding: str) -> dict[str, Any]:
        cut = self._cut(binding)
        plans = [material.plan for material in self.scribe.sheet.materials if material.plan]
        joined = [joined for plan in plans for joined in plan.joined if joined.cut == cut.id]
        joins = "none" if not joined else "diagonal" if joined[0].join is StripJoin.DIAGONAL else "straight"
        bias = next((bias for plan in plans for bias in plan.bias if bias.cut == cut.id), None)
        return {
            "length": _longer(cut.width, cut.height),
            "joins": "bias" if bias else joins,
            "strip_width": _shorter(cut.width, cut.height),
            "squares": bias.squares if bias else 0,
            "square": bias.side if bias else None,
        }

    def _bind(self, step: Step) -> dict[str, Any]:
        sheet = self.scribe.sheet
        finish = sheet.project.finish
        assert isinstance(finish, Bound)
        edge = dict(sheet.figures).get("longest_edge")
        ends = binding_ends(edge or sheet.sized.top_width, edge or sheet.sized.top_height, finish.binding.strip_width)
        joins = "straight" if finish.binding.join is StripJoin.STRAIGHT else "diagonal"
        return {
            "tail": ends.tail, "gap": ends.gap, "strip_width": finish.binding.strip_width, "joins": joins,
            "is_rounded": finish.corner_radius is not None,
        }  # fmt: skip

    def _press(self, press: Press, first: Called | None, second: Called | None) -> Markdown:
        keys = {
            Press.OPEN: "open", Press.FIRST: "first", Press.SECOND: "second", Press.OUTWARD: "outward",
            Press.INWARD: "inward",
            Press.DARKER: "darker", Press.SASHING: "sashing",
        }  # fmt: skip
        words = self.scribe.language.word("press", keys[press])
        one, two = (called.one if called else escape("") for called in (first, second))
        return Markdown(words.replace("{first}", one).replace("{second}", two))

    def _press_run(self, run: JoinRun) -> Markdown:
        ways = {
            (Press.FIRST, Run.ACROSS): "left", (Press.SECOND, Run.ACROSS): "right",
            (Press.FIRST, Run.DOWN): "up", (Press.SECOND, Run.DOWN): "down",
        }  # fmt: skip
        way = ways.get((run.press, run.run))
        return Markdown(self.scribe.language.word("press", way)) if way else self._press(run.press, None, None)

    @property
    def _borders(self) -> BorderWords:
        return BorderWords(self.scribe, self.pieces)

    @property
    def _blocks(self) -> BlockWords:
        return BlockWords(self.scribe, self.pieces, self.taught)

    @property
    def _has_several_blocks(self) -> bool:
        return len(self.scribe.sheet.blocks) > 1

    def _cut(self, id: str) -> Cut:
        return self.scribe.sheet.cuts.cut(id)


def _longer(width: Quantity, height: Quantity) -> Quantity:
    return width if width.value > height.value else height


def _shorter(width: Quantity, height: Quantity) -> Quantity:
    return height if width.value > height.value else width


def _order(run: JoinRun, kinds: list[str], *, is_sashing: bool) -> str:
    """Return how the order of parts is best told: all the same, one between two others, two in turn, or as a list."""
    parts, distinct = run.parts, list(dict.fromkeys(run.parts))
    if len(distinct) == 1 and len(set(run.quarter_turns)) < 2:
        return "same"
    # Only rows of sashing on point have other ends than middles that lie in line with the row.
    if is_sashing and len(distinct) == 3 and parts[0] == parts[-1] and is_in_turn(parts[1:-1]):
        return "ends"
    if any(run.quarter_turns) or len(set(kinds)) != 2 or len(distinct) != 2 or not is_in_turn(parts):
        return "list"
    return "between" if len(parts) == 3 else "in turn"


def _turns(run: JoinRun) -> tuple[int, ...]:
    return run.quarter_turns or (0,) * len(run.parts)
