"""The cautions that go with a project: always those of the work, then those of its use."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.pattern import Loops, Project
from evenseam.wording.document import Caution, Heading
from evenseam.wording.scribe import Scribe
from evenseam.wording.tree import plain_text

HOT = ("pot holder", "potholder", "hot pad", "oven mitt", "oven glove", "trivet", "microwave")
WARM = ("mug rug", "coaster", "table mat", "place mat", "placemat", "table runner", "runner")
INFANT = ("infant", "baby", "cot", "crib", "toddler", "newborn", "pram", "stroller", "child", "children", "nursery")
WALL = ("wall", "hanging", "banner", "door")
"""Words in a project's use, size or name that bring a caution."""


def cautions(scribe: Scribe) -> tuple[Caution, ...]:
    """Return the cautions of a project, the general one first."""
    return tuple(_caution(scribe, name) for name in caution_names(scribe.sheet.project))


def caution_names(project: Project) -> tuple[str, ...]:
    """Return which cautions a project brings: work, heat or warm, infant, wall."""
    words = _said(project)
    names = ["work"]
    if _mentions(words, HOT):
        names.append("heat")
    elif _mentions(words, WARM):
        names.append("warm")
    if _mentions(words, INFANT):
        names.append("infant")
    if _hangs(project, names) or _mentions(words, WALL):
        names.append("wall")
    return tuple(names)


def _hangs(project: Project, names: list[str]) -> bool:
    """Tell whether it hangs on a wall to be looked at; a pot holder with a loop hangs on a hook when not in use."""
    has_one_loop = isinstance(project.hanging, Loops) and project.hanging.number.value == 1
    return project.hanging is not None and not ("heat" in names and has_one_loop)


def needs_insulation(project: Project) -> bool:
    """Tell whether a layer of heat-resistant batting goes in: for hot things, but never for a microwave oven."""
    return "heat" in caution_names(project) and not _mentions(_said(project), ("microwave",))


def _said(project: Project) -> str:
    """Return the words that say what a project is for, small and with single spaces round them."""
    said = " ".join((project.use, project.size, project.name)).lower()
    return f" {' '.join(''.join(sign if sign.isalpha() else ' ' for sign in said).split())} "


def _mentions(words: str, wanted: Iterable[str]) -> bool:
    """Tell whether one of the wanted words, or its plural, is among the words."""
    return any(f" {word}{ending} " in words for word in wanted for ending in ("", "s"))


def _caution(scribe: Scribe, name: str) -> Caution:
    heading, *blocks = scribe.blocks(f"cautions/{name}", {})
    if not isinstance(heading, Heading):
        raise ValueError(f"the caution {name} must begin with its title")
    return Caution(plain_text(heading.inlines), tuple(blocks))
