"""A git repository for tests, with one name and one date for every commit."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path


def git(*words: str, folder: Path | None = None, text: bytes = b"") -> str:
    """Run git as nobody in particular and return what it prints."""
    who = {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_NOSYSTEM": "1"}
    names = {
        f"GIT_{role}_{what}": value
        for role in ("AUTHOR", "COMMITTER")
        for what, value in (("NAME", "Marsh"), ("EMAIL", "marsh@saltmarsh.example"), ("DATE", "2026-03-02T10:00:00Z"))
    }
    done = subprocess.run(
        ["git", *words], cwd=folder, input=text, capture_output=True, check=True, env={**os.environ, **who, **names}
    )
    return done.stdout.decode().strip()


def commit(message: str = "Change the gulls") -> None:
    """Commit everything there is."""
    git("add", "-A")
    git("commit", "-q", "--allow-empty", "-m", message)
