"""The choice of a fabric width: radio buttons that work without a script."""

from __future__ import annotations

from collections.abc import Sequence

from evenseam.pattern import Quantity
from evenseam.publish.html_text import escape, filled
from evenseam.wording import Words, words_of

MOST_WIDTHS = 6
"""The style knows the places 1 to 6."""


def cloth_asides(widths: Sequence[Quantity], planned: Quantity, words: Words | None = None) -> dict[str, str]:
    """Return what stands below the headings of materials and cutting; nothing where there is one width only."""
    if len(widths) < 2:
        return {}
    words = words or words_of()
    choices = "".join(
        _choice(place, width, words, is_planned=width is planned) for place, width in enumerate(widths, start=1)
    )
    told = "".join(
        f'<span class="at-width{"" if width is planned else " other-width"}" data-cloth="{place}">'
        f"{escape(words.figure(width.text))}</span>"
        for place, width in enumerate(widths, start=1)
    )
    link = f'<a href="#fabric-width">{escape(words.word("width", "another"))}</a>'
    about = words.fill("width", "about", width=words.figure(planned.text))
    return {
        "materials": (
            f'<fieldset class="cloth" id="fabric-width" data-listed="{escape(words.word("width", "listed"))}" '
            "data-search-exclude>"
            f"<legend>{escape(words.word('width', 'question'))}</legend>"
            f'<div class="cloth-choices">{choices}</div>'
            f"<p>{escape(about)}</p></fieldset>"
        ),
        "cutting": (
            f'<p class="cloth-now" data-search-exclude>{filled(words.word("width", "now"), width=told, link=link)}</p>'
        ),
    }


def _choice(place: int, width: Quantity, words: Words, *, is_planned: bool) -> str:
    return (
        f'<label><input type="radio" name="cloth" value="{escape(width.number)}" data-cloth-place="{place}" '
        f'autocomplete="off"{" checked" if is_planned else ""}> {escape(words.figure(width.text))}</label>'
    )
