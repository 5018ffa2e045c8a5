"""A mistake in what several sizes share is told once, with the sizes it was found in."""

from __future__ import annotations

from pathlib import Path

from evenseam.problems import SourceText, show_problems
from evenseam.publish.checked import check_pattern
from evenseam.publish.problem_page import write_problems
from evenseam.publish.sources import find_patterns

LANTERNS = Path(__file__).resolve().parents[2] / "patterns" / "harbour-lanterns" / "pattern.yaml"


def checked(folder: Path, *changes: tuple[str, str]):  # type: ignore[no-untyped-def]
    text = LANTERNS.read_text(encoding="utf-8")
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    (folder / "pattern.yaml").write_text(text, encoding="utf-8")
    (source,) = find_patterns(folder)
    return check_pattern(source)


def test_a_wrong_name_in_the_introduction_is_told_once(tmp_path: Path) -> None:
    found = checked(tmp_path, ("{{ finished_height }}", "{{ finished_hight }}")).problems
    assert [(one.code.name, one.sizes) for one in found] == [("unknown-figure", ("every size",))]


def test_a_way_out_that_holds_in_some_sizes_says_in_which(tmp_path: Path) -> None:
    # 26 in is the width of the wall hanging; no other size has a figure of that length.
    (found,) = checked(tmp_path, ("Sew slowly", "It is 26 in wide. Sew slowly")).problems
    assert found.sizes == ("every size",) and "(so in " in found.hint


def test_a_mistake_of_one_size_names_it(tmp_path: Path) -> None:
    change = ("  backing: {fabric: sea}\n\nintroduction", "  backing: {fabric: sea}\n  opening: 12\n\nintroduction")
    found = checked(tmp_path, change).problems
    assert "mug rug (inches)" in {name for one in found for name in one.sizes}


def test_a_mistake_is_shown_with_its_sizes_on_the_page_and_in_the_terminal(tmp_path: Path) -> None:
    result = checked(tmp_path, ("{{ finished_height }}", "{{ finished_hight }}"))
    page = write_problems("Harbour Lanterns", result.problems, result.sources)
    assert "one problem" in page and "<p>In every size.</p>" in page and "   in: " not in page
    assert "   in: every size\n" in show_problems(result.problems, result.sources)


def test_a_pattern_of_one_size_names_none(tmp_path: Path) -> None:
    text = LANTERNS.read_text(encoding="utf-8").replace("editions: [inches, centimetres]\n", "")
    head, _, _ = text.partition("  wall hanging:\n    use")
    (tmp_path / "pattern.yaml").write_text(
        head.replace("{{ finished_width }}", "{{ width_finished }}"), encoding="utf-8"
    )
    (source,) = find_patterns(tmp_path)
    (found,) = check_pattern(source).problems
    assert found.sizes == () and "   in:" not in show_problems([found], {source.source.name: SourceText("", "")})
