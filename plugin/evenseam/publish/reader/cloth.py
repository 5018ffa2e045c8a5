"""The choice of a fabric width: radio buttons that work without a script."""

from __future__ import annotations

from collections.abc import Sequence

from evenseam.pattern import Quantity
from evenseam.publish.html_text import escape

MOST_WIDTHS = 6
"""The style knows the places 1 to 6."""


def cloth_asides(widths: Sequence[Quantity], planned: Quantity) -> dict[str, str]:
    """Return what stands below the headings of materials and cutting; nothing where there is one width only."""
    if len(widths) < 2:
        return {}
    choices = "".join(_choice(place, width, width is planned) for place, width in enumerate(widths, start=1))
    told = "".join(
        f'<span class="at-width{"" if width is planned else " other-width"}" data-cloth="{place}">'
        f"{escape(width.text)}</span>"
        for place, width in enumerate(widths, start=1)
    )
    return {
        "materials": (
            '<fieldset class="cloth" id="fabric-width" data-listed="For fabric # wide:" '
            "data-search-exclude>"
            "<legend>How wide is your fabric?</legend>"
            f'<div class="cloth-choices">{choices}</div>'
            "<p>Measure what you can use, without the firm woven edges. Amounts and cutting plans on this page change "
            f"with your choice; the handout to print is for {escape(planned.text)}.</p></fieldset>"
        ),
        "cutting": (
            f'<p class="cloth-now" data-search-exclude>Plans for fabric {told} wide. '
            '<a href="#fabric-width">Choose another width</a></p>'
        ),
    }


def _choice(place: int, width: Quantity, is_planned: bool) -> str:
    return (
        f'<label><input type="radio" name="cloth" value="{escape(width.number)}" data-cloth-place="{place}" '
        f'autocomplete="off"{" checked" if is_planned else ""}> {escape(width.text)}</label>'
    )
