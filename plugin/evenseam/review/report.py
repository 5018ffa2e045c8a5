"""What a review hands on: pattern by pattern the changes, and loudly what could not be computed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from evenseam.problems import Problem, Severity
from evenseam.review.cause_words import listed
from evenseam.review.change_words import size_words
from evenseam.review.changes import Change, Renamed, Where
from evenseam.review.codes import PUBLISHED_NOT_COMPUTED
from evenseam.review.compare import Version, compare_patterns
from evenseam.review.engines import EngineReview
from evenseam.review.published import check_published
from evenseam.sheet import PatternSheet


@dataclass(frozen=True, slots=True)
class Failure:
    """A pattern or a size that one side could not compute, so that nothing is known about its changes."""

    where: Where
    is_new: bool
    """True for the side under review, False for the one it is compared with."""
    problems: tuple[Problem, ...]
    is_computed: bool = False
    """True when the figures are there and compared, but an error elsewhere keeps the pattern from being published."""


@dataclass(frozen=True, slots=True)
class SizeReview:
    """One size in one edition that was computed on both sides."""

    where: Where
    cuts: int
    """Number of cuts it has now."""
    kept: tuple[str, ...]
    """What a maker would ask about first and that is as it was: finished size, backing, binding."""
    is_same: bool


@dataclass(frozen=True, slots=True)
class PatternReview:
    """One pattern, compared."""

    slug: str
    title: str
    changes: tuple[Change, ...]
    failures: tuple[Failure, ...]
    sizes: tuple[SizeReview, ...]
    problems: tuple[Problem, ...] = ()
    """What is wrong with the change itself, such as figures changed under an old version number."""

    @property
    def is_same(self) -> bool:
        """True when both sides were computed and nothing differs."""
        return not self.changes and not self.failures and not self.problems


@dataclass(frozen=True, slots=True)
class Review:
    """Everything between two revisions."""

    base: str
    head: str
    patterns: tuple[PatternReview, ...]
    """Those whose files differ."""
    untouched: tuple[str, ...] = ()
    """Slugs of patterns whose files are the same letter for letter on both sides, so that nothing can differ."""
    engine: EngineReview | None = None
    """What there is to say when the publisher itself differs between the two."""

    @property
    def is_same(self) -> bool:
        """True when nothing differs, and nothing failed."""
        return all(pattern.is_same for pattern in self.patterns) and (self.engine is None or self.engine.is_same)

    @property
    def same_words(self) -> str:
        """What is said when nothing differs; files that are the same are not computed, so nothing is said of that."""
        return "no computed change" if self.patterns else "no file of any pattern differs"

    @property
    def failures(self) -> tuple[Failure, ...]:
        """Everything that could not be computed."""
        return tuple(failure for pattern in self.patterns for failure in pattern.failures)


def review_pattern(old: Version | None, new: Version | None) -> PatternReview:
    """Compare two versions of one pattern. Raises ValueError when there is neither."""
    version = new or old
    if version is None:
        raise ValueError("a review needs a version of the pattern on one side at least")
    changes = compare_patterns(old, new)
    failures = (*_failures(old, is_new=False), *_failures(new, is_new=True))
    sizes = tuple(
        _size_review(sheet, changes)
        for sheet in (new.sheets if new else ())
        if old and old.sheet(sheet.project.size, sheet.project.unit) is not None
    )
    known = [each.pattern.title for each in (new, old) if each and each.pattern]
    title = known[0] if known else version.slug
    problems = check_published(old.pattern, new.pattern, changes) if old and new and old.pattern and new.pattern else ()
    return PatternReview(version.slug, title, changes, failures, sizes, problems)


def review_all(
    base: str,
    head: str,
    versions: Mapping[str, tuple[Version | None, Version | None]],
    untouched: Iterable[str] = (),
    engine: EngineReview | None = None,
) -> Review:
    """Compare all patterns, in the order of their slugs."""
    patterns = tuple(review_pattern(*versions[slug]) for slug in sorted(versions))
    return Review(base, head, patterns, tuple(sorted(untouched)), engine)


def check_since(old: Version | None, new: Version) -> tuple[Problem, ...]:
    """Return what is wrong with a pattern only because of what was published before under its name."""
    review = review_pattern(old, new)
    unknown = [failure for failure in review.failures if not failure.is_new and not failure.is_computed]
    problems = []
    if old is not None and unknown:
        sizes = listed([size_words(failure.where) for failure in unknown if failure.where.size])
        message = f"what was published of {sizes or review.title} cannot be computed, so its figures are not compared"
        hint = "compare with a revision that can be computed"
        problems.append(Problem(PUBLISHED_NOT_COMPUTED, message, new.pattern.place if new.pattern else None, hint))
    return (*review.problems, *problems)


def _size_review(sheet: PatternSheet, changes: Iterable[Change]) -> SizeReview:
    project = sheet.project
    where = Where(sheet.pattern.slug, project.size, project.unit, project.name)
    mine = [change for change in changes if change.where == where]
    moved = {change.id for change in mine if not isinstance(change, Renamed)}
    kept = [
        words
        for words, id in (
            ("finished size", "finished"),
            *((cut.id.replace("-", " "), cut.id) for cut in sheet.cuts.cuts if cut.part in _ASKED_FIRST),
        )
        if id not in moved
    ]
    return SizeReview(where, len(sheet.cuts.cuts), tuple(kept), not mine)


_ASKED_FIRST = ("backing", "batting", "binding", "hanging")


def _failures(version: Version | None, *, is_new: bool) -> list[Failure]:
    if version is None:
        return []
    errors = tuple(problem for problem in version.problems if problem.severity is Severity.ERROR)
    if version.pattern is None:
        return [Failure(Where(version.slug), is_new, errors)]
    missing = [
        Where(version.slug, project.size, project.unit, project.name)
        for project in version.pattern.projects
        if version.sheet(project.size, project.unit) is None
    ]
    if missing:
        return [Failure(where, is_new, errors) for where in missing]
    # An error that stops publishing, though every size could be computed: in the words, or in the audit.
    return [Failure(Where(version.slug), is_new, errors, is_computed=True)] if errors else []
