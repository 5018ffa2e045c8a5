"""Whatever a drawing holds: an answer soon, problems that stand inside the text, no file and no address looked at."""

from __future__ import annotations

import builtins
import io
import os
import re
import socket
import time
import tracemalloc
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from evenseam.problems import SourceText
from evenseam.reading import look_at_drawing
from hypothesis import example, given, settings
from hypothesis import strategies as st
from support.drawing_checks import check_drawing
from support.svg_texts import read, svg

GOOD = (
    svg(
        '<style>.s{fill:#23465f}path{fill:#d9dcd6}</style>\n<defs><polygon id="a" points="0,0 40,0 40,40"/></defs>\n'
        '<g transform="translate(1,1) rotate(90)">\n<use href="#a" class="s" x="2" y="-3"/>\n'
        '<path d="M0 0L40 40H0z" style="opacity:1"/></g>\n<symbol id="s" viewBox="0 0 4 4"><rect width="4" height="2"/></symbol>'
        '<use href="#s" width="9" height="9"/>\n<svg x="1" width="50%" height="9" viewBox="0 0 9 9"><rect width="3" height="9"/></svg>',
        'width="4in" height="101.6mm" viewBox="0 0 40 40" preserveAspectRatio="xMidYMid meet"',
    ),
    svg(
        '<g fill="none" stroke="#000"><rect width="40" height="40"/>\n<path d="M0 0 40 40M40 0 0 40M0 20H40M13 0V40"/>\n'
        '<line x1="1" y1="2" x2="30" y2="9"/><polyline points="3,3 9,30 30,9 17,39"/></g>\n'
        '<circle cx="20" cy="5" r="2" fill="red"/><text x="5" y="20">sea</text><ellipse cx="3" cy="3"/>',
    ),
)  # fmt: skip
SIGNS = (
    *"<>&\"'/=;:{}()#.,-%MLHVZCz0189 \n\t\x00\x1b\ufeff\ud800é☃", "<!DOCTYPE x>", "<!ENTITY", "<![CDATA[", "]]>", "&#0;", "&#x110000;", "&a;",
    "1e9", "1e-9", "1e999", "9" * 50, "<g>", "</g>", 'href="#a"', 'href="file:///etc/passwd"', 'href="http://localhost:9/a"', "url(#a)",
    "url(http://localhost:9/)", "@import url(file:///etc/passwd);", "<?xml-stylesheet href='file:///etc/passwd'?>", "((((((((", "{{{{{{{{",
    'fill="none"', 'stroke="red"', 'class="outline"', "transform='scale(0)'", "transform='scale(1e8)'", "<script>", 'xmlns="x"', "display:none",
)  # fmt: skip


@contextmanager
def nothing_outside() -> Iterator[None]:
    """Refuse every file and every address while a drawing is read."""

    def refuse(*args: object, **_: object) -> None:
        raise AssertionError(f"reached outside: {args}")

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(socket, "socket", refuse)
        patch.setattr(socket, "getaddrinfo", refuse)
        patch.setattr(builtins, "open", refuse)
        patch.setattr(io, "open", refuse)
        patch.setattr(os, "open", refuse)
        yield


def check(text: str) -> None:
    """Read a text in several ways; every problem can be shown and stands inside it."""
    with nothing_outside():
        check_drawing(text)


@st.composite
def mangled(draw: st.DrawFn) -> str:
    text = draw(st.sampled_from(GOOD))
    for _ in range(draw(st.integers(1, 6))):
        start = draw(st.integers(0, len(text)))
        end = draw(st.integers(start, min(len(text), start + draw(st.sampled_from((0, 1, 5, 40))))))
        match draw(st.sampled_from(("cut", "put", "double", "number"))):
            case "cut":
                text = text[:start] + text[end:]
            case "put":
                text = text[:start] + draw(st.sampled_from(SIGNS)) + text[end:]
            case "double":
                text = text[:end] + text[start:]
            case "number":
                numbers = list(re.finditer(r"\d+", text))
                if numbers:
                    found = numbers[draw(st.integers(0, len(numbers) - 1))]
                    new = draw(st.sampled_from(("0", "-1", "1e9", "0.0001", "39.99", "999999999", "1e-12", "13.37")))
                    text = text[: found.start()] + new + text[found.end() :]
    return text


