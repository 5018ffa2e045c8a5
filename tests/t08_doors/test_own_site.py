"""The project's own site as a reader uses it: from page to page, by the search box, offline, by keyboard, on paper."""

from __future__ import annotations

import pytest
from support.own_site import KINDS, SIZE, TIDE, build_own, free_port
from support.reading import opened
from support.served_site import served

STAYS = "window.isSame = true"


class TestFromPageToPage:
    """With instant navigation the theme swaps the page and our script stays."""

    def test_the_page_is_swapped_and_its_tools_work(self, browser, own_address):
        with opened(browser, own_address) as page:
            page.evaluate(STAYS)
            page.click(".card-title a")
            page.wait_for_url("**/low-tide/")
            page.click('ul.sizes a[href*="wall-hanging-inches"]')
            page.wait_for_url("**/wall-hanging-inches/")
            page.wait_for_selector(".reader-tools:not([hidden])")
            assert page.evaluate("window.isSame")
            page.locator('.measured[role="button"]').first.click()
            assert page.locator("dialog.why:visible").count() == 1
            page.keyboard.press("Escape")
            page.locator('.tick[data-tick^="step-"]').first.check()
            assert page.locator(".reader-tools .ticked").inner_text().startswith("1 of ")
            page.check("input[name=cloth][value='44']")
            page.click(".switch a[data-edition=centimetres]")
            page.wait_for_url("**/wall-hanging-centimetres/**")
            page.wait_for_selector(".pattern-page[data-edition=centimetres]")
            assert page.locator("input[name=cloth]").first.get_attribute("value") == "107"
            page.go_back()
            page.wait_for_selector(".pattern-page[data-edition=inches] .reader-tools:not([hidden])")
            assert page.locator("input[name=cloth]:checked").input_value() == "44"
            assert page.locator('.tick[data-tick^="step-"]').first.is_checked()
            assert page.evaluate("window.isSame")

    def test_the_title_and_the_way_to_corrections_follow(self, browser, own_address):
        with opened(browser, own_address + TIDE) as page:
            page.evaluate(STAYS)
            first = page.title()
            page.click('ul.sizes a[href*="mug-rug-inches"]')
            page.wait_for_function("first => document.title !== first", arg=first)
            assert "Mug rug" in page.title() and page.evaluate("window.isSame")
            assert page.locator(".md-search").get_attribute("aria-label") == "Search"


STAR = "patterns/north-light-star/"


@pytest.fixture(scope="module")
def star_address(tmp_path_factory):
    """The address of the site around a pattern that is cut with a rotary cutter and bound."""
    port = free_port()
    folder = tmp_path_factory.mktemp("star")
    site = build_own(folder, port, ("north-light-star",), handouts="never", editions=["inches"])
    with served(site, port) as address:
        yield address


def found_for(page, typed):
    """Type into the search box and return what is offered: words and address of each."""
    page.click("[data-md-component=search-query]")
    page.keyboard.type(typed, delay=5)
    page.wait_for_selector(".md-search-result__item a", state="attached", timeout=15_000)
    return page.evaluate(
        "[...document.querySelectorAll('.md-search-result__item a')].map((one) => [one.textContent, one.href])"
    )


class TestSearch:
    @pytest.mark.parametrize(
        ("typed", "title", "place"),
        [
            ("low tide", "Low Tide", TIDE),
            ("lowtide boat", "Low Tide", TIDE),
            ("mug rug", "Mug rug", "mug-rug-inches"),
            ("topstitch", "Topstitch", "step-"),
            ("backing", "", "inches"),
            ("check templates", "Check your templates", "check-your-templates"),
        ],
    )
    def test_people_find_what_they_type(self, browser, own_address, typed, title, place):
        with opened(browser, own_address) as page:
            found = found_for(page, typed)
            assert any(title.lower() in words.lower() and place in href for words, href in found[:8]), found[:8]

    @pytest.mark.parametrize(
        ("typed", "word", "place"),
        [
            ("binding", "binding", "#step-make-binding"),
            ("half-square triangle", "half-square", STAR),
            ("quarter-square triangles", "quarter-square", STAR),
            ("dusk blue", "Dusk Blue", STAR),
            ("north light", "North Light", STAR),
            ("sashing", "sashing", STAR + "wall-hanging-inches/"),
            ("hanging sleeve", "sleeve", "#step-"),
        ],
    )
    def test_a_technique_a_fabric_and_a_block_are_found(self, browser, star_address, typed, word, place):
        with opened(browser, star_address) as page:
            found = found_for(page, typed)
            assert any(word.lower() in words.lower() and place in href for words, href in found[:8]), found[:8]


