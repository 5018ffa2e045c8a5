"""Pattern folders on disk: which there are, and the texts in them, never reaching outside a folder."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
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
CODES = (UNREADABLE, OUTSIDE_FOLDER, TOO_LARGE, NOT_TEXT)


@dataclass(frozen=True, slots=True)
class PatternSource:
    """The texts of one pattern folder. `problems` are files that could not be taken in."""

    slug: str
    source: SourceText
    drawings: Mapping[str, SourceText]
    """By file name, such as lantern.svg."""
    problems: tuple[Problem, ...] = ()


def find_patterns(root: Path) -> tuple[PatternSource, ...]:
    """Return the patterns under a path, by slug.

    `root` is a folder of pattern folders, one pattern folder, or a pattern file. Raises FileNotFoundError when there is
    nothing of the kind: that is the world's mistake, not an author's.
    """
    if root.is_file():
        return (_read_folder(root.parent, root),)
    if (root / PATTERN_FILE).exists():
        return (_read_folder(root, root / PATTERN_FILE),)
    if not root.is_dir():
        raise FileNotFoundError(f"there is no pattern file or folder {root}")
    folders = sorted(path for path in root.iterdir() if (path / PATTERN_FILE).exists())
    if not folders:
        raise FileNotFoundError(f"there is no {PATTERN_FILE} in any folder of {root}")
    return tuple(_read_folder(folder, folder / PATTERN_FILE) for folder in folders)


def _read_folder(folder: Path, file: Path) -> PatternSource:
    problems: list[Problem] = []
    source = _read_text(folder, file, problems)
    drawings = {
        path.name: text
        for path in sorted(folder.iterdir())
        if path.suffix == DRAWING_SUFFIX and (text := _read_text(folder, path, problems)) is not None
    }
    name = _shown_name(file)
    slug = folder.resolve().name
    return PatternSource(slug, source or SourceText(name, ""), drawings, tuple(problems))


def _read_text(folder: Path, file: Path, problems: list[Problem]) -> SourceText | None:
    name = _shown_name(file)
    place = Place(name, 1, 1, 1, 1)
    # A link out of the folder could publish any file of the machine that builds.
    if not file.resolve().is_relative_to(folder.resolve()):
        hint = "put the file itself into the pattern's folder"
        problems.append(Problem(OUTSIDE_FOLDER, f"{file.name} leads outside the pattern's folder", place, hint))
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


def _shown_name(file: Path) -> str:
    """Return the path as an author would type it: relative to where the command runs, with forward slashes."""
    try:
        return file.resolve().parent.relative_to(Path.cwd()).joinpath(file.name).as_posix()
    except ValueError:
        return file.as_posix()
