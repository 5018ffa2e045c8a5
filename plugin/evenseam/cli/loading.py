"""From the words of a command to a pattern or a sheet; what stands in the way is told in one line."""

from __future__ import annotations

import argparse
import sys
from difflib import get_close_matches
from pathlib import Path

from evenseam.exact import Unit
from evenseam.problems import Problem, SourceText, show_problems
from evenseam.publish.checked import CheckedPattern, check_pattern
from evenseam.publish.sources import PatternSource, find_patterns
from evenseam.sheet import PatternSheet

EDITIONS = {"inches": Unit.INCH, "centimetres": Unit.CENTIMETRE}


class CannotRunError(Exception):
    """The command cannot run as it was given; the message says why and what to write."""


def load_source(name: str) -> PatternSource:
    """Return the texts of one pattern by folder name or path. Raises CannotRunError when there is none."""
    path = Path(name) if Path(name).exists() else Path("patterns") / name
    if not path.exists():
        known = sorted(folder.name for folder in Path("patterns").glob("*") if folder.is_dir())
        raise CannotRunError(f"there is no pattern {name!r}{_nearest(name, known)}")
    try:
        (source,) = find_patterns(path)
    except FileNotFoundError as error:
        raise CannotRunError(str(error)) from None
    except ValueError:
        raise CannotRunError(f"{path} holds several patterns; name one of them") from None
    return source


def load_pattern(name: str) -> CheckedPattern:
    """Return one pattern by folder name or path, read and computed. Raises CannotRunError when there is none."""
    return check_pattern(load_source(name))


def load_sheet(options: argparse.Namespace) -> tuple[CheckedPattern, PatternSheet | None]:
    """Return the pattern and the sheet a command asks for; None, after telling the problems, when it has errors."""
    checked = load_pattern(options.pattern)
    if checked.pattern is None:
        tell(checked.problems, checked.sources)
        return checked, None
    sizes = list(dict.fromkeys(project.size for project in checked.pattern.projects))
    size = options.size.strip().lower().replace(" ", "-").replace("_", "-")
    if size not in sizes:
        raise CannotRunError(f"{checked.pattern.title} has no size {options.size!r}{_nearest(size, sizes)}")
    unit = EDITIONS[options.edition] if options.edition else checked.pattern.units[0]
    if unit not in checked.pattern.units:
        raise CannotRunError(f"{checked.pattern.title} has no {options.edition} edition")
    sheet = checked.sheet(size, unit)
    if sheet is None:
        tell(checked.problems, checked.sources)
    return checked, sheet


def tell(problems: tuple[Problem, ...], sources: dict[str, SourceText]) -> None:
    """Print problems on standard error."""
    print(show_problems(problems, sources), file=sys.stderr)


def _nearest(word: str, known: list[str]) -> str:
    near = get_close_matches(word, known, n=1, cutoff=0.5)
    if near:
        return f"; did you mean {near[0]}?"
    return f"; there are: {', '.join(known)}" if known else ""
