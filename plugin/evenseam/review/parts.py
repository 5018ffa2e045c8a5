"""Two projects become what the author decided otherwise, apart from figures: borders, orders, fabrics, drawings."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias, Union

from evenseam.pattern import (
    Block,
    Border,
    Bound,
    Fabric,
    Project,
)
from evenseam.problems import Place
from evenseam.review.border_parts import blocks_of_borders, border_text, corner_fabric, has_order
from evenseam.review.changes import PartCause
from evenseam.review.drawn_alike import drawn, listed, shapes
from evenseam.review.matching import Matching, match_parts
from evenseam.review.part_words import (
    block_words,
    cloth_of,
    finish_text,
    float_text,
    hanging_text,
    pieces_text,
    reach_text,
    row_text,
)
from evenseam.review.renames import Renames
from evenseam.review.row_parts import spacer_causes

_Both: TypeAlias = Union[str, tuple[str, str]]
"""One name, or the old one and the new one."""
_Places: TypeAlias = tuple[Union[Place, None], Union[Place, None]]


@dataclass(frozen=True, slots=True)
class PartsCompared:
    """What is decided otherwise, and the matchings the rest of the review needs."""

    causes: tuple[PartCause, ...]
    renames: Renames
    fabrics: Matching[Fabric]
    borders: Matching[Border]
    blocks: Matching[Block]
    leaf_names: tuple[tuple[str, str], ...]
    """New names of figures by old ones, where a part was renamed."""


def compare_parts(old: Project, new: Project) -> PartsCompared:
    """Return what differs between two projects apart from figures and words."""
    fabrics = match_parts(
        old.fabrics, new.fabrics, lambda fabric: fabric.id,
        [(_name_of, _name_of), (_colour_of, _colour_of)],
    )  # fmt: skip
    fabric_ids = _renamed(fabrics)
    now = dict(fabric_ids)

    def of_old(fabric: str) -> str:
        return now.get(fabric, fabric)

    borders = match_parts(
        old.borders, new.borders, lambda border: border.id,
        [
            (lambda one: (of_old(one.fabric), one.width.value), lambda one: (one.fabric, one.width.value)),
            (lambda one: (of_old(one.fabric), old.borders.index(one)), lambda b: (b.fabric, new.borders.index(b))),
        ],
    )  # fmt: skip
    blocks = match_parts(
        old.blocks, new.blocks, lambda block: block.id,
        [(lambda block: drawn(block, now), lambda block: drawn(block, {}))],
    )  # fmt: skip
    renames = Renames(fabric_ids, _renamed(borders), _renamed(blocks))
    finder = _Finder(old, new, renames, [])
    finder.compare(fabrics, borders, blocks)
    leaf_names = (
        *((f"{a.name} width", f"{b.name} width") for a, b in borders.pairs if a.name != b.name),
        *(
            (f"{a.id} block {side}", f"{b.id} block {side}")
            for a, b in blocks.pairs
            for side in ("width", "height")
            if a.id != b.id
        ),
    )  # fmt: skip
    return PartsCompared(tuple(finder.found), renames, fabrics, borders, blocks, leaf_names)


@dataclass(frozen=True, slots=True)
class _Finder:
    """Compares part by part and keeps what it finds."""

    old: Project
    new: Project
    renames: Renames
    found: list[PartCause]

    def compare(self, fabrics: Matching[Fabric], borders: Matching[Border], blocks: Matching[Block]) -> None:
        """Compare everything."""
        for before, after in fabrics.pairs:
            direction = (_way(before), _way(after))
            ids = (f"fabric:{before.id}", f"fabric:{after.id}")
            self._aspect(ids, (before.name, after.name), "print", direction, before.place, after.place)
        self._blocks(blocks)
        self._arrangement()
        self._sashing()
        self._triangles()
        self._borders(borders)
        self._finish()
        self._hanging()

    def _aspect(
        self, part: _Both, name: _Both, about: str, values: tuple[str, str], old: Place | None, new: Place | None
    ) -> None:
        if values[0] != values[1]:
            self._add(part, name, about, values, (old, new))

    def _add(self, part: _Both, name: _Both, about: str, values: tuple[str, str], places: _Places) -> None:
        old_part, new_part = (part, part) if isinstance(part, str) else part
        old_name, new_name = (name, name) if isinstance(name, str) else name
        self.found.append(
            PartCause(
                new_part, new_name, about, *values, *places,
                old_part="" if old_part == new_part else old_part, old_name="" if old_name == new_name else old_name,
            )
        )  # fmt: skip

    def _fabric(self, part: _Both, name: _Both, old: str | None, new: str | None, places: _Places) -> None:
        """Note another fabric; the same one under another id is none."""
        if old is not None and new is not None and self.renames.fabric(old) != new:
            names = (self.old.fabric(old).name, self.new.fabric(new).name)
            self._add(part, name, "fabric", names, places)

    def _blocks(self, blocks: Matching[Block]) -> None:
        for block in blocks.removed:
            self.found.append(_whole_block(block, is_new=False))
        for block in blocks.added:
            self.found.append(_whole_block(block, is_new=True))
        fabrics = dict(self.renames.fabrics)
        for before, after in blocks.pairs:
            part, places = (f"block:{before.id}", f"block:{after.id}"), (before.place, after.place)
            name = (block_words(before.name), block_words(after.name))
            self._aspect(part, name, "name", name, *places)
            self._aspect(part, name, "method", (before.method.value, after.method.value), *places)
            if shapes(before) == shapes(after) and drawn(before, fabrics) != drawn(after, {}):
                stood, stand = drawn(before, fabrics), drawn(after, {})
                self._add(part, name, "fabrics", (str(len(stood - stand)), str(len(stand - stood))), places)
            elif drawn(before, fabrics) != drawn(after, {}):
                counts = (pieces_text(before), pieces_text(after))
                self._add(part, name, "drawing", counts, places)
            elif listed(before, fabrics) != listed(after, {}):
                self._add(part, name, "listing", ("", ""), places)

    def _arrangement(self) -> None:
        before, after = self.old.arrangement, self.new.arrangement
        places = (before.place, after.place)
        self._aspect("layout", "blocks", "setting", (before.setting.value, after.setting.value), *places)
        are_unequal = bool(before.unequal_rows and after.unequal_rows)
        same_rows = before.rows.value == after.rows.value
        # Unequal rows have no columns to count.
        same_grid = same_rows and (are_unequal or before.columns.value == after.columns.value)
        ids = dict(self.renames.blocks)
        stood = [[(ids.get(p.block, p.block), p.quarter_turns, p.is_mirrored) for p in row] for row in before.positions]
        stand = [[(p.block, p.quarter_turns, p.is_mirrored) for p in row] for row in after.positions]
        if same_grid and stood != stand:
            texts = ("; ".join(row_text(row) for row in stood), "; ".join(row_text(row) for row in stand))
            self.found.append(PartCause("layout", "blocks", "layout", *texts, *places))
        if are_unequal and same_rows:
            self.found.extend(spacer_causes(self.old, self.new, dict(self.renames.fabrics)))

    def _sashing(self) -> None:
        before, after = self.old.arrangement.sashing, self.new.arrangement.sashing
        leaves = ("sashing width",)
        if before is None and after is not None:
            words = f"{after.width.text} wide, in {self.new.fabric(after.fabric).name}"
            self.found.append(PartCause("sashing", "sashing", "", "", words, None, after.place, leaves))
        elif before is not None and after is None:
            words = f"{before.width.text} wide, in {self.old.fabric(before.fabric).name}"
            self.found.append(PartCause("sashing", "sashing", "", words, "", before.place, None, leaves))
        elif before is not None and after is not None:
            places = (before.place, after.place)
            self._aspect("sashing", "sashing", "reach", (reach_text(before), reach_text(after)), *places)
            self._fabric("sashing", "sashing", before.fabric, after.fabric, places)
            corners = (before.cornerstone_fabric, after.cornerstone_fabric)
            if (corners[0] is None) != (corners[1] is None):
                texts = tuple("with cornerstones" if corner else "in long strips" for corner in corners)
                self._aspect("sashing", "sashing", "cornerstones", (texts[0], texts[1]), *places)
            self._fabric("sashing", "cornerstones of the sashing", *corners, places)

    def _triangles(self) -> None:
        before, after = self.old.arrangement.setting_triangles, self.new.arrangement.setting_triangles
        if before is None or after is None:  # The setting itself changed then.
            return
        places = (before.place, after.place)
        self._fabric("setting", "setting triangles", before.fabric, after.fabric, places)
        self._fabric("setting", "corner triangles", before.corner_fabric, after.corner_fabric, places)
        self._aspect("setting", "setting triangles", "float", (float_text(before), float_text(after)), *places)

    def _borders(self, borders: Matching[Border]) -> None:
        for border in borders.removed:
            words = border_text(border, self.old)
            part, leaves = f"border:{border.id}", (f"{border.name} width",)
            self.found.append(PartCause(part, border.name, "", words, "", border.place, None, leaves))
        for border in borders.added:
            words = border_text(border, self.new)
            part, leaves = f"border:{border.id}", (f"{border.name} width",)
            self.found.append(PartCause(part, border.name, "", "", words, None, border.place, leaves))
        for before, after in borders.pairs:
            ids, places = (f"border:{before.id}", f"border:{after.id}"), (before.place, after.place)
            name = (before.name, after.name)
            self._aspect(ids, name, "name", name, *places)
            if has_order(before) and has_order(after):
                self._aspect(ids, name, "order", (before.order.value, after.order.value), *places)
            self._aspect(ids, name, "corners", (before.corners.value, after.corners.value), *places)
            for about, values in blocks_of_borders(before, self.old, after, self.new):
                self._aspect(ids, name, about, values, *places)
            self._aspect(ids, name, "join", (before.join.value, after.join.value), *places)
            self._aspect(ids, name, "strips", (before.strips.value, after.strips.value), *places)
            if before.pieced is None and after.pieced is None:
                self._fabric(ids, name, before.fabric, after.fabric, places)
            elif before.pieced is not None and after.pieced is not None:
                spacers = (f"spacer strips of the {before.name}", f"spacer strips of the {after.name}")
                self._fabric(ids, spacers, before.pieced.spacer_fabric, after.pieced.spacer_fabric, places)
            corners = (f"corners of the {before.name}", f"corners of the {after.name}")
            self._fabric(ids, corners, corner_fabric(before), corner_fabric(after), places)
        order = [after.id for _, after in borders.pairs]
        now = [border.id for border in self.new.borders if border.id in order]
        if order != now:
            places = (self.old.borders[0].place, self.new.borders[0].place)
            stood = ", ".join(before.name for before, _ in borders.pairs)
            stand = ", ".join(border.name for border in self.new.borders if border.id in order)
            self.found.append(PartCause("borders", "borders", "order from the inside out", stood, stand, *places))

    def _finish(self) -> None:
        before, after = self.old.finish, self.new.finish
        places = (before.place, after.place)
        kinds = (finish_text(before), finish_text(after))
        if kinds[0] != kinds[1]:
            leaves = (
                "opening", "topstitch distance", "binding strip width", "binding extra length",
                "backing seam allowance",
            )  # fmt: skip
            self.found.append(PartCause("finish", "finish", "", *kinds, *places, leaves))
        self._fabric("backing", "backing", before.backing_fabric, after.backing_fabric, places)
        if isinstance(before, Bound) and isinstance(after, Bound):
            one, two = before.binding, after.binding
            self._fabric("binding", "binding", one.fabric, two.fabric, places)
            self._aspect("binding", "binding", "grain", (one.grain.value, two.grain.value), *places)
            self._aspect("binding", "binding", "join", (one.join.value, two.join.value), *places)

    def _hanging(self) -> None:
        before, after = self.old.hanging, self.new.hanging
        kinds = (hanging_text(before), hanging_text(after))
        places = (before.place if before else None, after.place if after else None)
        if kinds[0] != kinds[1]:
            leaves = ("corner pocket square", "sleeve cut depth", "sleeve extra", "sleeve hem", "sleeve drop")
            self.found.append(PartCause("hanging", "hanging", "", *kinds, *places, leaves))
        elif before is not None and after is not None:
            self._fabric("hanging", kinds, cloth_of(before), cloth_of(after), places)


def _renamed(matching: Matching[Fabric] | Matching[Border] | Matching[Block]) -> tuple[tuple[str, str], ...]:
    return tuple((before.id, after.id) for before, after in matching.pairs if before.id != after.id)


def _name_of(fabric: Fabric) -> str:
    return fabric.name.casefold()


def _colour_of(fabric: Fabric) -> str:
    return fabric.colour.lower()


def _way(fabric: Fabric) -> str:
    return "one-way" if fabric.is_directional else "no direction"


def _whole_block(block: Block, *, is_new: bool) -> PartCause:
    words = f"{block.width.number} × {block.height.text}, {pieces_text(block)}"
    leaves = (f"{block.id} block width", f"{block.id} block height")
    part, name = f"block:{block.id}", block_words(block.name)
    if is_new:
        return PartCause(part, name, "", "", words, None, block.place, leaves)
    return PartCause(part, name, "", words, "", block.place, None, leaves)
