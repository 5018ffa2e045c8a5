"""A problem, and the list in which a stage collects them."""

from __future__ import annotations

from dataclasses import dataclass, field

from evenseam.problems.code import Code, Severity
from evenseam.problems.place import Place


@dataclass(frozen=True, slots=True)
class Label:
    """A second place that belongs to a problem, with what to see there."""

    place: Place
    text: str


@dataclass(frozen=True, slots=True)
class Problem:
    """One mistake of an author: what is the matter (with the figures), where, and what to do about it."""

    code: Code
    message: str
    place: Place | None
    hint: str = ""
    labels: tuple[Label, ...] = ()
    sizes: tuple[str, ...] = field(default=(), compare=False)
    """The sizes it was found in, as one says them; empty where it stands for itself."""

    @property
    def severity(self) -> Severity:
        """Error or warning, as its code says."""
        return self.code.severity


@dataclass(slots=True)
class Report:
    """Collects the problems of one stage, so that an author sees all of them at once."""

    problems: list[Problem] = field(default_factory=list)

    def add(
        self, code: Code, place: Place | None, message: str, hint: str = "", labels: tuple[Label, ...] = ()
    ) -> None:
        """Note one problem and carry on."""
        self.problems.append(Problem(code, message, place, hint, labels))

    def has_errors(self) -> bool:
        """Tell whether anything noted so far stops publishing."""
        return any(problem.severity is Severity.ERROR for problem in self.problems)

    def as_tuple(self) -> tuple[Problem, ...]:
        """Return the problems once each, in the order of their places; those without a place first."""
        unique = dict.fromkeys(self.problems)
        return tuple(sorted(unique, key=lambda p: (p.place is not None, p.place or _NOWHERE, p.code.number, p.message)))


_NOWHERE = Place("", 0, 0, 0, 0)
