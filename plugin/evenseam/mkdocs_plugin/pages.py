"""Finished pages in the shape that MkDocs passes round, without their Markdown being parsed."""

from __future__ import annotations

from collections.abc import Iterable, MutableMapping
from typing import Any

from markupsafe import Markup
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import get_toc

from evenseam.publish.contents import contents_as_data
from evenseam.publish.html_text import escape
from evenseam.publish.search_words import searchable
from evenseam.publish.site_files import NavEntry, SitePage

_START, _END = "<!--pattern page-->", "<!--/pattern page-->"


class PatternPage(Page):
    """A page whose HTML, contents list and title are already known.

    Until the page is written, its content is only what a search should find: its headings and words. Themes read and
    copy the content several times, and the pictures are nearly all of it.
    """

    def __init__(self, made: SitePage, file: File, config: MkDocsConfig) -> None:
        self.made = made
        self.body = ""
        super().__init__(as_markup(made.short_title), file, config)

    def read_source(self, config: MkDocsConfig) -> None:
        """Take title and description from what was made."""
        meta: MutableMapping[str, Any] = {
            "title": as_markup(self.made.title),
            "description": as_markup(self.made.description),
        }
        if not self.made.is_searched:
            meta["search"] = {"exclude": True}
        self.meta = meta
        self.markdown = ""

    def render(self, config: MkDocsConfig, files: Files) -> None:
        """Hand over headings and words, and keep the finished HTML for the end."""
        self.body = self.made.body(has_folders=config.use_directory_urls)
        words = searchable(self.body) if self.made.is_searched else "<h1></h1>"
        self.content = f"{_START}{words}{_END}"
        self.toc = get_toc(contents_as_data(self.made.contents))  # type: ignore[arg-type]
        self.present_anchor_ids = {entry.id for entry in self.made.contents}

    def finished(self, output: str) -> str:
        """Return the page as the theme wrote it, with the finished HTML in its place."""
        before, start, rest = output.partition(_START)
        _, end, after = rest.partition(_END)
        if not start or not end:
            raise PluginError(f"the theme shows no content on {self.made.path}; its templates must print page.content")
        return before + self.body + after


def as_markup(words: str) -> Markup:
    """Return words of an author for a theme: themes print titles and descriptions as they stand, tags and all.

    Marked as being markup already, so that a theme that does take care does not do it a second time.
    """
    return Markup(escape(words))


def as_nav(entries: Iterable[NavEntry]) -> list[Any]:
    """Return navigation entries in the form of the `nav` of mkdocs.yml, each section led by its first page."""
    return [
        {as_markup(entry.title): [entry.path, *as_nav(entry.children)] if entry.children else entry.path}
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
