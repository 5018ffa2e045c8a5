"""Kills builds of a small site at random moments and looks at what is published each time.

python tests/bench/bench_kills.py --kills 100
"""

from __future__ import annotations

import argparse
import json
import shutil
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "plugin"), str(ROOT / "tests")]

from support.front_door import SmallProject, kill  # noqa: E402
from support.mkdocs_site import tutorial_patterns  # noqa: E402


def main() -> None:
    """Print how often the old version was found, how often the new one, and how often neither."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--kills", type=int, default=100)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    chance = Random(options.seed)
    text = tutorial_patterns()[0]
    texts = (text, text.replace("title: Low Tide", "title: High Tide"))
    with tempfile.TemporaryDirectory(prefix="kills-") as folder:
        project = SmallProject(Path(folder) / "project", text)
        versions, took = [], 0.0
        for one in texts:
            project.write(one)
            began = time.monotonic()
            status, said = project.build()
            took = max(took, time.monotonic() - began)
            if status:
                raise SystemExit(said)
            versions.append(project.published())
        found: Counter[str] = Counter()
        standing = 1
        for number in range(options.kills):
            wanted = 1 - standing
            project.write(texts[wanted])
            if number % 3 == 0:
                shutil.rmtree(project.folder / ".cache", ignore_errors=True)
            process = project.start()
            time.sleep(chance.uniform(0, took * 1.2 if number % 3 == 0 else took / 1.5))
            found["ended before it was killed"] += process.poll() is not None
            kill(process)
            published = project.published()
            if published not in versions:
                found["NEITHER VERSION"] += 1
                continue
            found["the new version" if versions.index(published) == wanted else "the old version"] += 1
            standing = versions.index(published)
        project.write(texts[0])
        status, said = project.build()
        found["good last build, nothing left behind"] = int(
            status == 0 and project.published() == versions[0] and not project.leftovers()
        )
        print(json.dumps({"kills": options.kills, "longest build": round(took, 1), **found}, indent=1))


if __name__ == "__main__":
    main()
