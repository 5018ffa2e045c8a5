"""What every guided fuzzing run has in common: counting, keeping the first of each failure, ending in time."""

from __future__ import annotations

import argparse
import json
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from random import Random

SLOW = 1.0
"""Seconds after which an input is kept as a slow one."""


class Fuzzing:
    """Counts what was tried and keeps the first input of each kind of failure.

    `read` turns the guide's bytes into a kind and a text; `check` fails when something about the text is not as it
    must be, and returns what it was counted as besides its kind, if anything.
    """

    def __init__(
        self,
        folder: Path,
        minutes: float,
        read: Callable[[bytes], tuple[str, str]],
        check: Callable[[str, str, int], str],
    ) -> None:
        self.folder = folder
        self.ends = time.monotonic() + 60 * minutes
        self.read = read
        self.check = check
        self.tried: Counter[str] = Counter()
        self.besides: Counter[str] = Counter()
        self.failures: Counter[str] = Counter()
        self.slowest = 0.0
        self.is_told = False

    def one(self, data: bytes) -> None:
        """Try one input of the guide."""
        if time.monotonic() > self.ends:
            # The guide ends by itself a moment later, with figures of its own.
            self.tell()
            time.sleep(0.1)
            return
        kind, text = self.read(data)
        self.tried[kind] += 1
        began = time.process_time()
        try:
            besides = self.check(kind, text, self.tried[kind])
            if besides:
                self.besides[besides] += 1
        except Exception as error:
            self.keep(error, text)
        took = time.process_time() - began
        if took > max(self.slowest, SLOW):
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
            "of these": dict(self.besides),
            "failures": dict(self.failures),
            "slowest processor seconds": round(self.slowest, 2),
        }
        print(json.dumps(figures, indent=1), f"\nkept in {self.folder}", flush=True)


def changed(text: str, data: bytes, pieces: Sequence[str]) -> str:
    """Return a text with some stretches replaced, as the bytes say: each change is a place, a length and a piece."""
    chance = Random(data[:4])
    for start in range(0, min(len(data), 32), 4):
        step = data[start : start + 4].ljust(4, b"\0")
        at = (step[0] * 256 + step[1]) % (len(text) + 1)
        end = at + step[2] % 12
        if step[3] < 200:
            piece = pieces[step[3] % len(pieces)]
        else:
            other = chance.randrange(len(text) or 1)
            piece = text[other : other + 30]
        text = text[:at] + piece + text[end:]
    return text + data[32:].decode("utf-8", "replace")


def words_of(description: str | None) -> argparse.Namespace:
    """Return the words of the command line: how long, and where failures are kept."""
    parser = argparse.ArgumentParser(description=description, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--minutes", type=float, default=20)
    parser.add_argument("--keep", type=Path, help="folder for failures")
    options = parser.parse_args()
    options.keep = options.keep or Path(tempfile.mkdtemp(prefix="fuzz-"))
    options.keep.mkdir(parents=True, exist_ok=True)
    return options


def start(fuzzing: Fuzzing, minutes: float, seeds: Iterable[bytes], dictionary: Iterable[str]) -> None:
    """Hand over to the guide, with first inputs and words it may put in."""
    import atheris  # type: ignore[import-not-found]

    corpus = fuzzing.folder / "corpus"
    corpus.mkdir(exist_ok=True)
    for number, seed in enumerate(seeds):
        (corpus / f"seed-{number}").write_bytes(seed)
    told = fuzzing.folder / "words.dict"
    told.write_text("".join(f'"{_escaped(word)}"\n' for word in dictionary), "ascii")
    words = [
        sys.argv[0],
        str(corpus),
        f"-dict={told}",
        "-max_len=6000",
        "-rss_limit_mb=2000",
        "-timeout=60",
        "-seed=1",
        f"-max_total_time={round(minutes * 60) + 10}",
        "-print_final_stats=1",
    ]
    atheris.Setup(words, fuzzing.one)
    atheris.Fuzz()


def _escaped(word: str) -> str:
    return "".join(f"\\x{byte:02x}" for byte in word.encode("utf-8", "surrogatepass"))
