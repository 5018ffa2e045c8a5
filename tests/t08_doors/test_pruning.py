"""The cache does not grow for ever, and nobody who works with it loses anything."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest
from evenseam.publish.cache import Cache
from evenseam.publish.pruning import DAY, UNUSED_DAYS, prune
from support.mkdocs_site import PLUGIN

fcntl = pytest.importorskip("fcntl", reason="without locks nothing is removed")
HOLDER = "import sys; from pathlib import Path; from evenseam.publish.cache import Cache; c = Cache(Path(sys.argv[1])); c.hold(); print('held', flush=True); sys.stdin.read()"
NOTE, OTHER_NOTE = "a" * 64, "b" * 64


@pytest.fixture
def cache(tmp_path) -> Cache:
    return Cache(tmp_path)


def age(folder: Path, days: float) -> None:
    then = time.time() - days * DAY
    for path in folder.rglob("*"):
        if path.is_file():
            os.utime(path, (then, then))


def test_what_was_not_used_for_a_month_goes_with_its_result(cache):
    cache.note(NOTE, cache.keep(b"old lantern"))
    age(cache.folder, UNUSED_DAYS + 1)
    cache.note(OTHER_NOTE, cache.keep(b"new lantern"))
    assert prune(cache, ()) == 2
    assert cache.noted(NOTE) is None
    assert cache.is_sound(str(cache.noted(OTHER_NOTE)))


def test_what_is_used_stays_however_old_its_result(cache):
    cache.note(NOTE, cache.keep(b"old lantern"))
    age(cache.folder, UNUSED_DAYS + 1)
    name = cache.noted(NOTE)
    assert prune(cache, ()) == 0
    assert cache.noted(NOTE) == name and cache.is_sound(str(name))


def test_results_that_nothing_leads_to_go_unless_they_are_needed(cache):
    needed, loose = cache.keep(b"the gallery"), cache.keep(b"a gallery of before")
    age(cache.folder, 2)
    fresh = cache.keep(b"a page whose note is not written yet")
    assert prune(cache, [needed]) == 1
    assert [cache.path(name).exists() for name in (needed, loose, fresh)] == [True, False, True]


def test_it_is_done_once_a_day(cache):
    assert prune(cache, ()) == 0
    loose = cache.keep(b"a gallery of before")
    age(cache.folder / "bytes", 2)
    assert prune(cache, ()) == 0 and cache.path(loose).exists()
    assert prune(cache, (), now=time.time() + 2 * DAY) == 1


def test_nothing_is_removed_while_another_build_is_at_work(cache):
    loose = cache.keep(b"a gallery of before")
    age(cache.folder, 2)
    other = subprocess.Popen(
        [sys.executable, "-c", HOLDER, str(cache.folder)],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env={**os.environ, "PYTHONPATH": str(PLUGIN)},
    )  # fmt: skip
    try:
        assert other.stdout is not None and other.stdout.readline() == "held\n"
        assert prune(cache, ()) == 0 and cache.path(loose).exists()
    finally:
        other.communicate("")
    assert prune(cache, ()) == 1 and not cache.path(loose).exists()
