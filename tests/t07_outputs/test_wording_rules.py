"""What a maker must be told, rule by rule of the trade."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.cutting import CuttingLine, CuttingPlan, JoinedPieces, SubcutLine
from evenseam.exact import Unit, format_length
from evenseam.pattern import Grain, Project, StripDirection, StripJoin
from evenseam.sheet import PatternSheet, compute_sheet
from evenseam.wording import write_document
from evenseam.wording.cautions import caution_names
from evenseam.wording.document import Caution, StepBlock
from evenseam.wording.working_figures import binding_ends, seam_test
from support.document_words import as_text
from support.samples import BOUND, LAP_QUILT, MUG_RUG, PATTERN, POCKETS, WALL_HANGING, length


def sheet_of(project: Project) -> PatternSheet:
    sheet = compute_sheet(replace(PATTERN, projects=(project,)), project).value
    assert sheet is not None
    return sheet


def text_of(sheet: PatternSheet) -> str:
    document = write_document(sheet).value
    assert document is not None
    return as_text(document)


MUG_RUG_TEXT = text_of(sheet_of(MUG_RUG))
WALL_TEXT = text_of(sheet_of(WALL_HANGING))
LAP_TEXT = text_of(sheet_of(LAP_QUILT))


class TestSeamTest:
    """Sewn strips measure (cut - 2 seams) × number + 2 seams."""

    @pytest.mark.parametrize(
        ("seam", "unit", "middle", "whole"),
        [
            # Quilted Connections, What is a scant 1/4 seam: three strips 1 1/2 x 3 1/2 give 1 in the middle, 3 1/2 in all.
            ("1/4", Unit.INCH, "1 in", "3 1/2 in"),
            # By the same rule; no published table.
            ("3/8", Unit.INCH, "3/4 in", "3 in"),
            ("3/4", Unit.CENTIMETRE, "2.5 cm", "9 cm"),
            ("3/5", Unit.CENTIMETRE, "2.8 cm", "9.6 cm"),
        ],
    )
    def test_middle_and_whole(self, seam: str, unit: Unit, middle: str, whole: str) -> None:
        test = seam_test(length("seam allowance", seam, unit))
        assert (test.middle.text, test.whole.text) == (middle, whole)


class TestBindingEnds:
    """Tails and gap fit the piece: published gaps are 6 to 15 in (Quiltmaker; lizquiltz, 2008), tails 4 to 12 in."""

    @pytest.mark.parametrize(
        ("width", "height"), [("6", "9"), ("8 1/2", "8 1/2"), ("12", "18"), ("30", "19"), ("60", "80")]
    )
    def test_gap_and_tails_go_together(self, width: str, height: str) -> None:
        strip = length("strip", "2 1/4")
        ends = binding_ends(length("w", width), length("h", height), strip)
        longer = max(length("w", width).value, length("h", height).value)
        assert ends.gap.value <= longer
        assert 4 <= ends.gap.value <= 15
        assert 4 <= ends.tail.value <= 12
        # The tails meet, overlap by the strip's width, and leave something to hold.
        assert 2 * ends.tail.value >= ends.gap.value + strip.value


class TestWhatIsSaid:
    """The sentences that keep a beginner out of trouble."""

    @pytest.mark.parametrize(
        "words",
        [
            "Every seam is 1/4 in wide",
            "every cut size includes it",
            "planned on 42 in of usable width",
            "about 1.5 mm long, and a 90/14 needle",  # FM Quilters guild; Kona Bay Fabric Vine, 2014
            "mirror image",
            "include the seam allowance of 1/4 in",
            "never “fit to page”",
            "Press, do not iron",
            "through the middle",  # From My Carolina Home, Another Lesson on Measuring Borders, 2017
            "Clip each corner",
            "mark an opening of 4 in",
            "The backing reaches 1 in past it on every side (cut 10 1/2 × 13 1/2 in)",
            "This line also closes the opening",
        ],
    )
    def test_turned_piece(self, words: str) -> None:
        assert words in MUG_RUG_TEXT

    @pytest.mark.parametrize(
        "words",
        [
            "the backing reaches 2 in past the top on every side (33 1/2 × 22 1/2 in over all)",
            "overlap by 2 1/4 in, the width of the strip before folding",  # angiequilts, Brilliant Binding
            "Start in the middle of one side, never at a corner",
            "Sew with a 1/4 in seam. Stop 1/4 in before the corner",
            "Turn 1 1/2 in under at each short end",  # International Quilt Association, Instructions for Making Sleeves
            "Your sleeve now measures 28 1/2 × 4 in",
            "1 in below the top edge",
            "Reed Print is a one-way print",
        ],
    )
    def test_bound_piece_with_sleeve(self, words: str) -> None:
        assert words in WALL_TEXT

    def test_pockets_go_on_before_the_edge_is_finished(self) -> None:
        for finish in (MUG_RUG.finish, BOUND):
            text = text_of(sheet_of(replace(MUG_RUG, finish=finish, hanging=POCKETS)))
            edge = "Sew all the way round the top" if finish is MUG_RUG.finish else "Fold the binding over"
            assert text.index("Lay one triangle in each top corner") < text.index(edge)
            assert ("Lay the corner pockets round to the back" in text) is (finish is MUG_RUG.finish)

    def test_paper_piecing_is_taught_once(self) -> None:
        assert LAP_TEXT.count("Turn the paper over. Sew on the printed line") == 1
        assert "Work as in step 1" in LAP_TEXT

    def test_repeats_are_told(self) -> None:
        assert "Make 20 of these." in LAP_TEXT
        assert "Make four of these." in LAP_TEXT
        assert "Do this 20 times, once for each block." in LAP_TEXT


class TestCautions:
    """The usual cautions stand where the work or the use can hurt."""

    @pytest.mark.parametrize(
        ("changes", "names"),
        [
            ({}, ("work",)),
            ({"use": "pot holder"}, ("work", "heat")),
            ({"size": "hot-pad"}, ("work", "heat")),
            ({"name": "Oven mitt"}, ("work", "heat")),
            ({"use": "infant"}, ("work", "infant")),
            ({"use": "cot quilt"}, ("work", "infant")),
            ({"name": "Baby blanket"}, ("work", "infant")),
            ({"use": "wall"}, ("work", "wall")),
            ({"hanging": POCKETS}, ("work", "wall")),
            ({"use": "baby", "hanging": POCKETS}, ("work", "infant", "wall")),
            ({"name": "Cottage runner"}, ("work", "warm")),
            ({"name": "Wallflower runner"}, ("work", "warm")),
            ({"use": "mug rug"}, ("work", "warm")),
            ({"size": "place-mat"}, ("work", "warm")),
            ({"name": "Table mats"}, ("work", "warm")),
            ({"name": "Scottish throw"}, ("work",)),
        ],
    )
    def test_which(self, changes: dict[str, object], names: tuple[str, ...]) -> None:
        plain = replace(MUG_RUG, size="throw", name="Throw", use="")
        assert caution_names(replace(plain, **changes)) == names  # type: ignore[arg-type]

    def test_each_says_what_it_is_about_and_defers(self) -> None:
        project = replace(MUG_RUG, use="pot holder for a baby's wall")
        document = write_document(sheet_of(project)).value
        assert document is not None
        cautions = [block for block in document.blocks if isinstance(block, Caution)]
        text = as_text(document)
        assert [caution.title for caution in cautions] == ["Work safely", "Heat", "For a baby", "On the wall"]
        for word in (
            "rotary cutter",
            "iron",
            "needle",
            "microwave",
            "Polyester",
            "first year",
            "buttons",
            "open flame",
        ):
            assert word in text
        for word in ("makers of your tools", "maker’s instructions", "safety rules where you live"):
            assert word in text
        first_step = next(block for block in document.blocks if isinstance(block, StepBlock))
        assert all(document.blocks.index(caution) < document.blocks.index(first_step) for caution in cautions)


class TestCuttingSentences:
    """Strips, subcuts and joins, whatever the plan."""

    def text(
        self, lines: tuple[CuttingLine, ...], joined: tuple[JoinedPieces, ...] = (), is_shortest: bool = True
    ) -> str:
        sheet = sheet_of(WALL_HANGING)
        material = sheet.material("sea")
        plan = material.plan
        assert isinstance(plan, CuttingPlan)
        made = replace(
            material, plan=replace(plan, lines=lines, joined=joined, strips=plan.strips, is_shortest=is_shortest)
        )
        return text_of(
            replace(sheet, materials=tuple(made if other is material else other for other in sheet.materials))
        )

    def line(
        self, count: int, *subcuts: SubcutLine, direction: StripDirection = StripDirection.ACROSS, whole: bool = True
    ) -> CuttingLine:
        return CuttingLine(direction, Fraction(9, 2), Fraction(42 if whole else 20), whole, count, subcuts)

    def subcut(self, count: int, is_trimmed: bool = False) -> SubcutLine:
        return SubcutLine("backing", Fraction(67, 2), Fraction(45, 2), count, is_trimmed)

    def test_one_strip_and_one_piece(self) -> None:
        text = self.text((self.line(1, self.subcut(1)),))
        assert (
            "1. Cut 1 strip 4 1/2 in × width of fabric. From it cut 1 piece 33 1/2 × 22 1/2 in: backing (1).\n" in text
        )

    def test_several_strips_and_pieces(self) -> None:
        text = self.text((self.line(3, self.subcut(12, is_trimmed=True)),))
        assert "Cut 3 strips, each 4 1/2 in × width of fabric. From them cut 12 pieces" in text
        assert "12 pieces 33 1/2 × 22 1/2 in, trimmed: backing (1)." in text

    def test_short_and_lengthwise_strips(self) -> None:
        lengthwise = self.line(2, self.subcut(1), direction=StripDirection.ALONG, whole=False)
        text = self.text((self.line(1, self.subcut(1), whole=False), lengthwise))
        assert "Cut 1 strip 4 1/2 in × 20 in, across the fabric." in text
        assert "Cut 2 strips, each 4 1/2 in × 20 in, along the selvage." in text

    @pytest.mark.parametrize(("join", "word"), [(StripJoin.DIAGONAL, "diagonal"), (StripJoin.STRAIGHT, "straight")])
    def test_joined_lengths(self, join: StripJoin, word: str) -> None:
        joined = JoinedPieces("sleeve", 1, 2, join, length("sleeve", "31 1/2"))
        assert f"Sew two lengths end to end with {word} seams" in self.text((self.line(2),), (joined,))

    def test_panels(self) -> None:
        joined = JoinedPieces("backing", 1, 2, StripJoin.STRAIGHT, length("backing", "60"), panels=True)
        text = self.text((self.line(2),), (joined,))
        assert (
            "Sew two panels side by side with 1/2 in seams, so that the seam runs from side to side of the backing. "
            "Press the seam open, and cut the backing to 33 1/2 × 22 1/2 in." in text
        )

    def test_proved_or_bounded(self) -> None:
        assert (
            "takes at least"
            not in self.text((self.line(1, self.subcut(1)),)).split("### Deep Sea (D)")[1].split("###")[0]
        )
        assert "Any plan of strips cut across the fabric takes at least" in self.text(
            (self.line(1, self.subcut(1)),), is_shortest=False
        )


class TestBiasBindingAndSections:
    """A continuous bias binding starts from squares, and lengthwise strips from a section cut off first."""

    def test_they_are_told(self) -> None:
        finish = replace(BOUND, backing_fabric="reed", binding=replace(BOUND.binding, grain=Grain.BIAS))
        sheet = sheet_of(replace(LAP_QUILT, finish=finish))
        plan = sheet.material("sea").plan
        assert plan is not None
        (bias,) = plan.bias
        text = text_of(sheet)
        assert f"Cut {bias.squares} square {bias.side.text} wide, for the bias binding (1)." in text
        assert f"as one long strip from one square of {bias.side.text}:" in text
        (section, *others) = plan.sections
        assert not others
        assert f"First cut a section {format_length(section, Unit.INCH)} long off the fabric" in text
