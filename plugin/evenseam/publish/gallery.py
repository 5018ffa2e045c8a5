"""The gallery: every pattern as a card with its computed picture."""

from __future__ import annotations

from collections.abc import Sequence

from evenseam.publish.entry import MadePattern
from evenseam.publish.html_text import escape, without_blank_lines
from evenseam.publish.site_files import site_link
from evenseam.wording import Words


def write_gallery(patterns: Sequence[MadePattern], words: Words) -> str:
    """Return the cards of all patterns as HTML, in the order given."""
    if not patterns:
        return f'<p class="gallery-empty">{escape(words.word("gallery", "empty"))}</p>'
    cards = "\n".join(_card(pattern, words) for pattern in patterns)
    return without_blank_lines(f'{write_filters(patterns, words)}\n<ul class="gallery">\n{cards}\n</ul>')


def write_filters(patterns: Sequence[MadePattern], words: Words) -> str:
    """Return the fields by which a reader chooses among the cards; none where there is nothing to choose."""
    fields = [
        _choice("project", words, [size.name for pattern in patterns for size in pattern.sizes]),
        _choice("skill", words, [words.skill(pattern.skill_level) for pattern in patterns]),
        _choice("method", words, [method for pattern in patterns for method in pattern.methods]),
    ]
    if len({pattern.fits_fat_quarters for pattern in patterns if pattern.is_published}) > 1:
        quarters = escape(words.word("gallery", "fat_quarters"))
        fields.append(f'<label><input type="checkbox" data-filter="quarters"> {quarters}</label>')
    if not any(fields):
        return ""
    choose, show_all, shown = (escape(words.word("gallery", key)) for key in ("choose", "show_all", "shown"))
    return (
        f'<form class="gallery-filters" aria-label="{choose}" data-search-exclude hidden>'
        f'{"".join(fields)}<button type="reset">{show_all}</button>'
        f'<p role="status" data-shown="{shown}"></p></form>'
    )


def _choice(name: str, words: Words, values: Sequence[str]) -> str:
    known = [value for value in dict.fromkeys(values) if value]
    if len(known) < 2:
        return ""
    options = "".join(f'<option value="{escape(_key(value))}">{escape(value)}</option>' for value in known)
    title, any_of = escape(words.word("gallery", name)), escape(words.word("gallery", "any"))
    return f'<label>{title} <select data-filter="{name}"><option value="">{any_of}</option>{options}</select></label>'


def _key(value: str) -> str:
    """Return a value as it stands in a list of several, which are kept apart by upright strokes."""
    return value.replace("|", "/")


def _marks(pattern: MadePattern, words: Words) -> str:
    """Return the attributes by which a card is chosen."""
    marks = {
        "project": [size.name for size in pattern.sizes],
        "skill": [words.skill(pattern.skill_level)],
        "method": pattern.methods,
        "quarters": ["yes"] if pattern.fits_fat_quarters else [],
    }
    return "".join(f' data-{name}="{escape("|".join(map(_key, dict.fromkeys(of))))}"' for name, of in marks.items())


def _card(pattern: MadePattern, words: Words) -> str:
    link = site_link(pattern.overview)
    if not pattern.is_published:
        return (
            f'<li class="card card-problem"><a href="{link}">{escape(pattern.title)}</a>'
            f"<p>{escape(words.fill('gallery', 'not_published', number=len(pattern.problems)))}</p></li>"
        )
    width, height = pattern.picture_size
    picture = (
        f'<img src="{site_link(pattern.picture)}" alt="" width="{width}" height="{height}" loading="lazy">'
        if pattern.picture
        else ""
    )
    facts = (words.skill(pattern.skill_level), words.named(list(dict.fromkeys(size.name for size in pattern.sizes))))
    return (
        f'<li class="card"{_marks(pattern, words)}><div class="card-picture">{picture}</div>\n'
        # The picture needs no words of its own here: the title beside it is the link's name.
        f'<p class="card-title"><a href="{link}">{escape(pattern.title)}</a></p>\n'
        f"<p>{escape(pattern.summary)}</p>\n"
        f'<p class="card-facts">{escape(" · ".join(fact for fact in facts if fact))}</p></li>'
    )
