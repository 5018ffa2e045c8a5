"""Where the texts of a pattern's older versions lie: found in git's history, which is read once for all patterns.

The text of version 1.0 is the one tagged SLUG/1.0, or else that of the last commit at which the pattern said
`version: "1.0"`. The commits are part of what a site is made from: the same commits give the same bytes.
"""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path, PurePosixPath

from evenseam.publish.cache import Cache, key_of
from evenseam.publish.git_store import GitError, list_tree, read_blobs, read_folder, run_git, within
from evenseam.publish.sources import PATTERN_FILE, OlderText, PatternSource

_VERSION = re.compile(rb"""^(?:version|"version"|'version')[ \t]*:[ \t]*["']?([^"'\s#]+)""", re.MULTILINE)
_VERSIONS = re.compile(r"""\bversion["']?[ \t]*:""")
_ONE_VERSION = 2
"""How often a pattern file with one version names one: at the top, and in its only entry of `changes:`."""
_NOTHING = re.compile(r"0+")


@dataclass(frozen=True, slots=True)
class SourcesInTime:
    """Patterns that know where their older texts lie, and what there is to say to whoever builds."""

    sources: tuple[PatternSource, ...]
    note: str = ""
    """Why older texts cannot be had, and how they could; empty when there is nothing to say."""


def with_older_versions(sources: Sequence[PatternSource], patterns: Path, cache: Cache) -> SourcesInTime:
    """Return the patterns with the places of their older texts. Git is asked only if some pattern has older versions.

    `patterns` is the folder of pattern folders. What history holds is kept in the cache under the newest commit and
    the tags, so that a build without new commits does not walk through it again.
    """
    several = [source for source in sources if len(_VERSIONS.findall(source.source.text)) > _ONE_VERSION]
    if not several:
        return SourcesInTime(tuple(sources))
    try:
        top, is_cut = _repository(patterns)
        folders = sorted({_folder_of(source) for source in several})
        known = _known(top, within(patterns, top), folders, is_cut, cache)
    except GitError as error:
        return SourcesInTime(tuple(sources), _told_in_words(len(several), str(error)))
    found = {source.slug: _older(known.get(_folder_of(source), {}), top) for source in several}
    in_time = tuple(replace(source, older=found.get(source.slug, ())) for source in sources)
    return SourcesInTime(in_time, _note(several, known, is_cut))


def read_older(older: OlderText, source: PatternSource) -> PatternSource | None:
    """Return the texts of an older version; None when the store does not have them any more."""
    top = Path(older.top)
    name = PurePosixPath(source.source.name)
    try:
        entries = list_tree(top, older.tree)
        if entries is None:
            return None
        members = [entry for entry in entries if len(entry.path.parts) == 1]
        return replace(read_folder(name.parent.name, members, Path(name.parent.parent), top), slug=source.slug)
    except GitError:
        return None


def _older(versions: Mapping[str, tuple[str, str]], top: Path) -> tuple[OlderText, ...]:
    return tuple(OlderText(version, str(top), commit, tree) for version, (commit, tree) in sorted(versions.items()))


def _folder_of(source: PatternSource) -> str:
    """Return the name of a pattern's folder: its slug may differ from it."""
    return PurePosixPath(source.source.name).parent.name


def _repository(patterns: Path) -> tuple[Path, bool]:
    """Return the top of the repository, and whether its history is cut short."""
    done = run_git(patterns, "rev-parse", "--show-toplevel", "--is-shallow-repository")
    top, _, is_cut = done.stdout.rstrip(b"\n").rpartition(b"\n")
    if b"dubious ownership" in done.stderr:
        raise GitError("git does not read a folder of another user (see git help config, safe.directory)")
    if done.returncode != 0 or not top:
        raise GitError("there is no git history here")
    return Path(os.path.realpath(os.fsdecode(top))), is_cut == b"true"


def _known(
    top: Path, inside: str, folders: Sequence[str], is_cut: bool, cache: Cache
) -> dict[str, dict[str, tuple[str, str]]]:
    """Return for each folder, by version, the last commit with that version and the name of the folder's content."""
    state = run_git(top, "show-ref", "--head", "--dereference", "--tags").stdout.decode("utf-8", "replace")
    if not state:
        raise GitError("the git repository has no commit yet")
    key = key_of("older versions", state, str(is_cut), str(top), inside, *folders)
    noted = cache.noted(key)
    if noted is None:
        noted = json.dumps(_found(top, inside, folders, state), sort_keys=True)
        cache.note(key, noted)
    return {
        folder: {version: (commit, tree) for version, (commit, tree) in versions.items()}
        for folder, versions in json.loads(noted).items()
    }


