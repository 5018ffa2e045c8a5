"""Reads a PDF back with independent readers: its words, its structure, and what is drawn on its pages."""

from __future__ import annotations

import io
from collections import Counter
from collections.abc import Iterator

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


def body_text(content: bytes) -> str:
    """Return the words of all pages in the order in which they are read aloud: that of the tags.

    What stands at head and foot of the pages is no part of it, nor is what is drawn in pictures.
    """
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        marked: dict[tuple[int, int], list[dict[str, object]]] = {}
        for page in pdf.pages:
            for char in page.chars:
                if char["mcid"] is not None:
                    marked.setdefault((page.page_number, char["mcid"]), []).append(char)
        told = [
            pdfplumber.utils.extract_text(marked[place], x_tolerance=2, y_tolerance=3)
            for node in pdf.structure_tree
            for place in _places(node)
            if place in marked
        ]
    return " ".join(" ".join(told).split())


def _places(node: dict[str, object], page: int = 0) -> Iterator[tuple[int, int]]:
    """Yield page and number of every run of words below a node of the structure, in order."""
    page = node.get("page_number") or page
    if node.get("type") == "Figure":
        return
    for mcid in node.get("mcids", ()):
        yield page, mcid
    for kid in node.get("children", ()):
        yield from _places(kid, page)


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
