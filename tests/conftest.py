"""Settings for all tests: no clock-driven failures, the same examples every time."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "evenseam",
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
settings.load_profile("evenseam")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Let golden files be accepted."""
    parser.addoption("--update-golden", action="store_true", help="write golden files anew, then read the difference")


@pytest.fixture
def update_golden(request: pytest.FixtureRequest) -> bool:
    """True when golden files are to be written anew."""
    return bool(request.config.getoption("--update-golden"))


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """Debian's Chromium. Where it is missing the test is skipped and says so; in continuous integration it fails."""
    chromium = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
    if chromium is None:
        reason = "this test wants a browser; install Chromium to run it (Debian: apt install chromium)"
        if os.environ.get("CI"):
            pytest.fail(reason)
        pytest.skip(reason)
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        yield started
        started.close()
