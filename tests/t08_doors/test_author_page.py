"""The page for a pattern's author: all that stands behind a pattern, and not published unless asked for."""

from __future__ import annotations

import json

import pytest
from evenseam.publish.cache import Cache
from evenseam.publish.options import SiteOptions
from evenseam.publish.site import build_site
from evenseam.publish.sources import find_patterns
from support.mkdocs_site import tutorial_patterns, write_pattern
from support.own_site import SIZE, TIDE
from support.page_reader import read_page
from support.reading import opened

CLAIMS = """
claims:
  wall hanging:
    finished width: 24
    finished height: 10
"""


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    folder = tmp_path_factory.mktemp("author")
    write_pattern(folder / "patterns" / "low-tide", tutorial_patterns()[1] + CLAIMS)
    options = SiteOptions(has_handouts=False, has_author_pages=True)
    return build_site(find_patterns(folder / "patterns"), options, Cache(folder / "cache"), processes=1)


def page_of(made):
    (page,) = [page for page in made.pages if page.path.endswith("/for-the-author.md")]
    return page


def test_every_figure_is_there_with_its_reason(made):
    body = page_of(made).body(has_folders=True)
    (file,) = [file for file in made.files if file.path == "patterns/low-tide/wall-hanging-inches.json"]
    data = json.loads(file.stored.read_text(encoding="utf-8"))
    part = body.partition('id="wall-hanging-inches"')[2].partition("<h2 ")[0]
    for name in data["figures"]:
        assert f"<code>{name}</code>" in part, name
    for cut in data["cuts"]:
        assert f"<code>{cut['id']}</code>" in part
    assert "given in " in part and "pattern.yaml:" in part and part.count("<details") > len(data["figures"])


def test_seams_log_plans_and_claims_are_told(made):
    body = page_of(made).body(has_folders=True)
    words = read_page(body).words
    assert "Sewn from the cut list alone it finishes at" in words
    assert "No fewer sections will do" in words and "A1 (" in words
    assert "usable width" in words.lower() and "shortest" in words
    assert "Claims of an older version" in words


def test_it_is_found_by_nobody_but_the_author(made):
    page = page_of(made)
    assert not page.is_searched
    plain = SiteOptions(has_handouts=False)
    assert not plain.has_author_pages


def test_pages_lead_to_it_only_where_it_is(made, tmp_path):
    paths = [page.body(has_folders=True) for page in made.pages if page.path.startswith("patterns/low-tide/")]
    assert sum("for-the-author/" in body for body in paths) >= 5
    folder = tmp_path / "patterns"
    write_pattern(folder / "low-tide", tutorial_patterns()[1])
    published = build_site(find_patterns(folder), SiteOptions(has_handouts=False), Cache(tmp_path / "c"), processes=1)
    assert not any("for-the-author" in page.path for page in published.pages)
    assert not any("for-the-author" in page.body(has_folders=True) for page in published.pages)


def test_a_figure_unfolds_into_its_derivation(browser, own_address):
    with opened(browser, own_address + SIZE) as page:
        page.click(".for-author a")
        page.wait_for_url("**/" + TIDE + "for-the-author/**")
        # The address changes before the theme has put the new page in.
        page.wait_for_selector("#wall-hanging-inches", state="attached")
        page.evaluate("document.querySelectorAll('details.of-size').forEach((one) => { one.open = true; })")
        reason = page.locator("#wall-hanging-inches ~ details details.reason").first
        assert not reason.locator("pre").is_visible()
        reason.locator("summary").click()
        assert reason.locator("pre").is_visible() and len(reason.locator("pre").inner_text().splitlines()) > 1
