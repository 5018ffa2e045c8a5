"""A small project with a front door of its own, to build, to kill while it builds, and to look at afterwards."""

from __future__ import annotations

import contextlib
import os
import re
import shutil
import signal
import subprocess
import sys
from pathlib import Path

from support.mkdocs_site import PLUGIN, environment, tree, write_config, write_pattern

DATED = ("sitemap.xml", "sitemap.xml.gz")
"""Written by MkDocs itself with the day of the build."""
_DATE = re.compile(rb"Build Date UTC : [^\n]*")
_BUILD = "import sys, importlib.util as u; s = u.spec_from_file_location('door', 'plugin/__main__.py'); d = u.module_from_spec(s); s.loader.exec_module(d); d.python = lambda: sys.executable; d.tell_if_cairo_is_missing = lambda: None; sys.exit(d.build(sys.argv[1:]))"


class SmallProject:
    """A project with one pattern, built through the front door in a process of its own."""

    def __init__(self, folder: Path, text: str, **settings: object) -> None:
        self.folder = folder
        (folder / "plugin").mkdir(parents=True)
        shutil.copy(PLUGIN / "__main__.py", folder / "plugin")
        self.environment = environment(folder.parent)
        self.config = write_config(
            folder, plugins=[{"evenseam": {"papers": ["a4"], "author_guide": False, **settings}}]
        )
        self.write(text)

    @property
    def start_words(self) -> list[str]:
        """The command that builds through the project's front door, with this Python instead of one of its own."""
        return [sys.executable, "-c", _BUILD]

    @property
    def site(self) -> Path:
        """The published folder."""
        return self.folder / "site"

    def write(self, text: str) -> None:
        """Change the pattern."""
        write_pattern(self.folder / "patterns" / "low-tide", text)

    def start(self, *words: str) -> subprocess.Popen[bytes]:
        """Start a build in a process group of its own."""
        return subprocess.Popen(
            [*self.start_words, *words], cwd=self.folder, env=self.environment, start_new_session=True,
            stdout=subprocess.DEVNULL, stderr=subprocess.PIPE,
        )  # fmt: skip

    def build(self, *words: str) -> tuple[int, str]:
        """Build to the end; return the exit status and what was said."""
        process = self.start(*words)
        _, said = process.communicate(timeout=300)
        return process.returncode, said.decode()

    def published(self) -> dict[str, bytes]:
        """Return every published file, without the dates that MkDocs and its plain theme put in."""
        return {path: _DATE.sub(b"", content) for path, content in tree(self.site).items() if path not in DATED}

    def leftovers(self) -> list[str]:
        """Return what lies about beside the site, other than the lock."""
        return sorted(name for name in os.listdir(self.folder) if name.startswith(".site") and name != ".site-lock")


def kill(process: subprocess.Popen[bytes]) -> None:
    """Kill a build and everything it started, at once."""
    with contextlib.suppress(ProcessLookupError):
        os.killpg(process.pid, signal.SIGKILL)
    process.communicate()
