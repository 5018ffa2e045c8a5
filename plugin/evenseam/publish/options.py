"""What a site publishes of each pattern."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.exact import Unit

PAPERS = ("letter", "a4")
EDITIONS = {"inches": Unit.INCH, "centimetres": Unit.CENTIMETRE}
"""The editions by the names they have in addresses and options."""
EDITION_WORDS = {"inches": "inches", "centimetres": "centimeters"}
"""Where a language has the words for an edition."""


@dataclass(frozen=True, slots=True)
class SiteOptions:
    """What is made, and where it stands."""

    folder: str = "patterns"
    """The part of the site in which patterns stand."""
    papers: tuple[str, ...] = PAPERS
    editions: tuple[str, ...] = tuple(EDITIONS)
    has_handouts: bool = True
    has_author_guide: bool = True
    """A page with every key of a pattern file, for those who write patterns."""
    has_paper_pictures: bool = True
    """PNG cards and templates-only PDFs: only where the cairo library is installed."""

    language: str = "en"
    """The language of everything that is not the author's: en, en-GB, …"""

    has_author_pages: bool = False
    """A page for each pattern's author with every figure, seam and proof; and links to it."""

    @property
    def units(self) -> tuple[Unit, ...]:
        """The editions as units."""
        return tuple(EDITIONS[edition] for edition in self.editions)

    def as_text(self) -> str:
        """Return the options as one text, for telling two sets of options apart."""
        return repr(self)


def edition_of(unit: Unit) -> str:
    """Return the name of an edition: inches, centimetres."""
    return next(name for name, known in EDITIONS.items() if known is unit)
