"""The seams of a block cut to size, gathered into units: what looks alike is planned once and sewn several times."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TypeAlias

from evenseam.geometry import Point, Polygon, convex_hull
from evenseam.pattern import Block, Project
from evenseam.piecing import PiecedBlock, SectionJoin
from evenseam.sizing.rotary import RotaryPiece, is_upright_rectangle, rotary_piece, turned_once

_Seen: TypeAlias = tuple[str, frozenset[Point]]
"""The fabric of a piece and its corners."""
_Look: TypeAlias = dict[_Seen, str]


@dataclass(slots=True)
class RotaryUnit:
    """One unit, made by one seam from two parts."""

    join: SectionJoin
    pieces: tuple[str, ...]
    """Of the place it was found in first, those of the first part before those of the second."""
    also: list[tuple[str, ...]] = field(default_factory=list)
    """The other places where it is used, piece for piece."""
    in_block: int = 0
    """How many of it go into one block."""
    is_trimmed: bool = False
    """True when it has to be trimmed before it is used."""

    @property
    def loose(self) -> frozenset[int]:
        """Places in `pieces` of the pieces that are still a little large at the edge of the unit."""
        return frozenset() if self.is_trimmed else self._loose

    _loose: frozenset[int] = frozenset()


@dataclass(slots=True)
class RotaryUnits:
    """All units of one block in sewing order, the whole block last."""

    block: Block
    project: Project
    pieced: PiecedBlock
    cuts: dict[str, RotaryPiece]
    units: list[RotaryUnit] = field(default_factory=list)
    used: dict[str, RotaryUnit] = field(default_factory=dict)
    """By the name of the part in the pieced block: the unit that serves for it."""
    _outlines: dict[str, Polygon] = field(default_factory=dict)
    _known: dict[frozenset[_Seen], RotaryUnit] = field(default_factory=dict)
    _first_looks: dict[int, _Look] = field(default_factory=dict)

    @staticmethod
    def of(block: Block, pieced: PiecedBlock, project: Project) -> RotaryUnits:
        """Find the units of a block."""
        cuts = {piece.id: rotary_piece(block, piece, project) for piece in block.pieces}
        across, down = block.scale
        found = RotaryUnits(block, project, pieced, cuts)
        found._outlines = {piece.id: piece.outline.scaled(across, down) for piece in block.pieces}
        if pieced.joins:
            found._visit(pieced.joins[-1].makes)
        found._count()
        for unit in found.units:
            found._judge(unit)
        return found

    def outline(self, pieces: tuple[str, ...]) -> Polygon:
        """Return the outline of some pieces sewn together, at finished size."""
        return convex_hull(corner for piece in pieces for corner in self._outlines[piece].corners)

    def everywhere(self, unit: RotaryUnit) -> frozenset[str]:
        """Return the pieces of a unit in all its places, those within larger units that are used again included."""
        pieces = {piece for place in (unit.pieces, *unit.also) for piece in place}
        larger = self.units[self.units.index(unit) + 1 :]
        for whole in larger:
            for place in whole.also:
                there = dict(zip(whole.pieces, place, strict=True))
                pieces |= {there[piece] for piece in pieces if piece in there}
        return frozenset(pieces)

    def _join(self, name: str) -> SectionJoin | None:
        return next((join for join in self.pieced.joins if join.makes == name), None)

    def _visit(self, name: str) -> None:
        join = self._join(name)
        if join is None:
            return
        pieces = (*join.first_pieces, *join.second_pieces)
        looks = self._looks(pieces)
        for look in looks:
            unit = self._known.get(frozenset(look))
            if unit is not None:
                # What of the unit looks so is, in this place, the piece that looks the same.
                known = {piece: seen for seen, piece in self._first_looks[id(unit)].items()}
                unit.also.append(tuple(look[known[piece]] for piece in unit.pieces))
                self.used[name] = unit
                return
        self._visit(join.first)
        self._visit(join.second)
        unit = RotaryUnit(join, pieces)
        self.units.append(unit)
        self.used[name] = unit
        self._known[frozenset(looks[0])] = unit
        self._first_looks[id(unit)] = looks[0]

    def _looks(self, pieces: tuple[str, ...]) -> list[_Look]:
        """Return how pieces look together, as they stand and turned by one, two and three quarters.

        What holds a print with an up is not turned.
        """
        fabrics = {piece.id: piece.fabric for piece in self.block.pieces}
        may_turn = not any(self.project.fabric(fabrics[piece]).is_directional for piece in pieces)
        shapes = {piece: self._outlines[piece] for piece in pieces}
        looks = []
        for _ in range(4 if may_turn else 1):
            left, top, _, bottom = Polygon(tuple(c for shape in shapes.values() for c in shape.corners)).bounds
            step = Point(-left, -top)
            shapes = {piece: shape.moved(step) for piece, shape in shapes.items()}
            looks.append({(fabrics[piece], frozenset(shape.corners)): piece for piece, shape in shapes.items()})
            high = bottom - top
            shapes = {
                piece: Polygon(tuple(Point(high - corner.y, corner.x) for corner in shape.corners))
                for piece, shape in shapes.items()
            }
        return looks

    def _count(self) -> None:
        if not self.units:
            return
        self.units[-1].in_block = 1
        for unit in reversed(self.units):
            for part in (unit.join.first, unit.join.second):
                if part in self.used:
                    self.used[part].in_block += unit.in_block

    def _judge(self, unit: RotaryUnit) -> None:
        """Find what of a unit is still a little large, and which of its parts must be trimmed before its seam."""
        join = unit.join
        sides = ((join.first, join.first_pieces), (join.second, join.second_pieces))
        whole = self.outline(unit.pieces)
        for name, pieces in sides:
            if name in self.used and self._must_be_trimmed(name, pieces, unit.pieces):
                self.used[name].is_trimmed = True
        loose = {piece for name, pieces in sides for piece in self._loose(name, pieces)}
        edge = {piece for piece in loose if edges_on(self._outlines[piece], whole)}
        unit._loose = frozenset(index for index, piece in enumerate(unit.pieces) if piece in edge)
        if edge and (is_upright_rectangle(whole) or len(unit.pieces) == len(self.block.pieces)):
            unit.is_trimmed = True

    def _loose(self, name: str, pieces: tuple[str, ...]) -> set[str]:
        if name not in self.used:
            return {piece for piece in pieces if self.cuts[piece].is_generous}
        unit = self.used[name]
        places = [place for place in (unit.pieces, *unit.also) if set(place) == set(pieces)]
        return {places[0][index] for index in unit.loose}

    def _must_be_trimmed(self, name: str, pieces: tuple[str, ...], together: tuple[str, ...]) -> bool:
        """Tell whether the edge that is sewn next would not lie a seam allowance beyond its seam line.

        A piece that is a little large may be so at a side that is still free. Where several pieces lie along the
        edge, they must be alike in cut and in what has been sewn of them, or the edge has a step.
        """
        loose = self._loose(name, pieces)
        if not loose:
            return False
        part, whole = self.outline(pieces), self.outline(together)
        along = {}
        for piece in pieces:
            shape = self._outlines[piece]
            on_part = edges_on(shape, part)
            sewn_now = [edge for edge in on_part if edge not in edges_on(shape, whole)]
            if sewn_now:
                along[piece] = (sewn_now, len(on_part))
        if not any(piece in loose for piece in along):
            return False
        if any(piece in loose and not edges_on(self._outlines[piece], whole) for piece in along):
            return True
        looks = {
            (self.cuts[piece].shape, self.cuts[piece].recognised.width, *(_square_length(edge) for edge in sewn), free)
            for piece, (sewn, free) in along.items()
        }
        return len(along) > 1 and (len(looks) > 1 or not along.keys() <= loose)


def edges_on(shape: Polygon, outline: Polygon) -> list[tuple[Point, Point]]:
    """Return the edges of a shape that lie on the edge of a convex outline around it."""
    found = []
    for start, end in shape.edges:
        for first, last in outline.edges:
            way = last - first
            if way.cross(start - first) == 0 and way.cross(end - first) == 0:
                found.append((start, end))
    return found


def _square_length(edge: tuple[Point, Point]) -> object:
    step = edge[1] - edge[0]
    return step.dot(step)


def part_slug(block: str, makes: str) -> str:
    """Return what a part of a block is called in ids: lantern-a-b for A+B."""
    words = "".join(sign if sign.isalnum() else " " for sign in makes.lower()).split()
    return "-".join([block, *words])


def canonical(outline: Polygon, *, may_turn: bool) -> tuple[tuple[object, object], ...]:
    """Return corners that are the same for shapes that are the same, turned by quarters or not."""
    found = []
    shape = outline
    for _ in range(4 if may_turn else 1):
        corners = [(corner.x, corner.y) for corner in shape.corners]
        first = corners.index(min(corners))
        found.append((*corners[first:], *corners[:first]))
        shape = turned_once(shape)
    return min(found)
