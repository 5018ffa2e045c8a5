"""Steps in a row that do the same to different parts, put together so that they can be told once."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import TypeAlias

from evenseam.pattern import AddSettingTriangles, JoinRun, Step
from evenseam.sheet import PatternSheet

_ROWS = ("row", "column", "diagonal_row", "sashing_row")
LEAST_RUNS = 3
"""Two rows that differ are told faster one by one than in a table."""

KindOf: TypeAlias = Callable[[Step], str]
"""Says what a run makes: row, column, sashing_row, …"""


@dataclass(frozen=True, slots=True)
class Laid:
    """How the parts of a row follow one another."""

    ends: str
    """The part that lies at either end besides those in turn; empty when there is none."""
    first: str
    """The part with which the others begin and end; empty when all are alike."""
    parts: tuple[str, ...]
    """The parts between the ends."""


def step_groups(sheet: PatternSheet, kind_of: KindOf) -> tuple[tuple[Step, ...], ...]:
    """Return the steps in their order, those that are told together in one group; most groups hold one step.

    A step to which the author has added words of her own stands by itself.
    """
    own = {id for id, _ in sheet.project.additions}
    if sheet.project.arrangement.unequal_rows:  # Every row is another picture there.
        own |= {step.id for step in sheet.program.steps if isinstance(step.operation, JoinRun)}
    return tuple(_groups(sheet.program.steps, own, kind_of))


def is_in_turn(parts: tuple[str, ...]) -> bool:
    """Tell whether parts are two sorts in turn that begin and end with the same sort, or all of one sort."""
    distinct = list(dict.fromkeys(parts))
    return len(parts) % 2 == 1 and parts == tuple(distinct[place % len(distinct)] for place in range(len(parts)))


def laid(group: tuple[Step, ...]) -> tuple[Laid, ...] | None:
    """Return how the parts of several rows are laid out, told in the same way for all; None when no way fits all."""
    runs = [step.operation for step in group if isinstance(step.operation, JoinRun)]
    if len(runs) != len(group):
        return None
    for way in (_all_alike, _in_turn, _with_ends):
        found = [one for run in runs if (one := way(run)) is not None]
        if len(found) == len(runs) and len({one.ends for one in found}) == 1:
            return tuple(found)
    return None


def _groups(steps: tuple[Step, ...], own: set[str], kind_of: KindOf) -> Iterator[tuple[Step, ...]]:
    for key, found in groupby(steps, lambda step: () if step.id in own else _key(step, kind_of)):
        group = tuple(found)
        is_shared = len(group) > 1 if key == ("triangles",) else len(group) >= LEAST_RUNS and laid(group) is not None
        if key and is_shared:
            yield group
        else:
            yield from ((step,) for step in group)


def _key(step: Step, kind_of: KindOf) -> tuple[object, ...]:
    """Return what steps told together have in common; empty for a step that is always told by itself."""
    match step.operation:
        case AddSettingTriangles():
            return ("triangles",)
        case JoinRun(run=run, quarter_turns=turns) if not any(turns) and (kind := kind_of(step)) in _ROWS:
            return (kind, run)
    return ()


def _all_alike(run: JoinRun) -> Laid | None:
    return Laid("", "", run.parts) if len(set(run.parts)) == 1 else None


def _in_turn(run: JoinRun) -> Laid | None:
    return Laid("", run.parts[0], run.parts) if len(set(run.parts)) == 2 and is_in_turn(run.parts) else None


def _with_ends(run: JoinRun) -> Laid | None:
    ends, between = run.parts[0], run.parts[1:-1]
    if not between or run.parts[-1] != ends or ends in between or len(set(between)) > 2 or not is_in_turn(between):
        return None
    return Laid(ends, between[0], between)
