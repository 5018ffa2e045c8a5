"""The gallery: every pattern as a card with its computed picture."""

from __future__ import annotations

from collections.abc import Sequence

from evenseam.publish.entry import MadePattern
from evenseam.publish.html_text import escape, without_blank_lines
from evenseam.publish.site_files import site_link


def write_gallery(patterns: Sequence[MadePattern]) -> str:
    """Return the cards of all patterns as HTML, in the order given."""
    if not patterns:
        return '<p class="gallery-empty">There is no pattern here yet.</p>'
    cards = "\n".join(_card(pattern) for pattern in patterns)
    return without_blank_lines(f'{write_filters(patterns)}\n<ul class="gallery">\n{cards}\n</ul>')


def write_filters(patterns: Sequence[MadePattern]) -> str:
    """Return the fields by which a reader chooses among the cards; none where there is nothing to choose."""
    fields = [
        _choice("project", "Project", [size.name for pattern in patterns for size in pattern.sizes]),
        _choice("skill", "Skill", [pattern.skill_level for pattern in patterns]),
        _choice("method", "Method", [method for pattern in patterns for method in pattern.methods]),
    ]
    if len({pattern.fits_fat_quarters for pattern in patterns if pattern.is_published}) > 1:
        fields.append('<label><input type="checkbox" data-filter="quarters"> From fat quarters</label>')
    if not any(fields):
        return ""
    return (
        '<form class="gallery-filters" aria-label="Choose among the patterns" data-search-exclude hidden>'
        f'{"".join(fields)}<button type="reset">Show all</button>'
        '<p role="status" data-shown="# of # patterns"></p></form>'
    )


def _choice(name: str, words: str, values: Sequence[str]) -> str:
    known = [value for value in dict.fromkeys(values) if value]
    if len(known) < 2:
        return ""
    options = "".join(f'<option value="{escape(_key(value))}">{escape(value)}</option>' for value in known)
    return f'<label>{words} <select data-filter="{name}"><option value="">Any</option>{options}</select></label>'


def _key(value: str) -> str:
    """Return a value as it stands in a list of several, which are kept apart by upright strokes."""
    return value.replace("|", "/")


def _marks(pattern: MadePattern) -> str:
    """Return the attributes by which a card is chosen."""
    marks = {
        "project": [size.name for size in pattern.sizes],
        "skill": [pattern.skill_level],
        "method": pattern.methods,
        "quarters": ["yes"] if pattern.fits_fat_quarters else [],
    }
    return "".join(f' data-{name}="{escape("|".join(map(_key, dict.fromkeys(of))))}"' for name, of in marks.items())


def _card(pattern: MadePattern) -> str:
    link = site_link(pattern.overview)
    if not pattern.is_published:
        return (
            f'<li class="card card-problem"><a href="{link}">{escape(pattern.title)}</a>'
            f"<p>Not published yet: {len(pattern.problems)} to put right.</p></li>"
        )
    width, height = pattern.picture_size
    picture = (
        f'<img src="{site_link(pattern.picture)}" alt="" width="{width}" height="{height}" loading="lazy">'
        if pattern.picture
        else ""
    )
    facts = (pattern.skill_level, _list(list(dict.fromkeys(size.name for size in pattern.sizes))))
    return (
        f'<li class="card"{_marks(pattern)}><div class="card-picture">{picture}</div>\n'
        # The picture needs no words of its own here: the title beside it is the link's name.
        f'<p class="card-title"><a href="{link}">{escape(pattern.title)}</a></p>\n'
        f"<p>{escape(pattern.summary)}</p>\n"
        f'<p class="card-facts">{escape(" · ".join(fact for fact in facts if fact))}</p></li>'
    )


def _list(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}" if names else ""
