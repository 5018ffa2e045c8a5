"""The command `evenseam`: its words, and which function answers each."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from evenseam import __version__
from evenseam.cli import bundle, check, compare, drawing, make, new, show
from evenseam.cli.loading import EDITIONS, CannotRunError

PATTERNS = Path("patterns")


def main(words: Sequence[str] | None = None) -> int:
    """Run one command. Exit status: 0 all well, 1 the pattern has errors, 2 the command could not run."""
    parser = _parser()
    options = parser.parse_args(words)
    try:
        status: int = options.run(options)
    except CannotRunError as problem:
        print(f"evenseam: {problem}", file=sys.stderr)
        return 2
    except OSError as error:
        print(f"evenseam: {error.filename or ''}: {error.strerror}".replace(": : ", ": "), file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return 130
    return status


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="evenseam", description="Publish quilt patterns from one file: check, compute, explain, print."
    )
    parser.add_argument("--version", action="version", version=f"evenseam {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")

    command = commands.add_parser("check", help="all problems of one pattern or of all")
    command.add_argument("path", nargs="?", type=Path, default=PATTERNS, help="file, pattern folder, or folder of them")
    command.add_argument("--json", action="store_true", help="problems as data")
    command.add_argument(
        "--since", metavar="REVISION", help="also hold the rules for what was published as of a tag or revision"
    )
    command.set_defaults(run=check.run)

    command = commands.add_parser("sheet", help="every figure of one size")
    _add_pattern_and_size(command)
    command.add_argument("--json", action="store_true", help="the sheet as data")
    command.set_defaults(run=show.run_sheet)

    command = commands.add_parser("why", help="where one figure comes from, down to the line of the file")
    _add_pattern_and_size(command)
    command.add_argument("figure", nargs="+", help="name of the figure, such as finished width")
    command.set_defaults(run=show.run_why)

    command = commands.add_parser("bundle", help="which sizes so many fat quarters can make, and what more is needed")
    command.add_argument("pattern", help="name of a folder in patterns/, or a path")
    command.add_argument("--pieces", type=int, required=True, metavar="N", help="how many pieces of cloth there are")
    command.add_argument("--cloth", default="fat quarter", help="what they are, such as fat eighth or 10 in square")
    command.add_argument("--edition", choices=tuple(EDITIONS), help="otherwise the one it is drafted in")
    command.add_argument("--json", action="store_true", help="the answer as data, with the place of every piece")
    command.set_defaults(run=bundle.run)

    command = commands.add_parser("compare", help="what changed between two revisions, as changed figures")
    command.add_argument("base", help="revision to compare with, such as main")
    command.add_argument("head", nargs="?", help="revision to look at; otherwise the files as they are now")
    command.add_argument("--patterns", type=Path, default=PATTERNS)
    form = command.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="all changes as data")
    form.add_argument("--one-line", action="store_true", help="one line for each pattern")
    form.add_argument(
        "--annotations", action="store_true", help="marks on the changed lines, for continuous integration"
    )
    command.add_argument("--html", type=Path, metavar="FILE", help="also write a page with pictures before and after")
    command.add_argument(
        "--fail-on", choices=compare.WEIGHTS, default=compare.WEIGHTS[0],
        help="exit with 1 only for changes of this weight or more; what cannot be computed always counts",
    )  # fmt: skip
    command.add_argument(
        "--engines", action="store_true",
        help="compute the base with the publisher as it was in that revision, to tell its changes from the pattern's",
    )  # fmt: skip
    command.set_defaults(run=compare.run)

    command = commands.add_parser("handout", help="the printed handout of one size")
    _add_pattern_and_size(command)
    command.add_argument("--paper", choices=("letter", "a4"), default="letter")
    command.add_argument(
        "--output", type=Path, help="file to write; otherwise a name made from pattern, size and paper"
    )
    command.set_defaults(run=make.run_handout)

    command = commands.add_parser("drawing", help="a quick look at one drawing: sections, order, problems, a picture")
    drawing.add_words(command)

    command = commands.add_parser("export", help="the whole site as plain files, for any site generator")
    command.add_argument("output", type=Path, help="folder to make, or to replace if it is an export")
    command.add_argument("--patterns", type=Path, default=PATTERNS)
    command.add_argument("--docs", type=Path, default=Path("site_src"), help="hand-written pages that go along")
    command.set_defaults(run=make.run_export)

    command = commands.add_parser("new", help="a starter pattern to change, or a whole site to publish")
    new.add_words(command, PATTERNS)
    return parser


def _add_pattern_and_size(command: argparse.ArgumentParser) -> None:
    command.add_argument("pattern", help="name of a folder in patterns/, or a path")
    command.add_argument("--size", required=True, help="size, such as wall-hanging")
    command.add_argument("--edition", choices=tuple(EDITIONS), help="otherwise the one it is drafted in")
