"""Rectangles laid on as few sheets as possible."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from math import ceil


@dataclass(frozen=True, slots=True)
class Item:
    """A rectangle to lay down, room round it included. Laid sideways it has a size of its own: words stay upright."""

    name: str
    width: Fraction
    height: Fraction
    sideways_width: Fraction
    sideways_height: Fraction

    @property
    def area(self) -> Fraction:
        """The lesser of the two ways it can lie."""
        return min(self.width * self.height, self.sideways_width * self.sideways_height)


@dataclass(frozen=True, slots=True)
class Laid:
    """Where an item lies on its sheet."""

    name: str
    sheet: int
    """From 0."""
    x: Fraction
    y: Fraction
    is_turned: bool


@dataclass(frozen=True, slots=True)
class _Space:
    """An empty rectangle of a sheet; empty rectangles may overlap each other."""

    x: Fraction
    y: Fraction
    width: Fraction
    height: Fraction

    def holds(self, width: Fraction, height: Fraction) -> bool:
        return width <= self.width and height <= self.height

    def without(self, x: Fraction, y: Fraction, width: Fraction, height: Fraction) -> list[_Space]:
        """Return the largest empty rectangles that are left when a rectangle is taken."""
        right, bottom = self.x + self.width, self.y + self.height
        if x >= right or y >= bottom or x + width <= self.x or y + height <= self.y:
            return [self]
        left: list[_Space] = []
        if x > self.x:
            left.append(_Space(self.x, self.y, x - self.x, self.height))
        if x + width < right:
            left.append(_Space(x + width, self.y, right - x - width, self.height))
        if y > self.y:
            left.append(_Space(self.x, self.y, self.width, y - self.y))
        if y + height < bottom:
            left.append(_Space(self.x, y + height, self.width, bottom - y - height))
        return left


def least_sheets(items: Iterable[Item], width: Fraction, height: Fraction) -> int:
    """Return how many sheets there must be at the least: area alone."""
    return ceil(sum((item.area for item in items), start=Fraction(0)) / (width * height))


def lay_out(items: Sequence[Item], width: Fraction, height: Fraction) -> tuple[Laid, ...]:
    """Lay every item on sheets of one size; each fits on a sheet by itself, upright or sideways.

    Several orders and ways to choose a space are tried; the one with the fewest sheets wins, and among those the one
    whose last sheet is emptiest. Raises ValueError for an item that fits on no sheet.
    """
    for item in items:
        if not _ways(item, width, height):
            raise ValueError(f"{item.name} does not fit on the sheet")
    if not items:
        return ()
    bound = least_sheets(items, width, height)
    best: tuple[tuple[int, Fraction], tuple[Laid, ...]] | None = None
    for order, choose in product(_ORDERS, _CHOICES):
        laid = _lay(sorted(items, key=order, reverse=True), width, height, choose)
        sheets = max(one.sheet for one in laid) + 1
        areas = {item.name: item.area for item in items}
        last = sum((areas[one.name] for one in laid if one.sheet == sheets - 1), start=Fraction(0))
        if best is None or (sheets, last) < best[0]:
            best = (sheets, last), laid
        if sheets == bound == 1:
            break
    assert best is not None  # there is an item and an order
    return best[1]


def _lay(
    items: Sequence[Item],
    width: Fraction,
    height: Fraction,
    choose: Callable[[_Space, Fraction, Fraction], tuple[Fraction, Fraction]],
) -> tuple[Laid, ...]:
    sheets: list[list[_Space]] = []
    laid: list[Laid] = []
    for item in items:
        places = [
            (number, choose(space, w, h), space, is_turned, w, h)
            for number, spaces in enumerate(sheets)
            for space in spaces
            for is_turned, w, h in _ways(item, width, height)
            if space.holds(w, h)
        ]
        if not places:
            sheets.append([_Space(Fraction(0), Fraction(0), width, height)])
            is_turned, w, h = _ways(item, width, height)[0]
            number, space = len(sheets) - 1, sheets[-1][0]
        else:
            number, _, space, is_turned, w, h = min(places, key=lambda place: (place[0], place[1], place[3]))
        laid.append(Laid(item.name, number, space.x, space.y, is_turned))
        split = [rest for old in sheets[number] for rest in old.without(space.x, space.y, w, h)]
        sheets[number] = _not_inside_another(split)
    return tuple(laid)


def _not_inside_another(spaces: list[_Space]) -> list[_Space]:
    unique = list(dict.fromkeys(spaces))
    return [
        one
        for one in unique
        if not any(
            other is not one
            and other.x <= one.x
            and other.y <= one.y
            and other.x + other.width >= one.x + one.width
            and other.y + other.height >= one.y + one.height
            for other in unique
        )
    ]


def _ways(item: Item, width: Fraction, height: Fraction) -> list[tuple[bool, Fraction, Fraction]]:
    """Return the ways an item fits on an empty sheet; upright first."""
    ways = [(False, item.width, item.height), (True, item.sideways_width, item.sideways_height)]
    return [way for way in ways if way[1] <= width and way[2] <= height]


_ORDERS: tuple[Callable[[Item], tuple[Fraction, Fraction, str]], ...] = (
    lambda item: (item.area, item.height, item.name),
    lambda item: (max(item.width, item.height), item.area, item.name),
    lambda item: (item.height, item.width, item.name),
    lambda item: (item.width, item.height, item.name),
    lambda item: (item.width + item.height, item.area, item.name),
)
_CHOICES: tuple[Callable[[_Space, Fraction, Fraction], tuple[Fraction, Fraction]], ...] = (
    lambda space, w, h: (min(space.width - w, space.height - h), max(space.width - w, space.height - h)),
    lambda space, w, h: (space.y, space.x),
    lambda space, w, h: (space.width * space.height - w * h, min(space.width - w, space.height - h)),
)
