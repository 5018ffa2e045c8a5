"""`evenseam compare` on a real git repository: revisions, branches, odd names, what fails, and exit status."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from evenseam.cli import main
from support.repository import commit, git
from support.reviewed import GULLS

NEW_WIDTH = GULLS.replace("outer border: {width: 1}", "outer border: {width: 1 1/2}")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return the folder of one pattern in a repository with one commit."""
    monkeypatch.chdir(tmp_path)
    home = tmp_path / "patterns" / "two-gulls"
    home.mkdir(parents=True)
    (home / "pattern.yaml").write_text(GULLS, "utf-8")
    git("init", "-q", "-b", "main")
    commit()
    return home


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    status = main(["compare", *words])
    told = capsys.readouterr()
    return status, told.out, told.err


def test_nothing_differs(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "main")
    assert status == 0 and "No file of any pattern differs" in out
    status, out, _ = run(capsys, "main", "HEAD", "--one-line")
    assert (status, out) == (0, "no file of any pattern differs\n")
    # Another text that says the same: computed, and the same.
    (folder / "pattern.yaml").write_text(f"# A remark.\n{GULLS}", "utf-8")
    status, out, _ = run(capsys, "main", "--one-line")
    assert (status, out) == (0, "no computed change\n")


def test_the_working_tree_is_compared_as_it_stands(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "pattern.yaml").write_text(NEW_WIDTH, "utf-8")
    status, out, _ = run(capsys, "HEAD", "--one-line")
    assert status == 1
    assert out.startswith("Two Gulls: mug rug: finishes 9 × 9 in instead of 8 × 8 in, ")
    assert "because the outer border is 1/2 in wider (pattern.yaml:33)" in out
    assert git("status", "--porcelain") == "M patterns/two-gulls/pattern.yaml"  # nothing was checked out


