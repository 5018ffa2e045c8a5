"""The colours of everything that is not fabric, literal for print and as custom properties for the web."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.figures.colour import Colour
from evenseam.figures.drawing import Ink, Stroke, Tone

PRINT_FONT = "DejaVu Sans, Liberation Sans, sans-serif"
WEB_FONT = "'Evenseam Text', system-ui, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif"

HALO: Colour = "#fffaf0"
"""Under every line that may cross a dark fabric."""
DEEP: Colour = "#3a2e27"
"""Lines over a halo."""
SOFT: Colour = "#6b5c51"
"""Quiet lines over a halo."""
RUST: Colour = "#a8431f"
"""What this step is about: its seam, its arrows."""


@dataclass(frozen=True, slots=True)
class Shade:
    """One colour of a page in daylight and after dark."""

    name: str
    light: Colour
    dark: Colour

    @property
    def on_web(self) -> str:
        """The colour as a custom property with its daylight value behind it."""
        return f"var(--figure-{self.name},{self.light})"


INK = Shade("ink", "#3a2e27", "#efe5d6")
QUIET = Shade("quiet", "#6b5c51", "#bcae9d")
ACCENT = Shade("accent", "#a8431f", "#f2a685")
GROUND = Shade("ground", "#ffffff", "#1e2129")
BOARD = Shade("board", "#f1ebe0", "#2d313c")
SHADES = (INK, QUIET, ACCENT, GROUND, BOARD)

INKS: dict[Ink, Colour | Shade] = {Ink.PLAIN: INK, Ink.QUIET: QUIET, Ink.ACCENT: ACCENT, Ink.ON_PAPER: DEEP}


@dataclass(frozen=True, slots=True)
class StrokeLook:
    """How a line is drawn, in drawing units."""

    colour: Colour | Shade
    width: float
    dashes: tuple[float, ...] = ()
    halo: float = 0.0
    """Width of the pale line under it; 0 for none."""


STROKES = {
    Stroke.EDGE: StrokeLook(INK, 1.0),
    Stroke.SEAM: StrokeLook(DEEP, 0.9, (4, 2.6), 2.2),
    Stroke.STITCH: StrokeLook(DEEP, 1.3, (3.2, 2.4), 2.6),
    Stroke.QUILTING: StrokeLook(DEEP, 0.8, (3, 2.2), 1.5),
    Stroke.LEADER: StrokeLook(DEEP, 0.8, (), 2.0),
    Stroke.MARK: StrokeLook(DEEP, 0.8),
    Stroke.FOLD: StrokeLook(DEEP, 0.9, (7, 2.4, 1.4, 2.4), 2.2),
    Stroke.CUT: StrokeLook(DEEP, 1.8, (), 3.4),
    Stroke.HELP: StrokeLook(SOFT, 0.8, (2, 2), 2.0),
    Stroke.SEWN: StrokeLook(RUST, 1.9, (5, 3), 3.8),
    Stroke.CUTTING_LINE: StrokeLook(DEEP, 1.1, (5, 2.5)),
    Stroke.SEWING_LINE: StrokeLook(DEEP, 1.1),
}


@dataclass(frozen=True, slots=True)
class ToneLook:
    """How an area that is not fabric is drawn."""

    fill: Colour | Shade | None
    line: Colour | Shade
    mark: Colour | Shade
    width: float = 1.0
    opacity: float = 1.0


TONES = {
    Tone.BATTING: ToneLook("#f6efdf", "#85745f", "#a8977e"),
    Tone.PAPER: ToneLook("#fffdf8", "#6b5c51", "#6b5c51"),
    Tone.LEFTOVER: ToneLook(None, QUIET, QUIET, 0.7),
    Tone.BOARD: ToneLook(BOARD, BOARD, BOARD, 0.0),
    Tone.RULER: ToneLook("#fffdf8", DEEP, DEEP, 1.0, 0.82),
    Tone.DOT: ToneLook(RUST, HALO, RUST, 1.2),
}


def literal(colour: Colour | Shade) -> Colour:
    """Return the colour for print."""
    return colour if isinstance(colour, str) else colour.light


def on_web(colour: Colour | Shade) -> str:
    """Return the colour for the web."""
    return colour if isinstance(colour, str) else colour.on_web


def web_styles() -> str:
    """Return the stylesheet that pictures in the web theme need once on a page.

    A reader's own fabrics are put in place of the pattern's by setting, on anything round the picture,
    `--fabric-ID` (right side), `--fabric-ID-ink`, `--fabric-ID-line`, `--fabric-ID-mark`, and the same four with
    `--fabric-ID-wrong` for the wrong side (`--fabric-ID-wrong`, `--fabric-ID-wrong-ink`, …).
    """
    light = "".join(f"--figure-{shade.name}:{shade.light};" for shade in SHADES)
    dark = "".join(f"--figure-{shade.name}:{shade.dark};" for shade in SHADES)
    return f"""\
.evenseam-figure{{max-width:100%;height:auto;font-family:{WEB_FONT};{light}}}
[data-md-color-scheme="slate"] .evenseam-figure{{{dark}}}
@media (prefers-color-scheme:dark){{:root:not(:has([data-md-color-scheme])) .evenseam-figure{{{dark}}}}}
@media print{{:root:root .evenseam-figure{{{light}break-inside:avoid}}}}
"""
