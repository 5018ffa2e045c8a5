"""The published folder is one whole version at every moment: while a build runs, when it fails, when it is killed."""

from __future__ import annotations

import importlib.util
import os
import shutil
import sys
import time
from pathlib import Path
from types import ModuleType

import pytest
from support.front_door import SmallProject, kill
from support.mkdocs_site import PLUGIN, tree, tutorial_patterns

OLD = tutorial_patterns()[0]
NEW = OLD.replace("title: Low Tide", "title: High Tide")
KILLS = 30


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> SmallProject:
    return SmallProject(tmp_path_factory.mktemp("whole") / "project", OLD)


@pytest.fixture(scope="module")
def versions(project: SmallProject) -> tuple[dict[str, bytes], dict[str, bytes], float]:
    """What the two versions of the site hold, and how long a build without a cache takes."""
    began = time.monotonic()
    status, said = project.build()
    took = time.monotonic() - began
    assert status == 0, said
    old = project.published()
    project.write(NEW)
    assert project.build()[0] == 0
    new = project.published()
    assert old != new and len(old) > 20 and any(path.endswith(".pdf") for path in old)
    return old, new, took


def test_killed_at_any_moment_the_site_is_one_whole_version(
    project: SmallProject, versions: tuple[dict[str, bytes], dict[str, bytes], float]
) -> None:
    old, new, took = versions
    for number in range(KILLS):
        project.write((OLD, NEW)[number % 2])
        is_fresh = number % 3 == 0
        if is_fresh:
            # Killed while results are being kept, too.
            shutil.rmtree(project.folder / ".cache", ignore_errors=True)
        longest = took if is_fresh else took / 2
        process = project.start()
        time.sleep(longest * (number + 1) / KILLS)
        kill(process)
        found = project.published()
        differing = [
            sorted(path for path in {*found, *whole} if found.get(path) != whole.get(path)) for whole in (old, new)
        ]
        assert [] in differing, f"killed at {number + 1}/{KILLS} of {longest:.1f} s: {differing}"
    project.write(OLD)
    status, said = project.build()
    assert status == 0, said
    assert project.published() == old
    assert project.leftovers() == []


def test_a_build_that_fails_leaves_the_site_as_it_was(
    project: SmallProject, versions: tuple[dict[str, bytes], dict[str, bytes], float]
) -> None:
    project.write(OLD)
    assert project.build()[0] == 0
    project.write(OLD.replace("fabric: ", "fabric: un", 1))
    status, said = project.build()
    assert status == 1 and "stays as it was" in said and "Traceback" not in said
    assert project.published() == versions[0] and project.leftovers() == []
    project.write(OLD)


def test_two_builds_at_once_wait_for_each_other(
    project: SmallProject, versions: tuple[dict[str, bytes], dict[str, bytes], float]
) -> None:
    project.write(NEW)
    both = [project.start(), project.start()]
    said = [process.communicate(timeout=300)[1].decode() for process in both]
    assert [process.returncode for process in both] == [0, 0], said
    assert sum("another build is at work" in words for words in said) == 1
    assert project.published() == versions[1] and project.leftovers() == []


