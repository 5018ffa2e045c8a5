"""The author's own words: figures put in by name, checked, and parsed into blocks.

Nothing an author writes is ever run. The text is only split where the template language would split it; between
{{ and }} one plain name may stand, which is looked up among the sheet's figures.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches

from evenseam.exact import Unit
from evenseam.pattern import Prose, Quantity
from evenseam.problems import Code, Place, Report
from evenseam.sheet import PatternSheet
from evenseam.wording.codes import (
    CONTROL_CHARACTER,
    HTML_IN_TEXT,
    LINK_ADDRESS,
    NO_PROGRAMS,
    NOT_A_FIGURE_NAME,
    NOT_IN_TEXT,
    TEXT_TOO_LONG,
    TYPED_MEASUREMENT,
    UNFINISHED_FIGURE,
    UNKNOWN_FIGURE,
    UNKNOWN_STEP,
)
from evenseam.wording.document import Block
from evenseam.wording.marked import mark_figure, without_marks
from evenseam.wording.other_sizes import is_step_of_another_size
from evenseam.wording.tree import every_run, parse_authors, plain_text
from evenseam.wording.typed_measurement import Typed, typed_measurements

LONGEST_PROSE = 8_000
"""Characters of one text: about three printed pages."""
_MARK = re.compile(
    r"\{\{(?P<inside>.*?)\}\}|(?P<program>\{%.*?%\}|\{#.*?#\}|\{%|\{#)|(?P<open>\{\{)|(?P<close>\}\})", re.DOTALL
)
_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
_HTML = re.compile(r"<(?:/?[a-zA-Z][a-zA-Z0-9-]*(?=[\s/>])|!--|!\[|!DOCTYPE|\?)", re.IGNORECASE)
_BLANK = "□"
"""Stands in for a figure while the text around it is checked."""


@dataclass(frozen=True, slots=True)
class Addressed:
    """The author's words as blocks, each where it belongs."""

    introduction: tuple[Block, ...]
    steps: Mapping[str, tuple[Block, ...]]


def read_prose(sheet: PatternSheet, report: Report, say: Callable[[str], str] = str) -> Addressed:
    """Return the author's introduction and the additions by step id; report what is the matter with them.

    `say` writes a figure as the language of the page does.
    """
    project = sheet.project
    figures = dict(sheet.figures)
    introductions = [prose for prose in (sheet.pattern.introduction, project.introduction) if prose is not None]
    introduction = [
        block
        for prose in dict.fromkeys(introductions)
        for block in prose_blocks(prose, figures, project.unit, report, say)
    ]
    known = [step.id for step in sheet.program.steps]
    steps: dict[str, tuple[Block, ...]] = {}
    for id, prose in project.additions:
        if id not in known:
            if is_step_of_another_size(sheet, id):
                continue
            _report_unknown_step(id, known, prose, report)
        steps[id] = steps.get(id, ()) + prose_blocks(prose, figures, project.unit, report, say)
    for summary in dict.fromkeys((sheet.pattern.summary, project.summary)):
        _check_typed(_Located(summary, sheet.pattern.place, is_inside=False), summary, figures, project.unit, report)
    return Addressed(tuple(introduction), steps)


def prose_blocks(
    prose: Prose, figures: Mapping[str, Quantity], unit: Unit, report: Report, say: Callable[[str], str] = str
) -> tuple[Block, ...]:
    """Return one text of the author as blocks, with its figures put in; report everything wrong with it."""
    text = prose.text.replace("\r\n", "\n").replace("\r", "\n")
    located = _Located(text, prose.place)
    if len(text) > LONGEST_PROSE:
        report.add(
            TEXT_TOO_LONG, prose.place, f"this text has {len(text)} characters; {LONGEST_PROSE} is the most",
            "keep what a maker needs at this place, and link to the rest",
        )  # fmt: skip
        return ()
    filled, around = _fill(text, located, figures, report, say)
    _check_signs(text, located, report)
    _check_typed(located, around, figures, unit, report)
    blocks = parse_authors(filled, lambda what, line: _report_refused(what, located.line_place(line), report))
    _check_printed(blocks, around, prose.place, figures, unit, report)
    return blocks


