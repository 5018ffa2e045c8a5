"""What a reader does with a page, in a real browser: tick off, ask why, try fabrics, go from step to step."""

from __future__ import annotations

import json

import pytest
from evenseam.figures.cloth_look import Texture, look_of
from evenseam.pattern import Fabric
from support.reading import CONTRAST, LANTERNS, WALL, opened
from support.served_site import build, served

# A photo of nothing: 8 × 8 pixels, dark red and darker red, as a bitmap that every browser reads.
PHOTO = (
    b"BM"
    + (54 + 8 * 8 * 3).to_bytes(4, "little") + b"\0\0\0\0" + (54).to_bytes(4, "little")
    + (40).to_bytes(4, "little") + (8).to_bytes(4, "little") * 2
    + (1).to_bytes(2, "little") + (24).to_bytes(2, "little") + bytes(24)
    + (bytes((0x20, 0x10, 0x70)) + bytes((0x18, 0x08, 0x50))) * 32
)  # fmt: skip


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    return build(tmp_path_factory.mktemp("reader"))


@pytest.fixture(scope="module")
def address(site):
    with served(site) as address:
        yield address


@pytest.fixture(params=["served below a path", "from a file"])
def wall(request, site, address):
    """A size's page, both ways in which it may be read."""
    return address + WALL if request.param == "served below a path" else (site / WALL / "index.html").as_uri()


def fill_of(page, fabric, picture="finished"):
    """Return the computed fill of some patch of a fabric in a picture."""
    return page.evaluate(
        """([fabric, picture]) => getComputedStyle(document.querySelector(
            `figure[data-picture=${picture}] [fill^="var(--fabric-${fabric},"]`)).fill""",
        [fabric, picture],
    )


class TestTicks:
    def test_ticks_are_there_again_after_a_reload_and_elsewhere_are_none(self, browser, wall):
        with opened(browser, wall) as page:
            steps = page.locator('.tick[data-tick^="step-"]')
            steps.nth(0).check()
            page.locator(".tick-item .tick").nth(2).check()
            page.reload()
            assert steps.nth(0).is_checked() and page.locator(".tick-item .tick").nth(2).is_checked()
            assert page.locator(".tick:checked").count() == 2
            assert page.locator(".reader-tools .ticked").inner_text() == f"1 of {steps.count()} steps done"
            page.goto(wall.replace("wall-hanging", "mug-rug"))
            assert page.locator(".tick").count() > 10 and page.locator(".tick:checked").count() == 0

    def test_all_ticks_can_be_cleared(self, browser, address):
        with opened(browser, address + WALL) as page:
            page.locator(".tick").first.check()
            page.click("[data-do=untick]")
            assert page.locator(".reader-said").inner_text() == "All ticks are cleared."
            page.reload()
            assert page.locator(".tick:checked").count() == 0

    def test_a_new_version_keeps_steps_and_forgets_cuts(self, browser, address):
        with opened(browser, address + WALL) as page:
            page.locator('.tick[data-tick^="step-"]').first.check()
            page.locator(".tick-item .tick").first.check()
            page.evaluate("""() => { for (const key of Object.keys(localStorage).filter((key) => key.includes(':ticks:'))) {
                localStorage.setItem(key, JSON.stringify({...JSON.parse(localStorage.getItem(key)), version: '0.1'})); } }""")
            page.reload()
            assert [tick.get_attribute("class") for tick in page.locator(".tick:checked").all()] == ["tick"]
            assert page.locator(".tick:checked").get_attribute("data-tick").startswith("step-")

    def test_without_a_memory_the_page_works(self, browser, address):
        context = browser.new_context()
        context.add_init_script(
            "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('refused'); }})"
        )
        page = context.new_page()
        page.goto(address + WALL)
        page.locator(".tick").first.check()
        page.locator('.measured[role="button"]').first.click()
        assert page.locator("dialog.why").is_visible()
        context.close()

    def test_every_tick_has_an_id_of_its_own_and_a_name(self, browser, address):
        with opened(browser, address + WALL) as page:
            ids = page.evaluate("[...document.querySelectorAll('.tick')].map((tick) => tick.dataset.tick)")
            assert len(ids) == len(set(ids)) > 20
            names = page.evaluate(
                "[...document.querySelectorAll('.tick')].map((t) => t.ariaLabel ?? t.labels[0]?.textContent ?? '')"
            )
            assert all(len(name.strip()) > 8 for name in names)


