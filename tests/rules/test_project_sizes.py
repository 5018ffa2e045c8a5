"""The library of usual sizes, against the published tables it was chosen from."""

from __future__ import annotations

from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import Assumed, Quantity
from evenseam.pattern.project_sizes import (
    USUAL_SIZES,
    known_names,
    over_a_mattress,
    sides_of,
    usual_drop,
    usual_size,
)


def _inches(value: int) -> Quantity:
    return Quantity("length", Fraction(value), Unit.INCH, Assumed("a sample"))


class TestMattresses:
    """Width × length, as they are sold."""

    @pytest.mark.parametrize(
        ("name", "width", "length"),
        [
            # "Standard Mattress Sizes", sewwhatquiltshop, 2010; Honey Be Good, 2012; delawarequilts; shopbedding.
            ("twin", 39, 75), ("twin XL", 39, 80), ("full", 54, 75), ("queen", 60, 80), ("king", 76, 80),
            ("California king", 72, 84),
        ],
    )  # fmt: skip
    def test_american(self, name: str, width: int, length: int) -> None:
        size = usual_size(name, Unit.INCH)
        assert size is not None and size.is_mattress
        assert (size.width, size.height) == (width, length)

    @pytest.mark.parametrize(
        ("name", "width", "length"),
        [
            # "Mattress & Bed Size Guide", Soak & Sleep; Barker and Stonehouse; Sleep and Snooze.
            ("cot", 60, 120), ("cot bed", 70, 140), ("small single", 75, 190), ("single", 90, 190),
            ("small double", 120, 190), ("double", 135, 190), ("king", 150, 200), ("super king", 180, 200),
            ("European single", 90, 200), ("European double", 140, 200), ("European king", 160, 200),
        ],
    )  # fmt: skip
    def test_european(self, name: str, width: int, length: int) -> None:
        size = usual_size(name, Unit.CENTIMETRE)
        assert size is not None and size.is_mattress
        assert (size.width, size.height) == (width, length)

    def test_names_do_not_translate(self) -> None:
        """The British king (150 cm) is about the American queen (60 in = 152.4 cm)."""
        british, american = usual_size("king", Unit.CENTIMETRE), usual_size("king", Unit.INCH)
        assert british is not None and american is not None
        assert british.unit is Unit.CENTIMETRE and american.unit is Unit.INCH
        assert american.width * Fraction(127, 50) - british.width > 40


class TestDrop:
    """A quilt is as wide as the mattress and two drops, and as long as the mattress and one."""

    @pytest.mark.parametrize(
        ("width", "length", "quilt"),
        [
            # "Standard Mattress Sizes", CIA's Palette (the twin), and compilations that repeat its rule.
            (39, 75, (63, 87)), (54, 75, (78, 87)), (60, 80, (84, 92)), (78, 80, (102, 92)), (72, 84, (96, 96)),
        ],
    )  # fmt: skip
    def test_published_rows_with_a_drop_of_twelve(self, width: int, length: int, quilt: tuple[int, int]) -> None:
        sides = over_a_mattress(_inches(width), _inches(length), _inches(12), None)
        assert tuple(side.value for side in sides) == quilt

    def test_usual_drop_is_the_published_one(self) -> None:
        queen = usual_size("queen", Unit.INCH)
        assert queen is not None
        assert usual_drop(queen).value == 12

    def test_a_tuck_goes_to_the_length(self) -> None:
        width, length = over_a_mattress(_inches(60), _inches(80), _inches(12), _inches(10))
        assert (width.value, length.value) == (84, 102)

    @pytest.mark.parametrize(
        ("name", "quilt"),
        [
            # "Common Quilt and Batting Sizes", Honey Be Good, 2012: approximate quilts, which hang 13 in.
            ("twin", (65, 88)), ("full", (80, 88)), ("queen", (86, 93)), ("king", (104, 93)),
        ],
    )  # fmt: skip
    def test_other_page_gives_nearly_the_same(self, name: str, quilt: tuple[int, int]) -> None:
        size = usual_size(name, Unit.INCH)
        assert size is not None
        width, length = over_a_mattress(*sides_of(size), usual_drop(size), None)
        assert abs(width.value - quilt[0]) <= 4 and abs(length.value - quilt[1]) <= 1


class TestOtherSizes:
    """Everything else lies within what is published."""

    @pytest.mark.parametrize(
        ("name", "widths", "heights"),
        [
            # "What is a mug rug?", Patchwork Posse: 5 × 7 to 6 × 10; Judy's: 6 × 8.
            ("mug rug", (7, 10), (5, 6)),
            # 52quilts, 2012 (8 1/2 cut); Craft Cotton Co; Janome; thebusybhive: 6 to 9 1/2.
            ("pot holder", (6, 10), (6, 10)),
            # "Quilt-as-you-go place mat", American Patchwork & Quilting, 2017: 18 × 12; Manchester Quilters: 11-12 × 15-18.
            ("place mat", (15, 18), (11, 14)),
            # "Standard quilt sizes", Manchester Quilters: runners 12-18 × 40-72, toppers 36 × 36, throws 50-52 × 72-78.
            ("table runner", (40, 72), (12, 18)), ("table topper", (36, 36), (36, 36)), ("throw", (50, 52), (72, 78)),
            # "Quilt Size Reference Chart", thequiltinggarden, 2010: crib 36 × 46 to 36 × 60, baby 36 × 36 to 52 × 52.
            ("cot", (36, 36), (46, 60)), ("baby", (36, 52), (36, 52)),
            # "Quilt measurements", quilterspantry, 2011: lap 60 × 72.
            ("lap", (60, 60), (72, 72)),
        ],
    )  # fmt: skip
    def test_within_the_published_range(self, name: str, widths: tuple[int, int], heights: tuple[int, int]) -> None:
        size = usual_size(name, Unit.INCH)
        assert size is not None
        assert widths[0] <= size.width <= widths[1]
        assert heights[0] <= size.height <= heights[1]


class TestLibrary:
    """What the library promises to whoever reads it."""

    def test_every_entry_names_where_it_is_from(self) -> None:
        assert all(size.source and size.width > 0 and size.height > 0 for size in USUAL_SIZES)

    def test_a_name_is_found_in_any_writing(self) -> None:
        found = usual_size(" Table  RUNNER ", Unit.INCH)
        assert found is not None and found.name == "table runner"
        assert usual_size("double", Unit.INCH) is usual_size("double", Unit.CENTIMETRE)
        assert usual_size("hammock", Unit.INCH) is None

    def test_no_name_twice_in_a_unit(self) -> None:
        keys = [(size.name, size.unit) for size in USUAL_SIZES]
        assert len(set(keys)) == len(keys)
        assert len(known_names()) == len({name for name, _ in keys})

    def test_where_sources_differ_the_choice_is_said(self) -> None:
        for name in ("king", "twin", "mug rug", "cot"):
            size = usual_size(name, Unit.INCH)
            assert size is not None and size.choice
            because = sides_of(size)[0].because
            assert isinstance(because, Assumed) and size.choice in because.reason
