"""From texts to a pattern: YAML, drawings, and every check on them."""

from evenseam.reading.drawing_look import DrawingLook, look_at_drawing
from evenseam.reading.drawings_asked_for import look_at_drawings
from evenseam.reading.partition import Spotted
from evenseam.reading.pattern_file import read_pattern
from evenseam.reading.reference import KeyReference, key_reference
from evenseam.reading.schema import schema
from evenseam.reading.starter import starter

__all__ = [
    "DrawingLook",
    "KeyReference",
    "Spotted",
    "key_reference",
    "look_at_drawing",
    "look_at_drawings",
    "read_pattern",
    "schema",
    "starter",
]
