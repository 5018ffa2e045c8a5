"""The words and phrases of one language, from its words.toml: quick to load, for whoever needs no sentence template.

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

TEMPLATES = Path(__file__).parent / "templates"
BASE_LANGUAGE = "en"


@dataclass(frozen=True, slots=True)
class Words:
    """What stands in the tables of one language or variant."""

    code: str
    words: Mapping[str, Any]
    """words.toml, with what a variant changes put over its base."""

    def word(self, table: str, key: str) -> str:
        """Return a phrase of words.toml. Raises KeyError."""
        return str(self.words[table][key])

    def fill(self, table: str, key: str, **parts: object) -> str:
        """Return a phrase with its {places} filled; what is put in may be anything. Raises KeyError."""
        return self.word(table, key).format(**parts)

    def counted(self, table: str, key: str, count: int, **parts: object) -> str:
        """Return the one of two phrases that stands with a number, filled, {number} with the number itself."""
        one, many = self.words[table][key]
        return self._of_two(one, many, count).format(number=count, **parts)

    def parts(self, table: str, key: str) -> tuple[str, ...]:
        """Return a phrase that is written in several parts. Raises KeyError."""
        return tuple(map(str, self.words[table][key]))

    def noun(self, key: str, count: int) -> str:
        """Return a noun as it stands after a number: strip, strips."""
        one, many = self.words["nouns"][key]
        return self._of_two(one, many, count)

    def in_words(self, count: int) -> str:
        """Return a small number as a word, a larger one in figures."""
        numbers: Sequence[str] = self.words["numbers"]["words"]
        return numbers[count] if 0 <= count < len(numbers) else str(count)

    def times(self, count: int) -> str:
        """Return how often in words: once, twice, three times."""
        words: Sequence[str] = self.words["numbers"]["times"]
        return words[count] if 0 <= count < len(words) else f"{self.in_words(count)} {self.noun('time', count)}"

    def figure(self, text: str) -> str:
        """Return a printed figure with the decimal sign of the language, and its word for about."""
        grammar: Mapping[str, str] = self.words["grammar"]
        about = _ABOUT.sub(grammar["about"], text) if "about" in text else text
        return about if grammar["decimal"] == "." else _DECIMAL.sub(grammar["decimal"], about)

    def named(self, names: Sequence[str]) -> str:
        """Return plain names as a spoken list: a, b and c."""
        last = self.word("grammar", "and")
        return f"{', '.join(names[:-1])} {last} {names[-1]}" if len(names) > 1 else "".join(names)

    def skill(self, level: str) -> str:
        """Return a usual skill level in this language, and any other as its author wrote it."""
        known: Mapping[str, str] = self.words["skill"]
        return known.get(" ".join(level.casefold().split()).replace(" ", "_"), level)

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
            # Labels of pieces, or numbers, in a row; of the author's own words none is changed.
            return text.replace(" and ", f" {self.word('grammar', 'and')} ")
        return self.figure(text)

    def phrase_as_it_is(self, sentence: str) -> str:
        """Return a sentence that is written in English outside the templates, its {places} still open."""
        known: Mapping[str, str] = self.words.get("phrases", {})
        return known.get(sentence, sentence)

    def _of_two(self, one: Any, many: Any, count: int) -> str:
        is_one = count in (0, 1) if self.words["grammar"]["plural"] == "zero-and-one" else count == 1
        return str(one if is_one else many)


_ONE = r"(?:[A-Z]{1,2}\d*|\d+)"
_LETTERS = re.compile(rf"(?:{_ONE}, )*{_ONE} and {_ONE}")
_ABOUT = re.compile(r"\babout(?= \d)")
_DECIMAL = re.compile(r"(?<=\d)\.(?=\d)")


@lru_cache(maxsize=16)
def _patterns(code: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    """Return the phrases with something that changes in them, the longest first."""
    known: Mapping[str, str] = words_of(code).words.get("phrases", {})
    open_ones = sorted((phrase for phrase in known if "{}" in phrase), key=lambda phrase: (-len(phrase), phrase))
    return tuple((re.compile("(.+?)".join(map(re.escape, phrase.split("{}")))), known[phrase]) for phrase in open_ones)


@lru_cache(maxsize=16)
def words_of(code: str = BASE_LANGUAGE) -> Words:
    """Return the words of a language by its code. Raises KeyError for one that has no folder."""
    words: dict[str, Any] = {}
    for folder in reversed(folders_of(code)):
        for table, entries in tomllib.loads((folder / "words.toml").read_text("utf-8")).items():
            words[table] = {**words.get(table, {}), **entries}
    return Words(code, words)


def folders_of(code: str) -> tuple[Path, ...]:
    """Return the folders of a language, its own first, then those it inherits from. Raises KeyError."""
    if code not in languages():
        raise KeyError(code)
    return tuple(TEMPLATES / part for part in _chain(code) if (TEMPLATES / part).is_dir())


def languages() -> tuple[str, ...]:
    """Return the codes of all languages there are folders for."""
    return tuple(sorted(folder.name for folder in TEMPLATES.iterdir() if (folder / "words.toml").is_file()))


def _chain(code: str) -> tuple[str, ...]:
    parts = code.split("-")
    return (
        *("-".join(parts[:end]) for end in range(len(parts), 0, -1)),
        *([BASE_LANGUAGE] if parts[0] != BASE_LANGUAGE else []),
    )
