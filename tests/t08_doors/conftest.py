"""The project's own site, built once for all tests that look at it in a browser."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from support.own_site import build_own, free_port
from support.served_site import served


@pytest.fixture(scope="session")
def own_port() -> int:
    return free_port()


@pytest.fixture(scope="session")
def own_site(tmp_path_factory: pytest.TempPathFactory, own_port: int) -> Path:
    return build_own(tmp_path_factory.mktemp("own"), own_port, handouts="always", author_pages="always")


@pytest.fixture(scope="session")
def own_address(own_site: Path, own_port: int) -> Iterator[str]:
    with served(own_site, own_port) as address:
        yield address
