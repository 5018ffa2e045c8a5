"""Pattern files as texts, for tests of the reader."""

from __future__ import annotations

from evenseam.pattern import Pattern
from evenseam.problems import Outcome, SourceText, show_problems
from evenseam.reading import read_pattern

FULL = """\
# A pattern that uses every key of the format.
format: 1
title: Harbour Lanterns
summary: Three lanterns on a quiet quay.
designer: Saltmarsh Workshop
version: "1.1"
skill level: confident beginner
licence: CC BY 4.0
changes:                       # newest first
  - {version: "1.1", date: 2026-05-02, what: "The sleeve is cut longer."}
  - {version: "1.0", date: 2026-03-02, what: First published.}
units: inches
editions:
  inches:
  centimetres: {seam allowance: 0.6, borders: {inner border: {width: 2.5}}}
seam allowance: 1/4
usable width: 42
patch margin: 3/8
fabrics:
  sea: {name: Deep Sea, colour: "#23465F", directional: no, role: sky and binding}
  fog: {colour: "#d9dcd6"}
  lamp: {name: Lamp Glow, colour: "#e9b44c"}
  reed:
    name: Reed Print
    colour: '#7a8b69'
    directional: yes
batting: {name: Wool batting}
blocks:
  lantern:
    name: Storm Lantern
    finished size: 6 x 9
    method: foundation
    grid: 12 x 18
    pieces:
      - lamp: 3,6 9,6 9,14 3,14
      - {fabric: sea, corners: "3,6 6,0 9,6", name: Roof}
      - fog: 0,0 6,0 3,6 0,6
      - fog: 6,0 12,0 12,6 9,6
      - fog: 0,6 3,6 3,14 0,14
      - fog: 9,6 12,6 12,14 9,14
      - sea: 0,14 12,14 12,18 0,18
  gull:
    finished size: 6 x 9
    method: rotary
    grid: 2 x 3
    outline: 0,0 2,0 2,3 0,3
    pieces:
      - fog: 0,0 2,0 2,1.5 0,3/2
      - sea: 0,3/2 2,1-1/2 2,3 0,3
arrangement:
  rows: 1
  columns: 3
  block: lantern
  sashing: {width: 1, fabric: fog, around: yes, cornerstones: lamp}
borders:
  inner border: {width: 1, fabric: fog, order: long sides first, corners: cornerstones, corner fabric: lamp}
  outer border: {width: 2 1/2, fabric: reed, order: top and bottom first, join: straight, strips: along}
finish:
  kind: bound
  backing: {fabric: sea, overage: 2, seam allowance: 5/8}
  batting overage: 1 1/2
  binding: {fabric: sea, strip width: 2 1/2, extra length: 12, grain: bias, join: straight}
hanging: {kind: sleeve, fabric: sea, cut depth: 9, cut extra: -1, hem: 1/2, drop: 1}
introduction: |
  Hang them by a window.

  They finish {{ finished_width }} wide.
words:
  outer-border-sides: "Take your time."
sizes:
  mug rug:
    name: Lantern mug rug
    use: mug rug
    summary: One lantern for one cup.
    arrangement: {columns: 1}
    borders: {outer border: none}
    finish: {kind: turned, opening: 3, topstitch: 1/4}
    hanging: none
    words: {outer-border-sides: none}
  wall hanging: {use: wall hanging}
  lap quilt:
    arrangement:
      layout:
        - [lantern, gull, lantern turned 180]
        - [gull mirrored, lantern, gull]
    borders: {third border: {width: 1, fabric: lamp}}
    hanging: {kind: corner pockets, fabric: fog, square: 5}
claims:
  wall hanging: {finished width: 26, finished height: 15 1/2 in, sea strips: 3}
"""

SMALL = """\
format: 1
title: Sample
fabrics:
  sea: {colour: "#23465f"}
  fog: {colour: "#d9dcd6"}
blocks:
  buoy:
    finished size: 4 x 4
    grid: 4 x 4
    pieces:
      - sea: 0,0 4,0 4,4
      - fog: 0,0 4,4 0,4
arrangement: {rows: 1, columns: 2, block: buoy}
finish: {kind: turned, backing: {fabric: sea}}
sizes:
  mug rug: {}
"""


def read(text: str) -> Outcome[Pattern]:
    """Read a text as the pattern file of the pattern "sample"."""
    return read_pattern("sample", SourceText("pattern.yaml", text))


def pattern_from(text: str) -> Pattern:
    """Read a text that has no error, or fail with its problems in full."""
    outcome = read(text)
    assert outcome.value is not None, show_problems(
        outcome.problems, {"pattern.yaml": SourceText("pattern.yaml", text)}
    )
    return outcome.value


def changed(text: str, old: str, new: str) -> str:
    """Return a text with one stretch of it replaced; it must be there exactly once."""
    assert text.count(old) == 1, f"{old!r} is there {text.count(old)} times"
    return text.replace(old, new)
