"""Small edits of one pattern file, and the sentences a reviewer must read of them."""

from __future__ import annotations

import pytest
from support.reviewed import GULLS, changes, edited, one_line

PIECES = "      - fog: 0,0 6,0 0,6\n      - gull: 6,0 6,6 0,6"

ROWS: dict[str, tuple[tuple[tuple[str, str], ...], tuple[str, ...]]] = {
    # One width in one size: figures first, the reason, what stays. Outer border 1 → 1 1/2: each side of the mug rug
    # grows by 1/2 in, so 8 → 9; strips are cut 1/2 in wider for their seam allowances: 2; the backing is 1 in larger.
    "outer border of the mug rug": (
        (("outer border: {width: 1}", "outer border: {width: 1 1/2}"),),
        (
            "mug rug: finishes 9 × 9 in instead of 8 × 8 in",
            "side strips of the outer border 1 1/2 × 8 1/2 in → 2 × 9 1/2 in",
            "top and bottom strips of the outer border 1 1/2 in → 2 in wide",
            "backing and batting 10 1/2 in → 11 1/2 in square",
            "because the outer border is 1/2 in wider (pattern.yaml:33)",
        ),
    ),
    # One width in two sizes: one cause, and what follows in each.
    "inner border": (
        (("inner border: {width: 1,", "inner border: {width: 1 1/4,"),),
        (
            "the inner border is 1/4 in wider (pattern.yaml:24), so wall hanging: finishes 18 1/2 × 12 1/2 in instead "
            "of 18 × 12 in",
            "table runner: finishes 36 × 15 in instead of 35 1/2 × 14 1/2 in",
            "side strips of the outer border 14 1/2 in → 15 in long",
        ),
    ),
    "narrower": (
        (("inner border: {width: 1,", "inner border: {width: 3/4,"),),
        ("the inner border is 1/4 in narrower (pattern.yaml:24), so",),
    ),
    "one more column": (
        (("columns: 2", "columns: 3"),),
        (
            "patches A1 and A2 of the Gull block 2 → 3 pieces",
            "top and bottom strips of the inner border 12 1/2 in → 18 1/2 in long",
            "because there are 3 columns of blocks instead of 2 (pattern.yaml:22); corner pockets unchanged",
        ),
    ),
    "rows and columns": (
        (("rows: 1, columns: 2", "rows: 2, columns: 3"),),
        (
            "there are 2 rows of blocks instead of 1 (pattern.yaml:22), so mug rug: ",
            "because there are 2 rows of 3 blocks instead of 1 row of 2 (pattern.yaml:22)",
        ),
    ),
    "larger block": (
        (("finished size: 6 x 6", "finished size: 8 x 8"),),
        (
            "the Gull block is 2 in wider and 2 in taller (pattern.yaml:17), so mug rug: finishes 10 × 10 in",
            "patch A1 of the Gull block 7 in → 9 in square",
        ),
    ),
    "seam allowance": (
        (("seam allowance: 1/4", "seam allowance: 3/8"),),
        ("the seam allowance is 1/8 in wider (pattern.yaml:9), so mug rug: patch A1 of the Gull block 7 in → 7 1/4 in",),
    ),
    "order of a border": (
        (("order: long sides first", "order: short sides first"),),
        (
            "the inner border is sewn short sides first instead of long sides first (pattern.yaml:24), so",
            "wall hanging: side strips of the inner border 8 1/2 in → 6 1/2 in long, top and bottom strips of the "
            "inner border 12 1/2 in → 14 1/2 in long",
            "“inner border sides” now comes after “join row”",
        ),
    ),
    "fabric of a border": (
        (("{width: 2, fabric: sea,", "{width: 2, fabric: fog,"),),
        (
            "the outer border is cut from Fog instead of Deep Sea (pattern.yaml:25), so",
            "table runner: side strips of the outer border and top and bottom strips of the outer border cut from Fog "
            "instead of Deep Sea, yardage of Fog 1/2 → 3/4 yd, yardage of Deep Sea 1 → 7/8 yd",
        ),
    ),
    "new border": (
        (
            (
                "  outer border: {width: 2",
                "  middle border: {width: 1/2, fabric: gull, order: long sides first}\n  outer border: {width: 2",
            ),
        ),
        (
            "the middle border is new (1/2 in wide, in Gull White) (pattern.yaml:25), so",
            "side strips of the outer border 12 1/2 in → 13 1/2 in long",
        ),
    ),
    "border taken away": (
        (("  inner border: {width: 1, fabric: fog, order: long sides first}\n", ""), ("      inner border: none\n", "")),
        (
            "the inner border is gone (it was 1 in wide, in Fog) (pattern.yaml:24), so",
            "side strips of the outer border 12 1/2 in → 10 1/2 in long",
        ),
    ),
    "border renamed": (
        (
            ("  outer border: {width: 2", "  wide border: {width: 2"),
            ("      outer border: {width: 1}", "      wide border: {width: 1}"),
            ("outer-border-sides", "wide-border-sides"),
        ),
        (
            "Two Gulls: mug rug, wall hanging and table runner: 2 cuts and 2 steps have another name and are what they "
            "were, because the outer border is now called wide border (pattern.yaml:25)",
        ),
    ),
    "sleeve for corner pockets": (
        (("kind: corner pockets, fabric: sea", "kind: sleeve, fabric: sea"),),
        (
            "squares for the corner pockets are no longer cut (before: 2 of 4 in square)",
            # 2 in more than the finished width, 8 1/2 in deep: the defaults of the show rule.
            "hanging sleeve is new (1 of 20 × 8 1/2 in)",
            "because it has a hanging sleeve instead of corner pockets (pattern.yaml:36); finished size, backing and "
            "batting unchanged",
        ),
    ),
    "no hanging": (
        (("    hanging: {kind: corner pockets, fabric: sea}\n", ""),),
        ("because it no longer has corner pockets (pattern.yaml:36)",),
    ),
    "bound, not turned": (
        (
            (
                "finish: {kind: turned, backing: {fabric: sea}}",
                "finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: gull}}",
            ),
        ),
        (
            "it is quilted and bound instead of turned and topstitched (pattern.yaml:26), so",
            "mug rug: finishes 8 1/2 × 8 1/2 in instead of 8 × 8 in",
            "binding is new (1 of 2 1/4 × 44 in)",
        ),
    ),
    "sashing between only": (
        (("around: yes", "around: no"),),
        (
            "vertical sashing strips 5 → 3 pieces",
            "because there is sashing between the blocks only instead of between the blocks and all round "
            "(pattern.yaml:40)",
        ),
    ),
    "cornerstones": (
        (("around: yes}", "around: yes, cornerstones: gull}"),),
        (
            "cornerstones of the sashing are new (10 of 1 1/2 in square)",
            "because the sashing is made with cornerstones instead of in long strips (pattern.yaml:40)",
        ),
    ),
    "sashing width": (
        (("sashing: {width: 1,", "sashing: {width: 1 1/2,"),),
        ("vertical sashing strips 1 1/2 in → 2 in wide", "because the sashing is 1/2 in wider (pattern.yaml:40)"),
    ),
    "opening, which moves no cut": (
        (("backing: {fabric: sea}}\nintro", "backing: {fabric: sea}, opening: 5}\nintro"),),
        ("Two Gulls: the opening is 1 in longer, given now where the usual figure was taken (pattern.yaml:26)",),
    ),
    "binding strips": (
        (("binding: {fabric: sea}}", "binding: {fabric: sea, strip width: 2 1/2}}"),),
        (
            "table runner: binding 2 1/4 in → 2 1/2 in wide",
            "because the binding strips are 1/4 in wider, given now where the usual figure was taken",
        ),
    ),
    "bias binding": (
        (("binding: {fabric: sea}}", "binding: {fabric: sea, grain: bias}}"),),
        ("because the binding is cut on the bias instead of the straight grain",),
    ),
    "narrow cloth": (
        (("seam allowance: 1/4", "seam allowance: 1/4\nusable width: 20"),),
        ("the cloth is 22 in narrower, given now where the usual figure was taken (pattern.yaml:10), so",),
    ),
    "larger backing": (
        (("backing: {fabric: sea}, binding", "backing: {fabric: sea, overage: 3}, binding"),),
        (
            "table runner: backing 39 1/2 × 18 1/2 in → 41 1/2 × 20 1/2 in",
            "because the backing reaches 1 in further beyond the top on every side",
            "finished size, batting and binding unchanged",
        ),
    ),
    "one-way print": (
        (('colour: "#1f4a63"}', 'colour: "#1f4a63", directional: yes}'),),
        ("Deep Sea is a one-way print now (pattern.yaml:12), so", "and backing cut with the print upright"),
    ),
    "drawing": (
        ((PIECES, "      - fog: 0,0 6,0 0,6\n      - gull: 6,0 6,3 3,3\n      - sea: 6,3 6,6 0,6 3,3"),),
        ("the Gull block is drawn otherwise (3 pieces instead of 2) (pattern.yaml:15), so",),
    ),
    "pieces in another order": (
        ((PIECES, "      - gull: 6,0 6,6 0,6\n      - fog: 0,0 6,0 0,6"),),
        ("the pieces of the Gull block are listed in another order (pattern.yaml:15), so",),
    ),
    "block renamed": (
        (
            ("  gull:\n    name: Gull\n", "  bird:\n    name: Bird\n"),
            ("columns: 2, block: gull", "columns: 2, block: bird"),
        ),
        ("because the Gull block is now called Bird block (pattern.yaml:15)",),
    ),
    "layout": (
        (
            ("block: gull}", "layout: [[gull, gull mirrored]]}"),
            ("arrangement: {columns: 1}", "arrangement: {layout: [[gull]]}"),
            ("columns: 4, sashing", "layout: [[gull, gull, gull, gull turned 180]], sashing"),
        ),
        ("because the blocks are laid out otherwise (pattern.yaml:22)",),
    ),
    "name of a fabric": (
        (("name: Fog, colour", "name: Sea Fog, colour"),),
        ("Two Gulls: the fabric Fog is now called Sea Fog",),
    ),
    "colour of a fabric": (
        (("#dfe3e0", "#cfd3e0"),),
        ("Two Gulls: Fog is shown in another colour, #dfe3e0 → #cfd3e0",),
    ),
    "introduction": (
        (("Two gulls look out to sea.", "Two gulls look inland."),),
        ("Two Gulls: the introduction: “Two gulls look out to sea.” → “Two gulls look inland.”",),
    ),
    "words for a step": (
        (("Take your time.", "Take your time here."),),
        ("your words for the step outer border sides: “Take your time.” → “Take your time here.” (wall hanging)",),
    ),
    "size under another name": (
        (("  table runner:", "  long runner:"),),
        ("the Table runner is now called Long runner, every cut as it was",),
    ),
    "new edition": (
        (("units: inches", "units: inches\neditions: [inches, centimetres]"),),
        ("the mug rug in centimetres is new, 20 × 20 cm finished",),
    ),
    "size taken away": (
        (
            (
                "  table runner:\n    arrangement: {columns: 4, sashing: {width: 1, fabric: fog, around: yes}}\n"
                "    finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: sea}}\n",
                "",
            ),
        ),
        ("the table runner in inches is gone",),
    ),
    "two widths at once": (
        (("inner border: {width: 1,", "inner border: {width: 1 1/2,"), ("{width: 2, fabric: sea", "{width: 2 1/2, fabric: sea")),
        (
            "the inner border is 1/2 in wider (pattern.yaml:24), so wall hanging: side strips of the inner border "
            "1 1/2 × 8 1/2 in → 2 × 9 1/2 in",
            "the inner border is 1/2 in wider (pattern.yaml:24) and the outer border is 1/2 in wider (pattern.yaml:25), "
            "so wall hanging: finishes 20 × 14 in instead of 18 × 12 in",
        ),
    ),
}  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_an_edit_reads_as_a_teacher_would_say_it(row: str) -> None:
    edits, sentences = ROWS[row]
    line = one_line(GULLS, edited(*edits))
    for sentence in sentences:
        assert sentence in line, line
    assert "\n" not in line


def test_there_are_enough_rows() -> None:
    assert len(ROWS) >= 25


@pytest.mark.parametrize(
    "edits",
    [
        (),
        # A comment, a moved line, a length written otherwise, a fabric under another key: nothing a maker sees.
        (("units: inches", "# The unit.\n\nunits: inches"),),
        (("seam allowance: 1/4", 'seam allowance: "0.25"'),),
        (
            ("  fog: {name: Fog", "  mist: {name: Fog"), ("- fog: 0,0", "- mist: 0,0"),
            ("{width: 1, fabric: fog, order", "{width: 1, fabric: mist, order"),
            ("{width: 1, fabric: fog, around", "{width: 1, fabric: mist, around"),
        ),
    ],
)  # fmt: skip
def test_what_says_the_same_is_no_change(edits: tuple[tuple[str, str], ...]) -> None:
    assert changes(GULLS, edited(*edits)) == ()
    assert one_line(GULLS, edited(*edits)) == "no computed change"
