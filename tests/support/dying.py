"""A process that ends in the middle of its work on one pattern."""

from __future__ import annotations

import os
import signal
from pathlib import Path

from evenseam.publish.cache import Cache
from evenseam.publish.entry import as_text
from evenseam.publish.options import SiteOptions
from evenseam.publish.parallel import make_one
from evenseam.publish.sources import PatternSource


def make_unless_adrift(source: PatternSource, options: SiteOptions, folder: Path) -> str:
    """Make a pattern as a worker does, but die on the one called adrift."""
    if source.slug == "adrift":
        os.kill(os.getpid(), signal.SIGKILL)
    return as_text(make_one(source, options, Cache(folder)))
