"""What has not changed is not made again, and nobody can tell from the site."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest
from evenseam.mkdocs_plugin.standing_site import StandingSite
from evenseam.problems import SourceText
from evenseam.publish import sheet_memory
from evenseam.publish.checked import check_pattern
from evenseam.publish.sheet_memory import SheetMemory
from evenseam.publish.sources import PatternSource
from evenseam.reading import read_pattern
from evenseam.sheet import compute_sheet, sheet_as_json
from mkdocs.structure.files import Files
from support.mkdocs_site import environment, mkdocs, tree, tutorial_patterns, write_config, write_pattern

PATTERN = tutorial_patterns()[0]
EVENSEAM = {"evenseam": {"handouts": "never", "author_guide": False, "editions": ["inches"]}}
CHANGING = {"sitemap.xml", "sitemap.xml.gz"}
"""They carry the day of the build."""
WATCHER = "def on_post_page(output, page, config):\n    return output\n"
"""A hook that takes part in every page, though it changes nothing: pages then are all written anew."""


def site(folder: Path) -> dict[str, bytes]:
    return {path: content for path, content in tree(folder / "site").items() if path not in CHANGING}


def build(folder: Path, **more: object) -> dict[str, bytes]:
    settings = {"plugins": ["search", EVENSEAM], "theme": "material", "features": ["navigation.prune"], **more}
    config = write_config(folder, **settings)
    told = mkdocs(config)
    assert told.returncode == 0, told.stderr
    return site(folder)


@pytest.fixture(scope="module")
def quay(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("quay")
    write_pattern(folder / "patterns" / "low-tide", PATTERN)
    (folder / "watcher.py").write_text(WATCHER)
    build(folder)
    return folder


def written_anew(folder: Path, **more: object) -> dict[str, bytes]:
    return build(folder, hooks=["watcher.py"], **more)


def pattern_page(pages: dict[str, bytes]) -> str:
    (name,) = [path for path in pages if path.startswith("patterns/low-tide/") and path.endswith("-inches/index.html")]
    return pages[name].decode()


class TestKeptPages:
    """A kept page has the very bytes of one written anew, and whatever shows on it is part of what it is kept under."""

    def test_pages_are_kept(self, quay):
        """Seen from outside: the kept text itself is changed, and the change arrives."""
        kept = [
            path
            for path in (quay / ".cache/evenseam/made").rglob("*")
            if path.is_file() and b"</html>" in path.read_bytes()
        ]
        assert kept

    def test_the_bytes_are_the_same(self, quay):
        assert build(quay) == written_anew(quay)

    def test_a_changed_setting_shows(self, quay):
        pages = build(quay, site_name="Other Quay")
        assert "Other Quay" in pattern_page(pages)
        assert pages == written_anew(quay, site_name="Other Quay")

    def test_a_changed_navigation_shows(self, quay):
        nav = [{"Start here": "index.md"}, {"Quilts": "patterns/"}]
        pages = build(quay, nav=nav)
        assert "Quilts" in pattern_page(pages)
        assert pages == written_anew(quay, nav=nav)

    def test_a_changed_template_shows(self, quay):
        override = quay / "overrides" / "main.html"
        override.parent.mkdir()
        look = {"name": "material", "font": False, "custom_dir": "overrides", "features": []}
        for words in ("High water at noon", "High water at six"):
            override.write_text('{% extends "base.html" %}{% block announce %}' + words + "{% endblock %}")
            config = write_config(quay, plugins=["search", EVENSEAM])
            settings = config.read_text().replace("theme:", "was:")
            config.write_text(settings + f"theme: {json.dumps(look)}\n")
            assert mkdocs(config).returncode == 0
            assert words in pattern_page(site(quay))


REBUILDS = """
import json, logging, os, pathlib, sys
from mkdocs.commands.build import build
from mkdocs.config import load_config

logging.disable(logging.CRITICAL)
folder, place, steps = pathlib.Path(sys.argv[1]), sys.argv[2], json.loads(sys.argv[3])


def settings():
    config = load_config(str(folder / "mkdocs.yml"), site_dir=place)
    config.site_url = "http://127.0.0.1:8000/"
    return config


config = settings()
config.plugins.on_startup(command="serve", dirty=False)
build(config, serve_url=config.site_url)
for old, new in steps:
    file = folder / "patterns/low-tide/pattern.yaml"
    file.write_text(file.read_text().replace(old, new))
    gone = folder / "patterns/high-tide/pattern.yaml"
    gone.unlink(missing_ok=True)
    stamps = {str(path): path.stat().st_mtime_ns for path in pathlib.Path(place).rglob("*.html")}
    config = settings()
    build(config, serve_url=config.site_url)
    same = [name for name, stamp in stamps.items() if os.path.exists(name) and os.stat(name).st_mtime_ns == stamp]
    print(json.dumps(same))
