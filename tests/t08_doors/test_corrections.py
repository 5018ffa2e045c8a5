"""The list of corrections: the author's words, and figures computed from the versions that git keeps."""

from __future__ import annotations

import re
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
from evenseam.cli import main
from evenseam.exact import Unit
from evenseam.publish import git_store, older_versions
from evenseam.publish.cache import Cache
from evenseam.publish.checked import check_pattern
from evenseam.publish.corrections import make_corrections
from evenseam.publish.older_versions import with_older_versions
from evenseam.publish.options import SiteOptions
from evenseam.publish.sheet_handout import make_handout
from evenseam.publish.site import build_site
from evenseam.publish.sources import find_patterns
from evenseam.wording import words_of
from support.paper_reader import body_text
from support.repository import commit, git
from support.reviewed import edited

OPTIONS = SiteOptions(papers=("a4",), has_handouts=False, has_paper_pictures=False, has_author_guide=False)
NOT_ON_RECORD = "is not on record here"
FIRST = '  - {version: "1.0", date: 2026-03-02, what: First published.}\n'
SECOND = '  - {version: "1.1", date: 2026-05-04, what: The border of the mug rug was too narrow.}\n'
THIRD = '  - {version: "1.2", date: 2026-06-08, what: A gull looked the wrong way.}\n'
"""Entries of `changes:`. Inch borders of the mug rug, by version: 1, 1 1/2, 1 1/2."""


def text_of(version: str, *edits: tuple[str, str]) -> str:
    """Return the gulls at a version, told in its list of changes."""
    told = {"1.0": FIRST, "1.1": SECOND + FIRST, "1.2": THIRD + SECOND + FIRST}[version]
    width = "1" if version == "1.0" else "1 1/2"
    return edited(
        ('version: "1.0"\ndesigner', f'version: "{version}"\ndesigner'),
        (FIRST, told),
        ("outer border: {width: 1}", f"outer border: {{width: {width}}}"),
        *edits,
    )


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return the folder of one pattern in a repository that has seen three versions of it."""
    monkeypatch.chdir(tmp_path)
    home = tmp_path / "patterns" / "two-gulls"
    home.mkdir(parents=True)
    git("init", "-q", "-b", "main")
    for version in ("1.0", "1.1", "1.2"):
        write(home, text_of(version))
        commit(f"Version {version}")
    return home


def write(home: Path, text: str) -> None:
    (home / "pattern.yaml").write_text(text, "utf-8")


def overview(patterns: Path = Path("patterns"), cache: str = "cache", language: str = "en") -> tuple[str, str]:
    """Build the site; return the corrections on the pattern's first page, and the note to whoever builds."""
    known = Cache(Path(cache).absolute())
    in_time = with_older_versions(find_patterns(patterns), patterns, known)
    site = build_site(in_time.sources, replace(OPTIONS, language=language), known, processes=1)
    assert not site.problems, site.problems
    page = next(page for page in site.pages if page.path == "patterns/two-gulls/index.md")
    return page.body(has_folders=True).partition('<h2 id="corrections">')[2], in_time.note


def told(page: str, version: str) -> str:
    """Return what stands under a version, without its markup."""
    entry = page.partition(f"Version {version}</strong>")[2].partition("<strong>Version ")[0]
    return re.sub(r"<[^>]+>|\s+", " ", entry)


def figures(page: str, version: str, edition: str = "inches") -> list[str]:
    entry = page.partition(f"Version {version}</strong>")[2].partition("<strong>Version ")[0]
    found = re.search(rf"<strong>Mug rug</strong>, {edition}</p>\s*<ul>(.*?)</ul>", entry)
    return re.findall(r"<li>(.*?)</li>", found[1]) if found else []


