"""Pages with every injection at once, in a real browser: the same elements as a harmless twin, and nothing of it runs."""

from __future__ import annotations

import functools
import http.server
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from support.hostile import MARKUP, SCRIPT, as_yaml, changed
from support.mkdocs_site import mkdocs, write_config, write_pattern
from support.served_site import PatientServer

SHORT = "\"'><img src=//e.example/x onerror=ran()>"
WORDS: dict[tuple[Any, ...], str] = {
    ("title",): "Skiff</title><script>ran()</script><svg onload=ran()>", ("summary",): f"{MARKUP} {SCRIPT} </style></textarea><iframe srcdoc='<script>parent.ran()</script>'>",
    ("designer",): MARKUP, ("skill level",): SHORT, ("licence",): "</dd></dl><body onload=ran()>",
    ("changes", 0, "what"): f"{MARKUP} {SCRIPT}", ("fabrics", "sky", "name"): SHORT, ("fabrics", "sky", "role"): SHORT, ("fabrics", "tar", "name"): "</text><script>ran()</script>",
    ("blocks", "skiff", "name"): "</desc></title><script>ran()</script>", ("blocks", "skiff", "pieces", 0, "name"): SHORT,
    ("sizes", "mug rug", "name"): "Rug</script><script>ran()</script>", ("sizes", "mug rug", "summary"): f"{MARKUP} {{{{ a*b }}}}", ("sizes", "mug rug", "use"): "</a><a href=javascript:ran()>x",
}  # fmt: skip
PROSE = "<script>ran()</script> <img src=//e.example/x onerror=ran()> [a](javascript:ran()) ![b](//e.example/b) </pre></code><svg onload=ran()>\n"
PAGES = ("", "patterns/", "patterns/lively/", "patterns/lively/mug-rug-inches/", "patterns/refused/")
STRUCTURE = """() => [...document.querySelectorAll('*')].map(
    element => element.tagName.toLowerCase() + ' ' + [...element.attributes].map(one => one.name).sort().join(' '))"""
WATCH = "window.ran = () => { window.__ran = (window.__ran || 0) + 1; };"
STRICT = "default-src 'self' data:; style-src 'self' 'unsafe-inline' data:; img-src 'self' data:; script-src 'none'; object-src 'none'; base-uri 'none'; frame-src 'none'"


def harmless(text: str) -> str:
    """Return a text of the same length and the same words in which no sign means anything."""
    return "".join(sign if sign.isalnum() or sign == " " else "x" for sign in text)


