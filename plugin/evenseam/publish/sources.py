"""Pattern folders on disk: which there are, and the texts in them, never reaching outside a folder."""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from evenseam.problems import Code, Place, Problem, SourceText

PATTERN_FILE = "pattern.yaml"
DRAWING_SUFFIX = ".svg"
LARGEST_TEXT = 1_000_000
"""Bytes; a larger file is named as a problem and not read."""

UNREADABLE = Code(900, "file-unreadable")
OUTSIDE_FOLDER = Code(901, "file-outside-folder")
TOO_LARGE = Code(902, "file-too-large")
NOT_TEXT = Code(903, "file-not-text")
FOLDER_NAME = Code(904, "folder-name")
TOO_MANY_DRAWINGS = Code(905, "too-many-drawings")
DRAWING_NAME = Code(906, "drawing-name")
CODES = (UNREADABLE, OUTSIDE_FOLDER, TOO_LARGE, NOT_TEXT, FOLDER_NAME, TOO_MANY_DRAWINGS, DRAWING_NAME)

MOST_DRAWINGS = 100
"""Drawings of one folder that are read."""
LONGEST_SLUG = 80
_GOOD_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*", re.ASCII)


@dataclass(frozen=True, slots=True)
class OlderText:
    """Where the texts of an older version lie in git's store."""

    version: str
    top: str
    """The top of the repository."""
    commit: str
    """The last one at which the pattern had this version."""
    tree: str
    """Name of the folder's content: the same for the same texts, whatever the commit."""


@dataclass(frozen=True, slots=True)
class PatternSource:
    """The texts of one pattern folder. `problems` are files that could not be taken in."""

    slug: str
    source: SourceText
    drawings: Mapping[str, SourceText]
    """By file name, such as lantern.svg."""
    problems: tuple[Problem, ...] = ()
    older: tuple[OlderText, ...] = ()
    """Where the texts of older versions lie; see `older_versions`."""


def find_patterns(root: Path) -> tuple[PatternSource, ...]:
    """Return the patterns under a path, by slug.

    `root` is a folder of pattern folders, one pattern folder, or a pattern file. Raises FileNotFoundError when there is
    nothing of the kind: that is the world's mistake, not an author's.
    """
    if root.is_file():
        return (_read_folder(root.parent, root.parent.resolve(), root),)
    if os.path.lexists(root / PATTERN_FILE):
        return (_read_folder(root, root.resolve(), root / PATTERN_FILE),)
    if not root.is_dir():
        raise FileNotFoundError(f"there is no pattern file or folder {root}")
    # A link that leads nowhere is an author's mistake to be named, so that its folder counts as well.
    folders = sorted(path for path in root.iterdir() if os.path.lexists(path / PATTERN_FILE))
    if not folders:
        raise FileNotFoundError(f"there is no {PATTERN_FILE} in any folder of {root}")
    return tuple(
        without_same_addresses(_read_folder(folder, root.resolve(), folder / PATTERN_FILE) for folder in folders)
    )


def without_same_addresses(sources: Iterable[PatternSource]) -> Iterable[PatternSource]:
    """Yield the patterns with an address for each, and a problem for two whose names a site cannot tell apart."""
    taken: dict[str, str] = {}
    for source in sources:
        slug, number = source.slug, 1
        while slug.lower() in taken:
            number += 1
            slug = f"{source.slug}-{number}"
        problems = source.problems
        if number > 1:
            message = f"{source.source.name} would have the same address as {taken[source.slug.lower()]}"
            hint = "give the folder a name that differs in more than capitals and signs"
            problems = (*problems, Problem(FOLDER_NAME, message, _start_of(source.source.name), hint))
        taken[slug.lower()] = source.source.name
        yield replace(source, slug=slug, problems=problems)


def _read_folder(folder: Path, within: Path, file: Path) -> PatternSource:
    """Return the texts of a folder that must lie inside `within`."""
    name = _shown_name(file)
    problems: list[Problem] = []
    # A folder given as . has its name only in its whole path.
    short = folder.name if folder.name not in ("", "..") else folder.resolve().name
    slug = address_of_folder(short, name, problems)
    if not _is_inside(folder, within):
        message = f"the folder {printable(folder.name)} is a link that leads outside {printable(within.name)}"
        problems.append(Problem(OUTSIDE_FOLDER, message, _start_of(name), "put the folder itself there"))
        return PatternSource(slug, SourceText(name, ""), {}, tuple(problems))
    source = _read_text(folder, file, problems)
    drawings = _read_drawings(folder, name, problems)
    return PatternSource(slug, source or SourceText(name, ""), drawings, tuple(problems))