@settings(max_examples=200, deadline=None)
@given(mangled())
def test_mangled_drawings(text: str) -> None:
    check(text)


@settings(max_examples=80, deadline=None)
@given(st.text(max_size=200))
@example("")
@example("<svg/>")
@example("<svg>\x00</svg>")
@example("<svg><text>\ud800</text></svg>")
@example("\ufeff")
@example('<svg><polygon points="" stroke="red"/></svg>')
@example('<svg><polygon points="3,3" stroke="red"/><path d="M0 0" class="outline"/></svg>')
def test_any_text(text: str) -> None:
    check(text)


MANY = "".join(f'<rect x="{x}" y="{y}" width="1" height="1"/>' for x in range(17) for y in range(17))
HEAVY = {
    "entities in entities": '<!DOCTYPE s [<!ENTITY a "x"><!ENTITY b "&a;&a;">]><svg>&b;</svg>',
    "a million blanks": "<svg>" + " " * 999_000 + "</svg>",
    "a long attribute": '<svg><path d="M0 0' + "L1 1" * 200_000 + '"/></svg>',
    "a long list of numbers": '<svg><polygon points="' + "1,2 " * 200_000 + '"/></svg>',
    "a long transform": '<svg><g transform="' + "rotate(1.23)" * 50_000 + '"><rect width="1" height="1"/></g></svg>',
    "turns in turns": "<svg>" + "<g transform='rotate(1.2345678) scale(1.01)'>" * 55 + "<rect width='4' height='4'/>" + "</g>" * 55 + "</svg>",
    "copies of copies": svg('<defs><g id="a0"><rect width="4" height="4"/></g>' + "".join(f'<g id="a{n}">' + f'<use href="#a{n - 1}"/>' * 20 + "</g>" for n in range(1, 9)) + '</defs><use href="#a8"/>'),
    "many style rules": "<svg><style>" + ".a{fill:red}" * 8000 + "</style>" + '<rect class="a" width="4" height="4"/>' * 300 + "</svg>",
    "brackets in brackets": "<svg><style>.a{fill:" + "(" * 20_000 + "</style><rect style='fill:" + "(" * 20_000 + "' width='4' height='4'/></svg>",
    "many elements": "<svg>" + "<g/>" * 30_000,
    "many attributes": "<svg " + " ".join(f'a{n}="1"' for n in range(50_000)) + "/>",
    "many tags that are none": "<svg " + "a='b' " * 100_000,
    "many shapes": svg(MANY),
    "many shapes a little off": svg(MANY.replace('width="1"', 'width="1.03"')),
    "many shapes far off": svg(f'<g transform="rotate(7)">{MANY}</g>'),
    "many crossing lines": svg("".join(f'<path stroke="red" fill="none" d="M0 {n}L40 {40 - n}M{n} 0L{40 - n} 40"/>' for n in range(41))),
    "many crossing lines a little off": svg("".join(f'<path stroke="red" fill="none" d="M0 {n}.037L40 {40 - n}.021"/>' for n in range(40)) * 3),
    "one shape with many corners": svg('<polygon points="' + " ".join(f"{n * n % 40},{n * 7 % 40}" for n in range(60)) + '"/><rect width="40" height="40"/>'),
}  # fmt: skip


def test_the_guard_holds() -> None:
    with nothing_outside(), pytest.raises(AssertionError, match="reached outside"):
        Path(__file__).read_text()


@pytest.mark.parametrize("name", HEAVY)
def test_heavy_drawings_are_answered_soon(name: str) -> None:
    """In seconds, on a busy machine too."""
    started = time.process_time()
    with nothing_outside():
        read(HEAVY[name])
        look_at_drawing(SourceText("drawing.svg", HEAVY[name]))
    assert time.process_time() - started < 12


@pytest.mark.parametrize("name", ["entities in entities", "a long attribute", "copies of copies", "many elements"])
def test_heavy_drawings_take_little_memory(name: str) -> None:
    """A few times what a text of a megabyte takes."""
    tracemalloc.start()
    try:
        read(HEAVY[name])
        assert tracemalloc.get_traced_memory()[1] < 250_000_000
    finally:
        tracemalloc.stop()
