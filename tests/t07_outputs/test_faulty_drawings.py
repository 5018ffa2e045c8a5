"""The page in place of a pattern whose drawing is wrong: the drawing is shown, each mistake ringed and numbered."""

from __future__ import annotations

import re
from xml.etree import ElementTree

from evenseam.problems import Problem, SourceText
from evenseam.publish.checked import CheckedPattern, check_pattern
from evenseam.publish.faulty_drawings import FaultyDrawing, faulty_drawings
from evenseam.publish.problem_page import write_problems
from evenseam.publish.sources import PatternSource

PATTERN = """
format: 1
title: Ketch
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
blocks:
  ketch:
    finished size: 8
    grid: 8 x 8
    drawing: ketch.svg
arrangement: {rows: 1, columns: 1, block: ketch}
finish: {kind: turned, backing: {fabric: sea}}
sizes: {mat: {}}
"""
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 80 80">'
SEA, FOG = '<rect fill="#23465f" width="80" height="40"/>', '<rect fill="#d9dcd6" y="40" width="80" height="40"/>'
ELEMENTS = {"svg", "title", "rect", "path", "circle", "text"}
NUMBER = "{http://www.w3.org/2000/svg}"


def checked(*shapes: str, pattern: str = PATTERN) -> CheckedPattern:
    drawing = SourceText("patterns/ketch/ketch.svg", "\n".join((HEAD, *shapes, "</svg>")))
    source = SourceText("patterns/ketch/pattern.yaml", pattern)
    return check_pattern(PatternSource("ketch", source, {"ketch.svg": drawing}))


def pictured(found: CheckedPattern) -> FaultyDrawing:
    (drawing,) = faulty_drawings(found.problems, found.sources)
    return drawing


def numbered(drawing: FaultyDrawing, problems: tuple[Problem, ...]) -> list[tuple[str, int | None]]:
    return [(problem.code.name, drawing.number(problem)) for problem in problems]


def test_every_place_is_ringed_and_numbered_in_the_order_of_the_page() -> None:
    found = checked(
        '<rect fill="#23465f" width="80" height="38"/>', FOG, '<path fill="#23465f" d="M20,50 50,50 50,70z"/>'
    )
    drawing = pictured(found)
    told = numbered(drawing, found.problems)
    assert [name for name, _ in told] == ["gap-between-pieces", "pieces-overlap"]
    assert [number for _, number in told] == [1, 2]
    root = ElementTree.fromstring(drawing.svg)
    assert [text.text for text in root.iter(f"{NUMBER}text") if text.get("font-weight") == "bold"] == ["1", "2"]
    page = write_problems("Ketch", found.problems, found.sources)
    assert page.count("<svg") == 1
    assert "number 1 in the picture below" in page and "number 2 in the picture below" in page


def test_a_piece_of_no_fabric_is_marked_too() -> None:
    found = checked(SEA, '<rect fill="#ff0000" y="40" width="80" height="40"/>')
    # One mistake is told once.
    assert numbered(pictured(found), found.problems) == [("colour-without-fabric", 1)]


def test_a_fabric_that_is_not_defined_is_told_where_the_colours_are() -> None:
    pattern = PATTERN.replace("    drawing:", '    colours: {"#ff0000": sand}\n    drawing:')
    found = checked(SEA, '<rect fill="#ff0000" y="40" width="80" height="40"/>', pattern=pattern)
    (problem,) = [problem for problem in found.problems if problem.code.name == "undefined-fabric"]
    assert problem.place is not None
    line = pattern.splitlines()[problem.place.line - 1]
    assert line[problem.place.column - 1 : problem.place.end_column - 1] == "sand"


def test_pieces_that_lock_are_ringed() -> None:
    pinwheel = (
        '<path fill="#23465f" d="M0,0 60,0 60,20 0,20z"/>', '<path fill="#d9dcd6" d="M60,0 80,0 80,60 60,60z"/>',
        '<path fill="#23465f" d="M20,60 80,60 80,80 20,80z"/>', '<path fill="#d9dcd6" d="M0,20 20,20 20,80 0,80z"/>',
        '<path fill="#23465f" d="M20,20 60,20 60,60 20,60z"/>',
    )  # fmt: skip
    found = checked(*pinwheel)
    (problem,) = found.problems
    # What frees them can be pasted into the drawing, in its own numbers.
    assert problem.code.name == "block-locked"
    assert '`<polygon class="sea" points="0,0 20,0 20,20 0,20"/>`' in problem.hint
    page = write_problems("Ketch", found.problems, found.sources)
    assert page.count("<svg") == 1 and "lock one another" in page


def test_a_good_drawing_and_an_unreadable_one_have_no_picture() -> None:
    good = checked(SEA, FOG, pattern=PATTERN.replace("block: ketch}", "block: kech}"))
    assert good.problems and faulty_drawings(good.problems, good.sources) == ()
    bad = checked("<g><g>")
    assert bad.problems and faulty_drawings(bad.problems, bad.sources) == ()
    assert "<svg" not in write_problems("Ketch", bad.problems, bad.sources)


def test_nothing_of_the_file_is_in_the_picture() -> None:
    """Only our own elements, with numbers and colours for values; words are escaped."""
    found = checked(
        '<title>&lt;script&gt;ran()</title><style>.a{fill:url(//e.example)}</style><script>ran()</script>',
        '<rect class="a&quot; onload=&quot;ran()" onclick="ran()" fill="#23465f" width="80" height="39"/>',
        '<image href="http://e.example/x.png" width="4" height="4"/>',
        '<path fill="url(http://e.example)" style="fill:&lt;/style&gt;" d="M0,40 80,40 80,80 0,80z"/>',
    )  # fmt: skip
    for drawing in faulty_drawings(found.problems, found.sources):
        root = ElementTree.fromstring(drawing.svg)
        for element in root.iter():
            assert element.tag.removeprefix(NUMBER) in ELEMENTS
            for name, value in element.attrib.items():
                assert re.fullmatch(r"[a-zA-Z-]+", name) and not name.startswith("on")
                assert "e.example" not in value and "url(" not in value and "<" not in value
    page = write_problems("Ketch", found.problems, found.sources)
    assert "<script" not in page and 'onload="' not in page and "<image" not in page
