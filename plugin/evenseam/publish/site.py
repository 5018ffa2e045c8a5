"""Pattern folders to a whole site: gallery, overviews, size pages, handouts and open data."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from importlib import resources

from evenseam.figures import web_styles
from evenseam.publish.cache import Cache
from evenseam.publish.entry import MadeFile, MadePage, MadePattern
from evenseam.publish.gallery import write_gallery
from evenseam.publish.guide import write_key_page
from evenseam.publish.html_text import without_blank_lines
from evenseam.publish.options import SiteOptions
from evenseam.publish.parallel import make_patterns
from evenseam.publish.pictures import INSTALL_CAIRO, has_cairo
from evenseam.publish.site_files import NavEntry, SiteFile, SiteFiles, SitePage
from evenseam.publish.sources import PatternSource
from evenseam.reading import schema

GALLERY_TITLE = "Patterns"
KEY_PAGE = "guide/every-key.md"
SCHEMA_FILE = "pattern.schema.json"
STYLE_FILE = "assets/evenseam.css"


def build_site(
    sources: Sequence[PatternSource],
    options: SiteOptions,
    cache: Cache,
    *,
    processes: int | None = None,
    tell: Callable[[int, int], None] = lambda done, of: None,
) -> SiteFiles:
    """Return every page and file of a site for some pattern folders.

    A pattern with errors gets one page that names them; the others are published all the same. `processes` is the
    number of processors by default; `tell(done, of)` hears how the work goes on.
    """
    patterns = make_patterns(sources, options, cache, processes=processes, tell=tell)
    gallery = write_gallery(patterns)
    common = [_gallery_page(gallery, options, cache)]
    if options.has_author_guide:
        common.append(_key_page(cache))
    files = [
        MadeFile(SCHEMA_FILE, cache.keep(_schema_text().encode())),
        MadeFile(STYLE_FILE, cache.keep(_styles().encode())),
    ]
    pages = [*common, *(page for pattern in patterns for page in pattern.pages)]
    files += [file for pattern in patterns for file in pattern.files]
    return SiteFiles(
        tuple(_site_page(page, cache) for page in pages),
        tuple(SiteFile(file.path, cache.path(file.content)) for file in files),
        _navigation(patterns, options),
        gallery,
        tuple(problem for pattern in patterns for problem in pattern.problems),
        {text.name: text for source in sources for text in (source.source, *source.drawings.values())},
        (INSTALL_CAIRO,) if options.has_paper_pictures and not has_cairo() else (),
    )


def _gallery_page(gallery: str, options: SiteOptions, cache: Cache) -> MadePage:
    body = without_blank_lines(f'<div class="pattern-page">\n<h1>{GALLERY_TITLE}</h1>\n{gallery}\n</div>')
    path = f"{options.folder}/index.md"
    return MadePage(
        path, GALLERY_TITLE, GALLERY_TITLE, "Every pattern, with its picture.", (), cache.keep(body.encode()), "", ""
    )


def _key_page(cache: Cache) -> MadePage:
    title, text = write_key_page()
    description = "Every key of a pattern file, what it means and what it is when it is left out."
    return MadePage(KEY_PAGE, title, title, description, text.contents, cache.keep(text.body.encode()), "", "")


def _schema_text() -> str:
    return json.dumps(schema(), indent=1, ensure_ascii=False, sort_keys=True) + "\n"


def _styles() -> str:
    return web_styles() + (resources.files("evenseam.publish") / "pattern.css").read_text(encoding="utf-8")


def _site_page(page: MadePage, cache: Cache) -> SitePage:
    return SitePage(
        page.path, page.title, page.short_title, page.description, page.contents, cache.path(page.body), page.source,
        page.card, page.is_searched,
    )  # fmt: skip


def _navigation(patterns: Sequence[MadePattern], options: SiteOptions) -> tuple[NavEntry, ...]:
    sections = tuple(
        NavEntry(
            pattern.title,
            pattern.overview,
            tuple(NavEntry(page.short_title, page.path) for page in pattern.pages if page.path != pattern.overview),
        )
        for pattern in patterns
    )
    return (NavEntry(GALLERY_TITLE, f"{options.folder}/index.md", sections),)
