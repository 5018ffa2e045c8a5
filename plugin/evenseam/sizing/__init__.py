"""From a project size to finished sizes, cut list and assembly program, and the simulator that proves them."""

from evenseam.pattern import UnitMethodKind
from evenseam.sizing.border_blocks import block_count
from evenseam.sizing.cut_list import cut_list
from evenseam.sizing.program import assembly_program
from evenseam.sizing.redraft import redraft
from evenseam.sizing.simulator import sew
from evenseam.sizing.size import size_project
from evenseam.sizing.sized import Measurement, Placed, SewingLog, SizedProject
from evenseam.sizing.unit_methods import UnitMethod, WholeSquares, unit_methods
from evenseam.sizing.unit_squares import chosen_methods

__all__ = [
    "Measurement",
    "Placed",
    "SewingLog",
    "SizedProject",
    "UnitMethod",
    "UnitMethodKind",
    "WholeSquares",
    "assembly_program",
    "block_count",
    "chosen_methods",
    "cut_list",
    "redraft",
    "sew",
    "size_project",
    "unit_methods",
]
