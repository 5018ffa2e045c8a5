"""Throws changed pattern files and texts at the reader, guided by the code they reach; prints what broke.

    python -m venv /tmp/fuzz && /tmp/fuzz/bin/pip install atheris pyyaml jinja2 markdown-it-py typst
    nice -n 19 /tmp/fuzz/bin/python tests/bench/fuzz_reading.py --minutes 20

The guide (atheris) is no part of the lock. Each different failure is kept once, in the folder named at the end.
"""

from __future__ import annotations

import argparse
import json
import sys
import tempfile
import time
import traceback
from collections import Counter
from pathlib import Path
from random import Random

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2] / "plugin"), str(HERE.parents[1])]

import atheris  # type: ignore[import-not-found] # noqa: E402

with atheris.instrument_imports(include=["evenseam", "markdown_it", "yaml"]):
    from evenseam.publish.handout import HandoutFrame, write_handout
    from evenseam.wording.document import Document
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


class Fuzzing:
    """Counts what was tried and keeps the first input of each kind of failure."""

    def __init__(self, folder: Path, minutes: float) -> None:
        self.folder = folder
        self.ends = time.monotonic() + 60 * minutes
        self.tried: Counter[str] = Counter()
        self.failures: Counter[str] = Counter()
        self.slowest = 0.0
        self.is_told = False

    def one(self, data: bytes) -> None:
        """Try one input of the guide: its first sign says what it is."""
        if time.monotonic() > self.ends:
            # The guide ends by itself a moment later, with figures of its own.
            self.tell()
            return
        kind = ("file", "file", "changed file", "prose", "changed prose")[data[0] % 5] if data else "file"
        text = data[1:].decode("utf-8", "replace")
        if kind.startswith("changed"):
            seeds = SEEDS if kind == "changed file" else PROSE_SEEDS
            text = changed(seeds[data[0] // 5 % len(seeds)], data[1:])
        self.tried[kind] += 1
        began = time.monotonic()
        try:
            if kind.endswith("prose"):
                blocks = harmless.check_prose_text(text)
                if self.tried[kind] % TYPST_EVERY == 0 and len(text) < 4000:
                    self.tried["set in type"] += 1
                    write_handout(Document("A", "", blocks), HandoutFrame("", "", "a4"), lambda picture: "")
            else:
                harmless.check_reading(text)
        except Exception as error:
            self.keep(error, text)
        took = time.monotonic() - began
        if took > max(self.slowest, 1.0):
            (self.folder / f"slow-{took:.1f}.txt").write_text(text, "utf-8", "surrogatepass")
        self.slowest = max(self.slowest, took)

    def keep(self, error: Exception, text: str) -> None:
        """Keep a failure that was not seen before."""
        where = traceback.extract_tb(error.__traceback__)[-1]
        name = f"{type(error).__name__}-{Path(where.filename).stem}-{where.lineno}"
        self.failures[name] += 1
        if self.failures[name] == 1:
            path = self.folder / f"{name}.txt"
            path.write_text(text, "utf-8", "surrogatepass")
            print(f"NEW FAILURE {name}: {error!r:.300}\n  kept in {path}", flush=True)

    def tell(self) -> None:
        """Print the figures, once."""
        if self.is_told:
            return
        self.is_told = True
        figures = {
            "tried": dict(self.tried),
            "all": sum(self.tried.values()),
            "failures": dict(self.failures),
            "slowest seconds": round(self.slowest, 2),
        }
        print(json.dumps(figures, indent=1), f"\nkept in {self.folder}", flush=True)


def changed(text: str, data: bytes) -> str:
    """Return a text with some stretches replaced, as the bytes say: each change is a place, a length and a piece."""
    chance = Random(data[:4])
    for start in range(0, min(len(data), 32), 4):
        step = data[start : start + 4].ljust(4, b"\0")
        at = step[0] * 256 + step[1]
        at %= len(text) + 1
        end = at + step[2] % 12
        piece = (
            PIECES[step[3] % len(PIECES)]
            if step[3] < 200
            else text[(other := chance.randrange(len(text) or 1)) : other + 30]
        )
        text = text[:at] + piece + text[end:]
    return text + data[32:].decode("utf-8", "replace")


def main() -> None:
    """Run for the time asked for."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--minutes", type=float, default=20)
    parser.add_argument("--keep", type=Path, help="folder for failures")
    options = parser.parse_args()
    folder = options.keep or Path(tempfile.mkdtemp(prefix="fuzz-"))
    corpus = folder / "corpus"
    corpus.mkdir(parents=True, exist_ok=True)
    seeds = [(b"\0", text) for text in SEEDS] + [(b"\3", text) for text in PROSE_SEEDS]
    seeds += [(mark, "one two three four five six seven eight") for mark in (b"\2", b"\7", b"\4", b"\11", b"\16")]
    for number, (mark, text) in enumerate(seeds):
        (corpus / f"seed-{number}").write_bytes(mark + text.encode())
    fuzzing = Fuzzing(folder, options.minutes)
    words = [
        sys.argv[0],
        str(corpus),
        "-max_len=6000",
        "-rss_limit_mb=2000",
        "-timeout=60",
        "-seed=1",
        f"-max_total_time={round(options.minutes * 60) + 10}",
        "-print_final_stats=1",
    ]
    atheris.Setup(words, fuzzing.one)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
