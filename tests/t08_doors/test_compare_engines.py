"""`evenseam compare` when the publisher itself differs: said always, told apart when asked, and nothing strange is run."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from evenseam.cli import main
from support.repository import commit, git
from support.reviewed import GULLS

ENGINE = Path(__file__).parents[2] / "plugin" / "evenseam"
ONE_SIZE = GULLS.partition("  wall hanging:")[0]
OTHERWISE = """

_as_it_is = sheet_as_json


def sheet_as_json(sheet):
    data = _as_it_is(sheet)
    {what}
    return data
"""


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a repository with a pattern and the very publisher that runs the tests, not yet committed."""
    monkeypatch.chdir(tmp_path)
    git("init", "-q", "-b", "main")
    shutil.copytree(ENGINE, tmp_path / "plugin" / "evenseam", ignore=shutil.ignore_patterns("__pycache__"))
    (tmp_path / "patterns" / "two-gulls").mkdir(parents=True)
    (tmp_path / "patterns" / "two-gulls" / "pattern.yaml").write_text(ONE_SIZE, "utf-8")
    return tmp_path


def commit_older(home: Path, what: str, *, file: str = "sheet/as_json.py") -> None:
    """Commit a publisher that does something otherwise, and put the present one back."""
    path = home / "plugin" / "evenseam" / file
    present = path.read_text("utf-8")
    path.write_text(present + OTHERWISE.format(what=what), "utf-8")
    commit()
    path.write_text(present, "utf-8")


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    status = main(["compare", *words])
    told = capsys.readouterr()
    return status, told.out, told.err


def test_nothing_is_said_of_the_same_publisher(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    commit()
    status, out, _ = run(capsys, "main", "--engines")
    assert status == 0 and "publisher" not in out
    assert json.loads(run(capsys, "main", "--json")[1])["publisher"] is None


def test_another_publisher_is_always_named(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    commit_older(home, 'data["cuts"][0]["width"] = "7 7/8"')
    status, out, _ = run(capsys, "main")
    assert status == 0 and "No file of any pattern differs" in out
    assert (
        "The publisher itself differs between the two sides. Both were computed with the one of the working tree" in out
    )


def test_what_the_publisher_changes_is_told_apart(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    commit_older(home, 'data["finished"]["width"] = "7 7/8"')
    pattern = home / "patterns" / "two-gulls" / "pattern.yaml"
    pattern.write_text(ONE_SIZE.replace("name: Fog,", "name: Haze,"), "utf-8")
    status, out, _ = run(capsys, "main", "--engines", "--html", "review.html", "--fail-on", "cutting")
    assert status == 1
    assert "1 pattern changes (what is cut or sewn); the publisher computes otherwise" in out
    assert "- Two Gulls, Mug rug in inches:\n  - Finished size 7 7/8 × 8 in → 8 × 8 in" in out
    # What the pattern's own file changes has nothing to do with it.
    assert "**Two Gulls**: only words, names and colours change, no figure." in out
    assert "Finished size 7 7/8 × 8 in → 8 × 8 in" in (home / "review.html").read_text("utf-8")
    data = json.loads(run(capsys, "main", "--engines", "--json")[1])["publisher"]
    assert data["changes"][0]["words"] == ["finished size 7 7/8 × 8 in → 8 × 8 in"] and data["compared"] == 1
    assert "publisher: Two Gulls, Mug rug in inches: finished size" in run(capsys, "main", "--engines", "--one-line")[1]


def test_every_kind_of_figure_is_compared(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    what = (
        'data["cuts"][0]["count"] = 77; gone = data["cuts"].pop(); data["cuts"].append({**gone, "id": "sail"}); '
        'data["fabrics"][0]["buy"] = "9 yd"; data["checkpoints"][0]["width"] = "1"; data["steps"].pop(); '
        'data["blocks"][0]["sections"] = {}'
    )
    commit_older(home, what)
    data = json.loads(run(capsys, "main", "--engines", "--json")[1])["publisher"]
    told = "; ".join(data["changes"][0]["words"])
    assert "77 of " in told and " is new: " in told and " is gone (it was " in told and "9 yd → " in told
    assert (
        "what it measures after 1 step" in told and "the steps are others" in told and "sewn in another order" in told
    )


def test_a_change_that_computes_the_same_is_none(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    commit_older(home, "pass")
    status, out, _ = run(capsys, "main", "--engines")
    assert status == 0 and "both compute the same figures (1 sheet compared)" in out


def test_an_older_publisher_is_told_no_secret(
    home: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("HARBOUR_TOKEN", "the-key-to-the-harbour")
    commit_older(home, 'import os; data["finished"]["width"] = str("HARBOUR_TOKEN" in os.environ)')
    assert "False × 8 in → 8 × 8 in" in run(capsys, "main", "--engines")[1]


def test_an_older_publisher_that_fails_is_never_clean(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    commit_older(home, 'raise RuntimeError("adrift")')
    status, out, _ = run(capsys, "main", "--engines", "--fail-on", "cutting")
    assert status == 1 and "could not be computed by the publisher of main: RuntimeError adrift" in out


def test_an_older_publisher_that_cannot_start_is_no_review(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    commit_older(home, "pass", file="cli/__init__.py")
    status, out, err = run(capsys, "main", "--engines")
    assert (status, out) == (2, "") and "the publisher of main cannot be run: " in err


def test_a_repository_of_patterns_alone(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    shutil.rmtree(home / "plugin")
    commit()
    assert run(capsys, "main")[0] == 0
    status, _, err = run(capsys, "main", "--engines")
    assert status == 2 and "main has no publisher of its own" in err


def test_the_publisher_of_a_stranger_is_never_run(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """As in a pull request: the base's publisher runs, and of the other side only texts are read."""
    commit()
    git("checkout", "-q", "-b", "stranger")
    for file in ("__init__.py", "sheet/as_json.py", "cli/__init__.py"):
        path = home / "plugin" / "evenseam" / file
        path.write_text(path.read_text("utf-8") + f"\nopen({str(home / 'ran')!r}, 'w').close()\n", "utf-8")
    commit()
    git("checkout", "-q", "main")
    status, out, _ = run(capsys, "main", "stranger", "--engines")
    assert status == 0 and "what the other one would compute is not known" in out
    assert not (home / "ran").exists()