@dataclass(frozen=True, slots=True)
class _Located:
    """A text and where it begins in its file."""

    text: str
    place: Place | None
    is_inside: bool = True
    """False when the place is not that of the text itself."""

    def at(self, start: int, end: int) -> Place | None:
        """Return the place of a stretch of the text.

        In a block scalar every line of the file is a line of the text, shifted by the same indentation.
        """
        if self.place is None or not self.is_inside:
            return self.place
        line, column = self._line_and_column(start)
        end_line, end_column = self._line_and_column(max(start, end))
        return Place(self.place.file, line, column, end_line, end_column)

    def line_place(self, line: int) -> Place | None:
        """Return the place of a whole line, counted from 0."""
        lines = self.text.split("\n")
        if line >= len(lines):
            return self.place
        start = sum(len(text) + 1 for text in lines[:line])
        return self.at(start, start + len(lines[line]))

    def _line_and_column(self, position: int) -> tuple[int, int]:
        assert self.place is not None
        before = self.text[:position]
        return self.place.line + before.count("\n"), self.place.column + position - (before.rfind("\n") + 1)


def _fill(
    text: str, located: _Located, figures: Mapping[str, Quantity], report: Report, say: Callable[[str], str]
) -> tuple[str, str]:
    """Return the text with figures put in, and the author's own words alone, every figure blanked out in place."""
    filled: list[str] = []
    around: list[str] = []
    position = 0
    for match in _MARK.finditer(text):
        words = without_marks(text[position : match.start()])
        filled.append(words)
        around += [text[position : match.start()], _BLANK * len(match[0])]
        filled.append(_figure(match, located, figures, report, say))
        position = match.end()
    return "".join([*filled, without_marks(text[position:])]), "".join([*around, text[position:]])


def _figure(
    match: re.Match[str],
    located: _Located,
    figures: Mapping[str, Quantity],
    report: Report,
    say: Callable[[str], str],
) -> str:
    place = located.at(match.start(), match.end())
    if match["program"]:
        report.add(
            NO_PROGRAMS, place, f"{_short(match['program'])} is not possible here: a text only names figures",
            "take it out; a size that needs other words can have a text of its own",
        )  # fmt: skip
        return ""
    if match["open"] or match["close"]:
        missing = "}}" if match["open"] else "{{"
        report.add(
            UNFINISHED_FIGURE,
            place,
            f"{match[0]} without {missing}",
            "write {{ finished_width }}, with two braces on either side",
        )
        return ""
    inside = (match["inside"] or "").strip()
    if inside in figures:
        return mark_figure(say(figures[inside].text), inside)
    if _NAME.fullmatch(inside):
        near = get_close_matches(inside.lower(), figures, n=3, cutoff=0.6)
        # A bare "width" is most often that of the finished piece, which is too far away in letters.
        finished = f"finished_{inside.lower()}"
        if finished in figures:
            near = [finished, *(name for name in near if name != finished)][:3]
        hint = f"did you mean {_or(near)}?" if near else f"some names that are known: {', '.join(list(figures)[:6])}"
        report.add(UNKNOWN_FIGURE, place, f"no figure of this size is called {inside}", hint)
    else:
        report.add(
            NOT_A_FIGURE_NAME, place, f"{{{{ {_short(inside)} }}}} is not the name of a figure",
            "between {{ and }} only one name may stand, such as finished_width: no arithmetic, dots, calls or filters",
        )  # fmt: skip
    return ""


