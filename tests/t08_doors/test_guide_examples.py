"""Every example of the guide's page about arrangements, borders and edges is read and sewn as it stands there."""

from __future__ import annotations

import re
from functools import cache

import pytest
from evenseam.pattern.project_sizes import known_names
from evenseam.reading.reference import key_reference
from evenseam.sheet import compute_sheets
from support.mkdocs_site import ROOT
from support.pattern_texts import pattern_from

PAGE = (ROOT / "site_src/guide/arrangements-borders-edges.md").read_text(encoding="utf-8")
[WHOLE_FILE] = re.findall(r"```yaml title=[^\n]*\n(.*?)```", PAGE, re.DOTALL)
EXAMPLES = re.findall(r"```yaml\n(.*?)```", PAGE, re.DOTALL)
NAMES = [name for example in EXAMPLES for name in re.findall(r"^  (\w[\w ]*):$", example, re.MULTILINE)]
TAUGHT = (
    "unit method", "setting", "setting triangles", "setting triangles › float", "alternate", "unequal rows",
    "fit", "fit › choose", "corners", "corner fabric", "pieced", "pieced › spacer", "facing", "panels", "radius",
    "rule",
)  # fmt: skip
KINDS = ("bound", "faced", "knife edge", "envelope back", "turned", "sleeve", "loops", "rings", "corner pockets")


@cache
def sheets():
    pattern = pattern_from(WHOLE_FILE + "".join(EXAMPLES))
    return compute_sheets(pattern)


class TestExamplesOfTheGuide:
    """A newcomer who copies an example has a pattern that sews."""

    def test_every_example_is_a_size_under_a_name_of_its_own(self):
        assert len(NAMES) == len(set(NAMES)) == len(sheets()) - 1

    def test_every_example_sews_without_a_problem(self):
        for outcome in sheets():
            assert outcome.value is not None, outcome.problems
            assert not outcome.problems

    @pytest.mark.parametrize("kind", KINDS)
    def test_every_finish_and_way_of_hanging_has_an_example(self, kind):
        text = WHOLE_FILE + "".join(EXAMPLES)
        assert f"kind: {kind}" in text

    @pytest.mark.parametrize("key", TAUGHT)
    def test_the_keys_that_are_taught_are_keys(self, key):
        *above, last = key.split(" › ")
        assert f"{last}:" in PAGE or f"`{last}" in PAGE
        assert any(" › ".join(reference.path).endswith(key) for reference in key_reference()), above

    def test_the_usual_sizes_are_named_in_full(self):
        [line] = re.findall(r"^The names known here: (.*)\. Or", PAGE, re.MULTILINE)
        assert tuple(re.findall(r"`([^`]+)`", line)) == known_names()
