"""What the templates of edges, cushion backs, loops and rings are filled with, and what a project hangs by."""

from __future__ import annotations

import re
from typing import Any, TypeAlias, Union

from evenseam.pattern import (
    AttachLoops,
    AttachRings,
    Bound,
    Choosing,
    CloseEnvelope,
    CloseKnifeEdge,
    CornerPockets,
    EnvelopeBack,
    Face,
    Faced,
    Finish,
    Fit,
    HemPanel,
    KnifeEdge,
    Loops,
    MakeLoop,
    Project,
    Quantity,
    Rings,
    RoundCorners,
    Sleeve,
    Step,
    TrimForKnifeEdge,
    Turned,
    mentions,
    said,
)
from evenseam.sheet import PatternSheet
from evenseam.sizing.fit_layout import keeps_layout
from evenseam.wording.document import Block
from evenseam.wording.marked import Markdown, escape, mark_figure
from evenseam.wording.scribe import Scribe

EdgeOperation: TypeAlias = Union[
    RoundCorners, Face, TrimForKnifeEdge, CloseKnifeEdge, HemPanel, CloseEnvelope, MakeLoop, AttachLoops, AttachRings
]

TEMPLATES = {
    RoundCorners: "steps/round_corners",
    Face: "steps/face",
    TrimForKnifeEdge: "steps/trim_for_knife_edge",
    CloseKnifeEdge: "steps/close_knife_edge",
    HemPanel: "steps/hem_panel",
    CloseEnvelope: "steps/close_envelope",
    MakeLoop: "steps/make_loop",
    AttachLoops: "steps/attach_loops",
    AttachRings: "steps/attach_rings",
}
_LAID_ON = {Turned: "front", Faced: "front", Bound: "back", KnifeEdge: "finished"}
"""Where loops are laid before the edge is closed: on the front, on the back, or sewn on when it is finished."""
_FINISHES = {
    Turned: "turned", Bound: "bound", Faced: "faced", KnifeEdge: "knife_edge", EnvelopeBack: "envelope_back",
}  # fmt: skip
_HANGINGS = {Sleeve: "sleeve", CornerPockets: "pockets", Loops: "loops", Rings: "rings"}


def finish_key(finish: Finish) -> str:
    """Return the key of a finish in the language's words and in templates."""
    return _FINISHES[type(finish)]


def hanging_key(project: Project) -> str:
    """Return the key of what a project hangs by; empty when it does not hang."""
    return "" if project.hanging is None else _HANGINGS[type(project.hanging)]


def edge_values(scribe: Scribe, operation: EdgeOperation, step: Step) -> dict[str, Any]:
    """Return what the template of a step is filled with."""
    sheet = scribe.sheet
    finish = sheet.project.finish
    match operation:
        case RoundCorners(radius=radius):
            return {"radius": radius, "across": sheet.figure("corner_circle_width")}
        case Face(seam=seam, fold=fold):
            return {"seam": seam, "fold": fold}
        case TrimForKnifeEdge(seam=seam):
            return {"seam": seam, "width": sheet.sized.top_width, "height": sheet.sized.top_height}
        case CloseKnifeEdge(seam=seam, stitch=stitch):
            assert isinstance(finish, KnifeEdge)  # only a knife edge has this step
            return {"seam": seam, "stitch": stitch, "quilting_stop": finish.quilting_stop}
        case HemPanel(panel=panel, hem=hem):
            cut = sheet.cuts.cut(panel)
            height = sheet.figure("hemmed_panel_height")
            return {"hem": hem, "height": height, "is_directional": cut.is_upright}
        case CloseEnvelope(seam=seam, overlap=overlap):
            return {"seam": seam, "overlap": overlap}
        case MakeLoop(loop=loop, seam=seam, finished_width=width, finished_length=length):
            return {
                "loop": sheet.cuts.cut(loop), "count": step.times, "seam": seam, "finished_width": width,
                "finished_length": length,
            }  # fmt: skip
        case AttachLoops(number=number):
            return {
                "count": number, "way": _LAID_ON[type(finish)], "is_faced": isinstance(finish, Faced),
                "is_rounded": isinstance(finish, Bound) and finish.corner_radius is not None,
                "rod": number > 1,
            }  # fmt: skip
        case AttachRings(number=number, drop=drop):
            return {"count": number, "drop": drop}


