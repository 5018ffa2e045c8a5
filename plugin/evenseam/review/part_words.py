"""Parts of a project in a few words, for the sentence that says how they were before and are now."""

from __future__ import annotations

from evenseam.pattern import (
    Block,
    Bound,
    CornerPockets,
    EnvelopeBack,
    Faced,
    Finish,
    Hanging,
    KnifeEdge,
    Loops,
    Rings,
    Sashing,
    SettingTriangles,
    Sleeve,
    Turned,
)


def block_words(name: str) -> str:
    """Return a block by its name: Gull block, Block 1."""
    return name if "block" in name.lower().split() else f"{name} block"


def pieces_text(block: Block) -> str:
    """Return how many pieces a block has, in words."""
    return "one piece" if len(block.pieces) == 1 else f"{len(block.pieces)} pieces"


def row_text(row: list[tuple[str, int, bool]]) -> str:
    """Return a row of blocks as it lies."""
    return ", ".join(
        block + (f" turned {90 * turns}" if turns else "") + (" mirrored" if mirrored else "")
        for block, turns, mirrored in row
    )


def float_text(triangles: SettingTriangles) -> str:
    """Return how far setting triangles let the blocks float."""
    if not triangles.chooses_float:
        return triangles.float_width.text
    least = f" from {triangles.least_float.text} on" if triangles.least_float else ""
    return f"the least{least} that brings the top to the ruler"


def reach_text(sashing: Sashing) -> str:
    """Return where sashing lies."""
    between = "between the blocks" if sashing.between_blocks else "between the rows"
    return f"{between} and all round" if sashing.is_around else f"{between} only"


def finish_text(finish: Finish) -> str:
    """Return how a project is finished."""
    match finish:
        case Turned():
            return "turned and topstitched"
        case Bound():
            return "quilted and bound"
        case Faced():
            return "quilted and faced"
        case KnifeEdge():
            return "quilted, with a knife edge"
        case EnvelopeBack():
            return "quilted, with an envelope back"


def cloth_of(hanging: Hanging) -> str | None:
    """Return the fabric something hangs by; None where it takes none."""
    return None if isinstance(hanging, Rings) else hanging.fabric


def hanging_text(hanging: Hanging | None) -> str:
    """Return what a project hangs by; empty where nothing is said."""
    match hanging:
        case Sleeve():
            return "hanging sleeve"
        case CornerPockets():
            return "corner pockets"
        case Loops():
            return "loops"
        case Rings():
            return "rings"
        case None:
            return ""
