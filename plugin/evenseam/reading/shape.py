"""The file against the table of its keys: unknown keys, lists where texts belong, values that cannot be read."""

from __future__ import annotations

from evenseam.exact import Unit
from evenseam.pattern import BATTINGS
from evenseam.problems import Report
from evenseam.reading import codes
from evenseam.reading.drawn_values import read_corners, read_grid_size, read_placement
from evenseam.reading.entries import MOST_UNKNOWN, slug
from evenseam.reading.format import EDITION, PATTERN, SIZE
from evenseam.reading.kinds import (
    BlockName,
    BlockOrSpacer,
    BlockPlacement,
    Choice,
    Colour,
    Corners,
    Count,
    Date,
    Editions,
    FabricName,
    Field,
    FinishedSize,
    FormatNumber,
    GridSize,
    Items,
    Kind,
    Leaf,
    Length,
    Markdown,
    NamedUnit,
    Piece,
    Record,
    ShortOrLong,
    Stated,
    Table,
    TargetSize,
    Variants,
    Words,
    YesNo,
)
from evenseam.reading.leaves import (
    FORMAT_NUMBER,
    did_you_mean,
    listed,
    read_choice,
    read_colour,
    read_count,
    read_date,
    read_words,
    read_yes_no,
    scalar_of,
    shown,
)
from evenseam.reading.lengths import read_finished_size, read_length, read_stated
from evenseam.reading.named_units import read_unit
from evenseam.reading.part_keys import PIECE, UNITS
from evenseam.reading.row_parts import read_block_or_spacer
from evenseam.reading.tree import Entry, Listing, Mapping, Node, Scalar, is_none

UNIT_OF_WORD = {"inches": Unit.INCH, "centimetres": Unit.CENTIMETRE}
assert tuple(UNIT_OF_WORD) == UNITS


def check_shape(node: Node, kind: Kind, unit: Unit, report: Report, *, is_over: bool = False, noun: str = "") -> None:
    """Report everything in a part of the file that its kind does not allow.

    `is_over` is true inside a size or an edition, where the word none takes something away. Keys that are missing are
    no matter here: a size may supply them.
    """
    match kind:
        case Record():
            _check_record(node, kind, unit, report, is_over)
        case Variants():
            _check_variants(node, kind, unit, report, is_over)
        case Table():
            _check_table(node, kind, unit, report, is_over)
        case Items():
            _check_items(node, kind, unit, report, is_over)
        case Piece():
            _check_piece(node, kind, unit, report)
        case Editions():
            _check_editions(node, kind, report)
        case ShortOrLong():
            inner = kind.long if isinstance(node, Mapping) else kind.short
            check_shape(node, inner, unit, report, is_over=is_over)
        case _:
            _check_leaf(node, kind, unit, report)


def mapping_of(node: Node, name: str, report: Report, *, only_key: str = "") -> Mapping | None:
    """Return a mapping, or report a list or text that stands in its place: often the value of its only needed key."""
    if isinstance(node, Mapping):
        return node
    found = "a list" if isinstance(node, Listing) else shown(node.text) if node.text else "nothing"
    is_no = isinstance(node, Scalar) and node.text.lower() in ("no", "false", "null", "nothing", "~")
    hint = "write none to do without it" if is_no else "write its keys below it, indented, each with a colon"
    if only_key and isinstance(node, Scalar) and node.text and not is_no:
        hint = f"write {{{only_key}: {node.text}}}"
    report.add(codes.NOT_A_MAPPING, node.place, f"expected is what describes the {name}; here stands {found}", hint)
    return None


