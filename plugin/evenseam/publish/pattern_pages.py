"""The pages of one pattern: an overview, and one page for every size and edition."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from evenseam.pattern import Fabric, Pattern, Quantity
from evenseam.publish.entry import MadeSize
from evenseam.publish.html import HtmlText
from evenseam.publish.html_text import escape, inline_svg, without_blank_lines
from evenseam.publish.reader.tools import page_marks, write_fabrics, write_step_bar, write_tools, write_why_window
from evenseam.publish.reader.why import why_data
from evenseam.publish.silhouette import Extent, beside_what, silhouettes
from evenseam.publish.site_files import CHECK_PAGE, site_link
from evenseam.sheet import PatternSheet


@dataclass(frozen=True, slots=True)
class Download:
    """A file offered beside a page."""

    kind: str
    """Handout, Templates only, Figures."""
    form: str
    """What tells it from the others of its kind: Letter, A4, JSON."""
    path: str


@dataclass(frozen=True, slots=True)
class SizeRow:
    """One size in one edition: where its page is and what can be taken home."""

    made: MadeSize
    picture: str
    """Path of its picture."""
    picture_size: tuple[int, int]
    downloads: tuple[Download, ...]
    extent: Extent


def finished_size(sheet: PatternSheet) -> str:
    """Return the finished size as it is printed: 12 × 15 in."""
    return f"{sheet.sized.finished_width.number} × {sheet.sized.finished_height.text}"


def write_size_page(
    title: str,
    subtitle: str,
    check: str,
    text: HtmlText,
    sheet: PatternSheet,
    here: MadeSize,
    rows: Sequence[SizeRow],
    more_figures: Sequence[tuple[str, Quantity]] = (),
    author: str = "",
) -> str:
    """Return the HTML of a size's page: its title, the way to the other sizes, downloads, tools, and the whole text.

    `check` are the words that lead to how templates are printed; `more_figures` are those that the text
    names besides the sheet's own; `author` is what stands there for the pattern's author alone.
    """
    row = next(row for row in rows if row.made == here)
    marks = page_marks(sheet.pattern.slug, sheet.pattern.version, here.size, here.edition)
    # The finished piece is seen at once; what can be done with the page comes after it.
    start, picture, rest = text.body.partition("<figure")
    first, end, rest = rest.partition("</figure>")
    picture_first = f'<div class="pattern-first">{picture}{first}{end}</div>'
    parts = (
        f"<h1>{escape(title)}</h1>",
        f'<p class="subtitle">{escape(subtitle)}</p>',
        author,
        _switch(here, [row.made for row in rows]),
        picture_first,
        _downloads(row.downloads, check),
        write_tools(),
        write_fabrics(sheet.project.fabrics),
        start + rest,
        write_step_bar(
            [
                (other.made.edition, _edition_words(other.made), site_link(other.made.page))
                for other in rows
                if other.made.size == here.size and other.made != here
            ]
        ),
        write_why_window(),
        why_data(text.body, (*sheet.figures, *more_figures)),
    )
    return without_blank_lines(f'<div class="pattern-page"{marks}>\n' + "\n".join(parts) + "\n</div>")


def write_overview(
    pattern: Pattern,
    hero: str,
    fabrics: Sequence[Fabric],
    rows: Sequence[SizeRow],
    notes: Sequence[str],
    corrections: str,
    check: str,
    author: str = "",
) -> str:
    """Return the HTML of a pattern's first page: picture (in these fabrics), facts, sizes, downloads, corrections."""
    parts = (
        f"<h1>{escape(pattern.title)}</h1>",
        f'<p class="subtitle">{escape(pattern.summary)}</p>' if pattern.summary else "",
        author,
        f'<figure class="hero" data-search-exclude>\n{inline_svg(hero)}\n</figure>',
        f'{write_fabrics(fabrics)}\n<p class="reader-said" role="status" data-search-exclude></p>',
        _facts(pattern),
        f'<h2 id="sizes">Choose a size</h2>\n{_sizes(rows)}',
        f'<h2 id="downloads">To print and to keep</h2>\n{_download_table(rows)}',
        f'<p><a href="{site_link(CHECK_PAGE)}">{escape(check)}</a></p>',
        *(f'<p class="note">{escape(note)}</p>' for note in notes),
        corrections,
    )
    marks = page_marks(pattern.slug, pattern.version)
    return without_blank_lines(f'<div class="pattern-page"{marks}>\n' + "\n".join(parts) + "\n</div>")


OVERVIEW_CONTENTS = (("sizes", "Choose a size"), ("downloads", "To print and to keep"), ("corrections", "Corrections"))
"""Ids and titles of its parts, for the contents list."""


def author_link(path: str, anchor: str, warnings: int) -> str:
    """Return the way to the page for the pattern's author; it stands in previews only."""
    told = "" if not warnings else f" ({warnings} warning{'s' * (warnings != 1)})"
    link = f'<a href="{site_link(path, anchor)}">every figure, seam and proof</a>'
    return f'<p class="for-author" data-search-exclude>For the author: {link}{told}</p>'


