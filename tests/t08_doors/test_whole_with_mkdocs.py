"""`mkdocs build` called directly: at every moment the published folder is one whole version."""

from __future__ import annotations

import sys
import time
from pathlib import Path

import pytest
from evenseam.mkdocs_plugin import whole_site
from evenseam.mkdocs_plugin.whole_site import EXCHANGED_ELSEWHERE, WholeSite, put_in_place
from mkdocs.config.defaults import MkDocsConfig
from support.front_door import SmallProject, kill
from support.mkdocs_site import tutorial_patterns

OLD = tutorial_patterns()[0]
NEW = OLD.replace("title: Low Tide", "title: High Tide")
KILLS = 12


class DirectProject(SmallProject):
    """Built by MkDocs without our front door."""

    @property
    def start_words(self) -> list[str]:
        return [sys.executable, "-m", "mkdocs", "build"]


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> DirectProject:
    return DirectProject(tmp_path_factory.mktemp("direct") / "project", OLD, handouts="never")


@pytest.fixture(scope="module")
def versions(project: DirectProject) -> tuple[dict[str, bytes], dict[str, bytes], float]:
    status, said = project.build()
    assert status == 0, said
    old = project.published()
    project.write(NEW)
    began = time.monotonic()
    assert project.build()[0] == 0
    took = time.monotonic() - began
    new = project.published()
    assert old != new and len(old) > 15
    assert project.leftovers() == []
    return old, new, took


def test_killed_at_any_moment(
    project: DirectProject, versions: tuple[dict[str, bytes], dict[str, bytes], float]
) -> None:
    """The second half of a build is when MkDocs would empty and fill the folder."""
    old, new, took = versions
    for number in range(KILLS):
        project.write((OLD, NEW)[number % 2])
        process = project.start()
        time.sleep(took * (0.4 + 0.7 * number / KILLS))
        kill(process)
        assert project.published() in (old, new), f"killed at {number + 1}/{KILLS}"
    project.write(OLD)
    assert project.build()[0] == 0
    assert project.published() == old and project.leftovers() == []


def test_a_strict_build_that_fails_at_its_very_end(
    project: DirectProject, versions: tuple[dict[str, bytes], dict[str, bytes], float]
) -> None:
    """MkDocs counts the warnings when everything is written."""
    project.write(NEW)
    assert project.build()[0] == 0
    index = project.folder / "docs" / "index.md"
    before = index.read_text("utf-8")
    index.write_text(before + "\n[nowhere](nowhere.md)\n", "utf-8")
    try:
        status, said = project.build("--strict")
    finally:
        index.write_text(before, "utf-8")
    assert status == 1, said
    assert project.published() == versions[1] and project.leftovers() == []


def test_a_pattern_with_an_error_fails_a_strict_build_and_leaves_the_site(
    project: DirectProject, versions: tuple[dict[str, bytes], dict[str, bytes], float]
) -> None:
    project.write(NEW)
    assert project.build()[0] == 0
    project.write(OLD.replace("fabric: ", "fabric: un", 1))
    assert project.build("--strict")[0] == 1
    assert project.published() == versions[1] and project.leftovers() == []


def test_hidden_files_stay_as_mkdocs_lets_them(project: DirectProject) -> None:
    project.write(OLD)
    assert project.build()[0] == 0
    (project.site / ".nojekyll").write_text("keep me")
    project.write(NEW)
    assert project.build()[0] == 0
    assert (project.site / ".nojekyll").read_text() == "keep me"
    (project.site / ".nojekyll").unlink()


def config_of(site: Path) -> MkDocsConfig:
    config = MkDocsConfig()  # type: ignore[no-untyped-call]
    config.load_dict({"site_name": "Quay", "site_dir": str(site), "docs_dir": str(site.parent / "docs")})
    return config


def test_whoever_asks_after_the_build_is_told_the_right_folder(tmp_path: Path) -> None:
    """As does `mkdocs gh-deploy`, which uploads the folder that the settings name."""
    config = config_of(tmp_path / "site")
    whole = WholeSite()
    whole.begin(config)
    made = Path(config.site_dir)
    assert made.parent == tmp_path and made.name.startswith(".site-made-")
    (made / "index.html").write_text("new")
    whole.call_whole()
    whole.finish()
    assert config.site_dir == str(tmp_path / "site")
    assert (tmp_path / "site" / "index.html").read_text() == "new"
    assert (tmp_path / "site").stat().st_mode & 0o777 == 0o755


def test_where_it_would_not_be_sound_mkdocs_goes_its_own_way(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    config = config_of(tmp_path / "site")
    (tmp_path / "site" / ".git").mkdir(parents=True)
    whole = WholeSite()
    whole.begin(config)
    whole.finish()
    assert config.site_dir == str(tmp_path / "site") and (tmp_path / "site" / ".git").is_dir()
    (tmp_path / "site" / ".git").rmdir()
    monkeypatch.setenv(EXCHANGED_ELSEWHERE, "1")
    WholeSite().begin(config)
    assert config.site_dir == str(tmp_path / "site")


def test_a_site_behind_a_link_is_exchanged_behind_it(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "site").symlink_to(tmp_path / "real")
    config = config_of(tmp_path / "site")
    whole = WholeSite()
    whole.begin(config)
    (Path(config.site_dir) / "index.html").write_text("new")
    whole.call_whole()
    whole.finish()
    assert (tmp_path / "site").is_symlink() and (tmp_path / "real" / "index.html").read_text() == "new"


def test_another_build_at_work_loses_nothing(tmp_path: Path) -> None:
    """The second does not remove what the first is writing; the last to end stands."""
    one, two = config_of(tmp_path / "site"), config_of(tmp_path / "site")
    first, second = WholeSite(), WholeSite()
    first.begin(one)
    (Path(one.site_dir) / "index.html").write_text("first")
    second.begin(two)
    (Path(two.site_dir) / "index.html").write_text("second")
    second.call_whole()
    second.finish()
    assert (tmp_path / "site" / "index.html").read_text() == "second"
    first.call_whole()
    first.finish()
    assert (tmp_path / "site" / "index.html").read_text() == "first"
    assert [path.name for path in tmp_path.iterdir() if path.name.startswith(".site-made")] == []


@pytest.mark.parametrize("can_exchange", [True, False])
def test_the_old_site_is_given_back_when_a_build_died_between_two_steps(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, can_exchange: bool
) -> None:
    if not can_exchange:
        monkeypatch.setattr(whole_site, "_exchange", lambda one, other: False)
    place, made = tmp_path / "site", tmp_path / ".site-made-x"
    for folder in (place, made):
        folder.mkdir()
        (folder / "index.html").write_text(folder.name)
    put_in_place(made, place)
    assert (place / "index.html").read_text() == ".site-made-x"
    # Killed between two renames: the name is free, and the old folder stands under another.
    place.rename(tmp_path / ".site-was-y")
    whole = WholeSite()
    whole.begin(config_of(place))
    assert (place / "index.html").read_text() == ".site-made-x"
    whole.finish()
