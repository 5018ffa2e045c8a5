"""What every part of the text is written with: the sheet, the language, and the names of the sheet's figures."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from evenseam.exact import Number, format_length, format_number
from evenseam.pattern import Method, Quantity
from evenseam.sheet import PatternSheet
from evenseam.sizing import block_count
from evenseam.wording.catalogue import Language
from evenseam.wording.document import Block
from evenseam.wording.figure_names import FigureNames
from evenseam.wording.marked import Markdown, about_once, mark_figure
from evenseam.wording.tree import parse_ours


@dataclass(frozen=True, slots=True)
class Scribe:
    """Writes templates about one sheet in one language."""

    sheet: PatternSheet
    language: Language
    names: FigureNames

    @property
    def on_paper(self) -> bool:
        """True when any block that is used is sewn on printed paper."""
        used = {pieced.block for pieced in self.sheet.blocks}
        return any(block.method is Method.FOUNDATION for block in self.sheet.project.blocks if block.id in used)

    def uses(self, block: str) -> int:
        """Return how many blocks of a kind the whole project takes, borders included."""
        return block_count(self.sheet.sized, block).whole

    def markdown(self, template: str, values: Mapping[str, Any]) -> str:
        """Fill a template; every template knows figure_name, seam, on_paper, and what shape the project has."""
        outline = self.sheet.sized.outline
        common = {
            "figure_name": self.names,
            "seam": self.sheet.project.seam_allowance,
            "on_paper": self.on_paper,
            "is_outlined": outline is not None,
            "corners": len(outline.corners) if outline else 4,
        }
        return self.language.write(template, {**common, **values})

    def blocks(self, template: str, values: Mapping[str, Any]) -> tuple[Block, ...]:
        """Fill a template and return it as blocks of the tree."""
        return parse_ours(self.markdown(template, values))

    def size(self, width: Quantity, height: Quantity) -> Markdown:
        """Return two lengths as makers write them: 12 1/2 × 15 1/2 in."""
        other = about_once(width.number, height.text)
        return Markdown(
            f"{mark_figure(self.language.figure(width.number), self.names(width))} × "
            f"{mark_figure(self.language.figure(other), self.names(height))}"
        )

    def length(self, value: Number, *candidates: Quantity) -> Markdown:
        """Return a bare length, under the name of the first candidate of the same value if there is one."""
        name = next((self.names(known) for known in candidates if known.value == value), "")
        return mark_figure(self.language.figure(format_length(value, self.sheet.project.unit)), name)

    def sizes(self, width: Number, height: Number, *candidates: Quantity) -> Markdown:
        """Return two bare lengths as makers write them, named like `length`."""
        unit = self.sheet.project.unit
        first = format_number(width, unit)
        texts = ((width, first), (height, about_once(first, format_length(height, unit))))
        marked = []
        for (value, text), known in zip(texts, (candidates, candidates[::-1]), strict=True):
            name = next((self.names(each) for each in known if each.value == value), "")
            marked.append(mark_figure(self.language.figure(text), name))
        return Markdown(" × ".join(marked))
