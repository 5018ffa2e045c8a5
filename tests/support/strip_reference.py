"""The shortest strips by a general-purpose constraint solver: a second opinion on small cases."""

from __future__ import annotations

from collections.abc import Sequence

Piece = tuple[tuple[tuple[int, int], ...], int]
"""The ways it may lie, (across, along), and how many."""


def least_height(pieces: Sequence[Piece], width: int, most: int, seconds: int = 20) -> tuple[int, bool]:
    """Return the least total height of strips that hold all pieces, and whether that is certain.

    `most` is a height that is known to be enough.
    """
    from ortools.sat.python import cp_model

    heights = sorted({along for lies, _ in pieces for _, along in lies}, reverse=True)
    model = cp_model.CpModel()
    total = []
    placed: dict[int, list[object]] = {place: [] for place in range(len(pieces))}
    for height in heights:
        before = None
        lowest = max(min(along for _, along in lies) for lies, _ in pieces)
        room = (most if height >= lowest else most - lowest) // height
        area_most = sum(count for lies, count in pieces if any(along <= height for _, along in lies))
        for number in range(min(room, area_most)):
            is_used = model.new_bool_var(f"used {height} {number}")
            taken = []
            for place, (lies, count) in enumerate(pieces):
                for across, along in lies:
                    if along <= height:
                        some = model.new_int_var(0, min(count, width // across), f"{height} {number} {place} {across}")
                        taken.append((across, some))
                        placed[place].append(some)
            fill = model.new_int_var(0, width, f"fill {height} {number}")
            model.add(fill == sum(across * some for across, some in taken))
            model.add(fill <= width * is_used)
            if before is not None:
                model.add(before[0] >= is_used)
                model.add(before[1] >= fill)
            before = (is_used, fill)
            total.append(height * is_used)
    for place, (_, count) in enumerate(pieces):
        model.add(sum(placed[place]) >= count)
    model.add(sum(total) <= most)
    model.minimize(sum(total))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = seconds
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return most, False
    return int(solver.objective_value), status == cp_model.OPTIMAL
