"""From a sheet to sentences: a small document tree that pages and handouts are both written from."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from evenseam.wording.catalogue import Language, language
    from evenseam.wording.codes import CODES
    from evenseam.wording.document import Document
    from evenseam.wording.words import BASE_LANGUAGE, Words, languages, words_of
    from evenseam.wording.writer import check_prose, write_document

__all__ = [
    "BASE_LANGUAGE",
    "CODES",
    "Document",
    "Language",
    "Words",
    "check_prose",
    "language",
    "languages",
    "words_of",
    "write_document",
]

_MODULES = {
    "BASE_LANGUAGE": "words",
    "CODES": "codes",
    "Document": "document",
    "Language": "catalogue",
    "Words": "words",
    "check_prose": "writer",
    "language": "catalogue",
    "languages": "words",
    "words_of": "words",
    "write_document": "writer",
}


def __getattr__(name: str) -> object:
    # Loaded when first named: a site of which nothing changed needs a few words and none of the engine.
    if name not in _MODULES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_MODULES[name]}"), name)
