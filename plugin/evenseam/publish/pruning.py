"""Results that nobody has asked for in a long time are removed from the cache."""

from __future__ import annotations

import re
import time
from collections.abc import Iterable, Iterator
from contextlib import suppress
from pathlib import Path

from evenseam.publish.cache import Cache

DAY = 24 * 60 * 60
UNUSED_DAYS = 30
"""A branch or an older text of a pattern may be gone back to; after a month it is as well made anew."""
_HASH = re.compile(rb"[0-9a-f]{64}")


def prune(cache: Cache, needed: Iterable[str], *, now: float | None = None) -> int:
    """Remove what was not used for a month, and results that nothing leads to any more; return how many files went.

    At most once a day, and only while no other process works with the cache: whoever is at work holds it. `needed`
    are results that stay in any case.
    """
    moment = time.time() if now is None else now
    mark = cache.folder / "pruned"
    if _changed(mark) > moment - DAY:
        return 0
    with cache.alone() as is_alone:
        if not is_alone:
            return 0
        mark.touch()
        living, count = set(needed), 0
        for note in _files(cache.folder / "made"):
            if _changed(note) < moment - UNUSED_DAYS * DAY:
                count += _removed(note)
            else:
                living.update(name.decode() for name in _HASH.findall(note.read_bytes()))
        for result in _files(cache.folder / "bytes"):
            # A result is kept before the note that leads to it: one of today may still wait for its note.
            if result.name not in living and _changed(result) < moment - DAY:
                count += _removed(result)
        return count


def _files(folder: Path) -> Iterator[Path]:
    return (path for path in folder.rglob("*") if path.is_file())


def _changed(path: Path) -> float:
    try:
        return path.stat().st_mtime
    except OSError:
        return 0


def _removed(path: Path) -> int:
    with suppress(OSError):
        path.unlink()
        return 1
    return 0
