"""Problems as a page: what a reader sees in place of a pattern that cannot be published yet."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from evenseam.problems import Problem, SourceText, show_problem
from evenseam.publish.faulty_drawings import FaultyDrawing, faulty_drawings
from evenseam.publish.html_text import escape, plain, without_blank_lines

MOST_SHOWN = 200
"""Problems on one page; whoever has more has one mistake many times."""


def write_problems(title: str, problems: Iterable[Problem], sources: Mapping[str, SourceText]) -> str:
    """Return the HTML of a page that names every problem with its place, the line it stands in and the way out."""
    told = list(problems)
    count = "one problem" if len(told) == 1 else f"{len(told)} problems"
    drawings = faulty_drawings(told, sources)
    items = "\n".join(f"<li>{_item(problem, sources, drawings)}</li>" for problem in told[:MOST_SHOWN])
    rest = f"\n<p>The first {MOST_SHOWN} are shown.</p>" if len(told) > MOST_SHOWN else ""
    return without_blank_lines(
        f'<div class="pattern-text problems" lang="en" data-search-exclude>\n<h1>{escape(title)}</h1>\n'
        f"<p>This pattern is not published yet: it has {count}.</p>\n"
        f"<ol>\n{items}\n</ol>{rest}{_pictures(drawings)}\n</div>"
    )


def write_problem(problem: Problem, sources: Mapping[str, SourceText]) -> str:
    """Return the HTML of one problem."""
    return _item(problem, sources, ())


def _pictures(drawings: tuple[FaultyDrawing, ...]) -> str:
    """Return the drawings that problems point into, with their places ringed and numbered."""
    return "".join(
        f"\n<p>What is wrong in <code>{escape(drawing.file)}</code>, by its number:</p>\n"
        f'<div class="faulty-drawing">{drawing.svg.strip()}</div>'
        for drawing in drawings
    )


def _item(problem: Problem, sources: Mapping[str, SourceText], drawings: tuple[FaultyDrawing, ...]) -> str:
    lines = show_problem(problem, sources).splitlines()
    excerpt = [line for line in lines[1:] if not line.startswith(("   hint: ", "   in: "))]
    # Inside <pre> a new line must stay one; each line by itself is made harmless.
    shown = "\n".join(escape(line) or "&nbsp;" for line in excerpt)
    return (
        f'<p><strong class="problem-{problem.severity.value}">{escape(problem.severity.value)}</strong> '
        f"<code>{escape(problem.code.name)}</code>: {escape(problem.message)}</p>"
        + (f"<p><code>{escape(str(problem.place))}</code>{_in_picture(problem, drawings)}</p>" if problem.place else "")
        + (f'<pre tabindex="0">{shown}</pre>' if shown else "")
        + (f"<p>In {escape(', '.join(problem.sizes))}.</p>" if problem.sizes else "")
        + (f"<p><strong>What to do:</strong> {escape(plain(problem.hint))}</p>" if problem.hint else "")
    )


def _in_picture(problem: Problem, drawings: tuple[FaultyDrawing, ...]) -> str:
    """Return which number a problem has in the picture of its drawing below."""
    for drawing in drawings:
        number = drawing.number(problem) if problem.place and problem.place.file == drawing.file else None
        if number is not None:
            return f", number {number} in the picture below"
    return ""