class TestWhy:
    def test_by_keyboard_alone(self, browser, wall):
        with opened(browser, wall) as page:
            figure = page.locator("#glance ~ ul [data-figure=seam_allowance]").first
            figure.focus()
            page.keyboard.press("Enter")
            dialog = page.get_by_role("dialog", name="seam allowance")
            assert dialog.is_visible() and "1/4 in" in dialog.inner_text()
            assert "pattern.yaml, line " in dialog.inner_text()
            page.keyboard.press("Escape")
            assert not page.locator("dialog.why").is_visible()
            assert page.evaluate("document.activeElement.dataset.figure") == "seam_allowance"

    def test_each_figure_can_be_reached_and_tells_what_the_open_data_say(self, browser, site, address):
        data = json.loads((site / (WALL.rstrip("/") + ".json")).read_text(encoding="utf-8"))["figures"]
        with opened(browser, address + WALL) as page:
            told = page.evaluate("JSON.parse(document.querySelector('template.why-data').content.textContent)")
            asked = page.evaluate(
                "[...document.querySelectorAll('.measured[data-figure]')].map((one) => one.dataset.figure)"
            )
            assert set(told) == set(asked) and len(asked) > 100
            assert any("@" in name for name in told)
            for name, reason in told.items():
                # The figures of another width stand among the other ways to buy.
                known = data[name.replace("@", "_at_")]
                assert reason["value"].startswith(known["value"])
                if "because" in reason:
                    assert reason["because"] == known["why"]
            assert page.locator('.measured[data-figure]:not([role="button"])').count() == 0
            # The first of each item by the tab key, the others by arrow keys.
            page.locator('.measured[role="button"]').first.focus()
            seen = page.evaluate(
                """[...document.querySelectorAll('.measured[data-figure]')].filter((one) => one.checkVisibility())
                    .map((one) => one.dataset.figure)"""
            )
            for expected in seen[1:12]:
                page.keyboard.press("ArrowRight")
                assert page.evaluate("document.activeElement.dataset.figure") == expected

    def test_the_close_button_closes(self, browser, address):
        with opened(browser, address + WALL) as page:
            page.locator('.measured[role="button"]').first.click()
            page.get_by_role("button", name="Close").click()
            assert not page.locator("dialog.why").is_visible()


class TestSteps:
    def test_next_and_previous_by_keyboard_and_by_button(self, browser, address):
        with opened(browser, address + WALL) as page:
            where = "document.activeElement.id"
            ids = page.evaluate("[...document.querySelectorAll('.step > [id]')].map((one) => one.id)")
            for expected in ids[:3]:
                page.keyboard.press("Alt+ArrowDown")
                assert page.evaluate(where) == expected
            page.keyboard.press("Alt+ArrowUp")
            assert page.evaluate(where) == ids[1]
            page.click("[data-do=next]")
            assert page.evaluate(where) == ids[2]

    def test_keys_are_left_alone_while_something_is_typed(self, browser, address):
        with opened(browser, address + WALL) as page:
            page.evaluate("document.querySelector('.pattern-text').prepend(document.createElement('textarea'))")
            page.focus("textarea")
            page.keyboard.press("Alt+ArrowDown")
            assert page.evaluate("document.activeElement.tagName") == "TEXTAREA"

    def test_a_screen_can_be_kept_on_where_the_browser_can(self, browser, address):
        with opened(browser, address + WALL) as page:
            page.evaluate("""() => { navigator.wakeLock.request = async () => Object.assign(new EventTarget(), {
                async release() { this.dispatchEvent(new Event('release')); } }); }""")
            button = page.locator("[data-do=awake]")
            button.click()
            page.wait_for_selector("[data-do=awake][aria-pressed=true]")
            button.click()
            page.wait_for_selector("[data-do=awake][aria-pressed=false]")
        context = browser.new_context()
        context.add_init_script("delete Navigator.prototype.wakeLock")
        page = context.new_page()
        page.goto(address + WALL)
        assert not page.locator("[data-do=awake]").is_visible() and page.locator("[data-do=print]").is_visible()
        context.close()

    def test_the_shopping_list_is_copied_as_plain_text(self, browser, address):
        with opened(browser, address + WALL, permissions=["clipboard-read", "clipboard-write"]) as page:
            page.click("[data-do=shopping]")
            page.wait_for_function("document.querySelector('.reader-said').textContent")
            text = page.evaluate("navigator.clipboard.readText()")
            assert text.startswith("Harbour Lanterns\nWall hanging, inch edition\n")
            for fabric in ("Morning Fog", "Old Iron", "Lamp Glow", "Flame", "Wet Slate", "Deep Sea"):
                assert sum(line.startswith("- ") and fabric in line for line in text.splitlines()) >= 1


