"""Textures as explicit marks: fine lines and dots cut off at the edges of polygons, in decimals."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil, floor, sqrt

from evenseam.figures.cloth_look import Texture

Ring = Sequence[tuple[float, float]]
Stretch = tuple[float, float, float, float]

SPACING = 6.5
"""Between neighbouring marks, in drawing units."""
DOT = 0.9
"""Length of a dot: a very short line with round ends."""

_DIAGONAL = sqrt(0.5)


def texture_marks(texture: Texture, rings: Sequence[Ring], spacing: float = SPACING) -> list[Stretch]:
    """Return the marks of a texture inside polygons, as stretches (x1, y1, x2, y2).

    Marks lie on one net over the whole drawing, so that pieces side by side look cut from one cloth.
    """
    match texture:
        case Texture.PLAIN:
            return []
        case Texture.RISING:
            return _lines(rings, (_DIAGONAL, -_DIAGONAL), spacing)
        case Texture.FALLING:
            return _lines(rings, (_DIAGONAL, _DIAGONAL), spacing)
        case Texture.LEVEL:
            return _lines(rings, (1.0, 0.0), spacing)
        case Texture.UPRIGHT:
            return _lines(rings, (0.0, 1.0), spacing)
        case Texture.LATTICE:
            wide = spacing * 1.5
            return _lines(rings, (_DIAGONAL, -_DIAGONAL), wide) + _lines(rings, (_DIAGONAL, _DIAGONAL), wide)
        case Texture.DOTS:
            return _broken(_lines(rings, (1.0, 0.0), spacing), DOT, spacing)
        case Texture.DASHES:
            return _broken(_lines(rings, (1.0, 0.0), spacing), spacing * 0.6, spacing * 1.4)
        case Texture.CROSSES:
            arms = _lines(rings, (1.0, 0.0), spacing * 1.3)
            return _crosses(_broken(arms, spacing * 0.45, spacing * 1.3))


def _lines(rings: Sequence[Ring], way: tuple[float, float], spacing: float) -> list[Stretch]:
    """Return parallel lines running in direction `way`, cut to the polygons; stretches that meet become one."""
    along_x, along_y = way
    spans: dict[int, list[tuple[float, float]]] = {}
    for ring in rings:
        turned = [(x * along_x + y * along_y, y * along_x - x * along_y) for x, y in ring]
        low, high = min(v for _, v in turned), max(v for _, v in turned)
        for number in range(ceil(low / spacing + 1e-9), floor(high / spacing - 1e-9) + 1):
            level = number * spacing
            crossings = sorted(_crossings(turned, level))
            spans.setdefault(number, []).extend(zip(crossings[::2], crossings[1::2], strict=False))
    stretches: list[Stretch] = []
    for number in sorted(spans):
        level = number * spacing
        for start, end in _united(spans[number]):
            stretches.append((
                start * along_x - level * along_y, start * along_y + level * along_x,
                end * along_x - level * along_y, end * along_y + level * along_x,
            ))  # fmt: skip
    return stretches


def _crossings(ring: Ring, level: float) -> Iterable[float]:
    for (u1, v1), (u2, v2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (v1 > level) != (v2 > level):
            yield u1 + (u2 - u1) * (level - v1) / (v2 - v1)


def _united(spans: list[tuple[float, float]]) -> list[tuple[float, float]]:
    united: list[tuple[float, float]] = []
    for start, end in sorted(spans):
        if united and start <= united[-1][1] + 1e-6:
            united[-1] = (united[-1][0], max(end, united[-1][1]))
        else:
            united.append((start, end))
    return united


def _broken(stretches: list[Stretch], mark: float, period: float) -> list[Stretch]:
    """Return level stretches broken into marks on a net, every other row half a period over; none is cut short."""
    marks: list[Stretch] = []
    for x1, y, x2, _ in stretches:
        shift = period / 2 if round(y / SPACING) % 2 else 0.0
        # A mark that just fits is drawn, whatever the last decimal of the edge.
        first, last = ceil((x1 - shift) / period - 1e-9), floor((x2 - mark - shift) / period + 1e-9)
        for number in range(first, last + 1):
            start = number * period + shift
            marks.append((start, y, start + mark, y))
    return marks


def _crosses(arms: list[Stretch]) -> list[Stretch]:
    upright = [((x1 + x2) / 2, y - (x2 - x1) / 2, (x1 + x2) / 2, y + (x2 - x1) / 2) for x1, y, x2, _ in arms]
    return arms + upright
