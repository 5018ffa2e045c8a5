"""The publisher as it was at a revision: whether it differs from another, and what it computes."""

from __future__ import annotations

import contextlib
import hashlib
import io
import json
import os
import subprocess
import sys
import tarfile
import tempfile
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

import evenseam
from evenseam.cli.loading import EDITIONS, CannotRunError
from evenseam.cli.revision import Revision
from evenseam.publish.cache import ENGINE_SUFFIXES
from evenseam.publish.checked import CheckedPattern, check_pattern
from evenseam.publish.git_store import GitError, list_tree, run_git, top_of
from evenseam.publish.options import edition_of
from evenseam.publish.sources import PATTERN_FILE, PatternSource
from evenseam.review import EngineChange, EngineReview, compare_sheet_data
from evenseam.sheet import sheet_as_json

ENGINE = "plugin/evenseam"
"""Where the publisher stands in its own repository. A repository of patterns alone has none."""
LONGEST_RUN = 1800
"""Seconds given to an older publisher."""
_PASSED_ON = ("PATH", "LANG", "LC_ALL", "SYSTEMROOT", "TMPDIR", "TEMP")
"""All that an older publisher is told of this computer: no key, no token."""
_DRIVER = """
import contextlib, io, json, os, sys
top = sys.argv[1]
sys.path.insert(0, os.path.join(top, "plugin"))
import evenseam
if not os.path.realpath(evenseam.__file__).startswith(os.path.realpath(top)):
    sys.exit("another publisher was found")
from evenseam.cli import main
answers = []
for pattern, size, edition in json.load(sys.stdin):
    said, told = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(said), contextlib.redirect_stderr(told):
        try:
            status = main(["sheet", pattern, "--size", size, "--edition", edition, "--json"])
        except SystemExit:
            status = 2
        except Exception as error:
            status = 2
            print(type(error).__name__, error, file=sys.stderr)
    answers.append([status, said.getvalue() if status == 0 else told.getvalue()])
json.dump(answers, sys.stdout)
"""


def compare_engines(
    base: Revision, head: Revision | None, folder: Path, older: Iterable[PatternSource], *, is_asked: bool
) -> EngineReview | None:
    """Return what is to be said of the publisher between two revisions; None when it is the same, or not in them.

    With `is_asked` the base's own publisher computes the base's patterns, in a process of its own, and what it finds
    is held against what this one finds in the same texts. Raises CannotRunError when it cannot be run.
    """
    try:
        top = top_of(folder)
        was = _engine_of_commit(top, base.commit)
        now = _engine_of_commit(top, head.commit) if head else _engine_of_folder(top / ENGINE, was)
    except GitError:
        return None
    if is_asked and not was:
        raise CannotRunError(f"{base.name} has no publisher of its own ({ENGINE})")
    if not was or was == now:
        return None
    running = _engine_of_folder(Path(evenseam.__file__).parent, was)
    words = _words(base, head, running == was, running == now)
    if not is_asked or running == was:
        return EngineReview(words)
    return _compared(base, top, list(older), words)


def _words(base: Revision, head: Revision | None, is_base: bool, is_head: bool) -> str:
    start = "The publisher itself differs between the two sides."
    name = head.name if head else "the working tree"
    if is_base:
        return f"{start} Both were computed with the one of {base.name}; what the other one would compute is not known."
    which = f"the one of {name}" if is_head else "the one installed here"
    return f"{start} Both were computed with {which}, so that what is told of the patterns comes from their own files."


