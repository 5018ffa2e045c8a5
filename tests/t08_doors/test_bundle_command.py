"""`evenseam bundle`: its answers are plans that can be cut, and it says what more is needed."""

from __future__ import annotations

import json
from collections import Counter
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from evenseam.cli.main import main
from evenseam.exact import Unit, parse_length
from evenseam.publish.checked import check_pattern
from evenseam.publish.sources import find_patterns
from evenseam.sheet import PatternSheet

PATTERN = str(Path(__file__).parents[2] / "patterns" / "harbour-lanterns")


@pytest.fixture(scope="module")
def sheets() -> dict[str, PatternSheet]:
    (source,) = find_patterns(Path(PATTERN))
    return {sheet.project.size: sheet for sheet in check_pattern(source).sheets if sheet.project.unit is Unit.INCH}


def answer(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, dict[str, Any]]:
    status = main(["bundle", PATTERN, "--json", *words])
    return status, json.loads(capsys.readouterr().out)


def number(text: str) -> Fraction:
    value = parse_length(text).value
    assert isinstance(value, Fraction)
    return value


def test_every_piece_lies_on_its_fat_quarter_and_all_are_there(
    capsys: pytest.CaptureFixture[str], sheets: dict[str, PatternSheet]
) -> None:
    _, data = answer(capsys, "--pieces", "8")
    wide, high = (number(data["cloth"][side]) for side in ("width", "height"))
    assert (wide, high) == (21, 18), "What Are Fat Quarters and Fat Eighths?, American Patchwork & Quilting, 2017"
    assert [size["size"] for size in data["sizes"]] == list(sheets)
    for size in data["sizes"]:
        cuts = sheets[size["size"]].cuts
        for fabric in size["fabrics"]:
            assert len(fabric["cut_from"]) == fabric["pieces"]
            counts: Counter[str] = Counter()
            for cloth in fabric["cut_from"]:
                boxes = [tuple(number(one[side]) for side in ("x", "y", "width", "height")) for one in cloth]
                assert all(x >= 0 and y >= 0 and x + w <= wide and y + h <= high for x, y, w, h in boxes)
                for place, (x, y, w, h) in enumerate(boxes):
                    for ox, oy, ow, oh in boxes[:place]:
                        assert x + w <= ox or ox + ow <= x or y + h <= oy or oy + oh <= y
                counts.update(one["cut"] for one in cloth)
            for cut in cuts.of(fabric["fabric"]):
                if cut.part != "backing" and cut.join is None:
                    assert counts[cut.id] == cut.count.whole, cut.id


@pytest.mark.parametrize("pieces", [1, 6, 7, 18, 40])
def test_a_size_can_be_made_when_the_bundle_has_its_pieces(capsys: pytest.CaptureFixture[str], pieces: int) -> None:
    status, data = answer(capsys, "--pieces", str(pieces))
    for size in data["sizes"]:
        assert size["pieces"] == sum(fabric["pieces"] for fabric in size["fabrics"])
        assert size["is_enough"] == (size["pieces"] <= pieces)
        assert size["missing"] == max(0, size["pieces"] - pieces)
    assert status == (0 if any(size["is_enough"] for size in data["sizes"]) else 1)


def test_backing_batting_and_large_fabrics_are_bought_besides(
    capsys: pytest.CaptureFixture[str], sheets: dict[str, PatternSheet]
) -> None:
    _, data = answer(capsys, "--pieces", "8", "--cloth", "5 in squares")
    for size in data["sizes"]:
        from_bundle = {fabric["fabric"] for fabric in size["fabrics"]}
        also = {also["fabric"] for also in size["also"]}
        assert "batting" in also
        assert from_bundle | also == {material.material for material in sheets[size["size"]].materials}
        backing = {cut.material for cut in sheets[size["size"]].cuts.cuts if cut.part == "backing"}
        assert backing <= also
        for one in size["also"]:
            amount, unit = one["buy"].rsplit(" ", 1)
            assert unit == "yd" and number(amount) > 0


def test_the_text_names_each_size_its_pieces_and_what_more_is_needed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["bundle", PATTERN, "--pieces", "6"]) == 0
    text = capsys.readouterr().out
    assert "6 fat quarters, 18 × 21 in each" in text.splitlines()[0]
    assert "Mug rug: can be made from 6 fat quarters" in text
    assert "Lap quilt: cannot be made: takes 18 fat quarters, 12 more than the bundle has" in text
    assert "also needed" in text and "for the backing" in text and "the middle layer" in text
    assert "fat quarter 1: " in text


def test_the_other_edition_has_fat_quarters_of_its_own(capsys: pytest.CaptureFixture[str]) -> None:
    _, data = answer(capsys, "--pieces", "6", "--edition", "centimetres")
    assert data["unit"] == "cm" and (data["cloth"]["width"], data["cloth"]["height"]) == ("55", "50")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--pieces", "0"], "at least one piece"),
        (["--pieces", "3", "--cloth", "tea towel"], "there are: fat quarter, fat eighth"),
        (["--pieces", "3", "--cloth", "5 in square", "--edition", "centimetres"], "no piece of cloth is called"),
    ],
)
def test_what_cannot_be_asked_is_told_in_one_line(
    capsys: pytest.CaptureFixture[str], words: list[str], said: str
) -> None:
    assert main(["bundle", PATTERN, *words]) == 2
    error = capsys.readouterr().err
    assert said in error and error.count("\n") == 1
