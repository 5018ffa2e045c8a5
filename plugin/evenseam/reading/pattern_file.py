"""The whole pattern file: from a text to a pattern with one project for each size and edition."""

from __future__ import annotations

from collections.abc import Mapping as MappingOf
from itertools import pairwise

from evenseam.exact import Unit
from evenseam.pattern import Change, Claim, Pattern
from evenseam.problems import Outcome, Place, Report, SourceText
from evenseam.reading import codes
from evenseam.reading.compose import parse_tree
from evenseam.reading.entries import Entries, Reader, given, slug
from evenseam.reading.format import CHANGE, PATTERN
from evenseam.reading.leaves import did_you_mean, listed, read_date, shown
from evenseam.reading.lengths import read_stated
from evenseam.reading.shape import UNIT_OF_WORD, check_shape, mapping_of
from evenseam.reading.sizes import read_projects, read_sizes
from evenseam.reading.tree import Entry, Listing, Mapping, Scalar

_NO_DRAWINGS: MappingOf[str, SourceText] = {}


def read_pattern(
    slug_: str, source: SourceText, drawings: MappingOf[str, SourceText] = _NO_DRAWINGS
) -> Outcome[Pattern]:
    """Read a pattern file and check everything that can be known without working out sizes.

    `slug_` is the name of the pattern's folder. `drawings` are the texts beside the file, by file name; no other file
    can be named. There is no value when there is an error.
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
    pattern = _read_whole(slug_, source, tree, drafted, drawings, report)
    return Outcome(None if report.has_errors() else pattern, report.as_tuple())


def _drafted(tree: Mapping) -> Unit:
    word = tree.value("units")
    return UNIT_OF_WORD.get(word.text.strip(), Unit.INCH) if isinstance(word, Scalar) else Unit.INCH


def _read_whole(
    slug_: str, source: SourceText, tree: Mapping, drafted: Unit, drawings: MappingOf[str, SourceText], report: Report
) -> Pattern:
    start = Place(source.name, tree.place.line, tree.place.column, tree.place.line, tree.place.column + 1)
    entries = Entries(Reader(report, drafted, drafted), tree, PATTERN, start)
    entries.get("format")
    title = entries.words("title")
    version = entries.words("version", "1.0")
    changes = _read_changes(entries)
    _check_version(tree, version, changes, report)
    sizes = read_sizes(entries)
    projects = read_projects(tree, sizes, drafted, start, drawings, report)
    # Told once for the whole only where every size tells the same; a size may tell it otherwise.
    introductions = {project.introduction for project in projects}
    return Pattern(
        slug_, title, entries.words("summary"), version, entries.words("skill level"), entries.words("licence"),
        entries.words("designer"), changes, projects, _read_claims(entries, sizes, drafted),
        introductions.pop() if len(introductions) == 1 else None, start,
    )  # fmt: skip


def _read_changes(entries: Entries) -> tuple[Change, ...]:
    node = entries.node("changes")
    if not isinstance(node, Listing):
        return ()
    changes: list[Change] = []
    for item in node.items:
        if not isinstance(item, Mapping):
            continue
        at = item.entries[0].key.place if item.entries else item.place
        inner = Entries(entries.reader, item, CHANGE, at)
        version, what = inner.words("version"), inner.words("what")
        date_node = inner.node("date")
        date = read_date(date_node, entries.reader.report) if date_node is not None else None
        if version and what and date:
            changes.append(Change(version, date, what, at))
    for newer, older in pairwise(changes):
        if newer.date < older.date:
            message = f"the change of {older.date} stands below that of {newer.date}"
            entries.reader.report.add(
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
            hint = did_you_mean(entry.key.text, tuple(known.values())) or "known here: " + listed(tuple(known.values()))
            entries.reader.report.add(
                codes.UNDEFINED_SIZE, entry.key.place, f"no size is called {shown(entry.key.text)}", hint
            )
        elif isinstance(entry.value, Mapping):
            for figure in entry.value.entries:
                stated = read_stated(figure.value, drafted, entries.reader.report)
                if stated is not None:
                    name = figure.key.text
                    claims.append(Claim(size, name, given(name, *stated, figure.value)))
    return tuple(claims)
