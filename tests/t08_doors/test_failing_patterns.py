"""A pattern that fails, for whatever reason, leaves the others published and shows on its own page what is the matter."""

from __future__ import annotations

import contextlib
import errno
import os
import re
import resource
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
import typst
from evenseam.cli import main
from evenseam.problems import SourceText
from evenseam.publish import cache as cache_module
from evenseam.publish import making, parallel
from evenseam.publish.cache import Cache
from evenseam.publish.export import export
from evenseam.publish.handout import set_handout
from evenseam.publish.options import SiteOptions
from evenseam.publish.site import build_site
from evenseam.publish.site_files import SiteFiles
from evenseam.publish.sources import PatternSource
from support.dying import make_unless_adrift
from support.front_door import SmallProject
from support.mkdocs_site import environment, mkdocs, tree, tutorial_patterns, write_config, write_pattern

SMALL = tutorial_patterns()[0]
OPTIONS = SiteOptions(papers=("a4",), has_author_guide=False)


def source(slug: str, text: str = SMALL) -> PatternSource:
    return PatternSource(slug, SourceText(f"patterns/{slug}/pattern.yaml", text), {})


SOURCES = (source("adrift"), source("low-tide"), source("quay", SMALL.replace("Low Tide", "Quay")))


def body(site: SiteFiles, slug: str) -> str:
    (page,) = [page for page in site.pages if page.path == f"patterns/{slug}/index.md"]
    return page.body(has_folders=True)


def check_only_adrift_is_missing(site: SiteFiles) -> None:
    """Two patterns are there with everything, the third is one page that names its problem."""
    paths = {page.path for page in site.pages}
    for slug in ("low-tide", "quay"):
        assert f"patterns/{slug}/mug-rug-inches.md" in paths
        assert "not published" not in body(site, slug)
    assert [path for path in paths if path.startswith("patterns/adrift/")] == ["patterns/adrift/index.md"]
    assert "This pattern is not published yet" in body(site, "adrift") and "What to do:" in body(site, "adrift")
    assert site.errors and all(
        problem.place and problem.place.file == "patterns/adrift/pattern.yaml" for problem in site.errors
    )


@pytest.mark.parametrize(
    "error",
    [ValueError("a bow\n tie"), RecursionError(), MemoryError(), KeyError("x"), AssertionError("<script>")],
    ids=lambda error: type(error).__name__,
)
def test_a_fault_of_ours_stays_with_its_pattern(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, error: Exception
) -> None:
    check = making.check_pattern

    def failing(given: PatternSource):
        if given.slug == "adrift":
            raise error
        return check(given)

    with monkeypatch.context() as patch:
        patch.setattr(making, "check_pattern", failing)
        made = build_site(SOURCES, OPTIONS, Cache(tmp_path), processes=1)
    check_only_adrift_is_missing(made)
    (problem,) = made.errors
    assert problem.code.name == "pattern-not-made" and type(error).__name__ in problem.message
    assert "<script>" not in body(made, "adrift")
    # A fault is not remembered: mended, the pattern is there at the next build.
    assert not build_site(SOURCES, OPTIONS, Cache(tmp_path), processes=1).errors


