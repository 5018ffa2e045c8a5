"""The page of a review in a real browser: it opens by itself, asks for nothing, runs nothing, and shows both pictures."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from evenseam.publish.review_page import write_review_page
from evenseam.review import review_all
from support.reviewed import edited, version

MARKUP = "'</title><script>ran()</script><img src=//e.example/x onerror=ran()><svg onload=ran()>'"
TITLE = "'Gulls <script>ran()</script><svg onload=ran()>'"
SHORT = "'<img src=x onerror=ran()>'"
LIVELY = (
    ("title: Two Gulls", f"title: {TITLE}"),
    ("name: Fog,", f"name: {SHORT},"),
    ("name: Gull\n", f"name: {SHORT}\n"),
    ("Take your time.", MARKUP),
    ("designer: Saltmarsh Workshop", f"designer: {SHORT}\neditions: [inches, centimetres]"),
)
"""The author's words wherever there are any."""
WIDER = ("outer border: {width: 2, fabric: sea, order", "outer border: {width: 3, fabric: sea, order")


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Write the review of a border that grew, in a pattern whose every word is hostile."""
    versions = {"two-gulls": (version(edited(*LIVELY)), version(edited(*LIVELY, WIDER)))}
    review = review_all(MARKUP, f"{MARKUP} (0123456789)", versions)
    # The markup in the words for a step is refused, and the refusal stands on the page; the figures are all there.
    assert all(failure.is_computed for failure in review.failures), review.failures
    path = tmp_path_factory.mktemp("review") / "review.html"
    path.write_text(write_review_page(review, versions), "utf-8")
    return path


@pytest.fixture
def opened(browser: Any, page: Path) -> Any:
    """Open the page as somebody who was sent the file; note everything it asks for and complains of."""
    context = browser.new_context(viewport={"width": 1200, "height": 900})
    tab = context.new_page()
    tab.add_init_script("window.ran = () => { window.__ran = true; };")
    tab.asked, tab.said = [], []
    tab.on("request", lambda request: tab.asked.append(request.url))
    tab.on("console", lambda message: tab.said.append(message.text))
    tab.on("pageerror", lambda error: tab.said.append(str(error)))
    tab.goto(page.as_uri())
    yield tab
    context.close()


def test_it_asks_for_nothing_and_runs_nothing(opened: Any, page: Path) -> None:
    opened.wait_for_timeout(200)
    assert opened.asked == [page.as_uri()]
    assert opened.said == []
    assert opened.evaluate("window.__ran") is None
    assert (
        opened.evaluate("document.querySelectorAll('script, img, iframe, object, link, [onload], [onerror]').length")
        == 0
    )
    # The words are there to be read, as they were written.
    assert "<script>ran()</script>" in opened.locator("h1").inner_text()


def test_a_script_put_into_it_would_not_run(opened: Any) -> None:
    """The page itself forbids scripts, should an escape ever be forgotten."""
    opened.evaluate("document.body.insertAdjacentHTML('beforeend', '<img src=data:,x onerror=ran()>')")
    opened.wait_for_timeout(200)
    assert opened.evaluate("window.__ran") is None and any("Content Security Policy" in words for words in opened.said)


@pytest.mark.parametrize("width", [1200, 390])
def test_both_pictures_are_seen_with_what_differs(opened: Any, width: int) -> None:
    opened.set_viewport_size({"width": width, "height": 900})
    pair = opened.locator(".pair").first
    boxes = [figure.bounding_box() for figure in pair.locator("svg").all()]
    assert len(boxes) == 2 and all(box and box["width"] > 80 and box["height"] > 50 for box in boxes)
    captions = pair.locator("figcaption").all_inner_texts()
    assert captions[0].startswith("Before: 18 × 12 in") and captions[1].startswith("After: 20 × 14 in")
    # At one scale: what grew is drawn larger.
    assert boxes[1]["width"] > boxes[0]["width"]
    assert pair.locator("path.changed").count() == 2
    # The cloth is painted: the sea of the border, where the drawing says so.
    assert pair.locator("path.cloth").first.evaluate("shape => getComputedStyle(shape).fill").startswith("rgb(")
    assert opened.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_the_other_edition_has_pictures_to_unfold(opened: Any) -> None:
    fold = opened.locator("details", has_text="Before and after in centimetres").first
    picture = fold.locator("svg").first
    assert not picture.is_visible()
    fold.locator("summary").click()
    assert picture.is_visible() and fold.locator("figcaption").first.inner_text().startswith("Before: ")
    assert " cm" in fold.locator("figcaption").first.inner_text()
