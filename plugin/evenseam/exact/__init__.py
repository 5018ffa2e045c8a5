"""Exact numbers, named roundings, and lengths as makers read and write them."""

from evenseam.exact.length import LengthError, ParsedLength, format_length, format_number, parse_length
from evenseam.exact.rounding import Direction, Rounding, is_multiple
from evenseam.exact.surd import Number, Surd, ceiling, floor, nearest, sign, square_root, to_float
from evenseam.exact.unit import CENTIMETRES_PER_INCH, Unit

__all__ = [
    "CENTIMETRES_PER_INCH",
    "Direction",
    "LengthError",
    "Number",
    "ParsedLength",
    "Rounding",
    "Surd",
    "Unit",
    "ceiling",
    "floor",
    "format_length",
    "format_number",
    "is_multiple",
    "nearest",
    "parse_length",
    "sign",
    "square_root",
    "to_float",
]
