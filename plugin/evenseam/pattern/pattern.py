"""A pattern: what is published under one title, in one or more sizes and editions."""

from __future__ import annotations

from dataclasses import dataclass, field

from evenseam.exact import Unit
from evenseam.pattern.project import Project, Prose
from evenseam.pattern.quantity import Quantity
from evenseam.problems import Place


@dataclass(frozen=True, slots=True)
class Change:
    """One published correction or addition, in words for a maker."""

    version: str
    date: str
    """As written: year-month-day."""
    what: str
    place: Place | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Claim:
    """A figure an older printed version states, to be audited."""

    size: str
    """Size slug."""
    figure: str
    """Name of the figure, as in `evenseam why`."""
    stated: Quantity


@dataclass(frozen=True, slots=True)
class Pattern:
    """Everything the author said, read and checked."""

    slug: str
    """The folder name."""
    title: str
    summary: str
    version: str
    skill_level: str
    licence: str
    designer: str
    changes: tuple[Change, ...]
    """Newest first."""
    projects: tuple[Project, ...]
    """Sizes in the order of the file; for each, its editions, the drafted one first."""
    claims: tuple[Claim, ...] = ()
    introduction: Prose | None = None
    place: Place | None = field(default=None, compare=False)

    @property
    def units(self) -> tuple[Unit, ...]:
        """The editions, the drafted one first."""
        return tuple(dict.fromkeys(project.unit for project in self.projects))

    def project(self, size: str, unit: Unit) -> Project:
        """Return one project by size slug and edition. Raises KeyError."""
        for project in self.projects:
            if project.size == size and project.unit is unit:
                return project
        raise KeyError(f"{size} in {unit.name}")