def build(folder: Path, words: Callable[[str], str]) -> Path:
    """Build a site with a pattern that is published and one that is refused."""
    write_pattern(folder / "patterns" / "lively", as_yaml(changed({path: words(text) for path, text in WORDS.items()})))
    refused = changed(
        {
            ("title",): words(WORDS[("title",)]),
            ("introduction",): words(PROSE),
            ("arrangement", "block"): words(SHORT),
            ("fabrics", "sky", "colour"): words(SHORT),
        }
    )
    write_pattern(folder / "patterns" / "refused", as_yaml(refused))
    (folder / "docs").mkdir()
    (folder / "docs" / "index.md").write_text("# Home\n\n<!-- gallery -->\n")
    config = write_config(
        folder, plugins=["search", {"evenseam": {"handouts": "never"}}], theme="material", features=["navigation.footer", "toc.follow"],
        site_url="https://example.org/", nav=["index.md", "patterns/"],
    )  # fmt: skip
    told = mkdocs(config)
    assert told.returncode == 0, told.stderr
    return folder / "site"


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves a folder, with a policy for what its pages may do if there is one."""

    policy = ""

    def end_headers(self) -> None:
        if self.policy:
            self.send_header("Content-Security-Policy", self.policy)
        super().end_headers()

    def log_message(self, format: str, *arguments: object) -> None:
        pass


class StrictHandler(Handler):
    policy = STRICT


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Callable[[str, bool], str]]:
    """Gives the address of the hostile site or of its twin, served strictly or not."""
    folders = {
        "hostile": build(tmp_path_factory.mktemp("lively"), str),
        "twin": build(tmp_path_factory.mktemp("twin"), harmless),
    }
    (folders["hostile"] / "control.html").write_text(f"<!DOCTYPE html><title>x</title><p>{MARKUP}{SCRIPT}")
    servers = {}
    for name, folder in folders.items():
        for handler in (Handler, StrictHandler):
            server = PatientServer(("127.0.0.1", 0), functools.partial(handler, directory=str(folder)))
            threading.Thread(target=server.serve_forever, daemon=True).start()
            servers[name, handler is StrictHandler] = server
    yield lambda name, is_strict: f"http://127.0.0.1:{servers[name, is_strict].server_port}/"
    for server in servers.values():
        server.shutdown()
        server.server_close()


class Watched:
    """A page in the browser, with everything it asks for and everything that pops up."""

    def __init__(self, browser: Any) -> None:
        self.context = browser.new_context()
        self.page = self.context.new_page()
        self.page.add_init_script(WATCH)
        self.asked: list[str] = []
        self.popped: list[str] = []
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.on("dialog", lambda dialog: (self.popped.append(dialog.message), dialog.dismiss()))
        self.page.on("popup", lambda page: self.popped.append(page.url))

    def check(self, address: str) -> None:
        assert self.page.evaluate("window.__ran") is None, "a program of the author's ran"
        assert (
            self.popped == []
            and [url for url in self.asked if not url.startswith((address, "data:", "blob:" + address))] == []
        )


@pytest.fixture
def watched(browser: Any) -> Iterator[Watched]:
    found = Watched(browser)
    yield found
    found.context.close()


def test_the_watch_sees_a_program_run_and_the_policy_stops_it(
    watched: Watched, served: Callable[[str, bool], str]
) -> None:
    watched.page.goto(served("hostile", False) + "control.html")
    watched.page.wait_for_timeout(200)
    assert watched.page.evaluate("window.__ran") >= 1 and any("e.example" in url for url in watched.asked)
    watched.page.goto(served("hostile", True) + "control.html")
    watched.page.wait_for_timeout(200)
    assert watched.page.evaluate("window.__ran") is None


@pytest.mark.parametrize("is_strict", [True, False])
@pytest.mark.parametrize("path", PAGES)
def test_nothing_runs_and_nothing_is_asked_for(
    watched: Watched, served: Callable[[str, bool], str], path: str, is_strict: bool
) -> None:
    address = served("hostile", is_strict)
    answer = watched.page.goto(address + path)
    assert answer.status == 200
    watched.page.wait_for_timeout(150)
    watched.check(address)
    # Whatever a reader may press, too.
    for link in watched.page.evaluate("[...document.querySelectorAll('a[href]')].map(link => link.href)"):
        assert link.startswith((address, "https://squidfunk.github.io/", "https://example.org/")), link


@pytest.mark.parametrize("path", PAGES)
def test_the_page_is_made_of_the_same_elements_as_its_twin(
    watched: Watched, served: Callable[[str, bool], str], path: str
) -> None:
    found = []
    for name in ("hostile", "twin"):
        answer = watched.page.goto(served(name, True) + path)
        assert answer.status == 200, name
        found.append(watched.page.evaluate(STRUCTURE))
    if path == "patterns/refused/":
        # A refused text has more problems to tell than its twin; each is told in the same elements.
        found = [sorted(set(elements)) for elements in found]
        assert set(found[0]) - set(found[1]) <= {"li ", "ol ", "pre "}
        return
    assert len(found[0]) > 50 and found[0] == found[1]


def test_what_a_search_shows_is_words(watched: Watched, served: Callable[[str, bool], str]) -> None:
    address = served("hostile", False)
    watched.page.goto(address + "?q=skiff")
    watched.page.evaluate("document.getElementById('__search').click()")
    watched.page.fill("[data-md-component=search-query]", "skiff")
    watched.page.wait_for_selector(".md-search-result__item", state="attached", timeout=15_000)
    watched.page.wait_for_timeout(300)
    assert watched.page.evaluate("document.querySelectorAll('.md-search-result__item').length") > 0
    assert (
        watched.page.evaluate(
            "document.querySelectorAll('.md-search-result :is(img, iframe, script, [onload], [onerror])').length"
        )
        == 0
    )
    watched.check(address)


def test_the_words_are_shown_as_they_were_written(watched: Watched, served: Callable[[str, bool], str]) -> None:
    watched.page.goto(served("hostile", True) + "patterns/lively/")
    assert watched.page.inner_text("article h1") == WORDS[("title",)]
    assert watched.page.title().startswith(WORDS[("title",)])
    assert MARKUP in watched.page.inner_text("article")
