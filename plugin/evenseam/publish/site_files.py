"""The pages and files of a site before any site generator has touched them."""

from __future__ import annotations

import json
import posixpath
import re
from dataclasses import dataclass, field, replace
from pathlib import Path
from urllib.parse import quote

from evenseam.problems import Problem, Severity, SourceText
from evenseam.publish.contents import ContentsEntry
from evenseam.publish.html_text import plain

PAGE_SUFFIX = ".md"
CHECK_PAGE = "help/check-your-templates.md"
"""How to print at full size; every list of templates leads to it."""
_SITE_LINK = re.compile(r'="site:([^"#]*)(#[^"]*)?"')


def site_link(path: str, anchor: str = "") -> str:
    """Return an address inside the site, to stand in an href or src until it is known how pages are addressed."""
    return f"site:{quote(path)}" + (f"#{anchor}" if anchor else "")


@dataclass(frozen=True, slots=True)
class SitePage:
    """One page; its body is kept in the cache."""

    path: str
    """As a source file: patterns/harbour-lanterns/index.md."""
    title: str
    short_title: str
    """For lists in which the pattern's name stands above."""
    description: str
    """One line, for search engines and link previews."""
    contents: tuple[ContentsEntry, ...]
    stored: Path
    source: str = ""
    """The file in which the page can be corrected; empty when there is none."""
    card: str = ""
    """Path of the picture that stands for the page elsewhere; empty when there is none."""
    is_searched: bool = True
    feed: str = ""
    """Path of the feed of new patterns and corrections; empty when there is none."""
    feed_title: str = ""
    language: str = ""
    """The code of the language it is written in, author's words apart; empty where nobody said."""

    def body(self, *, has_folders: bool) -> str:
        """Return the HTML with relative links. With folders, harbour/size.md is addressed as harbour/size/."""
        return with_links(self.stored.read_text(encoding="utf-8"), self.path, has_folders=has_folders)


@dataclass(frozen=True, slots=True)
class SiteFile:
    """One file that is no page; its bytes are kept in the cache."""

    path: str
    stored: Path


@dataclass(frozen=True, slots=True)
class NavEntry:
    """One line of the navigation: a page, or a section whose first page leads into it."""

    title: str
    path: str
    children: tuple[NavEntry, ...] = ()

    @property
    def paths(self) -> tuple[str, ...]:
        """The pages of this entry and of all below it."""
        return (self.path, *(path for child in self.children for path in child.paths))


@dataclass(frozen=True, slots=True)
class SiteFiles:
    """Everything that is published, and everything there is to say about it."""

    pages: tuple[SitePage, ...]
    files: tuple[SiteFile, ...]
    navigation: tuple[NavEntry, ...]
    gallery: str
    """HTML of the gallery, for a page that shows it among its own words; links are still site links."""
    problems: tuple[Problem, ...] = ()
    sources: dict[str, SourceText] = field(default_factory=dict)
    """Texts by file name, for showing problems."""
    notes: tuple[str, ...] = ()
    """What was left out and how to get it, for whoever builds."""

    @property
    def errors(self) -> tuple[Problem, ...]:
        """The problems that keep a pattern from being published."""
        return tuple(problem for problem in self.problems if problem.severity is Severity.ERROR)

    @property
    def stored(self) -> tuple[str, ...]:
        """The names under which its pages and files are kept."""
        return (*(page.stored.name for page in self.pages), *(file.stored.name for file in self.files))

    def navigation_up_to(self, most: int) -> tuple[tuple[NavEntry, ...], frozenset[str]]:
        """Return the navigation, and the paths of pages left out of it because there are more than `most` patterns."""
        (gallery,) = self.navigation
        if len(gallery.children) <= most:
            return self.navigation, frozenset()
        unlisted = frozenset(path for pattern in gallery.children for path in pattern.paths)
        return (replace(gallery, children=()),), unlisted


def with_links(body: str, path: str, *, has_folders: bool) -> str:
    """Return HTML with its site links made relative to the page at `path`."""

    def relative(found: re.Match[str]) -> str:
        return f'="{relative_address(found[1], path, has_folders=has_folders)}{found[2] or ""}"'

    return _SITE_LINK.sub(relative, body)


def relative_address(path: str, seen_from: str, *, has_folders: bool) -> str:
    """Return the address of one source file as a link on the page of another.

    >>> relative_address("a/b.pdf", "a/c.md", has_folders=True)
    '../b.pdf'
    """
    start = posixpath.dirname(address_of(seen_from, has_folders=has_folders))
    target = address_of(path, has_folders=has_folders)
    address = posixpath.relpath(target or ".", start or ".")
    if target.endswith("/") or not target:
        return "./" if address == "." else address + "/"
    return address


def address_of(path: str, *, has_folders: bool) -> str:
    """Return where a source file is found on the built site, from its root; a folder ends with a slash.

    >>> [address_of(path, has_folders=True) for path in ("a/index.md", "a/b.md", "a/b.pdf")]
    ['a/', 'a/b/', 'a/b.pdf']
    """
    stem, suffix = posixpath.splitext(path)
    if suffix != PAGE_SUFFIX:
        return path
    if not has_folders:
        return stem + ".html"
    folder, name = posixpath.split(stem)
    return (f"{folder}/" if folder else "") if name == "index" else stem + "/"


def front_matter(page: SitePage) -> str:
    """Return a page's title and description in the form that site generators read at the top of a file."""
    # A quoted text of JSON is one of YAML as well, as long as no sign is written as two halves of a pair.
    title, description = (json.dumps(_quiet(text), ensure_ascii=False) for text in (page.title, page.description))
    lines = [f"title: {title}", f"description: {description}"]
    if not page.is_searched:
        lines += ["search:", "  exclude: true"]
    return "\n".join(["---", *lines, "---", ""])


_LOOK_ALIKES = str.maketrans({"<": "\u2039", ">": "\u203a", '"': "\u201d", "'": "\u2019", "{": "(", "}": ")"})


def _quiet(text: str) -> str:
    """Return a text without the signs of any markup.

    Some generators escape what stands in front matter and others print it as it is, so that it must be harmless both
    ways; the page itself shows the signs as they were written.
    """
    return plain(text).translate(_LOOK_ALIKES)
