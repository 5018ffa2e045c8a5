"""The back of a cushion cover: two overlapping panels with hemmed edges, sized, cut and sewn.

::

    +-----------+  ^          the upper panel lies over the lower one by the overlap; both are as wide as the raw
    |   upper   |  | panel    front, and hemmed along the edge that lies across its middle
    |- - - - - -|  |     ^
    +===========+  v     |
    |   lower   |        |
    +-----------+        v
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Direction, Rounding, Unit
from evenseam.pattern import (
    Assumed,
    CloseEnvelope,
    Cut,
    CutShape,
    EnvelopeBack,
    HemPanel,
    Project,
    Quantity,
    Step,
)
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.sized import SizedProject

BACK_PANELS = "back-panels"
_HEMMED = "hemmed-panel"
_SOURCE = "Another no-binding finish for a quilt, quiltsbyjen"


def size_envelope(finish: EnvelopeBack, ledger: Ledger) -> None:
    """Work out the panels of an envelope back and enter every figure.

    The panels are cut on a mark of the ruler; what that adds goes to the overlap, which is worked out again.
    """
    ledger.enter("backing_seam", finish.backing_seam)
    height, unit = ledger["top_height"], ledger["top_height"].unit
    asked = ledger.enter("back_overlap_asked", finish.overlap)
    hem = ledger.enter("back_panel_hem", finish.hem)
    ledger.work_out("back_panel_width", ledger["top_width"], rule="as wide as the raw front")
    panel = ledger.work_out(
        "back_panel_height", (height + asked) / 2 + 2 * hem,
        rule="half of the raw front and of the overlap, and the edge folded under twice", source=_SOURCE,
        rounding=Rounding("ruler", unit.ruler_mark, Direction.UP),
    )  # fmt: skip
    hemmed = ledger.work_out("hemmed_panel_height", panel - 2 * hem)
    ledger.work_out("back_overlap", 2 * hemmed - height, rule="what the two hemmed panels have more than the front")
    for side in ("width", "height"):
        ledger.work_out(
            f"pad_{side}", ledger[f"finished_{side}"], label=f"{side} of the cushion pad", source="common practice",
            rule="a pad as large as its cover, or a little larger, fills the corners",
            rounding=Rounding("sizes of pads", Fraction(1), Direction.UP),
        )  # fmt: skip


def settle_overlap(project: Project, ledger: Ledger) -> Project:
    """Return the project with the overlap that its panels come to once they are cut on a mark of the ruler."""
    if not isinstance(project.finish, EnvelopeBack):
        return project
    return replace(project, finish=replace(project.finish, overlap=ledger["back_overlap"]))


def panel_cuts(sized: SizedProject, finish: EnvelopeBack) -> list[Cut]:
    """Return the panels of an envelope back."""
    fabric = finish.panel_fabric
    two = Quantity("number of back panels", Fraction(2), Unit.COUNT, Assumed("an upper and a lower one", "counted"))
    return [
        Cut(
            BACK_PANELS, "panels for the back", fabric, CutShape.RECTANGLE, sized.figure("back_panel_width"),
            sized.figure("back_panel_height"), two, "back", sized.project.fabric(fabric).is_directional,
        )
    ]  # fmt: skip


def envelope_steps(sized: SizedProject, front: str, edged: str) -> list[Step]:
    """Return the steps from the squared-up front to the cushion cover."""
    hem, seam = sized.figure("back_panel_hem"), sized.project.seam_allowance
    hemmed = (sized.figure("back_panel_width"), sized.figure("hemmed_panel_height"))
    close = CloseEnvelope(front, _HEMMED, seam, sized.figure("back_overlap"))
    return [
        Step("hem-panels", HemPanel(BACK_PANELS, hem), _HEMMED, 2, hemmed),
        Step("close-back", close, edged, 1, (sized.finished_width, sized.finished_height)),
    ]