def address_of_folder(name: str, shown: str, problems: list[Problem]) -> str:
    """Return a folder's name as an address; one that cannot be an address as it is, is a problem."""
    if _GOOD_NAME.fullmatch(name) and len(name) <= LONGEST_SLUG:
        return name
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    slug = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_SLUG].rstrip("-") or "pattern"
    short = printable(name if len(name) <= 40 else name[:39] + "…")
    message = f"the folder {short!r} cannot be an address on a site"
    hint = f"use letters a to z, figures and hyphens, at most {LONGEST_SLUG} of them: {slug}"
    problems.append(Problem(FOLDER_NAME, message, _start_of(shown), hint))
    return slug


def _read_drawings(folder: Path, shown: str, problems: list[Problem]) -> dict[str, SourceText]:
    try:
        found = sorted(path for path in folder.iterdir() if path.suffix == DRAWING_SUFFIX)
    except OSError as error:
        message = f"the folder cannot be read: {error.strerror}"
        problems.append(Problem(UNREADABLE, message, _start_of(shown), "check that it is a readable folder"))
        return {}
    if len(found) > MOST_DRAWINGS:
        problems.append(too_many_drawings(len(found), shown))
        return {}
    drawings: dict[str, SourceText] = {}
    for path in found:
        if path.name != printable(path.name):
            problems.append(unshowable_drawing(path.name, shown))
        elif (text := _read_text(folder, path, problems)) is not None:
            drawings[path.name] = text
    return drawings


def too_many_drawings(number: int, shown: str) -> Problem:
    """Return the problem of a folder with more drawings than are read."""
    message = f"there are {number} drawings; at most {MOST_DRAWINGS} are read"
    return Problem(TOO_MANY_DRAWINGS, message, _start_of(shown), "take out what the pattern does not use")


def unshowable_drawing(name: str, shown: str) -> Problem:
    """Return the problem of a drawing whose name cannot be printed."""
    message = f"the name of the drawing {printable(name)} holds a sign that cannot be shown"
    return Problem(DRAWING_NAME, message, _start_of(shown), "use letters, figures and hyphens")


def _read_text(folder: Path, file: Path, problems: list[Problem]) -> SourceText | None:
    name = _shown_name(file)
    place = Place(name, 1, 1, 1, 1)
    # A link out of the folder could publish any file of the machine that builds.
    if not _is_inside(file, folder):
        hint = "put the file itself into the pattern's folder"
        problems.append(Problem(OUTSIDE_FOLDER, f"{file.name} leads outside the pattern's folder", place, hint))
        return None
    # Only a plain file is opened: a pipe would be waited for without end, and a device read without end.
    if not file.is_file():
        hint = "put a plain text file in its place"
        problems.append(Problem(UNREADABLE, f"{file.name} is not a file that can be read", place, hint))
        return None
    try:
        with file.open("rb") as stream:
            content = stream.read(LARGEST_TEXT + 1)
    except OSError as error:
        problems.append(
            Problem(
                UNREADABLE, f"{file.name} cannot be read: {error.strerror}", place, "check that it is a readable file"
            )
        )
        return None
    if len(content) > LARGEST_TEXT:
        problems.append(
            Problem(
                TOO_LARGE,
                f"{file.name} is larger than 1 MB",
                place,
                "a pattern or drawing is far smaller; remove what is not needed",
            )
        )
        return None
    try:
        # The sign some editors put first is not part of the text.
        return SourceText(name, content.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        before = content[: error.start].decode("utf-8", "replace")
        line, column = before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1
        problems.append(
            Problem(
                NOT_TEXT,
                f"{file.name} is not UTF-8 text",
                Place(name, line, column, line, column + 1),
                "save the file as UTF-8",
            )
        )
        return None


def _is_inside(path: Path, folder: Path) -> bool:
    """Tell whether a path, all links followed, stays in a folder."""
    try:
        return path.resolve().is_relative_to(folder.resolve())
    except (OSError, RuntimeError):
        # Links that lead round in a circle lead nowhere: reading them will say so.
        return path.parent.resolve().is_relative_to(folder.resolve())


def _start_of(name: str) -> Place:
    return Place(name, 1, 1, 1, 1)


def _shown_name(file: Path) -> str:
    """Return the path as an author would type it: relative to where the command runs, with forward slashes."""
    here = Path.cwd()
    whole = Path(os.path.abspath(file))
    with suppress(OSError, RuntimeError):
        # Links are followed only when the path as it was given does not lie here.
        whole = whole if whole.is_relative_to(here) else file.parent.resolve() / file.name
    return printable((whole.relative_to(here) if whole.is_relative_to(here) else file).as_posix())


def printable(text: str) -> str:
    """Return a name of a file with a stand-in for every sign that cannot be shown, among them halves of signs."""
    return "".join(sign if sign.isprintable() else "\ufffd" for sign in text)
