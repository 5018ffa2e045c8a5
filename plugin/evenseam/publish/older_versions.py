"""Where the texts of a pattern's older versions lie: found in git's history, which is read once for all patterns.

The text of version 1.0 is the one tagged SLUG/1.0, or else that of the last commit at which the pattern said
`version: "1.0"`. Where a folder was renamed, git sees it by the likeness of the pattern file, and what the folder held
under its old name counts too. The commits are part of what a site is made from: the same commits give the same bytes.
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
_GLOB = re.compile(r"[*?\[\\]")
LIKENESS = "-M50%"
"""How much of a pattern file must be as it was for its folder to count as renamed, whatever git is set to."""


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
    key = key_of("older versions and names", state, str(is_cut), str(top), inside, *folders)
    noted = cache.noted(key)
    if noted is None:
        noted = json.dumps(_found(top, inside, folders, state), sort_keys=True)
        cache.note(key, noted)
    return {
        folder: {version: (commit, tree) for version, (commit, tree) in versions.items()}
        for folder, versions in json.loads(noted).items()
    }


def _found(top: Path, inside: str, folders: Sequence[str], state: str) -> dict[str, dict[str, tuple[str, str]]]:
    # For each folder and version the commit, and what the folder was called there.
    commits: dict[str, dict[str, tuple[str, str]]] = {folder: {} for folder in folders}
    prefix = f"{inside}/" if inside else ""
    states = list(_states(top, prefix, folders))
    texts = read_blobs(top, [state.blob for state in states])
    names = {folder: folder for folder in folders}
    for one in states:
        if one.called not in names:
            names[one.called] = one.folder
        said = _VERSION.search(texts.get(one.blob, b""))
        if said is not None:
            # The newest commit comes first, and stands.
            commits[one.folder].setdefault(said[1].decode("utf-8", "replace"), (one.commit, one.called))
    for tag, commit in sorted(_tags(state).items(), key=lambda one: one[0].rpartition("/")[0] in commits):
        # Of two tags for one version that of the folder's name today counts.
        called, _, version = tag.rpartition("/")
        if called in names:
            commits[names[called]][version] = (commit, called)
    wanted = [(folder, version, *where) for folder, known in commits.items() for version, where in known.items()]
    trees = _trees(top, [f"{commit}:{prefix}{called}" for _, _, commit, called in wanted])
    found: dict[str, dict[str, tuple[str, str]]] = {folder: {} for folder in folders}
    for (folder, version, commit, _), tree in zip(wanted, trees, strict=True):
        if tree:
            found[folder][version] = (commit, tree)
    return found


@dataclass(frozen=True, slots=True)
class _State:
    """A pattern file as a commit left it."""

    commit: str
    folder: str
    """What its folder is called today."""
    called: str
    """What it was called then."""
    blob: str


def _states(top: Path, prefix: str, folders: Iterable[str]) -> Iterable[_State]:
    """Yield each pattern file wherever it changed, the newest first, also under the names its folder had before.

    Only the line of commits that was published is walked: what a branch held before it was merged no maker has seen.
    """
    today = {f"{prefix}{folder}/{PATTERN_FILE}": folder for folder in folders}
    literal = _GLOB.sub(r"\\\g<0>", prefix)
    done = run_git(
        top, "log", "--first-parent", "-m", "--raw", "--no-abbrev", LIKENESS, "-l1000", "-z", "--format=commit %H",
        "HEAD", "--", f":(top,glob){literal}*/{PATTERN_FILE}",
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
            _, _, _, blob, change = word.decode("ascii").split()
            before = next(words, b"").decode("utf-8", "replace")
            path = next(words, b"").decode("utf-8", "replace") if change.startswith("R") else before
            if path in today and not _NOTHING.fullmatch(blob):
                yield _State(commit, today[path], PurePosixPath(path).parent.name, blob)
                if path != before:
                    # Further back this folder has its old name, and its name of today is nobody's or another's.
                    today[before] = today.pop(path)


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