def test_figures_are_those_of_the_versions(home: Path) -> None:
    """Worked by hand: a block of 6 with a border on each side, and a seam of 1/4."""
    page, note = overview()
    assert note == ""
    # 6 + 2 × 1 = 8 and 6 + 2 × 1 1/2 = 9; strips are 1 or 1 1/2 and two seams wide.
    found = figures(page, "1.1")
    assert found[0] == "Finished size 8 × 8 in → 9 × 9 in"
    assert "Top and bottom strips of the outer border 1 1/2 in → 2 in wide" in found
    assert "Side strips of the outer border 1 1/2 × 8 1/2 in → 2 × 9 1/2 in" in found
    assert "The border of the mug rug was too narrow." in told(page, "1.1")
    assert "Wall hanging" not in told(page, "1.1")
    assert "No figure differs from version 1.1" in told(page, "1.2")
    assert "record" not in page and "figure" not in told(page, "1.0")


def test_figures_are_told_in_the_language_of_the_site(home: Path) -> None:
    page, _ = overview(language="nl")
    entry = page.partition("Versie 1.1</strong>")[2].partition("<strong>Versie ")[0]
    told = re.sub(r"<[^>]+>|\s+", " ", entry)
    assert "Als je versie 1.0 hebt: wat er verschilt" in told and "Mug rug , inches" in told
    assert "Afgewerkte maat 8 × 8 in → 9 × 9 in" in told
    assert "Bovenste en onderste stroken van outer border 1 1/2 in → 2 in breed" in told
    assert not re.search(r"\b(?:the|of|finished|strips|size|buy|step)\b", told.partition("narrow.")[2])


def test_what_stands_in_the_folder_is_the_newest(home: Path) -> None:
    """A file that is not yet committed is what is published, and is held against what was committed."""
    fourth = '  - {version: "2.0", date: 2026-08-01, what: Wider still.}\n'
    text = text_of("1.2", (THIRD, fourth + THIRD))
    write(home, text.replace('version: "1.2"\nd', 'version: "2.0"\nd').replace("{width: 1 1/2}", "{width: 2 1/2}"))
    page, _ = overview()
    assert figures(page, "2.0")[0] == "Finished size 9 × 9 in → 11 × 11 in"
    assert figures(page, "1.1")[0] == "Finished size 8 × 8 in → 9 × 9 in"


def test_the_last_commit_of_a_version_counts(home: Path) -> None:
    """What makers have of a version is what it said last; what a branch held before it was merged nobody has."""
    write(home, text_of("1.2", ("outer border: {width: 2,", "outer border: {width: 3,")))
    commit("Widen the other border under the old number")
    git("checkout", "-q", "-b", "wider")
    fourth = '  - {version: "2.0", date: 2026-08-01, what: Back again.}\n'
    write(home, text_of("1.2", ("outer border: {width: 2,", "outer border: {width: 5,")))
    commit("Try something")
    text = text_of("1.2", (THIRD, fourth + THIRD)).replace('version: "1.2"\nd', 'version: "2.0"\nd')
    write(home, text)
    commit("Version 2.0")
    git("checkout", "-q", "main")
    git("merge", "-q", "--no-ff", "-m", "Take it", "wider")
    page, _ = overview()
    # The wall hanging: 14 × 8 with its inner border; 14 + 2 × 3 = 20 and 14 + 2 × 2 = 18 are what was on main.
    assert "Finished size 20 × 14 in → 18 × 12 in" in page
    assert "24 ×" not in page


def test_a_tag_says_what_was_published(home: Path) -> None:
    first = git("rev-list", "--max-parents=0", "HEAD")
    git("checkout", "-q", "-b", "older", first)
    write(home, text_of("1.0", ("outer border: {width: 2,", "outer border: {width: 4,")))
    commit("What was printed")
    git("tag", "-a", "-m", "As printed", "two-gulls/1.0")
    git("checkout", "-q", "main")
    page, _ = overview()
    assert "Finished size 22 × 16 in → 18 × 12 in" in page


