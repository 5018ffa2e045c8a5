"""The pages that teach how to write a pattern, as they come with the program, for sites whose navigation names them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

FOLDER = "guide"
_PAGES = Path(__file__).parent / "guide_pages"
_TITLED = re.compile(r'^```(\w+) title="([^"\n]+)"$', re.MULTILINE)
_SERVE_HERE, _SERVE = "python3 plugin serve", "mkdocs serve"


def guide_pages() -> Mapping[str, str]:
    """Return every page by its path in a site, in plain Markdown.

    The pages are written for this project's own site. Elsewhere there is no front door to serve with, and titles of
    code blocks may mean nothing.
    """
    return {
        f"{FOLDER}/{page.name}": _TITLED.sub(r"`\2`:\n\n```\1", page.read_text("utf-8")).replace(_SERVE_HERE, _SERVE)
        for page in sorted(_PAGES.glob("*.md"))
    }
