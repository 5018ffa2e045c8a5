"""A pattern whose folder was renamed is the same pattern: its older versions count, and a review compares the two."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from evenseam.cli import main
from evenseam.publish.cache import Cache
from evenseam.publish.older_versions import read_older, with_older_versions
from evenseam.publish.sources import find_patterns
from support.repository import commit, git
from support.reviewed import edited

CHANGES = '  - {version: "1.0", date: 2026-03-02, what: First published.}\n'
NEWER = '  - {version: "1.1", date: 2026-05-04, what: The border of the mug rug was too narrow.}\n'
FIRST = edited()
SECOND = edited(
    ('version: "1.0"\ndesigner', 'version: "1.1"\ndesigner'),
    (CHANGES, NEWER + CHANGES),
    ("outer border: {width: 1}", "outer border: {width: 1 1/2}"),
)


@pytest.fixture
def patterns(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of patterns, with signs in its name that git could take for a rule, in a new repository."""
    monkeypatch.chdir(tmp_path)
    git("init", "-q", "-b", "main")
    folder = tmp_path / "quay [a]*" / "patterns"
    folder.mkdir(parents=True)
    return folder


def write(folder: Path, text: str) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "pattern.yaml").write_text(text, encoding="utf-8")


def found(patterns: Path, slug: str) -> dict[str, str]:
    """Return the first line that tells one version from the other, by version."""
    in_time = with_older_versions(find_patterns(patterns), patterns, Cache(patterns / ".cache"))
    (source,) = (source for source in in_time.sources if source.slug == slug)
    texts = {older.version: read_older(older, source) for older in source.older}
    return {version: text.source.text for version, text in texts.items() if text is not None}


def test_the_text_under_the_old_name_is_the_older_version(patterns: Path) -> None:
    write(patterns / "gulls", FIRST)
    commit()
    git("mv", str(patterns / "gulls"), str(patterns / "two-gulls"))
    write(patterns / "two-gulls", SECOND)
    commit("Rename the gulls, and widen their border")
    assert found(patterns, "two-gulls") == {"1.0": FIRST, "1.1": SECOND}


def test_a_tag_with_the_old_name_counts_and_one_with_the_new_name_counts_more(patterns: Path) -> None:
    tagged = FIRST.replace("First published.", "First shown to friends.")
    write(patterns / "gulls", tagged)
    commit()
    git("tag", "gulls/1.0")
    write(patterns / "gulls", FIRST)
    commit()
    git("mv", str(patterns / "gulls"), str(patterns / "two-gulls"))
    write(patterns / "two-gulls", SECOND)
    commit()
    assert found(patterns, "two-gulls")["1.0"] == tagged
    git("tag", "two-gulls/1.0")
    assert found(patterns, "two-gulls")["1.0"] == SECOND


def test_a_new_pattern_under_the_old_name_has_its_own_history(patterns: Path) -> None:
    write(patterns / "gulls", FIRST)
    commit()
    git("mv", str(patterns / "gulls"), str(patterns / "two-gulls"))
    write(patterns / "two-gulls", SECOND)
    commit()
    other = SECOND.replace('"1.1"', '"2.1"').replace('"1.0"', '"2.0"')
    write(patterns / "gulls", other)
    commit()
    assert found(patterns, "two-gulls") == {"1.0": FIRST, "1.1": SECOND}
    assert found(patterns, "gulls") == {"2.1": other}


def test_a_folder_of_quite_another_text_is_no_new_name(patterns: Path) -> None:
    write(patterns / "gulls", "title: Something short\nversion: '1.0'\n")
    commit()
    git("rm", "-q", str(patterns / "gulls" / "pattern.yaml"))
    write(patterns / "two-gulls", SECOND)
    commit()
    assert found(patterns, "two-gulls") == {"1.1": SECOND}


def test_a_review_compares_both_names(patterns: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(patterns / "gulls", FIRST)
    commit()
    git("mv", str(patterns / "gulls"), str(patterns / "two-gulls"))
    commit()
    assert main(["compare", "HEAD~1", "HEAD", "--patterns", str(patterns)]) == 1
    told = capsys.readouterr().out
    assert "its folder is now called two-gulls (it was gulls)" in told and "Unchanged in every figure" in told
    write(patterns / "two-gulls", SECOND)
    assert main(["compare", "HEAD~1", "--patterns", str(patterns), "--json"]) == 1
    (pattern,) = json.loads(capsys.readouterr().out)["patterns"]
    kinds = {change["change"] for change in pattern["changes"]}
    assert "renamed" in kinds and "remeasured" in kinds, kinds


def test_two_patterns_of_one_title_are_not_taken_for_each_other(
    patterns: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(patterns / "gulls", FIRST)
    write(patterns / "more-gulls", FIRST)
    commit()
    git("rm", "-qr", str(patterns / "gulls"), str(patterns / "more-gulls"))
    write(patterns / "two-gulls", FIRST)
    commit()
    assert main(["compare", "HEAD~1", "HEAD", "--patterns", str(patterns)]) == 1
    assert "is now called" not in capsys.readouterr().out
