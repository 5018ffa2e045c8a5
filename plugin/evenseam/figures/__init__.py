"""From a sheet to pictures: drawn once, written in two themes (web and print)."""

from evenseam.figures.drawing import Drawing, Pen
from evenseam.figures.pictures import draw, picture_names
from evenseam.figures.svg import Theme, to_svg, web_styles

__all__ = ["Drawing", "Pen", "Theme", "draw", "picture_names", "to_svg", "web_styles"]
