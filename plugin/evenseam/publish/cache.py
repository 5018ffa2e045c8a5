"""Results kept on disk by content, so that what has not changed is not made again.

A result is kept under the hash of everything it was made from; its bytes are kept under their own hash. What is read
back is checked against that hash, so a file that was cut short or changed is simply made anew.
"""

from __future__ import annotations

import hashlib
import os
import time
import weakref
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from functools import cache
from importlib import metadata, resources
from importlib.resources.abc import Traversable
from pathlib import Path

from evenseam.publish.whole import write_whole

try:
    import fcntl
except ImportError:  # Windows: nothing is ever removed there.
    fcntl = None  # type: ignore[assignment]

_DAY = 24 * 60 * 60
_MADE_BY = ("typst", "jinja2", "markdown-it-py", "pyyaml", "cairosvg")
"""Libraries whose version can change a published byte."""
ENGINE_SUFFIXES = (
    *(".py", ".typ", ".css", ".js", ".j2", ".html", ".yaml", ".json", ".yml", ".md", ".toml", ".txt", ".woff2"),
)
"""Of the files the publisher is made of."""


class Cache:
    """Two folders of files named by hashes: `made` (what was made from what) and `bytes` (the results)."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._hold: int | None = None
        self._sound: dict[str, tuple[int, int]] = {}
        """Results found sound, with their length and time of change, so that each is read for checking only once."""

    def keep(self, content: bytes) -> str:
        """Keep some bytes and return their hash."""
        name = hashlib.sha256(content).hexdigest()
        if not self.is_sound(name):
            write_whole(self.path(name), content, is_lasting=False)
            self._remember(name)
        return name

    def path(self, name: str) -> Path:
        """Return where the bytes of this hash are or will be."""
        return self.folder / "bytes" / name[:2] / name

    def is_sound(self, name: str) -> bool:
        """Tell whether the bytes of this hash are there and unchanged."""
        path = self.path(name)
        try:
            found = path.stat()
            if self._sound.get(name) == (found.st_size, found.st_mtime_ns):
                return True
            if hashlib.sha256(path.read_bytes()).hexdigest() != name:
                return False
        except OSError:
            return False
        self._sound[name] = (found.st_size, found.st_mtime_ns)
        return True

    def note(self, key: str, text: str) -> None:
        """Note what was made from everything that the key stands for."""
        content = text.encode()
        line = hashlib.sha256(content).hexdigest().encode() + b"\n"
        write_whole(self._note_path(key), line + content, is_lasting=False)

    def noted(self, key: str) -> str | None:
        """Return what was noted; None when nothing was, or when the note is damaged."""
        try:
            with self._note_path(key).open("rb") as file:
                line, _, content = file.read().partition(b"\n")
                is_old = os.fstat(file.fileno()).st_mtime < time.time() - _DAY
            if is_old:
                # A note that is used stays; once a day is often enough to say so.
                os.utime(self._note_path(key))
        except OSError:
            return None
        return content.decode() if hashlib.sha256(content).hexdigest().encode() == line else None

    def hold(self) -> None:
        """Keep others from removing anything as long as this object lives, where there are locks."""
        if self._hold is None and fcntl is not None:
            self.folder.mkdir(parents=True, exist_ok=True)
            self._hold = os.open(self.folder / "in-use", os.O_RDWR | os.O_CREAT, 0o644)
            weakref.finalize(self, os.close, self._hold)
            fcntl.flock(self._hold, fcntl.LOCK_SH)

    @contextmanager
    def alone(self) -> Iterator[bool]:
        """Give whether nobody else holds the cache, and keep it so for a while."""
        self.hold()
        if self._hold is None or fcntl is None:
            yield False
            return
        try:
            fcntl.flock(self._hold, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            # A lock that could not be made stronger may have been lost.
            fcntl.flock(self._hold, fcntl.LOCK_SH)
            yield False
            return
        try:
            yield True
        finally:
            fcntl.flock(self._hold, fcntl.LOCK_SH)

    def _note_path(self, key: str) -> Path:
        return self.folder / "made" / key[:2] / key

    def _remember(self, name: str) -> None:
        found = self.path(name).stat()
        self._sound[name] = (found.st_size, found.st_mtime_ns)


def key_of(*parts: str) -> str:
    """Return the hash of some texts together with the engine that works on them."""
    digest = hashlib.sha256(engine_mark().encode())
    for part in parts:
        content = part.encode()
        # The length first, so that no two lists of texts run together into the same bytes.
        digest.update(str(len(content)).encode() + b":" + content)
    return digest.hexdigest()


@cache
def engine_mark() -> str:
    """Return a hash of every file of the engine and of the versions it leans on."""
    digest = hashlib.sha256()
    for name, file in sorted(_files(resources.files("evenseam"), "")):
        digest.update(name.encode() + b"\n" + hashlib.sha256(file.read_bytes()).digest())
    for library in _MADE_BY:
        try:
            digest.update(f"{library} {metadata.version(library)}\n".encode())
        except metadata.PackageNotFoundError:
            digest.update(f"no {library}\n".encode())
    return digest.hexdigest()


def _files(folder: Traversable, prefix: str) -> Iterable[tuple[str, Traversable]]:
    for entry in folder.iterdir():
        if entry.is_dir() and entry.name != "__pycache__":
            yield from _files(entry, f"{prefix}{entry.name}/")
        elif entry.name.endswith(ENGINE_SUFFIXES):
            yield prefix + entry.name, entry
