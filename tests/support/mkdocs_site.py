"""Builds sites with MkDocs in a process of its own, with or without our plugin."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import yaml

PLUGIN = Path(__file__).resolve().parents[2] / "plugin"
ROOT = PLUGIN.parent


def tutorial_patterns() -> list[str]:
    """Return the complete pattern files of the tutorial, in order."""
    text = (ROOT / "site_src" / "guide" / "first-pattern.md").read_text(encoding="utf-8")
    return re.findall(r"```yaml title=[^\n]*\n(.*?)```", text, re.DOTALL)


def write_pattern(folder: Path, text: str) -> Path:
    """Write a pattern file into a folder of its own and return its path."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / "pattern.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def write_config(
    folder: Path,
    *,
    plugins: list[object],
    theme: str = "mkdocs",
    features: tuple[str, ...] | list[str] = (),
    palette: list[dict[str, str]] | None = None,
    **more: object,
) -> Path:
    """Write mkdocs.yml and a first page; return the path of the settings."""
    docs = folder / "docs"
    docs.mkdir(parents=True, exist_ok=True)
    if not (docs / "index.md").exists():
        (docs / "index.md").write_text("# Home\n", encoding="utf-8")
    path = folder / "mkdocs.yml"
    look = {"name": theme, "font": False, "features": list(features), "palette": palette or {}}
    settings = {"site_name": "Quay", "theme": look, "plugins": plugins, **more}
    path.write_text(yaml.safe_dump(settings), encoding="utf-8")
    return path


def environment(folder: Path) -> dict[str, str]:
    """Return an environment in which MkDocs finds the plugin by its entry point, as if it were installed."""
    info = folder / "entry" / "evenseam-0.0.dist-info"
    if not info.exists():
        info.mkdir(parents=True)
        (info / "METADATA").write_text("Metadata-Version: 2.1\nName: evenseam\nVersion: 0.0\n", encoding="utf-8")
        entry = "[mkdocs.plugins]\nevenseam = evenseam.mkdocs_plugin:EvenseamPlugin\n"
        (info / "entry_points.txt").write_text(entry, encoding="utf-8")
    path = os.pathsep.join((str(info.parent), str(PLUGIN)))
    return {**os.environ, "PYTHONPATH": path, "NO_MKDOCS_2_WARNING": "1", "DISABLE_MKDOCS_2_WARNING": "true"}


def mkdocs(config: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    """Run MkDocs on a site and return what became of it."""
    folder = config.parent
    return subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-f", str(config), *arguments],
        capture_output=True, text=True, cwd=folder, env=environment(folder), check=False, timeout=300,
    )  # fmt: skip


def tree(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder by its path."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()
    }
