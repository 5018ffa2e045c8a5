"""The problems this floor finds in an author's words."""

from __future__ import annotations

from evenseam.problems import Code, Severity

UNKNOWN_FIGURE = Code(601, "unknown-figure")
"""{{ name }} is no figure of this size."""
NOT_A_FIGURE_NAME = Code(602, "not-a-figure-name")
"""Something other than one plain name stands between {{ and }}."""
UNFINISHED_FIGURE = Code(603, "unfinished-figure")
"""{{ without }}."""
NO_PROGRAMS = Code(604, "no-programs-in-text")
"""{% … %} or {# … #}."""
TYPED_MEASUREMENT = Code(605, "typed-measurement")
"""A measurement written by hand."""
UNKNOWN_STEP = Code(606, "unknown-step")
"""Words for a step that this size does not have."""
TEXT_TOO_LONG = Code(607, "text-too-long")
HTML_IN_TEXT = Code(608, "html-in-text")
NOT_IN_TEXT = Code(609, "not-in-text")
"""A picture, rule or program listing among the author's words."""
LINK_ADDRESS = Code(610, "link-address")
"""A link to something other than http, https, mailto or a relative path."""
CONTROL_CHARACTER = Code(611, "control-character", Severity.WARNING)
"""An unprintable character; left out."""

CODES = (
    UNKNOWN_FIGURE, NOT_A_FIGURE_NAME, UNFINISHED_FIGURE, NO_PROGRAMS, TYPED_MEASUREMENT, UNKNOWN_STEP, TEXT_TOO_LONG,
    HTML_IN_TEXT, NOT_IN_TEXT, LINK_ADDRESS, CONTROL_CHARACTER,
)  # fmt: skip