def _found(top: Path, inside: str, folders: Sequence[str], state: str) -> dict[str, dict[str, tuple[str, str]]]:
    commits: dict[str, dict[str, str]] = {folder: {} for folder in folders}
    prefix = f"{inside}/" if inside else ""
    states = list(_states(top, {f"{prefix}{folder}/{PATTERN_FILE}": folder for folder in folders}))
    texts = read_blobs(top, [blob for _, _, blob in states])
    for commit, folder, blob in states:
        said = _VERSION.search(texts.get(blob, b""))
        if said is not None:
            # The newest commit comes first, and stands.
            commits[folder].setdefault(said[1].decode("utf-8", "replace"), commit)
    for tag, commit in _tags(state).items():
        folder, _, version = tag.rpartition("/")
        if folder in commits:
            commits[folder][version] = commit
    wanted = [(folder, version, commit) for folder, known in commits.items() for version, commit in known.items()]
    trees = _trees(top, [f"{commit}:{prefix}{folder}" for folder, _, commit in wanted])
    found: dict[str, dict[str, tuple[str, str]]] = {folder: {} for folder in folders}
    for (folder, version, commit), tree in zip(wanted, trees, strict=True):
        if tree:
            found[folder][version] = (commit, tree)
    return found


def _states(top: Path, files: Mapping[str, str]) -> Iterable[tuple[str, str, str]]:
    """Yield commit, folder and content of each pattern file wherever it changed, the newest first.

    Only the line of commits that was published is walked: what a branch held before it was merged no maker has seen.
    """
    paths = [f":(top,literal){path}" for path in files]
    done = run_git(
        top, "log", "--first-parent", "-m", "--raw", "--no-abbrev", "--no-renames", "-z", "--format=commit %H", "HEAD",
        "--", *paths,
    )  # fmt: skip
    if done.returncode != 0:
        raise GitError("git cannot walk through the history")
    commit = ""
    words = iter(done.stdout.split(b"\0"))
    for word in words:
        word = word.strip(b"\n")
        if word.startswith(b"commit "):
            commit = word.split()[1].decode("ascii")
        elif word.startswith(b":"):
            blob, path = word.split()[3].decode("ascii"), next(words, b"").decode("utf-8", "replace")
            if path in files and not _NOTHING.fullmatch(blob):
                yield commit, files[path], blob


def _tags(state: str) -> dict[str, str]:
    """Return the commits of all tags; of a tag with words of its own, the commit it stands for comes second."""
    tags = {}
    for line in state.splitlines():
        commit, _, name = line.partition(" ")
        if name.startswith("refs/tags/"):
            tags[name.removeprefix("refs/tags/").removesuffix("^{}")] = commit
    return tags


def _trees(top: Path, names: Sequence[str]) -> list[str]:
    """Return the names of the contents of some folders at some commits; empty for one that is not there."""
    if not names:
        return []
    given = "".join(f"{name}\n" for name in names).encode("utf-8", "surrogateescape")
    told = run_git(top, "cat-file", "--batch-check=%(objectname) %(objecttype)", given=given).stdout.splitlines()
    if len(told) != len(names):
        raise GitError("git cannot tell what its history holds")
    return [line.split()[0].decode("ascii") if line.endswith(b" tree") else "" for line in told]


def _note(several: Sequence[PatternSource], known: Mapping[str, Mapping[str, object]], is_cut: bool) -> str:
    """Return a line about patterns of which history holds no version but the newest."""
    lacking = [source for source in several if not set(known.get(_folder_of(source), ())) - {_version_now(source)}]
    if not lacking:
        return ""
    reason = "this clone has not the whole history (git fetch --unshallow brings it)" if is_cut else ""
    return _told_in_words(len(lacking), reason or "their older versions are not in the history of this repository")


def _version_now(source: PatternSource) -> str:
    said = _VERSION.search(source.source.text.encode("utf-8", "replace"))
    return said[1].decode("utf-8", "replace") if said else ""


def _told_in_words(number: int, reason: str) -> str:
    patterns = "1 pattern" if number == 1 else f"{number} patterns"
    return f"the changed figures of {patterns} are not listed under corrections: {reason}"
