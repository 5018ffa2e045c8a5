"""The centre of a top, however its blocks are set: straight, on point, or in rows of unequal blocks."""

from __future__ import annotations

from typing import TypeAlias, Union

from evenseam.pattern import Project, Setting
from evenseam.sizing.centre import Centre, size_centre
from evenseam.sizing.ledger import Ledger
from evenseam.sizing.on_point import OnPointCentre, size_on_point
from evenseam.sizing.outlined import outlined_block, size_outlined
from evenseam.sizing.unequal_rows import UnequalCentre, size_unequal_rows

AnyCentre: TypeAlias = Union[Centre, OnPointCentre, UnequalCentre]


def size_any_centre(project: Project, ledger: Ledger) -> AnyCentre:
    """Work out the centre by the setting of its blocks; enter every figure."""
    if project.arrangement.setting is Setting.ON_POINT:
        return size_on_point(project, ledger)
    if project.arrangement.setting is Setting.UNEQUAL_ROWS:
        return size_unequal_rows(project, ledger)
    block = outlined_block(project)
    if block is not None:
        return size_outlined(project, block, ledger)
    return size_centre(project, ledger)
