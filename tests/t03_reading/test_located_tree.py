"""The YAML tree: scalars stay text, every node knows its place, and only the plain part of YAML is let in."""

from __future__ import annotations

import pytest
import yaml
from evenseam.problems import Place, SourceText
from evenseam.reading import compose
from evenseam.reading.tree import Listing, Mapping, Node, Scalar, is_inside, is_none
from hypothesis import given, settings
from hypothesis import strategies as st
from support.pattern_texts import FULL


def tree_of(text: str) -> Node:
    """Return the tree of a text without problems."""
    outcome = compose.parse_tree(SourceText("a.yaml", text))
    assert outcome.problems == ()
    assert outcome.value is not None
    return outcome.value


def plain(node: Node) -> object:
    """Return a tree as plain lists, dicts and texts."""
    match node:
        case Scalar():
            return node.text
        case Listing():
            return [plain(item) for item in node.items]
        case Mapping():
            return {entry.key.text: plain(entry.value) for entry in node.entries}


@pytest.mark.parametrize(
    "written", ["no", "12:30", "0777", "010", "1.50", "1_000", "2026-01-01", "1e3", "1/4", "~", "½", "on"]
)
def test_a_scalar_stays_text(written: str) -> None:
    """Each of these is read as something else than text by an ordinary YAML 1.1 reader."""
    assert plain(tree_of(f"a: {written}")) == {"a": written}


def covered(text: str, place: Place) -> str:
    """Return what stands at a place of one line."""
    assert place.line == place.end_line
    return text.splitlines()[place.line - 1][place.column - 1 : place.end_column - 1]


def test_every_scalar_and_key_of_a_file_stands_at_its_place() -> None:
    seen = 0

    def look(node: Node) -> None:
        nonlocal seen
        match node:
            case Scalar() if node.place.line == node.place.end_line:
                assert covered(FULL, node.place).strip("\"'") == node.text
                seen += 1
            case Listing():
                for item in node.items:
                    assert is_inside(item.place, node.place)
                    look(item)
            case Mapping():
                for entry in node.entries:
                    assert is_inside(entry.key.place, node.place)
                    look(entry.key)
                    look(entry.value)

    look(tree_of(FULL))
    assert seen > 200


def test_the_place_of_a_part() -> None:
    tree = tree_of('a: 6 x 9\nb: "6 x 9"\nc: "6\\tx 9"\n')
    assert isinstance(tree, Mapping)
    spans = []
    for value in ("a", "b", "c"):
        node = tree.value(value)
        assert isinstance(node, Scalar)
        spans.append((node.part(4, 5).column, node.part(4, 5).end_column))
    # The last is not written as it reads, so the whole of it is shown.
    assert spans == [(8, 9), (9, 10), (4, 12)]


def test_a_mapping_ends_with_its_last_value() -> None:
    tree = tree_of("a:\n  b: 1\n  c: 22\n\n\n# remark\nd: 1\n")
    assert isinstance(tree, Mapping)
    inner = tree.value("a")
    assert inner is not None and inner.place == Place("a.yaml", 2, 3, 3, 8)


def test_none_is_a_plain_word() -> None:
    tree = tree_of("a: none\nb: 'none'\nc:\nd: nothing\n")
    assert isinstance(tree, Mapping)
    assert [is_none(entry.value) for entry in tree.entries] == [True, False, True, False]


def test_a_folded_text_keeps_its_lines_and_paragraphs() -> None:
    """Markdown joins lines by itself, so the words come out the same, and a line of the text is a line of the file."""
    text = "a: >\n  One two\n  three.\n\n  Four.\n\n# a remark\nb: >-\n    Five\n"
    assert plain(tree_of(text)) == {"a": "One two\nthree.\n\nFour.\n", "b": "Five\n"}


def test_windows_line_ends_and_a_byte_order_mark() -> None:
    assert plain(tree_of("\ufeff" + "a: 1\r\nb:\r\n  - c\r\n")) == {"a": "1", "b": ["c"]}


@settings(max_examples=100)
@given(st.recursive(
    st.text(alphabet=st.characters(categories=("L", "N", "P", "Z"), exclude_characters="\u2028\u2029"), max_size=10),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text("abcdef ", min_size=1, max_size=5), inner, max_size=4),
    max_leaves=10,
), st.booleans())  # fmt: skip
def test_the_tree_says_what_an_ordinary_reader_says(value: object, is_flow: bool) -> None:
    """PyYAML's own BaseLoader, which resolves no types, is the reference."""
    text = yaml.safe_dump({"a": value}, default_flow_style=is_flow, allow_unicode=True)
    assert plain(tree_of(text)) == yaml.load(text, yaml.BaseLoader)


@pytest.mark.skipif(not hasattr(yaml, "CSafeLoader"), reason="only one of PyYAML's two parsers is installed")
def test_both_parsers_of_the_library_give_the_same_tree(monkeypatch: pytest.MonkeyPatch) -> None:
    fast = compose.parse_tree(SourceText("a.yaml", FULL))
    monkeypatch.setattr(compose, "_PARSER", yaml.SafeLoader)
    slow = compose.parse_tree(SourceText("a.yaml", FULL))
    assert fast == slow
    assert repr(fast) == repr(slow), "also the places, which do not count when trees are compared"


def test_an_alias_bomb_is_not_expanded() -> None:
    """Nine lines that would become a thousand million entries if aliases were followed."""
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 9)]
    outcome = compose.parse_tree(SourceText("a.yaml", "\n".join(lines)))
    assert {problem.code.name for problem in outcome.problems} == {"anchor-or-alias"}


@pytest.mark.parametrize("opening", ["[", "{a: ", "- "])
def test_very_deep_files_are_refused(opening: str) -> None:
    outcome = compose.parse_tree(SourceText("a.yaml", opening * 5000))
    assert [problem.code.name for problem in outcome.problems] in (["too-deep"], ["not-readable"])
