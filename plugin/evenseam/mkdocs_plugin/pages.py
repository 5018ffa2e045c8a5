"""Finished pages in the shape that MkDocs passes round, without their Markdown being parsed."""

from __future__ import annotations

import re
from collections.abc import Iterable, MutableMapping
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import get_toc

from evenseam.publish.contents import contents_as_data
from evenseam.publish.site_files import NavEntry, SitePage

_PICTURE = re.compile(r"<svg\b.*?</svg>", re.DOTALL)
_MARK = re.compile(r"<!--picture (\d+)-->")


class PatternPage(Page):
    """A page whose HTML, contents list and title are already known.

    Its pictures are held back until the page is written: themes index and copy a page's content several times, and
    the pictures are most of it.
    """

    def __init__(self, made: SitePage, file: File, config: MkDocsConfig) -> None:
        self.made = made
        self.pictures: list[str] = []
        super().__init__(made.short_title, file, config)

    def read_source(self, config: MkDocsConfig) -> None:
        """Take title and description from what was made."""
        meta: MutableMapping[str, Any] = {"title": self.made.title, "description": self.made.description}
        if not self.made.is_searched:
            meta["search"] = {"exclude": True}
        self.meta = meta
        self.markdown = ""

    def render(self, config: MkDocsConfig, files: Files) -> None:
        """Hand over the finished HTML."""
        body = self.made.body(has_folders=config.use_directory_urls)
        self.pictures = []
        self.content = _PICTURE.sub(self._hold_back, body)
        self.toc = get_toc(contents_as_data(self.made.contents))  # type: ignore[arg-type]
        self.present_anchor_ids = {entry.id for entry in self.made.contents}

    def with_pictures(self, output: str) -> str:
        """Return the written page with its pictures in their places."""
        pictures = self.pictures
        return _MARK.sub(lambda found: pictures[int(found[1])], output) if pictures else output

    def _hold_back(self, found: re.Match[str]) -> str:
        self.pictures.append(found[0])
        return f"<!--picture {len(self.pictures) - 1}-->"


def as_nav(entries: Iterable[NavEntry]) -> list[Any]:
    """Return navigation entries in the form of the `nav` of mkdocs.yml, each section led by its first page."""
    return [
        {entry.title: [entry.path, *as_nav(entry.children)]} if entry.children else {entry.title: entry.path}
        for entry in entries
    ]


def nav_with(nav: list[Any], folder: str, entries: Iterable[NavEntry]) -> list[Any]:
    """Return a `nav` with the entry that names the patterns' folder (such as `patterns/`) filled in.

    Without such an entry the patterns come last.
    """
    made = as_nav(entries)
    filled, is_found = _filled(nav, folder.rstrip("/") + "/", made)
    return filled if is_found else [*filled, *made]


def _filled(nav: list[Any], mark: str, made: list[Any]) -> tuple[list[Any], bool]:
    filled: list[Any] = []
    is_found = False
    for item in nav:
        title, value = next(iter(item.items())) if isinstance(item, dict) and len(item) == 1 else (None, item)
        if value == mark:
            inner = next(iter(made[0].values()))
            filled += made if title is None else [{title: inner}]
            is_found = True
        elif title is not None and isinstance(value, list):
            children, is_inside = _filled(value, mark, made)
            filled.append({title: children})
            is_found = is_found or is_inside
        else:
            filled.append(item)
    return filled, is_found
