"""Whatever a file holds, reading it never fails: there is a pattern, or there are problems that stand inside the text."""

from __future__ import annotations

import re

import yaml
from evenseam.pattern import Pattern
from evenseam.problems import Outcome, SourceText, show_problems
from hypothesis import example, given, settings
from hypothesis import strategies as st
from support.pattern_texts import FULL, SMALL, read

LINES = FULL.splitlines(keepends=True)


def check(text: str) -> Outcome[Pattern]:
    """Read a text; check that every problem can be shown and stands inside it."""
    outcome = read(text)
    assert (outcome.value is None) == bool(outcome.errors)
    lines = re.split("\r\n|\r|\n", text)
    for problem in outcome.problems:
        place = problem.place
        assert place is not None, problem
        assert 1 <= place.line <= len(lines), problem
        assert 1 <= place.column <= len(lines[place.line - 1]) + 1, problem
        assert (place.line, place.column) <= (place.end_line, place.end_column), problem
        assert place.end_line <= len(lines), problem
        assert place.end_column <= len(lines[place.end_line - 1]) + 2, problem
        assert problem.message and problem.hint, problem
        assert "\n" not in problem.message, problem
    show_problems(outcome.problems, {"pattern.yaml": SourceText("pattern.yaml", text)})
    return outcome


@st.composite
def mangled(draw: st.DrawFn) -> str:
    """A valid file with lines dropped, doubled, moved, cut short or given another's value."""
    lines = list(draw(st.sampled_from((LINES, SMALL.splitlines(keepends=True)))))
    for _ in range(draw(st.integers(1, 4))):
        index = draw(st.integers(0, len(lines) - 1))
        other = draw(st.integers(0, len(lines) - 1))
        match draw(st.sampled_from(("drop", "double", "replace", "move", "cut", "indent", "value", "sign"))):
            case "drop" if len(lines) > 1:
                del lines[index]
            case "double":
                lines.insert(index, lines[index])
            case "replace":
                lines[index] = lines[other]
            case "move":
                lines.insert(other, lines.pop(index))
            case "cut":
                lines[index] = lines[index][: draw(st.integers(0, len(lines[index])))]
            case "indent":
                lines[index] = draw(st.sampled_from((" ", "  ", "\t", "- "))) + lines[index]
            case "value":
                key = lines[index].partition(":")[0]
                lines[index] = key + ": " + draw(VALUES) + "\n"
            case "sign":
                at = draw(st.integers(0, len(lines[index])))
                lines[index] = lines[index][:at] + draw(st.sampled_from(SIGNS)) + lines[index][at:]
    return "".join(lines)


SIGNS = (*"{}[],:#&*!|>'\"%@`?-\t\x00\x85\u2028\u202e\ufeff\ud800é½", "\r", "\n", ": ", "- ", "---\n", "<<: ", "0", "x")
VALUES = st.sampled_from((
    "", "none", "0", "-1", "1/0", "9" * 12, "1e9", "6 cm", "{}", "[]", "[[]]", "{a: b}", "yes", "3 1/2", "4 x 4", "x", "×",
    "0,0 1,0 1,1", "0,0 0,0", '"#12345"', "lantern turned 90", "turned", "|", ">", '"\\0"', "2026-13-40", "'", "~",
))  # fmt: skip


@settings(max_examples=400)
@given(mangled())
def test_mangled_files(text: str) -> None:
    check(text)


@settings(max_examples=150)
@given(st.text(max_size=200))
@example("\ufeff")
@example("\ufeffformat: 1")
@example("\r\r\n\n\r")
@example("a: b\x85c: d\u2028e: f")
@example("%YAML 2.0\n---\na")
@example("--- |\n")
@example("...")
@example("? a\n: b")
@example('"\ud800"')
@example("a: |\n")
@example("introduction: |9\n  x")
def test_any_text(text: str) -> None:
    check(text)


@settings(max_examples=150)
@given(st.text(alphabet="ab:-#{}[],&*!|>'\" \n\t01", max_size=80))
def test_text_of_yaml_signs(text: str) -> None:
    check(text)


TREES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=12) | VALUES,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=8), inner, max_size=4),
    max_leaves=12,
)
KEYS = tuple(dict.fromkeys(re.findall(r"^ *([a-z][a-z ]*):", FULL, re.MULTILINE)))


@settings(max_examples=150)
@given(st.dictionaries(st.sampled_from(KEYS) | st.text(max_size=8), TREES, max_size=8), st.booleans())
def test_any_tree_under_the_keys_of_the_format(tree: dict[str, object], is_flow: bool) -> None:
    check(yaml.safe_dump(tree, default_flow_style=is_flow, allow_unicode=True))


@settings(max_examples=120)
@given(st.sampled_from(KEYS), TREES, st.booleans())
def test_any_tree_in_place_of_a_value(key: str, tree: object, is_flow: bool) -> None:
    whole = yaml.load(FULL, yaml.BaseLoader)

    def put(node: object) -> object:
        if isinstance(node, dict):
            return {each: tree if each == key else put(value) for each, value in node.items()}
        return [put(item) for item in node] if isinstance(node, list) else node

    check(yaml.safe_dump(put(whole), default_flow_style=is_flow, allow_unicode=True, sort_keys=False))


def test_reading_twice_says_the_same() -> None:
    broken = FULL.replace("sea", "see", 3).replace("1 1/2", "1 1//2")
    assert read(broken) == read(broken)
