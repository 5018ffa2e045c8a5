"""What was made of a pattern before, found again without reading or computing anything."""

from __future__ import annotations

from itertools import chain
from pathlib import Path

from evenseam.publish.cache import Cache, key_of
from evenseam.publish.entry import MadePattern, from_text
from evenseam.publish.options import SiteOptions
from evenseam.publish.sources import PatternSource

_read: dict[tuple[Path, str], MadePattern] = {}
"""What was read from a cache at the last look by this process: a preview looks again after every edit."""


def key_of_pattern(source: PatternSource, options: SiteOptions) -> str:
    """Return the hash of everything a pattern is made from."""
    drawings = sorted(source.drawings.items())
    texts = chain.from_iterable((name, drawing.name, drawing.text) for name, drawing in drawings)
    problems = "\n".join(f"{problem.code.name} {problem.message}" for problem in source.problems)
    older = "\n".join(f"{text.version} {text.tree}" for text in source.older)
    return key_of(
        "pattern", options.as_text(), source.slug, source.source.name, source.source.text, problems, older, *texts
    )  # fmt: skip


def recall_patterns(sources: tuple[PatternSource, ...], options: SiteOptions, cache: Cache) -> dict[str, MadePattern]:
    """Return what was made of exactly these patterns before, by slug; nothing where it is missing or damaged."""
    before = dict(_read)
    _read.clear()
    found: dict[str, MadePattern] = {}
    for source in sources:
        key = cache.folder, key_of_pattern(source, options)
        made = before.get(key) or _noted(key[1], cache)
        if made and all(cache.is_sound(name) for name in made.hashes):
            found[source.slug] = _read[key] = made
    return found


def _noted(key: str, cache: Cache) -> MadePattern | None:
    text = cache.noted(key)
    return from_text(text) if text is not None else None