def _compared(base: Revision, top: Path, older: list[PatternSource], words: str) -> EngineReview:
    checked = [check_pattern(source) for source in older]
    failures = [f"{each.slug} cannot be read by this publisher" for each in checked if each.pattern is None]
    jobs = list(_jobs(checked))
    changes, compared = [], 0
    answers = _ask(base, top, older, [(each.slug, size, edition) for each, size, edition in jobs])
    for (each, size, edition), (status, text) in zip(jobs, answers, strict=True):
        assert each.pattern is not None
        unit = EDITIONS[edition]
        project = each.pattern.project(size, unit)
        sheet = each.sheet(size, unit)
        name = f"{each.pattern.title}, {project.name} in {edition}"
        if status != 0 or sheet is None:
            if status == 0:
                failures.append(f"{name} cannot be computed by this publisher; the one of {base.name} could")
            elif sheet is not None:
                reason = " ".join(text.split())[:200]
                failures.append(f"{name} could not be computed by the publisher of {base.name}: {reason}")
            continue
        compared += 1
        try:
            told = compare_sheet_data(json.loads(text), json.loads(json.dumps(sheet_as_json(sheet))))
        except (KeyError, TypeError, ValueError) as error:
            failures.append(f"{name} cannot be compared: {error}")
            continue
        if told:
            changes.append(EngineChange(each.slug, each.pattern.title, project.name, edition, told))
    return EngineReview(words, tuple(changes), tuple(failures), compared)


def _jobs(checked: Iterable[CheckedPattern]) -> Iterator[tuple[CheckedPattern, str, str]]:
    for each in checked:
        for project in each.pattern.projects if each.pattern else ():
            yield each, project.size, edition_of(project.unit)


def _ask(
    base: Revision, top: Path, older: Iterable[PatternSource], jobs: list[tuple[str, str, str]]
) -> list[tuple[int, str]]:
    """Return status and answer of the base's publisher for each sheet."""
    with tempfile.TemporaryDirectory(prefix="evenseam-") as name:
        home = Path(name)
        _unpack(base, top, home)
        for source in older:
            folder = home / "patterns" / source.slug
            folder.mkdir(parents=True)
            (folder / PATTERN_FILE).write_text(source.source.text, "utf-8", "surrogatepass")
            for drawing, text in source.drawings.items():
                (folder / drawing).write_text(text.text, "utf-8", "surrogatepass")
        environment = {name: value for name, value in os.environ.items() if name in _PASSED_ON}
        try:
            done = subprocess.run(
                [sys.executable, "-I", "-c", _DRIVER, str(home)],
                input=json.dumps(jobs), capture_output=True, text=True, encoding="utf-8", cwd=home, env=environment,
                timeout=LONGEST_RUN, check=False,
            )  # fmt: skip
            answers = json.loads(done.stdout) if done.returncode == 0 else None
        except (subprocess.TimeoutExpired, ValueError):
            raise CannotRunError(f"the publisher of {base.name} gave no answer") from None
    if not isinstance(answers, list) or len(answers) != len(jobs):
        reason = (done.stderr.strip().splitlines() or ["it said nothing"])[-1]
        raise CannotRunError(f"the publisher of {base.name} cannot be run: {reason}")
    return [(int(status), str(text)) for status, text in answers]


def _unpack(base: Revision, top: Path, home: Path) -> None:
    done = run_git(top, "archive", "--format=tar", base.commit, "--", ENGINE)
    if done.returncode != 0:
        raise CannotRunError(f"git cannot give the publisher of {base.name}")
    with tarfile.open(fileobj=io.BytesIO(done.stdout)) as archive:
        archive.extractall(home, filter="data")


def _engine_of_commit(top: Path, commit: str) -> Mapping[str, str]:
    """Return the names of the contents of a publisher's files; none when there is none at this commit."""
    entries = list_tree(top, f"{commit}:{ENGINE}") or ()
    return {entry.path.as_posix(): entry.blob for entry in entries if entry.path.suffix in ENGINE_SUFFIXES}


def _engine_of_folder(folder: Path, like: Mapping[str, str]) -> Mapping[str, str]:
    """Return the same of a folder, its contents named as git would name them."""
    sample = next(iter(like.values()), "")
    hashed: Any = hashlib.sha256 if len(sample) == 64 else hashlib.sha1
    found = {}
    for path in sorted(folder.rglob("*")):
        if path.suffix in ENGINE_SUFFIXES and "__pycache__" not in path.parts:
            with contextlib.suppress(OSError):
                content = path.read_bytes()
                name = path.relative_to(folder).as_posix()
                found[name] = hashed(b"blob %d\0" % len(content) + content).hexdigest()
    return found
