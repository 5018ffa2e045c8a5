"""The rule for the patches of foundation pieces, against published examples."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from evenseam.pattern import Arrangement, Block, BlockPiece, BlockPosition, Method, Project, Setting
from support.samples import BOUND, MUG_RUG, count, length, polygon
from support.tops import figure, value


def _one_piece(width: str, height: str, margin: str) -> Project:
    block = Block(
        "plain", "Plain", length("plain width", width), length("plain height", height), value(width), value(height),
        polygon(f"0,0 {value(width)},0 {value(width)},{value(height)} 0,{value(height)}"),
        (BlockPiece("p1", "fog", polygon(f"0,0 {value(width)},0 {value(width)},{value(height)} 0,{value(height)}")),),
        Method.FOUNDATION,
    )  # fmt: skip
    arrangement = Arrangement(count("rows", 1), count("columns", 1), Setting.STRAIGHT, ((BlockPosition("plain"),),))
    return replace(
        MUG_RUG,
        blocks=(block,),
        arrangement=arrangement,
        borders=(),
        finish=BOUND,
        patch_margin=length("patch margin", margin),
    )


class TestPatches:
    """A patch is the piece with a seam allowance and a margin on every side, rounded up to 1/4 in."""

    @pytest.mark.parametrize(
        ("area", "margin", "patch"),
        [
            # "Cutting the Main Fabric for Paper Foundation Piecing", Gail Garber: 1/2 in a side in all.
            (("6", "2 1/2"), "1/4", ("7", "3 1/2")),
            # "Cutting fabric for pieced blocks", sarcasticquilter, 2009: 1/2 in at each end.
            (("2 1/4", "2 1/4"), "1/4", ("3 1/4", "3 1/4")),
            # How-to Paper-Piece guide: 1/4 in all round and no more (rounded up here).
            (("3", "2"), "0", ("3 1/2", "2 1/2")),
        ],
    )
    def test_published_patches(self, area: tuple[str, str], margin: str, patch: tuple[str, str]) -> None:
        project = _one_piece(*area, margin)
        found = (figure(project, "plain_a1_patch_width"), figure(project, "plain_a1_patch_height"))
        assert found == (value(patch[0]), value(patch[1]))

    def test_printed_slip_is_not_followed(self) -> None:
        # The same page of sarcasticquilter, 2009, prints 3 3/4 for 2 1/4 + 1/2 + 1/2, which is 3 1/4.
        assert figure(_one_piece("2 1/4", "2 1/4", "1/4"), "plain_a1_patch_width") == Fraction(13, 4) != value("3 3/4")
