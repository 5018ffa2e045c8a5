"""Plain data as JSON with one line for each entry: easy to compare line by line, and quick to write."""

from __future__ import annotations

import json
from collections.abc import Mapping


def in_lines(data: Mapping[str, object]) -> str:
    """Return a table as JSON: what lists and tables in it hold stands on a line each.

    >>> print(in_lines({"size": "lap", "cuts": [{"id": "a"}, {"id": "b"}]}), end="")
    {
    "cuts": [
    {"id": "a"},
    {"id": "b"}
    ],
    "size": "lap"
    }
    """
    return "{\n" + ",\n".join(f"{_line(name)}: {_entry(value)}" for name, value in sorted(data.items())) + "\n}\n"


def _entry(value: object) -> str:
    match value:
        case [_, *_]:
            return "[\n" + ",\n".join(_line(part) for part in value) + "\n]"
        case dict() if value:
            return "{\n" + ",\n".join(f"{_line(name)}: {_line(part)}" for name, part in sorted(value.items())) + "\n}"
        case _:
            return _line(value)


def _line(value: object) -> str:
    # Without indentation the library writes everything at once.
    return json.dumps(value, ensure_ascii=False, sort_keys=True)
