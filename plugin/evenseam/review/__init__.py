"""From two versions of a pattern to the changes between them, and the words that say why."""

from evenseam.review.annotations import write_annotations
from evenseam.review.as_json import review_as_json
from evenseam.review.changes import (
    Added,
    Cause,
    Change,
    InputCause,
    Kind,
    OwnCause,
    PartCause,
    Remeasured,
    Removed,
    Renamed,
    Restated,
    Where,
    swapped,
)
from evenseam.review.compare import Version, compare_patterns
from evenseam.review.corrections import Corrected, CorrectedSize, Correction, compare_versions, list_corrections
from evenseam.review.engines import EngineChange, EngineReview, compare_sheet_data
from evenseam.review.markdown import write_markdown
from evenseam.review.one_line import write_one_line
from evenseam.review.placed import PlacedChanges, compare_placed
from evenseam.review.report import Failure, PatternReview, Review, SizeReview, check_since, review_all, review_pattern
from evenseam.review.speech import Speech
from evenseam.review.weight import Weight, weight_of_pattern, weight_of_review, weights

__all__ = [
    "Added",
    "Cause",
    "Change",
    "Corrected",
    "CorrectedSize",
    "Correction",
    "EngineChange",
    "EngineReview",
    "Failure",
    "InputCause",
    "Kind",
    "OwnCause",
    "PartCause",
    "PatternReview",
    "PlacedChanges",
    "Remeasured",
    "Removed",
    "Renamed",
    "Restated",
    "Review",
    "SizeReview",
    "Speech",
    "Version",
    "Weight",
    "Where",
    "check_since",
    "compare_patterns",
    "compare_placed",
    "compare_sheet_data",
    "compare_versions",
    "list_corrections",
    "review_all",
    "review_as_json",
    "review_pattern",
    "swapped",
    "weight_of_pattern",
    "weight_of_review",
    "weights",
    "write_annotations",
    "write_markdown",
    "write_one_line",
]
