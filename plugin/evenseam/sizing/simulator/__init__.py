"""A maker with cloth on a table: sews an assembly program from its cut list and measures after every step.

Import contract: this package imports only `evenseam.exact`, `evenseam.problems`, `evenseam.pattern` and the result
types of `evenseam.sizing.sized`. It shares no code with what works out the cut list, the program or the sewing order
of a block, so that a fault there cannot hide here.
"""

from evenseam.sizing.simulator.sewing import sew

__all__ = ["sew"]
