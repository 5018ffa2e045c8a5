"""Reading is quick, also for files that are made to be slow."""

from __future__ import annotations

import time

import pytest
from evenseam.reading.compose import LONGEST_FILE
from support.pattern_texts import FULL, SMALL, changed, read


def seconds(text: str, times: int = 1) -> float:
    """Return the shortest of a few readings."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        read(text)
        taken.append(time.perf_counter() - start)
    return min(taken)


def test_a_typical_pattern_in_well_under_fifty_milliseconds() -> None:
    """Measured at 8 ms on two cores of 2026; the limit leaves room for a slow machine."""
    assert seconds(FULL, times=5) < 0.05


GRID = "\n".join(
    f"      - sea: {x},{y} {x + 1},{y} {x + 1},{y + 1} {x},{y + 1}" for y in range(16) for x in range(16)
)  # fmt: skip
STACKED = "\n".join("      - sea: 0,0 63/64,0 1,62/63 0,1" for _ in range(300))
PIECES = "      - sea: 0,0 4,0 4,4\n      - fog: 0,0 4,4 0,4"

HEAVY = {
    "256 pieces": changed(SMALL, PIECES, GRID).replace("grid: 4 x 4", "grid: 16 x 16"),
    "300 pieces on one another": changed(SMALL, PIECES, STACKED),
    "1500 gaps": changed(SMALL, PIECES, "\n".join(GRID.splitlines()[::2])).replace("grid: 4 x 4", "grid: 16 x 16"),
    "a megabyte of brackets": "a: " + "[],{}," * (LONGEST_FILE // 8),
    "a megabyte of blanks": "title: '" + " " * (LONGEST_FILE - 20) + "x'",
    "a megabyte in a finished size": changed(SMALL, "finished size: 4 x 4", "finished size: '" + " " * 900_000 + "'"),
    "a megabyte in a layout": changed(SMALL, "block: buoy", "layout: [['buoy" + " " * 900_000 + "turned']]"),
    "a megabyte of digits": changed(SMALL, "grid: 4 x 4", "grid: " + "9" * 900_000),
    "a megabyte of corners": changed(SMALL, "0,0 4,0 4,4", "0,0 " * 200_000),
    "a megabyte of control characters": "\x01" * (LONGEST_FILE - 1),
    "a megabyte of tabs": "a:\n" + "\t\n" * (LONGEST_FILE // 2 - 10),
    "a megabyte of keys": "".join(f"{n}:\n" for n in range(120_000)),
    "a megabyte of double keys": "a:\n" * 300_000,
    "thousands of unknown keys": SMALL + "".join(f"finished sixe of part {n}: 1\n" for n in range(9_000)),
    "thousands of undefined fabrics": changed(
        changed(
            SMALL, "fabrics:", "fabrics:\n" + "".join(f"  fabrik {n}{n}: {{colour: '#ffffff'}}\n" for n in range(58))
        ),
        "blocks:\n",
        "blocks:\n"
        + "".join(
            f"  b{n}:\n    finished size: 4\n    grid: 4\n    pieces:\n"
            + "".join(f"      - fabric {n}-{m}: 0,0 4,0 4,4\n" for m in range(150))
            for n in range(38)
        ),
    )
    + "".join(f"  s{n}: {{arrangement: {{rows: {n}, columns: 3}}}}\n" for n in range(1, 40)),
    "forty sizes": SMALL + "".join(f"  s{n}: {{arrangement: {{rows: {n}, columns: 33}}}}\n" for n in range(1, 40)),
}


@pytest.mark.parametrize("name", HEAVY)
def test_heavy_files_take_seconds_at_most(name: str) -> None:
    assert seconds(HEAVY[name]) < 8
