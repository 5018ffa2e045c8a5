"""The front door on machines that lack something: one clear line each, and no traceback."""

from __future__ import annotations

import ast
import importlib.util
import os
import shutil
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

PROJECT = Path(__file__).parents[2]
DOOR = PROJECT / "plugin" / "__main__.py"


@pytest.fixture
def door(tmp_path: Path) -> ModuleType:
    """The front door of a copy of the project without an environment."""
    copy = tmp_path / "project"
    (copy / "plugin" / "lock").mkdir(parents=True)
    shutil.copy(DOOR, copy / "plugin")
    shutil.copy(PROJECT / "pyproject.toml", copy)
    for lock in ("run.txt", "test.txt"):
        (copy / "plugin" / "lock" / lock).write_text("six==1.17.0 --hash=sha256:" + "0" * 64 + "\n")
    spec = importlib.util.spec_from_file_location("front_door", copy / "plugin" / "__main__.py")
    assert spec and spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_even_an_old_python_can_read_it() -> None:
    ast.parse(DOOR.read_text("utf-8"), feature_version=(3, 5))


def test_it_needs_only_the_standard_library() -> None:
    for node in ast.walk(ast.parse(DOOR.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            assert all(alias.name.partition(".")[0] in sys.stdlib_module_names for alias in node.names)
        if isinstance(node, ast.ImportFrom):
            assert (node.module or "").partition(".")[0] in sys.stdlib_module_names


def test_an_old_python_is_told_so(
    door: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(door.sys, "version_info", (3, 9, 2))
    assert door.main(["build"]) == 2
    error = capsys.readouterr().err
    assert error.startswith("evenseam: needs Python 3.11 or newer") and error.count("\n") == 1


@pytest.mark.parametrize("missing", ["venv", "ensurepip"])
def test_a_python_without_venv_is_told_what_to_install(
    door: ModuleType, missing: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setitem(sys.modules, missing, None)
    assert door.main(["build"]) == 2
    error = capsys.readouterr().err
    assert "apt install python3-venv" in error and error.count("\n") == 1


def test_without_a_network_it_says_so(door: ModuleType) -> None:
    settings = {**os.environ, "PIP_INDEX_URL": "http://127.0.0.1:9/simple", "PIP_RETRIES": "0", "PIP_NO_CACHE_DIR": "1"}
    settings = {
        name: value
        for name, value in settings.items()
        if name not in ("PIP_EXTRA_INDEX_URL", "PIP_FIND_LINKS", "PIP_CONFIG_FILE")
    }
    settings["PIP_CONFIG_FILE"] = os.devnull
    project = Path(door.PROJECT)
    done = subprocess.run(
        [sys.executable, str(project / "plugin"), "build"],
        env=settings,
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert done.returncode == 2
    assert (
        done.stderr.strip()
        == "evenseam: no package index could be reached; connect to a network once and run the command again"
    )
    assert not (project / ".venv" / "evenseam-installed").exists()


@pytest.mark.parametrize(("words", "status"), [([], 2), (["fly"], 2), (["--help"], 0)])
def test_unknown_words_show_the_usage(
    door: ModuleType, words: list[str], status: int, capsys: pytest.CaptureFixture[str]
) -> None:
    assert door.main(words) == status
    assert "python3 plugin build" in capsys.readouterr().out


def test_an_environment_is_made_once(door: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    """The stamp holds for the same lock and Python, serves building after testing, and falls with a changed lock."""
    project = Path(door.PROJECT)
    made: list[str] = []

    def make() -> None:
        made.append("environment")
        python = Path(door.python())
        python.parent.mkdir(parents=True, exist_ok=True)
        python.touch()

    monkeypatch.setattr(door, "make_environment", make)
    monkeypatch.setattr(door, "pip", lambda *words: None)
    assert door.prepare(with_tests=True) is None
    assert door.prepare(with_tests=False) is None
    assert door.prepare(with_tests=True) is None
    assert made == ["environment"]
    (project / "plugin" / "lock" / "run.txt").write_text("changed\n")
    assert door.prepare(with_tests=False) is None
    assert made == ["environment"] * 2
    assert door.prepare(with_tests=True) is None
    assert made == ["environment"] * 3


def test_missing_cairo_is_one_line_with_three_ways_out(
    door: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    class Failed:
        returncode = 1

    monkeypatch.setattr(door.subprocess, "run", lambda *words, **options: Failed())
    door.tell_if_cairo_is_missing()
    error = capsys.readouterr().err
    assert error.count("\n") == 1
    assert all(word in error for word in ("Debian", "macOS", "Windows", "left out"))
