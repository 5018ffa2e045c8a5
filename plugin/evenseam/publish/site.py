"""Pattern folders to a whole site: gallery, overviews, size pages, handouts and open data."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from evenseam.publish.cache import Cache, key_of
from evenseam.publish.cairo import INSTALL_CAIRO, has_cairo
from evenseam.publish.entry import MadeFile, MadePage, MadePattern, as_text, from_text
from evenseam.publish.feed import FEED_PATH, write_feed
from evenseam.publish.gallery import write_gallery
from evenseam.publish.html_text import escape, filled, without_blank_lines
from evenseam.publish.options import SiteOptions
from evenseam.publish.parallel import make_patterns
from evenseam.publish.site_files import NavEntry, SiteFile, SiteFiles, SitePage, site_link
from evenseam.publish.sources import PatternSource
from evenseam.wording import Words, words_of

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
    words = words_of(options.language)
    gallery = write_gallery(patterns, words)
    common = _common_parts(cache)
    files = [*common.files]
    check = _check_part(options, cache)
    files += check.files
    pages = [
        _gallery_page(gallery, options, cache, words),
        *(common.pages if options.has_author_guide else ()),
        *check.pages,
    ]
    pages += [page for pattern in patterns for page in pattern.pages]
    files.append(MadeFile(FEED_PATH, cache.keep(write_feed(patterns, options.folder, words).encode())))
    files += [file for pattern in patterns for file in pattern.files]
    return SiteFiles(
        tuple(_site_page(page, cache, words) for page in pages),
        tuple(SiteFile(file.path, cache.path(file.content)) for file in files),
        _navigation(patterns, options, words),
        gallery,
        tuple(problem for pattern in patterns for problem in pattern.problems),
        {text.name: text for source in sources for text in (source.source, *source.drawings.values())},
        (INSTALL_CAIRO,) if options.has_paper_pictures and not has_cairo() else (),
    )


def _gallery_page(gallery: str, options: SiteOptions, cache: Cache, words: Words) -> MadePage:
    title, about = words.word("gallery", "title"), words.word("gallery", "about")
    link = f'<a href="{site_link(FEED_PATH)}">{escape(words.word("page", "feed"))}</a>'
    feed = f'<p class="feed" data-search-exclude>{filled(words.word("page", "feed_link"), feed=link)}</p>'
    body = without_blank_lines(
        f'<div class="pattern-page" lang="{words.code}">\n<h1>{escape(title)}</h1>\n{gallery}\n{feed}\n</div>'
    )
    return MadePage(f"{options.folder}/index.md", title, title, about, (), cache.keep(body.encode()), "", "")


def _common_parts(cache: Cache) -> MadePattern:
    def make() -> MadePattern:
        from evenseam.publish.common import make_common

        return make_common(cache)

    return _recalled(key_of("common"), cache, make)


def _check_part(options: SiteOptions, cache: Cache) -> MadePattern:
    def make() -> MadePattern:
        from evenseam.publish.check_page import make_check_page

        return make_check_page(options, cache)

    return _recalled(key_of("check", options.as_text(), str(has_cairo())), cache, make)


def _recalled(key: str, cache: Cache, make: Callable[[], MadePattern]) -> MadePattern:
    """Return what was made before; the engine is loaded only when it must be made."""
    text = cache.noted(key)
    made = from_text(text) if text is not None else None
    if made is None or not all(cache.is_sound(name) for name in made.hashes):
        made = make()
        cache.note(key, as_text(made))
    return made


def _site_page(page: MadePage, cache: Cache, words: Words) -> SitePage:
    return SitePage(
        page.path, page.title, page.short_title, page.description, page.contents, cache.path(page.body), page.source,
        page.card, page.is_searched, FEED_PATH, words.word("page", "feed"), words.code,
    )  # fmt: skip


def _navigation(patterns: Sequence[MadePattern], options: SiteOptions, words: Words) -> tuple[NavEntry, ...]:
    sections = tuple(
        NavEntry(
            pattern.title,
            pattern.overview,
            tuple(NavEntry(page.short_title, page.path) for page in pattern.pages if page.path != pattern.overview),
        )
        for pattern in patterns
    )
    return (NavEntry(words.word("gallery", "title"), f"{options.folder}/index.md", sections),)
