"""A pattern to start from: small, complete, and explained line by line."""

from __future__ import annotations

import json

_STARTER = """\
# A pattern file. Change what you like and look at the page; every mistake is shown with its line and a way out.
# Lengths are written 2, 2.5, 5/8 or 1 1/4, in the unit named under `units`. Lines that begin with # are remarks.
format: 1
title: @TITLE@
summary: A little skiff running before the wind, as a mug rug or as a row of three for the wall.
version: "1.0"
skill level: confident beginner
licence: CC BY 4.0
changes:                        # newest first; raise the version whenever a figure changes
  - {version: "1.0", date: 2026-01-01, what: First published.}

units: inches                   # what you draft in: inches or centimetres
editions: [inches, centimetres] # every size is published in both; leave this out for one
seam allowance: 1/4
usable width: 42                # of the cloth, between the selvages

# Each fabric has a short word, used in the rest of this file.
fabrics:
  sky: {name: Pale Morning, colour: "#cfe0e6", role: background}
  canvas: {name: Old Canvas, colour: "#f1e6cf", role: the larger sail}
  rust: {name: Rust, colour: "#b4552f", role: the smaller sail and the binding}
  tar: {name: Tarred Plank, colour: "#43382f", role: the hull}
  sea: {name: Green Water, colour: "#3f7f7a", role: water and backing}

# A block is drawn on a grid: each piece is a fabric and its corners, across,down from the top left corner.
#   0,0 +-----+ 8,0
#       |     |
#   0,8 +-----+ 8,8
# The pieces must fill the block and have no corner that bends inward.
blocks:
  skiff:
    finished size: 8 x 8        # sewn into the quilt, without seam allowances
    grid: 8 x 8
    method: foundation          # sewn on printed paper; or rotary, with pieces cut to size
    pieces:
      - sky: 0,0 4,0 1,5 0,5
      - canvas: 4,0 4,5 1,5
      - rust: 4,0 7,5 4,5
      - sky: 4,0 8,0 8,5 7,5
      - tar: 0,5 8,5 6,7 2,7
      - sea: 0,5 2,7 0,7
      - sea: 8,5 8,7 6,7
      - sea: 0,7 8,7 8,8 0,8

arrangement: {rows: 1, columns: 1, block: skiff}

borders:                        # the innermost first; each under a name of its own
  border: {width: 1, fabric: sea}

finish:
  kind: turned                  # or bound
  backing: {fabric: sea}

introduction: |
  Figures are never typed here by hand: name them, and they stay right in every size.
  This one finishes {{ finished_width }} by {{ finished_height }}.

# Everything above holds for every size. A size says only what differs; the word none takes something away.
sizes:
  mug rug:
    use: mug rug

  wall hanging:
    use: wall hanging
    arrangement:
      columns: 3
      sashing: {width: 1, fabric: sky}
    borders:
      border: {width: 2}
    finish:
      kind: bound
      binding: {fabric: rust}
    hanging: {kind: sleeve, fabric: sea}
"""


def starter(name: str) -> str:
    """Return the text of a pattern file to start from, with `name` as its title.

    >>> print(starter("Low Tide").splitlines()[3])
    title: "Low Tide"
    """
    return _STARTER.replace("@TITLE@", json.dumps(name, ensure_ascii=False))
