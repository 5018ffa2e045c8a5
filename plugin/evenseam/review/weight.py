"""How much a change weighs for a maker: something is cut otherwise, bought otherwise, or only told otherwise."""

from __future__ import annotations

from collections.abc import Iterable
from enum import IntEnum

from evenseam.review.changes import Cause, Change, Kind, Remeasured, is_of_figures
from evenseam.review.report import PatternReview, Review


class Weight(IntEnum):
    """From the least to the most."""

    NONE = 0
    """Nothing differs."""
    WORDS = 1
    """Words, names and colours: whoever has the older print still buys, cuts and sews right."""
    SHOPPING = 2
    """An amount to buy: whoever has bought already may have too little."""
    CUTTING = 3
    """A cut, a count, a template, a step: whoever cuts by the older print cuts wrong."""

    @property
    def word(self) -> str:
        """The name it has in options and data."""
        return self.name.lower()

    @property
    def words(self) -> str:
        """What it means, for a reader."""
        return _WORDS[self]


_WORDS = {
    Weight.NONE: "nothing",
    Weight.WORDS: "words only",
    Weight.SHOPPING: "what is bought",
    Weight.CUTTING: "what is cut or sewn",
}
_OF_THE_CLOTH = ("usable width", "shrinkage")
"""Figures of the author's that only the shop asks about."""
_BOUGHT = (Kind.YARDAGE, Kind.BATTING)


def weight_of_review(review: Review) -> Weight:
    """Return the heaviest weight of all patterns; what the publisher computes otherwise weighs the most."""
    if review.engine is not None and review.engine.changes:
        return Weight.CUTTING
    return max((weight_of_pattern(pattern) for pattern in review.patterns), default=Weight.NONE)


def weight_of_pattern(review: PatternReview) -> Weight:
    """Return the heaviest weight of a pattern's changes; what could not be computed is no change and weighs nothing."""
    return max(weights(review.changes), default=Weight.NONE)


def weights(changes: Iterable[Change]) -> tuple[Weight, ...]:
    """Return the weight of each change.

    A figure or decision of the author's is as heavy as what follows from it in any size. A figure from which nothing
    else follows is itself one that is read while sewing, such as how far from the edge to stitch.
    """
    changes = tuple(changes)
    heaviest: dict[Cause, Weight] = {}
    for change in changes:
        if change.kind not in (Kind.INPUT, Kind.PART):
            for cause in change.because:
                heaviest[cause] = max(heaviest.get(cause, Weight.NONE), _alone(change))
    return tuple(_weight(change, heaviest) for change in changes)


def _weight(change: Change, heaviest: dict[Cause, Weight]) -> Weight:
    if change.kind not in (Kind.INPUT, Kind.PART):
        return _alone(change)
    followed = [heaviest[cause] for cause in change.because if cause in heaviest]
    if followed:
        return max(followed)
    if isinstance(change, Remeasured):
        return Weight.SHOPPING if change.label in _OF_THE_CLOTH else Weight.CUTTING
    return Weight.WORDS


def _alone(change: Change) -> Weight:
    if not is_of_figures(change):
        return Weight.WORDS
    return Weight.SHOPPING if change.kind in _BOUGHT else Weight.CUTTING
