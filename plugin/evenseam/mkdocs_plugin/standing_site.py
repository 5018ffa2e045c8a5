"""Under `serve` the site of the last build stays where it is, and only what changed is written again.

MkDocs empties the site's folder before every build and writes all of it anew. Here the folder is left alone while it is
known to be whole; a page that would come out the same is not written, a file is copied when it is newer than its copy,
and what no longer belongs to the site is removed at the end. After a build that failed everything is made anew.
"""

from __future__ import annotations

import logging
from functools import partial
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

_NOWHERE = ".evenseam-nothing-to-clear"


class StandingSite:
    """What stands in the folder of a served site, and from what it was written."""

    def __init__(self) -> None:
        self._place = ""
        self._is_whole = False
        self._is_kept = False
        self._files: set[str] = set()
        self._written: dict[str, str] = {}
        self._before: dict[str, str] = {}
        self._skipped: set[str] = set()
        logging.getLogger("mkdocs.commands.build").addFilter(self._is_news)

    def begin(self, config: MkDocsConfig) -> None:
        """Keep the folder from being emptied if it is whole. To be called before MkDocs clears it."""
        self._is_kept = self._is_whole and self._place == config.site_dir and Path(self._place).is_dir()
        self._is_whole = False
        self._place = config.site_dir
        self._before, self._written = self._written if self._is_kept else {}, {}
        self._skipped = set()
        if self._is_kept:
            config.site_dir = str(Path(config.site_dir, _NOWHERE))

    def take_over(self, files: Files, config: MkDocsConfig) -> None:
        """Name the folder again, to MkDocs and to every file gathered so far."""
        if not self._is_kept:
            return
        config.site_dir = self._place
        for file in files:
            file.dest_dir = self._place

    def settle(self, files: Files) -> None:
        """Let files that are copied be copied only when they are newer than their copy."""
        if not self._is_kept:
            return
        for file in files:
            if not file.is_documentation_page() and file.abs_dest_path in self._files:
                file.copy_file = partial(_copy_if_newer, file)  # type: ignore[method-assign]

    def stands(self, file: File, key: str) -> bool:
        """Tell whether a page made from exactly this stands there already; note that it will stand there."""
        self._written[file.src_uri] = key
        is_there = self._before.get(file.src_uri) == key and Path(file.abs_dest_path).is_file()
        if is_there:
            self._skipped.add(file.src_uri)
        return is_there

    def finish(self, files: Files) -> None:
        """Remove what no longer belongs to the site, and call it whole."""
        here = {file.abs_dest_path for file in files}
        for gone in self._files - here if self._is_kept else ():
            Path(gone).unlink(missing_ok=True)
        self._files = here
        self._is_whole = True

    def _is_news(self, record: logging.LogRecord) -> bool:
        """Leave out of the log that a page which stands already was skipped: to MkDocs it looks empty."""
        words = record.getMessage()
        return not (words.startswith("Page skipped: '") and words.split("'")[1] in self._skipped)


def _copy_if_newer(file: File, dirty: bool = False) -> None:
    File.copy_file(file, dirty=True)
