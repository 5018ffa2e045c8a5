"""How long a site takes: ours against plain MkDocs with the same pages as Markdown, in the same run.

    python tests/bench/bench_site.py --patterns 25 100 --serve

Both sites have the same theme, the same search and `navigation.prune`. Ours starts from pattern files and computes
everything; plain MkDocs starts from finished Markdown and computes nothing. Its pages say what ours say: also what
changes when the reader's fabric is wider or narrower, which the reader chooses on the page. `--one-width` leaves that
out of the Markdown, as on a site that has no such choice.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
import urllib.request
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path

import yaml

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "plugin"), str(ROOT / "tests")]

THEME = {
    "name": "material",
    "font": False,
    "features": ["navigation.tabs", "navigation.prune", "navigation.indexes", "search.suggest"],
}
EXTENSIONS = ["admonition", "attr_list", "md_in_html", "tables", {"toc": {"permalink": True}}]
ENVIRONMENT = {**os.environ, "PYTHONPATH": str(ROOT / "plugin"), "NO_MKDOCS_2_WARNING": "1"}
PORT = 8137


def generate(folder: Path, count: int) -> None:
    """Write patterns with four sizes each, every one with figures of its own."""
    for number in range(count):
        width = 4 + number % 7
        height = 6 + number % 5
        pattern = {
            "format": 1,
            "title": f"Lantern Row {number:03d}",
            "summary": f"Lanterns along quay number {number}.",
            "designer": "Saltmarsh Workshop",
            "version": "1.0",
            "fabrics": {
                "fog": {"name": "Fog", "colour": "#d9dcd6"},
                "lamp": {"name": "Lamp Glow", "colour": "#e9b44c"},
                "sea": {"name": "Deep Sea", "colour": "#23465f"},
            },
            "blocks": {
                "lantern": {
                    "finished size": f"{width} x {height}",
                    "grid": "12 x 18",
                    "pieces": [
                        {"lamp": "3,6 9,6 9,14 3,14"}, {"sea": "3,6 6,0 9,6"}, {"fog": "0,0 6,0 3,6 0,6"},
                        {"fog": "6,0 12,0 12,6 9,6"}, {"fog": "0,6 3,6 3,14 0,14"}, {"fog": "9,6 12,6 12,14 9,14"},
                        {"sea": "0,14 12,14 12,18 0,18"},
                    ],
                }
            },
            "arrangement": {"rows": 1, "columns": 1, "block": "lantern"},
            "borders": {"border": {"width": "1", "fabric": "sea"}},
            "finish": {"kind": "turned", "backing": {"fabric": "fog"}},
            "sizes": {
                "mug rug": {"use": "mug rug"},
                "wall hanging": {"arrangement": {"columns": 3, "sashing": {"width": "1", "fabric": "fog"}}},
                "table runner": {
                    "arrangement": {"columns": 5, "sashing": {"width": "1 1/2", "fabric": "fog", "around": "yes"}},
                    "finish": {"kind": "bound", "binding": {"fabric": "sea"}, "backing": {"fabric": "fog"}},
                },
                "lap quilt": {
                    "arrangement": {
                        "rows": 4,
                        "columns": 5,
                        "sashing": {"width": "1 1/2", "fabric": "fog", "around": "yes", "cornerstones": "lamp"},
                    },
                    "borders": {"border": {"width": "4"}},
                    "finish": {"kind": "bound", "binding": {"fabric": "sea"}, "backing": {"fabric": "fog"}},
                },
            },
        }  # fmt: skip
        target = folder / f"lantern-row-{number:03d}"
        target.mkdir(parents=True)
        (target / "pattern.yaml").write_text(yaml.safe_dump(pattern, sort_keys=False), encoding="utf-8")


def write_plain_pages(patterns: Path, docs: Path, *, is_one_width: bool = False) -> int:
    """Write the same pages as Markdown for plain MkDocs; return how many."""
    folders = sorted(patterns.iterdir())
    with ProcessPoolExecutor() as pool:
        counts = pool.map(_write_plain_pattern, folders, [docs] * len(folders), [is_one_width] * len(folders))
        return sum(counts)


def _write_plain_pattern(folder: Path, docs: Path, is_one_width: bool) -> int:
    from bench.markdown_pages import write_markdown, write_markdown_at_widths
    from evenseam.figures import Theme
    from evenseam.publish.checked import check_pattern
    from evenseam.publish.options import edition_of
    from evenseam.publish.pictures import SheetPictures
    from evenseam.publish.size_text import write_width_texts
    from evenseam.publish.sources import find_patterns
    from evenseam.wording import write_document

    (source,) = find_patterns(folder)
    checked = check_pattern(source)
    target = docs / "patterns" / checked.slug
    target.mkdir(parents=True)
    for sheet in checked.sheets:
        document = write_document(sheet).value
        if document is None:
            raise RuntimeError(f"{checked.slug} could not be written")
        name = f"{sheet.project.size}-{edition_of(sheet.project.unit)}"
        pictures = SheetPictures(sheet)
        if is_one_width:
            text = write_markdown(document, pictures.painter(Theme.WEB, name))
        else:
            found = write_width_texts(pictures, document, name)
            text = write_markdown_at_widths(document, found.blocks, [one.painter for one in found.texts])
        (target / f"{name}.md").write_text(text, encoding="utf-8")
    title = checked.pattern.title if checked.pattern else checked.slug
    (target / "index.md").write_text(f"# {title}\n", encoding="utf-8")
    return len(checked.sheets)


def configure(folder: Path, *, is_ours: bool, handouts: str = "never") -> Path:
    """Write the settings of one site and return their path."""
    evenseam = {"evenseam": {"patterns": "patterns", "handouts": handouts, "author_guide": False}}
    settings = {
        "site_name": "Bench",
        "docs_dir": "docs",
        "theme": THEME,
        "markdown_extensions": EXTENSIONS,
        "plugins": ["search", evenseam] if is_ours else ["search"],
    }
    (folder / "docs").mkdir(exist_ok=True)
    (folder / "docs" / "index.md").write_text("# Bench\n", encoding="utf-8")
    path = folder / "mkdocs.yml"
    path.write_text(yaml.safe_dump(settings), encoding="utf-8")
    return path


@dataclass(frozen=True, order=True)
class Took:
    """Seconds on the clock, and seconds of work on all processors together: the latter hardly depend on neighbours."""

    clock: float
    work: float

    def over(self, other: Took) -> str:
        """Return the ratio to another time, on the clock and in work."""
        return f"{self.clock / other.clock:.3f} (work {self.work / other.work:.3f})"

    def __str__(self) -> str:
        return f"{self.clock:.2f} s (work {self.work:.2f} s)"


def build(config: Path) -> Took:
    """Build a site in a process of its own and return how long it took."""
    start, before = time.perf_counter(), resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(config)],
        check=True,
        env=ENVIRONMENT,
        cwd=config.parent,
    )
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    work = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return Took(time.perf_counter() - start, work)


def measure_builds(count: int, work: Path, *, is_one_width: bool) -> dict[str, object]:
    """Build both sites, cold and warm, and return the times and their ratios."""
    ours, plain = work / f"ours-{count}", work / f"plain-{count}"
    ours.mkdir()
    plain.mkdir()
    generate(ours / "patterns", count)
    our_config, plain_config = configure(ours, is_ours=True), configure(plain, is_ours=False)
    pages = write_plain_pages(ours / "patterns", plain / "docs", is_one_width=is_one_width)
    plain_time = min(build(plain_config) for _ in range(1 if count > 50 else 2))
    cold = build(our_config)
    warm = min(build(our_config) for _ in range(2))
    made = len(list((ours / "site" / "patterns").glob("*/*/index.html")))
    if made != pages:
        raise RuntimeError(f"{made} pages instead of {pages}")
    return {
        "pages": pages, "plain": str(plain_time), "cold": str(cold), "warm": str(warm),
        "cold ÷ plain": cold.over(plain_time), "warm ÷ plain": warm.over(plain_time),
    }  # fmt: skip


def measure_serve(config: Path, *, is_dirty: bool) -> float:
    """Return the seconds from saving one pattern to its new page being served."""
    command = [sys.executable, "-m", "mkdocs", "serve", "-q", "-f", str(config), "-a", f"127.0.0.1:{PORT}"]
    server = subprocess.Popen([*command, "--dirty"] if is_dirty else command, env=ENVIRONMENT, cwd=config.parent)
    try:
        pattern = sorted((config.parent / "patterns").iterdir())[0]
        address = f"http://127.0.0.1:{PORT}/patterns/{pattern.name}/mug-rug-inches/"
        _wait_for(address, "<html", 300)
        time.sleep(2)
        file = pattern / "pattern.yaml"
        text = file.read_text(encoding="utf-8")
        times = []
        for turn in range(3):
            mark = f"Edited Lantern {turn} {is_dirty}"
            start = time.perf_counter()
            file.write_text(text.replace("Lantern Row 000", mark), encoding="utf-8")
            _wait_for(address, mark, 60)
            times.append(time.perf_counter() - start)
            time.sleep(2)
        file.write_text(text, encoding="utf-8")
        return round(min(times), 2)
    finally:
        server.terminate()
        try:
            server.wait(10)
        except subprocess.TimeoutExpired:
            server.kill()
            server.wait()


def _wait_for(address: str, words: str, seconds: float) -> None:
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        try:
            with urllib.request.urlopen(address, timeout=5) as answer:
                if words in answer.read().decode():
                    return
        except OSError:
            pass
        time.sleep(0.02)
    raise TimeoutError(f"{words!r} never came to {address}")


def measure_handouts(count: int, work: Path) -> dict[str, object]:
    """Return how many handouts a second both cores set, pages included."""
    folder = work / f"handouts-{count}"
    folder.mkdir()
    generate(folder / "patterns", count)
    without = build(configure(folder, is_ours=True))
    shutil.rmtree(folder / ".cache")
    with_handouts = build(configure(folder, is_ours=True, handouts="always"))
    made = len(list((folder / "site").glob("patterns/*/*-letter.pdf"))) + len(
        list((folder / "site").glob("patterns/*/*-a4.pdf"))
    )
    more = with_handouts.clock - without.clock
    return {"files": made, "seconds": round(more, 2), "a second": round(made / more, 1)}


def main() -> None:
    """Measure what was asked for and print it as JSON, one line for each part."""
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--patterns", type=int, nargs="*", default=[25], help="numbers of patterns, four pages each")
    options.add_argument("--serve", action="store_true", help="also measure edit to page ready, at the largest number")
    options.add_argument("--handouts", type=int, default=0, help="also set the handouts of so many patterns")
    options.add_argument("--one-width", action="store_true", help="plain pages for one width of cloth only")
    chosen = options.parse_args()
    with tempfile.TemporaryDirectory(prefix="evenseam-bench-") as name:
        work = Path(name)
        for count in chosen.patterns:
            print(
                json.dumps(measure_builds(count, work, is_one_width=chosen.one_width), ensure_ascii=False), flush=True
            )
        if chosen.serve:
            config = work / f"ours-{max(chosen.patterns)}" / "mkdocs.yml"
            for is_dirty in (False, True):
                took = measure_serve(config, is_dirty=is_dirty)
                print(json.dumps({"edit to page ready": took, "dirty": is_dirty}), flush=True)
        if chosen.handouts:
            print(json.dumps({"handouts": measure_handouts(chosen.handouts, work)}), flush=True)


if __name__ == "__main__":
    main()
