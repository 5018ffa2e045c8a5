"""The one result: every figure of one pattern at one size and edition. Nothing later computes."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.cutting import Material
from evenseam.pattern import CutList, Pattern, Program, Project, Quantity
from evenseam.piecing import PiecedBlock
from evenseam.problems import Problem
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
        """Every figure, by name."""
        return self.sized.figures

    def figure(self, name: str) -> Quantity:
        """Return one figure by name. Raises KeyError."""
        for known, quantity in self.sized.figures:
            if known == name:
                return quantity
        raise KeyError(name)

    def material(self, id: str) -> Material:
        """Return one line of the materials list. Raises KeyError."""
        for material in self.materials:
            if material.material == id:
                return material
        raise KeyError(id)
