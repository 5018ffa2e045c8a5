"""From a pattern and a size to the sheet that every page, picture, paper and review reads."""

from evenseam.sheet.pattern_sheet import PatternSheet

__all__ = ["PatternSheet"]
