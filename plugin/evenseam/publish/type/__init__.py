"""The typefaces that a site may use: served from its own files, named in the style of its pages."""

from __future__ import annotations

from importlib import resources

FOLDER = "assets/type"
FACES = ("text-regular.woff2", "text-bold.woff2", "book-bold.woff2")


def type_files() -> dict[str, bytes]:
    """Return the faces by their paths on the site."""
    here = resources.files("evenseam.publish.type")
    return {f"{FOLDER}/{name}": (here / name).read_bytes() for name in FACES}


def type_styles() -> str:
    """Return the style that names them; it stands in a file beside their folder."""
    return (resources.files("evenseam.publish.type") / "type.css").read_text(encoding="utf-8")
