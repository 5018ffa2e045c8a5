"""The text of a project on cloth of another width, written anew or from the text there is."""

from __future__ import annotations

from pathlib import Path

import pytest
from evenseam.publish.checked import check_pattern
from evenseam.publish.sources import find_patterns
from evenseam.publish.widths import at_widths
from evenseam.wording import write_document

PATTERNS = Path(__file__).resolve().parents[2] / "patterns"
SOURCES = find_patterns(PATTERNS)


@pytest.mark.parametrize("source", SOURCES[:4], ids=lambda source: source.slug)
def test_steps_that_do_not_speak_of_cloth_read_the_same(source):
    """What is taken from the text for other cloth is what would be written for this cloth."""
    compared = 0
    for sheet in check_pattern(source).sheets:
        own = write_document(sheet).value
        for at in at_widths(sheet):
            assert write_document(at.sheet, known=own).value == write_document(at.sheet).value
            compared += not at.is_planned
    assert compared
