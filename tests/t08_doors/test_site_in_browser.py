"""The built site in a real browser: nothing from elsewhere, nothing wider than a phone, ink on white paper."""

from __future__ import annotations

import functools
import http.server
import shutil
import threading

import pytest
from support.mkdocs_site import ROOT, mkdocs, tutorial_patterns, write_config, write_pattern
from support.served_site import PatientServer

PAGES = ("", "patterns/", "patterns/low-tide/", "patterns/low-tide/wall-hanging-inches/", "guide/every-key/")


class QuietHandler(http.server.SimpleHTTPRequestHandler):
    def log_message(self, format, *arguments):
        pass


@pytest.fixture(scope="module")
def address(tmp_path_factory):
    """The address of a site in our own theme settings, with the tutorial's pattern."""
    folder = tmp_path_factory.mktemp("browser")
    write_pattern(folder / "patterns" / "low-tide", tutorial_patterns()[1])
    docs = folder / "docs" / "stylesheets"
    docs.mkdir(parents=True)
    shutil.copy(ROOT / "site_src" / "stylesheets" / "workshop.css", docs)
    palette = [
        {"media": "(prefers-color-scheme: light)", "scheme": "default", "primary": "custom"},
        {"media": "(prefers-color-scheme: dark)", "scheme": "slate", "primary": "custom"},
    ]
    config = write_config(
        folder,
        plugins=["search", {"evenseam": {"handouts": "never"}}],
        theme="material",
        palette=palette,
        extra_css=["stylesheets/workshop.css"],
    )
    told = mkdocs(config)
    assert told.returncode == 0, told.stderr
    handler = functools.partial(QuietHandler, directory=str(folder / "site"))
    server = PatientServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    thread.join()
    server.server_close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nothing_comes_from_elsewhere_and_nothing_fails(browser, address, scheme):
    context = browser.new_context(color_scheme=scheme)
    page = context.new_page()
    asked, failed = [], []
    page.on("request", lambda request: asked.append(request.url))
    page.on("pageerror", lambda error: failed.append(str(error)))
    page.on("response", lambda response: failed.append(response.url) if response.status >= 400 else None)
    for path in PAGES:
        page.goto(address + path)
        page.wait_for_timeout(100)
    context.close()
    assert len(asked) > len(PAGES)
    assert [url for url in asked if not url.startswith((address, "data:"))] == []
    assert failed == []


@pytest.mark.parametrize("path", PAGES)
def test_no_page_is_wider_than_a_phone(browser, address, path):
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    page.goto(address + path)
    width = page.evaluate("document.documentElement.scrollWidth")
    context.close()
    assert width <= 390


@pytest.mark.parametrize(("scheme", "is_light"), [("light", True), ("dark", False)])
def test_words_and_pictures_follow_the_page_and_print_dark_on_white(browser, address, scheme, is_light):
    """The ink of words, of captions and of labels in pictures is dark on a light page and on paper, else light."""
    context = browser.new_context(color_scheme=scheme)
    page = context.new_page()
    page.goto(address + PAGES[3])
    # How bright a colour is, 0 to 255, by a canvas: whatever way it is written.
    script = """() => {
        const context = document.createElement('canvas').getContext('2d');
        const bright = (colour) => {
            context.fillStyle = colour; context.fillRect(0, 0, 1, 1);
            const [red, green, blue] = context.getImageData(0, 0, 1, 1).data; return (red + green + blue) / 3; };
        const colour = (query) => bright(getComputedStyle(document.querySelector(query)).color);
        const picture = getComputedStyle(document.querySelector('.evenseam-figure'));
        return [colour('.pattern-text p'), colour('figcaption'), colour('caption'), bright(picture.getPropertyValue('--figure-ink'))];
    }"""
    on_screen = page.evaluate(script)
    page.emulate_media(media="print", color_scheme=scheme)
    on_paper = page.evaluate(script)
    context.close()
    assert [ink < 128 for ink in on_screen] == [is_light] * 4
    assert [ink < 128 for ink in on_paper] == [True] * 4