def rod_values(sheet: PatternSheet) -> dict[str, Any]:
    """Return how long the rod is and about how much hangs from it; nothing for a project that does not hang."""
    known = dict(sheet.figures)
    hanging = sheet.project.hanging
    # A single loop is for a hook, not for a rod.
    has_rod = hanging is not None and not (isinstance(hanging, (Loops, Rings)) and hanging.number.value == 1)
    return {
        "rod": known.get("rod_length") if has_rod else None,
        "weight": known.get("weight"),
        "rings": hanging.number.whole if isinstance(hanging, Rings) else 0,
    }


def asked_for(sheet: PatternSheet) -> Fit | None:
    """Return the size a project was to come near to, as the author asked for it."""
    asked = (each for each in sheet.pattern.projects if each.size == sheet.project.size)
    return next((each.fit for each in asked if each.unit is sheet.project.unit), None)


_THINGS = ("pot holder", "mug rug", "place mat", "table mat", "table runner", "wall hanging")
"""What the step that lays the layers together calls by its name, where the use, the size or its name says it."""


def layered_thing(sheet: PatternSheet) -> str:
    """Return what is layered: cushion, one of the things above, or a quilt."""
    if isinstance(sheet.project.finish, EnvelopeBack):
        return "cushion"
    words = said(sheet.project)
    return next((thing.replace(" ", "_") for thing in _THINGS if mentions(words, (thing,))), "quilt")


def fit_words(scribe: Scribe) -> tuple[Block, ...]:
    """Return what was chosen so that the project comes near to a size, and out of what; nothing when it was not."""
    sheet = scribe.sheet
    fit, known, project = asked_for(sheet), dict(sheet.figures), sheet.project
    if fit is None:
        return ()
    border = project.borders[-1] if project.borders and project.borders[-1].pieced is None else None
    chooses_border = border is not None and Choosing.BORDER_WIDTHS in fit.may_choose
    values = {
        "name": scribe.language.phrase(fit.name),
        "note": _with_figures(scribe.language.phrase(fit.note)),
        "drop": known.get("fit_drop"),
        "is_bed": fit.drop is not None,
        "is_pad": "pad_width" in known,
        "width": known["fit_width"],
        "height": known["fit_height"],
        "finished_width": sheet.sized.finished_width,
        "finished_height": sheet.sized.finished_height,
        "is_exact": not (known["fit_width_more"].value or known["fit_height_more"].value),
        "rows": project.arrangement.rows.whole,
        "columns": project.arrangement.columns.whole,
        "border": border.width if border else None,
        "border_name": border.name if border else "",
        "chooses_blocks": Choosing.ROWS_AND_COLUMNS in fit.may_choose and not keeps_layout(project),
        "repeats_rows": bool(project.arrangement.unequal_rows),
        "chooses_border": chooses_border,
        "narrowest": known.get("fit_border_from"),
        "widest": known.get("fit_border_to"),
    }
    return scribe.blocks("sections/fit", values)


_FIGURE = re.compile(r"\d+(?: \d+/\d+)?(?: × \d+(?: \d+/\d+)?)?(?: (?:in|cm))?(?=[ ,;.]|$)")


def _with_figures(note: str) -> Markdown:
    """Return a note on published sizes, its figures marked as such; where it is from is told with the reason."""
    said = note.partition(" (")[0]
    written, done = "", 0
    for found in _FIGURE.finditer(said):
        written += _escaped(said[done : found.start()]) + mark_figure(found[0], "")
        done = found.end()
    return Markdown(written + _escaped(said[done:]))


def _escaped(words: str) -> str:
    """Return a stretch of words, with the space before and after it that stands between it and a figure."""
    before, after = words[: len(words) - len(words.lstrip())], words[len(words.rstrip()) :]
    return f"{before}{escape(words)}{after}" if words.strip() else words


def pad_values(sheet: PatternSheet) -> tuple[Quantity, Quantity] | None:
    """Return the cushion pad that goes into a cover; None for anything else."""
    known = dict(sheet.figures)
    return (known["pad_width"], known["pad_height"]) if "pad_width" in known else None
