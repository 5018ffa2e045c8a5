"""Lets MkDocs publish pattern folders: gathers them, calls the publisher, hands on pages and files."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Literal
from urllib.parse import quote, urljoin

from jinja2 import Environment
from mkdocs.config import config_options as opt
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from evenseam.mkdocs_plugin.page_memory import PageMemory
from evenseam.mkdocs_plugin.pages import PatternPage, is_named, nav_with
from evenseam.mkdocs_plugin.site_mark import knows_all_hands
from evenseam.mkdocs_plugin.standing_site import StandingSite
from evenseam.mkdocs_plugin.whole_site import WholeSite
from evenseam.problems import Severity, show_problem
from evenseam.publish.author_guide import guide_pages
from evenseam.publish.cache import Cache
from evenseam.publish.export import with_gallery
from evenseam.publish.freshness import mark_changed
from evenseam.publish.head import write_head
from evenseam.publish.older_versions import with_older_versions
from evenseam.publish.options import EDITIONS, PAPERS, SiteOptions
from evenseam.publish.pruning import prune
from evenseam.publish.reader import SCRIPT_FILE
from evenseam.publish.site import STYLE_FILE, build_site
from evenseam.publish.site_files import CHECK_PAGE, SiteFiles, SitePage
from evenseam.publish.sources import find_patterns

log = get_plugin_logger("evenseam")


class EvenseamConfig(Config):  # type: ignore[no-untyped-call]
    """What can be set under `plugins: - evenseam:` in mkdocs.yml."""

    patterns = opt.Dir(exists=True, default="patterns")
    """Where the pattern folders are, seen from mkdocs.yml."""
    folder = opt.Type(str, default="patterns")
    """The part of the site in which they are shown."""
    papers = opt.ListOfItems(opt.Choice(PAPERS), default=list(PAPERS))
    editions = opt.ListOfItems(opt.Choice(tuple(EDITIONS)), default=list(EDITIONS))
    language = opt.Type(str, default="en")
    """The language of everything that is not the author's own words."""
    handouts = opt.Choice(("always", "build", "never"), default="build")
    """`build` leaves them out under `mkdocs serve`, where a page should be there at once."""
    most_in_navigation = opt.Type(int, default=60)
    """With more patterns than this the navigation leads to the gallery only: a longer list helps nobody, and it would
    be written into every page."""
    author_guide = opt.Type(bool, default=True)
    author_pages = opt.Choice(("always", "serve", "never"), default="serve")
    """`serve` makes a page for each pattern's author in the preview only."""
    strict = opt.Type(bool, default=False)
    """Fail on a pattern with errors even where MkDocs itself is not strict."""
    cache = opt.Type(str, default=".cache/evenseam")


