"""`evenseam check`: all problems of all patterns, and what was found in order."""

from __future__ import annotations

import argparse
import json
import sys
from typing import Any

from evenseam.cli.loading import CannotRunError
from evenseam.cli.published import since
from evenseam.problems import Problem, Severity, show_problems
from evenseam.publish.checked import CheckedPattern, check_pattern
from evenseam.publish.sources import find_patterns


def run(options: argparse.Namespace) -> int:
    """Check a path; exit status 1 when a pattern has an error."""
    try:
        found = find_patterns(options.path)
    except FileNotFoundError as error:
        raise CannotRunError(str(error)) from None
    checked: list[CheckedPattern] = []
    for number, source in enumerate(found, start=1):
        _progress(f"checking {number} of {len(found)}: {source.slug}")
        checked.append(check_pattern(source))
    if options.since is not None:
        checked = since(checked, options.since, options.path)
    _progress("")
    print(json.dumps([_as_data(pattern) for pattern in checked], indent=2) if options.json else _as_text(checked))
    return 0 if all(pattern.is_valid for pattern in checked) else 1


def _as_text(checked: list[CheckedPattern]) -> str:
    lines: list[str] = []
    for pattern in checked:
        if pattern.problems:
            lines += [show_problems(pattern.problems, pattern.sources), ""]
        lines += [_claims_line(pattern)] if pattern.claims else []
    errors = [problem for pattern in checked for problem in pattern.problems if problem.severity is Severity.ERROR]
    warnings = sum(len(pattern.problems) for pattern in checked) - len(errors)
    sheets = sum(len(pattern.sheets) for pattern in checked)
    summary = (
        f"{_counted(len(checked), 'pattern')}, {_counted(sheets, 'sheet')} computed and sewn by the simulator: "
        f"{_counted(len(errors), 'error')}, {_counted(warnings, 'warning')}"
    )
    return "\n".join([*lines, summary])


def _claims_line(pattern: CheckedPattern) -> str:
    wrong = sum(not result.is_right for result in pattern.claims)
    return f"{pattern.slug}: {_counted(len(pattern.claims), 'claim')} of an older version audited, {wrong} wrong\n"


def _counted(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def _progress(text: str) -> None:
    if sys.stderr.isatty():
        print(f"\r\x1b[K{text}", end="", file=sys.stderr, flush=True)


def _as_data(pattern: CheckedPattern) -> dict[str, Any]:
    return {
        "pattern": pattern.slug,
        "is_valid": pattern.is_valid,
        "problems": [problem_as_data(problem) for problem in pattern.problems],
        "claims": [
            {
                "size": result.claim.size,
                "figure": result.claim.figure,
                "stated": result.claim.stated.text,
                "computed": result.computed.text,
                "is_right": result.is_right,
            }
            for result in pattern.claims
        ],
    }


def problem_as_data(problem: Problem) -> dict[str, Any]:
    """Return a problem as data: code, severity, message, hint and place."""
    place = problem.place
    return {
        "code": problem.code.name,
        "severity": problem.severity.value,
        "message": problem.message,
        "hint": problem.hint,
        "sizes": list(problem.sizes),
        "file": place.file if place else None,
        "line": place.line if place else None,
        "column": place.column if place else None,
        "end_line": place.end_line if place else None,
        "end_column": place.end_column if place else None,
    }
