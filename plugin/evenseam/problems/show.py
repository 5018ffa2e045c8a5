"""Problems as plain text: place, message, the line itself with a mark under it, and the way out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from evenseam.problems.place import Place, SourceText
from evenseam.problems.problem import Problem

LONGEST_LINE = 240
"""Characters of a line that are shown."""


def show_problem(problem: Problem, sources: Mapping[str, SourceText]) -> str:
    """Return one problem in the one form used everywhere.

    `sources` maps file names to their texts; a file that is not in it is shown without its line.
    """
    where = f"{problem.place}: " if problem.place else ""
    lines = [f"{where}{problem.severity.value}[{problem.code.name}]: {problem.message}"]
    if problem.place:
        lines += _excerpt(problem.place, sources)
    for label in problem.labels:
        lines += [f"   {label.place}: {label.text}", *_excerpt(label.place, sources)]
    if problem.sizes:
        lines.append(f"   in: {', '.join(problem.sizes)}")
    if problem.hint:
        lines.append(f"   hint: {problem.hint}")
    return "\n".join(lines)


def show_problems(problems: Iterable[Problem], sources: Mapping[str, SourceText]) -> str:
    """Return all problems, a blank line between them."""
    return "\n\n".join(show_problem(problem, sources) for problem in problems)


def _excerpt(place: Place, sources: Mapping[str, SourceText]) -> list[str]:
    source = sources.get(place.file)
    line = source.line(place.line) if source else ""
    if not line.strip():
        return []
    end = place.end_column if place.end_line == place.line else len(line) + 1
    column = place.column
    if len(line) > LONGEST_LINE:
        # A line as long as a book is shown only round the place.
        skipped = max(0, min(column - 1 - LONGEST_LINE // 3, len(line) - LONGEST_LINE))
        shown = line[skipped + bool(skipped) : skipped + LONGEST_LINE]
        line = ("…" if skipped else "") + shown + ("…" if skipped + LONGEST_LINE < len(line) else "")
        column, end = max(1, column - skipped), end - skipped
    width = max(1, min(end, len(line) + 1) - column)
    # Tabs and other controls are shown as one space each, so that the mark stays under its word.
    plain = "".join(sign if sign.isprintable() else " " for sign in line)
    return [f"{place.line:>5} | {plain}", f"      | {' ' * (column - 1)}{'~' * width}"]
