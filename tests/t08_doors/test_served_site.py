"""The server of the tests: quiet about a browser that leaves, and not about a fault of its own."""

from __future__ import annotations

import pytest
from support.served_site import PatientServer, QuietHandler


@pytest.mark.parametrize(
    ("fault", "is_told"), [(BrokenPipeError(), False), (ConnectionResetError(), False), (KeyError("page"), True)]
)
def test_only_faults_are_told(fault: Exception, is_told: bool, capsys: pytest.CaptureFixture[str]) -> None:
    server = PatientServer(("127.0.0.1", 0), QuietHandler)
    try:
        try:
            raise fault
        except Exception:
            server.handle_error(None, ("127.0.0.1", 1))
    finally:
        server.server_close()
    assert ("Traceback" in capsys.readouterr().err) is is_told
