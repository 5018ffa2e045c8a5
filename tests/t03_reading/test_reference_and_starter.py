"""The reference names every key; its examples can be read; the starter has no problem and says what to do."""

from __future__ import annotations

import pytest
import yaml
from evenseam.exact import Unit
from evenseam.problems import Report, SourceText
from evenseam.reading import KeyReference, key_reference, read_pattern, starter
from evenseam.reading.compose import parse_tree
from evenseam.reading.format import PATTERN, SIZE
from evenseam.reading.kinds import Choice, Items, Kind, Piece, Table, Variants
from evenseam.reading.overrides import inner_kind
from evenseam.reading.shape import check_shape
from evenseam.reading.tree import Mapping
from hypothesis import given, settings
from hypothesis import strategies as st
from support.pattern_texts import FULL, SMALL, changed, pattern_from, read

REFERENCE = key_reference()
PATHS = {reference.path for reference in REFERENCE}


def test_every_key_has_a_meaning_and_says_what_it_takes() -> None:
    for reference in REFERENCE:
        assert reference.meaning.endswith("."), reference.path
        assert reference.takes, reference.path
        assert not (reference.is_required and reference.default), reference.path


def test_no_key_is_told_twice() -> None:
    assert len(PATHS) == len(REFERENCE)


def test_every_key_of_a_full_file_is_in_the_reference() -> None:
    """Walks a file that uses every key; names the author gives become <fabric> and so on."""
    named = {"fabrics": "<fabric>", "blocks": "<block>", "borders": "<border>"}
    used: set[tuple[str, ...]] = set()

    def look(node: object, path: tuple[str, ...]) -> None:
        if isinstance(node, list):
            for item in node:
                look(item, path)
        elif isinstance(node, dict):
            kind = (f"({node['kind']})",) if "kind" in node else ()
            for key, value in node.items():
                is_named = path[-1:] and path[-1] in named
                inner = (*path, named[path[-1]]) if is_named else (*path, *(() if key == "kind" else kind), key)
                if not is_named:
                    used.add(inner)
                look(value, inner)

    whole = yaml.load(FULL, yaml.BaseLoader)
    sizes, claims, words, editions = (whole.pop(key) for key in ("sizes", "claims", "words", "editions"))
    assert sizes and claims and words and editions
    short = [piece for block in whole["blocks"].values() for piece in block["pieces"] if len(piece) == 1]
    for block in whole["blocks"].values():
        block["pieces"] = [piece for piece in block["pieces"] if piece not in short]
    look(whole, ())
    look({"finish": {"kind": "turned", **dict.fromkeys(("opening", "topstitch"), "1")}}, ())
    assert used <= PATHS


def kind_of(path: tuple[str, ...]) -> Kind:
    """Return the kind of value at a path of the reference."""
    kind: Kind | None = PATTERN
    if path[:2] == ("sizes", "<size>"):
        kind, path = SIZE, path[2:]
    for part in path:
        while isinstance(kind, (Items, Piece)):
            kind = kind.item if isinstance(kind, Items) else kind.long
        if part.startswith("<") and isinstance(kind, Table):
            kind = kind.item
        elif part.startswith("(") and isinstance(kind, Variants):
            kind = kind.record(part.strip("()"))
        elif isinstance(kind, Variants) and part == kind.key:
            kind = Choice(kind.options)
        else:
            kind = inner_kind(kind, part)
    assert kind is not None, path
    return kind


WITH_EXAMPLES = [reference for reference in REFERENCE if reference.example]


@pytest.mark.parametrize("reference", WITH_EXAMPLES, ids=lambda reference: " ".join(reference.path))
def test_every_example_can_be_read(reference: KeyReference) -> None:
    """Reads the example as it would stand in a file, and finds no problem."""
    is_list = reference.example.startswith("- ")
    text = f"{reference.key}:{chr(10) if is_list else ''} {reference.example}\n"
    tree = parse_tree(SourceText("pattern.yaml", text))
    assert tree.problems == ()
    assert isinstance(tree.value, Mapping)
    report = Report()
    check_shape(tree.value.entries[0].value, kind_of(reference.path), Unit.INCH, report)
    assert report.problems == []


def test_most_keys_have_an_example() -> None:
    assert len(WITH_EXAMPLES) > 60


class TestStarter:
    """`evenseam new` gives a file that can be published at once."""

    def test_it_has_no_problem_and_two_sizes_in_both_units(self) -> None:
        outcome = read(starter("Low Tide"))
        assert outcome.problems == ()
        assert outcome.value is not None
        assert [(project.size, project.unit) for project in outcome.value.projects] == [
            ("mug-rug", Unit.INCH), ("mug-rug", Unit.CENTIMETRE), ("wall-hanging", Unit.INCH), ("wall-hanging", Unit.CENTIMETRE),
        ]  # fmt: skip

    @settings(max_examples=80)
    @given(st.text(alphabet=st.characters(exclude_categories=("C", "Z")), min_size=1, max_size=40))
    def test_any_title_comes_back_as_it_was_given(self, title: str) -> None:
        pattern = read_pattern("new", SourceText("pattern.yaml", starter(title))).value
        assert pattern is not None and pattern.title == title

    @pytest.mark.parametrize("title", ['"; rm -rf', "#", "a: b", "{{ x }}", "\\", "- a", "@TITLE@", "yes", "1/2"])
    def test_titles_that_could_break_the_file(self, title: str) -> None:
        assert pattern_from(starter(title)).title == title

    @pytest.mark.parametrize("title", ["", "a\x07b", "x" * 81, "\u202eabc"])
    def test_titles_that_cannot_be(self, title: str) -> None:
        assert read(starter(title)).errors


def test_a_small_file_needs_few_keys() -> None:
    assert read(SMALL).problems == ()
    assert read(changed(SMALL, "mug rug: {}", "mug rug:")).problems == ()
