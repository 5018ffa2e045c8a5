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
    return without_blank_lines(f'<ul class="gallery">\n{cards}\n</ul>')


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
        f'<li class="card"><div class="card-picture">{picture}</div>\n'
        # The picture needs no words of its own here: the title beside it is the link's name.
        f'<p class="card-title"><a href="{link}">{escape(pattern.title)}</a></p>\n'
        f"<p>{escape(pattern.summary)}</p>\n"
        f'<p class="card-facts">{escape(" · ".join(fact for fact in facts if fact))}</p></li>'
    )


def _list(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}" if names else ""
