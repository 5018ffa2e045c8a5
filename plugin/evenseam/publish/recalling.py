"""What was made of a pattern before, found again without reading or computing anything."""

from __future__ import annotations

from itertools import chain

from evenseam.publish.cache import Cache, key_of
from evenseam.publish.entry import MadePattern, from_text
from evenseam.publish.options import SiteOptions
from evenseam.publish.sources import PatternSource


def key_of_pattern(source: PatternSource, options: SiteOptions) -> str:
    """Return the hash of everything a pattern is made from."""
    drawings = sorted(source.drawings.items())
    texts = chain.from_iterable((name, drawing.name, drawing.text) for name, drawing in drawings)
    problems = "\n".join(f"{problem.code.name} {problem.message}" for problem in source.problems)
    older = "\n".join(f"{text.version} {text.tree}" for text in source.older)
    return key_of(
        "pattern", options.as_text(), source.slug, source.source.name, source.source.text, problems, older, *texts
    )  # fmt: skip


def recall_pattern(source: PatternSource, options: SiteOptions, cache: Cache) -> MadePattern | None:
    """Return what was made of exactly this pattern before; None when any of it is missing or damaged."""
    text = cache.noted(key_of_pattern(source, options))
    made = from_text(text) if text is not None else None
    return made if made and all(cache.is_sound(name) for name in made.hashes) else None
