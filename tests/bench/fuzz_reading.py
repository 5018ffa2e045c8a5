"""Throws changed pattern files and texts at the reader, guided by the code they reach; prints what broke.

    python -m venv /tmp/fuzz && /tmp/fuzz/bin/pip install atheris pyyaml jinja2 markdown-it-py tinycss2 typst
    nice -n 19 /tmp/fuzz/bin/python tests/bench/fuzz_reading.py --minutes 20

The guide (atheris) is no part of the lock. Each different failure is kept once, in the folder named at the end.
"""

from __future__ import annotations

import sys
from pathlib import Path

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2] / "plugin"), str(HERE.parents[1]), str(HERE.parent)]

import atheris  # type: ignore[import-not-found] # noqa: E402

with atheris.instrument_imports(include=["evenseam", "markdown_it", "yaml"]):
    from evenseam.publish.handout import HandoutFrame, write_handout
    from evenseam.wording.document import Document
    from fuzzing import Fuzzing, changed, start, words_of
    from support import harmless, pattern_texts

SEEDS = (pattern_texts.FULL, pattern_texts.SMALL)
PROSE_SEEDS = (
    "Hang them by a **window**.\n\n* one\n* two\n\n[tide](https://example.org/a) {{ finished_width }}\n",
    "| a | b |\n| - | - |\n| 1 | `x` |\n\n1. one\n   > two\n",
    "<b onclick=x>{{ 7*7 }}</b> {% for %} [x](javascript:alert(1)) ![y](z) #panic(\"x\") $x$ \\u{1F600}",
)  # fmt: skip
PIECES = (
    "{{ finished_width }}", "<script>", "javascript:", "![", "](", "&#x6a;", "\u202e", "\x00", "&", "*", "!!python/object:", "<<: ", "|\n", ">\n",
    "? ", "9" * 30, "1/1000000007", "#{", "}", "`", "\t", "- ", "{a: b}", "[[", "\ud7ff", "\ufeff", "0,0 1,0 1,1", "none", "1e999",
)  # fmt: skip
TYPST_EVERY = 200
"""Texts between two that are also set in type, which takes a thousand times as long."""


def read(data: bytes) -> tuple[str, str]:
    """Return an input of the guide with its kind: the first sign says what it is."""
    kind = ("file", "file", "changed file", "prose", "changed prose")[data[0] % 5] if data else "file"
    if not kind.startswith("changed"):
        return kind, data[1:].decode("utf-8", "replace")
    seeds = SEEDS if kind == "changed file" else PROSE_SEEDS
    return kind, changed(seeds[data[0] // 5 % len(seeds)], data[1:], PIECES)


def check(kind: str, text: str, number: int) -> str:
    """Fail unless a text is answered as it must be. Return what else was done with it."""
    if not kind.endswith("prose"):
        harmless.check_reading(text)
        return ""
    blocks = harmless.check_prose_text(text)
    if number % TYPST_EVERY == 0 and len(text) < 4000:
        write_handout(Document("A", "", blocks), HandoutFrame("", "", "a4"), lambda picture: "")
        return "set in type"
    return ""


def main() -> None:
    """Run for the time asked for."""
    options = words_of(__doc__)
    seeds = [(b"\0", text) for text in SEEDS] + [(b"\3", text) for text in PROSE_SEEDS]
    seeds += [(mark, "one two three four five six seven eight") for mark in (b"\2", b"\7", b"\4", b"\11", b"\16")]
    fuzzing = Fuzzing(options.keep, options.minutes, read, check)
    start(fuzzing, options.minutes, [mark + text.encode() for mark, text in seeds], PIECES)


if __name__ == "__main__":
    main()
