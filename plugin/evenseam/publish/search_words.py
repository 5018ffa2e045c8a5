"""What a search should find of a page: its words, and nothing of its pictures."""

from __future__ import annotations

import re

_INLINE = re.compile(r"</?(?:span|strong|em|a|code)\b[^>]*>")
_ITEM = re.compile(r"<(/?)li\b[^>]*>")
_TWICE = re.compile(r"(</?p>)(?:\s*\1)+")
_OTHER = re.compile(r"<(?!/?(?:h[1-6]|p)\b)[^>]*>")
_UNSEARCHED = (
    ("<figure", "</figure>"),
    ("<svg", "</svg>"),
    ("<nav", "</nav>"),
    ('<ul class="downloads"', "</ul>"),
    ('<div class="reader-tools"', "</div>"),
    ("<details", "</details>"),
    ('<div class="step-bar"', "</div>"),
    ('<section class="at-width other-width"', "</section>"),
    ('<bdi class="at-width other-width"', "</bdi>"),
    ("<fieldset", "</fieldset>"),
    ('<p class="cloth-now"', "</p>"),
    ("<label", "</label>"),
    ("<dialog", "</dialog>"),
    ("<script", "</script>"),
    ("<template", "</template>"),
)


def searchable(body: str) -> str:
    """Return the headings, paragraphs and items of a page without pictures, links to files, and inline marks.

    Items are paragraphs here: what a search shows of a page has no list round them.
    """
    for start, end in _UNSEARCHED:
        first, *rest = body.split(start)
        body = first + "".join(part.partition(end)[2] for part in rest)
    return _TWICE.sub(r"\1", _OTHER.sub(" ", _ITEM.sub(r"<\1p>", _INLINE.sub("", body))))
