"""A document to the data that the handout's typst program sets: plain lists, numbers and texts, never code."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

from evenseam.publish.handout_layout import (
    BESIDE_SCALE,
    BESIDE_WIDTH,
    FEW_WORDS_TALLEST,
    HALF_WIDTH,
    HERO_SCALE,
    HERO_TALLEST,
    SCALE,
    TALLEST,
    TEXT_WIDTH,
    extent,
    height_alone,
    height_in_half,
    least_scale,
    scale_beside,
    scale_to,
    signs_of,
    stands_in_half,
)
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

LONG_STEP = 450
"""Signs of text from which a step may break across pages."""
SIDE_BY_SIDE = 0.88
"""Two steps stand side by side where that takes less than this share of the height they take one below the other."""
TALLEST_PAIR = 320
"""Points: taller steps would leave a hole at the foot of the page before them."""


@dataclass(slots=True)
class DataWriter:
    """Turns blocks into data; remembers the level of headings, which may not leap in a tagged PDF."""

    painter: Painter
    level: int = 1

    def blocks(self, blocks: Iterable[Block]) -> list[Data]:
        """Return a run of blocks as data; short steps and pictures that follow each other side by side."""
        found: list[Data] = []
        waiting = [*blocks]
        while waiting:
            match waiting:
                case [Picture() as one, Picture() as other, *rest] if self.is_pair_of_pictures(one, other):
                    found.append(self.pictures((one, other)))
                    waiting = rest
                case [StepBlock() as one, StepBlock() as other, *rest] if self.is_pair_of_steps(one, other):
                    halves: list[Data] = [self.step(step, has_half=True) for step in (one, other)]
                    found.append({"kind": "pair", "parts": halves})
                    waiting = rest
                case [block, *rest]:
                    found.append(self.block(block))
                    waiting = rest
        return found

    def is_pair_of_pictures(self, one: Picture, other: Picture) -> bool:
        """Tell whether two pictures are narrow enough to stand side by side."""
        drawn = [self.painter(picture) for picture in (one, other)]
        return "finished" not in (one.name, other.name) and all(
            extent(svg)[0] * least_scale(svg) <= HALF_WIDTH for svg in drawn
        )

    def is_pair_of_steps(self, *steps: StepBlock) -> bool:
        """Tell whether two steps take less of a page side by side than one below the other."""
        pictures = [step.blocks[0] for step in steps if step.blocks]
        drawn = [self.painter(picture) for picture in pictures if isinstance(picture, Picture)]
        if len(drawn) < 2 or not all(stands_in_half(step, svg) for step, svg in zip(steps, drawn, strict=True)):
            return False
        beside = max(height_in_half(step, svg) for step, svg in zip(steps, drawn, strict=True))
        below = sum(height_alone(step, svg) for step, svg in zip(steps, drawn, strict=True))
        return beside < min(SIDE_BY_SIDE * below, TALLEST_PAIR)

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
                return self.pictures(pictures)
            case Beside(picture=picture, blocks=inner):
                scale = scale_beside(self.painter(picture), signs_of(inner)) or BESIDE_SCALE
                # Of a cutting plan the heading above says already which fabric it is of.
                title = picture.title if picture.name.startswith("cutting-") else ""
                drawn = self.picture(picture, scale, wide=BESIDE_WIDTH, title=title)
                return {"kind": "beside", "picture": drawn, "parts": self.blocks(inner)}
            case Swatches():
                return {"kind": "swatches", "rows": [_swatch(*row) for row in block.rows]}
            case Checkpoint(inlines=inlines):
                return {"kind": "checkpoint", "inlines": _run(inlines)}
            case Caution(title=title, blocks=inner):
                return {"kind": "caution", "title": plain(title), "parts": self.blocks(inner)}
            case StepBlock():
                return self.step(block)

    def picture(
        self, picture: Picture, scale: float, *, wide: float = TEXT_WIDTH, tall: float = TALLEST, title: str = ""
    ) -> dict[str, Data]:
        """Return a picture as data, at a scale (points for a unit of the drawing) or smaller to fit its room.

        `title` is what a heading above it says already: a picture of that title has no caption.
        """
        svg = self.painter(picture)
        width, height = extent(svg)
        scale = scale_to(svg, scale, wide, HERO_TALLEST if picture.name == "finished" else tall)
        return {
            "kind": "picture",
            "svg": svg,
            "alt": plain(f"{picture.title}. {picture.description}"),
            "caption": "" if picture.title == title else plain(picture.title),
            "width": round(width * scale, 2),
            "height": round(height * scale, 2),
            # The picture of a step stays with the words that follow it.
            "sticky": picture.name != "finished",
        }

    def pictures(self, pictures: Iterable[Picture]) -> dict[str, Data]:
        """Return small pictures as data, two beside each other."""
        return {"kind": "pictures", "pictures": [self.picture(one, BESIDE_SCALE, wide=HALF_WIDTH) for one in pictures]}

    def step(self, step: StepBlock, *, has_half: bool = False) -> dict[str, Data]:
        """Return a step as data: its picture beside its words unless it is a wide one or one of several.

        A step that has half the width has its picture above its words.
        """
        level, outer = min(self.level + 1, 6), self.level
        self.level = level
        pictures = sum(isinstance(block, (Picture, Pictures)) for block in step.blocks)
        beside: dict[str, Data] | None = None
        parts: list[Data] = []
        match step.blocks:
            case [Picture() as picture, *words] if has_half:
                drawn = self.picture(picture, BESIDE_SCALE, wide=HALF_WIDTH, tall=FEW_WORDS_TALLEST, title=step.title)
                parts = [drawn, *self.blocks(words)]
            case [Picture() as picture, *words] if pictures == 1:
                scale = scale_beside(self.painter(picture), signs_of(words))
                drawn = self.picture(picture, scale or SCALE, title=step.title)
                beside = None if scale is None else drawn
                parts = [*([drawn] if scale is None else []), *self.blocks(words)]
            case blocks:
                parts = self.blocks(blocks)
        self.level = outer
        return {
            "kind": "step",
            "level": level,
            "number": step.number,
            "title": plain(step.title),
            "beside": beside,
            "parts": parts,
            "breakable": not has_half and (signs_of(step.blocks) > LONG_STEP or pictures > 1),
        }


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
