"""One page of templates as a value, and as an SVG as large as the paper."""

from __future__ import annotations

from dataclasses import dataclass
from xml.sax.saxutils import escape

from evenseam.figures.drawing import Drawing
from evenseam.figures.palette import PRINT_FONT
from evenseam.figures.paper.exact_places import scaled
from evenseam.figures.paper.paper_size import Paper
from evenseam.figures.svg_ink import SvgInk, Theme

PLACES = 5
"""Decimals of coordinates: a ten-thousandth of a millimetre."""
POINTS_PER_INCH = 72


@dataclass(frozen=True, slots=True)
class PaperPage:
    """One sheet of paper: what is drawn on it in exact inches from its top left corner."""

    paper: Paper
    number: int
    """From 1."""
    count: int
    """Pages in all."""
    drawing: Drawing
    """Coordinates in inches; letters and line widths in points."""
    sections: tuple[str, ...]
    """What lies on it: Lantern A, Lantern B."""
    description: str
    """The same as a sentence."""
    title: str
    """For bookmarks and readers of the screen."""
    language: str
    """Code of the language of its words."""

    @property
    def width_points(self) -> float:
        """Width of the paper; 72 points are an inch."""
        return float(self.paper.width * POINTS_PER_INCH)

    @property
    def height_points(self) -> float:
        """Height of the paper."""
        return float(self.paper.height * POINTS_PER_INCH)

    @property
    def svg(self) -> str:
        """The page as an SVG as large as the paper."""
        return page_svg(self)


def page_svg(page: PaperPage) -> str:
    """Return a page as an SVG whose width, height and viewBox are in the same physical unit.

    One unit of the viewBox is one inch on Letter and one millimetre on A4, so whatever prints it at its own size
    prints it true to scale.
    """
    unit, factor = page.paper.svg_unit
    ink = SvgInk(Theme.PRINT, page.drawing.looks, "page", grain=float(factor) / POINTS_PER_INCH, places=PLACES)
    body = ink.shapes(scaled(shape, factor) for shape in page.drawing.shapes)
    width, height = ink.number(float(page.paper.width * factor)), ink.number(float(page.paper.height * factor))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" xml:lang="{page.language}" width="{width}{unit}" '
        f'height="{height}{unit}" viewBox="0 0 {width} {height}" font-family="{PRINT_FONT}">'
        f"<title>{escape(page.title)}</title><desc>{escape(page.description)}</desc>{body}</svg>"
    )