def _switch(here: MadeSize, sizes: Sequence[MadeSize]) -> str:
    """Return links to the other sizes of this edition, and to this size in the other edition."""
    same_edition = [size for size in sizes if size.edition == here.edition]
    same_size = [size for size in sizes if size.size == here.size]
    groups = []
    if len(same_edition) > 1:
        groups.append(_links("Sizes", [(size, size.name, "") for size in same_edition], here))
    if len(same_size) > 1:
        groups.append(_links("Editions", [(size, _edition_words(size), _edition(size)) for size in same_size], here))
    return "\n".join(groups)


def _edition_words(size: MadeSize) -> str:
    return size.edition_words or size.edition


def _edition(size: MadeSize) -> str:
    """Return the mark by which a reader's choice of an edition is remembered."""
    return f' data-edition="{escape(size.edition)}"'


def _links(label: str, choices: Sequence[tuple[MadeSize, str, str]], here: MadeSize) -> str:
    current = ' aria-current="page"'
    items = "".join(
        f'<li><a href="{site_link(size.page)}"{current if size == here else ""}{mark}>{escape(words)}</a></li>'
        for size, words, mark in choices
    )
    return f'<nav class="switch" aria-label="{label}" data-search-exclude><ul>{items}</ul></nav>'


def _downloads(downloads: Sequence[Download], check: str) -> str:
    if not downloads:
        return ""
    items = "".join(
        f'<li><span class="download-kind">{escape(kind)}</span> {_download_links(group)}</li>'
        for kind, group in _by_kind(downloads).items()
    )
    link = f'<li><a href="{site_link(CHECK_PAGE)}" class="check-print">{escape(check)}</a></li>'
    return f'<ul class="downloads" data-search-exclude>{items}{link}</ul>'


def _by_kind(downloads: Sequence[Download]) -> dict[str, list[Download]]:
    kinds: dict[str, list[Download]] = {}
    for download in downloads:
        kinds.setdefault(download.kind, []).append(download)
    return kinds


def _download_links(downloads: Sequence[Download]) -> str:
    # A link must make sense when it is read out alone, away from what stands before it.
    return "".join(
        f'<a class="download" href="{site_link(item.path)}" aria-label="{escape(item.kind)}, {escape(item.form)}">'
        f"{escape(item.form)}</a>"
        for item in downloads
    )


def _download_table(rows: Sequence[SizeRow]) -> str:
    kinds = list(dict.fromkeys(item.kind for row in rows for item in row.downloads))
    head = "".join(f'<th scope="col">{escape(kind)}</th>' for kind in kinds)
    lines = "\n".join(
        f'<tr><th scope="row">{escape(row.made.name)}, {escape(_edition_words(row.made))}</th>'
        + "".join(f"<td>{_download_links(_by_kind(row.downloads).get(kind, []))}</td>" for kind in kinds)
        + "</tr>"
        for row in rows
    )
    return _table("downloads-caption", "Files for every size", f'<th scope="col">Size</th>{head}', lines)


def _table(id: str, caption: str, head: str, lines: str) -> str:
    return (
        f'<div class="table-scroll" role="region" aria-labelledby="{id}" tabindex="0" data-search-exclude>\n'
        f'<table class="figures">\n'
        f'<caption id="{id}">{escape(caption)}</caption>\n<thead><tr>{head}</tr></thead>\n'
        f"<tbody>\n{lines}\n</tbody>\n</table>\n</div>"
    )


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
    """Return one card for each size, with a link to each of its editions."""
    sizes: dict[str, list[SizeRow]] = {}
    for row in rows:
        sizes.setdefault(row.made.size, []).append(row)
    extents = [editions[0].extent for editions in sizes.values()]
    drawn = zip(sizes.values(), silhouettes(extents), strict=True)
    cards = "\n".join(_size_card(editions, silhouette) for editions, silhouette in drawn)
    scale = f'<p class="scale-note">The outlines are to one scale, beside {beside_what(extents)}.</p>'
    return f'<ul class="sizes">\n{cards}\n</ul>\n{scale}'


def _size_card(editions: Sequence[SizeRow], silhouette: str) -> str:
    first = editions[0]
    width, height = first.picture_size
    name = escape(first.made.name)
    links = "".join(_edition_link(row, name) for row in editions)
    return (
        f'<li><div class="card-picture"><img src="{site_link(first.picture)}" alt="" width="{width}" '
        f'height="{height}" loading="lazy"></div>\n<p class="size-name">{name}</p>{links}{silhouette}</li>'
    )


def _edition_link(row: SizeRow, name: str) -> str:
    finished = escape(row.made.finished)
    link = f'<a href="{site_link(row.made.page)}"{_edition(row.made)} aria-label="{name}, {finished}">{finished}</a>'
    return f'<p class="size-editions">{link}</p>'
