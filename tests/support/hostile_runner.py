"""Publishes hostile pattern folders, each in a process of its own with little memory and time and no way out.

    python -m support.hostile_runner FOLDER

Each input of the corpus is written below FOLDER, published, and its result printed as one line of JSON.
"""

from __future__ import annotations

import json
import os
import resource
import signal
import sys
import sysconfig
import time
import traceback
from pathlib import Path
from typing import Any

from evenseam.publish import making  # noqa: F401  everything is loaded before the doors are locked
from evenseam.publish.cache import Cache, engine_mark
from evenseam.publish.cairo import has_cairo
from evenseam.publish.export import export
from evenseam.publish.options import SiteOptions
from evenseam.publish.site import build_site
from evenseam.publish.sources import find_patterns

from support.hostile import CORPUS, SECRET, Hostile

MEMORY = 1_500_000_000
"""Bytes of address space."""
SECONDS = 30
"""Of processor time."""
_FORBIDDEN = (
    "socket.connect",
    "socket.getaddrinfo",
    "socket.bind",
    "socket.sendto",
    "subprocess.Popen",
    "os.system",
    "os.exec",
    "os.posix_spawn",
    "urllib.Request",
)


def main() -> None:
    """Run the whole corpus."""
    top = Path(sys.argv[1]).resolve()
    wanted = sys.argv[2:]
    engine_mark()
    # Where cairo is looked for does not depend on any pattern, and is looked up once.
    has_cairo()
    for number, hostile in enumerate(CORPUS):
        if wanted and not any(part in hostile.name for part in wanted):
            continue
        folder = top / str(number)
        began = time.monotonic()
        result = in_a_process_of_its_own(hostile, folder)
        result |= {"name": hostile.name, "seconds": round(time.monotonic() - began, 1)}
        print(json.dumps(result), flush=True)


def in_a_process_of_its_own(hostile: Hostile, folder: Path) -> dict[str, Any]:
    """Publish one input and return what came of it."""
    (folder / "patterns").mkdir(parents=True)
    (folder / "secret.txt").write_text(f"title: {SECRET}\n")
    (folder / "secret.svg").write_text(f"<svg><title>{SECRET}</title></svg>")
    child = os.fork()
    if not child:
        status = 1
        try:
            (folder / "result.json").write_text(json.dumps(publish(hostile, folder)))
            status = 0
        except BaseException:
            (folder / "result.json").write_text(json.dumps({"crash": traceback.format_exc()}))
        finally:
            os._exit(status)
    status = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    try:
        result: dict[str, Any] = json.loads((folder / "result.json").read_text())
    except (OSError, ValueError):
        result = {"crash": f"the process ended with status {status} and said nothing"}
    return result


def publish(hostile: Hostile, folder: Path) -> dict[str, Any]:
    """Publish an input as a strict stranger's site, watching what is opened."""
    hostile.write(folder / "patterns")
    os.chdir(folder)
    opened: list[str] = []
    lock_the_doors(folder, opened)
    options = SiteOptions(
        papers=("a4",), has_handouts=hostile.has_handouts, has_paper_pictures=False, has_author_guide=False
    )
    site = build_site(find_patterns(Path("patterns")), options, Cache(folder / "cache"), processes=1)
    export(site, folder / "out")
    return {
        "problems": [
            [problem.code.name, problem.severity.value, str(problem.place or ""), problem.message, problem.hint]
            for problem in site.problems
        ],
        "pages": [page.path for page in site.pages],
        "opened": opened,
        "processor": round(time.process_time(), 1),
        "memory": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss,
    }


def lock_the_doors(folder: Path, opened: list[str]) -> None:
    """Allow little memory and time; note every file opened elsewhere and everything that could lead out."""
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS + 1))
    signal.alarm(4 * SECONDS)
    allowed = [
        str(folder),
        sysconfig.get_paths()["stdlib"],
        *(os.path.realpath(path) for path in sys.path if path),
        sys.prefix,
        "/dev/urandom",
        "/dev/null",
        "/proc/self/",
        "/sys/fs/cgroup",
        "/usr/share/zoneinfo",
    ]

    def watch(event: str, arguments: tuple[Any, ...]) -> None:
        if event == "open":
            path = arguments[0]
            if isinstance(path, int):
                return
            whole = os.path.realpath(os.fsdecode(path))
            if not any(whole.startswith(start) for start in allowed):
                opened.append(whole)
        elif event.startswith(_FORBIDDEN):
            opened.append(f"{event} {arguments!r:.200}")

    sys.addaudithook(watch)


if __name__ == "__main__":
    main()
