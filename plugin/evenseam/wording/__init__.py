"""From a sheet to sentences: a small document tree that pages and handouts are both written from."""

from evenseam.wording.catalogue import BASE_LANGUAGE, Language, language, languages
from evenseam.wording.codes import CODES
from evenseam.wording.document import Document
from evenseam.wording.writer import check_prose, write_document

__all__ = ["BASE_LANGUAGE", "CODES", "Document", "Language", "check_prose", "language", "languages", "write_document"]
