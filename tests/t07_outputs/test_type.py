"""The typefaces of the pages: cut from pinned packages, free to use, light, and with every sign we print."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest
from evenseam.publish.type import FACES, type_files, type_styles
from fontTools.ttLib import TTFont
from pdfminer.fontmetrics import FONT_METRICS
from support import type_maker

FOLDER = Path(type_maker.__file__).parents[2] / "plugin" / "evenseam" / "publish" / "type"
ENGLISH = (
    "Fold the cloth and cut four strips across the width. Press the seam towards the darker fabric and measure the "
    "piece before you sew on."
)
"""A sentence of our own, as usual as any, to weigh letters by."""


def face(name):
    return TTFont(io.BytesIO((FOLDER / name).read_bytes()))


def test_all_faces_are_published():
    assert set(FACES) == set(type_maker.FACES) and len(type_files()) == 3
    assert set(re.findall(r'url\("type/([^"]+)"\)', type_styles())) == set(FACES)


@pytest.mark.parametrize("name", FACES)
def test_each_is_cut_from_its_package(name, update_golden):
    made = type_maker.make_face(name)
    if update_golden:
        (FOLDER / name).write_bytes(made)
    assert (FOLDER / name).read_bytes() == made


@pytest.mark.parametrize("name", FACES)
def test_each_has_every_sign_and_a_name_of_its_own(name):
    font = face(name)
    signs = {chr(code) for code in font.getBestCmap()}
    assert signs.issuperset("ABCXYZabcxyz0123456789×÷/′″½¼¾–—‘’“”…·éèüßøåñçŒœŠšŽž‹›")
    names = {record.nameID: str(record) for record in font["name"].names}
    # The licence (SIL OFL 1.1, condition 3) reserves the name of the original, and wants copyright and licence kept.
    assert all("Source" not in names[number] for number in (1, 2, 3, 4, 6))
    assert "Adobe" in names[0] and "Open Font License" in names[13]


def test_together_they_are_light():
    assert sum(len(content) for content in type_files().values()) < 60_000


@pytest.mark.parametrize(
    ("family", "weight", "name", "known"),
    [
        ("Evenseam Text before", "400", "text-regular.woff2", "Helvetica"),
        ("Evenseam Text before", "600 700", "text-bold.woff2", "Helvetica-Bold"),
        ("Evenseam Book before", "600 700", "book-bold.woff2", "Times-Bold"),
    ],
)
def test_what_stands_there_before_takes_as_much_room(family, weight, name, known):
    """Widths of the usual faces are those of the standard 14 fonts of PDF (Adobe font metrics, 1997)."""
    font = face(name)
    per_em, letters, widths = font["head"].unitsPerEm, font.getBestCmap(), font["hmtx"]
    ours = sum(widths[letters[ord(sign)]][0] for sign in ENGLISH) / per_em
    theirs = sum(FONT_METRICS[known][1][sign] for sign in ENGLISH) / 1000
    scale = ours / theirs
    rule = re.search(rf'font-family: "{family}"; font-weight: {weight};[^}}]*', type_styles())[0]
    told = {key: float(value) for key, value in re.findall(r"([a-z-]+): ([\d.]+)%", rule)}
    assert told["size-adjust"] == pytest.approx(100 * scale, abs=0.1)
    assert told["ascent-override"] == pytest.approx(100 * font["hhea"].ascent / per_em / scale, abs=0.1)
    assert told["descent-override"] == pytest.approx(-100 * font["hhea"].descent / per_em / scale, abs=0.1)
