"""Sheets computed in this process, kept for the next build of a preview: an edit seldom touches every size."""

from __future__ import annotations

import hashlib
import pickle
from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import replace
from typing import Any, TypeVar

from evenseam.pattern import Pattern, Project
from evenseam.problems import Outcome
from evenseam.sheet import PatternSheet, compute_sheet

MOST_SHEETS = 32
"""Sheets that are kept; those of one pattern are rarely more."""
_T = TypeVar("_T")


class SheetMemory:
    """The last sheets, each under the whole of its project, with what was made of them: pictures, parts of pages.

    The whole names the lines at which the author wrote each figure, so that a project which only moved down the file is
    computed again: what is published says where a figure was given.
    """

    def __init__(self, most: int = MOST_SHEETS) -> None:
        self._most = most
        self._sheets: OrderedDict[str, Outcome[PatternSheet]] = OrderedDict()
        self._made: dict[str, dict[Hashable, Any]] = {}

    def compute(self, pattern: Pattern, project: Project) -> Outcome[PatternSheet]:
        """Return the sheet of a project, computed only if this very project was not computed before."""
        key = _mark(project)
        known = self._sheets.get(key)
        if known is None:
            known = self._sheets[key] = compute_sheet(pattern, project)
            while len(self._sheets) > self._most:
                gone, _ = self._sheets.popitem(last=False)
                self._made.pop(gone, None)
        self._sheets.move_to_end(key)
        if known.value is None or known.value.pattern is pattern:
            return known
        # Nothing that is computed depends on the pattern round the project: its title, its other sizes.
        return Outcome(replace(known.value, pattern=pattern), known.problems)

    def keep(self, sheet: PatternSheet, key: Hashable, make: Callable[[], _T]) -> _T:
        """Return what was made of a sheet under this key, made now if it was not before.

        It must follow from the key and the project alone, and say nothing of the pattern round it. A sheet on cloth of
        another width is known by its sheet as planned, for it is sewn by the same program.
        """
        for mark, known in reversed(self._sheets.items()):
            if known.value is not None and known.value.program is sheet.program:
                made = self._made.setdefault(mark, {})
                place = (sheet.project.usable_width.value, key)
                if place not in made:
                    made[place] = make()
                return made[place]  # type: ignore[no-any-return]
        return make()


def _mark(project: Project) -> str:
    """Return a hash of everything a project holds, also of what two equal projects may differ in: their places."""
    return hashlib.sha256(pickle.dumps(project)).hexdigest()


SHEETS = SheetMemory()
"""The memory of this process."""
