"""What a page says of itself to search engines and link previews."""

from __future__ import annotations

import json
from typing import Any
from urllib.parse import urljoin

from evenseam.publish.html_text import escape
from evenseam.publish.site_files import SitePage, address_of, relative_address

_STEP = "step-"


def write_head(page: SitePage, site_url: str, *, has_folders: bool) -> str:
    """Return elements for a page's head: title and picture for previews, and its steps as structured data.

    Addresses in them must be whole ones, so that without the site's own address only words are given.
    """
    lines = [
        '<meta property="og:type" content="article">',
        f'<meta property="og:title" content="{escape(page.title)}">',
        f'<meta property="og:description" content="{escape(page.description)}">',
    ]
    if site_url:
        lines.append(f'<meta property="og:url" content="{escape(_whole(site_url, page.path, has_folders))}">')
    if site_url and page.card:
        lines.append(f'<meta property="og:image" content="{escape(_whole(site_url, page.card, has_folders))}">')
    if page.feed:
        lines.append(
            f'<link rel="alternate" type="application/atom+xml" title="{escape(page.feed_title)}" '
            f'href="{relative_address(page.feed, page.path, has_folders=has_folders)}">'
        )
    steps = [entry.title.partition(". ")[2] for entry in page.contents if entry.id.startswith(_STEP)]
    if steps:
        lines.append(_how_to(page, steps))
    return "\n".join(lines)


def _whole(site_url: str, path: str, has_folders: bool) -> str:
    return urljoin(site_url.rstrip("/") + "/", address_of(path, has_folders=has_folders))


def _how_to(page: SitePage, steps: list[str]) -> str:
    data: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "HowTo",
        "name": page.title,
        "description": page.description,
        **({"inLanguage": page.language} if page.language else {}),
        "step": [{"@type": "HowToStep", "name": step, "position": number} for number, step in enumerate(steps, 1)],
    }
    # Nothing inside may look like the end of the script, or like markup at all.
    text = json.dumps(data, ensure_ascii=False).replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")
    return f'<script type="application/ld+json">{text}</script>'
