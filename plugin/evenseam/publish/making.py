"""One pattern folder to everything that a site shows of it, kept in the cache."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TypeAlias

from evenseam.figures import Theme
from evenseam.figures.paper import Paper, PaperPage, colouring_page, template_pages
from evenseam.pattern import Pattern
from evenseam.problems import Outcome, Place, Problem, Report
from evenseam.publish import author_page
from evenseam.publish.author_page import SizeForAuthor, write_author_page
from evenseam.publish.cache import Cache, key_of
from evenseam.publish.cairo import has_cairo
from evenseam.publish.checked import CheckedPattern, check_pattern
from evenseam.publish.codes import PATTERN_NOT_MADE
from evenseam.publish.contents import ContentsEntry
from evenseam.publish.corrections import make_corrections, write_corrections
from evenseam.publish.entry import MadeFile, MadePage, MadePattern, MadeSize, as_text
from evenseam.publish.filing import is_cut_from_fat_quarters, method_words
from evenseam.publish.handout import HandoutFrame, handout_data, set_handout
from evenseam.publish.handout_corrections import with_corrections
from evenseam.publish.html import Painter
from evenseam.publish.json_lines import in_lines
from evenseam.publish.options import EDITION_WORDS, SiteOptions, edition_of
from evenseam.publish.paper_pdf import templates_pdf
from evenseam.publish.pattern_pages import (
    OVERVIEW_CONTENTS,
    Download,
    SizeRow,
    author_link,
    finished_size,
    write_overview,
    write_size_page,
)
from evenseam.publish.pictures import SheetPictures, card_picture, size_of
from evenseam.publish.problem_page import write_problems
from evenseam.publish.recalling import key_of_pattern
from evenseam.publish.sheet_handout import sheet_frame, titled_document
from evenseam.publish.silhouette import extent_in_inches
from evenseam.publish.size_text import SizeText, write_size_text
from evenseam.publish.sources import PatternSource
from evenseam.review import Correction
from evenseam.sheet import PatternSheet, sheet_as_json
from evenseam.wording import Language, language
from evenseam.wording.document import Document

CARD_GROUND = "#eef2f3"
Contents: TypeAlias = tuple[ContentsEntry, ...]
PAPER_NAMES = {"letter": "Letter", "a4": "A4"}


def make_pattern(source: PatternSource, options: SiteOptions, cache: Cache) -> MadePattern:
    """Read, compute and write one pattern. A pattern with errors becomes one page that names them."""
    checked = check_pattern(source)
    made = _Maker(source, checked, options, cache).make() if checked.is_valid and checked.sheets else None
    if made is None or not made.is_published:
        made = _unpublished(checked, made.problems if made else checked.problems, options, cache)
    cache.note(key_of_pattern(source, options), as_text(made))
    return made


def make_failed(source: PatternSource, reason: str, options: SiteOptions, cache: Cache) -> MadePattern:
    """Return the one page of a pattern on which the publisher itself failed. It is tried anew at the next build."""
    texts = {text.name: text for text in (source.source, *source.drawings.values())}
    problem = Problem(
        PATTERN_NOT_MADE,
        f"the publisher failed on this pattern: {reason}",
        Place(source.source.name, 1, 1, 1, 1),
        "this is no mistake of yours; report it together with the pattern file",
    )
    problems = (*source.problems, problem)
    return _unpublished(CheckedPattern(source.slug, None, (), problems, texts), problems, options, cache)


def _unpublished(
    checked: CheckedPattern, problems: tuple[Problem, ...], options: SiteOptions, cache: Cache
) -> MadePattern:
    title = checked.pattern.title if checked.pattern else checked.slug
    path = f"{options.folder}/{checked.slug}/index.md"
    body = write_problems(title, problems, checked.sources)
    source = next(iter(checked.sources), "")
    page = MadePage(
        path,
        title,
        title,
        f"{title} is not published yet.",
        (),
        cache.keep(body.encode()),
        source,
        "",
        is_searched=False,
    )
    return MadePattern(checked.slug, title, "", "", "", path, "", (1, 1), (), (page,), (), problems, is_published=False)


@dataclass(slots=True)
class _Size:
    """A sheet on its way to its page."""

    sheet: PatternSheet
    pictures: SheetPictures
    document: Document
    made: MadeSize
    written: SizeText
    print_painter: Painter
    picture: str
    picture_size: tuple[int, int]
    downloads: list[Download] = field(default_factory=list)

    @property
    def name(self) -> str:
        return f"{self.made.size}-{self.made.edition}"

    @property
    def row(self) -> SizeRow:
        sized = self.sheet.sized
        extent = extent_in_inches(sized.finished_width, sized.finished_height)
        return SizeRow(self.made, self.picture, self.picture_size, tuple(self.downloads), extent)


@dataclass(slots=True)
class _Maker:
    source: PatternSource
    checked: CheckedPattern
    options: SiteOptions
    cache: Cache
    files: list[MadeFile] = field(default_factory=list)
    report: Report = field(default_factory=Report)
    listed: tuple[Correction, ...] | None = None

    @property
    def words(self) -> Language:
        return language(self.options.language)

    def make(self) -> MadePattern | None:
        self.report.problems += self.checked.problems
        wanted = [sheet for sheet in self.checked.sheets if sheet.project.unit in self.options.units]
        sizes = [size for sheet in wanted if (size := self.written(sheet)) is not None]
        for size in sizes:
            self.add_files(size)
        pattern = self.checked.pattern
        if pattern is None or not sizes:
            return None
        hero = sizes[0]
        card = self.card_of(hero)
        rows = [size.row for size in sizes]
        pages = [self.overview(pattern, hero, rows, card), *(self.size_page(size, rows, card) for size in sizes)]
        if self.options.has_author_pages:
            pages.append(self.author_page(pattern, sizes))
        return MadePattern(
            pattern.slug, pattern.title, pattern.summary, pattern.skill_level, pattern.version, pages[0].path,
            hero.picture, hero.picture_size,
            tuple(size.made for size in sizes), tuple(pages), tuple(self.files), self.report.as_tuple(),
            is_published=not self.report.has_errors(),
            methods=method_words((size.sheet for size in sizes), self.words),
            fits_fat_quarters=any(is_cut_from_fat_quarters(size.sheet) for size in sizes),
            designer=pattern.designer,
            changes=tuple((change.version, change.date, change.what) for change in pattern.changes),
        )  # fmt: skip

    def written(self, sheet: PatternSheet) -> _Size | None:
        outcome = titled_document(sheet, self.options.language)
        self.report.problems += outcome.problems
        if outcome.value is None:
            return None
        project = sheet.project
        edition = edition_of(project.unit)
        name = f"{project.size}-{edition}"
        pictures = SheetPictures(sheet, self.options.language)
        finished, said = finished_size(sheet, self.words), self.words.word("page", EDITION_WORDS[edition])
        made = MadeSize(project.size, project.name, edition, finished, self.path(f"{name}.md"), said)
        text = write_size_text(pictures, outcome.value, name)
        title = f"{sheet.pattern.title}: {project.name}"
        about = self.words.fill("page", "finished_picture", title=title)
        alone = pictures.finished_alone(Theme.PRINT, title, about, "finished")
        picture = self.keep(f"{name}.svg", alone.encode())
        painter = pictures.painter(Theme.PRINT, name)
        return _Size(sheet, pictures, outcome.value, made, text, painter, picture, size_of(alone))

    def add_files(self, size: _Size) -> None:
        if self.options.has_handouts:
            for paper in self.options.papers:
                self.add_handout(size, paper)
            self.add_colouring(size)
        data = in_lines(sheet_as_json(size.sheet))
        self.add(size, "figures", "JSON", f"{size.name}.json", data.encode())

    def add_handout(self, size: _Size, paper: str) -> None:
        sheets = template_pages(size.sheet, Paper(paper), self.words)
        frame = sheet_frame(size.sheet, paper, self.options.language)
        document = with_corrections(size.document, self.corrections(), size.sheet, self.words)
        outcome = self.set_once(handout_data(document, frame, size.print_painter, sheets), frame)
        self.report.problems += outcome.problems
        if outcome.value is not None:
            self.add(size, "handout", PAPER_NAMES[paper], f"{size.name}-{paper}.pdf", outcome.value)
        if sheets and self.options.has_paper_pictures and has_cairo():
            self.add_templates(size, paper, sheets)

    def add_templates(self, size: _Size, paper: str, sheets: tuple[PaperPage, ...]) -> None:
        self.add(
            size,
            "templates_only",
            PAPER_NAMES[paper],
            f"{size.name}-templates-{paper}.pdf",
            templates_pdf(sheets, self.words.word("paper", "templates")),
        )

    def add_colouring(self, size: _Size) -> None:
        """Add the sheet to try colours on: a picture, and a page to print where cairo is installed."""
        pages = {paper: colouring_page(size.sheet, Paper(paper), self.words) for paper in self.options.papers}
        if self.options.has_paper_pictures and has_cairo():
            for paper, page in pages.items():
                content = templates_pdf((page,), page.title)
                self.add(size, "coloring", PAPER_NAMES[paper], f"{size.name}-colouring-{paper}.pdf", content)
        if pages:
            picture = next(iter(pages.values())).svg
            self.add(size, "coloring", "SVG", f"{size.name}-colouring.svg", picture.encode())

    def corrections(self) -> tuple[Correction, ...]:
        """Return what differs between the versions of the pattern; it is computed once."""
        if self.listed is None:
            self.listed = make_corrections(self.source, self.checked, self.cache, self.words)
        return self.listed

    def set_once(self, data: str, frame: HandoutFrame) -> Outcome[bytes]:
        """Return a handout, from the cache when exactly this one was set before."""
        key = key_of("handout", data)
        name = self.cache.noted(key)
        if name is not None and self.cache.is_sound(name):
            return Outcome(self.cache.path(name).read_bytes())
        outcome = set_handout(data, frame.place)
        if outcome.value is not None:
            self.cache.note(key, self.cache.keep(outcome.value))
        return outcome

    def card_of(self, hero: _Size) -> str:
        """Keep the picture for link previews; return its path, empty without cairo."""
        if not (self.options.has_paper_pictures and has_cairo()):
            return ""
        svg = hero.pictures.finished_alone(Theme.PRINT, "", "", "card")
        return self.keep("card.png", card_picture(svg, CARD_GROUND))

    def overview(self, pattern: Pattern, hero: _Size, rows: list[SizeRow], card: str) -> MadePage:
        title = self.title_of(hero)
        svg = hero.pictures.svg(
            "finished", Theme.WEB, title, self.words.fill("page", "finished_picture", title=title), "hero"
        )
        notes = () if self.options.has_handouts else (self.words.word("page", "no_handouts"),)
        corrections = write_corrections(self.corrections(), self.words)
        body = write_overview(
            pattern, svg, hero.sheet.project.fabrics, rows, notes, corrections, self.words, self.author_link("")
        )
        contents = tuple(
            ContentsEntry(2, id, self.words.word(table, key))
            for id, table, key in OVERVIEW_CONTENTS
            if f'id="{id}"' in body
        )
        return self.page("index.md", pattern.title, pattern.title, pattern.summary, body, contents, card)

    def size_page(self, size: _Size, rows: list[SizeRow], card: str) -> MadePage:
        title = size.document.title
        text, more = size.written.text, size.written.more_figures
        body = write_size_page(
            title,
            size.document.subtitle,
            self.words,
            text,
            size.sheet,
            size.made,
            rows,
            more,
            self.author_link(size.name),
        )
        description = self.words.fill("page", "size_about", title=self.title_of(size), finished=size.made.finished)
        short = self.short_title_of(size)
        # Another edition says the same in other figures: found once is enough.
        is_searched = size.sheet.project.unit is size.sheet.pattern.units[0]
        made = self.page(f"{size.name}.md", self.title_of(size), short, description, body, text.contents, card)
        return replace(made, is_searched=is_searched)

    def author_page(self, pattern: Pattern, sizes: list[_Size]) -> MadePage:
        rows = [SizeForAuthor(size.sheet, size.name, self.short_title_of(size), size.made.page) for size in sizes]
        problems = self.report.as_tuple()
        written = write_author_page(pattern.title, problems, self.checked.sources, self.checked.claims, rows)
        about = f"What stands behind the pages of {pattern.title}."
        made = self.page(author_page.FILE, f"{pattern.title}: for the author", author_page.TITLE, about, written.body,
                         written.contents, "")  # fmt: skip
        return replace(made, is_searched=False)

    def author_link(self, anchor: str) -> str:
        if not self.options.has_author_pages:
            return ""
        return author_link(self.path(author_page.FILE), anchor, len(self.report.as_tuple()))

    def page(
        self, name: str, title: str, short: str, description: str, body: str, contents: Contents, card: str
    ) -> MadePage:
        source = next(iter(self.checked.sources), "")
        stored = self.cache.keep(body.encode())
        return MadePage(self.path(name), title, short, description, contents, stored, source, card)

    def title_of(self, size: _Size) -> str:
        return f"{size.sheet.pattern.title}: {self.short_title_of(size)}"

    def short_title_of(self, size: _Size) -> str:
        edition = f" ({size.made.edition_words})" if len(size.sheet.pattern.units) > 1 else ""
        return size.made.name + edition

    def add(self, size: _Size, kind: str, form: str, name: str, content: bytes) -> None:
        """Add a file to those of a size; `kind` is where the language has the words for what it is."""
        size.downloads.append(Download(self.words.word("page", kind), form, self.keep(name, content)))

    def keep(self, name: str, content: bytes) -> str:
        """Keep a file of the pattern and return its path on the site."""
        path = self.path(name)
        self.files.append(MadeFile(path, self.cache.keep(content)))
        return path

    def path(self, name: str) -> str:
        return f"{self.options.folder}/{self.checked.slug}/{name}"