class TestPlace:
    def test_the_other_edition_opens_at_the_same_step_and_is_remembered(self, browser, wall):
        with opened(browser, wall) as page:
            step = page.locator(".step > [id]").nth(4)
            id = step.get_attribute("id")
            page.evaluate("id => document.getElementById(id).scrollIntoView()", id)
            page.evaluate("document.querySelector('.switch a[data-edition=centimetres]').click()")
            page.wait_for_url("**wall-hanging-centimetres/**")
            assert page.url.endswith(f"#{id}")
            assert abs(page.locator(f"#{id}").bounding_box()["y"]) < 200
            overview = page.url.split("wall-hanging")[0] + ("index.html" if wall.startswith("file") else "")
            page.goto(overview)
            preferred = page.locator(".size-editions a.is-preferred")
            assert preferred.count() == 4 and "cm" in preferred.first.inner_text()


class TestFabrics:
    def test_colours_change_every_picture_and_labels_stay_readable(self, browser, wall):
        with opened(browser, wall) as page:
            page.click(".try-fabrics summary")
            before = fill_of(page, "fog")
            for colour in ("#203050", "#808080", "#777777", "#fefefe", "#c03030", "#00ff00"):
                page.fill("[data-fabric=fog] input[type=color]", colour)
                red, green, blue = (int(colour[n : n + 2], 16) for n in (1, 3, 5))
                for picture in ("finished", "cutting-fog", "block-lantern"):
                    assert fill_of(page, "fog", picture) == f"rgb({red}, {green}, {blue})" != before
                ratios = page.evaluate(CONTRAST)
                assert len(ratios) == 2 and min(ratios) >= 4.5, colour
            swatch = "getComputedStyle(document.querySelector('.swatch[data-fabric=fog] rect')).fill"
            assert page.evaluate(swatch) == "rgb(0, 255, 0)"
            page.click("[data-do=fabric-reset]")
            assert fill_of(page, "fog") == before

    def test_a_colour_is_drawn_by_the_rules_of_the_pictures(self, browser, address):
        names = ("colour", "ink", "line", "mark", "wrong", "wrong_ink", "wrong_line", "wrong_mark")
        steps = ("00", "1d", "44", "76", "80", "9b", "c8", "ff")
        colours = [f"#{red}{green}{blue}" for red in steps for green in steps for blue in steps]
        with opened(browser, address + WALL) as page:
            drawn = page.evaluate(
                "colours => colours.map((one) => Object.values(evenseamReader.looks.look(one)))", colours
            )
        for colour, look in zip(colours, drawn, strict=True):
            ours = look_of(Fabric("f", "F", colour, ""), "F", Texture.PLAIN)
            assert look == [getattr(ours, name) for name in names], colour

    def test_they_stay_on_the_device_and_follow_to_other_sizes(self, browser, address):
        with opened(browser, address + WALL) as page:
            page.click(".try-fabrics summary")
            page.fill("[data-fabric=sea] input[type=color]", "#802040")
            page.goto((address + WALL).replace("wall-hanging", "mug-rug"))
            assert fill_of(page, "sea") == "rgb(128, 32, 64)"

    def test_a_link_brings_the_colours_to_someone_else(self, browser, wall):
        with opened(browser, wall) as page:
            page.click(".try-fabrics summary")
            page.fill("[data-fabric=sea] input[type=color]", "#802040")
            page.click("[data-do=fabric-link]")
            page.wait_for_function("location.hash")
            link = page.url
        assert link.endswith("#fabrics=sea:802040")
        with opened(browser, link) as page:
            assert fill_of(page, "sea") == "rgb(128, 32, 64)"
        with opened(browser, wall + "#fabrics=sea:red;}x,%E0%A4%A,fog:12345g") as page:
            assert fill_of(page, "sea") == "rgb(31, 74, 99)"

    def test_near_values_are_told(self, browser, address):
        with opened(browser, address + WALL) as page:
            page.click(".try-fabrics summary")
            assert page.locator(".fabric-hint").inner_text() == ""
            page.fill("[data-fabric=fog] input[type=color]", "#efc25e")
            assert "Morning Fog and Lamp Glow" in page.locator(".fabric-hint").inner_text()
            # CIE 1976 L* of sRGB mid grey #777777 is 50.03 (IEC 61966-2-1 and CIE 15 computed by hand).
            page.fill("[data-fabric=fog] input[type=color]", "#777777")
            assert page.locator("[data-fabric=fog] .fabric-grey").inner_text() == "50"

    def test_a_photo_fills_the_patches_and_goes_nowhere(self, browser, wall):
        asked = []
        with opened(browser, wall) as page:
            page.click(".try-fabrics summary")
            page.on("request", lambda request: asked.append(request.url))
            page.set_input_files(
                "[data-fabric=fog] input[type=file]",
                files=[{"name": "cloth.bmp", "mimeType": "image/bmp", "buffer": PHOTO}],
            )
            page.wait_for_selector("#photo-fog image", state="attached")
            assert "photo-fog" in fill_of(page, "fog")
            red, green, blue = (
                int(page.input_value("[data-fabric=fog] input[type=color]")[n : n + 2], 16) for n in (1, 3, 5)
            )
            # The mean of the two reds of the photo: (0x70 + 0x50) / 2 and so on, give or take the scaling.
            assert abs(red - 0x60) < 6 and abs(green - 0x0C) < 6 and abs(blue - 0x1C) < 6
            page.click("[data-do=fabric-reset]")
            assert fill_of(page, "fog") == "rgb(223, 227, 224)"
        assert [url for url in asked if not url.startswith(("data:", "blob:"))] == []

    def test_the_picture_is_saved_in_the_readers_colours(self, browser, wall):
        with opened(browser, wall) as page:
            page.click(".try-fabrics summary")
            page.fill("[data-fabric=sea] input[type=color]", "#802040")
            with page.expect_download() as download:
                page.click("[data-do=fabric-picture]")
            content = download.value.path().read_bytes()
            assert content.startswith(b"\x89PNG") and int.from_bytes(content[16:20]) == 1600
            colours = page.evaluate(
                """async (bytes) => {
                    const image = await createImageBitmap(new Blob([new Uint8Array(bytes)]));
                    const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d');
                    canvas.drawImage(image, 0, 0);
                    const { data } = canvas.getImageData(0, 0, image.width, image.height);
                    let ours = 0, theirs = 0;
                    for (let n = 0; n < data.length; n += 4) {
                        ours += data[n] === 128 && data[n + 1] === 32 && data[n + 2] === 64;
                        theirs += data[n] === 31 && data[n + 1] === 74 && data[n + 2] === 99;
                    }
                    return [ours, theirs]; }""",
                list(content),
            )
            assert colours[0] > 10000 and colours[1] == 0

    def test_the_first_page_of_a_pattern_has_them_as_well(self, browser, address):
        with opened(browser, address + LANTERNS) as page:
            page.click(".try-fabrics summary")
            page.fill("[data-fabric=sea] input[type=color]", "#802040")
            hero = "getComputedStyle(document.querySelector('.hero [fill^=\"var(--fabric-sea,\"]')).fill"
            assert page.evaluate(hero) == "rgb(128, 32, 64)"
