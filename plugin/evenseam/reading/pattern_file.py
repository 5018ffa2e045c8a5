"""The whole pattern file: from a text to a pattern with one project for each size and edition."""

from __future__ import annotations

from collections.abc import Iterator
from collections.abc import Mapping as MappingOf
from dataclasses import replace
from itertools import pairwise

from evenseam.exact import Unit
from evenseam.pattern import Change, Claim, Pattern, Project
from evenseam.problems import Label, Outcome, Place, Report, SourceText
from evenseam.reading import codes
from evenseam.reading.blocks import Drawings
from evenseam.reading.compose import parse_tree
from evenseam.reading.entries import Entries, Setting, distinct, given, slug
from evenseam.reading.format import CHANGE, EDITION, PATTERN, SIZE
from evenseam.reading.kinds import Record
from evenseam.reading.leaves import did_you_mean, read_date, shown
from evenseam.reading.lengths import read_stated
from evenseam.reading.overlay import overlay
from evenseam.reading.overrides import check_overrides
from evenseam.reading.projects import read_project
from evenseam.reading.shape import UNIT_OF_WORD, check_shape, mapping_of
from evenseam.reading.tree import Entry, Listing, Mapping, Node, Scalar, is_none

_NO_DRAWINGS: MappingOf[str, SourceText] = {}


def read_pattern(
    slug_: str, source: SourceText, drawings: MappingOf[str, SourceText] = _NO_DRAWINGS
) -> Outcome[Pattern]:
    """Read a pattern file and check everything that can be known without working out sizes.

    `slug_` is the name of the pattern's folder. `drawings` are the texts beside the file, by file name; format 1 has
    no key that names one yet. There is no value when there is an error.
    """
    parsed = parse_tree(source)
    report = Report(list(parsed.problems))
    if parsed.value is None:
        return Outcome(None, report.as_tuple())
    tree = mapping_of(parsed.value, "pattern", report)
    if tree is None:
        return Outcome(None, report.as_tuple())
    drafted = _drafted(tree)
    check_shape(tree, PATTERN, drafted, report)
    pattern = _read_whole(slug_, source, tree, drafted, report)
    return Outcome(None if report.has_errors() else pattern, report.as_tuple())


def _drafted(tree: Mapping) -> Unit:
    word = tree.value("units")
    return UNIT_OF_WORD.get(word.text.strip(), Unit.INCH) if isinstance(word, Scalar) else Unit.INCH


def _read_whole(slug_: str, source: SourceText, tree: Mapping, drafted: Unit, report: Report) -> Pattern:
    start = Place(source.name, tree.place.line, tree.place.column, tree.place.line, tree.place.column + 1)
    entries = Entries(Setting(report, drafted, drafted), tree, PATTERN, start)
    entries.get("format")
    title = entries.words("title")
    version = entries.words("version", "1.0")
    changes = _read_changes(entries)
    _check_version(tree, version, changes, report)
    sizes = _sizes(entries)
    projects = _read_projects(tree, sizes, drafted, start, report)
    # Told once for the whole only where every size tells the same; a size may tell it otherwise.
    introductions = {project.introduction for project in projects}
    return Pattern(
        slug_, title, entries.words("summary"), version, entries.words("skill level"), entries.words("licence"),
        entries.words("designer"), changes, projects, _read_claims(entries, sizes, drafted),
        introductions.pop() if len(introductions) == 1 else None, start,
    )  # fmt: skip


def _sizes(entries: Entries) -> tuple[Entry, ...]:
    """Return the sizes, each slug once."""
    report = entries.setting.report
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


