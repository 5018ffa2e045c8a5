"""Every size in every edition: what stands above, the size, the edition laid over each other, and read."""

from __future__ import annotations

from collections.abc import Iterator
from collections.abc import Mapping as MappingOf
from dataclasses import dataclass, replace
from functools import cached_property

from evenseam.exact import Unit
from evenseam.pattern import Project
from evenseam.problems import Label, Place, Report, SourceText
from evenseam.reading import codes
from evenseam.reading.blocks import Drawings
from evenseam.reading.entries import Entries, Reader, distinct
from evenseam.reading.format import EDITION, SIZE
from evenseam.reading.kinds import Record
from evenseam.reading.leaves import shown
from evenseam.reading.overlay import overlay
from evenseam.reading.overrides import check_edition, check_overrides
from evenseam.reading.projects import read_project
from evenseam.reading.shape import UNIT_OF_WORD
from evenseam.reading.tree import Entry, Listing, Mapping, Node, Scalar, is_none


def read_sizes(entries: Entries) -> tuple[Entry, ...]:
    """Return the sizes, each slug once."""
    report = entries.reader.report
    entry = entries.get("sizes")
    if entry is None or not isinstance(entry.value, Mapping):
        return ()
    if not entry.value.entries:
        message = "there is no size"
        report.add(codes.EMPTY, entry.key.place, message, "write at least one size: its name, a colon, what differs")
    # A size without a word of its own is what stands above it.
    named = [
        Entry(size.key, Mapping((), size.key.place)) if is_none(size.value) else size for size in entry.value.entries
    ]
    return distinct(named, "size", report)


def read_projects(
    tree: Mapping,
    sizes: tuple[Entry, ...],
    drafted: Unit,
    start: Place,
    texts: MappingOf[str, SourceText],
    report: Report,
) -> tuple[Project, ...]:
    """Return the projects in the order of the file, for each size the drafted edition first.

    `start` is the place to point at for what the whole file lacks, `texts` are the drawings beside the file.
    """
    own = {field.key for field in SIZE.fields if not field.of_a_size}
    base = Mapping(tuple(entry for entry in tree.entries if entry.key.text in own), tree.place)
    told = _report_missing_everywhere(base, sizes, start, report)
    drawings = Drawings(texts)
    used_fabrics: set[str] = set()
    used_blocks: set[str] = set()
    guesses: dict[str, str] = {}
    projects: list[Project] = []
    layers = [_Layers(size, base, _mapping(size)) for size in sizes]
    _check_editions([layer.merged for layer in layers], base, report)
    for layer in layers:
        if len(report.problems) > ENOUGH and report.has_errors():
            break
        check_overrides(base, layer.over, SIZE, report)
        _check_editions([layer.merged], layer.over, report)
        for unit, node in _editions(layer.merged, drafted):
            reader = Reader(report, drafted, unit, used_fabrics=used_fabrics, used_blocks=used_blocks, guesses=guesses)
            reader.told_missing = told
            reader.edition_places = tuple(_edition_places((base, layer.over), unit))
            laid = layer.merged
            if isinstance(node, Mapping):
                if unit is drafted:
                    check_overrides(laid, node, EDITION, report)
                laid = _laid_over(laid, node, EDITION, may_add=False)
            project = read_project(reader, layer.size, laid, drawings)
            if project is not None:
                projects.append(project)
    _check_same(projects, report)
    # After an error a fabric may only seem unused, because its name is misspelt where it is used.
    if sizes and not report.has_errors():
        _check_used(base, "fabrics", used_fabrics, report)
        _check_used(base, "blocks", used_blocks, report)
    return tuple(projects)


ENOUGH = 500
"""Problems after which further sizes are not read: they would mostly repeat what is wrong above them."""


@dataclass(frozen=True)
class _Layers:
    """A size, what stands above it, and what it says itself."""

    size: Entry
    base: Mapping
    over: Mapping

    @cached_property
    def merged(self) -> Mapping:
        return _laid_over(self.base, self.over, SIZE)


def _mapping(entry: Entry) -> Mapping:
    return entry.value if isinstance(entry.value, Mapping) else Mapping((), entry.key.place)


def _laid_over(base: Mapping, over: Mapping, record: Record, *, may_add: bool = True) -> Mapping:
    laid = overlay(base, over, record, may_add=may_add)
    assert isinstance(laid, Mapping), "a mapping laid over a mapping is one"
    return laid


def _check_editions(trees: list[Mapping], over: Mapping, report: Report) -> None:
    editions = over.value("editions")
    for entry in editions.entries if isinstance(editions, Mapping) else ():
        if isinstance(entry.value, Mapping):
            check_edition(trees, entry.value, EDITION, report)


def _edition_places(trees: tuple[Mapping, ...], unit: Unit) -> Iterator[Place]:
    """Yield the stretches of the file that hold lengths of one edition."""
    for tree in trees:
        editions = tree.value("editions")
        if isinstance(editions, Mapping):
            for entry in editions.entries:
                if UNIT_OF_WORD.get(entry.key.text) is unit:
                    yield entry.value.place


def _report_missing_everywhere(base: Mapping, sizes: tuple[Entry, ...], start: Place, report: Report) -> frozenset[str]:
    """Report parts that neither the pattern nor any size has, once for all sizes."""
    missing: list[str] = []
    for field in SIZE.fields:
        trees = [base, *(size.value for size in sizes if isinstance(size.value, Mapping))]
        if field.is_required and sizes and not any(tree.entry(field.key) for tree in trees):
            missing.append(field.key)
            example = f", such as {field.key}: {field.example}" if field.example else ""
            report.add(codes.MISSING_KEY, start, f"the pattern has no {field.key!r}", f"add {field.key!r}{example}")
    return frozenset(missing)


def _check_same(projects: list[Project], report: Report) -> None:
    """Warn about sizes that differ in nothing but their name."""
    first: dict[Project, Project] = {}
    for project in projects:
        plain = replace(project, size="", name="", use="", summary="", introduction=None, additions=())
        same = first.setdefault(plain, project)
        if same is not project and project.place is not None and same.place is not None:
            message = f"the size {shown(project.name)} differs from {shown(same.name)} in nothing but words"
            hint = "leave one of them out, or say what differs"
            report.add(codes.SAME_SIZE_TWICE, project.place, message, hint, (Label(same.place, "the other"),))


def _editions(tree: Mapping, drafted: Unit) -> list[tuple[Unit, Node | None]]:
    """Return the editions, the drafted one first, each with what differs in it."""
    node = tree.value("editions")
    found: dict[Unit, Node | None] = {drafted: None}
    if isinstance(node, Mapping):
        for entry in node.entries:
            if entry.key.text in UNIT_OF_WORD:
                found[UNIT_OF_WORD[entry.key.text]] = entry.value
    else:
        items = node.items if isinstance(node, Listing) else (node,) if isinstance(node, Scalar) else ()
        for item in items:
            if isinstance(item, Scalar) and item.text in UNIT_OF_WORD:
                found.setdefault(UNIT_OF_WORD[item.text], None)
    return list(found.items())


def _check_used(base: Mapping, key: str, used: set[str], report: Report) -> None:
    table = base.value(key)
    if not isinstance(table, Mapping):
        return
    noun, code = ("fabric", codes.UNUSED_FABRIC) if key == "fabrics" else ("block", codes.UNUSED_BLOCK)
    for entry in table.entries:
        if entry.key.text not in used:
            report.add(
                code, entry.key.place, f"no size uses the {noun} {shown(entry.key.text)}", "use it, or take it out"
            )
