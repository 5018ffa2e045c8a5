"""The least length any two-stage plan can use."""

from __future__ import annotations

from collections.abc import Sequence

from evenseam.cutting.request import Request


def lower_bound(requests: Sequence[Request], width: int) -> int:
    """Return a length in steps that no plan can go below: by area, and by the tallest piece."""
    area = sum(request.area for request in requests)
    tallest = max(min(lie.along for lie in request.lies) for request in requests)
    return max(-(-area // width), tallest)
