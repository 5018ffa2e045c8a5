"""The command line: gathers text, calls one function, hands on what comes back."""

from evenseam.cli.main import main

__all__ = ["main"]
