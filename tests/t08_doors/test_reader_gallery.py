"""The gallery's filters, the silhouettes and the feed."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from fractions import Fraction

import pytest
from evenseam.exact import Unit
from evenseam.pattern import Assumed, Quantity
from evenseam.publish.silhouette import beside_what, extent_in_inches, silhouettes
from support.reading import LANTERNS, opened
from support.served_site import build, served

ATOM = "{http://www.w3.org/2005/Atom}"


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    return build(tmp_path_factory.mktemp("gallery"))


@pytest.fixture(scope="module")
def address(site):
    with served(site) as address:
        yield address


def shown(page):
    return page.locator("li.card:visible .card-title").all_inner_texts()


def test_filters_leave_what_fits(browser, address):
    with opened(browser, address + "patterns/") as page:
        assert shown(page) == ["Harbour Lanterns", "Low Tide"]
        page.get_by_label("Project").select_option("Lap quilt")
        assert shown(page) == ["Harbour Lanterns"]
        assert page.locator("[data-shown]").inner_text() == "1 of 2 patterns"
        page.get_by_role("button", name="Show all").click()
        page.wait_for_function("!document.querySelector('li.card[hidden]')")
        assert len(shown(page)) == 2


def test_without_a_script_every_card_is_there_and_no_filter(browser, address):
    with opened(browser, address + "patterns/", java_script_enabled=False) as page:
        assert len(shown(page)) == 2 and not page.locator(".gallery-filters").is_visible()


def test_the_feed_has_every_change_newest_first_and_its_links_lead_to_pages(browser, site, address):
    path = site / "changes.xml"
    feed = ElementTree.fromstring(path.read_text(encoding="utf-8"))
    entries = feed.findall(f"{ATOM}entry")
    dates = [entry.findtext(f"{ATOM}updated") for entry in entries]
    assert dates == sorted(dates, reverse=True) and {"2026-06-12T00:00:00Z", "2026-03-02T00:00:00Z"} <= set(dates)
    assert feed.findtext(f"{ATOM}updated") == dates[0]
    ids = [one.text for one in feed.iter(f"{ATOM}id")]
    assert len(set(ids)) == len(ids) == len(entries) + 1
    # What RFC 4287 asks of every entry.
    for entry in entries:
        assert all(entry.find(ATOM + name) is not None for name in ("id", "title", "updated", "author", "link"))
        assert (path.parent / entry.find(f"{ATOM}link").get("href")).is_file()
    with opened(browser, address + LANTERNS) as page:
        link = page.evaluate("document.querySelector('link[type=\"application/atom+xml\"]').href")
        assert page.request.get(link).status == 200


def length(value, unit):
    return Quantity("side", Fraction(value), unit, Assumed("a sample"))


class TestSilhouettes:
    def test_all_sizes_of_a_pattern_are_to_one_scale(self, browser, address):
        with opened(browser, address + LANTERNS) as page:
            drawn = page.evaluate(
                """[...document.querySelectorAll('.silhouette')].map((svg) => [svg.getAttribute('viewBox'),
                    svg.querySelector('.piece').width.baseVal.value, svg.querySelector('.piece').height.baseVal.value])"""
            )
        assert len({box for box, _, _ in drawn}) == 1
        # The claims and borders of the pattern: 8 × 11 in, and 26 × 15 in for the wall hanging.
        assert [26, 15] in [[round(width), round(height)] for _, width, height in drawn]

    def test_centimetres_and_inches_give_the_same_picture(self):
        inches = extent_in_inches(length(10, Unit.INCH), length(20, Unit.INCH))
        centimetres = extent_in_inches(length("25.4", Unit.CENTIMETRE), length("50.8", Unit.CENTIMETRE))
        assert silhouettes([inches]) == silhouettes([centimetres])

    def test_a_hand_beside_what_is_small_and_a_chair_beside_what_is_large(self):
        small, large = (extent_in_inches(length(side, Unit.INCH), length(side, Unit.INCH)) for side in (11, 60))
        assert beside_what([small]) == "a_hand" and beside_what([small, large]) == "a_chair"
