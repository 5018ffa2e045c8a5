"""Path data with straight stretches: from letters and numbers to the corners of its parts."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from evenseam.reading.drawing.numbers import NUMBER, read_number
from evenseam.reading.drawing.transforms import Spot

MOST_STRETCHES = 5000
STRAIGHT = 2000
"""A curve that leaves its chord by less than this part of its length is drawn as a straight line."""
_TOKEN = re.compile(rf"[\s,]*(?:([A-Za-z])|({NUMBER}))", re.ASCII)
_FLAG = re.compile(r"[\s,]*([01])", re.ASCII)
_TAKES = {"m": 2, "l": 2, "h": 1, "v": 1, "c": 6, "s": 4, "q": 4, "t": 2, "a": 7, "z": 0}
CURVES = {"c": "a curve", "s": "a curve", "q": "a curve", "t": "a curve", "a": "an arc"}


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a path: its corners in order, and whether it returns to the first."""

    spots: tuple[Spot, ...]
    is_closed: bool


@dataclass(frozen=True, slots=True)
class Bend:
    """A curve in a path that is not straight."""

    name: str
    start: Spot
    end: Spot
    at: int
    """Where its letter stands in the path data."""
    through: tuple[Spot, ...]
    """Corners that would follow the curve with straight stretches, its end last."""


@dataclass(slots=True)
class PathReading:
    """What a path says. `broken_at` is where it cannot be read on, if so."""

    parts: list[Part]
    bends: list[Bend]
    broken_at: int | None = None


def read_path(text: str) -> PathReading:
    """Read path data (SVG 2, chapter 9). A curve whose control points lie on its chord is straight."""
    reading = _Reading(text)
    reading.read()
    reading.finish(is_closed=False)
    return PathReading(reading.parts, reading.bends, reading.broken_at)


class _Reading:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.parts: list[Part] = []
        self.bends: list[Bend] = []
        self.broken_at: int | None = None
        self.spots: list[Spot] = []
        self.here: Spot = (Fraction(0), Fraction(0))
        self.control: Spot | None = None
        """The last control point, which a smooth curve mirrors."""
        self.last = ""
        self.count = 0

    def finish(self, *, is_closed: bool) -> None:
        if len(self.spots) > 1:
            self.parts.append(Part(tuple(self.spots), is_closed))
        self.spots = []

    def read(self) -> None:
        letter = ""
        text = self.text.rstrip()
        while self.at < len(text):
            found = _TOKEN.match(text, self.at)
            if found is None or (not found[1] and not letter):
                self.broken_at = self.at
                return
            letter_at = found.start(1) if found[1] else found.start(2)
            if found[1]:
                letter = found[1]
                self.at = found.end()
            kind = letter.lower()
            is_start = not self.parts and not self.spots and not self.last
            if kind not in _TAKES or (is_start and kind != "m") or (kind == "z" and not found[1]):
                self.broken_at = letter_at
                return
            numbers = self.numbers(kind)
            self.count += 1
            if numbers is None or self.count > MOST_STRETCHES:
                self.broken_at = self.at + len(text[self.at :]) - len(text[self.at :].lstrip(" \t\r\n,"))
                return
            self.step(letter, numbers, letter_at)
            self.last = kind
            if kind == "m":
                # Further pairs after a move are lines.
                letter = "l" if letter == "m" else "L"

    def numbers(self, kind: str) -> list[Fraction] | None:
        numbers: list[Fraction] = []
        for index in range(_TAKES[kind]):
            # The two flags of an arc may stand without a blank behind them.
            pattern = _FLAG if kind == "a" and index in (3, 4) else _TOKEN
            found = pattern.match(self.text, self.at)
            word = found[1] if found and pattern is _FLAG else found[2] if found else None
            value = read_number(word) if word else None
            if found is None or value is None:
                return None
            numbers.append(value)
            self.at = found.end()
        return numbers

    def step(self, letter: str, numbers: list[Fraction], at: int) -> None:
        kind = letter.lower()
        x, y = self.here if letter.islower() else (Fraction(0), Fraction(0))
        if kind == "z":
            if self.spots:
                self.here = self.spots[0]
            self.finish(is_closed=True)
            self.control = None
            return
        if kind == "m":
            self.finish(is_closed=False)
            self.here = (x + numbers[0], y + numbers[1])
            self.spots = [self.here]
            self.control = None
            return
        if not self.spots:
            # A path that goes on behind its end starts again where it was closed.
            self.spots = [self.here]
        if kind == "h":
            self.line((x + numbers[0], self.here[1]))
        elif kind == "v":
            self.line((self.here[0], y + numbers[0]))
        elif kind == "l":
            self.line((x + numbers[0], y + numbers[1]))
        else:
            self.curve(kind, [number + (x, y)[index % 2] for index, number in enumerate(numbers)], numbers, (x, y), at)

    def line(self, to: Spot) -> None:
        self.spots.append(to)
        self.here = to
        self.control = None

    def curve(self, kind: str, placed: list[Fraction], numbers: list[Fraction], origin: Spot, at: int) -> None:
        start = self.here
        if kind == "a":
            end = (origin[0] + numbers[5], origin[1] + numbers[6])
            is_straight = numbers[0] == 0 or numbers[1] == 0 or end == start
            through: tuple[Spot, ...] = (end,)
            controls: list[Spot] = []
        else:
            spots = list(zip(placed[::2], placed[1::2], strict=True))
            end = spots[-1]
            controls = spots[:-1]
            if kind in "st":
                is_same_kind = self.last in ("cs" if kind == "s" else "qt")
                before = self.control if is_same_kind and self.control else start
                controls.insert(0, (2 * start[0] - before[0], 2 * start[1] - before[1]))
            is_straight = all(_is_between(control, start, end) for control in controls)
            through = _along((start, *controls, end))
        self.line(end)
        self.control = controls[-1] if controls else None
        if not is_straight:
            self.bends.append(Bend(CURVES[kind], start, end, at, through))


def _is_between(spot: Spot, start: Spot, end: Spot) -> bool:
    """Tell whether a control point lies on the chord, but for the rounding of the program that wrote it."""
    across, down = end[0] - start[0], end[1] - start[1]
    square = across * across + down * down
    off = across * (spot[1] - start[1]) - down * (spot[0] - start[0])
    far = across * (spot[0] - start[0]) + down * (spot[1] - start[1])
    return abs(off) * STRAIGHT <= square and -square <= far * STRAIGHT <= square * (STRAIGHT + 1)


def _along(controls: tuple[Spot, ...]) -> tuple[Spot, ...]:
    """Return the middle and the end of a curve, by halving the stretches between its control points."""
    spots = controls
    while len(spots) > 1:
        spots = tuple(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in pairwise(spots))
    return spots[0], controls[-1]
