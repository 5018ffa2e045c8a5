"""Under `mkdocs build` a site is made beside its place and takes it only when it is whole.

MkDocs empties the site's folder and then writes page by page: whoever looks in between, or after a build that failed or
was killed, finds half a site. Here all is written into a hidden folder beside it, and at the very end the two exchange
their names. Where that cannot be done soundly, MkDocs goes its own way, and the log says so.
"""

from __future__ import annotations

import ctypes
import os
import shutil
import sys
import tempfile
from pathlib import Path
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import get_plugin_logger

try:
    import fcntl
except ImportError:  # Windows: what killed builds left is removed by nobody.
    fcntl = None  # type: ignore[assignment]

log = get_plugin_logger("evenseam")
EXCHANGED_ELSEWHERE = "EVENSEAM_EXCHANGES"
"""Set by the front door, which makes the site in a folder of its own and exchanges it by itself."""
_HERE, _EXCHANGE, _SWAP = -100, 2, 2


class WholeSite:
    """One build on its way into the place of the last one."""

    def __init__(self) -> None:
        self._config: MkDocsConfig | None = None
        self._place = ""
        self._asked = ""
        self._made: Path | None = None
        self._is_whole = False
        self._lock: Any = None

    def begin(self, config: MkDocsConfig) -> None:
        """Lead the build beside the place of the site. To be called before anybody asks where that is."""
        place = Path(os.path.realpath(config.site_dir))
        reason = _why_not(place)
        if reason:
            log.info("the site is written straight into %s: %s", config.site_dir, reason)
            return
        try:
            place.parent.mkdir(parents=True, exist_ok=True)
            self._clear_away(place)
            made = Path(tempfile.mkdtemp(dir=place.parent, prefix=f".{place.name}-made-"))
        except OSError as error:
            log.info("the site is written straight into %s: %s", config.site_dir, error.strerror or error)
            return
        self._config, self._place, self._asked, self._made = config, str(place), config.site_dir, made
        config.site_dir = str(made)

    def call_whole(self) -> None:
        """Note that everything is written."""
        self._is_whole = True

    def call_failed(self) -> None:
        """Note that the build ended with a failure, be it at the very end."""
        self._is_whole = False

    def finish(self) -> None:
        """Give a whole site its place, and leave nothing else behind. To be called however the build ended."""
        if self._config is None or self._made is None:
            return
        self._config.site_dir = self._asked
        made, place = self._made, Path(self._place)
        self._config = self._made = None
        try:
            if self._is_whole:
                _keep_hidden(place, made)
                made.chmod(place.stat().st_mode & 0o777 if place.is_dir() else 0o755)
                put_in_place(made, place)
        finally:
            shutil.rmtree(made, ignore_errors=True)
            if self._lock is not None:
                self._lock.close()

    def _clear_away(self, place: Path) -> None:
        """Remove what killed builds left and give back a name that was lost, unless another build is at work."""
        if fcntl is None:
            return
        # The front door's own lock. The system lets go of it when its holder ends, however it ends.
        lock = place.with_name(f".{place.name}-lock").open("a")
        try:
            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            lock.close()
            return
        self._lock = lock
        for old in sorted(place.parent.glob(f".{place.name}-was-*")):
            if not place.exists():
                old.rename(place)
        for left in (*place.parent.glob(f".{place.name}-was-*"), *place.parent.glob(f".{place.name}-made-*")):
            shutil.rmtree(left, ignore_errors=True)


def put_in_place(made: Path, place: Path) -> None:
    """Let a folder take a place, in one step where the system has such a step; what stood there is removed."""
    if not place.exists():
        made.rename(place)
        return
    if _exchange(made, place):
        return
    # Two steps; killed between them, the next build finds the old folder and gives it its name back.
    was = Path(tempfile.mkdtemp(dir=place.parent, prefix=f".{place.name}-was-"))
    was.rmdir()
    place.rename(was)
    try:
        made.rename(place)
    except OSError:
        was.rename(place)
        raise
    shutil.rmtree(was, ignore_errors=True)


def _exchange(one: Path, other: Path) -> bool:
    """Let two folders exchange their names at once; tell whether this system can."""
    try:
        system = ctypes.CDLL(None)
        if sys.platform == "darwin":
            return bool(system.renamex_np(os.fsencode(one), os.fsencode(other), _SWAP) == 0)
        return bool(system.renameat2(_HERE, os.fsencode(one), _HERE, os.fsencode(other), _EXCHANGE) == 0)
    except (OSError, AttributeError, TypeError):
        return False


def _why_not(place: Path) -> str:
    """Return why a folder cannot be exchanged soundly; empty when it can."""
    if os.environ.get(EXCHANGED_ELSEWHERE):
        return "it is exchanged by whoever called"
    if not place.exists():
        return ""
    if not place.is_dir() or os.path.ismount(place):
        return "it is no folder that can be renamed"
    if any(entry.name.startswith(".") and entry.is_dir() for entry in place.iterdir()):
        # Such as a checkout of the branch that is published, which MkDocs leaves where it is.
        return "there is a hidden folder in it that must stay"
    return ""


def _keep_hidden(place: Path, made: Path) -> None:
    """Take hidden files along: MkDocs never removes them."""
    for entry in place.iterdir() if place.is_dir() else ():
        if entry.name.startswith(".") and not (made / entry.name).exists():
            shutil.copy2(entry, made / entry.name, follow_symlinks=False)
