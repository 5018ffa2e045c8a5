"""Every kind of page with its tools: without a script, without a network, under a strict policy, for every reader."""

from __future__ import annotations

import gzip

import pytest
from support.reading import LANTERNS, WALL, opened
from support.served_site import build, served

PAGES = ("patterns/", LANTERNS, WALL)


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    return build(tmp_path_factory.mktemp("pages"))


@pytest.fixture(scope="module")
def address(site):
    with served(site) as address:
        yield address


NAMES = """() => {
    // Accessible names, ids and labels of what belongs to us: after the Accessible Name Computation 1.2 (W3C), in so
    // far as our pages use it.
    const page = document.querySelector('.pattern-page');
    const words = (element) => (element.ariaLabel
        || (element.getAttribute('aria-labelledby') ?? '').split(' ').filter(Boolean)
            .map((id) => document.getElementById(id)?.textContent ?? '').join(' ')
        || [...(element.labels ?? [])].map((label) => label.textContent).join(' ')
        || element.textContent || element.getAttribute('alt') || '').trim();
    const wrong = [];
    for (const one of page.querySelectorAll('button, a[href], input, select, summary, [role=button], [role=region], nav, dialog, form, aside, section')) {
        if (!words(one)) wrong.push('no name: ' + one.outerHTML.slice(0, 80));
    }
    const ids = [...page.querySelectorAll('[id]')].map((one) => one.id);
    for (const id of ids) if (ids.indexOf(id) !== ids.lastIndexOf(id)) wrong.push('twice: ' + id);
    for (const name of ['aria-labelledby', 'aria-describedby']) for (const one of page.querySelectorAll(`[${name}]`)) {
        for (const id of one.getAttribute(name).split(' ')) if (!document.getElementById(id)) wrong.push('no ' + id);
    }
    for (const one of page.querySelectorAll('svg')) {
        if (one.ariaHidden !== 'true' && one.getAttribute('role') !== 'img') wrong.push('picture: ' + one.outerHTML.slice(0, 60));
    }
    for (const one of page.querySelectorAll('a, button, label, [role=button], summary')) {
        if (one.querySelector('a, button, [role=button], summary, [tabindex]')) wrong.push('nested: ' + one.outerHTML.slice(0, 80));
    }
    let level = 0;
    for (const one of page.querySelectorAll('h1, h2, h3, h4, h5, h6')) {
        const now = Number(one.tagName[1]);
        if (now > level + 1) wrong.push('leap: ' + one.textContent);
        level = now;
    }
    if (document.querySelectorAll('main').length !== 1) wrong.push('main');
    // WCAG 2.2, 2.5.8: 24 pixels, lines of text apart.
    for (const one of page.querySelectorAll('button, select, summary, input.tick, input[type=color]')) {
        const box = one.getBoundingClientRect();
        if (box.width && (box.width < 24 || box.height < 24)) wrong.push('small: ' + one.outerHTML.slice(0, 80));
    }
    return wrong;
}"""

CONTRAST = """() => {
    // WCAG 2.2, 1.4.3: every run of words outside pictures against the first ground behind it that is not clear.
    const canvas = document.createElement('canvas').getContext('2d', {willReadFrequently: true});
    const parts = (colour) => { canvas.clearRect(0, 0, 1, 1); canvas.fillStyle = colour; canvas.fillRect(0, 0, 1, 1);
        return [...canvas.getImageData(0, 0, 1, 1).data]; };
    const over = (top, below) => [0, 1, 2].map((n) => top[n] * top[3] / 255 + below[n] * (1 - top[3] / 255)).concat(255);
    const light = (rgb) => { const [r, g, b] = rgb.map((part) => part / 255)
        .map((part) => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
        return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
    const ground = (element) => { if (!element) return [255, 255, 255, 255];
        const here = parts(getComputedStyle(element).backgroundColor);
        return here[3] === 255 ? here : over(here, ground(element.parentElement)); };
    const wrong = []; let checked = 0;
    const walker = document.createTreeWalker(document.querySelector('.pattern-page'), NodeFilter.SHOW_TEXT);
    for (let text = walker.nextNode(); text; text = walker.nextNode()) {
        const element = text.parentElement;
        if (!text.textContent.trim() || element.closest('svg, script, option, [hidden]') || !element.checkVisibility({opacityProperty: true})) continue;
        const below = ground(element);
        const ink = over(parts(getComputedStyle(element).color), below);
        const [low, high] = [light(ink), light(below)].sort((a, b) => a - b);
        checked += 1;
        if ((high + 0.05) / (low + 0.05) < 4.5) wrong.push([((high + 0.05) / (low + 0.05)).toFixed(2), text.textContent.trim().slice(0, 40), element.className]);
    }
    return [checked, wrong];
}"""


