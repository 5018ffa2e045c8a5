"""Steps that are told together in words: what is done to all of them, and a table of what differs."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import Any

from evenseam.pattern import AddSettingTriangles, JoinRun, Press, Step
from evenseam.wording.marked import Markdown
from evenseam.wording.on_point_words import OnPointWords
from evenseam.wording.scribe import Scribe
from evenseam.wording.step_groups import Laid, laid
from evenseam.wording.workpieces import Workpieces

RUNS = "steps/join_several_runs"
TRIANGLES = "steps/add_all_setting_triangles"


@dataclass(frozen=True, slots=True)
class SharedSteps:
    """Says several steps as one."""

    scribe: Scribe
    pieces: Workpieces
    taught: dict[str, int]
    """Number of the step in which something was explained in full, by what it was."""

    def markdown(self, group: tuple[Step, ...], number: int) -> str:
        """Return a group as Markdown: a heading, pictures named by the places of their steps in the group, its text."""
        if isinstance(group[0].operation, AddSettingTriangles):
            return self.scribe.markdown(TRIANGLES, self._triangles(group, number))
        return self.scribe.markdown(RUNS, self._runs(group))

    def _runs(self, group: tuple[Step, ...]) -> dict[str, Any]:
        found = laid(group)
        if found is None:
            raise ValueError("these steps cannot be told together")
        pairs = [(step, step.operation) for step in group if isinstance(step.operation, JoinRun)]
        presses = [self._press(run) for _, run in pairs]
        firsts = [self.pieces.called(one.first).one if one.first else "" for one in found]
        # The shortest row shows how the parts follow one another, the longest how far that goes.
        shown = sorted({0, max(range(len(pairs)), key=lambda place: len(pairs[place][1].parts))})
        return {
            "kind": self.pieces.run_kind(group[0]),
            "is_across": pairs[0][1].run.value == "across",
            "pictures": [
                {"place": place, "told": self._told(pairs[place][1].parts), "called": self._title(group[place])}
                for place in shown
            ],
            "in_turn": any(firsts),
            "first": firsts[0] if len(set(firsts)) == 1 else "",
            "ends": self._told((found[0].ends,) * 2) if found[0].ends else None,
            "press": presses[0] if len(set(presses)) == 1 else None,
            "rows": [
                {**self._row(step, one), "first": first, "press": press}
                for step, one, first, press in zip(group, found, firsts, presses, strict=True)
            ],
        }

    def _row(self, step: Step, one: Laid) -> dict[str, Any]:
        read = next(read for read in self.scribe.sheet.log.measurements if read.step == step.id)
        known = [*(step.measures or ()), *(quantity for _, quantity in self.scribe.sheet.sized.figures)]
        return {
            "numbers": self.pieces.row_numbers(step),
            "times": step.times,
            "told": self._told(one.parts),
            "size": self.scribe.sizes(read.width, read.height, *known),
        }

    def _told(self, parts: tuple[str, ...]) -> Markdown:
        words = []
        for name in dict.fromkeys(parts):
            called, count = self.pieces.called(name), parts.count(name)
            words.append(Markdown(f"{self.scribe.language.in_words(count)} {called.of(count)}"))
        return self.scribe.language.listed(words)

    def _title(self, step: Step) -> Markdown:
        return self.pieces.called(step.makes).of(step.times)

    def _press(self, run: JoinRun) -> Markdown:
        across = run.run.value == "across"
        key = {
            Press.FIRST: "left" if across else "up", Press.SECOND: "right" if across else "down", Press.OPEN: "open",
            Press.DARKER: "darker", Press.SASHING: "sashing", Press.OUTWARD: "outward", Press.INWARD: "inward",
        }[run.press]  # fmt: skip
        return Markdown(self.scribe.language.word("press", key))

    def _triangles(self, group: tuple[Step, ...], number: int) -> dict[str, Any]:
        words = OnPointWords(self.scribe, self.pieces, self.taught)
        told = [
            (place, words.values(step.operation, number))
            for place, step in enumerate(group)
            if isinstance(step.operation, AddSettingTriangles)
        ]
        first = told[0][1]
        kinds = {end["kind"] for _, values in told for end in values["ends"]}
        rows = []
        for _, alike in groupby(told, lambda one: (_ends(one[1]), one[1]["is_single"], one[1]["quarter_turns"])):
            run = list(alike)
            place, values = run[0]
            rows.append({**values, "place": place, "row": values["row"], "to": run[-1][1]["row"]})
        return {
            **{name: first[name] for name in ("is_first", "first_step", "last_row")},
            "rows": rows,
            "has_setting": bool(kinds - {"corner"}),
            "has_corner": "corner" in kinds,
            "setting": self.scribe.language.words["called"]["setting_triangle"][0],
            "corner": self.scribe.language.words["called"]["corner_triangle"][0],
            "upright": [name for name in dict.fromkeys(values["upright"] for _, values in told) if name],
        }


def _ends(values: dict[str, Any]) -> tuple[str, ...]:
    return tuple(end["kind"] for end in values["ends"])
