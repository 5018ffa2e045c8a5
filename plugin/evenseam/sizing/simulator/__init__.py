"""A maker with cloth on a table: sews an assembly program from its cut list and measures after every step.

Import contract: this package imports only `evenseam.exact`, `evenseam.problems`, `evenseam.pattern` and the result
types of `evenseam.sizing.sized`. It shares no code with what works out the cut list, the program or the sewing order
of a block, so that a fault there cannot hide here.

How it thinks: `table` holds what is there and how many of each; `workpiece` says what can lie on it; each kind of step
(`blocks`, `runs`, `borders`, `finishing`, `hanging`) takes workpieces and leaves one, or a spoilt one after a problem,
so that each fault is told once; `layout` and `arranged` compare the centre, place by place, with what the author
decided. A setting or corner it cannot sew is a problem (`not-sewable-yet`), never a guess: what is added for it is a
workpiece with slanted edges in place of `Flat`, whose edges are compared as the sides of parts of a block are.
"""

from evenseam.sizing.simulator.sewing import sew

__all__ = ["sew"]
