"""The cautions that go with a project: always those of the work, then those of its use."""

from __future__ import annotations

from evenseam.pattern import Loops, Project, is_for_heat, mentions, said
from evenseam.wording.document import Caution, Heading
from evenseam.wording.scribe import Scribe
from evenseam.wording.tree import plain_text

WARM = ("mug rug", "coaster", "table mat", "place mat", "placemat", "table runner", "runner")
INFANT = ("infant", "baby", "cot", "crib", "toddler", "newborn", "pram", "stroller", "child", "children", "nursery")
WALL = ("wall", "hanging", "banner", "door")
"""Words in a project's use, size or name that bring a caution."""


def cautions(scribe: Scribe) -> tuple[Caution, ...]:
    """Return the cautions of a project, the general one first."""
    return tuple(_caution(scribe, name) for name in caution_names(scribe.sheet.project))


def caution_names(project: Project) -> tuple[str, ...]:
    """Return which cautions a project brings: work, heat or warm, infant, wall."""
    words = said(project)
    names = ["work"]
    if is_for_heat(project):
        names.append("heat")
    elif mentions(words, WARM):
        names.append("warm")
    if mentions(words, INFANT):
        names.append("infant")
    if _hangs(project, names) or mentions(words, WALL):
        names.append("wall")
    return tuple(names)


def _hangs(project: Project, names: list[str]) -> bool:
    """Tell whether it hangs on a wall to be looked at; a pot holder with a loop hangs on a hook when not in use."""
    has_one_loop = isinstance(project.hanging, Loops) and project.hanging.number.value == 1
    return project.hanging is not None and not ("heat" in names and has_one_loop)


def _caution(scribe: Scribe, name: str) -> Caution:
    heading, *blocks = scribe.blocks(f"cautions/{name}", {})
    if not isinstance(heading, Heading):
        raise ValueError(f"the caution {name} must begin with its title")
    return Caution(plain_text(heading.inlines), tuple(blocks))
