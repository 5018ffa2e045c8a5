"""The pictures of a sheet as SVG texts, drawn once each, and as PNG where the cairo library is installed."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

from evenseam.figures import Drawing, Theme, draw, to_svg
from evenseam.figures.frame import Frame, rectangle
from evenseam.figures.in_words import in_words
from evenseam.figures.scenes.finished import HIGHEST
from evenseam.publish.html import Painter
from evenseam.publish.sheet_memory import SHEETS
from evenseam.sheet import PatternSheet
from evenseam.wording import BASE_LANGUAGE, language
from evenseam.wording.document import Picture

_SIZE = re.compile(r'<svg\b[^>]*?\bwidth="([\d.]+)"[^>]*?\bheight="([\d.]+)"')
CARD_WIDTH, CARD_HEIGHT = 1200, 630
"""Pixels: the size at which link previews show a picture."""


class SheetPictures:
    """Draws the pictures of one sheet, each only once for both themes."""

    def __init__(self, sheet: PatternSheet, code: str = BASE_LANGUAGE) -> None:
        self.sheet = sheet
        self.language = language(code)
        self._drawings: dict[str, Drawing] = {}

    def svg(self, name: str, theme: Theme, title: str, description: str, id_prefix: str) -> str:
        """Return one picture as SVG text."""
        key = ("svg", self.language.code, name, theme, title, description, id_prefix)
        return SHEETS.keep(self.sheet, key, lambda: to_svg(self.drawing(name), theme, title, description, id_prefix))

    def finished_alone(self, theme: Theme, title: str, description: str, id_prefix: str) -> str:
        """Return the finished piece without the list of its fabrics below it: for cards and previews."""
        sized = self.sheet.sized
        width, height = sized.finished_width.value, sized.finished_height.value
        frame = Frame.fitting(width, height, high=HIGHEST)
        inside = frame.polygon(rectangle(Fraction(0), Fraction(0), width, height))
        drawing = replace(self.drawing("finished"), frame=inside)
        return to_svg(drawing, theme, title, description, id_prefix)

    def painter(self, theme: Theme, page: str) -> Painter:
        """Return a painter for one page; its pictures' ids are told apart by the page's name and a number."""
        drawn: dict[Picture, str] = {}

        def paint(picture: Picture) -> str:
            if picture not in drawn:
                prefix = f"{page}-{len(drawn) + 1}"
                drawn[picture] = self.svg(picture.name, theme, picture.title, picture.description, prefix)
            return drawn[picture]

        return paint

    def drawing(self, name: str) -> Drawing:
        """Return one picture as it was drawn, before it is any kind of text."""
        if name not in self._drawings:
            drawn = SHEETS.keep(self.sheet, ("drawing", name), lambda: draw(self.sheet, name))
            self._drawings[name] = in_words(drawn, self.language.phrase)
        return self._drawings[name]


def size_of(svg: str) -> tuple[int, int]:
    """Return width and height of an SVG text in whole pixels, at least 1 each; 1 × 1 when it names none."""
    found = _SIZE.search(svg)
    return (max(1, round(float(found[1]))), max(1, round(float(found[2])))) if found else (1, 1)


def card_picture(svg: str, background: str) -> bytes:
    """Return a PNG for link previews: the picture in the middle of a plain ground. Needs cairo."""
    import cairosvg  # type: ignore[import-untyped]

    width, height = size_of(svg)
    scale = min((CARD_WIDTH - 80) / width, (CARD_HEIGHT - 80) / height)
    left, top = (CARD_WIDTH - width * scale) / 2, (CARD_HEIGHT - height * scale) / 2
    inner = svg.replace("<svg ", f'<svg x="{left / scale:.3f}" y="{top / scale:.3f}" ', 1)
    card = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{CARD_WIDTH}" height="{CARD_HEIGHT}" '
        f'viewBox="0 0 {CARD_WIDTH} {CARD_HEIGHT}"><rect width="{CARD_WIDTH}" height="{CARD_HEIGHT}" '
        f'fill="{background}"/><g transform="scale({scale:.5f})">{inner}</g></svg>'
    )
    png = cairosvg.svg2png(bytestring=card.encode(), unsafe=False)
    if not isinstance(png, bytes):
        raise TypeError("cairo gave no picture")
    return png
