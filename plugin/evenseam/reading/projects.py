"""One size in one edition: from a tree in which every override is already applied to a project."""

from __future__ import annotations

from fractions import Fraction

from evenseam.exact import Unit
from evenseam.pattern import Arrangement, Block, Fabric, Fit, Project, Prose, Quantity, Setting
from evenseam.problems import Place
from evenseam.reading import codes, defaults
from evenseam.reading.arrangements import read_arrangement
from evenseam.reading.blocks import Drawings, read_block
from evenseam.reading.borders import read_borders
from evenseam.reading.edges import read_finish, read_hanging
from evenseam.reading.entries import Entries, Reader, distinct, given, prose_of, slug, spoken
from evenseam.reading.fits import read_fit
from evenseam.reading.format import SIZE
from evenseam.reading.kinds import Markdown
from evenseam.reading.leaves import read_colour
from evenseam.reading.part_keys import ARRANGEMENT, BATTING, FABRIC, MOST_BLOCKS_PLACED
from evenseam.reading.parts import Missing
from evenseam.reading.tree import Entry, Mapping, is_none


def read_project(reader: Reader, size: Entry, tree: Mapping, drawings: Drawings) -> Project | None:
    """Return the project, or None when a part of it cannot be used; everything wrong is reported."""
    entries = Entries(reader, tree, SIZE, size.key.place)
    fabrics = _read_fabrics(reader, entries.get("fabrics"))
    blocks = _read_blocks(reader, entries.get("blocks"), drawings, fabrics)
    seam = _seam_allowance(entries)
    usable_width = entries.length("usable width", "usable width", defaults.USABLE_WIDTH)
    margin = entries.length("patch margin", "patch margin", defaults.PATCH_MARGIN)
    inner = entries.inner("arrangement", ARRANGEMENT)
    arranged = read_arrangement(inner, blocks or ()) if inner else None
    arrangement, plain = arranged if arranged else (None, ())
    blocks = None if blocks is None else (*blocks, *plain)
    if arrangement is not None and not _is_countable(reader, arrangement):
        arrangement = None
    borders = read_borders(reader, entries.get("borders"), blocks or ())
    fit_entry = entries.get("fit")
    fit = read_fit(reader, fit_entry)
    is_large = _is_large(arrangement, blocks or (), fit)
    finish = read_finish(reader, entries.get("finish"), is_large)
    hanging = read_hanging(reader, entries.get("hanging"), is_large)
    batting = entries.inner("batting", BATTING)
    if (
        fabrics is None or blocks is None or seam is None or usable_width is None or margin is None
        or arrangement is None or borders is None or finish is None or isinstance(hanging, Missing)
        or (fit_entry is not None and fit is None)
    ):  # fmt: skip
        return None
    placed = {position.block for row in arrangement.positions for position in row}
    for pieced in (border.pieced for border in borders if border.pieced is not None):
        placed |= {id for id in (pieced.block, pieced.corner_block) if id is not None}
    return Project(
        slug(size.key.text), entries.words("name", spoken(size.key.text)), reader.edition, seam, usable_width, fabrics,
        tuple(block for block in blocks if block.id in placed), arrangement, borders, finish, hanging, margin,
        batting.words("name", "Cotton batting") if batting else "Cotton batting", entries.words("use"),
        entries.words("summary"), entries.prose("introduction"), _additions(reader, entries.get("words")),
        size.key.place, _shop_step(entries), fit,
    )  # fmt: skip


def _shop_step(entries: Entries) -> Quantity | None:
    """Return the step cloth is sold by; None when nobody gave one."""
    node = entries.node("shop step")
    words = entries.choice("shop step", "") if node is not None else None
    if node is None or words is None:
        return None
    value, unit = defaults.SHOP_STEPS[words]
    return given("shop step", value, unit, node)


