"""The keys of a border."""

from __future__ import annotations

from evenseam.reading.kinds import BlockName, Choice, FabricName, Field, Length, Record

PIECED_BORDER = Record(
    "border of blocks",
    (
        Field(
            "block", BlockName(),
            "The block that is repeated, as it stands along the top; on the other sides it is turned, always with its "
            "top edge outward.",
            "", "pennant", is_required=True,
        ),
        Field(
            "corner block", BlockName(),
            "The block at the corners, as square as the border is wide. It stands upright at the top left and is "
            "turned with every corner clockwise.",
            "squares of the corner fabric", "star",
        ),
        Field(
            "spacer", FabricName(),
            "The fabric of plain strips inside the blocks that make them come out even: how wide is worked out.",
            "none: the blocks must fit as they are", "fog",
        ),
        Field(
            "least spacer", Length(may_be_zero=True),
            "The narrowest spacer strip worth sewing, finished. Where it would be narrower, one more block is used.",
            "1/2 in (1 cm)", "1",
        ),
    ),
)  # fmt: skip

BORDER = Record(
    "border",
    (
        Field(
            "width", Length(), "Finished width. A border of blocks has none: it is as wide as its blocks are high.",
            "", "2 1/2", is_required=True,
        ),
        Field(
            "fabric", FabricName(), "Which fabric. A border of blocks has none of its own.", "", "reed",
            is_required=True,
        ),
        Field(
            "order", Choice(("long sides first", "short sides first", "left and right first", "top and bottom first")),
            "Which two strips are sewn on first.", "long sides first", "top and bottom first",
        ),
        Field(
            "corners", Choice(("butted", "cornerstones", "mitred", "partial seam")),
            "How it turns the corners. Mitred: sewn at 45 degrees; mitred borders that follow each other are sewn "
            "together first and mitred as one. Partial seam: every strip passes one corner.",
            "butted", "butted",
        ),
        Field(
            "corner fabric", FabricName(), "The fabric of its cornerstones, or of the corners of a border of blocks.",
            "the fabric of the border", "lamp",
        ),
        Field(
            "ease", Length(may_be_zero=True),
            "How much longer mitred strips are cut in all, to hold them by; it is cut off with the corner.",
            "4 in (10 cm)", "6",
        ),
        Field(
            "join", Choice(("diagonal", "straight")),
            "How strips are joined when a side is longer than the cloth is wide.",
            "diagonal", "straight",
        ),
        Field(
            "strips", Choice(("across", "along", "either")),
            "Cut from selvage to selvage, along the selvage, or whichever takes less cloth.",
            "either", "across",
        ),
        Field("pieced", PIECED_BORDER, "In place of `width` and `fabric`: a border of one block repeated.", "none", ""),
    ),
    supersedes=(
        ("pieced", ("width", "fabric", "order", "corners", "ease")),
        ("width", ("pieced",)),
    ),
)  # fmt: skip
