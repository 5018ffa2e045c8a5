"""`evenseam drawing`: a quick look at one drawing, without a pattern: sections, order, problems, a picture."""

from __future__ import annotations

import argparse
from pathlib import Path

from evenseam.cli.loading import CannotRunError, tell
from evenseam.figures.drawing_look import drawing_look_svg
from evenseam.piecing import LockedReport, PiecedBlock, locked_report, piece_block
from evenseam.problems import Report, SourceText
from evenseam.publish.cairo import INSTALL_CAIRO, has_cairo
from evenseam.publish.sources import LARGEST_TEXT
from evenseam.publish.whole import write_whole
from evenseam.reading import DrawingLook, look_at_drawing


def add_words(command: argparse.ArgumentParser) -> None:
    """Add the words of the command."""
    command.add_argument("file", type=Path, help="an SVG drawing")
    command.add_argument("--grid", default="", help="squares across and down, such as 12x18; otherwise it is guessed")
    command.add_argument("--hexagon", action="store_true", help="the block is a hexagon, on a grid of triangles")
    command.add_argument("--svg", type=Path, metavar="OUT", help="write a picture, with marks on what is wrong")
    command.add_argument("--png", type=Path, metavar="OUT", help="the same as PNG")
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Look at one drawing; exit status 1 when it cannot be sewn."""
    source = _read(options.file)
    if options.png is not None and not has_cairo():
        raise CannotRunError(INSTALL_CAIRO)
    outcome = look_at_drawing(source, options.grid, is_hexagon=options.hexagon)
    report = Report(list(outcome.problems))
    look = outcome.value
    pieced: PiecedBlock | None = None
    locked: LockedReport | None = None
    if look is not None and not report.has_errors():
        sewn = piece_block(look.block)
        report.problems += sewn.problems
        pieced = sewn.value
        locked = locked_report(look.block) if pieced is None else None
    if report.problems:
        tell(report.as_tuple(), {source.name: source})
    if look is None:
        return 1
    print(_as_text(look, pieced, is_good=not report.has_errors()))
    if locked is not None:
        print(_way_out(look, locked))
    _write_pictures(drawing_look_svg(look, pieced, locked), options)
    return 1 if report.has_errors() else 0


def _read(path: Path) -> SourceText:
    with path.open("rb") as stream:
        content = stream.read(LARGEST_TEXT + 1)
    if len(content) > LARGEST_TEXT:
        raise CannotRunError(f"{path} is larger than 1 MB; a drawing of a block is far smaller")
    try:
        return SourceText(path.as_posix(), content.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise CannotRunError(f"{path} is not UTF-8 text; save it as plain SVG") from None


def _write_pictures(svg: str, options: argparse.Namespace) -> None:
    if options.svg is not None:
        write_whole(options.svg, svg.encode())
        print(options.svg)
    if options.png is not None:
        import cairosvg  # type: ignore[import-untyped]

        write_whole(options.png, cairosvg.svg2png(bytestring=svg.encode(), unsafe=False, scale=2))
        print(options.png)


def _as_text(look: DrawingLook, pieced: PiecedBlock | None, *, is_good: bool) -> str:
    across, down = look.grid
    guessed = ", found from its corners" if look.is_guessed else ""
    lines = [f"{look.name}: {_counted(len(look.pieces), 'piece')} on a grid of {across} x {down}{guessed}"]
    for fabric in look.fabrics:
        count = sum(piece.fabric == fabric.id for piece in look.pieces)
        lines.append(f"  {fabric.name}: {_counted(count, 'piece')}")
    if pieced is not None:
        fabrics = {piece.id: piece.fabric for piece in look.pieces}
        names = {fabric.id: fabric.name for fabric in look.fabrics}
        lines += ["", f"sewn in {_counted(len(pieced.sections), 'section')}"]
        for section in pieced.sections:
            order = ", ".join(f"{piece.label} {names[fabrics[piece.piece]]}" for piece in section.pieces)
            lines.append(f"  {section.name}: {order}")
        lines += [f"  join {join.first} and {join.second}: {join.makes}" for join in pieced.joins]
    elif not is_good:
        lines += ["", "it cannot be sewn yet; what is wrong is said above"]
    for number, item in enumerate(look.spotted, start=1):
        lines.append(f"  {number} in the picture: {item.message}")
    return "\n".join(lines)


def _way_out(look: DrawingLook, locked: LockedReport) -> str:
    """Return what to paste into the drawing in place of the pieces that are to be cut."""
    fabrics = {piece.id: piece.fabric for piece in look.pieces}
    places = {piece.id: piece.place for piece in look.pieces}
    lines: list[str] = []
    for each in locked.sets:
        for piece, outlines in each.replacements:
            place = places[piece]
            lines.append(f"in place of {piece}" + (f" (line {place.line} of the drawing)" if place else "") + " put")
            lines += [f"  {look.as_svg(outline, fabrics[piece])}" for outline in outlines]
    return "\n".join(lines)


def _counted(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
