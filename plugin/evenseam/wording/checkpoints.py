"""What a maker's ruler should read after a step, as the simulator measured it."""

from __future__ import annotations

from evenseam.exact import is_multiple
from evenseam.pattern import (
    AddSettingTriangles,
    AttachCornerPockets,
    AttachLoops,
    AttachRings,
    AttachSleeve,
    Bind,
    CloseEnvelope,
    CloseKnifeEdge,
    Face,
    HemPanel,
    JoinDiagonalRows,
    JoinPieces,
    LayerForQuilting,
    MakeBinding,
    MakeCornerPockets,
    MakeLoop,
    MakeSleeve,
    MakeUnits,
    PieceSection,
    QuiltLayers,
    RoundCorners,
    Step,
    Topstitch,
    TrimPart,
    TurnOut,
)
from evenseam.sizing import Measurement
from evenseam.wording.document import Checkpoint
from evenseam.wording.scribe import Scribe
from evenseam.wording.workpieces import Workpieces

_UNMEASURED = (
    AddSettingTriangles,
    JoinDiagonalRows,
    JoinPieces,
    LayerForQuilting,
    QuiltLayers,
    MakeBinding,
    MakeCornerPockets,
    AttachCornerPockets,
    AttachSleeve,
    Topstitch,
    TrimPart,
    MakeUnits,
    RoundCorners,
    HemPanel,
    MakeLoop,
    AttachLoops,
    AttachRings,
)
"""Steps that leave nothing a maker would measure, or nothing new."""
_FINISHED = (TurnOut, Bind, MakeSleeve, Face, CloseKnifeEdge, CloseEnvelope)
"""Steps that leave a finished edge."""


def checkpoint(scribe: Scribe, pieces: Workpieces, step: Step) -> tuple[Checkpoint, ...]:
    """Return the checkpoint of a step; none when there is nothing to measure."""
    read = next((read for read in scribe.sheet.log.measurements if read.step == step.id), None)
    if read is None or isinstance(step.operation, _UNMEASURED) or _is_off_ruler(scribe, step, read):
        return ()
    return tuple(
        block
        for block in scribe.blocks("steps/checkpoint", _values(scribe, pieces, step, read))
        if isinstance(block, Checkpoint)
    )


def _is_off_ruler(scribe: Scribe, step: Step, read: Measurement) -> bool:
    """Tell whether a part of a block has a size no ruler shows: it is checked when the whole block is."""
    mark = scribe.sheet.project.unit.ruler_mark
    is_on_ruler = is_multiple(read.width, mark) and is_multiple(read.height, mark)
    return isinstance(step.operation, (PieceSection, JoinPieces, TrimPart)) and not is_on_ruler


def _values(scribe: Scribe, pieces: Workpieces, step: Step, read: Measurement) -> dict[str, object]:
    known = [*(step.measures or ()), *(quantity for _, quantity in scribe.sheet.sized.figures)]
    return {
        "called": pieces.called(step.makes),
        "times": step.times,
        "size": scribe.sizes(read.width, read.height, *known),
        "is_finished": isinstance(step.operation, _FINISHED),
    }