def _seam_allowance(entries: Entries) -> Quantity | None:
    """Return the seam allowance; an edition in the other unit has the usual one of its own unless it says otherwise."""
    reader = entries.reader
    node = entries.mapping.value("seam allowance")
    if node is not None and reader.unit_at(node.place) is not reader.edition:
        return defaults.SEAM_ALLOWANCE.quantity("seam allowance", reader.edition)
    return entries.length("seam allowance", "seam allowance", defaults.SEAM_ALLOWANCE)


def _read_fabrics(reader: Reader, entry: Entry | None) -> tuple[Fabric, ...] | None:
    if entry is None or not isinstance(entry.value, Mapping):
        return None
    fabrics: list[Fabric] = []
    reader.fabrics = {}
    for each in distinct(entry.value.entries, "fabric", reader.report):
        reader.fabrics[each.key.text] = each.key
        if not isinstance(each.value, Mapping):
            return None
        entries = Entries(reader, each.value, FABRIC, each.key.place)
        node = entries.node("colour")
        colour = read_colour(node, reader.report) if node is not None else None
        name = entries.words("name", spoken(each.key.text))
        role, is_directional = entries.words("role"), entries.yes("directional")
        if colour is not None:
            fabrics.append(Fabric(slug(each.key.text), name, colour, is_directional, role, each.key.place))
    return tuple(fabrics) if len(fabrics) == len(reader.fabrics) else None


def _read_blocks(
    reader: Reader, entry: Entry | None, drawings: Drawings, fabrics: tuple[Fabric, ...] | None
) -> tuple[Block, ...] | None:
    if entry is None or not isinstance(entry.value, Mapping):
        return None
    kept = distinct(entry.value.entries, "block", reader.report)
    reader.blocks = {each.key.text: each.key for each in kept}
    colours = {fabric.id: fabric.colour for fabric in fabrics or ()}
    names = {name: colours[slug(name)] for name in reader.fabrics or () if slug(name) in colours}
    blocks = [read_block(reader, each, drawings, names if fabrics is not None else None) for each in kept]
    return tuple(block for block in blocks if block is not None) if None not in blocks else None


def _is_countable(reader: Reader, arrangement: Arrangement) -> bool:
    number = sum(len(row) for row in arrangement.positions)
    if number <= MOST_BLOCKS_PLACED:
        return True
    rows, columns = arrangement.rows.whole, arrangement.columns.whole
    message = f"{rows} rows of {columns} are {number} blocks; at most {MOST_BLOCKS_PLACED:,}"
    place: Place | None = arrangement.rows.place or arrangement.place
    reader.report.add(codes.TOO_MANY, place, message, "use fewer, larger blocks")
    return False


def _is_large(arrangement: Arrangement | None, blocks: tuple[Block, ...], fit: Fit | None) -> bool:
    """Tell whether the usual figures for quilts apply, not those for small pieces: by the blocks laid edge to edge."""
    if fit is not None:
        return any(side.value >= defaults.LARGE_FROM[side.unit] for side in (fit.width, fit.height))
    if arrangement is None:
        return False
    sizes = {block.id: block for block in blocks}
    first = sizes.get(arrangement.positions[0][0].block)
    if first is None:
        return False
    unit = first.width.unit if first.width.unit is Unit.CENTIMETRE else Unit.INCH
    sides = (first.width.value * arrangement.columns.value, first.height.value * arrangement.rows.value)
    # On point a block is about 1.4 times as wide.
    wider = Fraction(7, 5) if arrangement.setting is Setting.ON_POINT else Fraction(1)
    return any(wider * side >= Fraction(defaults.LARGE_FROM[unit]) for side in sides)


def _additions(reader: Reader, entry: Entry | None) -> tuple[tuple[str, Prose], ...]:
    if entry is None or not isinstance(entry.value, Mapping):
        return ()
    found = [
        (each.key.text, prose_of(each.value, Markdown(4000), reader.report))
        for each in entry.value.entries
        if not is_none(each.value)
    ]
    return tuple((step, prose) for step, prose in found if prose is not None)
