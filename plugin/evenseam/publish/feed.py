"""New patterns and corrections as a feed (Atom, RFC 4287), dated by the pattern files and by no clock."""

from __future__ import annotations

import re
import uuid
from collections.abc import Iterable
from urllib.parse import quote

from evenseam.publish.entry import MadePattern
from evenseam.publish.html_text import escape
from evenseam.wording import Words

FEED_PATH = "changes.xml"
"""At the root of the site: some themes ask for a site map beside every alternate of a page, and there it is one."""
MOST_ENTRIES = 60
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
_OURS = uuid.uuid5(uuid.NAMESPACE_URL, "evenseam feed")


def write_feed(patterns: Iterable[MadePattern], folder: str, words: Words) -> str:
    """Return the feed of all published patterns, newest first; `folder` is the part of the site they stand in.

    An entry is told from others by its pattern, version and words, and the feed by its oldest entry, so that both stay
    the same wherever the site stands.
    """
    entries = sorted(
        (
            (date, pattern.title, version, what, pattern)
            for pattern in patterns
            if pattern.is_published
            for version, date, what in pattern.changes
            if _DATE.fullmatch(date)
        ),
        key=lambda entry: (entry[0], entry[1], entry[2]),
        reverse=True,
    )
    latest = entries[0][0] if entries else "1970-01-01"
    first = f"{entries[-1][4].slug} {entries[-1][2]}" if entries else ""
    lines = [
        '<?xml version="1.0" encoding="utf-8"?>',
        f'<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="{words.code}">',
        f"<title>{escape(words.word('page', 'feed'))}</title>",
        f"<id>urn:uuid:{uuid.uuid5(_OURS, first)}</id>",
        f"<updated>{_moment(latest)}</updated>",
        f'<link rel="self" type="application/atom+xml" href="{FEED_PATH}"/>',
        *(
            _entry(pattern, folder, version, date, what, words)
            for date, _, version, what, pattern in entries[:MOST_ENTRIES]
        ),
        "</feed>",
    ]
    return "\n".join(lines) + "\n"


def _entry(pattern: MadePattern, folder: str, version: str, date: str, what: str, words: Words) -> str:
    id = uuid.uuid5(_OURS, f"{pattern.slug} {version} {what}")
    title = words.fill("page", "feed_entry", title=pattern.title, version=version)
    return (
        f"<entry><title>{escape(title)}</title><id>urn:uuid:{id}</id>"
        f'<updated>{_moment(date)}</updated><link href="{quote(folder)}/{quote(pattern.slug)}/index.html"/>'
        f"<author><name>{escape(pattern.designer or pattern.title)}</name></author>"
        f"<summary>{escape(what)}</summary></entry>"
    )


def _moment(date: str) -> str:
    return f"{date}T00:00:00Z"
