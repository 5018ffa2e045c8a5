"""Plans of a small workshop's fabrics can be followed with a rotary cutter."""

from __future__ import annotations

import pytest
from evenseam.cutting import plan_cutting
from evenseam.pattern import Cut, CutList, CutShape, StripJoin
from support.cloth_checker import faults
from support.samples import LAP_QUILT, MUG_RUG, count, length

DIAGONAL = StripJoin.DIAGONAL


def cut(id: str, width: str, height: str, pieces: int, shape: CutShape = CutShape.RECTANGLE, **more: object) -> Cut:
    """Return a cut of the fabric named sea unless another is given."""
    settings = {"material": "sea", "part": "block:lantern", **more}
    return Cut(
        id=id, label=id, shape=shape, width=length(f"{id} width", width), height=length(f"{id} height", height),
        count=count(f"{id} count", pieces), **settings,
    )  # fmt: skip


EVERYTHING = CutList(
    (
        cut("patch", "2 1/2", "4 1/2", 48),
        cut("square", "3 1/2", "3 1/2", 30, CutShape.SQUARE),
        cut("top and bottom", "60", "4 1/2", 2, CutShape.STRIP, part="border:outer", join=DIAGONAL),
        cut("sides", "4 1/2", "80", 2, CutShape.STRIP, part="border:outer", join=DIAGONAL),
        cut("binding", "2 1/4", "290", 1, CutShape.BINDING, part="binding", join=DIAGONAL),
        cut("backing", "68", "88", 1, material="fog", part="backing", join=StripJoin.STRAIGHT),
        cut("fog patch", "3", "5", 24, material="fog"),
        cut("reed sides", "3", "60", 2, CutShape.STRIP, material="reed", is_upright=True, join=DIAGONAL),
        cut("reed top", "50", "3", 2, CutShape.STRIP, material="reed", is_upright=True, join=DIAGONAL),
        cut("reed patch", "4", "6", 20, material="reed", is_upright=True),
        cut("lamp triangle", "3", "3", 11, CutShape.HALF_SQUARE_TRIANGLE, material="lamp"),
        cut("batting", "66", "86", 1, material="batting", part="batting"),
    )
)


@pytest.mark.parametrize("project", [MUG_RUG, LAP_QUILT], ids=lambda project: project.size)
def test_every_plan_can_be_followed(project):
    outcome = plan_cutting(EVERYTHING, project)
    assert outcome.problems == ()
    assert [material.material for material in outcome.value] == ["sea", "fog", "lamp", "reed", "batting"]
    for material in outcome.value:
        if material.plan is not None:
            assert faults(material.plan, EVERYTHING.of(material.material), project) == []
