"""Finished pages in the shape that MkDocs passes round, without their Markdown being parsed."""

from __future__ import annotations

from collections.abc import Iterable, MutableMapping
from dataclasses import replace
from pathlib import Path
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
    copy the content several times, and the pictures are nearly all of it. A late page has no content before `show`: a
    page that is not written again needs none.
    """

    def __init__(self, made: SitePage, file: File, config: MkDocsConfig, *, is_late: bool = False) -> None:
        self.made = made
        self.is_read = False
        self.is_late = is_late
        self.frame: str | None = None
        """What the theme wrote round the page before, when nothing that it shows has changed since."""
        self._has_folders = config.use_directory_urls
        super().__init__(as_markup(made.short_title), file, config)

    def read_source(self, config: MkDocsConfig) -> None:
        """Take title and description from what was made."""
        meta: MutableMapping[str, Any] = {
            "title": as_markup(self.made.title),
            "description": as_markup(self.made.description),
        }
        if not self.made.is_searched:
            meta["search"] = {"exclude": True}
        if not self.made.contents:
            # An empty list of contents would take the room of a column.
            meta["hide"] = ["toc"]
        self.meta = meta
        self.markdown = ""

    def render(self, config: MkDocsConfig, files: Files) -> None:
        """Show the words now, or promise to show them when it is known whether anybody will read them."""
        self.is_read = True
        self.present_anchor_ids = {entry.id for entry in self.made.contents}
        self.content = ""
        if not self.is_late:
            self.show()

    def show(self) -> None:
        """Hand over headings and words, and keep the finished HTML for the end."""
        words = searchable(self._body()) if self.made.is_searched else "<h1></h1>"
        self.content = f"{_START}{words}{_END}"
        self.toc = get_toc(contents_as_data(self.made.contents))  # type: ignore[arg-type]

    def mark(self) -> str:
        """Return everything that a theme can show of this page, as one text."""
        around = [(page.title, page.url) if page else None for page in (self.previous_page, self.next_page)]
        shown = replace(self.made, stored=Path(self.made.stored.name))
        return repr(
            (
                shown,
                self.file.inclusion,
                self.url,
                self.abs_url,
                self.canonical_url,
                self.edit_url,
                dict(self.meta),
                around,
            )
        )

    def take_frame(self, frame: str) -> None:
        """Take what the theme wrote before; the search is told by whoever kept it, and not a second time."""
        self.frame = frame
        self.meta["search"] = {"exclude": True}

    def frame_of(self, output: str) -> str:
        """Return what the theme wrote round the words of the page."""
        before, after = self._apart(output)
        return before + _START + _END + after

    def finished(self, output: str) -> str:
        """Return the page as the theme wrote it, with the finished HTML in its place."""
        before, after = self._apart(output)
        return before + self._body() + after

    def _apart(self, output: str) -> tuple[str, str]:
        before, start, rest = output.partition(_START)
        _, end, after = rest.partition(_END)
        if not start or not end:
            raise PluginError(f"the theme shows no content on {self.made.path}; its templates must print page.content")
        return before, after

    def _body(self) -> str:
        return self.made.body(has_folders=self._has_folders)


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


def is_named(nav: object, path: str) -> bool:
    """Tell whether a `nav` names a page; without a `nav` every page is in it."""
    match nav:
        case None:
            return True
        case dict():
            return any(is_named(value, path) for value in nav.values() if value is not None)
        case list():
            return any(is_named(item, path) for item in nav if item is not None)
        case _:
            return nav == path


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
