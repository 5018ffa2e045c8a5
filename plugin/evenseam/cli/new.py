"""`evenseam new`: a pattern to start from, or a whole site."""

from __future__ import annotations

import argparse
import os
import re
import shutil
import tempfile
import unicodedata
from pathlib import Path

from evenseam.cli.loading import CannotRunError
from evenseam.problems import SourceText
from evenseam.publish.checked import check_pattern
from evenseam.publish.sources import PATTERN_FILE, PatternSource
from evenseam.publish.starter_site import starter_site
from evenseam.publish.whole import write_whole
from evenseam.reading import starter

FIRST_PATTERN = "First Light"


def add_words(command: argparse.ArgumentParser, patterns: Path) -> None:
    """Say what the command understands."""
    command.add_argument(
        "name", nargs="?",
        help=f"title of the new pattern, such as Winter Gulls; with --site it may be left out ({FIRST_PATTERN})",
    )  # fmt: skip
    command.add_argument("--patterns", type=Path, default=patterns)
    command.add_argument(
        "--site", type=Path, metavar="FOLDER", help="make a whole site to publish in a new folder, with this pattern"
    )
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Write a starter pattern into a new folder, or a site with one."""
    if options.site is not None:
        return _new_site(options.site, FIRST_PATTERN if options.name is None else options.name)
    if options.name is None:
        raise CannotRunError("say what the new pattern is called, such as: evenseam new 'Winter Gulls'")
    slug = _sound_slug(options.name)
    folder: Path = options.patterns / slug
    if folder.exists():
        raise CannotRunError(f"{folder} is there already; choose another name, or change the pattern that is there")
    folder.mkdir(parents=True)
    file = folder / PATTERN_FILE
    write_whole(file, starter(options.name).encode())
    print(f"{file}\nNow change it, and see the page with: mkdocs serve (in a copy of Evenseam: python3 plugin serve)")
    return 0


def _new_site(folder: Path, pattern: str) -> int:
    slug = _sound_slug(pattern)
    if folder.exists() and not (folder.is_dir() and not any(folder.iterdir())):
        raise CannotRunError(f"{folder} is there already; name a new or an empty folder")
    # What a file system calls a folder may be no text: then the site can be named later.
    name = _slug(folder.absolute().name).replace("-", " ").title() or "My patterns"
    folder.parent.mkdir(parents=True, exist_ok=True)
    new = Path(tempfile.mkdtemp(prefix=f".{folder.name}-", dir=folder.parent))
    try:
        for path, content in starter_site(name, slug, pattern).items():
            write_whole(new / path, content, is_lasting=False)
        new.chmod(0o755)
        # A folder takes the place of an empty one in a single step; where it cannot, the empty one goes first.
        if os.name == "nt" and folder.exists():
            folder.rmdir()
        new.replace(folder)
    finally:
        shutil.rmtree(new, ignore_errors=True)
    print(f"{folder}\nNow go there and see the site with: mkdocs serve. README.md in it says the rest.")
    return 0


def _sound_slug(title: str) -> str:
    slug = _slug(title)
    if not slug:
        raise CannotRunError(f"{title!r} has no letter or figure a folder could be named after")
    text = SourceText(f"{slug}/{PATTERN_FILE}", starter(title))
    if not check_pattern(PatternSource(slug, text, {})).is_valid:
        raise CannotRunError(f"{title!r} cannot be a title; use letters, figures, spaces and simple punctuation")
    return slug


def _slug(name: str) -> str:
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:60].rstrip("-")
