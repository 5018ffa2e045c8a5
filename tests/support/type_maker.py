"""The typefaces of the pages, cut from the fonts of two packages: Latin letters only, under names of their own.

The licence (SIL Open Font License 1.1) reserves the name of the originals, so that what is changed must be called
otherwise; the copyright and the licence stay inside each file.
"""

from __future__ import annotations

import io
from pathlib import Path

import font_source_sans_pro
import font_source_serif_pro
from fontTools import subset
from fontTools.ttLib import TTFont

SANS = Path(font_source_sans_pro.__file__).parent / "files"
SERIF = Path(font_source_serif_pro.__file__).parent / "files"
FACES = {
    "text-regular.woff2": (SANS / "SourceSansPro-Regular.ttf", "Evenseam Text", "Regular"),
    "text-bold.woff2": (SANS / "SourceSansPro-Semibold.ttf", "Evenseam Text", "Bold"),
    "book-bold.woff2": (SERIF / "SourceSerifPro-Semibold.ttf", "Evenseam Book", "Bold"),
}
LETTERS = "".join(map(chr, (*range(0x20, 0x7F), *range(0xA0, 0x180)))) + "–—‘’‚“”„†•…‹›′″×÷−√½¼¾⅓⅔⅛⅜⅝⅞€←↑→↓✓≈≤≥"
FEATURES = ["kern", "mark", "ccmp", "locl", "lnum", "tnum"]
_COPYRIGHT, _FAMILY, _STYLE, _UNIQUE, _FULL, _VERSION, _POSTSCRIPT, _TRADEMARK = 0, 1, 2, 3, 4, 5, 6, 7


def make_face(name: str) -> bytes:
    """Return one face as WOFF2, the same bytes every time."""
    source, family, style = FACES[name]
    options = subset.Options()
    options.layout_features = FEATURES
    options.hinting = False
    options.name_IDs = [_COPYRIGHT, _FAMILY, _STYLE, _UNIQUE, _FULL, _VERSION, _POSTSCRIPT, 13, 14]
    options.name_languages = [0x409]
    options.notdef_outline = True
    options.recalc_timestamp = False
    font = TTFont(source, recalcTimestamp=False)
    cutter = subset.Subsetter(options)
    cutter.populate(text=LETTERS)
    cutter.subset(font)
    own = {_FAMILY: family, _STYLE: style, _UNIQUE: f"{family} {style}", _FULL: f"{family} {style}"}
    own[_POSTSCRIPT] = f"{family.replace(' ', '')}-{style}"
    for number, words in own.items():
        font["name"].setName(words, number, 3, 1, 0x409)
    font.flavor = "woff2"
    written = io.BytesIO()
    font.save(written, reorderTables=True)
    return written.getvalue()
