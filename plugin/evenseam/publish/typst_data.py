"""A document to the data that the handout's typst program sets: plain lists, numbers and texts, never code."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

from evenseam.publish.html import Painter, plain_words
from evenseam.publish.html_text import colour, plain
from evenseam.wording.document import (
    Beside,
    Block,
    Caution,
    Checkpoint,
    Code,
    Emphasis,
    Heading,
    Inline,
    LineBreak,
    Link,
    ListBlock,
    Measured,
    Paragraph,
    Picture,
    Pictures,
    StepBlock,
    Strong,
    Swatches,
    Table,
    Text,
)

Data: TypeAlias = "str | int | float | bool | list[Data] | dict[str, Data] | None"

TEXT_WIDTH = 490
"""Points between the margins of the narrower paper, a little less for safety."""
SCALE = 0.66
"""Points for one unit of a drawing: its letters come out as large as those of a table."""
SMALL_SCALE = 0.4
HERO_SCALE = 1.0
TALLEST = 230
"""Points: a picture that would be taller is drawn smaller; the finished project may be HERO_TALLEST."""
HERO_TALLEST = 300
BESIDE_WIDTH = 256
"""Points: the widest picture that still leaves room for a step's words beside it."""
BESIDE_SCALE = 0.56
BESIDE_TALLEST = 185
"""Points: beside words, which are seldom longer."""
LEAST_BESIDE_SCALE = 0.5
"""A picture that would have to be smaller than this to stand beside the words stands above them."""
WIDE_FROM = 2.6
"""A picture this much wider than tall stands above the words instead of beside them."""
LONG_STEP = 900
"""Signs of text from which a step may break across pages."""
_VIEW_BOX = re.compile(r"\bviewBox=[\"']\s*[-\d.eE]+[\s,]+[-\d.eE]+[\s,]+([\d.eE+]+)[\s,]+([\d.eE+]+)")


@dataclass(slots=True)
class DataWriter:
    """Turns blocks into data; remembers the level of headings, which may not leap in a tagged PDF."""

    painter: Painter
    level: int = 1

    def blocks(self, blocks: Iterable[Block]) -> list[Data]:
        """Return a run of blocks as data."""
        return [self.block(block) for block in blocks]

    def block(self, block: Block) -> dict[str, Data]:
        """Return one block as data."""
        match block:
            case Heading(level=level, inlines=inlines):
                self.level = min(max(level, 2), self.level + 1)
                return {"kind": "heading", "level": self.level, "inlines": _run(inlines)}
            case Paragraph(inlines=inlines):
                return {"kind": "paragraph", "inlines": _run(inlines)}
            case ListBlock(is_numbered=is_numbered, items=items):
                return {"kind": "list", "numbered": is_numbered, "items": [self.blocks(item) for item in items]}
            case Table():
                return _table(block)
            case Picture():
                return self.picture(block, HERO_SCALE if block.name == "finished" else SCALE)
            case Pictures(pictures=pictures):
                return {"kind": "pictures", "pictures": [self.picture(picture, SMALL_SCALE) for picture in pictures]}
            case Beside(picture=picture, blocks=inner):
                return {"kind": "beside", "picture": self.picture_beside(picture), "parts": self.blocks(inner)}
            case Swatches():
                return {"kind": "swatches", "rows": [_swatch(*row) for row in block.rows]}
            case Checkpoint(inlines=inlines):
                return {"kind": "checkpoint", "inlines": _run(inlines)}
            case Caution(title=title, blocks=inner):
                return {"kind": "caution", "title": plain(title), "parts": self.blocks(inner)}
            case StepBlock():
                return self.step(block)

    def picture(self, picture: Picture, scale: float, *, is_in_step: bool = False) -> dict[str, Data]:
        """Return a picture as data, at a scale (points for a unit of the drawing) or smaller to fit the page."""
        svg = self.painter(picture)
        width, height = _size(svg)
        scale = min(scale, TEXT_WIDTH / width, (HERO_TALLEST if picture.name == "finished" else TALLEST) / height)
        return {
            "kind": "picture",
            "svg": svg,
            "alt": plain(f"{picture.title}. {picture.description}"),
            # The step's own heading says what its picture shows; elsewhere the title stands under the picture.
            "caption": "" if is_in_step else plain(picture.title),
            "width": round(width * scale, 2),
            "height": round(height * scale, 2),
        }

    def picture_beside(self, picture: Picture, *, is_in_step: bool = False) -> dict[str, Data]:
        """Return a picture as data, small enough to leave room for words beside it."""
        width, height = _size(self.painter(picture))
        scale = min(BESIDE_SCALE, BESIDE_WIDTH / width, BESIDE_TALLEST / height)
        return self.picture(picture, scale, is_in_step=is_in_step)

    def step(self, step: StepBlock) -> dict[str, Data]:
        """Return a step as data: its first picture beside its words unless it is a wide one."""
        level, outer = min(self.level + 1, 6), self.level
        self.level = level
        pictures = [block for block in step.blocks if isinstance(block, Picture)]
        beside: dict[str, Data] | None = None
        rest = step.blocks
        if pictures and step.blocks[0] is pictures[0] and _goes_beside(self.painter(pictures[0])):
            beside = self.picture_beside(pictures[0], is_in_step=pictures[0].title == step.title)
            rest = step.blocks[1:]
        parts = _held_together(
            [
                self.picture(block, SCALE, is_in_step=block.title == step.title)
                if isinstance(block, Picture)
                else self.block(block)
                for block in rest
            ]
        )
        self.level = outer
        return {
            "kind": "step",
            "level": level,
            "number": step.number,
            "title": plain(step.title),
            "beside": beside,
            "parts": parts,
            "breakable": _signs(step.blocks) > LONG_STEP or len(pictures) > 1,
        }


