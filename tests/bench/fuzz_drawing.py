"""Throws changed SVG drawings at the reader of drawings, guided by the code they reach; prints what broke.

    python -m venv /tmp/fuzz && /tmp/fuzz/bin/pip install atheris pyyaml jinja2 markdown-it-py tinycss2
    nice -n 19 /tmp/fuzz/bin/python tests/bench/fuzz_drawing.py --minutes 20

The guide (atheris) is no part of the lock. Each different failure is kept once, in the folder named at the end. A file
opened or an address looked up while a drawing is read is a failure as well.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2] / "plugin"), str(HERE.parents[1]), str(HERE.parent)]

import atheris  # type: ignore[import-not-found] # noqa: E402

with atheris.instrument_imports(include=["evenseam"]):
    from fuzzing import Fuzzing, changed, start, words_of
    from support.drawing_checks import WAYS, check_drawing

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40"%s>%s</svg>'
SEEDS = (
    SVG % ("", '<path fill="#23465f" d="M0 0L40 40H0z"/><polygon fill="#d9dcd6" points="0,0 40,0 40,40"/>'),
    SVG
    % (
        ' width="4in" height="101.6mm" preserveAspectRatio="xMidYMid meet"',
        '<style>.s{fill:#23465f}path{fill:#d9dcd6}</style><defs><polygon id="a" points="0,0 40,0 40,40"/></defs>'
        '<g transform="translate(0,0) rotate(0)"><use href="#a" class="s"/><path d="M0 0L40 40H0z" style="opacity:1"/></g>',
    ),
    SVG
    % (
        "",
        '<g fill="none" stroke="#000"><rect width="40" height="40"/><path d="M0 0 40 40M40 0 0 40"/></g>'
        '<circle cx="20" cy="5" r="2" fill="red"/><text x="5" y="20">sea</text>',
    ),
    SVG
    % (
        "",
        '<symbol id="s" viewBox="0 0 4 4"><rect width="4" height="2" fill="sea"/></symbol><use href="#s" width="40" height="20"/>'
        '<svg y="20" width="100%" height="20" viewBox="0 0 9 9" preserveAspectRatio="none"><rect width="9" height="9"/></svg>',
    ),
    SVG % ("", "".join(f'<rect x="{x}" y="{y}" width="10" height="10" fill="#{x}{y}4"/>' for x in (0, 10, 20, 30) for y in (0, 10, 20, 30))),
    *(path.read_text("utf-8") for path in sorted((HERE.parents[2] / "patterns").glob("*/*.svg"))),
)  # fmt: skip
PIECES = (
    "<g>", "</g>", "<g transform='", "rotate(45)", "rotate(7.3 1 2)", "scale(0)", "scale(-1,1)", "scale(1e8)", "skewX(30)", "matrix(0 1 1 0 3 4)",
    "translate(1)", "<!DOCTYPE x>", "<!ENTITY a 'b'>", "&a;", "<![CDATA[", "]]>", "<!--", "-->", "<?x?>", "&#0;", "&#x110000;", "\x00", "\ufeff",
    "1e9", "1e-9", "1e999", "-0", ".5.5", "9" * 40, "NaN", "50%", "3mm", "2em", "href='#a'", "xlink:href='#s'", "href='file:///etc/passwd'",
    "url(#a)", "url(http://localhost:9/)", "@import url(file:///etc/passwd);", "fill='none'", "fill='red'", "fill='sea'", "fill='url(#a)'",
    "stroke='red'", "class='outline'", "display:none", "visibility='hidden'", "opacity='0'", "clip-path='url(#a)'", "<script>", "<style>",
    ".a,b>c{fill:red}", "!important", "M0 0", "L", "l1 1", "H", "v-3", "C1 1 2 2 3 3", "Q1 1 2 2", "A5 5 0 0 1 9 9", "a5 5 0 01.5.5", "S1 1 2 2", "z", "Z m",
    "<use href='#a'/>", "<path d='", "<polygon points='", "<polyline points='", "<line x1='0' y1='0' x2='40' y2='40'/>", "<rect rx='3' ", "<image ",
    "viewBox='0 0 0 0'", "viewBox='-5 -5 9 9'", "width='0'", "preserveAspectRatio='xMinYMax slice'", "xmlns='x'", "\"", "'", "/>", "<", ">", "\n", "\t",
)  # fmt: skip
EVERY_WAY = 16
"""Drawings between two that are read in every way, and twice."""


def read(data: bytes) -> tuple[str, str]:
    """Return an input of the guide as a drawing: a text as it is, or a good drawing with changes."""
    if not data or data[0] % 4 == 0:
        return "any text", data[1:].decode("utf-8", "replace")
    return "changed drawing", changed(SEEDS[data[0] // 4 % len(SEEDS)], data[1:], PIECES)


def check(kind: str, text: str, number: int) -> str:
    """Fail unless the drawing is answered as it must be. Return whether it was a whole block."""
    with nothing_outside():
        whole = check_drawing(text, WAYS if number % EVERY_WAY == 0 else WAYS[:1])
        if number % EVERY_WAY == 0:
            assert whole == check_drawing(text, WAYS), "another answer to the same text"
    return f"{kind}, whole blocks" if whole else ""


_WATCHING = [False]


@contextmanager
def nothing_outside() -> Iterator[None]:
    """Make every file opened and every address looked up a failure."""
    _WATCHING[0] = True
    try:
        yield
    finally:
        _WATCHING[0] = False


def _watch(event: str, arguments: tuple[Any, ...]) -> None:
    if _WATCHING[0] and event.startswith(("open", "socket.", "subprocess.", "os.system", "os.exec", "urllib.")):
        raise AssertionError(f"reached outside: {event} {arguments!r:.100}")


def main() -> None:
    """Run for the time asked for."""
    options = words_of(__doc__)
    # What is read once and late, such as tables of signs, is read before the doors are watched.
    for seed in SEEDS:
        check_drawing(seed)
    sys.addaudithook(_watch)
    fuzzing = Fuzzing(options.keep, options.minutes, read, check)
    seeds = [b"\0" + seed.encode() for seed in SEEDS]
    seeds += [bytes([4 * number + 1]) + change for number in range(len(SEEDS)) for change in (b"one ", b"one two ")]
    start(fuzzing, options.minutes, seeds, PIECES)


if __name__ == "__main__":
    main()
