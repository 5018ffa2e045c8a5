"""Patterns made side by side: as many processes as are worth their start."""

from __future__ import annotations

import gc
import logging
import multiprocessing
import os
import traceback
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path

from evenseam.publish.cache import Cache
from evenseam.publish.entry import MadePattern, as_text, from_text
from evenseam.publish.options import SiteOptions
from evenseam.publish.recalling import recall_patterns
from evenseam.publish.sources import PatternSource

MOST_PROCESSES = 8

_log = logging.getLogger(__name__)


def make_patterns(
    sources: Sequence[PatternSource],
    options: SiteOptions,
    cache: Cache,
    *,
    processes: int | None = None,
    tell: Callable[[int, int], None] = lambda done, of: None,
) -> tuple[MadePattern, ...]:
    """Return what a site shows of each pattern, in the order given; what is in the cache is not made again.

    `processes` is the number of processors by default; `tell` hears how many of the missing patterns are done.
    """
    made = recall_patterns(tuple(sources), options, cache)
    missing = [source for source in sources if source.slug not in made]
    count = min(processes or os.cpu_count() or 1, MOST_PROCESSES, len(missing))
    if count < 2:
        for done, source in enumerate(missing, start=1):
            made[source.slug] = make_one(source, options, cache)
            tell(done, len(missing))
    else:
        for done, one in enumerate(_side_by_side(missing, options, cache, count), start=1):
            made[one.slug] = one
            tell(done, len(missing))
    return tuple(made[source.slug] for source in sources)


def make_one(source: PatternSource, options: SiteOptions, cache: Cache) -> MadePattern:
    """Make one pattern in this process; when the publisher itself fails on it, its page says so.

    Raises OSError when there is no room or no right to write: that is no pattern's fault.
    """
    # The engine is loaded only when something is to be made: a site that did not change should be there at once.
    from evenseam.publish.making import make_failed, make_pattern

    try:
        return make_pattern(source, options, cache)
    except OSError:
        raise
    except Exception as error:
        _log.error("the publisher failed on %s", source.source.name, exc_info=error)
        return make_failed(source, _told(error), options, cache)


def _side_by_side(
    missing: Sequence[PatternSource], options: SiteOptions, cache: Cache, count: int
) -> Iterator[MadePattern]:
    """Yield the patterns, made by several processes; those that could not be made so come last."""
    left: list[PatternSource] = []
    # A fresh process for each worker: a copy of this one would copy its threads' locks as well.
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(count, mp_context=context, initializer=_get_ready) as pool:
        jobs = [pool.submit(_make, source, options, cache.folder) for source in missing]
        for source, job in zip(missing, jobs, strict=True):
            try:
                yield from_text(job.result())
            except BrokenProcessPool:
                left.append(source)
    # One pattern took its process down, and with it the work on the others: now each by itself.
    for source in left:
        yield from_text(_make_apart(source, options, cache))


def _make_apart(source: PatternSource, options: SiteOptions, cache: Cache) -> str:
    """Make one pattern in a process of its own, which may end as it likes."""
    from evenseam.publish.making import make_failed

    with ProcessPoolExecutor(1, mp_context=multiprocessing.get_context("spawn")) as pool:
        try:
            return pool.submit(_make, source, options, cache.folder).result()
        except BrokenProcessPool:
            reason = "its process was stopped, perhaps for want of memory"
            return as_text(make_failed(source, reason, options, cache))


def _told(error: Exception) -> str:
    """Return what happened and where in the publisher, in one line."""
    ours = [frame for frame in traceback.extract_tb(error.__traceback__) if "evenseam" in Path(frame.filename).parts]
    where = f" in {Path(ours[-1].filename).stem}, line {ours[-1].lineno}" if ours else ""
    words = " ".join(str(error).split())
    return f"{type(error).__name__}{where}" + (f": {words[:200]}" if words else "")


def _get_ready() -> None:
    """Make a worker ready before its first pattern comes."""
    from evenseam.publish import making  # noqa: F401

    # What is loaded stays; and patterns leave few cycles behind, so looking for them often is lost time.
    gc.freeze()
    gc.set_threshold(100_000, 20, 20)


def _make(source: PatternSource, options: SiteOptions, folder: Path) -> str:
    return as_text(make_one(source, options, Cache(folder)))
