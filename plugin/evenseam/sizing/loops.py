"""Loops along the top edge, and rings behind it: sized, cut and sewn."""

from __future__ import annotations

from evenseam.pattern import (
    AttachLoops,
    AttachRings,
    Cut,
    CutShape,
    Loops,
    MakeLoop,
    Quantity,
    Rings,
    Step,
)
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.sized import SizedProject

LOOPS = "loops"
_LOOP = "folded-loop"


def size_loops_or_rings(hanging: Loops | Rings, seam: Quantity, ledger: Ledger) -> None:
    """Work out loops or rings and enter every figure."""
    if isinstance(hanging, Rings):
        ledger.enter("ring_count", hanging.number)
        ledger.enter("ring_drop", hanging.drop)
        return
    ledger.enter("loop_count", hanging.number)
    width = ledger.enter("loop_cut_width", hanging.cut_width)
    length = ledger.enter("loop_cut_length", hanging.cut_length)
    ledger.work_out("loop_finished_width", (width - 2 * seam) / 2, rule="sewn into a tube with one seam, and laid flat")
    ledger.work_out("loop_finished_length", length / 2, rule="folded in half, its raw ends included")
    ledger.work_out("loop_shows", ledger["loop_finished_length"] - seam, rule="the raw ends go into the seam")


def loop_cuts(sized: SizedProject, hanging: Loops) -> list[Cut]:
    """Return the strips that loops are folded from, as the loops hang."""
    label = "strip for the loop" if hanging.number.whole == 1 else "strips for the loops"
    return [
        Cut(
            LOOPS, label, hanging.fabric, CutShape.RECTANGLE, sized.figure("loop_cut_width"),
            sized.figure("loop_cut_length"), hanging.number, "hanging",
        )
    ]  # fmt: skip


def make_loops(sized: SizedProject, hanging: Loops) -> Step:
    """Return the step that makes all the loops."""
    size = (sized.figure("loop_finished_width"), sized.figure("loop_finished_length"))
    return Step("make-loops", MakeLoop(LOOPS, sized.project.seam_allowance, *size), _LOOP, hanging.number.whole, size)


def attach_loops(hanging: Loops, project: str, makes: str, size: tuple[Quantity, Quantity]) -> Step:
    """Return the step that lays the loops along the top edge of a piece, or sews them to a finished one."""
    return Step("attach-loops", AttachLoops(project, _LOOP, hanging.number.whole), makes, 1, size)


def attach_rings(hanging: Rings, project: str, makes: str, size: tuple[Quantity, Quantity]) -> Step:
    """Return the step that sews rings to the back of the finished project."""
    return Step("attach-rings", AttachRings(project, hanging.number.whole, hanging.drop), makes, 1, size)
