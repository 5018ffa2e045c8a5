"""`evenseam handout`, `evenseam export` and `evenseam new`: commands that write files, whole or not at all."""

from __future__ import annotations

import argparse
import re
import sys
import unicodedata
from pathlib import Path

from evenseam.cli.loading import CannotRunError, load_sheet, tell
from evenseam.problems import SourceText
from evenseam.publish.cache import Cache
from evenseam.publish.checked import check_pattern
from evenseam.publish.export import ExportRefusedError, export
from evenseam.publish.options import SiteOptions
from evenseam.publish.sheet_handout import make_handout
from evenseam.publish.site import build_site
from evenseam.publish.sources import PATTERN_FILE, PatternSource, find_patterns
from evenseam.publish.whole import write_whole
from evenseam.reading import starter

CACHE = Path(".cache/evenseam")


def run_handout(options: argparse.Namespace) -> int:
    """Write one handout as PDF."""
    checked, sheet = load_sheet(options)
    if sheet is None:
        return 1
    outcome = make_handout(sheet, options.paper)
    if outcome.value is None or not outcome.is_valid:
        tell(outcome.problems, checked.sources)
        return 1
    name = f"{checked.slug}-{sheet.project.size}-{sheet.project.unit.name.lower()}-{options.paper}.pdf"
    path: Path = options.output or Path(name)
    write_whole(path, outcome.value)
    print(path)
    return 0


def run_export(options: argparse.Namespace) -> int:
    """Write the whole site as plain files into a new folder."""
    try:
        sources = find_patterns(options.patterns)
    except FileNotFoundError as error:
        raise CannotRunError(str(error)) from None
    site = build_site(sources, SiteOptions(), Cache(CACHE), tell=_progress)
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


def run_new(options: argparse.Namespace) -> int:
    """Write a starter pattern into a new folder."""
    slug = _slug(options.name)
    if not slug:
        raise CannotRunError(f"{options.name!r} has no letter or figure a folder could be named after")
    folder: Path = options.patterns / slug
    if folder.exists():
        raise CannotRunError(f"{folder} is there already; choose another name, or change the pattern that is there")
    text = starter(options.name)
    file = folder / PATTERN_FILE
    checked = check_pattern(PatternSource(slug, SourceText(file.as_posix(), text), {}))
    if not checked.is_valid:
        raise CannotRunError(f"{options.name!r} cannot be a title; use letters, figures, spaces and simple punctuation")
    folder.mkdir(parents=True)
    write_whole(file, text.encode())
    print(f"{file}\nNow change it, and see the page with: python3 plugin serve (or mkdocs serve)")
    return 0


def _slug(name: str) -> str:
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:60].rstrip("-")


def _progress(done: int, of: int) -> None:
    if sys.stderr.isatty():
        print(f"\r\x1b[Kpattern {done} of {of}", end="", file=sys.stderr, flush=True)