def test_a_damaged_cache_is_made_anew(
    project: SmallProject, versions: tuple[dict[str, bytes], dict[str, bytes], float]
) -> None:
    project.write(OLD)
    assert project.build()[0] == 0
    kept = [path for path in (project.folder / ".cache" / "evenseam").rglob("*") if path.is_file()]
    assert len(kept) > 20
    for number, path in enumerate(kept):
        content = path.read_bytes()
        path.write_bytes((content[: len(content) // 2], b"", content + b" ", b"\xff" + content[1:])[number % 4])
    status, said = project.build()
    assert status == 0, said
    assert project.published() == versions[0]


@pytest.fixture
def door(tmp_path: Path) -> ModuleType:
    (tmp_path / "plugin").mkdir()
    shutil.copy(PLUGIN / "__main__.py", tmp_path / "plugin")
    spec = importlib.util.spec_from_file_location("front_door_whole", tmp_path / "plugin" / "__main__.py")
    assert spec and spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    module.python = lambda: sys.executable
    module.tell_if_cairo_is_missing = lambda: None
    return module


def pretend_to_build(door: ModuleType, version: str, status: int = 0) -> None:
    """Let the door's build write a folder of three files instead of running MkDocs."""

    def run(command: list[str], **told: str) -> int:
        folder = Path(command[command.index("--site-dir") + 1])
        for name in ("a", "b", "c"):
            (folder / name).write_text(version)
        return status

    door.run = run


def die_at(door: ModuleType, step: int) -> None:
    """End the process, without any tidying up, before the given step of what changes the disk."""
    count = [0]

    def counted(call):
        def instead(*words, **named):
            count[0] += 1
            if count[0] == step:
                os._exit(9)
            return call(*words, **named)

        return instead

    class Counting:
        def __init__(self, module: ModuleType, names: tuple[str, ...]) -> None:
            self.module, self.names = module, names

        def __getattr__(self, name: str):
            found = getattr(self.module, name)
            return counted(found) if name in self.names else found

    door.os = Counting(os, ("rename", "rmdir", "chmod", "listdir"))
    door.shutil = Counting(shutil, ("rmtree",))
    door.tempfile = Counting(door.tempfile, ("mkdtemp",))
    door.exchange = counted(door.exchange)


def in_a_process_of_its_own(work) -> int:
    """Do something in a copy of this process and return its exit status."""
    child = os.fork()
    if not child:
        try:
            work()
        finally:
            os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


@pytest.mark.skipif(not hasattr(os, "fork"), reason="processes are copied here")
@pytest.mark.parametrize("can_exchange", [True, False])
def test_killed_before_each_step_of_the_exchange(door: ModuleType, tmp_path: Path, can_exchange: bool) -> None:
    """With an exchange in one step the site is always there; with two renames the next build finds it again."""
    exchange = door.exchange
    door.exchange = exchange if can_exchange else lambda one, other: False
    site = tmp_path / "site"
    pretend_to_build(door, "old")
    assert door.build([]) == 0
    is_possible = can_exchange and exchange(str(site), str(site)) is not None
    deaths = 0
    for step in range(1, 40):
        pretend_to_build(door, f"new {step}")

        def work(step: int = step) -> None:
            die_at(door, step)
            door.build([])

        status = in_a_process_of_its_own(work)
        if is_possible:
            assert len({content for content in tree(site).values()}) == 1 and len(tree(site)) == 3
        with door.Lock(door.beside(str(site), "-lock")):
            door.clear_away(str(site))
        assert set(tree(site)) == {"a", "b", "c"} and len(set(tree(site).values())) == 1
        assert [
            path.name for path in tmp_path.iterdir() if path.name.startswith(".site") and path.name != ".site-lock"
        ] == []
        if status == 0:
            break
        assert status == 9
        deaths += 1
    assert deaths >= 4, "too few steps were tried"
    assert set(tree(site).values()) == {f"new {step}".encode()}


def test_when_the_site_cannot_be_exchanged_it_stays(
    door: ModuleType, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    site = tmp_path / "site"
    pretend_to_build(door, "old")
    assert door.build([]) == 0
    door.exchange = lambda one, other: False
    rename = os.rename

    def failing(one: str, other: str) -> None:
        if str(other) == str(site) and "-new-" in str(one):
            raise OSError(16, "Device or resource busy")
        rename(one, other)

    monkeypatch.setattr(door.os, "rename", failing)
    pretend_to_build(door, "new")
    assert door.build([]) == 2
    assert "it stays as it was" in capsys.readouterr().err
    assert set(tree(site).values()) == {b"old"}


def test_another_folder_can_be_named(door: ModuleType, tmp_path: Path) -> None:
    pretend_to_build(door, "old")
    for words, name in (
        (["-d", "one"], "one"),
        (["--site-dir=two"], "two"),
        (["--quiet", "--site-dir", str(tmp_path / "three")], "three"),
    ):
        assert door.build(words) == 0
        assert len(tree(tmp_path / name)) == 3


def test_a_link_in_place_of_the_site_stays_a_link(door: ModuleType, tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "site").symlink_to("elsewhere")
    pretend_to_build(door, "new")
    assert door.build([]) == 0
    assert (tmp_path / "site").is_symlink() and len(tree(tmp_path / "elsewhere")) == 3
