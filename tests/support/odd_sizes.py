"""Small and large projects of the kinds that no demo pattern shows, for pictures."""

from __future__ import annotations

_HEAD = """format: 1
title: Driftwood
version: "1.0"
units: inches
fabrics:
  fog: {name: Morning Fog over the Outer Marsh and the Bar, colour: "#dfe3e0"}
  sea: {name: Deep Water, colour: "#23465f"}
  lamp: {name: Lamp Glow, colour: "#efc25e"}
  reeds: {name: Reeds, colour: "#a8a16b", directional: yes}
"""

ROTARY = (
    _HEAD
    + """
blocks:
  buoy:
    finished size: 8
    method: rotary
    unit method: two at a time
    units:
      - [half-square sea/fog, half-square fog/sea]
      - [half-square fog/sea, half-square sea/fog]
  pennant:
    finished size: 2
    method: rotary
    units: [[half-square sea/fog]]
  small:
    finished size: 3
    method: rotary
    unit method: two at a time
    units:
      - [half-square sea/lamp, square fog]
      - [square fog, half-square fog/sea]
  geese:
    finished size: 8 x 4
    method: rotary
    unit method: four at a time
    units:
      - [geese fog/sea, geese fog/sea]
      - [half-square sea/fog, half-square fog/sea, half-square sea/fog, half-square fog/sea]
arrangement: {rows: 2, columns: 2, block: small}
borders:
  shore: {width: 2, fabric: reeds}
finish:
  kind: bound
  backing: {fabric: fog}
  binding: {fabric: lamp}
sizes:
  tiny partial:
    borders: {shore: {corners: partial seam, width: 1}}
    hanging: {kind: sleeve, fabric: fog, rule: home}
  huge partial:
    arrangement: {rows: 12, columns: 10, block: buoy}
    borders: {shore: {corners: partial seam, width: 4}}
    hanging: {kind: sleeve, fabric: fog}
  tiny corner:
    borders: {shore: {corners: cornerstones, corner fabric: lamp, width: 1}}
    finish: {corners: rounded, radius: 1 1/2, binding: {grain: bias}}
    hanging: {kind: rings, number: 1}
  tiny knife:
    arrangement: {rows: 1, columns: 1}
    borders: {shore: {corners: mitred, width: 1}}
    finish: {kind: knife edge}
    hanging: {kind: loops, fabric: sea, number: 1, cut width: 2, cut length: 4}
  huge knife:
    fit: king
    arrangement: {block: buoy}
    finish: {kind: knife edge}
    hanging: {kind: rings, number: 5}
  huge faced:
    arrangement: {rows: 12, columns: 10, block: buoy}
    borders: {shore: {pieced: {block: pennant, spacer: fog}, corner fabric: lamp}}
    finish: {kind: faced, facing: {fabric: sea}}
    hanging: {kind: loops, fabric: sea, number: 9}
  tiny cushion:
    borders: {shore: {pieced: {block: pennant, spacer: fog}, corner fabric: lamp}}
    finish: {kind: envelope back, panels: {fabric: sea}}
  tiny on point:
    arrangement:
      setting: on point
      rows: 1
      columns: 2
      setting triangles: {fabric: fog, corner fabric: lamp}
  huge on point:
    arrangement:
      setting: on point
      block: buoy
      rows: 8
      columns: 7
      alternate: lamp
      setting triangles: {fabric: fog, corner fabric: lamp, float: 1}
  geese:
    arrangement: {block: geese}
"""
)
"""Cut with ruler and rotary cutter."""

FOUNDATION = (
    _HEAD
    + """
blocks:
  boat:
    finished size: 3 x 3
    method: foundation
    grid: 12 x 12
    pieces:
      - fog: 0,0 5,0 1,7 0,7
      - lamp: 5,0 6,0 6,7 1,7
      - reeds: 6,0 7,0 11,7 6,7
      - fog: 7,0 12,0 12,7 11,7
      - fog: 0,7 1,7 3,10 0,10
      - sea: 1,7 11,7 9,10 3,10
      - fog: 11,7 12,7 12,10 9,10
      - sea: 0,10 12,10 12,12 0,12
arrangement: {rows: 2, columns: 2, block: boat}
finish:
  kind: turned
  backing: {fabric: sea}
sizes:
  coaster: {}
  king:
    arrangement: {rows: 30, columns: 28}
    finish: {kind: bound, binding: {fabric: sea}, backing: {overage: 4}, batting overage: 3}
"""
)
"""Sewn on paper."""
