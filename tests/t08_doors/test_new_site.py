"""A site of one's own: made in one command, built from the wheel, in an environment that knows nothing of this copy."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
import venv
from pathlib import Path

import pytest
import yaml
from evenseam.cli import main

ROOT = Path(__file__).parents[2]


def run(*words: str | Path, folder: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    """Run a program without this copy of the project on its path."""
    known = {name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "PYTHONHOME")}
    return subprocess.run(
        [str(word) for word in words], cwd=folder, env={**known, "NO_MKDOCS_2_WARNING": "1", **environment},
        capture_output=True, text=True, timeout=600, check=False,
    )  # fmt: skip


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of this copy, built as a release would be."""
    folder = tmp_path_factory.mktemp("wheel")
    source = folder / "source"
    listed = subprocess.run(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard", "plugin/evenseam", "pyproject.toml"],
        cwd=ROOT, check=True, capture_output=True,
    )  # fmt: skip
    for name in filter(None, listed.stdout.decode().split("\0")):
        if (ROOT / name).is_file():
            (source / name).parent.mkdir(parents=True, exist_ok=True)
            (source / name).write_bytes((ROOT / name).read_bytes())
    done = run(
        sys.executable, "-m", "pip", "wheel", "--no-deps", "--no-build-isolation", "-w", folder / "wheels", source,
        folder=folder,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    (built,) = (folder / "wheels").iterdir()
    return built


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The programs of an environment in which only the wheel and what it needs are installed.

    In continuous integration the packages come from the package index, as they do for a designer; elsewhere they are
    those of this environment, without this copy, so that the test can do without a network.
    """
    folder = tmp_path_factory.mktemp("designer") / "environment"
    venv.create(folder, with_pip=True, symlinks=os.name != "nt")
    programs = folder / ("Scripts" if os.name == "nt" else "bin")
    what = [f"{wheel}[site,pictures]"] if os.environ.get("CI") else ["--no-deps", str(wheel)]
    if not os.environ.get("CI"):
        (library,) = folder.glob("lib/python*/site-packages" if os.name != "nt" else "Lib/site-packages")
        # A line in a .pth file adds a folder, but the .pth files in that folder are not read: so neither is this copy's.
        (library / "borrowed.pth").write_text(sysconfig.get_path("purelib") + "\n")
    done = run(programs / "python", "-m", "pip", "install", "-q", *what, folder=folder)
    assert done.returncode == 0, done.stderr
    return programs


def test_a_site_is_made_and_built_from_the_wheel(installed: Path, tmp_path: Path) -> None:
    where = run(installed / "python", "-c", "import evenseam; print(evenseam.__file__)", folder=tmp_path)
    assert Path(where.stdout.strip()).is_relative_to(installed.parent), "the wheel is what is tested"
    made = run(installed / "evenseam", "new", "--site", "north quay", folder=tmp_path)
    assert made.returncode == 0, made.stderr
    site = tmp_path / "north quay"
    assert (site / ".github/workflows/publish.yml").is_file()
    built = run(installed / "python", "-m", "mkdocs", "build", "--strict", folder=site)
    assert built.returncode == 0, built.stderr
    pages = {path.relative_to(site / "site").as_posix() for path in (site / "site").rglob("index.html")}
    for page in ("mug-rug-inches", "mug-rug-centimetres", "wall-hanging-inches", "wall-hanging-centimetres"):
        assert f"patterns/first-light/{page}/index.html" in pages
    for page in ("index", "first-pattern", "drawing-blocks", "arrangements-borders-edges", "every-key", "own-site"):
        assert f"guide/{page}/index.html".replace("index/index", "index") in pages, "the pages that teach are at hand"
    first = (site / "site/guide/first-pattern/index.html").read_text("utf-8")
    assert "mkdocs serve" in first and "python3 plugin" not in first
    assert "<code>patterns/low-tide/pattern.yaml</code>" in first and "title=&quot;" not in first
    handouts = sorted((site / "site").rglob("*.pdf"))
    assert handouts
    assert all(path.read_bytes().startswith(b"%PDF-") for path in handouts)
    front = (site / "site/index.html").read_text("utf-8")
    assert "First Light" in front, "the gallery stands on the first page"
    assert "North Quay" in front
    checked = run(installed / "evenseam", "check", folder=site)
    assert checked.returncode == 0, checked.stdout


def test_the_plugin_works_in_a_site_of_another_theme_and_other_settings(installed: Path, tmp_path: Path) -> None:
    (tmp_path / "docs").mkdir()
    (tmp_path / "docs/index.md").write_text("# Notes of a maker\n")
    settings = {
        "site_name": "Notes", "theme": "readthedocs", "use_directory_urls": False,
        "plugins": [{"evenseam": {"patterns": "quilts", "folder": "my-quilts", "handouts": "never", "author_guide": False}}],
    }  # fmt: skip
    (tmp_path / "mkdocs.yml").write_text(yaml.safe_dump(settings))
    made = run(installed / "evenseam", "new", "Low Water", "--patterns", "quilts", folder=tmp_path)
    assert made.returncode == 0, made.stderr
    built = run(installed / "python", "-m", "mkdocs", "build", "--strict", folder=tmp_path)
    assert built.returncode == 0, built.stderr
    page = (tmp_path / "site/my-quilts/low-water/mug-rug-inches.html").read_text("utf-8")
    assert "Now measures" in page or "now measures" in page


class TestNew:
    """What the command refuses, and that a refusal leaves nothing behind."""

    def test_a_folder_with_something_in_it_is_left_alone(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        (tmp_path / "quay").mkdir()
        (tmp_path / "quay/letter.txt").write_text("keep me")
        assert main(["new", "--site", str(tmp_path / "quay")]) == 2
        assert "is there already" in capsys.readouterr().err
        assert [path.name for path in tmp_path.rglob("*")] == ["quay", "letter.txt"]

    def test_an_empty_folder_is_filled(self, tmp_path: Path) -> None:
        (tmp_path / "quay").mkdir()
        assert main(["new", "--site", str(tmp_path / "quay"), "Spring Tide"]) == 0
        assert (tmp_path / "quay/patterns/spring-tide/pattern.yaml").is_file()

    @pytest.mark.parametrize("name", ["***", "", "x" * 500])
    def test_a_name_that_is_none_is_refused(self, tmp_path: Path, name: str) -> None:
        assert main(["new", "--site", str(tmp_path / "quay"), name]) == 2
        assert list(tmp_path.iterdir()) == []

    def test_without_a_name_it_says_what_is_missing(self, capsys: pytest.CaptureFixture[str]) -> None:
        assert main(["new"]) == 2
        assert "what the new pattern is called" in capsys.readouterr().err

    @pytest.mark.parametrize("folder", ["a & b", "<script>", "quay: #1", 'x" onload="y', "*"])
    def test_a_strange_folder_makes_settings_that_can_be_read(self, tmp_path: Path, folder: str) -> None:
        assert main(["new", "--site", str(tmp_path / folder)]) == 0
        settings = yaml.safe_load((tmp_path / folder / "mkdocs.yml").read_text("utf-8"))
        assert settings["site_name"]
        assert "<" not in settings["site_name"]