def _check_record(node: Node, record: Record, unit: Unit, report: Report, is_over: bool) -> None:
    needed = [field for field in record.fields if field.is_required]
    is_one_fabric = len(needed) == 1 and isinstance(needed[0].kind, FabricName)
    mapping = mapping_of(node, record.name, report, only_key=needed[0].key if is_one_fabric else "")
    if mapping is None:
        return
    unknown: list[Entry] = []
    for entry in mapping.entries:
        field = record.field(entry.key.text)
        if field is None:
            unknown.append(entry)
        elif not _is_taken_away(entry.value, field, is_over):
            check_shape(entry.value, field.kind, unit, report, is_over=is_over)
    for entry in unknown[:MOST_UNKNOWN]:
        _report_unknown(entry, mapping, record, report)
    if len(unknown) > MOST_UNKNOWN:
        message = f"here and below are {len(unknown) - MOST_UNKNOWN} more keys that are none of the {record.name}"
        report.add(codes.TOO_MANY, unknown[MOST_UNKNOWN].key.place, message, "mend the ones above first")


def _is_taken_away(value: Node, field: Field, is_over: bool) -> bool:
    """Tell whether a value says that an optional part is not there."""
    if not is_none(value) or isinstance(field.kind, Colour):
        return False
    # Above the sizes there is nothing to take a word away from: there an empty text is a text left out by mistake.
    return is_over or not (field.is_required or isinstance(field.kind, (Words, Markdown, Choice)))


def _report_unknown(entry: Entry, mapping: Mapping, record: Record, report: Report) -> None:
    key, known = entry.key.text, [field.key for field in record.fields]
    message = f"{shown(key)} is no key of the {record.name}"
    if mapping.is_in_braces and is_none(entry.value):
        hint = "inside { } a value with commas goes in quotes"
    elif record in (SIZE, EDITION) and PATTERN.field(key):
        hint = f"{key!r} belongs to the whole pattern: write it at the top of the file"
    else:
        hint = did_you_mean(key, known) or f"known here: {listed(known)}"
    report.add(codes.UNKNOWN_KEY, entry.key.place, message, hint)


def _check_variants(node: Node, kind: Variants, unit: Unit, report: Report, is_over: bool) -> None:
    mapping = mapping_of(node, kind.name, report)
    if mapping is None:
        return
    deciding = mapping.value(kind.key)
    word = read_choice(deciding, kind.options, report) if deciding is not None else None
    if word is None:
        # In a size the deciding word may stand above; then any key of any of them may be right.
        fields = {field.key: field for _, record in kind.records for field in record.fields}
        record = Record(kind.name, tuple(fields.values()))
    else:
        record = kind.record(word)
    rest = tuple(entry for entry in mapping.entries if entry.key.text != kind.key)
    _check_record(Mapping(rest, mapping.place, mapping.is_in_braces), record, unit, report, is_over)


def _check_table(node: Node, kind: Table, unit: Unit, report: Report, is_over: bool) -> None:
    if not isinstance(node, Mapping):
        hint = f"write each {kind.noun} as its name, a colon, and what it is"
        report.add(codes.NOT_A_MAPPING, node.place, f"expected are {kind.noun}s, each under its name", hint)
        return
    if len(node.entries) > kind.most:
        place = node.entries[kind.most].key.place
        report.add(
            codes.TOO_MANY,
            place,
            f"here are {len(node.entries)} {kind.noun}s; at most {kind.most}",
            "leave some out, or make two patterns",
        )
        return
    is_over = is_over or kind.item is SIZE
    for entry in node.entries:
        _check_name(entry.key, kind, report)
        if not (is_none(entry.value) and is_over):
            check_shape(entry.value, kind.item, unit, report, is_over=is_over)


def _check_name(key: Scalar, kind: Table, report: Report) -> None:
    text = key.text
    if len(text) > kind.longest_key:
        message = f"the name has {len(text)} characters; at most {kind.longest_key} fit"
        report.add(codes.TOO_MUCH_TEXT, key.place, message, "give it a shorter name")
    elif not slug(text) or "\n" in text:
        hint = "use letters a to z, digits and spaces; `name` below it may hold any letters"
        report.add(codes.NOT_A_NAME, key.place, f"{shown(text)} is no name for a {kind.noun}", hint)
    elif kind.noun == "fabric" and text in _TAKEN:
        report.add(codes.NOT_A_NAME, key.place, f"{shown(text)} means something else here", "call the fabric otherwise")


