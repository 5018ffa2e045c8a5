"""`evenseam handout` and `evenseam export`: commands that write files, whole or not at all."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from evenseam.cli.loading import CannotRunError, load_sheet, load_source, tell
from evenseam.publish.cache import Cache
from evenseam.publish.checked import CheckedPattern
from evenseam.publish.corrections import make_corrections
from evenseam.publish.export import ExportRefusedError, export
from evenseam.publish.older_versions import with_older_versions
from evenseam.publish.options import SiteOptions
from evenseam.publish.sheet_handout import make_handout
from evenseam.publish.site import build_site
from evenseam.publish.sources import PatternSource, find_patterns
from evenseam.publish.whole import write_whole
from evenseam.review import Correction
from evenseam.wording import words_of

CACHE = Path(".cache/evenseam")


def run_handout(options: argparse.Namespace) -> int:
    """Write one handout as PDF."""
    checked, sheet = load_sheet(options)
    if sheet is None:
        return 1
    outcome = make_handout(sheet, options.paper, corrections=_corrections(load_source(options.pattern), checked))
    if outcome.value is None or not outcome.is_valid:
        tell(outcome.problems, checked.sources)
        return 1
    name = f"{checked.slug}-{sheet.project.size}-{sheet.project.unit.name.lower()}-{options.paper}.pdf"
    path: Path = options.output or Path(name)
    write_whole(path, outcome.value)
    print(path)
    return 0


def _corrections(source: PatternSource, checked: CheckedPattern) -> tuple[Correction, ...]:
    """Return what differs between the versions of a pattern, as far as they are on record."""
    if checked.pattern is None or len(checked.pattern.changes) < 2:
        return ()
    cache = Cache(CACHE)
    in_time = with_older_versions((source,), Path(source.source.name).parent.parent, cache)
    if in_time.note:
        print(f"evenseam: {in_time.note}", file=sys.stderr)
    return make_corrections(in_time.sources[0], checked, cache, words_of())


def run_export(options: argparse.Namespace) -> int:
    """Write the whole site as plain files into a new folder."""
    try:
        sources = find_patterns(options.patterns)
    except FileNotFoundError as error:
        raise CannotRunError(str(error)) from None
    cache = Cache(CACHE)
    in_time = with_older_versions(sources, options.patterns, cache)
    if in_time.note:
        print(f"evenseam: {in_time.note}", file=sys.stderr)
    site = build_site(in_time.sources, SiteOptions(), cache, tell=_progress)
    if sys.stderr.isatty():
        print("\r\x1b[K", end="", file=sys.stderr)
    if site.problems:
        tell(site.problems, site.sources)
    docs: Path | None = options.docs if options.docs.is_dir() else None
    try:
        pages = export(site, options.output, docs)
    except ExportRefusedError as error:
        raise CannotRunError(str(error)) from None
    print(f"{options.output}: {pages} computed pages, {len(site.files)} files")
    return 1 if site.errors else 0


def _progress(done: int, of: int) -> None:
    if sys.stderr.isatty():
        print(f"\r\x1b[Kpattern {done} of {of}", end="", file=sys.stderr, flush=True)
