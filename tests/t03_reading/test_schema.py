"""The JSON Schema says what the reader says, checked with an independent validator."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml
from evenseam.reading import key_reference, schema, starter
from evenseam.reading.part_keys import UNITS
from support.pattern_texts import FULL, SMALL, changed, read

SCHEMA = schema()
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)


class EditorLoader(yaml.SafeLoader):
    """Resolves plain scalars by the core schema of YAML 1.2 (section 10.3.2), as editors do."""


EditorLoader.yaml_implicit_resolvers = {}
for tag, pattern in (
    ("null", r"~|null|Null|NULL|"),
    ("bool", r"true|True|TRUE|false|False|FALSE"),
    ("int", r"[-+]?[0-9]+"),
    ("float", r"[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?"),
):
    EditorLoader.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(f"^(?:{pattern})$"), None)


def as_an_editor_reads(text: str) -> Any:
    """Return a file as an editor's validator sees it: numbers are numbers, no is a word."""
    return yaml.load(text, EditorLoader)


def faults(text: str) -> list[str]:
    """Return what the schema has to say about a file."""
    return [f"{list(error.path)}: {error.message}" for error in VALIDATOR.iter_errors(as_an_editor_reads(text))]


def test_it_is_a_schema_and_survives_json() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    assert json.loads(json.dumps(SCHEMA)) == SCHEMA


def test_it_is_the_same_each_time() -> None:
    assert json.dumps(schema(), sort_keys=True) == json.dumps(SCHEMA, sort_keys=True)


@pytest.mark.parametrize("text", [FULL, SMALL, starter("Low Tide")], ids=["full", "small", "starter"])
def test_good_files_are_good(text: str) -> None:
    assert faults(text) == []


PATTERNS = sorted((Path(__file__).parents[2] / "patterns").glob("*/pattern.yaml"))


@pytest.mark.parametrize("path", PATTERNS, ids=lambda path: path.parent.name)
def test_what_the_reader_takes_of_the_workshop_the_schema_takes(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert faults(text) == [] or read(text).errors


@pytest.mark.parametrize(
    "length", ["2", "2.5", "5/8", "1 1/4", "1-1/4", "1½", "½", '"2 1/2"', "2 in", "'12\"'", "2inch", "2 inches"]
)
def test_lengths_as_number_and_as_text(length: str) -> None:
    text = changed(SMALL, "title:", f"usable width: {length}\ntitle:")
    assert faults(text) == []
    assert read(text).problems == ()


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("title: Sample", "title: Sample\nprice: 12"),
        ("title: Sample\n", ""),
        ("title: Sample", "title: [Sample]"),
        ("title: Sample", "title: Sample\nusable width: -3"),
        ("title: Sample", "title: Sample\nusable width: 0"),
        ("title: Sample", "title: Sample\nusable width: wide"),
        ("title: Sample", "title: Sample\nusable width: 3 cubits"),
        ("title: Sample", "title: Sample\nunits: feet"),
        ("title: Sample", "title: Sample\neditions: [feet]"),
        ("title: Sample", "title: Sample\neditions: {inches: {usable wide: 3}}"),
        ("title: Sample", "title: Sample\nchanges: [{version: '1.0', date: 2026-01-02}]"),
        ("title: Sample", "title: Sample\nchanges: [{version: '1.0', date: 3.2.2026, what: Mended.}]"),
        ("format: 1", "format: 2"),
        ('"#d9dcd6"', "blue"),
        ("rows: 1", "rows: 0"),
        ("rows: 1", "rows: 1.5"),
        ("rows: 1", "rows: many"),
        ("block: buoy", "blok: buoy"),
        ("    finished size: 4 x 4", "    finished size: 4 by 4"),
        ("    grid: 4 x 4", "    grid: 4 in"),
        ("    grid: 4 x 4", "    grid: 4 x 4\n    method: paper"),
        ("      - sea: 0,0 4,0 4,4", "      - sea: 0,0 4,0"),
        ("      - sea: 0,0 4,0 4,4", '      - {fabric: sea, name: sky, corner: "0,0 4,0 4,4"}'),
        ("      - sea: 0,0 4,0 4,4", "      - sea"),
        ("kind: turned", "kind: folded"),
        ("kind: turned", "kind: turned, binding: {fabric: sea}"),
        ("mug rug: {}", "mug rug: {borders: {rim: {wide: 2}}}"),
        ("mug rug: {}", "mug rug: {title: Another}"),
        ("mug rug: {}", "mug rug: {hanging: {kind: sleeve, square: 4}}"),
        ("mug rug: {}", "mug rug: {finish: {topstitch: 0}}"),
        ("mug rug: {}", "mug rug: small"),
        ("sizes:\n  mug rug: {}", "sizes: [mug rug]"),
        ("sizes:\n  mug rug: {}", "sizes: {mug rug: {}}\nclaims: {mug rug: {finished width: wide}}"),
    ],
)
def test_bad_files_are_bad_for_both(old: str, new: str) -> None:
    text = changed(SMALL, old, new)
    assert faults(text)
    assert read(text).errors


@pytest.mark.parametrize(
    ("old", "new"),
    [
        *(("\nseam allowance: 1/4", f"\nseam allowance: {new}") for new in ("0.25", "'1/4'", "1/4 in", "none", "")),
        *(("directional: no", f"directional: {new}") for new in ("yes", "true", "false", '"yes"')),
        *(("hanging: none", f"hanging: {new}") for new in ("", "{kind: corner pockets}", "{hem: 2}")),
        *(("borders: {outer border: none}", f"borders: {new}") for new in ("none", "", "{outer border: {width: 2}}")),
        *(("finished width: 26,", f"finished width: {new},") for new in ("-1", "0", "66.5 cm", "'5/8 yd'")),
        ("batting: {name: Wool batting}", "batting: none"),
        ("grid: 2 x 3", "grid: 2 × 3"),
        ("    finished size: 6 x 9\n    method: foundation", "    finished size: 6 in x 9 in\n    method: foundation"),
        ("    finished size: 6 x 9\n    method: foundation", "    finished size: 6 x 9 in\n    method: foundation"),
    ],
)
def test_what_the_reader_takes_the_schema_takes(old: str, new: str) -> None:
    text = changed(FULL, old, new)
    assert read(text).errors == ()
    assert faults(text) == []


def test_every_key_of_the_reference_is_in_the_schema() -> None:
    properties: set[str] = set()

    def look(node: object) -> None:
        if isinstance(node, dict):
            properties.update(node.get("properties", {}))
            for value in node.values():
                look(value)
        elif isinstance(node, list):
            for value in node:
                look(value)

    look(SCHEMA)
    assert {reference.key for reference in key_reference()} == properties - set(UNITS)


def test_every_property_is_described() -> None:
    found = 0

    def look(node: object, is_rule: bool = False) -> None:
        nonlocal found
        if isinstance(node, dict):
            for key, made in node.get("properties", {}).items():
                assert is_rule or made.get("description") or key in UNITS, key
                found += 1
            for key, value in node.items():
                look(value, is_rule or key in ("if", "then"))
        elif isinstance(node, list):
            for value in node:
                look(value, is_rule)

    look(SCHEMA)
    assert found > 80
