"""Words made harmless for a comment: no markup, no calls to people, no links, on one line."""

from __future__ import annotations

import html
import re

_SPECIAL = re.compile(r"([\\`*_\[\]<>|~])")
_CALLS = tuple(
    re.compile(text, re.IGNORECASE)
    for text in (r"(@)(?=\w)", r"(#)(?=\w)", r"(:)(?=//)", r"\b(www)(?=\.)", r"\b(gh)(?=-\d)")
)
_JOINER = "\u2060"


def escape(text: str) -> str:
    r"""Return a text that is itself and nothing else in Markdown, on one line, and that calls nobody.

    >>> escape("<b> *all*")
    '\\<b\\> \\*all\\*'
    """
    return _quiet(_SPECIAL.sub(r"\\\1", _plain(text).replace("&", "&amp;")))


def in_html(text: str) -> str:
    """Return a text for inside an HTML element of a comment, where Markdown means nothing.

    >>> in_html("<b> *all*")
    '&lt;b&gt; *all*'
    """
    return _quiet(html.escape(_plain(text), quote=True))


def code(text: str) -> str:
    """Return a text as code."""
    return f"`{_plain(text).replace('`', '')}`"


def _plain(text: str) -> str:
    return "".join(sign for sign in " ".join(text.split()) if sign.isprintable())


def _quiet(text: str) -> str:
    """Keep names, numbers and addresses from becoming calls and links, and a dollar from beginning a formula."""
    # A reference such as &#x27; is no number of an issue.
    parts = re.split(r"(&#?\w+;)", text)
    for place in range(0, len(parts), 2):
        for pattern in _CALLS:
            parts[place] = pattern.sub("\\1" + _JOINER, parts[place])
        parts[place] = parts[place].replace("$", "<span>$</span>")
    return "".join(parts)