class EvenseamPlugin(BasePlugin[EvenseamConfig]):  # type: ignore[no-untyped-call]
    """One page per pattern, size and edition; a gallery; handouts and open data beside them."""

    def __init__(self) -> None:
        self.is_serving = False
        self.site: SiteFiles | None = None
        self.expected: list[File] = []
        self.memory = PageMemory()
        self.standing: StandingSite | None = None
        self.whole: WholeSite | None = None
        self.nav: Navigation | None = None
        self.files: Files | None = None
        self.cache: Cache | None = None

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember whether this is a preview; that the method is here keeps the plugin alive between rebuilds."""
        self.is_serving = command == "serve"
        self.standing = StandingSite() if self.is_serving and not dirty else None
        self.whole = WholeSite() if not self.is_serving and not dirty else None

    def on_shutdown(self) -> None:
        """Let a site that is whole take its place."""
        if self.whole is not None:
            self.whole.finish()

    @event_priority(100)
    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Watch the patterns and link the style and the script of their pages; lead the build beside the site."""
        if self.whole is not None:
            self.whole.begin(config)
        if self.config.language != "en":
            _check_language(self.config.language)
        config.watch.append(self.config.patterns)
        if STYLE_FILE not in config.extra_css:
            config.extra_css.insert(0, STYLE_FILE)
        if SCRIPT_FILE not in config.extra_javascript:
            config.extra_javascript.insert(0, SCRIPT_FILE)
        return config

    @event_priority(-100)
    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Leave a served site in its place while it is rebuilt."""
        if self.standing is not None:
            self.standing.begin(config)

    @event_priority(-50)
    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add every page and file of the patterns."""
        if self.standing is not None:
            self.standing.take_over(files, config)
        cache_folder = Path(config.config_file_path or ".").absolute().parent / self.config.cache
        try:
            sources = find_patterns(Path(self.config.patterns))
        except FileNotFoundError as error:
            log.warning("%s", error)
            sources = ()
        if self.cache is None or self.cache.folder != cache_folder:
            self.cache = Cache(cache_folder)
        self.cache.hold()
        in_time = with_older_versions(sources, Path(self.config.patterns), self.cache)
        if in_time.note:
            log.info("%s", in_time.note)
        self.site = site = build_site(in_time.sources, self._options(), self.cache)
        self._tell(site, config)
        mark_changed(site, cache_folder / "shown.json")
        taken = {file.src_uri for file in files}
        navigation, unlisted = site.navigation_up_to(self.config.most_in_navigation)
        self.expected = []
        is_late = knows_all_hands(config, self)
        for made in site.pages:
            if made.path in taken:
                log.warning("%s is written by hand and stays; the computed page is left out", made.path)
                continue
            is_left_out = made.path in unlisted or (made.path == CHECK_PAGE and not is_named(config.nav, CHECK_PAGE))
            inclusion = InclusionLevel.NOT_IN_NAV if is_left_out else InclusionLevel.UNDEFINED
            file = File.generated(config, made.path, abs_src_path=str(made.stored), inclusion=inclusion)
            page = PatternPage(made, file, config, is_late=is_late)
            page.edit_url = self._edit_url(made, config)
            file.page = page
            files.append(file)
            self.expected.append(file)
        for item in site.files:
            if item.path not in taken:
                files.append(File.generated(config, item.path, abs_src_path=str(item.stored)))
        for path, text in guide_pages().items() if _names_the_guide(config) else ():
            if path not in taken:
                inclusion = InclusionLevel.UNDEFINED if is_named(config.nav, path) else InclusionLevel.NOT_IN_NAV
                files.append(File.generated(config, path, content=text, inclusion=inclusion))
        if config.nav is not None:
            config.nav = nav_with(config.nav, self.config.folder, navigation)
        return files

    def on_page_markdown(self, markdown: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Put the gallery where a hand-written page asks for it."""
        if self.site is None:
            return markdown
        return with_gallery(markdown, page.file.src_uri, self.site, has_folders=config.use_directory_urls)

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> None:
        """Remember the navigation: it is part of what stands on every page."""
        self.nav = nav

    @event_priority(-100)
    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> None:
        """Give back to unchanged pages what the theme wrote round them before."""
        pages = [file.page for file in self.expected if isinstance(file.page, PatternPage)]
        if self.nav is not None and self.cache is not None:
            self.memory.recall(pages, self.nav, env, config, self.cache, self)
        self.files = files
        if self.standing is not None:
            self.standing.settle(files)

    @event_priority(100)
    def on_page_context(self, context: TemplateContext, *, page: Page, config: MkDocsConfig, nav: Navigation) -> None:
        """Follow what the search is told of each page."""
        if isinstance(page, PatternPage):
            self.memory.begin(page)

    @event_priority(100)
    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        """Put the finished page in, and what it says of itself to search engines."""
        if not isinstance(page, PatternPage):
            return output
        self.memory.keep(page, output)
        key = self.memory.key(page)
        if self.standing is not None and key is not None and self.standing.stands(page.file, key):
            return ""
        head = write_head(page.made, config.site_url or "", has_folders=config.use_directory_urls)
        return page.finished(output.replace("</head>", f"{head}\n</head>", 1))

    def on_build_error(self, *, error: Exception, **_: object) -> None:
        """Say in one line what the machine would not do, such as a full disk; MkDocs would show its own insides."""
        if self.whole is not None:
            self.whole.call_failed()
        if isinstance(error, OSError):
            what = f"{error.filename}: {error.strerror}" if error.filename else error.strerror or str(error)
            raise PluginError(f"the site could not be built: {what}") from error

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Make sure that every page arrived: a page lost on the way is otherwise missed by nobody."""
        missing = [file.dest_uri for file in self.expected if not Path(file.abs_dest_path).is_file()]
        if missing:
            raise PluginError(f"{len(missing)} of {len(self.expected)} pattern pages were not written: {missing[0]}, …")
        if self.standing is not None and self.files is not None:
            self.standing.finish(self.files)
        if not self.is_serving:
            if self.cache is not None and self.site is not None:
                prune(self.cache, self.site.stored)
            log.info("%d pattern pages are on the site", len(self.expected))
        if self.whole is not None:
            self.whole.call_whole()

    def _options(self) -> SiteOptions:
        has_handouts = self.config.handouts == "always" or (self.config.handouts == "build" and not self.is_serving)
        return SiteOptions(
            folder=self.config.folder.strip("/"),
            papers=tuple(self.config.papers),
            editions=tuple(self.config.editions),
            has_handouts=has_handouts,
            language=self.config.language,
            has_author_guide=self.config.author_guide,
            has_paper_pictures=has_handouts,
            has_author_pages=self.config.author_pages == "always"
            or (self.config.author_pages == "serve" and self.is_serving),
        )

    def _tell(self, site: SiteFiles, config: MkDocsConfig) -> None:
        """Log every problem at its level; fail a strict build once, with the number of errors."""
        for problem in site.problems:
            level = log.error if problem.severity is Severity.ERROR else log.warning
            level("%s", show_problem(problem, site.sources))
        for note in site.notes:
            log.info("%s", note)
        count = len(site.errors)
        if count and not self.is_serving and (config.strict or self.config.strict):
            raise PluginError(f"{count} error{'s' if count > 1 else ''} in the patterns; each is named above")

    def _edit_url(self, made: SitePage, config: MkDocsConfig) -> str | None:
        """Return where the pattern file itself can be corrected, beside the folder that `edit_uri` names."""
        base = (config.edit_uri or "").rstrip("/")
        docs = os.path.basename(config.docs_dir)
        if not made.source or not config.repo_url or not base.endswith("/" + docs):
            return None
        file = Path(self.config.patterns, *Path(made.source).parts[-2:])
        root = Path(config.config_file_path or ".").absolute().parent
        try:
            path = file.absolute().relative_to(root).as_posix()
        except ValueError:
            return None
        return urljoin(config.repo_url.rstrip("/") + "/", base.removesuffix(docs) + quote(path))


def _names_the_guide(config: MkDocsConfig) -> bool:
    """Tell whether a site asks for the pages that teach: it names one of them in its navigation."""
    return config.nav is not None and any(is_named(config.nav, path) for path in guide_pages())


def _check_language(code: str) -> None:
    # The words are not needed for a site of which nothing changed, and take a while to load.
    from evenseam.wording import languages

    if code not in languages():
        known = ", ".join(languages())
        raise PluginError(f"mkdocs.yml: the plugin evenseam has no words for language {code!r}; it knows {known}")
