"""The width of the reader's fabric, chosen in place: amounts, plans and pictures follow, with or without a script."""

from __future__ import annotations

import json

import pytest
from support.reading import WALL, opened
from support.served_site import build, served

METRIC = WALL.replace("inches", "centimetres")


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    return build(tmp_path_factory.mktemp("cloth"))


@pytest.fixture(scope="module")
def address(site):
    with served(site) as address:
        yield address


def amounts(page):
    """Return what is bought of each fabric, as the page shows it now."""
    rows = page.locator("ul.swatches:visible li").all()
    return [row.locator(".measured").first.inner_text() for row in rows]


def usable_widths(page):
    """Return what the visible cutting plans say of their cloth."""
    return page.evaluate(
        """[...document.querySelectorAll('figure[data-picture^="cutting-"]')].filter((one) => one.checkVisibility())
            .map((one) => [...one.querySelectorAll('text')].map((text) => text.textContent)
                .find((text) => text.startsWith('usable width')))"""
    )


@pytest.mark.parametrize("has_script", [True, False])
def test_amounts_and_plans_follow_the_width(browser, site, address, has_script):
    data = json.loads((site / (WALL.rstrip("/") + ".json")).read_text(encoding="utf-8"))["figures"]
    fabrics = sorted({name.partition("_buy_at_")[0] for name in data if "_buy_at_" in name})
    with opened(browser, address + WALL, java_script_enabled=has_script) as page:
        assert page.locator("input[name=cloth]:checked").input_value() == "42"
        for width in ("40", "44", "42"):
            page.check(f"input[name=cloth][value='{width}']")
            expected = sorted(data[f"{name}_buy_at_{width}"]["value"] for name in fabrics)
            assert sorted(amount.removesuffix(" yd") for amount in amounts(page)) == expected
            assert usable_widths(page) == [f"usable width {width} in"] * len(fabrics)
            assert page.locator(".cloth-now").inner_text().startswith(f"Plans for fabric {width} in wide.")
            assert f"planned on {width} in" in page.locator("#glance ~ ul").first.inner_text()


def test_the_width_is_remembered_for_its_edition(browser, address):
    with opened(browser, address + WALL) as page:
        page.check("input[name=cloth][value='44']")
        page.reload()
        assert page.locator("input[name=cloth]:checked").input_value() == "44"
        page.goto((address + WALL).replace("wall-hanging", "mug-rug"))
        assert set(usable_widths(page)) == {"usable width 44 in"}
        page.goto(address + METRIC)
        assert [one.get_attribute("value") for one in page.locator("input[name=cloth]").all()] == ["107", "112"]
        assert page.locator("input[name=cloth]:checked").input_value() == "107"


def test_ticks_belong_to_the_plan_of_their_width(browser, address):
    with opened(browser, address + WALL) as page:
        page.locator(".tick:visible").first.check()
        page.check("input[name=cloth][value='44']")
        assert not page.locator(".tick:visible").first.is_checked()
        page.reload()
        assert not page.locator(".tick:visible").first.is_checked()
        page.check("input[name=cloth][value='42']")
        assert page.locator(".tick:visible").first.is_checked()


def test_a_figure_of_another_width_says_why(browser, address):
    with opened(browser, address + WALL) as page:
        asked = page.locator('.measured[data-figure*="@"]').first.get_attribute("data-figure")
        page.check(f"input[name=cloth][value='{asked.partition('@')[2]}']")
        figure = page.locator(f'.measured[data-figure="{asked}"]:visible').first
        figure.click()
        told = page.locator("dialog.why").inner_text()
        assert figure.inner_text() in told and "Worked out" in told and "squaring up" in told


def test_the_shopping_list_is_for_the_chosen_width(browser, address):
    with opened(browser, address + WALL, permissions=["clipboard-read", "clipboard-write"]) as page:
        page.check("input[name=cloth][value='44']")
        page.click("[data-do=shopping]")
        page.wait_for_function("document.querySelector('.reader-said').textContent")
        text = page.evaluate("navigator.clipboard.readText()")
        assert "\nFor fabric 44 in wide:\n" in text
        assert "at least 44 in" in text and "at least 42 in" not in text


def test_paper_shows_the_chosen_width_only(browser, address):
    with opened(browser, address + WALL) as page:
        page.check("input[name=cloth][value='44']")
        page.emulate_media(media="print")
        assert set(usable_widths(page)) == {"usable width 44 in"}
        assert not page.locator("fieldset.cloth").is_visible()


def test_the_search_knows_the_planned_width_only(site):
    docs = json.loads((site / "search" / "search_index.json").read_text(encoding="utf-8"))["docs"]
    words = " ".join(doc["text"] for doc in docs if doc["location"].startswith(WALL))
    assert "42 in" in words and "for fabric with 44 in between" not in words


def test_the_other_edition_opens_at_the_same_heading_from_the_bar(browser, address):
    with opened(browser, address + WALL) as page:
        page.evaluate("document.getElementById('cutting-sea').scrollIntoView()")
        page.click(".step-bar a[data-edition=centimetres]")
        page.wait_for_url("**centimetres/**")
        assert page.url.endswith("#cutting-sea")
