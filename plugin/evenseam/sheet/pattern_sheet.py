"""The one result: every figure of one pattern at one size and edition. Nothing later computes."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.cutting import Material, WaysToBuy
from evenseam.pattern import CutList, Pattern, Program, Project, Quantity
from evenseam.piecing import PiecedBlock
from evenseam.problems import Problem
from evenseam.sheet.cloth_figures import cloth_figures
from evenseam.sizing import SewingLog, SizedProject, UnitMethod


@dataclass(frozen=True, slots=True)
class PatternSheet:
    """Everything that will be printed for one project size in one edition."""

    pattern: Pattern
    sized: SizedProject
    cuts: CutList
    program: Program
    log: SewingLog
    """The simulator's measurements: the checkpoints a maker is told."""
    materials: tuple[Material, ...]
    """Fabrics in the pattern's order, then batting."""
    warnings: tuple[Problem, ...]
    methods: tuple[UnitMethod, ...] = ()
    """Other ways to sew units of triangles, offered where there are enough of them."""
    ways_to_buy: tuple[WaysToBuy, ...] = ()
    """Each planned fabric on cloth of other widths and in fat quarters."""
    chosen_methods: tuple[UnitMethod, ...] = ()
    """Units sewn from whole squares because the author chose it: these are in the cut list and the steps."""

    @property
    def project(self) -> Project:
        """The project, every length in the edition's unit."""
        return self.sized.project

    @property
    def blocks(self) -> tuple[PiecedBlock, ...]:
        """How each block is sewn."""
        return self.sized.blocks

    @property
    def figures(self) -> tuple[tuple[str, Quantity], ...]:
        """Every figure, by name: those of the work, then those of the cloth."""
        return (*self.sized.figures, *cloth_figures(self.materials, self.ways_to_buy))

    def figure(self, name: str) -> Quantity:
        """Return one figure by name. Raises KeyError."""
        for known, quantity in self.figures:
            if known == name:
                return quantity
        raise KeyError(name)

    def material(self, id: str) -> Material:
        """Return one line of the materials list. Raises KeyError."""
        for material in self.materials:
            if material.material == id:
                return material
        raise KeyError(id)
