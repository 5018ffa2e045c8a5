"""The pages of one pattern: an overview, and one page for every size and edition."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from evenseam.pattern import Pattern
from evenseam.publish.entry import MadeSize
from evenseam.publish.html import HtmlText
from evenseam.publish.html_text import escape, inline_svg, without_blank_lines
from evenseam.publish.site_files import site_link
from evenseam.sheet import PatternSheet


@dataclass(frozen=True, slots=True)
class Download:
    """A file offered beside a page."""

    label: str
    path: str


@dataclass(frozen=True, slots=True)
class SizeRow:
    """One size in one edition: where its page is and what can be taken home."""

    made: MadeSize
    downloads: tuple[Download, ...]


def finished_size(sheet: PatternSheet) -> str:
    """Return the finished size as it is printed: 12 in × 15 in."""
    return f"{sheet.sized.finished_width.text} × {sheet.sized.finished_height.text}"


def write_size_page(title: str, subtitle: str, text: HtmlText, here: MadeSize, rows: Sequence[SizeRow]) -> str:
    """Return the HTML of a size's page: its title, the way to the other sizes, downloads, and the whole text."""
    row = next(row for row in rows if row.made == here)
    return without_blank_lines(
        f'<div class="pattern-page">\n<h1>{escape(title)}</h1>\n<p class="subtitle">{escape(subtitle)}</p>\n'
        f"{_switch(here, [row.made for row in rows])}\n{_downloads(row.downloads)}\n{text.body}\n</div>"
    )


def write_overview(
    pattern: Pattern, hero: str, introduction: str, rows: Sequence[SizeRow], notes: Sequence[str]
) -> str:
    """Return the HTML of a pattern's first page: picture, facts, sizes with their downloads, corrections."""
    hero_figure = f'<figure class="hero" data-search-exclude>\n{inline_svg(hero)}\n</figure>' if hero else ""
    left_out = "".join(f'<p class="note">{escape(note)}</p>\n' for note in notes)
    return without_blank_lines(
        f'<div class="pattern-page">\n<h1>{escape(pattern.title)}</h1>\n'
        f'<p class="subtitle">{escape(pattern.summary)}</p>\n{hero_figure}\n{_facts(pattern)}\n{introduction}\n'
        f'<h2 id="sizes">Choose a size</h2>\n{_sizes(rows)}\n{left_out}{_changes(pattern)}\n</div>'
    )


def _switch(here: MadeSize, sizes: Sequence[MadeSize]) -> str:
    """Return links to the other sizes of this edition, and to this size in the other edition."""
    same_edition = [size for size in sizes if size.edition == here.edition]
    same_size = [size for size in sizes if size.size == here.size]
    groups = []
    if len(same_edition) > 1:
        groups.append(_links("Sizes", [(size, size.name) for size in same_edition], here))
    if len(same_size) > 1:
        groups.append(_links("Editions", [(size, size.edition) for size in same_size], here))
    return "\n".join(groups)


def _links(label: str, choices: Sequence[tuple[MadeSize, str]], here: MadeSize) -> str:
    items = "".join(
        f'<li><a href="{site_link(size.page)}"{" aria-current=" + chr(34) + "page" + chr(34) if size == here else ""}>'
        f"{escape(words)}</a></li>"
        for size, words in choices
    )
    return f'<nav class="switch" aria-label="{label}" data-search-exclude><ul>{items}</ul></nav>'


def _downloads(downloads: Sequence[Download]) -> str:
    if not downloads:
        return ""
    items = "".join(f'<li><a href="{site_link(item.path)}">{escape(item.label)}</a></li>' for item in downloads)
    return f'<ul class="downloads" data-search-exclude>{items}</ul>'


def _facts(pattern: Pattern) -> str:
    facts = (
        ("Skill level", pattern.skill_level),
        ("Designer", pattern.designer),
        ("Version", pattern.version),
        ("Licence", pattern.licence),
    )
    rows = "".join(f"<div><dt>{name}</dt><dd>{escape(value)}</dd></div>" for name, value in facts if value)
    return f'<dl class="facts">{rows}</dl>'


def _sizes(rows: Sequence[SizeRow]) -> str:
    lines = "\n".join(
        f'<tr><th scope="row"><a href="{site_link(row.made.page)}">{escape(row.made.name)}</a></th>'
        f"<td>{escape(row.made.edition)}</td><td>{escape(row.made.finished)}</td>"
        f"<td>{_downloads(row.downloads)}</td></tr>"
        for row in rows
    )
    return (
        '<div class="table-scroll" role="region" aria-labelledby="sizes-caption" tabindex="0">\n<table>\n'
        '<caption id="sizes-caption">Sizes, finished</caption>\n<thead><tr><th scope="col">Size</th>'
        '<th scope="col">Edition</th><th scope="col">Finished size</th><th scope="col">To take home</th></tr></thead>\n'
        f"<tbody>\n{lines}\n</tbody>\n</table>\n</div>"
    )


def _changes(pattern: Pattern) -> str:
    if not pattern.changes:
        return ""
    items = "\n".join(
        f"<li><strong>Version {escape(change.version)}</strong>, {escape(change.date)}: {escape(change.what)}</li>"
        for change in pattern.changes
    )
    return f'<h2 id="corrections">Corrections and changes</h2>\n<ul class="changes">\n{items}\n</ul>'
