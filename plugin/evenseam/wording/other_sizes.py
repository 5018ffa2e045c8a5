"""The steps of a pattern's other sizes: words written once for all sizes may speak of a step that only some have."""

from __future__ import annotations

from evenseam.sheet import PatternSheet
from evenseam.sizing import assembly_program, cut_list, size_project


def is_step_of_another_size(sheet: PatternSheet, step: str) -> bool:
    """Tell whether another size of the pattern has a step of this id.

    A size that cannot be worked out might have it: it has problems of its own, which are told first.
    """
    for project in sheet.pattern.projects:
        if project.unit is not sheet.project.unit or project.size == sheet.project.size:
            continue
        sized = size_project(project)
        if sized.value is None or not sized.is_valid:
            return True
        program = assembly_program(sized.value, cut_list(sized.value))
        if any(known.id == step for known in program.steps):
            return True
    return False
