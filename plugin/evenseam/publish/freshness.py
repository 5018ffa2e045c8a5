"""Which pages and files show something else than in the last build."""

from __future__ import annotations

import json
import os
from pathlib import Path

from evenseam.publish.site_files import SiteFile, SiteFiles, SitePage


def mark_changed(site: SiteFiles, memory: Path) -> None:
    """Make files look new to `--dirty` when a page shows other content than last time.

    Results keep the time at which they were first made, so that going back to an earlier text would look like no
    change.
    """
    items: list[SitePage | SiteFile] = [*site.pages, *site.files]
    shown = {item.path: item.stored.name for item in items}
    try:
        before = json.loads(memory.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        before = {}
    changed = [item for item in items if before.get(item.path) != item.stored.name]
    if not changed:
        return
    for item in changed:
        if item.path in before:
            os.utime(item.stored)
    beside = memory.with_suffix(f".{os.getpid()}")
    beside.write_text(json.dumps(shown), encoding="utf-8")
    beside.replace(memory)
