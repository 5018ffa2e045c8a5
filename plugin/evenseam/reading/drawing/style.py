"""What an element looks like: presentation attributes, rules of a <style> element, the style attribute, inheritance.

Selectors are elements, classes, ids and what is put together from them (`g.sails`, `#hull`, `path, rect`); a rule
with any other selector is left out, and said to be. Order and weight follow CSS Cascading and Inheritance (W3C).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache

import tinycss2  # type: ignore[import-untyped]
import tinycss2.ast  # type: ignore[import-untyped]
from tinycss2.color3 import RGBA, parse_color  # type: ignore[import-untyped]

from evenseam.problems import Report
from evenseam.reading.drawing import codes
from evenseam.reading.drawing.elements import DrawingText, Element
from evenseam.reading.leaves import shown

LONGEST_STYLE = 100_000
"""Characters of all <style> elements together."""
MOST_RULES = 500
MOST_TOLD = 5
DEEPEST_BRACKETS = 40

KNOWN = ("fill", "stroke", "display", "visibility", "opacity", "fill-opacity", "stroke-opacity", "color")
_INHERITED = ("fill", "stroke", "visibility", "fill-opacity", "stroke-opacity", "color")


@dataclass(frozen=True, slots=True)
class Paint:
    """What an area or line is painted with."""

    colour: str | None
    """#rrggbb; None for no paint."""
    word: str = ""
    """What stands there, when it is no plain colour."""


NO_PAINT = Paint(None)


@dataclass(frozen=True, slots=True)
class Look:
    """What is inherited by the elements inside, and what has been found for one."""

    words: Mapping[str, str] = field(default_factory=dict)
    is_shown: bool = True
    """False inside a group that is not displayed, or seen through entirely."""

    @property
    def is_visible(self) -> bool:
        """Tell whether shapes here are seen."""
        return self.is_shown and self.words.get("visibility", "visible") == "visible"

    @property
    def fill(self) -> Paint:
        """What areas are painted with; black when nothing is said."""
        return NO_PAINT if _is_nothing(self.words.get("fill-opacity", "1")) else self._paint("fill", "black")

    @property
    def stroke(self) -> Paint:
        """What lines are painted with; nothing when nothing is said."""
        return NO_PAINT if _is_nothing(self.words.get("stroke-opacity", "1")) else self._paint("stroke", "none")

    def _paint(self, name: str, usual: str) -> Paint:
        word = self.words.get(name, usual)
        if word.lower() == "currentcolor":
            word = self.words.get("color", "black")
        return read_paint(word)


@dataclass(frozen=True, slots=True)
class _Rule:
    tag: str
    id: str
    classes: frozenset[str]
    weight: tuple[int, int, int, int]
    declared: tuple[tuple[str, str, bool], ...]

    def fits(self, element: Element, classes: frozenset[str]) -> bool:
        return (
            self.tag in ("", element.tag) and (not self.id or self.id == element.get("id")) and self.classes <= classes
        )


class StyleSheet:
    """The rules of a drawing."""

    def __init__(self, rules: tuple[_Rule, ...] = ()) -> None:
        self._by_word: dict[str, list[_Rule]] = {}
        for rule in rules:
            # Found by the narrowest thing a selector asks for, so that many rules stay quick to look through.
            word = f"#{rule.id}" if rule.id else f".{min(rule.classes)}" if rule.classes else rule.tag
            self._by_word.setdefault(word, []).append(rule)

    def look(self, element: Element, above: Look) -> Look:
        """Return the look of an element inside a group that looks like `above`."""
        said: dict[str, tuple[tuple[int, int, int, int, int], str]] = {}
        for name in KNOWN:
            value = element.get(name)
            if value:
                said[name] = ((0, -1, 0, 0, 0), value)
        classes = frozenset((element.get("class") or "").split())
        words = ("", element.tag, f"#{element.get('id')}", *(f".{name}" for name in classes))
        for rule in (rule for word in words for rule in self._by_word.get(word, ())):
            if rule.fits(element, classes):
                for name, value, is_important in rule.declared:
                    _say(said, name, value, (int(is_important), *rule.weight))
        for name, value, is_important in _declared(element.get("style") or ""):
            _say(said, name, value, (int(is_important), 2**30, 0, 0, 0))
        own = {name: value for name, (_, value) in said.items() if value.lower() != "inherit"}
        inherited = {name: value for name, value in above.words.items() if name in _INHERITED}
        for name in said:
            if said[name][1].lower() == "inherit" and name in above.words:
                own[name] = above.words[name]
        is_shown = above.is_shown and own.get("display") != "none" and not _is_nothing(own.get("opacity", "1"))
        return replace(above, words={**inherited, **own}, is_shown=is_shown)


_Said = dict[str, tuple[tuple[int, int, int, int, int], str]]


def _say(said: _Said, name: str, value: str, weight: tuple[int, int, int, int, int]) -> None:
    if name not in said or said[name][0] <= weight:
        said[name] = (weight, value)


