"""A pattern folder read, computed and checked: what every door and every page starts from."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.exact import Unit
from evenseam.pattern import Pattern, Project
from evenseam.problems import Problem, Report, Severity, SourceText
from evenseam.publish.sheet_memory import SHEETS
from evenseam.publish.sources import PatternSource
from evenseam.publish.told_once import told_once
from evenseam.reading import read_pattern
from evenseam.review import Version
from evenseam.sheet import ClaimResult, PatternSheet, audit_claims
from evenseam.wording import check_prose


@dataclass(frozen=True, slots=True)
class CheckedPattern:
    """Everything known about one pattern folder."""

    slug: str
    pattern: Pattern | None
    sheets: tuple[PatternSheet, ...]
    """Of the sizes and editions without an error."""
    problems: tuple[Problem, ...]
    sources: dict[str, SourceText]
    """Texts by file name, for showing problems."""
    claims: tuple[ClaimResult, ...] = ()

    @property
    def is_valid(self) -> bool:
        """True when nothing stops publishing."""
        return not any(problem.severity is Severity.ERROR for problem in self.problems)

    def sheet(self, size: str, unit: Unit) -> PatternSheet | None:
        """Return one sheet, or None when that size has errors."""
        for sheet in self.sheets:
            if sheet.project.size == size and sheet.project.unit is unit:
                return sheet
        return None


def check_pattern(source: PatternSource) -> CheckedPattern:
    """Read, compute and check one pattern: every size, every edition, the author's words, the claims."""
    report = Report(list(source.problems))
    texts = {text.name: text for text in (source.source, *source.drawings.values())}
    if source.problems and not source.source.text:
        return CheckedPattern(source.slug, None, (), report.as_tuple(), texts)
    reading = read_pattern(source.slug, source.source, source.drawings)
    report.problems += reading.problems
    if reading.value is None or report.has_errors():
        return CheckedPattern(source.slug, reading.value, (), report.as_tuple(), texts)
    pattern = reading.value
    sheets: list[PatternSheet] = []
    found: list[tuple[Project, Problem]] = []
    for project in pattern.projects:
        outcome = SHEETS.compute(pattern, project)
        found += [(project, problem) for problem in outcome.problems]
        if outcome.value is not None:
            sheets.append(outcome.value)
            found += [(project, problem) for problem in check_prose(outcome.value)]
    report.problems += told_once(found, pattern.projects)
    drafted = {sheet.project.size: sheet for sheet in sheets if sheet.project.unit is pattern.units[0]}
    audit = audit_claims(pattern, drafted)
    report.problems += audit.problems
    return CheckedPattern(source.slug, pattern, tuple(sheets), report.as_tuple(), texts, audit.value or ())


def version_of(checked: CheckedPattern) -> Version:
    """Return a checked pattern as the review knows it."""
    return Version(checked.slug, checked.pattern, checked.sheets, checked.problems)
