"""Tops set on point, cut and written down without the sizing of projects: by the published rules and by counting.

Blocks are plain squares of two kinds, gull and buoy, in turn, so that a block in the wrong place is seen. The rules of
the triangles are those of the trade, in terms of the block's finished side F and a seam allowance s: setting triangles
F × √2 + 2 × float + 5 × s, corner triangles F ÷ √2 + 2 × float + 3 1/2 × s, both up to the next mark ("How to Make
Setting Triangles", Marcia Hohn, Quilter's Cache, 2002, as read in the handbook: plus 1 1/4 and plus 7/8).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from evenseam.exact import Number, Unit, ceiling, square_root
from evenseam.pattern import (
    BATTING,
    PROJECT,
    AddSettingTriangles,
    Arrangement,
    BlockPosition,
    Cut,
    CutList,
    CutShape,
    JoinDiagonalRows,
    JoinRun,
    LayerTurned,
    Press,
    Program,
    Project,
    Quantity,
    Run,
    Sashing,
    Setting,
    SettingTriangles,
    Step,
    Topstitch,
    TrimTop,
    TurnOut,
)

from support.mat import MAT, cut, step
from support.samples import TURNED, count, length
from support.tops import plain_block, value

ROOT = square_root(2)


@dataclass(frozen=True)
class Wanted:
    """A top of plain blocks on point."""

    rows: int
    columns: int
    side: str = "6"
    unit: Unit = Unit.INCH
    seam: str = "1/4"
    sash: str = ""
    is_around: bool = False
    has_stones: bool = True
    float_width: str = "0"
    float_height: str = ""


def measured(name: str, exact: Number, unit: Unit = Unit.INCH) -> Quantity:
    """Return a figure of any exact value."""
    return replace(length(name, "1", unit), value=exact)


def next_mark(exact: Number, unit: Unit) -> Fraction:
    """Return a length brought up to a mark of the ruler."""
    return ceiling(exact / unit.ruler_mark) * unit.ruler_mark


def on_point(wanted: Wanted) -> tuple[Project, CutList, Program]:
    """Return the project, its cuts and its steps, up to a turned mat of the top."""
    maker = _Maker(wanted)
    return maker.project(), CutList(tuple(maker.cut_list())), Program(tuple(maker.steps()))


class _Maker:
    def __init__(self, wanted: Wanted) -> None:
        self.wanted = wanted
        self.unit = wanted.unit
        self.side, self.seam = value(wanted.side), value(wanted.seam)
        self.gap = value(wanted.sash or "0")
        self.frame = self.gap if wanted.is_around else Fraction(0)
        self.sides = value(wanted.float_width)
        self.ends = value(wanted.float_height or wanted.float_width)
        self.used: dict[str, int] = {}
        # The lattice of the turned page: every block by its row and its place in it.
        self.blocks = {
            (down, across): "gull" if line % 2 == 0 else "buoy"
            for line in range(2 * wanted.rows - 1)
            for place in range(wanted.columns - line % 2)
            for down, across in [(line // 2 + place + line % 2, place - line // 2)]
        }
        self.diagonals = sorted({down for down, _ in self.blocks})

    def project(self) -> Project:
        wanted, unit = self.wanted, self.unit
        positions = tuple(
            tuple(BlockPosition("gull" if line % 2 == 0 else "buoy") for _ in range(wanted.columns - line % 2))
            for line in range(2 * wanted.rows - 1)
        )
        sashing = (
            Sashing(length("sashing width", wanted.sash, unit), "fog", wanted.is_around, "lamp" if wanted.has_stones else None)
            if wanted.sash
            else None
        )  # fmt: skip
        triangles = SettingTriangles(
            "sea", "lamp", length("float", wanted.float_width, unit),
            float_height=length("float height", wanted.float_height, unit) if wanted.float_height else None,
        )  # fmt: skip
        finish = replace(
            TURNED, backing_overage=length("overage", "1", unit), batting_overage=length("overage", "1", unit),
            opening=length("opening", "4", unit), topstitch=length("topstitching", "1/8", unit),
        )  # fmt: skip
        blocks = tuple(
            replace(block, pieces=(replace(block.pieces[0], fabric="reed" if block.id == "gull" else "fog"),))
            for block in (plain_block(self.side, self.side, unit, id) for id in ("gull", "buoy"))
        )
        return replace(
            MAT, unit=unit, seam_allowance=length("seam allowance", wanted.seam, unit), blocks=blocks, borders=(),
            fabrics=tuple(replace(fabric, is_directional=False) for fabric in MAT.fabrics), finish=finish,
            usable_width=length("usable width", "42", unit), patch_margin=length("margin", "1/4", unit),
            arrangement=Arrangement(
                count("rows", wanted.rows), count("columns", wanted.columns), Setting.ON_POINT, positions, sashing,
                setting_triangles=triangles,
            ),
        )  # fmt: skip

    @property
    def raw_size(self) -> tuple[Number, Number]:
        """Raw width and height of the trimmed top: diagonals of blocks and gaps, floats and seam allowances."""
        wanted = self.wanted
        return (
            ROOT * (wanted.columns * (self.side + self.gap) - self.gap + self.frame) + 2 * (self.sides + self.seam),
            ROOT * (wanted.rows * (self.side + self.gap) - self.gap + self.frame) + 2 * (self.ends + self.seam),
        )

    def use(self, id: str) -> str:
        self.used[id] = self.used.get(id, 0) + 1
        return id

    def cut_list(self) -> list[Cut]:
        list(self.steps())
        used, self.used = self.used, {}
        around = 2 * self.seam
        wide, narrow = self.side + around, self.gap + around
        floats = max(self.sides, self.ends)
        # With one column there are setting triangles at the left and right only, with one row at top and bottom only.
        beside = self.sides if self.wanted.columns == 1 else self.ends if self.wanted.rows == 1 else floats
        setting = self.up(self.side * ROOT + 2 * beside + 5 * self.seam)
        corner = self.up(self.side / ROOT + 2 * floats + Fraction(7, 2) * self.seam)
        longer = ROOT * (floats + self.seam)
        sizes: dict[str, tuple[str, Number, Number, str, CutShape]] = {
            "gull": ("reed", wide, wide, "block:gull", CutShape.SQUARE),
            "buoy": ("fog", wide, wide, "block:buoy", CutShape.SQUARE),
            "setting": ("sea", setting, setting, "setting", CutShape.QUARTER_SQUARE_TRIANGLE),
            "corner": ("lamp", corner, corner, "setting", CutShape.HALF_SQUARE_TRIANGLE),
            "upright": ("fog", narrow, wide, "sashing", CutShape.RECTANGLE),
            "level": ("fog", wide, narrow, "sashing", CutShape.RECTANGLE),
            "stone": ("lamp", narrow, narrow, "sashing", CutShape.SQUARE),
            "end": ("lamp", self.up(narrow + longer), narrow, "sashing", CutShape.RECTANGLE)
            if self.wanted.is_around
            else ("fog", self.up(wide + longer), narrow, "sashing", CutShape.RECTANGLE),
        }
        for number in range(1, 100):
            whole = number * (self.side + self.gap) - self.gap + 2 * self.frame + around + 2 * longer
            sizes[f"long-{number}"] = ("fog", self.up(whole), narrow, "sashing", CutShape.STRIP)
        width, height = (self.up(side + 2) for side in self.raw_size)
        sizes["backing"] = ("sea", width, height, "backing", CutShape.RECTANGLE)
        sizes["batting"] = (BATTING, width, height, "batting", CutShape.RECTANGLE)
        made = []
        for id, number in used.items():
            fabric, across, down, part, shape = sizes[id]
            sized = {
                "width": measured(f"{id} width", across, self.unit), "height": measured(f"{id} height", down, self.unit)
            }  # fmt: skip
            made.append(replace(cut(id, fabric, "1 x 1", number, part, shape), **sized))
        return made

    def up(self, exact: Number) -> Fraction:
        return next_mark(exact, self.unit)

    def steps(self) -> list[Step]:
        steps: list[Step] = []
        order: list[str] = []
        for down in self.diagonals:
            if self.wanted.sash and (down > 0 or self.wanted.is_around):
                order.append(self.sashing_row(steps, down))
            order.append(self.row(steps, down))
        if self.wanted.is_around:
            order.append(self.sashing_row(steps, len(self.diagonals)))
        self.use("corner")
        beyond, ends = (measured("beyond", each + self.seam, self.unit) for each in (self.sides, self.ends))
        width, height = self.raw_size
        raw = (measured("width", width, self.unit), measured("height", height, self.unit))
        finished = tuple(measured("side", side - 2 * self.seam, self.unit) for side in (width, height))
        seam = measured("seam", self.seam, self.unit)
        steps += [
            step("ragged", JoinDiagonalRows(tuple(order), self.use("corner"))),
            replace(
                step("top", TrimTop("ragged", beyond, ends if self.wanted.float_height else None)), measures=raw
            ),
            step(
                "layered",
                LayerTurned("top", self.use("backing"), self.use("batting"), seam, length("o", "4", self.unit), "bottom"),
            ),
            replace(step("turned-out", TurnOut("layered")), measures=(finished[0], finished[1])),
            step(PROJECT, Topstitch("turned-out", length("topstitching", "1/8", self.unit))),
        ]  # fmt: skip
        return steps

    def row(self, steps: list[Step], down: int) -> str:
        places = sorted(across for row, across in self.blocks if row == down)
        parts: list[str] = []
        for place in places:
            if parts and self.wanted.sash:
                parts.append(self.use("upright"))
            parts.append(self.use(self.blocks[down, place]))
        if self.wanted.is_around:
            parts = [self.use("upright"), *parts, self.use("upright")]
        name = parts[0]
        if len(parts) > 1:
            name = f"row-{down}"
            steps.append(step(name, JoinRun(tuple(parts), Run.ACROSS, Press.OPEN, "blocks")))
        ends = [
            self.use("corner" if down == corner else "setting") for corner in (self.wanted.rows - 1, self.wanted.columns - 1)
        ]  # fmt: skip
        steps.append(step(f"whole-row-{down}", AddSettingTriangles(name, ends[0], ends[1], down)))
        return f"whole-row-{down}"

    def sashing_row(self, steps: list[Step], below: int) -> str:
        """Sew the row of sashing that lies above a diagonal row."""
        near = [across for row, across in self.blocks if row in (below - 1, below)]
        number = max(near) - min(near) + 1
        if not self.wanted.has_stones:
            return self.use(f"long-{number}")
        parts = ["end" if self.wanted.is_around else "level"]
        for place in range(number):
            parts += ["level"] if self.wanted.is_around or place > 0 else []
            parts += ["stone"] if place < number - 1 else []
        if self.wanted.is_around:
            parts.append("end")
        else:
            parts[0] = parts[-1] = "end"
        for part in parts:
            self.use(part)
        steps.append(step(f"sashing-{below}", JoinRun(tuple(parts), Run.ACROSS, Press.SASHING, "sashing")))
        return f"sashing-{below}"
