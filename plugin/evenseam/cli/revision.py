"""The texts of a revision, read from git's store as they are: nothing is checked out, filtered or fetched."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from evenseam.cli.loading import CannotRunError
from evenseam.problems import Code, Place, Problem, SourceText
from evenseam.publish.sources import (
    DRAWING_SUFFIX,
    LARGEST_TEXT,
    NOT_TEXT,
    OUTSIDE_FOLDER,
    PATTERN_FILE,
    TOO_LARGE,
    PatternSource,
)

_PLAIN_FILES = ("100644", "100755", "100664")
_LINK = "120000"


@dataclass(frozen=True, slots=True)
class Revision:
    """A revision that is there."""

    name: str
    """As it was given."""
    commit: str
    """Its whole hash."""


@dataclass(frozen=True, slots=True)
class _Entry:
    mode: str
    blob: str
    size: int
    path: PurePosixPath
    """From the folder of patterns."""


def find_revision(name: str, folder: Path) -> Revision:
    """Return a revision by its name. Raises CannotRunError when there is none."""
    if not name or name.startswith("-") or "\0" in name:
        raise CannotRunError(f"{name!r} is no name of a revision")
    # --verify with --end-of-options takes the word as a name whatever it looks like.
    done = _git(folder, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}")
    commit = done.stdout.decode("ascii", "replace").strip()
    if done.returncode != 0 or not commit:
        reason = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise CannotRunError(f"git knows no revision {name!r}" + (f" ({reason[-1]})" if reason else ""))
    return Revision(name, commit)


def read_revision(revision: Revision, patterns: Path) -> tuple[PatternSource, ...]:
    """Return the patterns of a revision, by slug; none when the folder is not in it.

    `patterns` is the folder of pattern folders, as it stands (or would stand) in the working tree.
    """
    top = _top(patterns)
    inside = _whole(patterns).relative_to(top).as_posix()
    entries = _list(revision, top, "" if inside == "." else inside)
    folders: dict[str, list[_Entry]] = {}
    for entry in entries:
        if len(entry.path.parts) == 2:
            folders.setdefault(entry.path.parts[0], []).append(entry)
    return tuple(
        _read_folder(slug, members, patterns, top)
        for slug, members in sorted(folders.items())
        if any(member.path.name == PATTERN_FILE for member in members)
    )


def _top(patterns: Path) -> Path:
    folder = patterns if patterns.is_dir() else Path.cwd()
    done = _git(folder, "rev-parse", "--show-toplevel")
    if done.returncode != 0:
        raise CannotRunError(f"{folder} is not in a git repository")
    top = Path(os.path.realpath(os.fsdecode(done.stdout.rstrip(b"\n"))))
    if not _whole(patterns).is_relative_to(top):
        raise CannotRunError(f"{patterns} is outside the git repository {top}")
    return top


def _whole(patterns: Path) -> Path:
    """Return the whole path of a folder, as git names it: links on the way to it are followed, it itself is not."""
    if patterns.name in ("", ".."):
        return Path(os.path.realpath(patterns))
    return Path(os.path.realpath(patterns.parent)) / patterns.name


def _list(revision: Revision, top: Path, inside: str) -> list[_Entry]:
    tree = f"{revision.commit}:{inside}"
    done = _git(top, "ls-tree", "-r", "-z", "-l", "--full-tree", tree)
    if done.returncode != 0:
        known = _git(top, "cat-file", "-e", tree)
        if known.returncode != 0:
            return []
        raise CannotRunError(f"{inside} of {revision.name} is no folder")
    entries = []
    for line in done.stdout.split(b"\0"):
        if line:
            facts, _, path = line.partition(b"\t")
            mode, _, blob, size = facts.decode("ascii").split()
            entries.append(_Entry(mode, blob, int(size) if size != "-" else 0, PurePosixPath(os.fsdecode(path))))
    return entries


def _read_folder(slug: str, members: Sequence[_Entry], patterns: Path, top: Path) -> PatternSource:
    problems: list[Problem] = []
    texts: dict[str, SourceText] = {}
    for entry in members:
        if entry.path.name != PATTERN_FILE and entry.path.suffix != DRAWING_SUFFIX:
            continue
        name = (PurePosixPath(patterns.as_posix()) / entry.path).as_posix()
        text = _read(entry, name, top, problems)
        if text is not None:
            texts[entry.path.name] = text
    name = (PurePosixPath(patterns.as_posix()) / slug / PATTERN_FILE).as_posix()
    source = texts.pop(PATTERN_FILE, None) or SourceText(name, "")
    return PatternSource(slug, source, dict(sorted(texts.items())), tuple(problems))


def _read(entry: _Entry, name: str, top: Path, problems: list[Problem]) -> SourceText | None:
    short = entry.path.name
    if entry.mode not in _PLAIN_FILES:
        message = f"{short} leads elsewhere" if entry.mode == _LINK else f"{short} is no file"
        problems.append(_problem(OUTSIDE_FOLDER, name, message, "put the file itself into the pattern's folder"))
        return None
    if entry.size > LARGEST_TEXT:
        hint = "a pattern or drawing is far smaller; remove what is not needed"
        problems.append(_problem(TOO_LARGE, name, f"{short} is larger than 1 MB", hint))
        return None
    done = _git(top, "cat-file", "blob", entry.blob)
    if done.returncode != 0:
        raise CannotRunError(f"git cannot give the text of {name}: its store is not complete")
    try:
        return SourceText(name, done.stdout.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        before = done.stdout[: error.start].decode("utf-8", "replace")
        line, column = before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1
        problem = _problem(NOT_TEXT, name, f"{short} is not UTF-8 text", "save the file as UTF-8", line, column)
        problems.append(problem)
        return None


def _problem(code: Code, name: str, message: str, hint: str, line: int = 1, column: int = 1) -> Problem:
    return Problem(code, message, Place(name, line, column, line, column + 1), hint)


def _git(folder: Path, *words: str) -> subprocess.CompletedProcess[bytes]:
    # No lazy fetch from a partial clone, no replaced objects, no locks; nobody is asked for a password.
    quiet = {
        "GIT_NO_LAZY_FETCH": "1", "GIT_NO_REPLACE_OBJECTS": "1", "GIT_OPTIONAL_LOCKS": "0", "GIT_TERMINAL_PROMPT": "0",
        "LC_ALL": "C",
    }  # fmt: skip
    try:
        return subprocess.run(
            ["git", "-C", os.fspath(folder), "--no-pager", *words],
            stdin=subprocess.DEVNULL, capture_output=True, check=False, env={**os.environ, **quiet},
        )  # fmt: skip
    except FileNotFoundError:
        raise CannotRunError("git is not installed; it keeps the revisions that are to be compared") from None