def test_the_same_commits_give_the_same_bytes(home: Path, tmp_path: Path) -> None:
    page, _ = overview()
    assert overview(cache="other")[0] == page
    # Elsewhere, from a clone; and after a commit that is about something else.
    git("clone", "-q", str(tmp_path), str(tmp_path / "clone"))
    assert overview(Path("clone/patterns"), "third")[0] == page
    (tmp_path / "README").write_text("About something else.\n")
    commit("Write about something else")
    assert overview()[0] == page


def test_a_folder_without_history_says_so(home: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    page, note = overview()
    git("archive", "-o", "all.tar", "HEAD")
    (tmp_path / "unpacked").mkdir()
    subprocess.run(["tar", "xf", "all.tar", "-C", "unpacked"], check=True)
    # The folder must not be found to be part of the repository round it.
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    page, note = overview(Path("unpacked/patterns"))
    assert note == "the changed figures of 1 pattern are not listed under corrections: there is no git history here"
    assert f"Version 1.1 {NOT_ON_RECORD}" in told(page, "1.2") and f"Version 1.0 {NOT_ON_RECORD}" in told(page, "1.1")
    assert "The border of the mug rug was too narrow." in page and "→" not in page


def test_a_clone_cut_short_says_so(home: Path, tmp_path: Path) -> None:
    git("clone", "-q", "--depth", "1", f"file://{tmp_path}", str(tmp_path / "short"))
    page, note = overview(Path("short/patterns"))
    assert "git fetch --unshallow" in note
    assert NOT_ON_RECORD in told(page, "1.2") and "→" not in page
    git("fetch", "-q", "--unshallow", folder=tmp_path / "short")
    page, note = overview(Path("short/patterns"))
    assert note == "" and figures(page, "1.1")


def test_without_git_the_words_are_told(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "/nowhere")
    page, note = overview()
    assert "git is not installed" in note and NOT_ON_RECORD in page


def test_a_folder_of_somebody_else_says_so(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # Git's own switch for its tests: as if the folder were another user's.
    monkeypatch.setenv("GIT_TEST_ASSUME_DIFFERENT_OWNER", "1")
    monkeypatch.setenv("HOME", str(home))
    page, note = overview()
    assert "safe.directory" in note and NOT_ON_RECORD in page


def test_a_repository_without_a_commit(home: Path, tmp_path: Path) -> None:
    (tmp_path / ".git").rename(tmp_path / "was-git")
    git("init", "-q")
    page, note = overview()
    assert "no commit yet" in note and NOT_ON_RECORD in page


BROKEN = {
    "not to be read": lambda text: text.replace("finish: {kind: turned, backing: {fabric: sea}}\nintro", "finish: [\nintro"),
    "no size of it works": lambda text: text.replace("finished size: 6 x 6", "finished size: 0 x 0"),
    "of another version than it seems": lambda text: text.replace(
        'version: "1.0"\nd', 'summary:\n  |\nversion: "1.0"\nd'
    ),
    "no text": lambda text: text.encode() + b"\xff\xfe",
}  # fmt: skip


@pytest.mark.parametrize("name", BROKEN)
def test_an_older_text_that_cannot_be_read_stops_nothing(home: Path, name: str) -> None:
    broken = BROKEN[name](text_of("1.0"))
    (home / "pattern.yaml").write_bytes(broken if isinstance(broken, bytes) else broken.encode())
    commit("Break it")
    write(home, text_of("1.1"))
    commit("Put it right")
    page, _ = overview()
    assert f"Version 1.0 {NOT_ON_RECORD}" in told(page, "1.1"), page


def test_an_older_text_with_an_error_in_words_has_its_figures(home: Path) -> None:
    write(
        home,
        text_of(
            "1.0",
            ("    arrangement: {columns: 1}\n", "    arrangement: {columns: 1}\n    introduction: '{{ nothing }}'\n"),
        ),
    )
    commit("Name a figure there is none of")
    write(home, text_of("1.1"))
    commit("Put it right")
    assert figures(overview()[0], "1.1")[0] == "Finished size 8 × 8 in → 9 × 9 in"


def test_an_older_text_is_escaped(home: Path) -> None:
    named = "sea: {name: '<script>alert(1)</script>', "
    write(home, text_of("1.0", ("sea: {name: Deep Sea, ", named)))
    commit("Name a fabric")
    text = text_of("1.1", ("sea: {name: Deep Sea, ", "tar: {name: Tar, colour: '#111111'}\n  sea: {name: Deep Sea, "))
    write(home, text.replace("backing: {fabric: sea}}\nintro", "backing: {fabric: tar}}\nintro"))
    page, _ = overview()
    assert "→" in page and "<script>" not in page


def test_git_is_asked_rarely(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Never for patterns of one version; as often for many as for one; hardly at all when nothing is new."""
    asked: list[str] = []
    run = git_store.run_git

    def counted(folder: Path, *words: str, given: bytes = b"") -> subprocess.CompletedProcess[bytes]:
        asked.append(words[0])
        return run(folder, *words, given=given)

    monkeypatch.setattr(older_versions, "run_git", counted)
    monkeypatch.setattr(git_store, "run_git", counted)
    for number in range(20):
        other = home.parent / f"gulls-{number}"
        other.mkdir()
        write(other, text_of("1.1"))
    commit("Many more")
    sources, patterns, cache = find_patterns(home.parent), home.parent, Cache(Path("cache").absolute())
    with_older_versions(sources, patterns, cache)
    assert asked.count("log") == 1 and len(asked) <= 6, asked
    asked.clear()
    found = with_older_versions(sources, patterns, cache)
    assert asked == ["rev-parse", "show-ref"]
    assert {older.version for source in found.sources for older in source.older} == {"1.0", "1.1", "1.2"}
    asked.clear()
    write(home, text_of("1.0"))
    alone = [source for source in find_patterns(home.parent) if source.slug == "two-gulls"]
    with_older_versions(alone, patterns, cache)
    assert asked == []


def test_a_warm_build_compares_nothing(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    page, _ = overview()

    def never(*_: object) -> None:
        raise AssertionError("computed again")

    monkeypatch.setattr("evenseam.publish.corrections.check_pattern", never)
    monkeypatch.setattr("evenseam.publish.corrections.compare_versions", never)
    assert overview()[0] == page


def test_a_handout_lists_the_figures_of_its_size(home: Path) -> None:
    """What the first page lists for a size and edition stands in the handout of that size, line by line."""
    cache = Cache(Path("cache"))
    in_time = with_older_versions(find_patterns(Path("patterns")), Path("patterns"), cache)
    source = next(source for source in in_time.sources if source.slug == "two-gulls")
    checked = check_pattern(source)
    corrections = make_corrections(source, checked, cache, words_of())
    sheets = {sheet.project.size: sheet for sheet in checked.sheets if sheet.project.unit is Unit.INCH}
    found = {}
    for size, sheet in sheets.items():
        outcome = make_handout(sheet, "letter", corrections=corrections)
        assert outcome.value is not None, outcome.problems
        found[size] = body_text(outcome.value).partition("Version and corrections")[2]
    page, _ = overview()
    listed = figures(page, "1.1")
    assert len(listed) > 2
    mug_rug = found["mug-rug"]
    assert "If you have version 1.0: what differs" in mug_rug
    places = [mug_rug.index(line) for line in listed]
    assert places == sorted(places)
    assert "No figure differs from version 1.1" in mug_rug
    assert "Finished size" not in found["wall-hanging"]
    assert "No figure differs from version 1.0" in found["wall-hanging"]


def test_the_command_lists_them_too(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["handout", "two-gulls", "--size", "mug rug", "--output", "rug.pdf"]) == 0
    assert "Finished size 8 × 8 in → 9 × 9 in" in body_text(Path("rug.pdf").read_bytes())