"""


class TestServedSite:
    """While a site is served, an unchanged page stays as it lies; what is served is what a fresh start would serve."""

    def test_an_edit_and_a_removal(self, tmp_path):
        for name in ("low-tide", "high-tide", "slack-water"):
            write_pattern(tmp_path / "patterns" / name, PATTERN)
        # The list of patterns is short, so that a changed title would show in every page's navigation.
        few = {"evenseam": {**EVENSEAM["evenseam"], "most_in_navigation": 0}}
        write_config(tmp_path, plugins=["search", few], theme="material", features=["navigation.prune"])

        def run(place: str, *steps: tuple[str, str]) -> list[list[str]]:
            told = subprocess.run(
                [sys.executable, "-c", REBUILDS, str(tmp_path), str(tmp_path / place), json.dumps(steps)],
                capture_output=True, text=True, cwd=tmp_path, env=environment(tmp_path), check=False, timeout=300,
            )  # fmt: skip
            assert told.returncode == 0, told.stderr
            return [json.loads(line) for line in told.stdout.splitlines()]

        (same,) = run("standing", ("title: ", "title: Very "))
        assert any("slack-water" in path for path in same)
        assert not any("low-tide" in path for path in same)
        run("fresh")
        standing, fresh = tree(tmp_path / "standing"), tree(tmp_path / "fresh")
        assert {path for path in standing if path not in fresh} == set()
        assert [path for path in fresh if path not in CHANGING and fresh[path] != standing[path]] == []


class TestSheetMemory:
    """A sheet is computed again when anything that it says has changed, the lines of the file among it."""

    @staticmethod
    def pattern(text: str):
        return read_pattern("low-tide", SourceText("pattern.yaml", text), {}).value

    def test_another_title_computes_nothing(self, monkeypatch):
        computed = []
        monkeypatch.setattr(sheet_memory, "compute_sheet", lambda *parts: computed.append(1) or compute_sheet(*parts))
        memory = SheetMemory()
        for title in ("", "Very "):
            pattern = self.pattern(PATTERN.replace("title: ", f"title: {title}"))
            sheets = [memory.compute(pattern, project).value for project in pattern.projects]
            assert [sheet.pattern.title for sheet in sheets] == [pattern.title] * len(sheets)
        assert len(computed) == len(pattern.projects)

    @pytest.mark.parametrize(
        ("old", "new"), [("format: 1\n", "# A note\nformat: 1\n"), ("format: 1\n", "format: 1\n\n\n")]
    )
    def test_moved_lines_move_the_places_of_figures(self, old, new):
        memory = SheetMemory()
        before = self.pattern(PATTERN)
        for project in before.projects:
            memory.compute(before, project)
        moved = self.pattern(PATTERN.replace(old, new))
        for project in moved.projects:
            told = sheet_as_json(memory.compute(moved, project).value)
            assert told == sheet_as_json(compute_sheet(moved, project).value)
            assert told != sheet_as_json(compute_sheet(before, before.project(project.size, project.unit)).value)

    def test_it_forgets_the_oldest(self):
        memory = SheetMemory(most=1)
        pattern = self.pattern(tutorial_patterns()[1])
        sheets = [memory.compute(pattern, project).value for project in pattern.projects]
        assert len(sheets) > 1
        again = memory.compute(pattern, pattern.projects[0]).value
        assert again is not sheets[0] and again == sheets[0]

    def test_the_door_uses_it(self):
        source = PatternSource("low-tide", SourceText("pattern.yaml", PATTERN), {})
        first, second = check_pattern(source), check_pattern(source)
        assert [one.sized is other.sized for one, other in zip(first.sheets, second.sheets, strict=True)] == [
            True
        ] * len(first.sheets)


class TestStandingSite:
    """The folder of a served site is left alone only while it is known to be whole."""

    def test_after_a_build_that_failed_everything_is_made_anew(self, tmp_path):
        site = tmp_path / "site"
        site.mkdir()
        standing = StandingSite()

        def place_given_to_mkdocs() -> str:
            settings = SimpleNamespace(site_dir=str(site))
            standing.begin(settings)
            return settings.site_dir

        assert place_given_to_mkdocs() == str(site)
        standing.finish(Files([]))
        kept = place_given_to_mkdocs()
        assert kept != str(site) and not Path(kept).exists()
        # This build does not come to its end.
        assert place_given_to_mkdocs() == str(site)
        standing.finish(Files([]))
        assert place_given_to_mkdocs() != str(site)

    def test_another_folder_is_not_mistaken_for_it(self, tmp_path):
        standing = StandingSite()
        for name in ("one", "other"):
            (tmp_path / name).mkdir()
            settings = SimpleNamespace(site_dir=str(tmp_path / name))
            standing.begin(settings)
            assert settings.site_dir == str(tmp_path / name)
            standing.finish(Files([]))
