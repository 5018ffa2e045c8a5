"""A drawing as SVG text, in one of two themes: for the web, and for print.

The web theme puts every colour behind a custom property, so that dark mode and a reader's own fabrics need no new
picture. The print theme has literal colours and nothing but plain shapes, for programs that know no stylesheets.
"""

from __future__ import annotations

from xml.sax.saxutils import escape

from evenseam.figures.drawing import Drawing
from evenseam.figures.extent import Extent, extent_of
from evenseam.figures.palette import PRINT_FONT, web_styles
from evenseam.figures.svg_ink import SvgInk, Theme

__all__ = ["Theme", "to_svg", "web_styles"]

ROOM = 6.0
"""Empty room round a picture, in drawing units."""
ON_A_DESK = 1.3
"""Pixels of a wide screen for one drawing unit; where there is less room a page makes its pictures smaller."""


def to_svg(drawing: Drawing, theme: Theme, title: str, description: str, id_prefix: str) -> str:
    """Return a drawing as one SVG element with a title and a description that a screen reader reads.

    `id_prefix` must be unique on the page and fit for an id; all ids in the picture begin with it.
    """
    ink = SvgInk(theme, drawing.looks, id_prefix)
    body = ink.shapes(drawing.shapes)
    frame = drawing.frame.bounds if drawing.frame else None
    extent = Extent(*frame) if frame else extent_of(drawing.shapes).with_room(ROOM)
    left, top, width, height = (ink.number(n) for n in (extent.left, extent.top, extent.width, extent.height))
    scale = ON_A_DESK if theme is Theme.WEB else 1.0
    wide, high = (ink.number(side * scale) for side in (extent.width, extent.height))
    look = ' class="evenseam-figure"' if theme is Theme.WEB else f' font-family="{PRINT_FONT}"'
    definitions = ink.definitions()
    # The older name of the attribute: themes that swap pages set every plain `href` anew, which this element refuses.
    links = ' xmlns:xlink="http://www.w3.org/1999/xlink"' if "xlink:" in body else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg"{links} width="{wide}" height="{high}" '
        f'viewBox="{left} {top} {width} {height}" role="img" '
        f'aria-labelledby="{id_prefix}-title {id_prefix}-desc"{look}>'
        f'<title id="{id_prefix}-title">{escape(title)}</title>'
        f'<desc id="{id_prefix}-desc">{escape(description)}</desc>'
        f"{definitions}{body}</svg>"
    )
