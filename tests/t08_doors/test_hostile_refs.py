"""Names of branches and revisions as a stranger might choose them: each is a name and nothing else."""

from __future__ import annotations

import json
import subprocess
from html.parser import HTMLParser
from pathlib import Path

import pytest
from evenseam.cli import main
from markdown_it import MarkdownIt
from support.hostile import NO_REVISIONS, REF_NAMES
from support.repository import commit, git
from support.reviewed import GULLS

CHANGED = GULLS.partition("  wall hanging:")[0].replace("outer border: {width: 1}", "outer border: {width: 1 1/2}")


class Elements(HTMLParser):
    """Gathers elements with their attributes' names."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, ...]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, *(name for name, _ in attrs)))

    def handle_comment(self, data: str) -> None:
        self.found.append(("comment",))


def elements(html: str) -> list[tuple[str, ...]]:
    """Return what a browser would make of a page."""
    reader = Elements()
    reader.feed(html)
    reader.close()
    return reader.found


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("refs")


@pytest.fixture
def plain(home: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a repository in which something differs from its only commit, and go there."""
    monkeypatch.chdir(home)
    if not (home / ".git").exists():
        folder = home / "patterns" / "two-gulls"
        folder.mkdir(parents=True)
        (folder / "pattern.yaml").write_text(GULLS.partition("  wall hanging:")[0], "utf-8")
        git("init", "-q", "-b", "main")
        commit()
        (folder / "pattern.yaml").write_text(CHANGED, "utf-8")
    return home


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    status = main(["compare", *words])
    told = capsys.readouterr()
    return status, told.out, told.err


def test_a_branch_is_only_a_name(plain: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The comment and the page have the very elements that a branch called main gives them."""
    assert run(capsys, "main", "--html", "plain.html")[0] == 1
    page = elements((plain / "plain.html").read_text("utf-8"))
    comment = elements(MarkdownIt("gfm-like", {"linkify": False}).render(run(capsys, "main")[1]))
    files = sorted(path.name for path in plain.iterdir())
    taken = 0
    for name in REF_NAMES:
        known = subprocess.run(["git", "update-ref", "--", f"refs/heads/{name}", "HEAD"], capture_output=True)
        if known.returncode != 0:
            continue
        taken += 1
        for word in (f"refs/heads/{name}", *([name] if not name.startswith("-") else ())):
            status, out, err = run(capsys, word, "--html", "plain.html")
            if status == 2:
                # Refused: because it looks like an option, or stands for something else as it is.
                assert word == name and out == "" and err.count("\n") == 1, (name, err)
                continue
            assert status == 1, (name, err)
            assert elements((plain / "plain.html").read_text("utf-8")) == page, name
            assert elements(MarkdownIt("gfm-like", {"linkify": False}).render(out)) == comment, name
            for form in ("--annotations", "--one-line"):
                lines = run(capsys, word, form)[1].splitlines()
                assert all(line.startswith("::") == (form == "--annotations") for line in lines), name
            assert json.loads(run(capsys, word, "--json")[1])["base"].startswith(word), name
    assert taken > 25, "git took hardly any of the names"
    assert sorted(path.name for path in plain.iterdir()) == files, "something was written"


@pytest.mark.parametrize("word", NO_REVISIONS)
def test_what_is_no_revision_is_one_line(plain: Path, capsys: pytest.CaptureFixture[str], word: str) -> None:
    files = sorted(path.name for path in plain.iterdir())
    for words in (["main", "--", word], ["--", word]):
        try:
            status, out, err = run(capsys, *words)
        except SystemExit as ended:
            # Refused by the reader of words, before anything is looked at.
            assert ended.code == 2
            continue
        assert (status, out) == (2, "") and err.count("\n") == 1, err
        assert "Traceback" not in err
    assert sorted(path.name for path in plain.iterdir()) == files
