"""Versions of a small pattern for tests of the review: two gulls, in three sizes."""

from __future__ import annotations

from evenseam.problems import SourceText
from evenseam.publish.checked import check_pattern
from evenseam.publish.sources import PatternSource
from evenseam.review import Change, Version, compare_patterns, review_pattern, write_one_line
from evenseam.review.report import Review

GULLS = """\
format: 1
title: Two Gulls
summary: Gulls on the sea wall.
version: "1.0"
designer: Saltmarsh Workshop
changes:
  - {version: "1.0", date: 2026-03-02, what: First published.}
units: inches
seam allowance: 1/4
fabrics:
  fog: {name: Fog, colour: "#dfe3e0", role: the air}
  sea: {name: Deep Sea, colour: "#1f4a63"}
  gull: {name: Gull White, colour: "#f6f3ea"}
blocks:
  gull:
    name: Gull
    finished size: 6 x 6
    grid: 6 x 6
    pieces:
      - fog: 0,0 6,0 0,6
      - gull: 6,0 6,6 0,6
arrangement: {rows: 1, columns: 2, block: gull}
borders:
  inner border: {width: 1, fabric: fog, order: long sides first}
  outer border: {width: 2, fabric: sea, order: top and bottom first}
finish: {kind: turned, backing: {fabric: sea}}
introduction: Two gulls look out to sea.
sizes:
  mug rug:
    arrangement: {columns: 1}
    borders:
      inner border: none
      outer border: {width: 1}
  wall hanging:
    use: wall
    hanging: {kind: corner pockets, fabric: sea}
    words:
      outer-border-sides: Take your time.
  table runner:
    arrangement: {columns: 4, sashing: {width: 1, fabric: fog, around: yes}}
    finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: sea}}
"""
"""Line 24 has the inner border, line 25 the outer one."""


def version(text: str, slug: str = "two-gulls") -> Version:
    """Read and compute a pattern file as `evenseam compare` does."""
    checked = check_pattern(PatternSource(slug, SourceText(f"patterns/{slug}/pattern.yaml", text), {}))
    return Version(checked.slug, checked.pattern, checked.sheets, checked.problems)


def edited(*edits: tuple[str, str]) -> str:
    """Return the gulls with stretches replaced; each must be there exactly once."""
    text = GULLS
    for old, new in edits:
        assert text.count(old) == 1, f"{old!r} is there {text.count(old)} times"
        text = text.replace(old, new)
    return text


def changes(old: str, new: str) -> tuple[Change, ...]:
    """Compare two texts."""
    return compare_patterns(version(old), version(new))


def review(old: str, new: str) -> Review:
    """Review one text against another."""
    return Review("main", "working tree", (review_pattern(version(old), version(new)),))


def one_line(old: str, new: str) -> str:
    """Return the review of two texts in one line."""
    return write_one_line(review(old, new))
