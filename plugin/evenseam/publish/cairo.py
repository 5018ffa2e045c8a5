"""Whether the cairo library is here, and what to do about it when it is not."""

from __future__ import annotations

from functools import cache

INSTALL_CAIRO = (
    "pictures as PNG and templates-only PDFs are left out: the cairo library is not here "
    "(Debian: apt install libcairo2; macOS: brew install cairo; Windows: install GTK 3 with its cairo library)"
)


@cache
def has_cairo() -> bool:
    """Tell whether the cairo library can be used on this computer."""
    try:
        import cairosvg  # type: ignore[import-untyped]  # noqa: F401
    except (ImportError, OSError):
        return False
    return True
