"""Texts out of git's store, as they are: nothing is checked out, filtered, fetched or run."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from evenseam.problems import Code, Place, Problem, SourceText
from evenseam.publish.sources import (
    DRAWING_SUFFIX,
    LARGEST_TEXT,
    MOST_DRAWINGS,
    NOT_TEXT,
    OUTSIDE_FOLDER,
    PATTERN_FILE,
    TOO_LARGE,
    PatternSource,
    address_of_folder,
    printable,
    too_many_drawings,
    unshowable_drawing,
)

_PLAIN_FILES = ("100644", "100755", "100664")
_LINK = "120000"
_NOT_OURS = ("GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX", "GIT_COMMON_DIR")
"""What git sets for its hooks: it is about the hook's repository and folder, and would lead elsewhere from here."""


class GitError(Exception):
    """Git cannot give what was asked for; the message says why."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A file in git's store."""

    mode: str
    blob: str
    size: int
    path: PurePosixPath


def run_git(folder: Path, *words: str, given: bytes = b"") -> subprocess.CompletedProcess[bytes]:
    """Run git in a folder. Raises GitError when there is no git."""
    # No lazy fetch from a partial clone, no replaced objects, no locks; nobody is asked for a password.
    quiet = {
        "GIT_NO_LAZY_FETCH": "1", "GIT_NO_REPLACE_OBJECTS": "1", "GIT_OPTIONAL_LOCKS": "0", "GIT_TERMINAL_PROMPT": "0",
        "LC_ALL": "C",
    }  # fmt: skip
    kept = {name: value for name, value in os.environ.items() if name not in _NOT_OURS}
    try:
        # An empty text is given rather than nothing: git must not wait for a terminal.
        return subprocess.run(
            ["git", "-C", os.fspath(folder), "--no-pager", *words],
            input=given, capture_output=True, check=False, env={**kept, **quiet},
        )  # fmt: skip
    except FileNotFoundError:
        raise GitError("git is not installed; it keeps the revisions that are to be compared") from None


def top_of(folder: Path) -> Path:
    """Return the top of the repository a folder is in. Raises GitError when it is in none."""
    done = run_git(folder, "rev-parse", "--show-toplevel")
    if done.returncode != 0:
        raise GitError(f"{folder} is not in a git repository")
    return Path(os.path.realpath(os.fsdecode(done.stdout.rstrip(b"\n"))))


def within(folder: Path, top: Path) -> str:
    """Return a folder as git names it, from the top of its repository; empty for the top itself.

    Links on the way to it are followed, it itself is not. Raises GitError when it is outside.
    """
    if folder.name in ("", ".."):
        whole = Path(os.path.realpath(folder))
    else:
        whole = Path(os.path.realpath(folder.parent)) / folder.name
    if not whole.is_relative_to(top):
        raise GitError(f"{folder} is outside the git repository {top}")
    inside = whole.relative_to(top).as_posix()
    return "" if inside == "." else inside


def list_tree(top: Path, tree: str) -> list[Entry] | None:
    """Return every file of a folder in the store, named from that folder; None when it is not there.

    `tree` is COMMIT:FOLDER or the name of the folder's content. Raises GitError when it is no folder.
    """
    done = run_git(top, "ls-tree", "-r", "-z", "-l", "--full-tree", tree)
    if done.returncode != 0:
        if run_git(top, "cat-file", "-e", tree).returncode != 0:
            return None
        raise GitError(f"{tree} is no folder")
    entries = []
    for line in done.stdout.split(b"\0"):
        if line:
            facts, _, path = line.partition(b"\t")
            mode, _, blob, size = facts.decode("ascii").split()
            entries.append(Entry(mode, blob, int(size) if size != "-" else 0, PurePosixPath(os.fsdecode(path))))
    return entries


def read_blobs(top: Path, blobs: Sequence[str], *, largest: int = LARGEST_TEXT) -> Mapping[str, bytes]:
    """Return the content of some objects by their names, those apart that are missing or larger than `largest`."""
    wanted = list(dict.fromkeys(blobs))
    if not wanted:
        return {}
    listed = "".join(f"{blob}\n" for blob in wanted).encode()
    told = run_git(top, "cat-file", "--batch-check=%(objecttype) %(objectsize)", given=listed).stdout.splitlines()
    small = [
        blob
        for blob, facts in zip(wanted, told, strict=False)
        if facts.startswith(b"blob ") and int(facts.split()[1]) <= largest
    ]
    rest = run_git(top, "cat-file", "--batch", given="".join(f"{blob}\n" for blob in small).encode()).stdout
    found: dict[str, bytes] = {}
    for blob in small:
        head, _, rest = rest.partition(b"\n")
        size = int(head.split()[2])
        found[blob], rest = rest[:size], rest[size + 1 :]
    return found


def read_folder(slug: str, members: Sequence[Entry], patterns: Path, top: Path) -> PatternSource:
    """Return the texts of one pattern folder, by the rules that hold for a folder on disk.

    Raises GitError when the store is not complete.
    """
    problems: list[Problem] = []
    folder = PurePosixPath(patterns.as_posix()) / slug
    name = printable((folder / PATTERN_FILE).as_posix())
    address = address_of_folder(slug, name, problems)
    drawings = [entry for entry in members if entry.path.suffix == DRAWING_SUFFIX]
    if len(drawings) > MOST_DRAWINGS:
        problems.append(too_many_drawings(len(drawings), name))
        drawings = []
    wanted = [entry for entry in members if entry.path.name == PATTERN_FILE]
    for entry in drawings:
        if entry.path.name != printable(entry.path.name):
            problems.append(unshowable_drawing(entry.path.name, name))
        else:
            wanted.append(entry)
    good = [entry for entry in wanted if entry.mode in _PLAIN_FILES and entry.size <= LARGEST_TEXT]
    contents = read_blobs(top, [entry.blob for entry in good])
    texts: dict[str, SourceText] = {}
    for entry in wanted:
        shown = printable((folder / entry.path.name).as_posix())
        text = _text(entry, shown, contents, problems)
        if text is not None:
            texts[entry.path.name] = text
    source = texts.pop(PATTERN_FILE, None) or SourceText(name, "")
    return PatternSource(address, source, dict(sorted(texts.items())), tuple(problems))


def _text(entry: Entry, shown: str, contents: Mapping[str, bytes], problems: list[Problem]) -> SourceText | None:
    short = entry.path.name
    if entry.mode not in _PLAIN_FILES:
        message = f"{short} leads elsewhere" if entry.mode == _LINK else f"{short} is no file"
        problems.append(_problem(OUTSIDE_FOLDER, shown, message, "put the file itself into the pattern's folder"))
        return None
    if entry.size > LARGEST_TEXT:
        hint = "a pattern or drawing is far smaller; remove what is not needed"
        problems.append(_problem(TOO_LARGE, shown, f"{short} is larger than 1 MB", hint))
        return None
    if entry.blob not in contents:
        raise GitError(f"git cannot give the text of {shown}: its store is not complete")
    content = contents[entry.blob]
    try:
        return SourceText(shown, content.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        before = content[: error.start].decode("utf-8", "replace")
        line, column = before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1
        message = f"{short} is not UTF-8 text"
        problems.append(_problem(NOT_TEXT, shown, message, "save the file as UTF-8", line, column))
        return None


def _problem(code: Code, name: str, message: str, hint: str, line: int = 1, column: int = 1) -> Problem:
    return Problem(code, message, Place(name, line, column, line, column + 1), hint)
