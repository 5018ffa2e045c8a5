"""The wording of one language: its templates, its number words and its plurals, all from files."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined, pass_context
from jinja2.runtime import Context

from evenseam.pattern import Quantity
from evenseam.wording.marked import Markdown, about_once, escape, mark_figure
from evenseam.wording.words import BASE_LANGUAGE, TEMPLATES, Words, folders_of, languages, words_of

__all__ = ["BASE_LANGUAGE", "TEMPLATES", "Language", "first_upper", "language", "languages"]


@dataclass(frozen=True, slots=True)
class Language(Words):
    """One language or variant, ready to write."""

    environment: Environment

    def write(self, template: str, values: Mapping[str, Any]) -> str:
        """Fill a template, such as steps/bind. Raises jinja2 errors: a gap in a template is our own mistake."""
        return self.environment.get_template(f"{template}.md").render(values)

    def listed(self, parts: Sequence[str]) -> Markdown:
        """Return parts as a spoken list: a, b and c. Parts that are not Markdown yet are escaped."""
        return Markdown(self.named([part if isinstance(part, Markdown) else escape(part) for part in parts]))


@lru_cache(maxsize=16)
def language(code: str = BASE_LANGUAGE) -> Language:
    """Return a language by its code. Raises KeyError for one that has no folder."""
    words = words_of(code).words
    environment = Environment(
        loader=ChoiceLoader([FileSystemLoader(folder) for folder in folders_of(code)]),
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


def first_upper(text: str) -> str:
    """Return the text with its first letter as a capital, the rest as it stands, and Markdown as Markdown."""
    return type(text)(text[:1].upper() + text[1:])


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
    other = about_once(width.number, height.text)
    return Markdown(f"{mark_figure(say(width.number), name(width))} × {mark_figure(say(other), name(height))}")
