"""What was made of one pattern, as a value that can be written down and read back."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import Any

from evenseam.problems import Code, Label, Place, Problem, Severity
from evenseam.publish.contents import ContentsEntry


@dataclass(frozen=True, slots=True)
class MadePage:
    """A page whose body is kept under a hash."""

    path: str
    title: str
    short_title: str
    description: str
    contents: tuple[ContentsEntry, ...]
    body: str
    """Hash of its HTML."""
    source: str
    card: str
    is_searched: bool = True


@dataclass(frozen=True, slots=True)
class MadeFile:
    """A file whose bytes are kept under a hash."""

    path: str
    content: str
    """Hash of its bytes."""


@dataclass(frozen=True, slots=True)
class MadeSize:
    """One size in one edition, for lists of them."""

    size: str
    name: str
    edition: str
    finished: str
    """12 × 15 in."""
    page: str
    edition_words: str = ""
    """The edition as readers call it, in the site's language."""


@dataclass(frozen=True, slots=True)
class MadePattern:
    """Everything that a site shows of one pattern."""

    slug: str
    title: str
    summary: str
    skill_level: str
    version: str
    overview: str
    """Path of its first page."""
    picture: str
    """Path of its picture; empty when there is none."""
    picture_size: tuple[int, int]
    sizes: tuple[MadeSize, ...]
    pages: tuple[MadePage, ...]
    files: tuple[MadeFile, ...]
    problems: tuple[Problem, ...]
    is_published: bool
    methods: tuple[str, ...] = ()
    """How its blocks are sewn, in words."""
    fits_fat_quarters: bool = False
    """True when every fabric of some size can be cut from fat quarters, a large backing apart."""
    designer: str = ""
    changes: tuple[tuple[str, str, str], ...] = ()
    """Version, date and words of every correction and addition."""

    @property
    def hashes(self) -> tuple[str, ...]:
        """The hashes of everything it needs."""
        return tuple(page.body for page in self.pages) + tuple(file.content for file in self.files)


def as_text(made: MadePattern) -> str:
    """Return what was made as a JSON text."""
    data = {name: getattr(made, name) for name in MadePattern.__slots__}
    for name in ("sizes", "pages", "files"):
        data[name] = [asdict(part) for part in data[name]]
    data["problems"] = [_problem_as_data(problem) for problem in made.problems]
    return json.dumps(data, ensure_ascii=True, sort_keys=True)


def from_text(text: str) -> MadePattern:
    """Return what `as_text` wrote down."""
    data: dict[str, Any] = json.loads(text)
    return MadePattern(
        **{
            **data,
            "picture_size": tuple(data["picture_size"]),
            "methods": tuple(data["methods"]),
            "changes": tuple((version, date, what) for version, date, what in data["changes"]),
            "sizes": tuple(MadeSize(**size) for size in data["sizes"]),
            "pages": tuple(
                MadePage(**{**page, "contents": tuple(ContentsEntry(**entry) for entry in page["contents"])})
                for page in data["pages"]
            ),
            "files": tuple(MadeFile(**file) for file in data["files"]),
            "problems": tuple(_problem_from_data(problem) for problem in data["problems"]),
        }
    )


def _problem_as_data(problem: Problem) -> dict[str, Any]:
    return {
        "code": [problem.code.number, problem.code.name, problem.code.severity.value],
        "message": problem.message,
        "place": asdict(problem.place) if problem.place else None,
        "hint": problem.hint,
        "sizes": list(problem.sizes),
        "labels": [{"place": asdict(label.place), "text": label.text} for label in problem.labels],
    }


def _problem_from_data(data: dict[str, Any]) -> Problem:
    number, name, severity = data["code"]
    return Problem(
        Code(number, name, Severity(severity)),
        data["message"],
        Place(**data["place"]) if data["place"] else None,
        data["hint"],
        tuple(Label(Place(**label["place"]), label["text"]) for label in data["labels"]),
        tuple(data["sizes"]),
    )