def _check_signs(text: str, located: _Located, report: Report) -> None:
    for match in _HTML.finditer(text):
        report.add(
            HTML_IN_TEXT, located.at(match.start(), match.end()), f"{_short(match[0])} is HTML, which is not used here",
            "use Markdown: **strong**, *emphasis*, lists and links",
        )  # fmt: skip
    if (clean := without_marks(text)) != text:
        at = next((place for place, sign in enumerate(text) if place >= len(clean) or clean[place] != sign), 0)
        report.add(
            CONTROL_CHARACTER, located.at(at, at + 1), f"an unprintable character (U+{ord(text[at]):04X}) is left out",
            "delete it; it often comes along when text is pasted",
        )  # fmt: skip


def _check_typed(located: _Located, text: str, figures: Mapping[str, Quantity], unit: Unit, report: Report) -> None:
    shadow, offsets = _without_emphasis(text)
    for typed in typed_measurements(shadow):
        start, end = offsets[typed.start], offsets[typed.end - 1] + 1
        report.add(
            TYPED_MEASUREMENT,
            located.at(start, end),
            f"{typed.text} is typed by hand",
            _figure_hint(typed, figures, unit, located.is_inside),
        )


def _check_printed(
    blocks: tuple[Block, ...],
    around: str,
    place: Place | None,
    figures: Mapping[str, Quantity],
    unit: Unit,
    report: Report,
) -> None:
    """Find the measurements that are seen only once the text is set, such as 2&nbsp;in."""
    seen = {typed.text for typed in typed_measurements(_without_emphasis(around)[0])}
    for run in every_run(blocks):
        for typed in typed_measurements(plain_text(run, figure=_BLANK)):
            if typed.text not in seen:
                report.add(
                    TYPED_MEASUREMENT,
                    place,
                    f"{typed.text} is typed by hand",
                    _figure_hint(typed, figures, unit, can_name=True),
                )


def _without_emphasis(text: str) -> tuple[str, list[int]]:
    """Return the text without the signs that make words strong or leaning, and where each character stood."""
    kept = [
        (place, sign)
        for place, sign in enumerate(text)
        if sign in "\n\t" or (sign.isprintable() and sign not in "*_`\\")
    ]
    return "".join(sign for _, sign in kept), [place for place, _ in kept]


def _figure_hint(typed: Typed, figures: Mapping[str, Quantity], unit: Unit, can_name: bool) -> str:
    if not can_name:
        return "leave the size out of the summary; the page prints it"
    wanted = typed.unit or unit
    same = [name for name, known in figures.items() if known.unit is wanted and known.value == typed.value]
    if same:
        return f"name the figure instead, so that it stays right: {_or([f'{{{{ {name} }}}}' for name in same[:4]])}"
    return "name a figure instead, such as {{ finished_width }}; if no figure says this, it is not in the plan"


def _report_unknown_step(id: str, known: list[str], prose: Prose, report: Report) -> None:
    near = get_close_matches(id, known, n=3, cutoff=0.4)
    hint = (
        f"did you mean {_or(near)}?"
        if near
        else f"its steps are {', '.join(known[:8])}{', …' if len(known) > 8 else ''}"
    )
    report.add(UNKNOWN_STEP, prose.place, f"no size has a step called {_short(id)}", hint)


_REFUSED: Mapping[str, tuple[Code, str]] = {
    "picture": (NOT_IN_TEXT, "pictures are drawn from the pattern; say in words what to look at"),
    "link address": (
        LINK_ADDRESS,
        "a link may start with https://, http:// or mailto:, or lead to a page of this site",
    ),
    "program listing": (NOT_IN_TEXT, "write it as a paragraph or a list"),
    "rule across the page": (NOT_IN_TEXT, "leave an empty line between paragraphs"),
}


def _report_refused(what: str, place: Place | None, report: Report) -> None:
    code, hint = _REFUSED[what]
    report.add(code, place, f"this {what} is not printed", hint)


def _or(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"


def _short(text: str) -> str:
    one_line = " ".join(without_marks(text).split())
    return one_line if len(one_line) <= 60 else one_line[:57] + "…"
