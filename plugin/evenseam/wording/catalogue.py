"""The wording of one language: its templates, its number words and its plurals, all from files.

A language is a folder of `templates/`: Markdown templates and one `words.toml`. A folder named after a variant, such
as `en-GB`, holds only what differs; whatever it does not say is taken from `en`.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined, pass_context
from jinja2.runtime import Context

from evenseam.pattern import Quantity
from evenseam.wording.marked import Markdown, escape, mark_figure

TEMPLATES = Path(__file__).parent / "templates"
BASE_LANGUAGE = "en"


@dataclass(frozen=True, slots=True)
class Language:
    """One language or variant, ready to write."""

    code: str
    words: Mapping[str, Any]
    """words.toml, with what a variant changes put over its base."""
    environment: Environment

    def write(self, template: str, values: Mapping[str, Any]) -> str:
        """Fill a template, such as steps/bind. Raises jinja2 errors: a gap in a template is our own mistake."""
        return self.environment.get_template(f"{template}.md").render(values)

    def word(self, table: str, key: str) -> str:
        """Return a phrase of words.toml. Raises KeyError."""
        return str(self.words[table][key])

    def noun(self, key: str, count: int) -> str:
        """Return a noun as it stands after a number: strip, strips."""
        one, many = self.words["nouns"][key]
        return str(one if _is_one(count, self.words["grammar"]["plural"]) else many)

    def in_words(self, count: int) -> str:
        """Return a small number as a word, a larger one in figures."""
        numbers: Sequence[str] = self.words["numbers"]["words"]
        return numbers[count] if 0 <= count < len(numbers) else str(count)

    def times(self, count: int) -> str:
        """Return how often in words: once, twice, three times."""
        words: Sequence[str] = self.words["numbers"]["times"]
        return words[count] if 0 <= count < len(words) else f"{self.in_words(count)} {self.noun('time', count)}"

    def figure(self, text: str) -> str:
        """Return a printed figure with the decimal sign of the language."""
        sign = self.words["grammar"].get("decimal", ".")
        return text if sign == "." else _DECIMAL.sub(sign, text)

    def phrase(self, text: str) -> str:
        """Return a phrase that is written in English outside the templates, such as a word in a picture.

        `phrases` in words.toml says it word for word, with {} for what changes; what it does not say stays as it is.
        """
        known: Mapping[str, str] = self.words.get("phrases", {})
        if text in known:
            return known[text]
        for pattern, said in _patterns(self.code):
            found = pattern.fullmatch(text)
            if found:
                return said.format(*(self.phrase(part) for part in found.groups()))
        if _LETTERS.fullmatch(text):
            # Labels of pieces in a row; of the author's own words none is changed.
            return text.replace(" and ", f" {self.word('grammar', 'and')} ")
        return self.figure(text)

    def listed(self, parts: Sequence[str]) -> Markdown:
        """Return parts as a spoken list: a, b and c. Parts that are not Markdown yet are escaped."""
        written = [part if isinstance(part, Markdown) else escape(part) for part in parts]
        if len(written) < 2:
            return Markdown("".join(written))
        last = self.word("grammar", "and")
        return Markdown(", ".join(written[:-1]) + f" {last} " + written[-1])


_LETTERS = re.compile(r"(?:[A-Z]{1,2}\d*, )*[A-Z]{1,2}\d* and [A-Z]{1,2}\d*")
_DECIMAL = re.compile(r"(?<=\d)\.(?=\d)")


@lru_cache(maxsize=16)
def _patterns(code: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    """Return the phrases with something that changes in them, the longest first."""
    known: Mapping[str, str] = language(code).words.get("phrases", {})
    open_ones = sorted((phrase for phrase in known if "{}" in phrase), key=lambda phrase: (-len(phrase), phrase))
    return tuple((re.compile("(.+?)".join(map(re.escape, phrase.split("{}")))), known[phrase]) for phrase in open_ones)


@lru_cache(maxsize=16)
def language(code: str = BASE_LANGUAGE) -> Language:
    """Return a language by its code. Raises KeyError for one that has no folder."""
    if code not in languages():
        raise KeyError(code)
    folders = [TEMPLATES / part for part in _chain(code) if (TEMPLATES / part).is_dir()]
    words: dict[str, Any] = {}
    for folder in reversed(folders):
        for table, entries in tomllib.loads((folder / "words.toml").read_text("utf-8")).items():
            words[table] = {**words.get(table, {}), **entries}
    environment = Environment(
        loader=ChoiceLoader([FileSystemLoader(folder) for folder in folders]),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_finalize,
        auto_reload=False,
    )
    ready = Language(code, words, environment)
    environment.globals["say"] = {key: Markdown(value) for key, value in words["say"].items()}
    environment.globals["size"] = _size
    environment.globals["figure_in_words"] = ready.figure
    environment.filters.update(
        in_words=ready.in_words,
        times_in_words=ready.times,
        counted=lambda count, key: f"{ready.in_words(count)} {ready.noun(key, count)}",
        number_of=lambda count, key: f"{count} {ready.noun(key, count)}",
        noun=lambda count, key: ready.noun(key, count),
        listed=ready.listed,
        in_this_language=ready.phrase,
        first_upper=first_upper,
    )
    return ready


def languages() -> tuple[str, ...]:
    """Return the codes of all languages there are folders for."""
    return tuple(sorted(folder.name for folder in TEMPLATES.iterdir() if (folder / "words.toml").is_file()))


def first_upper(text: str) -> str:
    """Return the text with its first letter as a capital, the rest as it stands, and Markdown as Markdown."""
    return type(text)(text[:1].upper() + text[1:])


def _chain(code: str) -> tuple[str, ...]:
    parts = code.split("-")
    return (
        *("-".join(parts[:end]) for end in range(len(parts), 0, -1)),
        *([BASE_LANGUAGE] if parts[0] != BASE_LANGUAGE else []),
    )


def _is_one(count: int, rule: str) -> bool:
    return count in (0, 1) if rule == "zero-and-one" else count == 1


@pass_context
def _finalize(context: Context, value: Any) -> str:
    """Write a value into Markdown: figures marked, our own Markdown as it stands, all other words escaped."""
    match value:
        case Markdown():
            return value
        case Quantity():
            return mark_figure(context["figure_in_words"](value.text), context["figure_name"](value))
        case bool() | None:
            raise TypeError(f"{value} has no words")
        case _:
            return escape(str(value))


@pass_context
def _size(context: Context, width: Quantity, height: Quantity) -> Markdown:
    """Write two lengths as makers do: 12 1/2 × 15 1/2 in."""
    name, say = context["figure_name"], context["figure_in_words"]
    return Markdown(f"{mark_figure(say(width.number), name(width))} × {mark_figure(say(height.text), name(height))}")
