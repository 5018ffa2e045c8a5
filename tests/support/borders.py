"""Borders of every kind: by hand and at random, with blocks for those that are made of blocks."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import (
    Assumed,
    Block,
    BlockPiece,
    Border,
    BorderCorners,
    Method,
    PiecedBorder,
    Project,
    Quantity,
)
from hypothesis import strategies as st

from support.samples import BOUND, MUG_RUG, SEA, border, grid, length, polygon
from support.strategies import FABRICS, lengths, projects

FABRIC_IDS = tuple(fabric.id for fabric in FABRICS)


def mitred(name: str, width: str, fabric: str = "fog", ease: str | None = None) -> Border:
    """Return a border with mitred corners."""
    given = None if ease is None else length(f"ease of the {name}", ease)
    return replace(border(name, width, fabric), corners=BorderCorners.MITRED, ease=given)


def passing(name: str, width: str, fabric: str = "fog") -> Border:
    """Return a border whose strips pass one corner each."""
    return replace(border(name, width, fabric), corners=BorderCorners.PARTIAL_SEAM)


def of_blocks(
    name: str, block: str, corner: str | None = None, spacer: str | None = "fog", least: str | None = None
) -> Border:
    """Return a border of blocks; its width is set when it is sized."""
    narrowest = None if least is None else length("least spacer", least)
    made = PiecedBorder(block, corner, spacer, narrowest)
    return replace(border(name, "1", "sea"), pieced=made, corner_fabric="lamp")


def pennant(
    width: str = "3", height: str = "2", id: str = "pennant", fabrics: tuple[str, str] = ("sea", "fog")
) -> Block:
    """Return a block of two triangles, which looks different however it is turned or mirrored."""
    outline = polygon("0,0 2,0 2,2 0,2")
    pieces = (
        BlockPiece("p1", fabrics[0], polygon("0,0 2,0 0,2")),
        BlockPiece("p2", fabrics[1], polygon("2,0 2,2 0,2")),
    )
    return Block(
        id, id.capitalize(), length(f"{id} width", width), length(f"{id} height", height), Fraction(2), Fraction(2),
        outline, pieces, Method.FOUNDATION,
    )  # fmt: skip


def bordered(*borders: Border, blocks: tuple[Block, ...] = ()) -> Project:
    """Return a bound project of one 6 × 9 in lantern with these borders."""
    return replace(MUG_RUG, size="bordered", borders=borders, blocks=(*MUG_RUG.blocks, *blocks), finish=BOUND)


MEDALLION = replace(
    bordered(
        border("first border", "1", "lamp"),
        of_blocks("ring", "pennant", "corner"),
        mitred("second border", "1", "sea"),
        mitred("third border", "1 1/2", "fog"),
        passing("last border", "2", "sea"),
        blocks=(pennant(), pennant("2", "2", "corner")),
    ),
    size="medallion", fabrics=(replace(SEA, is_directional=False), *MUG_RUG.fabrics[1:]), arrangement=grid(1, 1),
)  # fmt: skip
"""Every kind of border round one block."""
MEDALLION_WITH_PRINT = replace(
    MEDALLION, size="medallion-with-print", fabrics=(replace(SEA, is_directional=True), *MEDALLION.fabrics[1:])
)
"""The same, its sea with an up."""


@st.composite
def border_projects(draw: st.DrawFn, units: tuple[Unit, ...] = (Unit.INCH, Unit.CENTIMETRE)) -> Project:
    """Return a project at random with up to four borders, plain ones of every kind and some of blocks.

    It is drafted in its own unit, so that every length stays as it was drawn.
    """
    project = draw(projects(units))
    unit = project.unit
    blocks = project.blocks
    if any(block.width.unit is not unit for block in blocks):
        # Lengths of the other unit would be re-drafted: borders of blocks are drawn for those of this one.
        borders = [draw(_plain(f"border {number}", unit)) for number in range(draw(st.integers(1, 3)))]
        return replace(project, borders=tuple(borders))
    added: list[Block] = []
    borders = []
    for number in range(draw(st.integers(1, 4))):
        name = f"border {number}"
        if draw(st.integers(0, 2)):
            borders.append(draw(_plain(name, unit)))
            continue
        block, corner = draw(_blocks_of_a_border(number, unit))
        has_corner = draw(st.booleans())
        added += [block, corner] if has_corner else [block]
        made = PiecedBorder(block.id, corner.id if has_corner else None, draw(st.sampled_from(FABRIC_IDS)))
        borders.append(
            Border(
                name.replace(" ", "-"), name, block.height, "fog", draw(_plain(name, unit)).order,
                corner_fabric=draw(st.sampled_from(FABRIC_IDS)), pieced=made,
            )
        )  # fmt: skip
    return replace(project, borders=tuple(borders), blocks=(*blocks, *added))


@st.composite
def _plain(draw: st.DrawFn, name: str, unit: Unit) -> Border:
    made = border(name, "1", draw(st.sampled_from(FABRIC_IDS)))
    ease = draw(st.none() | lengths(f"ease of the {name}", unit, "1", "8"))
    return replace(
        made, width=draw(lengths(f"{name} width", unit, "1/2", "3")), corners=draw(st.sampled_from(BorderCorners)),
        corner_fabric=draw(st.sampled_from(FABRIC_IDS)), ease=ease,
    )  # fmt: skip


@st.composite
def _blocks_of_a_border(draw: st.DrawFn, number: int, unit: Unit) -> tuple[Block, Block]:
    """Return a block to repeat, whose sides are even numbers of marks, and a square one for the corners."""
    fabrics = (draw(st.sampled_from(FABRIC_IDS)), draw(st.sampled_from(FABRIC_IDS)))
    wide, high = (
        draw(lengths("width", unit, "2", "5", "1/2" if unit is Unit.INCH else "1")),
        draw(lengths("height", unit, "1", "3")),
    )
    reason = Assumed("drawn at random")
    block = replace(
        pennant(id=f"flag-{number}", fabrics=fabrics), width=Quantity("flag width", wide.value, unit, reason),
        height=Quantity("flag height", high.value, unit, reason),
    )  # fmt: skip
    corner = replace(
        pennant(id=f"knot-{number}", fabrics=fabrics), width=Quantity("knot width", high.value, unit, reason),
        height=Quantity("knot height", high.value, unit, reason),
    )  # fmt: skip
    return block, corner