def test_no_page_asks_anything_of_elsewhere(browser, own_address):
    context = browser.new_context()
    page = context.new_page()
    asked, failed = [], []
    page.on("request", lambda request: asked.append(request.url))
    page.on("response", lambda response: failed.append(response.url) if response.status >= 400 else None)
    for path in KINDS.values():
        page.goto(own_address + path)
        page.wait_for_timeout(150)
    context.close()
    assert any(url.endswith(".woff2") for url in asked)
    assert [url for url in asked if not url.startswith((own_address, "data:", "blob:"))] == [] == failed


def test_type_is_ours_and_nothing_jumps_when_it_comes(browser, own_address):
    """Cumulative layout shift (W3C Layout Instability): below 0.1 is good, Web Vitals, Google 2020."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    page.add_init_script(
        """window.shift = 0; new PerformanceObserver((list) => {
            for (const one of list.getEntries()) window.shift += one.value; }).observe({type: 'layout-shift', buffered: true});"""
    )
    for path in (SIZE, TIDE, "patterns/"):
        page.route("**/*.woff2", lambda route: (page.wait_for_timeout(300), route.continue_()))
        page.goto(own_address + path)
        page.wait_for_function("document.fonts.status === 'loaded'")
        page.wait_for_timeout(500)
        assert page.evaluate("document.fonts.check('16px \"Evenseam Text\"')")
        assert page.evaluate("window.shift") < 0.1, path
    context.close()


def test_from_a_disk_everything_is_shown_in_its_style(browser, own_site):
    with opened(browser, (own_site / SIZE / "index.html").as_uri()) as page:
        assert page.locator(".reader-tools").is_visible()
        page.check("input[name=cloth][value='40']")
        page.click(".switch a:not([aria-current]):not([data-edition])")
        page.wait_for_url("**/mug-rug-inches/index.html")
        assert page.locator("input[name=cloth]:checked").input_value() == "40"


def test_by_keyboard_alone(browser, own_address):
    """Every control of a size's page is reached by the tab key, shows where it is, and does its work."""
    with opened(browser, own_address + SIZE) as page:
        seen = []
        for _ in range(220):
            page.keyboard.press("Tab")
            told = page.evaluate(
                """() => { const one = document.activeElement; const style = getComputedStyle(one);
                    const shown = one.matches('input[type=file]') ? getComputedStyle(one.nextElementSibling)
                        : one.matches('.cloth-choices input') ? getComputedStyle(one.closest('label')) : style;
                    return [one.dataset?.do ?? one.name ?? one.tagName, one.closest('.pattern-page') ? shown.outlineStyle : 'theme']; }"""
            )
            seen.append(told)
        names = {name for name, _ in seen}
        assert {"awake", "shopping", "print", "untick", "cloth"} <= names
        assert [name for name, outline in seen if outline == "none"] == []
        page.locator("input[name=cloth]:checked").focus()
        page.keyboard.press("ArrowRight")
        assert page.locator("input[name=cloth]:checked").input_value() == "44"


def test_paper_has_the_pattern_and_no_furniture(browser, own_address, tmp_path):
    pdfplumber = pytest.importorskip("pdfplumber")
    with opened(browser, own_address + SIZE) as page:
        page.pdf(path=tmp_path / "page.pdf", format="A4")
    with pdfplumber.open(tmp_path / "page.pdf") as book:
        words = " ".join(page.extract_text() for page in book.pages)
        assert 3 <= len(book.pages) <= 20
    assert "Low Tide" in words and "usable width 42 in" in words
    for furniture in ("Try your fabrics", "Keep the screen on", "How wide is your fabric", "usable width 44"):
        assert furniture not in words


def test_reduced_motion_is_respected(browser, own_address):
    with opened(browser, own_address, reduced_motion="reduce") as page:
        longest = page.evaluate(
            """Math.max(...[...document.querySelectorAll('*')].flatMap((one) =>
                getComputedStyle(one).transitionDuration.split(',').map(parseFloat)))"""
        )
        assert longest < 0.001