def _held_together(parts: list[dict[str, Data]]) -> list[Data]:
    """Return a step's parts with its measurement held to the paragraph before it, so that no page begins with it."""
    held: list[dict[str, Data]] = []
    for part in parts:
        if part["kind"] == "checkpoint" and held and held[-1]["kind"] == "paragraph":
            held[-1] = {"kind": "together", "parts": [held[-1], part]}
        else:
            held.append(part)
    return [*held]


def _run(inlines: Iterable[Inline]) -> list[Data]:
    return [_inline(inline) for inline in inlines]


def _inline(inline: Inline) -> Data:
    match inline:
        case Text(text=text):
            return plain(text)
        case Strong(inlines=inner):
            return {"kind": "strong", "inlines": _run(inner)}
        case Emphasis(inlines=inner):
            return {"kind": "emphasis", "inlines": _run(inner)}
        case Code(text=text):
            return {"kind": "code", "text": plain(text)}
        case Link(address=address, inlines=inner):
            # A relative address leads nowhere from a sheet of paper.
            if address.startswith(("https://", "http://", "mailto:")):
                return {"kind": "link", "address": plain(address), "inlines": _run(inner)}
            return {"kind": "emphasis", "inlines": _run(inner)}
        case Measured(text=text):
            return {"kind": "measured", "text": plain(text)}
        case LineBreak():
            return {"kind": "break"}


def _table(table: Table) -> dict[str, Data]:
    """Return a table as data, its columns as wide as their longest words ask, within reason."""
    columns = len(table.header)
    lines = [table.header, *table.rows]
    longest = [max(len(plain_words(line[column])) for line in lines) for column in range(columns)]
    return {
        "kind": "table",
        "caption": plain(table.caption),
        "header": [_run(cell) for cell in table.header],
        "rows": [[_run(cell) for cell in row] for row in table.rows],
        "widths": [min(max(length, 6), 34) for length in longest],
        "row_headings": table.has_row_headings,
    }


def _swatch(_id: str, letter: str, name: str, fabric_colour: str, line: tuple[Inline, ...]) -> dict[str, Data]:
    return {"letter": plain(letter), "name": plain(name), "colour": colour(fabric_colour), "line": _run(line)}


def _size(svg: str) -> tuple[float, float]:
    """Return width and height of an SVG text in the units of its view box; 1 × 1 when it has none."""
    found = _VIEW_BOX.search(svg)
    width, height = (float(found[1]), float(found[2])) if found else (1.0, 1.0)
    return (width, height) if width > 0 and height > 0 else (1.0, 1.0)


def _goes_beside(svg: str) -> bool:
    width, height = _size(svg)
    return width < height * WIDE_FROM and width * LEAST_BESIDE_SCALE <= BESIDE_WIDTH


def _signs(blocks: Iterable[Block]) -> int:
    """Return how long a step's words are, roughly: signs, and a line's worth for each item or row."""
    total = 0
    for block in blocks:
        match block:
            case Paragraph(inlines=inlines) | Checkpoint(inlines=inlines) | Heading(inlines=inlines):
                total += len(plain_words(inlines))
            case ListBlock(items=items):
                total += sum(40 + _signs(item) for item in items)
            case Table(rows=rows):
                total += 90 * (len(rows) + 2)
            case Caution(blocks=inner) | StepBlock(blocks=inner) | Beside(blocks=inner):
                total += 90 + _signs(inner)
            case _:
                pass
    return total