def test_two_revisions_of_a_branch_with_a_long_name(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    git("checkout", "-q", "-b", "feature/wider-border_ünïcode")
    (folder / "pattern.yaml").write_text(NEW_WIDTH, "utf-8")
    commit()
    (folder / "pattern.yaml").write_text("not: [a pattern", "utf-8")  # the working tree does not matter here
    status, out, _ = run(capsys, "main", "feature/wider-border_ünïcode", "--json")
    data = json.loads(out)
    assert status == 1 and not data["is_same"]
    finished = [c for c in data["patterns"][0]["changes"] if c["kind"] == "finished" and c["size"] == "mug-rug"]
    assert [figure["value"] for figure in finished[0]["old"]] == ["8", "8"]
    assert [figure["value"] for figure in finished[0]["new"]] == ["9", "9"]
    assert finished[0]["because"][0]["place"]["line"] == 33
    back = json.loads(run(capsys, "feature/wider-border_ünïcode", "main", "--json")[1])
    assert len(back["patterns"][0]["changes"]) == len(data["patterns"][0]["changes"])


@pytest.mark.parametrize(
    "name",
    ["--upload-pack=touch owned", "-h", "--output=owned", "no-such-branch", "main..HEAD", "HEAD^{tree}", "main:patterns",
     "$(touch owned)", "; touch owned", "", "main\n--all", "\u202emain", "HEAD^!", "@{-1}", "a" * 5000],
)  # fmt: skip
def test_a_name_that_is_no_revision_is_one_line_and_status_2(
    folder: Path, name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    # After "--" a word is a name to the command line, whatever it begins with.
    status, out, err = run(capsys, "--", name)
    assert status == 2 and out == ""
    assert err.startswith("evenseam: ") and err.count("\n") == 1
    assert not list(folder.parents[1].glob("owned*"))
    status, out, err = run(capsys, "--", "main", name)
    assert status == 2 and err.count("\n") == 1


def test_a_branch_that_looks_like_an_option_is_refused_and_runs_nothing(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    git("update-ref", "refs/heads/--help", "HEAD")
    status, _, err = run(capsys, "--", "--help")
    assert status == 2 and "no name of a revision" in err
    status, _, _ = run(capsys, "refs/heads/--help")  # by its whole name it is a name like any other
    assert status == 0


def test_outside_a_repository(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    alone = tmp_path / "alone"
    alone.mkdir()
    monkeypatch.chdir(alone)
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    status, _, err = run(capsys, "main")
    assert status == 2 and err.count("\n") == 1


def test_git_is_not_installed(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("PATH", str(folder))
    status, _, err = run(capsys, "main")
    assert status == 2 and "git is not installed" in err


def test_a_head_that_cannot_be_computed_is_never_clean(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "pattern.yaml").write_text(GULLS.replace("width: 2,", "width: two,"), "utf-8")
    status, out, _ = run(capsys, "main")
    assert status == 1
    assert "cannot be computed" in out and "pattern.yaml:25" in out and "No computed change" not in out
    status, out, _ = run(capsys, "main", "--one-line")
    assert status == 1 and "CANNOT BE COMPUTED" in out
    status, out, _ = run(capsys, "main", "--annotations")
    assert status == 1 and out.startswith("::error file=patterns/two-gulls/pattern.yaml,line=25,")
    data = json.loads(run(capsys, "main", "--json")[1])
    (failure,) = data["patterns"][0]["cannot_be_computed"]
    assert failure["side"] == "head" and failure["problems"][0]["place"]["line"] == 25 and not data["is_same"]


def test_a_base_that_cannot_be_computed_is_never_clean(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "pattern.yaml").write_text("title: [", "utf-8")
    commit()
    (folder / "pattern.yaml").write_text(GULLS, "utf-8")
    status, out, _ = run(capsys, "HEAD")
    assert status == 1 and "could not be computed before" in out and "No computed change" not in out


def test_one_size_that_cannot_be_computed_leaves_the_others_compared(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    wide = GULLS.replace("arrangement: {columns: 4, sashing", "arrangement: {columns: 40, sashing")
    (folder / "pattern.yaml").write_text(
        wide.replace("outer border: {width: 1}", "outer border: {width: 2 1/2}"), "utf-8"
    )
    status, out, _ = run(capsys, "main")
    assert status == 1
    assert "The table runner in inches **cannot be computed as it is now**" in out
    assert "mug rug:\n    - finishes 11 × 11 in instead of 8 × 8 in" in out
    assert "Unchanged in every figure: wall hanging." in out


def test_patterns_come_and_go(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    other = folder.parent / "more gulls; $(x) ünï"
    other.mkdir()
    (other / "pattern.yaml").write_text(GULLS.replace("Two Gulls", "More *Gulls* <b>"), "utf-8")
    status, out, _ = run(capsys, "main")
    assert status == 1 and "the pattern More \\*Gulls\\* \\<b\\> is new" in out
    assert "1 other pattern has the same files on both sides." in out
    commit()
    for file in sorted(other.iterdir()):
        file.unlink()
    status, out, _ = run(capsys, "HEAD", "--one-line")
    assert status == 1 and "is gone" in out


def test_odd_files_in_the_store(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Links, submodules, deep folders, other files and names with line ends are in the store; none is followed."""
    (folder / "notes\nwith a line end.txt").write_text("x")
    (folder / "deep").mkdir()
    (folder / "deep" / "pattern.yaml").write_text("title: [")
    linked = folder.parent / "linked"
    linked.mkdir()
    (linked / "pattern.yaml").symlink_to("/etc/hostname")
    latin = folder.parent / "latin"
    latin.mkdir()
    (latin / "pattern.yaml").write_bytes("format: 1\ntitle: M\xf6we\n".encode("latin-1"))
    large = folder.parent / "large"
    large.mkdir()
    (large / "pattern.yaml").write_text("#" * 1_000_001)
    commit()
    git("update-index", "--add", "--cacheinfo", f"160000,{git('rev-parse', 'HEAD')},patterns/module")
    git("commit", "-q", "-m", "A module")
    status, out, _ = run(capsys, "HEAD~2", "HEAD", "--json")
    data = json.loads(out)
    assert status == 1
    codes = {
        pattern["slug"]: [p["code"] for f in pattern["cannot_be_computed"] for p in f["problems"]]
        for pattern in data["patterns"]
    }
    assert codes == {"large": ["file-too-large"], "latin": ["file-not-text"], "linked": ["file-outside-folder"]}
    hostname = Path("/etc/hostname")
    assert not hostname.exists() or hostname.read_text().strip() not in out or len(hostname.read_text().strip()) < 4
    assert data["untouched"] == ["two-gulls"]


def test_a_folder_that_was_not_there_before(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    moved = folder.parents[1] / "elsewhere"
    (folder.parent).rename(moved)
    status, out, _ = run(capsys, "main", "--patterns", "elsewhere", "--one-line")
    assert status == 1 and out == "Two Gulls: the pattern Two Gulls is new\n"
    assert run(capsys, "main", "--patterns", "nowhere")[0] == 2


def test_run_in_a_folder_below_the_top(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "pattern.yaml").write_text(NEW_WIDTH, "utf-8")
    monkeypatch.chdir(folder)
    status, out, _ = run(capsys, "main", "--patterns", "..", "--one-line")
    assert status == 1 and "finishes 9 × 9 in instead of 8 × 8 in" in out


def test_a_drawing_is_read_from_the_revision_too(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "note.svg").write_text("<svg xmlns='http://www.w3.org/2000/svg'/>")
    status, out, _ = run(capsys, "main")
    assert status == 0 and "No computed change" in out  # no block uses it: the figures are the same


def test_the_page_needs_nothing_else(folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "pattern.yaml").write_text(NEW_WIDTH, "utf-8")
    status, _, err = run(capsys, "main", "--html", "out/review.html")
    page = (tmp_path / "out" / "review.html").read_text("utf-8")
    assert status == 1 and "out/review.html" in err
    assert page.count("<figure") == 2 and "Before: 8 × 8 in" in page and "After: 9 × 9 in" in page
    assert not re.search(r"<(script|link|img|iframe|object|embed)\b|\bon\w+=|@import|url\(", page)
    assert "default-src 'none'" in page
    first = page
    run(capsys, "main", "--html", "out/review.html")
    assert (tmp_path / "out" / "review.html").read_text("utf-8") == first
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["review.html"]


def test_check_since_holds_published_patterns_to_a_new_version(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    git("tag", "published")
    assert main(["check", "--since", "published"]) == 0
    (folder / "pattern.yaml").write_text(NEW_WIDTH, "utf-8")
    capsys.readouterr()
    assert main(["check"]) == 0
    capsys.readouterr()
    assert main(["check", "--since", "published"]) == 1
    out = capsys.readouterr().out
    assert "error[figures-changed-same-version]" in out
    assert "figures of mug rug differ from those published as version 1.0" in out
    told = NEW_WIDTH.replace('version: "1.0"\n', 'version: "1.1"\n').replace(
        "changes:\n",
        'changes:\n  - {version: "1.1", date: 2026-04-02, what: "The border of the mug rug is wider."}\n',
    )
    (folder / "pattern.yaml").write_text(told, "utf-8")
    assert main(["check", "--since", "published"]) == 0
    assert main(["check", str(folder), "--since", "published"]) == 0
    assert main(["check", "--since=--help"]) == 2
    assert main(["check", "--since", "nothing"]) == 2


TOLD = GULLS.replace('version: "1.0"\nd', 'version: "1.1"\nd').replace(
    "changes:\n", 'changes:\n  - {version: "1.1", date: 2026-04-01, what: Measured anew.}\n'
)
"""A new version, as changed figures ask for one."""
FAIL_ON = {
    "words only": (GULLS.replace("name: Fog,", "name: Haze,"), {"words": 1, "shopping": 0, "cutting": 0}),
    "what is bought": (
        TOLD.replace("units: inches", "units: inches\nusable width: 40"),
        {"words": 1, "shopping": 1, "cutting": 0},
    ),
    "what is cut": (NEW_WIDTH, {"words": 1, "shopping": 1, "cutting": 1}),
    "a rule broken": (GULLS.replace('version: "1.0"\nd', 'version: "0.9"\nd'), {"cutting": 1}),
    "not to be computed": (GULLS.replace("6 x 6", "0 x 6", 1), {"cutting": 1}),
    "nothing": (GULLS + "# A remark.\n", {"words": 0, "shopping": 0, "cutting": 0}),
}  # fmt: skip


@pytest.mark.parametrize("name", FAIL_ON)
def test_the_exit_status_from_a_weight_on(folder: Path, capsys: pytest.CaptureFixture[str], name: str) -> None:
    """What is lighter is told all the same; what is against the rules or not to be computed never ends with 0."""
    text, expected = FAIL_ON[name]
    (folder / "pattern.yaml").write_text(text, "utf-8")
    for weight, status in expected.items():
        found, out, _ = run(capsys, "main", "--fail-on", weight, "--one-line")
        assert found == status, (weight, out)
        assert out.strip()


def test_a_weight_there_is_none_of_cannot_run(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        run(capsys, "main", "--fail-on", "everything")
    assert ended.value.code == 2
