"""Reads a PDF back with independent readers: its words, its structure, and what is drawn on its pages."""

from __future__ import annotations

import io
from collections import Counter

import pdfplumber
import pypdf


def read_pdf(content: bytes) -> pypdf.PdfReader:
    """Return a reader of a PDF."""
    return pypdf.PdfReader(io.BytesIO(content))


def structure(content: bytes) -> Counter[str]:
    """Count the tags of a tagged PDF by name."""
    found: Counter[str] = Counter()
    _walk(read_pdf(content).trailer["/Root"]["/StructTreeRoot"], found, None)
    return found


def alternatives(content: bytes) -> list[str]:
    """Return the descriptions of all pictures, in order."""
    told: list[str] = []
    _walk(read_pdf(content).trailer["/Root"]["/StructTreeRoot"], Counter(), told)
    return told


def bookmarks(content: bytes) -> list[str]:
    """Return all bookmark titles, in order."""
    titles: list[str] = []

    def collect(items):
        for item in items:
            if isinstance(item, list):
                collect(item)
            else:
                titles.append(item.title)

    collect(read_pdf(content).outline)
    return titles


def body_text(content: bytes, *, top: float = 65, bottom: float = 60) -> str:
    """Return the words of all pages, without what stands at their head and foot (points from the edges)."""
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        pages = [
            page.crop((0, top, page.width, page.height - bottom)).extract_text(x_tolerance=2, y_tolerance=3)
            for page in pdf.pages
        ]
    return " ".join(" ".join(page.split()) for page in pages)


def _walk(node, found, told):
    node = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(node, list):
        for kid in node:
            _walk(kid, found, told)
        return
    if not isinstance(node, dict):
        return
    kind = node.get("/S")
    if kind is not None:
        found[str(kind)[1:]] += 1
        if told is not None and kind == "/Figure":
            told.append(str(node.get("/Alt", "")))
    if "/K" in node:
        _walk(node["/K"], found, told)
