"""`evenseam compare`: what a pull request changes, as changed figures."""

from __future__ import annotations

import argparse
import json
import re
import sys
from pathlib import Path

from evenseam.cli.engines import compare_engines
from evenseam.cli.loading import CannotRunError
from evenseam.cli.revision import find_revision, read_revision
from evenseam.publish.checked import check_pattern, version_of
from evenseam.publish.review_page import Versions, write_review_page
from evenseam.publish.sources import PatternSource, find_patterns
from evenseam.publish.whole import write_whole
from evenseam.review import (
    Review,
    Version,
    Weight,
    review_all,
    review_as_json,
    weight_of_review,
    write_annotations,
    write_markdown,
    write_one_line,
)

WORKING_TREE = "working tree"
_TITLE = re.compile(r"^title[ \t]*:[ \t]*([^\n#]+)", re.MULTILINE)
WEIGHTS = tuple(weight.word for weight in Weight if weight is not Weight.NONE)
"""Least first."""


def run(options: argparse.Namespace) -> int:
    """Compare two revisions; exit status 0 when nothing differs, 1 when something does or cannot be computed.

    With `--fail-on` lighter changes are told all the same, and end with 0.
    """
    folder: Path = options.patterns
    base = find_revision(options.base, _standing(folder))
    old = {source.slug: source for source in read_revision(base, folder)}
    if options.head is None:
        head, head_name, new = None, WORKING_TREE, _working_tree(folder)
    else:
        head = find_revision(options.head, _standing(folder))
        head_name, new = f"{head.name} ({head.commit[:10]})", {s.slug: s for s in read_revision(head, folder)}
    if not old and not new:
        raise CannotRunError(f"there is no pattern in {folder} on either side")
    versions, untouched = _versions(old, new)
    _progress("looking at the publisher")
    engine = compare_engines(base, head, _standing(folder), old.values(), is_asked=options.engines)
    _progress("")
    review = review_all(f"{base.name} ({base.commit[:10]})", head_name, versions, untouched, engine)
    if options.html is not None:
        write_whole(options.html, write_review_page(review, versions).encode())
        print(f"{options.html}: {review.same_words if review.is_same else 'written'}", file=sys.stderr)
    print(_written(review, options))
    return _status(review, Weight[options.fail_on.upper()])


def _status(review: Review, threshold: Weight) -> int:
    """Return 1 for changes of some weight. What could not be computed, and what is against the rules, always counts."""
    engine_failed = review.engine is not None and bool(review.engine.failures)
    if review.failures or engine_failed or any(pattern.problems for pattern in review.patterns):
        return 1
    return 1 if weight_of_review(review) >= threshold else 0


def _standing(folder: Path) -> Path:
    return folder if folder.is_dir() else Path.cwd()


def _working_tree(folder: Path) -> dict[str, PatternSource]:
    try:
        return {source.slug: source for source in find_patterns(folder)}
    except FileNotFoundError:
        return {}


def _versions(old: dict[str, PatternSource], new: dict[str, PatternSource]) -> tuple[Versions, list[str]]:
    """Compute both sides of every pattern whose files differ; the others are only named.

    A folder that was renamed is one pattern, under its new name.
    """
    names = _renamed(old, new)
    old = {names.get(slug, slug): source for slug, source in old.items()}
    slugs = sorted({*old, *new})
    untouched = [slug for slug in slugs if slug in old and slug in new and _is_same(old[slug], new[slug])]
    versions: dict[str, tuple[Version | None, Version | None]] = {}
    for number, slug in enumerate(slugs, start=1):
        if slug in untouched:
            continue
        _progress(f"comparing {number} of {len(slugs)}: {slug}")
        versions[slug] = (_version(old.get(slug)), _version(new.get(slug)))
    _progress("")
    return versions, untouched


def _renamed(old: dict[str, PatternSource], new: dict[str, PatternSource]) -> dict[str, str]:
    """Return new names of folders by old ones: gone on one side and come on the other, with one title and no other."""
    gone, come = ({slug: s for slug, s in one.items() if slug not in other} for one, other in ((old, new), (new, old)))
    were, are = _by_title(gone), _by_title(come)
    return {were[title]: are[title] for title in were if title in are}


def _by_title(sources: dict[str, PatternSource]) -> dict[str, str]:
    """Return slugs by the title their text says, without titles that several say, or none."""
    slugs: dict[str, list[str]] = {}
    for slug, source in sources.items():
        said = _TITLE.search(source.source.text)
        if said is not None:
            slugs.setdefault(said[1].strip().strip("\"'").casefold(), []).append(slug)
    return {title: found[0] for title, found in slugs.items() if title and len(found) == 1}


def _is_same(old: PatternSource, new: PatternSource) -> bool:
    """Tell whether two sources are the same letter for letter, so that the same engine cannot say otherwise."""
    texts = [
        {name: text.text for name, text in source.drawings.items()} | {"": source.source.text} for source in (old, new)
    ]
    return texts[0] == texts[1] and old.slug == new.slug and not old.problems and not new.problems


def _version(source: PatternSource | None) -> Version | None:
    if source is None:
        return None
    return version_of(check_pattern(source))


def _written(review: Review, options: argparse.Namespace) -> str:
    if options.json:
        return json.dumps(review_as_json(review), indent=2)
    if options.one_line:
        return write_one_line(review)
    if options.annotations:
        return write_annotations(review)
    return write_markdown(review).rstrip()


def _progress(text: str) -> None:
    if sys.stderr.isatty():
        print(f"\r\x1b[K{text}", end="", file=sys.stderr, flush=True)
