"""The site of this very project, in its own settings and with its own pages, around a few small patterns."""

from __future__ import annotations

import shutil
import socket
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import yaml

from support.mkdocs_site import ROOT, mkdocs, tutorial_patterns, write_pattern
from support.served_site import SUB_PATH

TIDE = "patterns/low-tide/"
SIZE = TIDE + "wall-hanging-inches/"
BROKEN = "patterns/half-written/"
KINDS = {
    "the first page": "",
    "the gallery": "patterns/",
    "the first page of a pattern": TIDE,
    "a size": SIZE,
    "a pattern with problems": BROKEN,
    "the page for the author": TIDE + "for-the-author/",
    "the author guide": "guide/first-pattern/",
    "every key": "guide/every-key/",
    "check your templates": "help/check-your-templates/",
}
"""One page of every kind."""


def free_port() -> int:
    """Return a port of this computer on which nobody listens now."""
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        port: int = found.getsockname()[1]
        return port


def build_own(folder: Path, port: int, patterns: Sequence[str] = (), **options: Any) -> Path:
    """Build the site below a path of its server and return where it is; `patterns` are folders of ours to add."""
    write_pattern(folder / "patterns" / "low-tide", tutorial_patterns()[1])
    write_pattern(
        folder / "patterns" / "half-written", tutorial_patterns()[1].replace("finished size:", "finish size:")
    )
    for name in patterns:
        shutil.copytree(ROOT / "patterns" / name, folder / "patterns" / name)
    shutil.copytree(ROOT / "site_src", folder / "site_src")
    settings = yaml.safe_load((ROOT / "mkdocs.yml").read_text(encoding="utf-8"))
    (ours,) = (plugin["evenseam"] for plugin in settings["plugins"] if "evenseam" in plugin and plugin != "evenseam")
    ours.update(options)
    settings["site_url"] = f"http://127.0.0.1:{port}/{SUB_PATH}/"
    settings["site_dir"] = str(folder / "www" / SUB_PATH)
    config = folder / "mkdocs.yml"
    config.write_text(yaml.safe_dump(settings), encoding="utf-8")
    told = mkdocs(config)
    assert told.returncode == 0, told.stderr
    return folder / "www" / SUB_PATH
