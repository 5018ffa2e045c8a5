"""Problems of an author's file as values: a code, a message, a place and a way out."""

from evenseam.problems.code import Code, Severity
from evenseam.problems.outcome import Outcome
from evenseam.problems.place import Place, SourceText
from evenseam.problems.problem import Label, Problem, Report
from evenseam.problems.show import show_problem, show_problems

__all__ = [
    "Code",
    "Label",
    "Outcome",
    "Place",
    "Problem",
    "Report",
    "Severity",
    "SourceText",
    "show_problem",
    "show_problems",
]
