"""What a stage hands on: a value if there is one, and everything there is to say about it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

from evenseam.problems.code import Severity
from evenseam.problems.problem import Problem

T = TypeVar("T")


@dataclass(frozen=True)  # no slots: a generic, frozen, slotted class cannot be called as Outcome[int](3) on Python 3.11
class Outcome(Generic[T]):
    """A value and its problems. With an error among them there may still be a value, for what can still be shown."""

    value: T | None
    problems: tuple[Problem, ...] = ()

    @property
    def is_valid(self) -> bool:
        """True when there is a value and no error; warnings do not count."""
        return self.value is not None and not any(p.severity is Severity.ERROR for p in self.problems)

    @property
    def errors(self) -> tuple[Problem, ...]:
        """The problems that stop publishing."""
        return tuple(problem for problem in self.problems if problem.severity is Severity.ERROR)
