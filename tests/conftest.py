"""Settings for all tests: no clock-driven failures, the same examples every time."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

settings.register_profile(
    "evenseam", deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
)
settings.load_profile("evenseam")
