"""A folder to start a site of one's own from: settings, a first page, a way to publish, and a first pattern."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path

from evenseam import __version__
from evenseam.publish.sources import PATTERN_FILE
from evenseam.reading import starter

_PARTS = Path(__file__).parent / "starter_site"
_PLACES = {
    "mkdocs.yml": "mkdocs.yml",
    "README.md": "README.md",
    "requirements.txt": "requirements.txt",
    "gitignore": ".gitignore",
    "index.md": "pages/index.md",
    "publish.yml": ".github/workflows/publish.yml",
}
"""Which part goes where: in the package no part has a name that tools would take for their own."""


def starter_site(name: str, slug: str, pattern: str) -> Mapping[str, bytes]:
    """Return the files of a new site by path.

    `name` is what the site is called, `slug` and `pattern` are the folder and the title of its first pattern.
    """
    files = {}
    for part, place in _PLACES.items():
        text = (_PARTS / part).read_text("utf-8")
        shown = json.dumps(name, ensure_ascii=False) if place.endswith(".yml") else _as_markdown(name)
        files[place] = text.replace("@NAME@", shown).replace("@VERSION@", __version__).encode()
    files["wheels/README.md"] = b"Wheel files in this folder are found by `pip install -r requirements.txt`.\n"
    files[f"patterns/{slug}/{PATTERN_FILE}"] = starter(pattern).encode()
    return files


def _as_markdown(name: str) -> str:
    """Write a name so that no sign of it is taken for Markdown or HTML."""
    return "".join(f"&#{ord(sign)};" if sign in "\\`*_{}[]<>()#+-.!|&~:" else sign for sign in name)
