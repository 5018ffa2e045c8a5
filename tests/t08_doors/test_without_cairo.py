"""Without the cairo library the site and its handouts are still made; what needs it is left out, and said so once."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from support.mkdocs_site import environment, tutorial_patterns, write_config, write_pattern
from support.page_reader import read_page

BLOCK = """
import sys

class NoLibrary:
    def find_spec(self, name, path=None, target=None):
        if name == "cairocffi":
            # What cairocffi itself raises where the library is missing.
            raise OSError("no library called cairo-2 was found")
        return None

sys.meta_path.insert(0, NoLibrary())
"""
"""Loaded by every Python process of the build, the workers among them."""


@pytest.fixture(scope="module")
def built(tmp_path_factory) -> tuple[Path, str]:
    folder = tmp_path_factory.mktemp("quay")
    write_pattern(folder / "patterns" / "low-tide", tutorial_patterns()[0])
    config = write_config(folder, plugins=[{"evenseam": {"papers": ["a4"], "editions": ["inches"]}}])
    (folder / "blocked").mkdir()
    (folder / "blocked" / "sitecustomize.py").write_text(BLOCK)
    settings = environment(folder)
    settings["PYTHONPATH"] = os.pathsep.join((str(folder / "blocked"), settings["PYTHONPATH"]))
    told = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--strict", "-f", str(config)],
        capture_output=True, text=True, cwd=folder, env=settings, check=False, timeout=300,
    )  # fmt: skip
    assert told.returncode == 0, told.stderr
    return folder / "site", told.stderr


def names(site: Path) -> set[str]:
    return {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}


def test_the_library_is_really_out_of_reach(built):
    site, _ = built
    settings = {**os.environ, "PYTHONPATH": str(site.parent / "blocked")}
    done = subprocess.run([sys.executable, "-c", "import cairosvg"], capture_output=True, env=settings, check=False)
    assert done.returncode != 0


def test_pages_and_handouts_are_there(built):
    found = names(built[0])
    assert any(name.startswith("patterns/low-tide/") and name.endswith("-inches/index.html") for name in found)
    (handout,) = [name for name in found if name.endswith("-inches-a4.pdf") and "templates" not in name]
    assert (built[0] / handout).read_bytes().startswith(b"%PDF-")


def test_pictures_and_templates_alone_are_left_out(built):
    ours = {name for name in names(built[0]) if name.startswith("patterns/")}
    assert not [name for name in ours if name.endswith(".png") or "templates" in name]
    assert [name for name in ours if name.endswith(".pdf")] != []


def test_no_page_leads_to_what_is_not_there(built):
    site, _ = built
    count = 0
    for path in (site / "patterns").rglob("*.html"):
        for _, _, address in read_page(path.read_text()).addresses:
            local = address.partition("#")[0].partition("?")[0]
            if not local or "//" in local or local.startswith(("data:", "mailto:")):
                continue
            target = (path.parent / local) if not local.startswith("/") else site / local.lstrip("/")
            target = target / "index.html" if target.is_dir() else target
            assert target.is_file(), (path, address)
            count += 1
    assert count > 10


def test_it_is_said_in_one_line_with_what_to_install(built):
    lines = [line for line in built[1].splitlines() if "cairo" in line]
    assert len(lines) == 1
    assert all(words in lines[0] for words in ("left out", "apt install libcairo2", "brew install cairo", "Windows"))