def test_a_process_that_dies_takes_one_pattern_with_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As when the system stops a process that takes too much memory."""
    monkeypatch.setattr(parallel, "_make", make_unless_adrift)
    made = build_site(SOURCES, OPTIONS, Cache(tmp_path), processes=2)
    check_only_adrift_is_missing(made)
    assert "stopped" in made.errors[0].message


def test_cairo_that_fails_is_told_on_the_page(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(making, "has_cairo", lambda: True)
    monkeypatch.setattr(making, "card_picture", lambda *words, **named: b"picture")
    calls: list[int] = []

    def failing(*words: object, **named: object) -> bytes:
        calls.append(1)
        if len(calls) == 1:
            raise RuntimeError("cairo says no")
        return b"%PDF-templates"

    monkeypatch.setattr(making, "templates_pdf", failing)
    made = build_site(SOURCES, OPTIONS, Cache(tmp_path), processes=1)
    assert len(calls) >= 3
    check_only_adrift_is_missing(made)
    assert "cairo says no" in made.errors[0].message


class PanicException(BaseException):
    """Stands in for a panic of typst, which is no ordinary exception."""


@pytest.mark.parametrize("error", [None, PanicException("index out of bounds")], ids=["error", "panic"])
def test_typst_that_fails_is_told_on_the_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, error: BaseException | None
) -> None:
    made_by = making.set_handout

    class Failing:
        def compile(self, **words: object) -> bytes:
            if error is not None:
                raise error
            return typst.compile(b'#panic("no more ink")')

    def one_fails(data: str, place):
        if place is not None and "adrift" in place.file:
            with monkeypatch.context() as patch:
                patch.setattr("evenseam.publish.handout._compiler", _failing_compiler(Failing()))
                return set_handout(data, place)
        return made_by(data, place)

    monkeypatch.setattr(making, "set_handout", one_fails)
    made = build_site(
        tuple(
            given if given.slug != "adrift" else source("adrift", SMALL.replace("Low Tide", "Adrift"))
            for given in SOURCES
        ),
        OPTIONS,
        Cache(tmp_path),
        processes=1,
    )
    check_only_adrift_is_missing(made)
    assert made.errors[0].code.name == "handout-not-set"


def _failing_compiler(compiler: object):
    def get() -> object:
        return compiler

    get.cache_clear = lambda: None  # type: ignore[attr-defined]
    return get


def test_no_room_in_the_cache_ends_in_one_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    write_pattern(tmp_path / "patterns" / "low-tide", SMALL)
    monkeypatch.chdir(tmp_path)
    writes: list[Path] = []
    write = cache_module.write_whole

    def full(path: Path, content: bytes, *, is_lasting: bool) -> None:
        writes.append(path)
        if len(writes) > 4:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), str(path))
        write(path, content, is_lasting=is_lasting)

    with monkeypatch.context() as patch:
        patch.setattr(cache_module, "write_whole", full)
        assert main(["export", "out"]) == 2
    error = capsys.readouterr().err
    assert error.startswith("evenseam: ") and "No space left" in error and error.count("\n") == 1
    assert (
        not (tmp_path / "out").exists()
        and [path.name for path in tmp_path.iterdir() if path.name.startswith(".out")] == []
    )
    # With room again, what was kept so far is good.
    assert main(["export", "out"]) == 0


def limit_files() -> None:
    """Let no file grow beyond 40,000 bytes: the disk is full in the middle of one."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (40_000, 40_000))


def test_a_file_that_cannot_be_written_whole_leaves_the_old_site(tmp_path: Path) -> None:
    project = SmallProject(tmp_path / "project", SMALL)
    assert project.build()[0] == 0
    before = project.published()
    for is_cached in (True, False):
        if not is_cached:
            shutil.rmtree(project.folder / ".cache")
        process = subprocess.Popen(
            [*project.start_words],
            cwd=project.folder,
            env=project.environment,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            preexec_fn=limit_files,
        )
        said = process.communicate(timeout=300)[0].decode()
        assert process.returncode == 1
        assert "File too large" in said and "stays as it was" in said and "Traceback" not in said, said
        assert project.published() == before and project.leftovers() == []


class TestExportWithABrokenPattern:
    """The plain files hold every pattern that can be, and a page of problems for the one that cannot."""

    def test_the_others_are_there(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
    ) -> None:
        write_pattern(tmp_path / "patterns" / "low-tide", SMALL)
        write_pattern(tmp_path / "patterns" / "stranded", "title: [")
        monkeypatch.chdir(tmp_path)
        assert main(["export", "out"]) == 1
        assert "patterns/stranded/pattern.yaml:1:" in capsys.readouterr().err
        files = tree(tmp_path / "out" / "patterns")
        assert "low-tide/mug-rug-inches.md" in files and "low-tide/mug-rug-inches-a4.pdf" in files
        assert [path for path in files if path.startswith("stranded/")] == ["stranded/index.md"]
        assert b"This pattern is not published yet" in files["stranded/index.md"]

    def test_an_export_that_fails_leaves_the_old_one(self, tmp_path: Path) -> None:
        site = build_site((source("low-tide"),), OPTIONS, Cache(tmp_path / "cache"), processes=1)
        export(site, tmp_path / "out")
        before = tree(tmp_path / "out")
        site.files[-1].stored.unlink()
        with pytest.raises(FileNotFoundError):
            export(site, tmp_path / "out")
        assert tree(tmp_path / "out") == before and sorted(os.listdir(tmp_path)) == ["cache", "out"]