def _read_projects(
    tree: Mapping, sizes: tuple[Entry, ...], drafted: Unit, start: Place, report: Report
) -> tuple[Project, ...]:
    own = {field.key for field in SIZE.fields if not field.of_a_size}
    base = Mapping(tuple(entry for entry in tree.entries if entry.key.text in own), tree.place)
    told = _report_missing_everywhere(base, sizes, start, report)
    drawings = Drawings()
    used_fabrics: set[str] = set()
    used_blocks: set[str] = set()
    projects: list[Project] = []
    for size in sizes:
        over = size.value if isinstance(size.value, Mapping) else Mapping((), size.key.place)
        check_overrides(base, over, SIZE, report)
        merged = _laid_over(base, over, SIZE)
        for unit, node in _editions(merged, drafted):
            setting = Setting(report, drafted, unit, used_fabrics=used_fabrics, used_blocks=used_blocks)
            setting.told_missing = told
            setting.edition_places = tuple(_edition_places((base, over), unit))
            laid = merged
            if isinstance(node, Mapping):
                check_overrides(merged, node, EDITION, report)
                laid = _laid_over(merged, node, EDITION)
            project = read_project(setting, size, laid, drawings)
            if project is not None:
                projects.append(project)
    _check_same(projects, report)
    # After an error a fabric may only seem unused, because its name is misspelt where it is used.
    if sizes and not report.has_errors():
        _check_used(base, "fabrics", used_fabrics, report)
        _check_used(base, "blocks", used_blocks, report)
    return tuple(projects)


def _laid_over(base: Mapping, over: Mapping, record: Record) -> Mapping:
    laid = overlay(base, over, record)
    assert isinstance(laid, Mapping), "a mapping laid over a mapping is one"
    return laid


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
            report.add(codes.MISSING_KEY, start, f"the pattern has no {field.key!r}", f"add {field.key!r}")
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


def _read_changes(entries: Entries) -> tuple[Change, ...]:
    node = entries.node("changes")
    if not isinstance(node, Listing):
        return ()
    changes: list[Change] = []
    for item in node.items:
        if not isinstance(item, Mapping):
            continue
        at = item.entries[0].key.place if item.entries else item.place
        inner = Entries(entries.setting, item, CHANGE, at)
        version, what = inner.words("version"), inner.words("what")
        date_node = inner.node("date")
        date = read_date(date_node, entries.setting.report) if date_node is not None else None
        if version and what and date:
            changes.append(Change(version, date, what, at))
    for newer, older in pairwise(changes):
        if newer.date < older.date:
            message = f"the change of {older.date} stands below that of {newer.date}"
            entries.setting.report.add(
                codes.CHANGES_NOT_NEWEST_FIRST, older.place, message, "write the newest change first"
            )
    return tuple(changes)


def _check_version(tree: Mapping, version: str, changes: tuple[Change, ...], report: Report) -> None:
    node = tree.value("version")
    if node is None or not changes or version in [change.version for change in changes]:
        return
    message = f"the changes do not mention version {version}"
    hint = f'add what changed with it, above the others: {{version: "{version}", date: …, what: …}}'
    report.add(codes.VERSION_NOT_IN_CHANGES, node.place, message, hint)


def _read_claims(entries: Entries, sizes: tuple[Entry, ...], drafted: Unit) -> tuple[Claim, ...]:
    node = entries.node("claims")
    if not isinstance(node, Mapping):
        return ()
    known = {slug(size.key.text): size.key.text for size in sizes}
    claims: list[Claim] = []
    for entry in node.entries:
        size = slug(entry.key.text)
        if size not in known:
            hint = did_you_mean(entry.key.text, tuple(known.values())) or "known here: " + ", ".join(known.values())
            entries.setting.report.add(
                codes.UNDEFINED_SIZE, entry.key.place, f"no size is called {shown(entry.key.text)}", hint
            )
        elif isinstance(entry.value, Mapping):
            for figure in entry.value.entries:
                stated = read_stated(figure.value, drafted, entries.setting.report)
                if stated is not None:
                    name = figure.key.text
                    claims.append(Claim(size, name, given(name, *stated, figure.value)))
    return tuple(claims)
