"""How long a drawn block takes to be pieced, and how that grows: run as a script.

Prints one line a drawing: pieces, sections, a bound that no piecing can be below, sets of pieces looked at, seconds,
and seconds for each pair of pieces against those of the smallest drawing of the same kind.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from random import Random
from time import process_time

sys.path[:0] = [str(Path(__file__).resolve().parents[2] / folder) for folder in ("plugin", "tests")]

from evenseam.geometry import Polygon, arrange  # noqa: E402
from evenseam.piecing import piece_block  # noqa: E402
from evenseam.piecing.fewest import FewestSections  # noqa: E402
from evenseam.piecing.peel import Peeler  # noqa: E402
from support.drawings import block_of, random_partition, rings_of_strips, split_squares, squares, triangle_hexagon  # noqa: E402

PIECES = (30, 60, 100, 150)


def drawings() -> Iterator[tuple[str, list[Polygon]]]:
    """Yield kinds of drawings, each in growing sizes."""
    for kind in range(3):
        for pieces in PIECES:
            yield f"cut at random, {kind}", random_partition(Random(kind), pieces)
    for across, down in ((6, 5), (10, 6), (10, 10), (15, 10)):
        yield "squares", squares(across, down)
    for across, down in ((5, 3), (6, 5), (10, 5), (15, 5)):
        yield "half-square triangles", split_squares(across, down, lambda x, y: "/\\"[(x + y) % 2])
    for across, down in ((4, 2), (5, 3), (5, 5), (6, 6)):
        yield "quarter-square triangles", split_squares(across, down, lambda x, y: "/\\")
    for strips in (26, 56, 96, 146):
        yield "strips round and round", rings_of_strips(strips)
    for side in (2, 3, 4, 5):
        yield "hexagon of triangles, with roots", triangle_hexagon(side)


def main() -> None:
    """Piece every drawing and print the table."""
    print(f"{'drawing':34}{'pieces':>7}{'sections':>9}{'at least':>9}{'sets':>6}{'seconds':>9}{'per pair':>9}")
    smallest: dict[str, float] = {}
    for kind, outlines in drawings():
        block = block_of(outlines)
        started = process_time()
        pieced = piece_block(block).value
        seconds = process_time() - started
        assert pieced is not None
        peeler = Peeler.of(arrange([piece.outline for piece in block.pieces]))
        search = FewestSections.of(peeler)
        search.fewest(peeler.arrangement.everything)
        share = seconds / len(outlines) ** 2
        ratio = share / smallest.setdefault(kind, share)
        print(
            f"{kind:34}{len(outlines):7}{len(pieced.sections):9}{search.at_least(peeler.arrangement.everything):9}"
            f"{search.steps:6}{seconds:9.3f}{ratio:9.2f}"
        )


if __name__ == "__main__":
    main()
