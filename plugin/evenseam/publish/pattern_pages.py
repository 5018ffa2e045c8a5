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
from evenseam.wording import Words


@dataclass(frozen=True, slots=True)
class Download:
    """A file offered beside a page."""

    kind: str
    """Handout, Templates only, Figures; in the site's language."""
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


def finished_size(sheet: PatternSheet, words: Words) -> str:
    """Return the finished size as it is printed: 12 × 15 in."""
    return words.figure(f"{sheet.sized.finished_width.number} × {sheet.sized.finished_height.text}")


def write_size_page(
    title: str,
    subtitle: str,
    words: Words,
    text: HtmlText,
    sheet: PatternSheet,
    here: MadeSize,
    rows: Sequence[SizeRow],
    more_figures: Sequence[tuple[str, Quantity]] = (),
    author: str = "",
) -> str:
    """Return the HTML of a size's page: its title, the way to the other sizes, downloads, tools, and the whole text.

    `more_figures` are those that the text names besides the sheet's own; `author` is what stands there for the
    pattern's author alone.
    """
    row = next(row for row in rows if row.made == here)
    marks = page_marks(sheet.pattern.slug, sheet.pattern.version, here.size, here.edition, words.code)
    # The finished piece is seen at once; what can be done with the page comes after it.
    start, picture, rest = text.body.partition("<figure")
    first, end, rest = rest.partition("</figure>")
    picture_first = f'<div class="pattern-first">{picture}{first}{end}</div>'
    parts = (
        f"<h1>{escape(title)}</h1>",
        f'<p class="subtitle">{escape(subtitle)}</p>',
        author,
        _switch(here, [row.made for row in rows], words),
        picture_first,
        _downloads(row.downloads, words),
        write_tools(words),
        write_fabrics(sheet.project.fabrics, words),
        start + rest,
        write_step_bar(
            words,
            [
                (other.made.edition, _edition_words(other.made), site_link(other.made.page))
                for other in rows
                if other.made.size == here.size and other.made != here
            ],
        ),
        write_why_window(words),
        why_data(text.body, (*sheet.figures, *more_figures), words),
    )
    return without_blank_lines(f'<div class="pattern-page"{marks}>\n' + "\n".join(parts) + "\n</div>")


def write_overview(
    pattern: Pattern,
    hero: str,
    fabrics: Sequence[Fabric],
    rows: Sequence[SizeRow],
    notes: Sequence[str],
    corrections: str,
    words: Words,
    author: str = "",
) -> str:
    """Return the HTML of a pattern's first page: picture (in these fabrics), facts, sizes, downloads, corrections."""
    parts = (
        f"<h1>{escape(pattern.title)}</h1>",
        f'<p class="subtitle">{escape(pattern.summary)}</p>' if pattern.summary else "",
        author,
        f'<figure class="hero" data-search-exclude>\n{inline_svg(hero)}\n</figure>',
        f'{write_fabrics(fabrics, words)}\n<p class="reader-said" role="status" data-search-exclude></p>',
        _facts(pattern, words),
        f'<h2 id="sizes">{escape(words.word("page", "choose_size"))}</h2>\n{_sizes(rows, words)}',
        f'<h2 id="downloads">{escape(words.word("page", "to_print"))}</h2>\n{_download_table(rows, words)}',
        f'<p><a href="{site_link(CHECK_PAGE)}">{escape(words.word("page", "check_link"))}</a></p>',
        *(f'<p class="note">{escape(note)}</p>' for note in notes),
        corrections,
    )
    marks = page_marks(pattern.slug, pattern.version, language=words.code)
    return without_blank_lines(f'<div class="pattern-page"{marks}>\n' + "\n".join(parts) + "\n</div>")


OVERVIEW_CONTENTS = (("sizes", "page", "choose_size"), ("downloads", "page", "to_print"),
                     ("corrections", "corrections", "title"))  # fmt: skip
"""Ids of its parts, for the contents list, and where the language has their titles."""


def author_link(path: str, anchor: str, warnings: int) -> str:
    """Return the way to the page for the pattern's author; it stands in previews only, and is English as it is."""
    told = "" if not warnings else f" ({warnings} warning{'s' * (warnings != 1)})"
    link = f'<a href="{site_link(path, anchor)}">every figure, seam and proof</a>'
    return f'<p class="for-author" lang="en" data-search-exclude>For the author: {link}{told}</p>'


