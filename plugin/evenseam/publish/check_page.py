"""How to print templates at full size: a page with what the test marks must measure, and rulers to print."""

from __future__ import annotations

from evenseam.figures.paper import Paper, ruler_page
from evenseam.publish.cache import Cache
from evenseam.publish.cairo import has_cairo
from evenseam.publish.entry import MadeFile, MadePage, MadePattern
from evenseam.publish.html import write_html
from evenseam.publish.html_text import escape, without_blank_lines
from evenseam.publish.options import SiteOptions
from evenseam.publish.paper_pdf import templates_pdf
from evenseam.publish.site_files import CHECK_PAGE, site_link
from evenseam.wording import Words, language
from evenseam.wording.document import Document, Picture
from evenseam.wording.tree import parse_ours

PAPER_NAMES = {"letter": "Letter", "a4": "A4"}


def make_check_page(options: SiteOptions, cache: Cache) -> MadePattern:
    """Return the page and its files, in the form in which a pattern's parts are kept."""
    words = language(options.language)
    files = _rulers(options, cache, words)
    title, about = words.word("page", "check_title"), words.word("page", "check_about")
    figures = {
        "six_inches": "6 in", "quarter_inch": "1/4 in", "letter_size": "8 1/2 × 11 in", "a4_size": "210 × 297 mm",
        "one_inch": "1 in", "two_centimeters": "2 cm", "two_inches": "2 in", "five_centimeters": "5 cm",
    }  # fmt: skip
    blocks = parse_ours(
        words.write("pages/check_templates", {name: words.figure(text) for name, text in figures.items()})
    )
    text = write_html(Document(title, "", blocks), _no_picture, words)
    links = "".join(
        f'<a class="download" href="{site_link(file.path)}" aria-label="{escape(words.word("page", "rulers"))}, '
        f'{escape(form)}">{escape(form)}</a>'
        for file, form in files
    )
    rulers = (
        f'<ul class="downloads" data-search-exclude><li><span class="download-kind">'
        f"{escape(words.word('page', 'rulers'))}</span> {links}</li></ul>"
    )
    body = without_blank_lines(
        f'<div class="pattern-page" lang="{words.code}">\n<h1>{escape(title)}</h1>\n'
        f'<p class="subtitle">{escape(about)}</p>\n{rulers}\n'
        f"{text.body}\n</div>"
    )
    page = MadePage(CHECK_PAGE, title, title, about, text.contents, cache.keep(body.encode()), "", "")
    made = tuple(file for file, _ in files)
    return MadePattern("", "", "", "", "", CHECK_PAGE, "", (1, 1), (), (page,), made, (), is_published=True)


def _rulers(options: SiteOptions, cache: Cache, words: Words) -> list[tuple[MadeFile, str]]:
    """Return the rulers for each paper: as PDF where cairo is installed, else as pictures, which print as well."""
    files: list[tuple[MadeFile, str]] = []
    for paper in options.papers:
        page = ruler_page(Paper(paper), words)
        is_pdf = options.has_handouts and options.has_paper_pictures and has_cairo()
        content = templates_pdf((page,), page.title) if is_pdf else page.svg.encode()
        path = f"{CHECK_PAGE.removesuffix('.md')}-{paper}.{'pdf' if is_pdf else 'svg'}"
        form = f"{PAPER_NAMES[paper]}, {'PDF' if is_pdf else 'SVG'}"
        files.append((MadeFile(path, cache.keep(content)), form))
    return files


def _no_picture(picture: Picture) -> str:
    raise ValueError(f"the page about printing has no picture, and so no {picture.name}")
