"""Evenseam, a pattern publisher: one pattern file becomes a page, templates and a handout."""

__version__ = "0.1.0"
