"""Pages of a built site open in a browser, and what is measured on them."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

LANTERNS = "patterns/harbour-lanterns/"
WALL = LANTERNS + "wall-hanging-inches/"

CONTRAST = """() => {
    // WCAG 2.2 contrast of every label that stands on a fabric with that fabric, as the browser computes both.
    const canvas = document.createElement('canvas').getContext('2d', {willReadFrequently: true});
    const light = (colour) => {
        canvas.fillStyle = colour; canvas.fillRect(0, 0, 1, 1);
        const [r, g, b] = [...canvas.getImageData(0, 0, 1, 1).data].slice(0, 3).map((part) => part / 255)
            .map((part) => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
        return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
    const style = getComputedStyle(document.querySelector('.pattern-page'));
    return [...document.querySelectorAll('[data-fabric][data-colour]')].flatMap((row) => ['', '-wrong'].map((side) => {
        const name = `--fabric-${row.dataset.fabric}${side}`;
        const [ground, ink] = [name, `${name}-ink`].map((one) => style.getPropertyValue(one).trim());
        if (!ground || !ink) return null;
        const [low, high] = [light(ground), light(ink)].sort((a, b) => a - b);
        return (high + 0.05) / (low + 0.05); })).filter((one) => one !== null);
}"""


@contextmanager
def opened(browser: Any, address: str, **settings: Any) -> Iterator[Any]:
    """Open a page in a window of its own; an error in a script fails the test."""
    context = browser.new_context(**settings)
    page = context.new_page()
    failed: list[str] = []
    page.on("pageerror", lambda error: failed.append(str(error)))
    page.goto(address)
    yield page
    context.close()
    assert not failed, failed
