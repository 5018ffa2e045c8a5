"""What a reader can do with a page: tick off, ask why, try her own fabrics. Plain scripts, without a build step."""

from __future__ import annotations

from importlib import resources

SCRIPT_FILE = "assets/evenseam.js"
SCRIPTS = (
    "start",
    "theme",
    "ticks",
    "cloth",
    "why",
    "steps",
    "shopping",
    "looks",
    "fabrics",
    "photo",
    "picture",
    "place",
    "gallery",
)
"""In the order in which they stand in the one file that pages load."""


def reader_script() -> str:
    """Return the one script of all pages. Loaded twice, as themes that swap pages may do, it does nothing more."""
    parts = "\n".join(_text(f"{name}.js") for name in SCRIPTS)
    return f"if (!globalThis.evenseamReader) {{\n{parts}}}\n"


def reader_styles() -> str:
    """Return the style of everything that the script shows."""
    return _text("reader.css")


def _text(name: str) -> str:
    return (resources.files("evenseam.publish.reader") / name).read_text(encoding="utf-8")
