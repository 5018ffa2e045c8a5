"""`evenseam drawing`: what it prints, what it draws, how it ends."""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest
from evenseam.cli import main

PINWHEEL = """\
<svg xmlns="http://www.w3.org/2000/svg" viewBox="-5 -5 100 100">
<rect x="30" y="30" width="30" height="30" fill="#efc25e"/>
<polygon points="0,0 60,0 60,30 0,30" fill="#1f4a63"/>
<polygon points="60,0 90,0 90,60 60,60" fill="#7d8a93"/>
<polygon points="90,60 90,90 30,90 30,60" fill="#1f4a63"/>
<polygon points="0,30 30,30 30,90 0,90" fill="#7d8a93"/>
</svg>
"""
KETCH = Path(__file__).parent.parent.parent / "patterns" / "evening-ketch" / "ketch.svg"
SVG = "{http://www.w3.org/2000/svg}"


def written(folder: Path, text: str) -> str:
    path = folder / "block.svg"
    path.write_text(text, encoding="utf-8")
    return str(path)


def test_a_good_drawing_is_told_section_by_section(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["drawing", str(KETCH)]) == 0
    told = capsys.readouterr()
    assert told.err == ""
    assert "ketch: 12 pieces on a grid of 24 x 24, found from its corners" in told.out
    assert "sewn in 3 sections" in told.out
    assert "  A: A1 #f3e8d2, A2 #a8482e, A3 #3a3330, A4 #e9c7a5" in told.out
    assert "  join A+B and C: A+B+C" in told.out


def test_a_locked_drawing_is_freed_by_what_is_proposed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = written(tmp_path, PINWHEEL)
    assert main(["drawing", path, "--grid", "3x3"]) == 1
    told = capsys.readouterr()
    assert "error[block-locked]" in told.err
    proposed = re.search(r"in place of p\d \(line (\d)\D+ put\n((?:  <polygon.*>\n)+)", told.out)
    assert proposed is not None
    lines = PINWHEEL.splitlines()
    lines[int(proposed[1]) - 1] = proposed[2]
    assert main(["drawing", written(tmp_path, "\n".join(lines)), "--grid", "3x3"]) == 0
    assert "6 pieces" in capsys.readouterr().out


def test_the_picture_marks_what_is_wrong(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A gap, an overlap and a corner off the grid, each hatched or ringed, with its number and its words."""
    wrong = PINWHEEL.replace("60,60 60,60", "60,60").replace('x="30" y="30" width="30"', 'x="30" y="30" width="35"')
    picture = tmp_path / "marked.svg"
    assert main(["drawing", written(tmp_path, wrong), "--grid", "18x18", "--svg", str(picture)]) == 1
    root = ElementTree.fromstring(picture.read_text("utf-8"))
    texts = [element.text or "" for element in root.iter(f"{SVG}text")]
    assert "1" in texts and any("overlap by" in text for text in texts)
    strokes = [element.get("stroke") for element in root.iter(f"{SVG}path")]
    assert strokes.count("#c2001f") >= 2
    assert "1 in the picture: piece p3 and piece p1 overlap" in capsys.readouterr().out


def test_a_picture_is_the_same_every_time(tmp_path: Path) -> None:
    one, other = tmp_path / "one.svg", tmp_path / "other.svg"
    for path in (one, other):
        assert main(["drawing", str(KETCH), "--svg", str(path)]) == 0
    assert one.read_bytes() == other.read_bytes()


def test_png(tmp_path: Path) -> None:
    pytest.importorskip("cairosvg", exc_type=OSError)
    picture = tmp_path / "ketch.png"
    assert main(["drawing", str(KETCH), "--png", str(picture)]) == 0
    assert picture.read_bytes()[:8] == b"\x89PNG\r\n\x1a\n"


@pytest.mark.parametrize(("name", "status"), [("nothing-there.svg", 2), (".", 2)])
def test_what_cannot_be_opened(tmp_path: Path, name: str, status: int, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["drawing", str(tmp_path / name)]) == status
    assert "Traceback" not in capsys.readouterr().err


def test_a_bad_grid(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["drawing", str(KETCH), "--grid", "many"]) == 1
    assert "not-a-pair" in capsys.readouterr().err
