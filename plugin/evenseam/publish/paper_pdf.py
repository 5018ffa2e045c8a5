"""True-scale pages to one PDF by the cairo library: each page as large as its paper, the same bytes every time."""

from __future__ import annotations

import io
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from evenseam.figures.paper import PaperPage

if TYPE_CHECKING:
    from cairosvg.surface import PDFSurface  # type: ignore[import-untyped]

FIXED_DATE = "2000-01-01T00:00:00Z"
"""A PDF must carry a date; ours says nothing, so that the same pages give the same bytes."""


class CairoMissingError(RuntimeError):
    """The cairo library, or the Python package that draws with it, is not installed on this computer."""

    def __init__(self, reason: Exception) -> None:
        super().__init__(
            "templates-only PDFs need the cairo library (Debian: apt install libcairo2; macOS: brew install cairo; "
            f"Windows: install GTK 3 with its cairo library) and evenseam[pictures]: {reason}"
        )


def templates_pdf(pages: Sequence[PaperPage], title: str) -> bytes:
    """Return one PDF with a page for each page of templates, 72 points to the inch.

    Raises CairoMissingError where cairo cannot be loaded, ValueError without pages.
    """
    if not pages:
        raise ValueError("no pages to print")
    try:
        import cairocffi  # type: ignore[import-untyped]
        from cairosvg.parser import Tree  # type: ignore[import-untyped]
    except (ImportError, OSError) as reason:
        raise CairoMissingError(reason) from reason
    output = io.BytesIO()
    book = cairocffi.PDFSurface(output, pages[0].width_points, pages[0].height_points)
    book.set_metadata(cairocffi.PDF_METADATA_TITLE, title)
    for what in (cairocffi.PDF_METADATA_CREATE_DATE, cairocffi.PDF_METADATA_MOD_DATE):
        book.set_metadata(what, FIXED_DATE)
    surface_for = _page_surface(book)
    for page in pages:
        # Dots per inch do not matter: width and height are in physical units, and the viewBox in the same.
        surface_for(Tree(bytestring=page.svg.encode(), unsafe=False), output, 96).finish()
    book.finish()
    return output.getvalue()


def _page_surface(book: Any) -> type[PDFSurface]:
    """Return a surface class whose every drawing is one more page of a book."""
    from cairosvg.surface import PDFSurface

    class PageSurface(PDFSurface):  # type: ignore[misc]
        def _create_surface(self, width: float, height: float) -> tuple[Any, float, float]:
            book.set_size(width, height)
            return book, width, height

        def finish(self) -> None:
            book.show_page()

    return PageSurface
