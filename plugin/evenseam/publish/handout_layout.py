"""How large a picture is printed in the handout, and how much room words take: nothing is set here, only reckoned."""

from __future__ import annotations

import re
from collections.abc import Iterable
from math import ceil

from evenseam.publish.html import plain_words
from evenseam.wording.document import (
    Beside,
    Block,
    Caution,
    Checkpoint,
    Heading,
    ListBlock,
    Paragraph,
    Picture,
    StepBlock,
    Table,
)

TEXT_WIDTH = 480
"""Points between the margins of the narrower paper, a little less for safety."""
GUTTER = 18
"""Points between a picture and what stands beside it."""
HALF_WIDTH = (TEXT_WIDTH - GUTTER) / 2
LEAST_LETTERS = 6.5
"""Points: no letter of a picture is printed smaller where the page is wide enough."""
LARGEST_LEAST = 0.66
LEAST_WITHOUT_LETTERS = 0.3
SCALE = 0.66
"""Points for one unit of a drawing: its letters come out as large as those of a table."""
HERO_SCALE = 1.0
TALLEST = 230
"""Points: a picture that would be taller is drawn smaller; the finished project may be HERO_TALLEST."""
HERO_TALLEST = 300
BESIDE_WIDTH = 256
"""Points: the widest picture that still leaves room for words beside it."""
BESIDE_SCALE = 0.5
BESIDE_TALLEST = 185
FEW_WORDS_TALLEST = 120
"""Points: beside a line or two, and in one of two steps that stand side by side."""
FEW_SIGNS = 260
WIDE_FROM = 5.5
"""A picture this much wider than tall stands above the words, as wide as they are."""
LINE = 14.0
"""Points from line to line, with a share of the space between paragraphs."""
SIGNS_IN_A_LINE = 100
"""About as many stand in a line over the whole width."""
HEADING_HEIGHT = 30.0
_VIEW_BOX = re.compile(r"\bviewBox=[\"']\s*[-\d.eE]+[\s,]+[-\d.eE]+[\s,]+([\d.eE+]+)[\s,]+([\d.eE+]+)")
_LETTERS = re.compile(r"\bfont-size=[\"']([\d.]+)")


def extent(svg: str) -> tuple[float, float]:
    """Return width and height of an SVG text in the units of its view box; 1 × 1 when it has none."""
    found = _VIEW_BOX.search(svg)
    width, height = (float(found[1]), float(found[2])) if found else (1.0, 1.0)
    return (width, height) if width > 0 and height > 0 else (1.0, 1.0)


def least_scale(svg: str) -> float:
    """Return the scale below which the smallest letters of a picture can no longer be read."""
    smallest = min((float(size) for size in _LETTERS.findall(svg)), default=0.0)
    return min(LEAST_LETTERS / smallest, LARGEST_LEAST) if smallest else LEAST_WITHOUT_LETTERS


def scale_to(svg: str, scale: float, wide: float, tall: float) -> float:
    """Return a scale, or a smaller one to fit: too tall only where letters would be too small, too wide never."""
    width, height = extent(svg)
    return min(max(min(scale, tall / height), least_scale(svg)), wide / width)


def scale_beside(svg: str, signs: int) -> float | None:
    """Return the scale of a picture that stands beside so many signs of words; None for one that stands above them."""
    width, height = extent(svg)
    if width >= height * WIDE_FROM or width * least_scale(svg) > BESIDE_WIDTH:
        return None
    return scale_to(svg, BESIDE_SCALE, BESIDE_WIDTH, FEW_WORDS_TALLEST if signs < FEW_SIGNS else BESIDE_TALLEST)


def signs_of(blocks: Iterable[Block]) -> int:
    """Return how long words are, roughly: signs, and a line's worth for each item or row."""
    total = 0
    for block in blocks:
        match block:
            case Paragraph(inlines=inlines) | Checkpoint(inlines=inlines) | Heading(inlines=inlines):
                total += len(plain_words(inlines))
            case ListBlock(items=items):
                total += sum(40 + signs_of(item) for item in items)
            case Table(rows=rows):
                total += 90 * (len(rows) + 2)
            case Caution(blocks=inner) | StepBlock(blocks=inner) | Beside(blocks=inner):
                total += 90 + signs_of(inner)
            case _:
                pass
    return total


def height_of(blocks: Iterable[Block], width: float) -> float:
    """Return about how many points words take in a column of this width."""
    signs = SIGNS_IN_A_LINE * width / TEXT_WIDTH
    total = 0.0
    for block in blocks:
        match block:
            case Paragraph(inlines=inlines):
                total += LINE * ceil(len(plain_words(inlines)) / signs) + LINE / 4
            case Checkpoint(inlines=inlines):
                total += LINE * ceil(len(plain_words(inlines)) / signs) + 1.5 * LINE
            case ListBlock(items=items):
                total += sum(height_of(item, width - 15) for item in items)
            case _:
                pass
    return total


def stands_in_half(step: StepBlock, svg: str) -> bool:
    """Tell whether a step can stand beside another: a picture and a few words that fit half the width."""
    first, *rest = step.blocks
    is_plain = isinstance(first, Picture) and all(isinstance(one, (Paragraph, Checkpoint, ListBlock)) for one in rest)
    return is_plain and extent(svg)[0] * least_scale(svg) <= HALF_WIDTH


def height_in_half(step: StepBlock, svg: str) -> float:
    """Return about how tall a step is over half the width, its picture above its words."""
    tall = extent(svg)[1] * scale_to(svg, BESIDE_SCALE, HALF_WIDTH, FEW_WORDS_TALLEST)
    return HEADING_HEIGHT + tall + height_of(step.blocks[1:], HALF_WIDTH)


def height_alone(step: StepBlock, svg: str) -> float:
    """Return about how tall a step is over the whole width."""
    words = step.blocks[1:]
    width, height = extent(svg)
    scale = scale_beside(svg, signs_of(words))
    if scale is None:
        tall = height * scale_to(svg, SCALE, TEXT_WIDTH, TALLEST)
        return HEADING_HEIGHT + tall + height_of(words, TEXT_WIDTH)
    return HEADING_HEIGHT + max(height * scale, height_of(words, TEXT_WIDTH - GUTTER - width * scale))
