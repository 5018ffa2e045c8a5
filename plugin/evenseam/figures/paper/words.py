"""The words on template paper, in one place."""

from __future__ import annotations

FULL_SIZE = "Print at 100 % (actual size), never “fit to page”."
MEASURE_FIRST = "Measure the squares before you sew."
MIRRORED = "Mirror image of the block. Lay the fabric on the blank side; sew with this printed side up."
NOT_MIRRORED = "A template marked “right side up” is not mirrored: lay it on the right side of the fabric."
KEY = "solid line: sew · dashed line: cut · ticks in the allowance: match · arrow: to the top of the block"
COLOURING = "Colouring sheet"
COLOUR_IT = "Colour the boxes and the pieces to try fabrics of your own. Not to scale."
KEY_TOLD = "right side; its templates are mirrored; not to scale"
RULERS = "Rulers to check your printer"
RULERS_TOLD = (
    "Printed at 100 % (actual size) every mark here meets the same mark of a real ruler, across and down. Measure the "
    "squares first, then the longest rulers."
)
ONE_INCH = "1 in"
TWO_CENTIMETRES = "2 cm"
TWO_INCHES = "2 in"
FIVE_CENTIMETRES = "5 cm"


def allowance_included(seam: str) -> str:
    """Say that the seam allowance is part of the template."""
    return f"Seam allowance of {seam} is included."


def copies(number: int) -> str:
    """Say how often a template must be printed."""
    return "print once" if number == 1 else f"print {number} copies"


def cut_with(number: int, fabric: str) -> str:
    """Say how many pieces are cut with a template, and from what."""
    pieces = "1 piece" if number == 1 else f"{number} pieces"
    return f"print once; cut {pieces} from {fabric}, right side up"


def cutting_title(block: str, labels: tuple[str, ...]) -> str:
    """Name a template that pieces are cut with."""
    return f"{block}: piece {labels[0]}" if len(labels) == 1 else f"{block}: pieces {', '.join(labels)}"


def which_page(paper: str, number: int, count: int) -> str:
    """Say which page this is."""
    return f"{paper}, page {number} of {count}"


def which_edition(size: str, is_metric: bool) -> str:
    """Say which size and edition this is."""
    return f"{size}, {'centimetre' if is_metric else 'inch'} edition"


def section_title(block: str, section: str, sections: int) -> str:
    """Name a section; a block of one section goes by its own name."""
    return f"{block}: section {section}" if sections > 1 else f"{block}: whole block"


def key_title(block: str) -> str:
    """Name the small picture of a block."""
    return f"{block} as sewn"


def part_of(number: int, count: int) -> str:
    """Name one part of a template that is larger than the paper."""
    return f"part {number} of {count}"


def joins_part(number: int) -> str:
    """Say which part goes on at a joining line."""
    return f"to part {number}"


def to_sections(names: tuple[str, ...]) -> str:
    """Say which sections an edge is sewn to."""
    return "to " + ", ".join(names)