class TestPluginWithAFaultOfOurs:
    """In MkDocs, too, a fault of the publisher on one pattern is that pattern's page; a strict build fails on it."""

    HOOK = """
from evenseam.publish import making
check = making.check_pattern
def failing(source):
    if source.slug == "adrift":
        raise ZeroDivisionError("a fault")
    return check(source)
making.check_pattern = failing
"""

    @pytest.mark.parametrize("is_strict", [True, False])
    def test_it_is_told(self, tmp_path: Path, is_strict: bool) -> None:
        write_pattern(tmp_path / "patterns" / "low-tide", SMALL)
        assert mkdocs(write_config(tmp_path, plugins=[{"evenseam": {"handouts": "never"}}]), "--strict").returncode == 0
        write_pattern(tmp_path / "patterns" / "adrift", SMALL)
        (tmp_path / "fault.py").write_text(self.HOOK)
        config = write_config(tmp_path, plugins=[{"evenseam": {"handouts": "never"}}], hooks=["fault.py"])
        told = mkdocs(config, *(["--strict"] if is_strict else []))
        assert "error[pattern-not-made]" in told.stderr and "ZeroDivisionError" in told.stderr
        assert told.returncode == (1 if is_strict else 0)
        if not is_strict:
            assert "publisher failed" in (tmp_path / "site/patterns/adrift/index.html").read_text()
            assert (tmp_path / "site/patterns/low-tide/mug-rug-inches/index.html").is_file()


@contextlib.contextmanager
def served(config: Path) -> Iterator[str]:
    """Serve a site in a process of its own; give its address."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    log = (config.parent / "serve.log").open("wb")
    words = [sys.executable, "-m", "mkdocs", "serve", "--livereload", "-f", str(config), "-a", f"127.0.0.1:{port}"]
    process = subprocess.Popen(words, cwd=config.parent, env=environment(config.parent), stdout=log, stderr=log)
    try:
        yield f"http://127.0.0.1:{port}/"
    finally:
        process.terminate()
        process.wait(20)
        log.close()


def wait_for(address: str, words: str, seconds: float = 60) -> str:
    """Ask for a page until it holds some words; return it."""
    page = ""
    ends = time.monotonic() + seconds
    while time.monotonic() < ends:
        with contextlib.suppress(OSError):
            page = urllib.request.urlopen(address, timeout=5).read().decode()
            if words in page:
                return page
        time.sleep(0.2)
    raise AssertionError(f"{address} never said {words!r}; last: {re.sub('<[^>]*>', ' ', page)[-500:]}")


def test_a_preview_survives_every_mistake(tmp_path: Path) -> None:
    write_pattern(tmp_path / "patterns" / "low-tide", SMALL)
    config = write_config(tmp_path, plugins=[{"evenseam": {"handouts": "never"}}])
    with served(config) as address:
        page = address + "patterns/low-tide/"
        wait_for(page, "Choose a size")
        for broken, words in (
            ("title: [", "not published yet"),
            ("\x00", "not published yet"),
            (SMALL.replace("fabric: ", "fabric: un", 1), "not published yet"),
        ):
            write_pattern(tmp_path / "patterns" / "low-tide", broken)
            wait_for(page, words)
            write_pattern(tmp_path / "patterns" / "low-tide", SMALL)
            wait_for(page, "Choose a size")
