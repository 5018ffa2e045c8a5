"""From a pattern and one of its projects to the sheet: sized, cut, sewn once by the simulator, and planned on cloth."""

from __future__ import annotations

from dataclasses import replace

from evenseam.cutting import plan_cutting, ways_to_buy
from evenseam.pattern import Pattern, Project
from evenseam.problems import Outcome, Problem, Report, Severity
from evenseam.sheet.pattern_sheet import PatternSheet
from evenseam.sizing import assembly_program, chosen_methods, cut_list, sew, size_project, unit_methods


def compute_sheet(pattern: Pattern, project: Project) -> Outcome[PatternSheet]:
    """Return everything that will be printed for one size and edition.

    There is no value when any stage finds an error: nothing is published that has not been sewn by the simulator and
    cut from its cloth. Warnings travel inside the sheet as well as beside it.
    """
    sized = size_project(project)
    if sized.value is None or not sized.is_valid:
        return Outcome(None, sized.problems)
    cuts = cut_list(sized.value)
    program = assembly_program(sized.value, cuts)
    sewn = sew(sized.value.project, cuts, program)
    planned = plan_cutting(cuts, sized.value.project)
    problems = _once((*sized.problems, *sewn.problems, *planned.problems))
    if sewn.value is None or planned.value is None or any(p.severity is Severity.ERROR for p in problems):
        return Outcome(None, problems)
    methods = unit_methods(sized.value)
    sheet = PatternSheet(pattern, sized.value, cuts, program, sewn.value, planned.value, problems, methods)
    sheet = replace(
        sheet,
        ways_to_buy=ways_to_buy(cuts, sized.value.project, planned.value),
        chosen_methods=chosen_methods(sized.value),
    )
    return Outcome(sheet, problems)


def compute_sheets(pattern: Pattern) -> tuple[Outcome[PatternSheet], ...]:
    """Return the sheet of every size and edition, in the pattern's order."""
    return tuple(compute_sheet(pattern, project) for project in pattern.projects)


def _once(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    return Report(list(problems)).as_tuple()
