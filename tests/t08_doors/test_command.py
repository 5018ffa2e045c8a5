"""The command line: what it prints, and its exit status."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from evenseam.cli import main

PROJECT = Path(__file__).parents[2]
PATTERN = """\
format: 1
title: Two Gulls
version: "1.0"
designer: Saltmarsh Workshop
fabrics:
  sky: {name: Rain Sky, colour: "#bcd3dc"}
  gull: {name: Gull White, colour: "#f6f3ea"}
blocks:
  gull:
    name: Gull
    finished size: 6 x 6
    grid: 6 x 6
    pieces:
      - sky: 0,0 6,0 0,6
      - gull: 6,0 6,6 0,6
arrangement: {rows: 1, columns: 2, block: gull}
borders:
  narrow border: {width: 1, fabric: sky}
finish: {kind: bound, backing: {fabric: sky}, binding: {fabric: gull}}
sizes:
  table mat: {}
"""


@pytest.fixture
def site(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "patterns" / "two-gulls"
    folder.mkdir(parents=True)
    (folder / "pattern.yaml").write_text(PATTERN, "utf-8")
    monkeypatch.chdir(tmp_path)
    return folder


def test_check_finds_nothing(site: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check"]) == 0
    assert "1 pattern, 1 sheet computed and sewn by the simulator: 0 errors, 0 warnings" in capsys.readouterr().out


def test_check_names_every_problem_at_its_place(site: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = site / "pattern.yaml"
    file.write_text(PATTERN.replace("width: 1,", "widht: 1,").replace("fabric: gull}", "fabric: gul}"), "utf-8")
    assert main(["check"]) == 1
    out = capsys.readouterr().out
    assert "patterns/two-gulls/pattern.yaml:18:19: error[unknown-key]" in out and "width" in out
    assert "patterns/two-gulls/pattern.yaml:19:65: error" in out and "hint" in out


def test_check_as_data(site: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (site / "pattern.yaml").write_text(PATTERN.replace("width: 1,", "widht: 1,"), "utf-8")
    assert main(["check", "--json"]) == 1
    (pattern,) = json.loads(capsys.readouterr().out)
    places = {(problem["code"], problem["line"], problem["column"]) for problem in pattern["problems"]}
    assert ("unknown-key", 18, 19) in places and not pattern["is_valid"]


@pytest.mark.parametrize(
    "words",
    [
        ["check", "nowhere"], ["sheet", "three-gulls", "--size", "table-mat"], ["sheet", "two-gulls", "--size", "bed"],
        ["why", "two-gulls", "--size", "table-mat", "weather"], ["sheet", "two-gulls", "--size", "table-mat", "--edition", "centimetres"],
        ["new", "Two Gulls"], ["new", "¿¡"],
    ],
)  # fmt: skip
def test_what_cannot_run_is_one_line_and_status_2(
    site: Path, words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(words) == 2
    error = capsys.readouterr().err
    assert error.startswith("evenseam: ") and error.count("\n") == 1


def test_a_misspelt_name_gets_its_neighbour(site: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", "two-guls", "--size", "table-mat"]) == 2
    assert "did you mean two-gulls?" in capsys.readouterr().err


def test_sheet_as_text_and_data(site: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", "two-gulls", "--size", "Table mat"]) == 0
    text = capsys.readouterr().out
    assert "finished size 14 1/2 × 8 1/2 in" in text
    assert main(["sheet", "two-gulls", "--size", "table-mat", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    # Bound: the finished size is the raw size of the top, 2 × 6 + 2 × 1 + two seam allowances of 1/4.
    assert data["finished"] == {"width": "14 1/2", "height": "8 1/2"}


def test_why_goes_down_to_the_line(site: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["why", "two-gulls", "--size", "table-mat", "finished", "width"]) == 0
    text = capsys.readouterr().out
    assert text.startswith("finished width: 14 1/2 in")
    assert "given in patterns/two-gulls/pattern.yaml:18:26" in text  # the border's width
    assert "given in patterns/two-gulls/pattern.yaml:11:20" in text  # the block's


def test_a_handout_is_written_whole(site: Path, tmp_path: Path) -> None:
    assert main(["handout", "two-gulls", "--size", "table-mat", "--paper", "a4", "--output", "out/mat.pdf"]) == 0
    content = (tmp_path / "out" / "mat.pdf").read_bytes()
    assert content.startswith(b"%PDF") and content.rstrip().endswith(b"%%EOF")
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["mat.pdf"]


def test_export_writes_the_whole_site(site: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["export", "out"]) == 0
    assert (tmp_path / "out" / "patterns" / "two-gulls" / "table-mat-inches.md").exists()
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "letter.txt").write_text("dear")
    assert main(["export", "mine"]) == 2
    assert (tmp_path / "mine" / "letter.txt").read_text() == "dear"


def test_a_new_pattern_has_no_problem(site: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", 'Winter Gulls: "early" #1']) == 0
    assert (site.parent / "winter-gulls-early-1" / "pattern.yaml").exists()
    assert main(["check"]) == 0


@pytest.mark.parametrize("pattern", sorted((PROJECT / "patterns").iterdir()), ids=lambda path: path.name)
def test_the_demo_patterns_have_no_problem(pattern: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(pattern)]) == 0
    assert ": 0 errors, 0 warnings" in capsys.readouterr().out