def read_style_sheets(root: Element, text: DrawingText, report: Report) -> StyleSheet:
    """Return the rules of all <style> elements; what cannot be used is reported."""
    rules: list[_Rule] = []
    left = LONGEST_STYLE
    for element in root.everything():
        if element.tag != "style":
            continue
        left -= len(element.text)
        if left < 0:
            message = f"the style rules have more than {LONGEST_STYLE:,} characters"
            report.add(codes.TOO_LARGE, element.place, message, "save the drawing as plain SVG")
            break
        rules += _read_rules(element, len(rules), report)
    if len(rules) > MOST_RULES:
        message = f"the drawing has {len(rules)} style rules; at most {MOST_RULES} are read"
        report.add(codes.TOO_LARGE, root.place, message, "save the drawing as plain SVG")
        rules = rules[:MOST_RULES]
    return StyleSheet(tuple(rules))


def _read_rules(element: Element, before: int, report: Report) -> Iterator[_Rule]:
    told = 0
    if _nests_too_deep(element.text):
        message = "brackets lie too deep in one another in these style rules"
        report.add(codes.STYLE_LEFT_OUT, element.place, message, "save the drawing as plain SVG")
        return
    for rule in tinycss2.parse_stylesheet(element.text, skip_comments=True, skip_whitespace=True):
        if isinstance(rule, tinycss2.ast.AtRule) and rule.lower_at_keyword == "import":
            message = "the drawing takes rules for its looks from another file"
            hint = "save the drawing with its colours inside, as plain SVG"
            report.add(codes.OUTSIDE_REFERENCE, element.place, message, hint)
        if not isinstance(rule, tinycss2.ast.QualifiedRule):
            continue
        declared = _known_declarations(rule.content)
        if not declared:
            continue
        for selector in _split_at_commas(rule.prelude):
            compound = _compound(selector)
            if compound is None:
                told += 1
                if told <= MOST_TOLD:
                    written = shown(tinycss2.serialize(selector).strip())
                    message = f"the style rule for {written} is left out: only elements, classes and ids are understood"
                    hint = "give the shapes a class, or the colour itself"
                    report.add(codes.STYLE_LEFT_OUT, element.place, message, hint)
                continue
            tag, id, classes = compound
            before += 1
            weight = (int(bool(id)), len(classes), int(bool(tag)), before)
            yield _Rule(tag, id, classes, weight, declared)


def _split_at_commas(tokens: list[tinycss2.ast.Node]) -> list[list[tinycss2.ast.Node]]:
    groups: list[list[tinycss2.ast.Node]] = [[]]
    for token in tokens:
        if token == ",":
            groups.append([])
        else:
            groups[-1].append(token)
    return groups


def _compound(tokens: list[tinycss2.ast.Node]) -> tuple[str, str, frozenset[str]] | None:
    """Return (element, id, classes) of a plain selector; None for any other."""
    kept = [token for token in tokens if token.type != "comment"]
    while kept and kept[0].type == "whitespace":
        del kept[0]
    while kept and kept[-1].type == "whitespace":
        del kept[-1]
    if not kept:
        return None
    tag = id = ""
    classes: set[str] = set()
    index = 0
    while index < len(kept):
        token = kept[index]
        following = kept[index + 1] if index + 1 < len(kept) else None
        if index == 0 and token.type == "ident":
            tag = token.value
        elif token.type == "hash" and not id:
            id = token.value
        elif token == "." and following is not None and following.type == "ident":
            classes.add(following.value)
            index += 1
        elif not (index == 0 and token == "*"):
            return None
        index += 1
    return tag, id, frozenset(classes)


@lru_cache(maxsize=2000)
def _declared(text: str) -> tuple[tuple[str, str, bool], ...]:
    return _known_declarations(text) if text and not _nests_too_deep(text) else ()


def _nests_too_deep(text: str) -> bool:
    """Tell whether brackets lie so deep in one another that taking them apart would not end well."""
    depth = 0
    for bracket in re.findall(r"[(){}\[\]]", text):
        depth += 1 if bracket in "([{" else -1
        if depth > DEEPEST_BRACKETS:
            return True
    return False


def _known_declarations(content: str | list[tinycss2.ast.Node]) -> tuple[tuple[str, str, bool], ...]:
    found = tinycss2.parse_blocks_contents(content, skip_comments=True, skip_whitespace=True)
    return tuple(
        (item.lower_name, tinycss2.serialize(item.value).strip(), item.important)
        for item in found
        if isinstance(item, tinycss2.ast.Declaration) and item.lower_name in KNOWN
    )


@lru_cache(maxsize=2000)
def read_paint(word: str) -> Paint:
    """Return what a fill or stroke says.

    >>> read_paint("#abc").colour, read_paint("Navy").colour, read_paint("none").colour, read_paint("url(#x)").word
    ('#aabbcc', '#000080', None, 'url(#x)')
    """
    plain = word.strip()
    if plain.lower() in ("none", "transparent", ""):
        return NO_PAINT
    found = parse_color(plain) if len(plain) <= 100 else None
    if not isinstance(found, RGBA):
        return Paint(None, plain)
    if found.alpha <= 0:
        return NO_PAINT
    parts = (min(255, max(0, round(part * 255))) for part in (found.red, found.green, found.blue))
    return Paint("#" + "".join(f"{part:02x}" for part in parts))


def _is_nothing(opacity: str) -> bool:
    """Tell whether an opacity lets everything through."""
    number = opacity.strip().rstrip("%").strip()
    return bool(number) and not number.strip("0.+-")
