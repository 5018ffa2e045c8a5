"""`evenseam check --since`: patterns held against what was published under their names before."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from evenseam.cli.revision import find_revision, read_revision
from evenseam.publish.checked import CheckedPattern, check_pattern, version_of
from evenseam.publish.sources import PATTERN_FILE, PatternSource
from evenseam.review import check_since


def since(checked: list[CheckedPattern], revision: str, path: Path) -> list[CheckedPattern]:
    """Return the patterns with the problems that only what was published before makes one.

    Raises CannotRunError when there is no such revision.
    """
    folder = _folder_of_patterns(path)
    found = find_revision(revision, folder if folder.is_dir() else Path.cwd())
    published = {source.slug: source for source in read_revision(found, folder)}
    return [_held(pattern, published.get(pattern.slug)) for pattern in checked]


def _held(pattern: CheckedPattern, source: PatternSource | None) -> CheckedPattern:
    if source is None:
        return pattern
    problems = check_since(version_of(check_pattern(source)), version_of(pattern))
    return replace(pattern, problems=(*pattern.problems, *problems))


def _folder_of_patterns(path: Path) -> Path:
    """Return the folder of pattern folders that a path of the command belongs to."""
    if path.is_file():
        return path.parent.parent
    return path.parent if (path / PATTERN_FILE).exists() else path
