"""Templates on true-scale paper: which sections lie where, and every line and word of each page."""

from evenseam.figures.paper.colouring import colouring_page
from evenseam.figures.paper.page import PaperPage, page_svg
from evenseam.figures.paper.pages import template_pages
from evenseam.figures.paper.paper_size import Paper
from evenseam.figures.paper.ruler_page import ruler_page

__all__ = ["Paper", "PaperPage", "colouring_page", "page_svg", "ruler_page", "template_pages"]
