"""Plain tops of a stated raw size, so that a published example can be put in as it is printed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from evenseam.exact import Unit, parse_length
from evenseam.pattern import Block, BlockPiece, Method, Project, Quantity
from evenseam.sizing import SizedProject, size_project

from support.samples import BOUND, MUG_RUG, grid, length, polygon


def value(text: str) -> Fraction:
    """Return the exact value of a length as a maker writes it."""
    return parse_length(text).value


def plain_block(width: Fraction, height: Fraction, unit: Unit = Unit.INCH, id: str = "plain") -> Block:
    """Return a block of one piece of fog with this finished size, cut to size."""
    outline = polygon("0,0 1,0 1,1 0,1")
    return Block(
        id, id.capitalize(), replace(length(f"{id} width", "1", unit), value=width),
        replace(length(f"{id} height", "1", unit), value=height), Fraction(1), Fraction(1), outline,
        (BlockPiece("p1", "fog", outline),), Method.ROTARY,
    )  # fmt: skip


def plain_top(width: str, height: str, unit: Unit = Unit.INCH, **changes: object) -> Project:
    """Return a bound project without borders whose top measures `width` × `height` from raw edge to raw edge.

    `changes` are fields of the project to set.
    """
    seam = changes.get("seam_allowance", MUG_RUG.seam_allowance)
    assert isinstance(seam, Quantity)
    block = plain_block(value(width) - 2 * seam.value, value(height) - 2 * seam.value, unit)
    plain = replace(MUG_RUG, unit=unit, blocks=(block,), arrangement=grid(1, 1, "plain"), borders=(), finish=BOUND)
    return replace(plain, **changes)


def rows_of(rows: int, columns: int, cut_width: str, cut_height: str, seam: str = "1/4", **changes: object) -> Project:
    """Return a bound project of equal pieces of one fabric, given by their cut size."""
    allowance = length("seam allowance", seam)
    block = plain_block(value(cut_width) - 2 * allowance.value, value(cut_height) - 2 * allowance.value)
    return plain_top(
        "10", "10", seam_allowance=allowance, blocks=(block,), arrangement=grid(rows, columns, "plain"), **changes
    )


def sized(project: Project) -> SizedProject:
    """Return the sized project, which must have no error."""
    outcome = size_project(project)
    assert outcome.value is not None, outcome.problems
    return outcome.value


def figure(project: Project, name: str) -> Fraction:
    """Return the value of one figure of a project."""
    found = sized(project).figure(name).value
    assert isinstance(found, Fraction), name
    return found
