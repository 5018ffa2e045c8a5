"""The list of corrections of one pattern: every version's words, and the figures computed from both versions' texts."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass, field

from evenseam.exact import Unit
from evenseam.publish.cache import Cache, key_of
from evenseam.publish.checked import CheckedPattern, check_pattern, version_of
from evenseam.publish.html_text import escape, filled
from evenseam.publish.older_versions import read_older
from evenseam.publish.options import EDITION_WORDS, edition_of
from evenseam.publish.sources import PatternSource
from evenseam.review import Corrected, CorrectedSize, Correction, Version, compare_versions, list_corrections
from evenseam.wording import Words

MOST_OPEN = 6
"""With more lines than this a list of figures is folded away."""


def make_corrections(
    source: PatternSource, checked: CheckedPattern, cache: Cache, words: Words
) -> tuple[Correction, ...]:
    """Return the corrections of a pattern, newest first; without `changes:` there are none."""
    if checked.pattern is None:
        return ()
    return list_corrections(checked.pattern, _Versions(source, checked, cache, words).between)


@dataclass(frozen=True, slots=True)
class InWords:
    """Says changes in the language of a site: its table of phrases has the sentences by their English."""

    words: Words

    def said(self, sentence: str, **parts: str) -> str:
        """Return a sentence with its {places} filled."""
        return self.words.phrase_as_it_is(sentence).format(**parts)

    def name(self, label: str) -> str:
        """Return the name of a cut, a fabric or a block."""
        return self.words.phrase(label)

    def step(self, label: str) -> str:
        """Return the name of a step; the table has it after the word step."""
        return self.words.phrase(f"step {label}").removeprefix("step ")

    def figure(self, text: str) -> str:
        """Return a printed figure."""
        return self.words.figure(text)

    def edition(self, unit: Unit) -> str:
        """Return the name of an edition."""
        return self.words.word("page", EDITION_WORDS[edition_of(unit)])

    def listed(self, names: Sequence[str]) -> str:
        """Return names as a spoken list."""
        return self.words.named(names)


@dataclass(slots=True)
class _Versions:
    """The versions of one pattern, computed when first asked for."""

    source: PatternSource
    checked: CheckedPattern
    cache: Cache
    words: Words
    computed: dict[str, Version | None] = field(default_factory=dict)

    def between(self, old: str, new: str) -> Corrected | None:
        """Return what differs, from the cache when these very texts were compared before."""
        marks = (self.mark(old), self.mark(new))
        if not all(marks):
            return None
        key = key_of("correction", self.words.code, old, new, *marks)
        noted = self.cache.noted(key)
        if noted is None:
            noted = _as_text(self.compared(old, new))
            self.cache.note(key, noted)
        return _from_text(noted)

    def compared(self, old: str, new: str) -> Corrected | None:
        before, after = self.version(old), self.version(new)
        return (
            compare_versions(before, after, InWords(self.words)) if before is not None and after is not None else None
        )

    def is_now(self, number: str) -> bool:
        return self.checked.pattern is not None and self.checked.pattern.version == number

    def mark(self, number: str) -> str:
        """Return what stands for the texts of a version; empty when there are none."""
        if self.is_now(number):
            drawings = sorted(self.source.drawings.items())
            texts = (text for name, drawing in drawings for text in (name, drawing.text))
            return key_of("texts", self.source.source.text, *texts)
        return next((older.tree for older in self.source.older if older.version == number), "")

    def version(self, number: str) -> Version | None:
        if self.is_now(number):
            return version_of(self.checked)
        if number not in self.computed:
            self.computed[number] = self.read(number)
        return self.computed[number]

    def read(self, number: str) -> Version | None:
        older = next(older for older in self.source.older if older.version == number)
        source = read_older(older, self.source)
        found = version_of(check_pattern(source)) if source is not None else None
        # A commit was chosen by a quick look at its text: only the reader knows what version it really is.
        is_it = found is not None and found.pattern is not None and found.pattern.version == number
        return found if is_it else None


def _as_text(corrected: Corrected | None) -> str:
    if corrected is None:
        return json.dumps(None)
    sizes = [[size.size, size.name, size.unit.name, list(size.figures)] for size in corrected.sizes]
    return json.dumps({"sizes": sizes, "unknown": list(corrected.unknown)})


def _from_text(text: str) -> Corrected | None:
    data = json.loads(text)
    if data is None:
        return None
    sizes = (CorrectedSize(size, name, Unit[unit], tuple(figures)) for size, name, unit, figures in data["sizes"])
    return Corrected(tuple(sizes), tuple(data["unknown"]))


def write_corrections(corrections: tuple[Correction, ...], words: Words) -> str:
    """Return the part of a pattern's first page about its versions; empty when it lists none."""
    if not corrections:
        return ""
    items = "\n".join(f"<li>{_version(correction, words)}</li>" for correction in corrections)
    heading = escape(words.word("corrections", "heading"))
    return f'<h2 id="corrections">{heading}</h2>\n<ul class="changes">\n{items}\n</ul>'


def _version(correction: Correction, words: Words) -> str:
    number = escape(words.fill("corrections", "number", version=correction.version))
    parts = {"date": escape(correction.date), "what": escape(correction.what)}
    told = filled(words.word("corrections", "version"), version=f"<strong>{number}</strong>", **parts)
    if not correction.before:
        return told
    return f'{told}\n<div class="corrected" data-search-exclude>{_figures(correction, words)}</div>'


def _figures(correction: Correction, words: Words) -> str:
    corrected = correction.corrected

    def say(key: str, **parts: object) -> str:
        return escape(words.fill("corrections", key, before=correction.before, **parts))

    if corrected is None:
        return f"<p>{say('not_on_record')}</p>"
    unknown = ""
    if corrected.unknown:
        unknown = f"<p>{say('not_compared', sizes=', '.join(corrected.unknown))}</p>"
    if not corrected.sizes:
        return unknown or f"<p>{say('same')}</p>"
    lists = "\n".join(_size(size, words) for size in corrected.sizes)
    lines = sum(len(size.figures) for size in corrected.sizes)
    is_open = " open" if lines <= MOST_OPEN else ""
    sizes = len({size.size for size in corrected.sizes})
    summary = say("differs_in", sizes=sizes) if sizes > 1 else say("differs")
    return f"<details{is_open}><summary>{summary}</summary>\n{lists}\n</details>{unknown}"


def _size(size: CorrectedSize, words: Words) -> str:
    items = "".join(f"<li>{escape(told[:1].upper() + told[1:])}</li>" for told in size.figures)
    edition = escape(words.word("page", EDITION_WORDS[edition_of(size.unit)]))
    return f"<p><strong>{escape(size.name)}</strong>, {edition}</p>\n<ul>{items}</ul>"
