"""Settings for all tests: no clock-driven failures, the same examples every time."""

from __future__ import annotations

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
