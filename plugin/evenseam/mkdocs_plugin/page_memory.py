"""What the theme wrote round each page, kept so that an unchanged page is not written by it again.

Kept under everything that the theme can have seen: the page, the navigation, the settings, the templates. Where
something else takes part that cannot be seen through, such as a hook that changes pages, nothing is kept at all.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import jinja2
from jinja2.bccache import Bucket
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.nav import Navigation

from evenseam.mkdocs_plugin.pages import PatternPage
from evenseam.mkdocs_plugin.site_mark import knows_all_hands, search_of, site_mark
from evenseam.publish.cache import Cache, key_of


@dataclass(frozen=True, slots=True)
class Kept:
    """One page as the theme wrote it, without its own words, and what the search was told of it."""

    frame: str
    entries: list[dict[str, Any]]


class PageMemory:
    """Remembers written pages: from build to build on disk, and under `serve` in this process as well."""

    def __init__(self) -> None:
        self._known: dict[str, Kept] = {}
        self._keys: dict[str, str] = {}
        self._recalled: dict[str, Kept] = {}
        self._cache: Cache | None = None
        self._entries: list[dict[str, Any]] = []
        self._first = 0
        self._compiled = CompiledTemplates()

    def recall(
        self,
        pages: Iterable[PatternPage],
        nav: Navigation,
        env: jinja2.Environment,
        config: MkDocsConfig,
        cache: Cache,
        ours: object,
    ) -> None:
        """Give back to each unchanged page what was written for it before. To be called when all pages are read."""
        before, self._known, self._keys, self._recalled = self._known, {}, {}, {}
        self._cache = cache
        env.bytecode_cache = self._compiled
        read = [page for page in pages if page.is_read]
        mark = site_mark(nav, config) if knows_all_hands(config, ours) else None
        if mark is not None:
            search = search_of(config)
            self._entries = search.search_index.entries if search is not None else []
            env.template_class = RememberingTemplate
            for page in read:
                self._recall_one(page, mark, before)
        for page in read:
            if page.is_late and page.frame is None:
                page.show()

    def _recall_one(self, page: PatternPage, mark: str, before: dict[str, Kept]) -> None:
        path = page.made.path
        key = self._keys[path] = key_of("written page", mark, page.mark())
        kept = before.get(key) or (_from_text(self._cache.noted(key)) if self._cache else None)
        if kept is not None:
            self._known[key] = self._recalled[path] = kept
            page.take_frame(kept.frame)

    def key(self, page: PatternPage) -> str | None:
        """Return what stands for everything that the page is written from; None when that is not known."""
        return self._keys.get(page.made.path)

    def begin(self, page: PatternPage) -> None:
        """Tell the search of a page that is not written again, or see what it is told of one that is."""
        self._first = len(self._entries)
        kept = self._recalled.get(page.made.path)
        if kept is not None:
            self._entries.extend(kept.entries)

    def keep(self, page: PatternPage, output: str) -> None:
        """Keep a page that the theme has just written."""
        key = self._keys.get(page.made.path)
        if key is None or page.made.path in self._recalled or self._cache is None:
            return
        kept = Kept(page.frame_of(output), self._entries[self._first :])
        self._known[key] = kept
        self._cache.note(key, json.dumps([kept.frame, kept.entries], default=str))


class CompiledTemplates(jinja2.BytecodeCache):
    """Templates in the form in which they run, kept in this process. Jinja asks whether the text is still the same."""

    def __init__(self) -> None:
        self._code: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill in what is known of a template."""
        if bucket.key in self._code:
            bucket.bytecode_from_string(self._code[bucket.key])

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a template that was just compiled."""
        self._code[bucket.key] = bucket.bytecode_to_string()


class RememberingTemplate(jinja2.Template):
    """A template that hands out what it wrote before, for a page that has it."""

    def render(self, *args: Any, **kwargs: Any) -> str:
        """Return the kept text of the page in the context, or write it anew."""
        page = args[0].get("page") if args and isinstance(args[0], dict) else None
        if isinstance(page, PatternPage) and page.frame is not None:
            return page.frame
        return super().render(*args, **kwargs)


def _from_text(text: str | None) -> Kept | None:
    return Kept(*json.loads(text)) if text is not None else None
