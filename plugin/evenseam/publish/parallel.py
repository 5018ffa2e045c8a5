"""Patterns made side by side: as many processes as are worth their start."""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from evenseam.publish.cache import Cache
from evenseam.publish.entry import MadePattern, as_text, from_text
from evenseam.publish.options import SiteOptions
from evenseam.publish.recalling import recall_pattern
from evenseam.publish.sources import PatternSource

MOST_PROCESSES = 8


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
    made = {source.slug: known for source in sources if (known := recall_pattern(source, options, cache))}
    missing = [source for source in sources if source.slug not in made]
    count = min(processes or os.cpu_count() or 1, MOST_PROCESSES, len(missing))
    if count < 2:
        for done, source in enumerate(missing, start=1):
            made[source.slug] = make_one(source, options, cache)
            tell(done, len(missing))
    else:
        # A fresh process for each worker: a copy of this one would copy its threads' locks as well.
        context = multiprocessing.get_context("spawn")
        with ProcessPoolExecutor(count, mp_context=context) as pool:
            jobs = [pool.submit(_make, source, options, cache.folder) for source in missing]
            for done, (source, job) in enumerate(zip(missing, jobs, strict=True), start=1):
                made[source.slug] = from_text(job.result())
                tell(done, len(missing))
    return tuple(made[source.slug] for source in sources)


def make_one(source: PatternSource, options: SiteOptions, cache: Cache) -> MadePattern:
    """Make one pattern in this process."""
    # The engine is loaded only when something is to be made: a site that did not change should be there at once.
    from evenseam.publish.making import make_pattern

    return make_pattern(source, options, cache)


def _make(source: PatternSource, options: SiteOptions, folder: Path) -> str:
    return as_text(make_one(source, options, Cache(folder)))
