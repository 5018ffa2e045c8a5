"""The reasons of the figures that a page shows, for the window that a tapped figure opens."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from typing import Any

from evenseam.pattern import Assumed, Derived, Given, Quantity, equation
from evenseam.publish.html_text import plain
from evenseam.wording import Words, words_of

_ASKED = re.compile(r'data-figure="([^"]+)"')


def why_data(body: str, figures: Iterable[tuple[str, Quantity]], words: Words | None = None) -> str:
    """Return the element that holds the reason of each figure that `body` names; it needs no other file to be read."""
    asked = set(_ASKED.findall(body))
    reasons = {name: reason_as_data(quantity, words or words_of()) for name, quantity in figures if name in asked}
    # No script element: themes that swap pages run all of those that they find in a new page.
    return f'<template class="why-data">{harmless_json(reasons)}</template>'


def reason_as_data(quantity: Quantity, words: Words) -> dict[str, Any]:
    """Return one figure with its reason; parts that have nothing to say are left out.

    Names, rules and sources are the engine's own English; the figure itself stands as it does on the page.
    """
    data: dict[str, Any] = {"name": quantity.name, "value": words.figure(quantity.text)}
    match quantity.because:
        case Given(place=place):
            # The folder in which the site was built is nobody's business.
            file = "/".join(place.file.replace("\\", "/").split("/")[-2:])
            data["place"] = words.fill("tools", "why_line", file=file, line=place.line)
        case Assumed(reason=reason, source=source):
            data |= {"rule": reason, "source": source}
        case Derived() as because:
            data |= {"because": equation(quantity), "rule": because.rule, "source": because.source}
            data["from"] = [[part.name, part.text] for part in because.expression.quantities]
    return {key: value for key, value in data.items() if value}


def harmless_json(data: object) -> str:
    """Return data as JSON in which nothing looks like markup or like a template, for an element of a page."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    for sign, escaped in (("<", "\\u003c"), (">", "\\u003e"), ("&", "\\u0026")):
        text = text.replace(sign, escaped)
    # A brace is followed by another brace, a percent or a hash sign only inside a text.
    text = re.sub(r"\{(?=[{%#])", r"\\u007b", text)
    return plain(text)
