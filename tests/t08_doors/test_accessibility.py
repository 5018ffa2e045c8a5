"""Every kind of page before axe-core, in light and dark, on a phone and on a desk."""

from __future__ import annotations

from importlib import resources
from itertools import product

import pytest
from support.own_site import KINDS
from support.reading import opened

AXE = (resources.files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
RUN = """async (rules) => (await axe.run(document, {runOnly: rules})).violations
    .map((one) => [one.id, one.nodes.length, one.nodes[0].html.slice(0, 120), one.nodes[0].failureSummary])"""


APART = (("light", 390), ("dark", 1440))
"""Each colour scheme and each width once: enough for pages that are long, or plain."""
LONG = ("the page for the author",)
CASES = [
    (kind, scheme, width)
    for kind in KINDS
    for scheme, width in (APART if kind in LONG else product(("light", "dark"), (390, 1440)))
]


@pytest.mark.parametrize(("kind", "scheme", "width"), CASES)
def test_axe_finds_nothing(browser, own_address, kind, scheme, width):
    viewport = {"width": width, "height": 900}
    with opened(browser, own_address + KINDS[kind], color_scheme=scheme, viewport=viewport) as page:
        page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        page.evaluate(AXE)
        assert page.evaluate(RUN, RULES) == []


MORE = {"cut safely": "cut-safely/", "adding a language": "guide/languages/", "no such page": "404.html"}


@pytest.mark.parametrize(("scheme", "width"), APART)
@pytest.mark.parametrize("kind", MORE)
def test_axe_finds_nothing_on_plain_pages(browser, own_address, kind, scheme, width):
    with opened(
        browser, own_address + MORE[kind], color_scheme=scheme, viewport={"width": width, "height": 900}
    ) as page:
        page.evaluate(AXE)
        assert page.evaluate(RUN, RULES) == []


def recoloured(page):
    page.evaluate("""() => {
        const rows = [...document.querySelectorAll('.fabric-choices [data-fabric]')];
        const colours = ['ffffff', '111111', 'f4e04d', '7b1fa2', '00695c'];
        location.hash = 'fabrics=' + rows.map((row, n) => `${row.dataset.fabric}:${colours[n % 5]}`).join(',');
    }""")
    page.wait_for_selector(".try-fabrics[open]")
    page.wait_for_function("document.querySelector('.pattern-page').getAttribute('style')?.includes('#ffffff')")


def ticked(page):
    page.locator(".tick").first.check()
    page.locator('.tick[data-tick^="step-"]').first.check()


def found(page):
    page.evaluate("""() => {
        const opens = document.getElementById('__search');
        opens.checked = true;
        opens.dispatchEvent(new Event('change'));
    }""")
    field = page.locator(".md-search__input")
    field.focus()
    # Words that come before the index is there are not looked for.
    page.wait_for_function("document.querySelector('.md-search-result__meta').textContent.startsWith('Type')")
    field.press_sequentially("selvedge")
    page.wait_for_selector(".md-search-result__item", state="attached")


def found_nothing(page):
    page.locator(".gallery-filters select").evaluate_all(
        """(all) => all.forEach((one) => {
            one.selectedIndex = one.options.length - 1;
            one.dispatchEvent(new Event('change', {bubbles: true})); })"""
    )


STATES = {
    "fabrics tried": (KINDS["a size"], recoloured),
    "ticked": (KINDS["a size"], ticked),
    "why": (KINDS["a size"], lambda page: page.locator('.measured[role="button"]').first.click()),
    "search": (KINDS["the first page"], found),
    "gallery filtered": (KINDS["the gallery"], found_nothing),
}


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("state", STATES)
def test_axe_finds_nothing_in_what_a_reader_opens(browser, own_address, state, scheme):
    path, act = STATES[state]
    width = 390 if scheme == "light" else 1440
    with opened(browser, own_address + path, color_scheme=scheme, viewport={"width": width, "height": 900}) as page:
        act(page)
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
