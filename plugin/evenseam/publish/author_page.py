"""The page for a pattern's author: problems, claims, and every figure, seam and plan with its reason or its proof."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from evenseam.cutting import CuttingPlan, Material
from evenseam.exact import Number, format_length
from evenseam.pattern import Quantity, equation, explain
from evenseam.piecing import PiecedBlock, SectionJoin
from evenseam.problems import Problem, SourceText
from evenseam.publish.contents import ContentsEntry
from evenseam.publish.html_text import escape, without_blank_lines
from evenseam.publish.problem_page import write_problem
from evenseam.publish.sheet_memory import SHEETS
from evenseam.publish.site_files import site_link
from evenseam.sheet import ClaimResult, PatternSheet
from evenseam.wording.workpieces import step_numbers

FILE = "for-the-author.md"
TITLE = "For the author"


@dataclass(frozen=True, slots=True)
class AuthorPage:
    """The HTML of the page and what leads into it."""

    body: str
    contents: tuple[ContentsEntry, ...]


@dataclass(frozen=True, slots=True)
class SizeForAuthor:
    """One size in one edition, with the words for it and the way to its page."""

    sheet: PatternSheet
    id: str
    title: str
    page: str


def write_author_page(
    title: str,
    problems: Sequence[Problem],
    sources: Mapping[str, SourceText],
    claims: Sequence[ClaimResult],
    sizes: Sequence[SizeForAuthor],
) -> AuthorPage:
    """Return the page of one pattern."""
    parts = [
        f"<h1>{escape(title)}: for the author</h1>",
        '<p class="subtitle">What stands behind the pages of this pattern. Readers do not get to see it.</p>',
        f'<h2 id="problems">Problems and warnings</h2>\n{_problems(problems, sources)}',
        f'<h2 id="claims">Claims of an older version</h2>\n{_claims(claims)}',
        *(_remembered(size, is_open=number == 0) for number, size in enumerate(sizes)),
    ]
    contents = (
        ContentsEntry(2, "problems", "Problems and warnings"),
        ContentsEntry(2, "claims", "Claims of an older version"),
        *(ContentsEntry(2, size.id, size.title) for size in sizes),
    )
    body = '<div class="pattern-page for-author" lang="en">\n<div class="pattern-text" data-search-exclude>\n'
    return AuthorPage(without_blank_lines(body + "\n".join(parts) + "\n</div>\n</div>"), contents)


def _problems(problems: Sequence[Problem], sources: Mapping[str, SourceText]) -> str:
    if not problems:
        return "<p>None.</p>"
    items = "\n".join(f"<li>{write_problem(problem, sources)}</li>" for problem in problems)
    return f'<ol class="problems">\n{items}\n</ol>'


def _claims(claims: Sequence[ClaimResult]) -> str:
    if not claims:
        return "<p>The pattern file makes none.</p>"
    rows = [
        (
            escape(result.claim.size),
            escape(result.claim.figure),
            escape(result.claim.stated.text),
            _why(result.computed),
            "right" if result.is_right else "<strong>wrong</strong>",
        )
        for result in claims
    ]
    return _table("claims-table", "What was printed, and what it is", ("Size", "Figure", "Printed", "It is", ""), rows)


def _remembered(size: SizeForAuthor, *, is_open: bool) -> str:
    key = ("author", size.id, size.title, size.page, is_open)
    return SHEETS.keep(size.sheet, key, lambda: _size(size, is_open=is_open))


def _size(size: SizeForAuthor, *, is_open: bool) -> str:
    sheet, id = size.sheet, size.id
    parts = (
        f'<p><a href="{site_link(size.page)}">The page of this size</a></p>',
        f"<h3>What the simulator measured</h3>\n{_log(sheet, id)}",
        f"<h3>Sections and seams</h3>\n{''.join(_block(sheet, pieced) for pieced in sheet.blocks)}",
        f"<h3>Cutting plans and their proofs</h3>\n{_plans(sheet, id)}",
        f"<h3>The cut list</h3>\n{_cuts(sheet, id)}",
        f"<h3>Every figure</h3>\n{_figures(sheet.figures, id)}",
    )
    opened = " open" if is_open else ""
    return (
        f'<h2 id="{id}">{escape(size.title)}</h2>\n<details class="of-size"{opened}>\n'
        f"<summary>Measurements, seams, plans and figures</summary>\n" + "\n".join(parts) + "\n</details>"
    )


def _log(sheet: PatternSheet, id: str) -> str:
    unit = sheet.project.unit
    numbers = step_numbers(sheet)
    rows = [
        (
            str(numbers.get(one.step, "")),
            f"<code>{escape(one.step)}</code>",
            f"{escape(format_length(one.width, unit))} × {escape(format_length(one.height, unit))}",
        )
        for one in sheet.log.measurements
    ]
    width, height = (format_length(side, unit) for side in (sheet.log.finished_width, sheet.log.finished_height))
    promised = f"{sheet.sized.finished_width.text} × {sheet.sized.finished_height.text}"
    return (
        f"<p>Sewn from the cut list alone it finishes at {escape(width)} × {escape(height)}; promised are "
        f"{escape(promised)}.</p>\n"
        + _table(f"{id}-log", "After each step that leaves a rectangle", ("Step", "Name", "Measures"), rows, id)
    )


def _block(sheet: PatternSheet, pieced: PiecedBlock) -> str:
    block = sheet.project.block(pieced.block)
    fabrics = {piece.id: piece.fabric for piece in block.pieces}
    sections = "".join(
        f"<li><strong>{escape(section.name)}</strong>: "
        + ", ".join(f"{escape(piece.label)} ({escape(fabrics.get(piece.piece, ''))})" for piece in section.pieces)
        + "</li>"
        for section in pieced.sections
    )
    proof = "No fewer sections will do." if pieced.is_fewest else "Fewer sections might do: the search was given up."
    tree = ""
    if pieced.joins:
        known = {join.makes: join for join in pieced.joins}
        tree = f"<p>Joined in this order, the last seam first:</p>\n<ul>{_join(pieced.joins[-1].makes, known)}</ul>"
    return (
        f"<h4>{escape(block.name)}</h4>\n<p>{len(pieced.sections)} section{'s' * (len(pieced.sections) != 1)}. "
        f"{proof}</p>\n<ul>{sections}</ul>\n{tree}"
    )


def _join(part: str, known: Mapping[str, SectionJoin]) -> str:
    join = known.get(part)
    if join is None:
        return f"<li>{escape(part)}</li>"
    meets = f", {len(join.match_points)} places to match" if join.match_points else ""
    return (
        f"<li>{escape(part)}: pressed {escape(join.press.value)}{meets}"
        f"<ul>{_join(join.first, known)}{_join(join.second, known)}</ul></li>"
    )


def _plans(sheet: PatternSheet, id: str) -> str:
    rows: list[tuple[str, ...]] = []
    others = {ways.material: ways for ways in sheet.ways_to_buy}
    for material in sheet.materials:
        if material.plan is None:
            continue
        rows.append(_plan_row(sheet, material, material.plan, material.buy))
        ways = others.get(material.material)
        for at in ways.widths if ways else ():
            if at.plan is not None and at.usable_width.value != sheet.project.usable_width.value:
                rows.append(_plan_row(sheet, material, at.plan, at.buy))
    head = ("Fabric", "Usable width", "Length used", "No plan can use less than", "Proof", "To buy")
    return _table(f"{id}-plans", "Plans on cloth of each width", head, rows, id)


def _plan_row(sheet: PatternSheet, material: Material, plan: CuttingPlan, buy: Quantity) -> tuple[str, ...]:
    length: Number = plan.length.value
    gap = length - plan.lower_bound
    proof = "shortest" if plan.is_shortest else f"at most {format_length(gap, sheet.project.unit)} longer than needed"
    return (
        escape(material.name),
        escape(plan.usable_width.text),
        _why(plan.length),
        escape(format_length(plan.lower_bound, sheet.project.unit)),
        escape(proof),
        _why(buy),
    )


def _cuts(sheet: PatternSheet, id: str) -> str:
    rows = [
        (
            f"<code>{escape(cut.id)}</code>",
            escape(cut.label),
            escape(cut.material),
            _why(cut.width),
            _why(cut.height),
            _why(cut.count),
        )
        for cut in sheet.cuts.cuts
    ]
    head = ("Cut", "For", "From", "Width", "Height", "How many")
    return _table(f"{id}-cuts", "Every piece of cloth", head, rows, id)


def _figures(figures: Iterable[tuple[str, Quantity]], id: str) -> str:
    rows = [(f"<code>{escape(name)}</code>", escape(quantity.name), _why(quantity)) for name, quantity in figures]
    return _table(
        f"{id}-figures", "By the names under which prose can use them", ("Name", "What it is", "Value"), rows, id
    )


def _why(quantity: Quantity) -> str:
    """Return a figure that unfolds into its whole derivation, down to the lines of the author's file."""
    lines = "\n".join(escape(line) for line in _kept(explain(quantity)))
    formula = equation(quantity)
    shown = escape(quantity.text) + (f" <small>{escape(formula)}</small>" if formula != quantity.number else "")
    return f'<details class="reason"><summary>{shown}</summary><pre tabindex="0">{lines}</pre></details>'


def _kept(text: str) -> list[str]:
    """Return lines whose indent survives the escaping of text, which strips it."""
    return [line.replace("  ", "\u00a0\u00a0") for line in text.splitlines()]


def _table(id: str, caption: str, head: Sequence[str], rows: Iterable[Sequence[str]], below: str = "") -> str:
    """Return a table; `below` is the id of the heading that tells it from its like on the page."""
    name = f"{below} {id}" if below else id
    titles = "".join(f'<th scope="col">{escape(title)}</th>' if title else "<td></td>" for title in head)
    lines = "\n".join(f"<tr>{''.join(f'<td>{cell}</td>' for cell in row)}</tr>" for row in rows)
    return (
        f'<div class="table-scroll" role="region" aria-labelledby="{name}" tabindex="0">\n<table class="figures">\n'
        f'<caption id="{id}">{escape(caption)}</caption>\n<thead><tr>{titles}</tr></thead>\n'
        f"<tbody>\n{lines}\n</tbody>\n</table>\n</div>"
    )