@pytest.mark.parametrize("path", PAGES)
def test_everything_has_a_name_a_place_and_a_size(browser, address, path):
    with opened(browser, address + path, viewport={"width": 390, "height": 844}) as page:
        page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        assert page.evaluate(NAMES) == []
        assert page.evaluate("document.documentElement.scrollWidth") <= 390


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("path", PAGES)
def test_words_stand_out_from_their_ground(browser, address, path, scheme):
    with opened(browser, address + path, color_scheme=scheme) as page:
        page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        for tick in page.locator(".tick").all()[:2] + page.locator('.tick[data-tick^="step-"]').all()[:1]:
            tick.check()
        if path == WALL:
            page.locator('.measured[role="button"]').first.click()
        page.wait_for_timeout(400)
        checked, wrong = page.evaluate(CONTRAST)
        assert checked > 8 and wrong == []


def test_without_a_script_all_is_shown_and_nothing_is_promised(browser, address):
    with opened(browser, address + WALL, java_script_enabled=False) as page:
        assert page.locator(".tick:not(.other-width *)").count() == page.locator(".tick:visible").count() > 20
        page.locator(".tick").first.check()
        assert page.locator(".step:visible").count() == page.locator(".step").count() > 10
        for hidden in (".reader-tools", ".try-fabrics", ".step-bar", "dialog.why"):
            assert page.locator(hidden).count() == 1 and not page.locator(hidden).is_visible()
        assert page.locator('[role="button"].measured').count() == 0


def test_a_strict_policy_is_kept(browser, address):
    """Our markup holds no script and no style of its own to be refused; the theme's inline scripts are its own."""
    with opened(browser, address + WALL) as page:
        found = page.evaluate(
            """[...document.querySelectorAll('.pattern-page, .pattern-page *')].filter((one) => one.hasAttribute('style')
                || [...one.attributes].some((mark) => mark.name.startsWith('on'))
                || one.tagName === 'STYLE' || one.tagName === 'SCRIPT').length"""
        )
        assert found == 0


def test_nothing_is_asked_from_elsewhere_whatever_is_used(browser, address):
    context = browser.new_context()
    page = context.new_page()
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(address + WALL)
    page.click(".try-fabrics summary")
    page.fill("[data-fabric=fog] input[type=color]", "#203050")
    page.click("[data-do=fabric-greys]")
    page.locator(".tick").first.check()
    page.locator('.measured[role="button"]').first.click()
    page.keyboard.press("Escape")
    page.wait_for_timeout(200)
    context.close()
    assert asked and [url for url in asked if not url.startswith((address, "data:", "blob:"))] == []


def test_pages_that_are_swapped_in_have_their_tools_once(browser, address):
    """Themes with instant navigation put a new page below a script that stays, or is run a second time."""
    with opened(browser, address + LANTERNS) as page:
        page.evaluate(
            """async (address) => {
                window.isSame = true;
                const text = await (await fetch(address)).text();
                const next = new DOMParser().parseFromString(text, 'text/html').querySelector('.pattern-page');
                document.querySelector('.pattern-page').replaceWith(next);
                const again = document.createElement('script');
                again.src = document.querySelector('script[src$="evenseam.js"]').src;
                document.body.append(again);
                await new Promise((done) => { again.onload = done; }); }""",
            address + WALL,
        )
        page.wait_for_selector(".reader-tools:not([hidden])")
        page.locator('.measured[role="button"]').first.click()
        assert page.locator("dialog.why:visible").count() == 1
        page.keyboard.press("Escape")
        page.locator('.tick[data-tick^="step-"]').first.check()
        assert page.locator(".reader-tools .ticked").inner_text().startswith("1 of ")
        page.keyboard.press("Alt+ArrowDown")
        assert page.evaluate("document.activeElement.matches('.step > [id]')")
        assert page.evaluate("window.isSame")


def test_on_paper_there_are_no_tools(browser, address):
    with opened(browser, address + WALL) as page:
        page.emulate_media(media="print")
        for tool in (".reader-tools", ".step-bar", ".try-fabrics", ".switch", ".md-header"):
            assert page.locator(tool).first.is_hidden(), tool
        assert page.pdf(format="A4").startswith(b"%PDF")


def test_a_page_with_style_and_script_is_light(site):
    """Under 250 kB compressed, all told: the page, our style and our script, and the theme's."""
    files = [site / WALL / "index.html", site / "assets" / "evenseam.css", site / "assets" / "evenseam.js"]
    files += [*site.glob("assets/stylesheets/*.css"), *site.glob("assets/javascripts/bundle*.js")]
    weights = {file.name: len(gzip.compress(file.read_bytes())) for file in files}
    assert sum(weights.values()) < 250_000, weights
    assert weights["evenseam.js"] < 12_000
