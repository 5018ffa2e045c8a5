"""From texts to a pattern: YAML, drawings, and every check on them."""

from evenseam.reading.pattern_file import read_pattern
from evenseam.reading.reference import KeyReference, key_reference
from evenseam.reading.schema import schema
from evenseam.reading.starter import starter

__all__ = ["KeyReference", "key_reference", "read_pattern", "schema", "starter"]