def _switch(here: MadeSize, sizes: Sequence[MadeSize], words: Words) -> str:
    """Return links to the other sizes of this edition, and to this size in the other edition."""
    same_edition = [size for size in sizes if size.edition == here.edition]
    same_size = [size for size in sizes if size.size == here.size]
    groups = []
    if len(same_edition) > 1:
        groups.append(_links(words.word("page", "sizes"), [(size, size.name, "") for size in same_edition], here))
    if len(same_size) > 1:
        editions = [(size, _edition_words(size), _edition(size)) for size in same_size]
        groups.append(_links(words.word("page", "editions"), editions, here))
    return "\n".join(groups)


def _edition_words(size: MadeSize) -> str:
    return size.edition_words or size.edition


def _edition(size: MadeSize) -> str:
    """Return the mark by which a reader's choice of an edition is remembered."""
    return f' data-edition="{escape(size.edition)}"'


def _links(label: str, choices: Sequence[tuple[MadeSize, str, str]], here: MadeSize) -> str:
    current = ' aria-current="page"'
    items = "".join(
        f'<li><a href="{site_link(size.page)}"{current if size == here else ""}{mark}>{escape(said)}</a></li>'
        for size, said, mark in choices
    )
    return f'<nav class="switch" aria-label="{escape(label)}" data-search-exclude><ul>{items}</ul></nav>'


def _downloads(downloads: Sequence[Download], words: Words) -> str:
    if not downloads:
        return ""
    items = "".join(
        f'<li><span class="download-kind">{escape(kind)}</span> {_download_links(group)}</li>'
        for kind, group in _by_kind(downloads).items()
    )
    check = escape(words.word("page", "check_link"))
    link = f'<li><a href="{site_link(CHECK_PAGE)}" class="check-print">{check}</a></li>'
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


def _download_table(rows: Sequence[SizeRow], words: Words) -> str:
    kinds = list(dict.fromkeys(item.kind for row in rows for item in row.downloads))
    head = "".join(f'<th scope="col">{escape(kind)}</th>' for kind in kinds)
    lines = "\n".join(
        f'<tr><th scope="row">{escape(row.made.name)}, {escape(_edition_words(row.made))}</th>'
        + "".join(f"<td>{_download_links(_by_kind(row.downloads).get(kind, []))}</td>" for kind in kinds)
        + "</tr>"
        for row in rows
    )
    size = f'<th scope="col">{escape(words.word("page", "size"))}</th>'
    return _table("downloads-caption", words.word("page", "files"), size + head, lines)


def _table(id: str, caption: str, head: str, lines: str) -> str:
    return (
        f'<div class="table-scroll" role="region" aria-labelledby="{id}" tabindex="0" data-search-exclude>\n'
        f'<table class="figures">\n'
        f'<caption id="{id}">{escape(caption)}</caption>\n<thead><tr>{head}</tr></thead>\n'
        f"<tbody>\n{lines}\n</tbody>\n</table>\n</div>"
    )


def _facts(pattern: Pattern, words: Words) -> str:
    facts = (
        ("skill_level", words.skill(pattern.skill_level)),
        ("designer", pattern.designer),
        ("version", pattern.version),
        ("license", pattern.licence),
    )
    rows = "".join(
        f"<div><dt>{escape(words.word('page', key))}</dt><dd>{escape(value)}</dd></div>"
        for key, value in facts
        if value
    )
    return f'<dl class="facts">{rows}</dl>'


def _sizes(rows: Sequence[SizeRow], words: Words) -> str:
    """Return one card for each size, with a link to each of its editions."""
    sizes: dict[str, list[SizeRow]] = {}
    for row in rows:
        sizes.setdefault(row.made.size, []).append(row)
    extents = [editions[0].extent for editions in sizes.values()]
    drawn = zip(sizes.values(), silhouettes(extents), strict=True)
    cards = "\n".join(_size_card(editions, silhouette) for editions, silhouette in drawn)
    scale = words.fill("page", "to_scale", what=words.word("page", beside_what(extents)))
    return f'<ul class="sizes">\n{cards}\n</ul>\n<p class="scale-note">{escape(scale)}</p>'


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
