"""Every mistake an author can make, with the problem it must give written above the line it is on."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from evenseam.problems import Code, SourceText, show_problems
from evenseam.reading import codes, read_pattern
from evenseam.reading.compose import LONGEST_FILE, MOST_NODES

CASES = sorted((Path(__file__).parent.parent / "errors").glob("*.yaml"))
NOTE = re.compile(r" *# (error|warning) (?:(\d+):)?(\d+)-(\d+) ([a-z-]+)")
ALL_CODES = tuple(value for value in vars(codes).values() if isinstance(value, Code))

# What cannot stand in a small file with remarks in it.
MADE_HERE = {
    "empty-file": "",
    "file-too-long": "# " + "x" * LONGEST_FILE,
    "too-many-entries": "title: [" + "a, " * (MOST_NODES + 1) + "]",
}


def expected(text: str) -> list[tuple[str, int, int, int, str]]:
    """Return (severity, line, column, end column, code) for every note; a note speaks of the next line that is none."""
    found = []
    waiting: list[re.Match[str]] = []
    for number, line in enumerate(re.split("\n", text), start=1):
        note = NOTE.fullmatch(line)
        if note:
            waiting.append(note)
            continue
        found += [(note[1], int(note[2] or number), int(note[3]), int(note[4]), note[5]) for note in waiting]
        waiting = []
    return found


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_problems_are_where_the_notes_say(path: Path) -> None:
    source = SourceText(path.name, path.read_text(encoding="utf-8"))
    outcome = read_pattern(path.stem, source)
    told = [
        (problem.severity.value, problem.place.line, problem.place.column, problem.place.end_column, problem.code.name)
        for problem in outcome.problems
        if problem.place is not None
    ]
    assert sorted(told) == sorted(expected(source.text)), "\n" + show_problems(outcome.problems, {path.name: source})
    assert len(told) == len(outcome.problems), "every problem has a place"
    assert (outcome.value is None) == any(severity == "error" for severity, *_ in told)


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_every_problem_says_what_to_do(path: Path) -> None:
    outcome = read_pattern(path.stem, SourceText(path.name, path.read_text(encoding="utf-8")))
    for problem in outcome.problems:
        assert problem.hint, problem
        assert problem.message[:1] not in "ABCDEFGHIJKLMNOPQRSTUVWXYZ", problem
        assert not problem.message.endswith("."), problem


@pytest.mark.parametrize("name", MADE_HERE)
def test_what_cannot_stand_in_a_small_file(name: str) -> None:
    outcome = read_pattern("made", SourceText("made.yaml", MADE_HERE[name]))
    assert [problem.code.name for problem in outcome.problems] == [name]
    assert outcome.value is None


def test_every_code_has_a_case_and_every_case_a_code() -> None:
    cases = {code for path in CASES for *_, code in expected(path.read_text(encoding="utf-8"))}
    assert cases | set(MADE_HERE) == {code.name for code in ALL_CODES}
    assert all(expected(path.read_text(encoding="utf-8")) for path in CASES)


def test_codes_are_told_apart_by_name_and_number() -> None:
    assert len({code.name for code in ALL_CODES}) == len({code.number for code in ALL_CODES}) == len(ALL_CODES)


def test_there_are_enough_cases() -> None:
    assert len(CASES) >= 60


def test_a_fabric_in_place_of_its_part_is_shown_as_it_should_stand() -> None:
    path = next(path for path in CASES if path.stem == "fabric-for-a-backing")
    (problem,) = read_pattern(path.stem, SourceText(path.name, path.read_text(encoding="utf-8"))).problems
    assert problem.hint == "write {fabric: sea}"
