"""What a project is for, as far as it comes near to heat: read from the words of its use, size and name."""

from __future__ import annotations

from collections.abc import Iterable

from evenseam.pattern.project import Project

HOT = ("pot holder", "potholder", "hot pad", "oven mitt", "oven glove", "trivet", "microwave")
"""Words for what hot things are held with or set on."""


def is_for_heat(project: Project) -> bool:
    """Tell whether hot things are held with it or set on it."""
    return mentions(said(project), HOT)


def needs_insulation(project: Project) -> bool:
    """Tell whether a layer of heat-resistant batting goes in: for hot things, but never for a microwave oven."""
    return is_for_heat(project) and not mentions(said(project), ("microwave",))


def said(project: Project) -> str:
    """Return the words that say what a project is for, small and with single spaces round them."""
    text = " ".join((project.use, project.size, project.name)).lower()
    return f" {' '.join(''.join(sign if sign.isalpha() else ' ' for sign in text).split())} "


def mentions(words: str, wanted: Iterable[str]) -> bool:
    """Tell whether one of the wanted words, or its plural, is among the words."""
    return any(f" {word}{ending} " in words for word in wanted for ending in ("", "s"))