_TAKEN = (*BATTINGS, "none", *(field.key for field in PIECE.fields))
"""Words that cannot name a fabric: in a cut list or in a piece they are read as something else."""


def _check_items(node: Node, kind: Items, unit: Unit, report: Report, is_over: bool) -> None:
    if not isinstance(node, Listing):
        hint = f"begin each {kind.noun} with a dash and a space on a line of its own"
        report.add(codes.NOT_A_LIST, node.place, f"expected is a list, one {kind.noun} after the other", hint)
        return
    if not node.items:
        report.add(
            codes.EMPTY, node.place, f"there is no {kind.noun} in this list", "write at least one, or take the key out"
        )
    if len(node.items) > kind.most:
        place = node.items[kind.most].place
        report.add(
            codes.TOO_MANY, place, f"here are {len(node.items)} {kind.noun}s; at most {kind.most}", "leave some out"
        )
        return
    for item in node.items:
        check_shape(item, kind.item, unit, report, is_over=is_over)


def is_long_piece(node: Mapping, record: Record) -> bool:
    """Tell whether a piece is written with keys of its own, not as `fabric: corners`."""
    return len(node.entries) != 1 or node.entries[0].key.text in [field.key for field in record.fields]


def _check_piece(node: Node, kind: Piece, unit: Unit, report: Report) -> None:
    mapping = mapping_of(node, "piece", report)
    if mapping is None:
        return
    if is_long_piece(mapping, kind.long):
        _check_record(mapping, kind.long, unit, report, is_over=False)
    else:
        read_corners(mapping.entries[0].value, report)


def _check_editions(node: Node, kind: Editions, report: Report) -> None:
    if isinstance(node, Listing):
        for item in node.items:
            read_choice(item, kind.units, report)
    elif isinstance(node, Mapping):
        for entry in node.entries:
            word = read_choice(entry.key, kind.units, report)
            if word and not is_none(entry.value):
                check_shape(entry.value, kind.over, UNIT_OF_WORD[word], report, is_over=True)
    else:
        read_choice(node, kind.units, report)


def _check_leaf(node: Node, kind: Leaf, unit: Unit, report: Report) -> None:
    match kind:
        case Words() | Markdown():
            read_words(node, kind, report)
        case Length():
            read_length(node, kind, unit, report)
        case Stated():
            read_stated(node, unit, report)
        case Count():
            read_count(node, kind, report)
        case Choice():
            read_choice(node, kind.options, report)
        case YesNo():
            read_yes_no(node, report)
        case Colour():
            read_colour(node, report)
        case Date():
            read_date(node, report)
        case FinishedSize():
            read_finished_size(node, unit, report)
        case GridSize():
            read_grid_size(node, report)
        case Corners():
            read_corners(node, report)
        case FabricName() | BlockName() | TargetSize():
            read_words(node, Words(60), report)
        case BlockPlacement():
            read_placement(node, report)
        case BlockOrSpacer():
            read_block_or_spacer(node, unit, report)
        case NamedUnit():
            read_unit(node, report)
        case FormatNumber():
            _check_format(node, report)


def _check_format(node: Node, report: Report) -> None:
    scalar = scalar_of(node, "the number of the format", report, codes.WRONG_FORMAT_NUMBER)
    if scalar is not None and scalar.text.strip() != FORMAT_NUMBER:
        message = f"format {shown(scalar.text)} is not known; this program reads format {FORMAT_NUMBER}"
        report.add(
            codes.WRONG_FORMAT_NUMBER, scalar.place, message, f"write format: {FORMAT_NUMBER}, or use a newer program"
        )
