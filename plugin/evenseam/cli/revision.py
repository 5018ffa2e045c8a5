"""The patterns of a revision, out of git's store, under the same rules as those on disk."""

from __future__ import annotations

import os
import re
from dataclasses import dataclass
from pathlib import Path

from evenseam.cli.loading import CannotRunError
from evenseam.publish.git_store import Entry, GitError, list_tree, read_folder, run_git, top_of, within
from evenseam.publish.sources import PATTERN_FILE, PatternSource, without_same_addresses

_COMMIT = re.compile(r"[0-9a-f]{40,64}", re.ASCII)


@dataclass(frozen=True, slots=True)
class Revision:
    """A revision that is there."""

    name: str
    """As it was given."""
    commit: str
    """Its whole hash."""


def find_revision(name: str, folder: Path) -> Revision:
    """Return a revision by its name. Raises CannotRunError when there is none."""
    if not name or name.startswith(("-", "^")) or "\0" in name or not _can_be_passed_on(name):
        raise CannotRunError(f"{name!r} is no name of a revision")
    try:
        # --verify with --end-of-options takes the word as a name whatever it looks like.
        done = run_git(folder, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}")
    except GitError as error:
        raise CannotRunError(str(error)) from None
    commit = done.stdout.decode("ascii", "replace").strip()
    if done.returncode != 0 or not _COMMIT.fullmatch(commit):
        reason = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise CannotRunError(f"git knows no revision {name!r}" + (f" ({reason[-1]})" if reason else ""))
    return Revision(name, commit)


def _can_be_passed_on(name: str) -> bool:
    try:
        os.fsencode(name)
    except UnicodeEncodeError:
        return False
    return True


def read_revision(revision: Revision, patterns: Path) -> tuple[PatternSource, ...]:
    """Return the patterns of a revision, by slug; none when the folder is not in it.

    `patterns` is the folder of pattern folders, as it stands (or would stand) in the working tree. Raises
    CannotRunError when git cannot give them.
    """
    try:
        return _read(revision, patterns)
    except GitError as error:
        raise CannotRunError(str(error)) from None


def _read(revision: Revision, patterns: Path) -> tuple[PatternSource, ...]:
    top = top_of(patterns if patterns.is_dir() else Path.cwd())
    inside = within(patterns, top)
    try:
        entries = list_tree(top, f"{revision.commit}:{inside}")
    except GitError:
        raise CannotRunError(f"{inside} of {revision.name} is no folder") from None
    folders: dict[str, list[Entry]] = {}
    for entry in entries or ():
        if len(entry.path.parts) == 2:
            folders.setdefault(entry.path.parts[0], []).append(entry)
    sources = (
        read_folder(slug, members, patterns, top)
        for slug, members in sorted(folders.items())
        if any(member.path.name == PATTERN_FILE for member in members)
    )
    return tuple(without_same_addresses(sources))
