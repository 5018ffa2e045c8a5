"""A maker with cloth on a table: sews an assembly program from its cut list and measures after every step.

Import contract: this package imports only `evenseam.exact`, `evenseam.problems`, `evenseam.pattern` and the result
types of `evenseam.sizing.sized`. It shares no code with what works out the cut list, the program or the sewing order
of a block, so that a fault there cannot hide here.

How it thinks: `table` holds what is there and how many of each; `workpiece` says what can lie on it; each kind of
step (`blocks`, `unit_batches`, `runs`, `on_point`, `borders`, `pieced`, `corners`, `finishing`, `binding`,
`edge_finishes`, `hanging`, `loops`) takes workpieces and leaves one, or a spoilt one after a problem, so that each
fault is told once; `layout`, `arranged`, `unequal` and `diagonal` compare the centre, place by place, with what the
author decided. Straight tops are `Flat` rectangles in runs; rows set on point are runs too, on the page turned by 45
degrees, and become a `Flat` when their ragged edges have been trimmed. What it cannot sew is a problem (`not-sewable-
yet`), never a guess.
"""

from evenseam.sizing.simulator.sewing import sew

__all__ = ["sew"]
