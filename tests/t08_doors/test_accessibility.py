"""Every kind of page before axe-core, in light and dark, on a phone and on a desk."""

from __future__ import annotations

from importlib import resources

import pytest
from support.own_site import KINDS
from support.reading import opened

AXE = (resources.files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
RUN = """async (rules) => (await axe.run(document, {runOnly: rules})).violations
    .map((one) => [one.id, one.nodes.length, one.nodes[0].html.slice(0, 120), one.nodes[0].failureSummary])"""


@pytest.mark.parametrize("width", [390, 1440])
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("kind", KINDS)
def test_axe_finds_nothing(browser, own_address, kind, scheme, width):
    viewport = {"width": width, "height": 900}
    with opened(browser, own_address + KINDS[kind], color_scheme=scheme, viewport=viewport) as page:
        page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        page.evaluate(AXE)
        assert page.evaluate(RUN, RULES) == []


def test_axe_finds_what_is_wrong(browser, own_address):
    """The check can fail: a picture without words and grey on grey are found."""
    with opened(browser, own_address) as page:
        page.evaluate(
            """document.querySelector('article').insertAdjacentHTML('beforeend',
                '<img src=""><p id="grey">words</p>');
               Object.assign(document.getElementById('grey').style, {color: '#888', background: '#999'});"""
        )
        page.evaluate(AXE)
        assert {found[0] for found in page.evaluate(RUN, RULES)} >= {"image-alt", "color-contrast"}


def test_axe_finds_nothing_in_an_open_window(browser, own_address):
    with opened(browser, own_address + KINDS["a size"]) as page:
        page.locator('.measured[role="button"]').first.click()
        page.evaluate(AXE)
        assert page.evaluate(RUN, RULES) == []
