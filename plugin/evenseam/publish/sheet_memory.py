"""Sheets computed in this process, kept for the next build of a preview: an edit seldom touches every size."""

from __future__ import annotations

import hashlib
import pickle
from collections import OrderedDict
from dataclasses import replace

from evenseam.figures import Drawing, draw
from evenseam.pattern import Pattern, Project
from evenseam.problems import Outcome
from evenseam.sheet import PatternSheet, compute_sheet

MOST_SHEETS = 32
"""Sheets that are kept; those of one pattern are rarely more."""


class SheetMemory:
    """The last sheets, each under the whole of its project, with the pictures drawn of them.

    The whole names the lines at which the author wrote each figure, so that a project which only moved down the file is
    computed again: what is published says where a figure was given.
    """

    def __init__(self, most: int = MOST_SHEETS) -> None:
        self._most = most
        self._sheets: OrderedDict[str, Outcome[PatternSheet]] = OrderedDict()
        self._drawings: dict[str, dict[str, Drawing]] = {}

    def compute(self, pattern: Pattern, project: Project) -> Outcome[PatternSheet]:
        """Return the sheet of a project, computed only if this very project was not computed before."""
        key = _mark(project)
        known = self._sheets.get(key)
        if known is None:
            known = self._sheets[key] = compute_sheet(pattern, project)
            while len(self._sheets) > self._most:
                gone, _ = self._sheets.popitem(last=False)
                self._drawings.pop(gone, None)
        self._sheets.move_to_end(key)
        if known.value is None or known.value.pattern is pattern:
            return known
        # Nothing that is computed depends on the pattern round the project: its title, its other sizes.
        return Outcome(replace(known.value, pattern=pattern), known.problems)

    def draw(self, sheet: PatternSheet, name: str) -> Drawing:
        """Return a picture of a sheet; pictures are of the project alone, and say nothing of the pattern round it."""
        for key, known in reversed(self._sheets.items()):
            if known.value is not None and known.value.sized is sheet.sized:
                drawings = self._drawings.setdefault(key, {})
                if name not in drawings:
                    drawings[name] = draw(sheet, name)
                return drawings[name]
        return draw(sheet, name)


def _mark(project: Project) -> str:
    """Return a hash of everything a project holds, also of what two equal projects may differ in: their places."""
    return hashlib.sha256(pickle.dumps(project)).hexdigest()


SHEETS = SheetMemory()
"""The memory of this process."""
