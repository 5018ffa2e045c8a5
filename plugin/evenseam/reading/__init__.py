"""From texts to a pattern: YAML, drawings, and every check on them."""

from evenseam.reading.pattern_file import read_pattern

__all__ = ["read_pattern"]
