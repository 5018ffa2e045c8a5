"""A pattern whose author's words belong to no language, so that every other word on its pages is the publisher's."""

from __future__ import annotations

from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

from evenseam.publish.cache import Cache
from evenseam.publish.options import SiteOptions
from evenseam.publish.site import build_site
from evenseam.publish.site_files import SiteFiles
from evenseam.publish.sources import PatternSource, find_patterns

from support.mkdocs_site import write_pattern

TEXT = """\
format: 1
title: Qorvex
summary: Zufa brimo.
designer: Plindu
version: "1.1"
skill level: confident beginner
licence: XQ 4.0
changes:
  - {version: "1.1", date: 2026-05-02, what: Wumo.}
  - {version: "1.0", date: 2026-03-02, what: Yelka.}
units: inches
editions: [inches, centimetres]
fabrics:
  vaku: {name: Vaku, colour: "#23465f", role: drosu}
  zemi: {name: Zemi, colour: "#d9dcd6", directional: yes}
  rexa: {name: Rexa, colour: "#e9b44c"}
blocks:
  gliv:
    name: Gliv
    finished size: 8
    method: foundation
    grid: 24 x 24
    pieces:
      - vaku: 0,0 12,0 12,18 0,18
      - rexa: 12,0 24,0 12,18
      - zemi: 24,0 24,18 12,18
      - vaku: 0,18 24,18 24,24 0,24
  hroz:
    name: Hroz
    finished size: 6
    method: rotary
    units:
      - [half-square vaku/rexa, square zemi]
      - [square zemi, half-square vaku/rexa turned 180]
arrangement: {rows: 1, columns: 1, block: gliv}
borders:
  nuri: {width: 1 1/2, fabric: vaku}
finish:
  kind: turned
  backing: {fabric: vaku}
sizes:
  mivo:
    use: pot holder
    hanging: {kind: corner pockets, fabric: vaku}
  tralu:
    arrangement: {rows: 2, columns: 2, block: hroz, sashing: {width: 1, fabric: zemi, cornerstones: rexa}}
    borders:
      nuri: {width: 2, fabric: rexa, corners: mitred}
    finish:
      kind: bound
      binding: {fabric: vaku}
    hanging: {kind: sleeve, fabric: vaku}
  gondo:
    use: wall
    arrangement: {setting: on point, rows: 2, columns: 2, block: hroz, setting triangles: {fabric: zemi}}
    finish:
      kind: faced
      facing: {fabric: rexa}
    hanging: {kind: loops, fabric: rexa, number: 3}
"""
WORDS = frozenset(
    ("qorvex", "zufa", "brimo", "plindu", "wumo", "yelka", "vaku", "zemi", "rexa", "drosu", "gliv", "hroz", "nuri",
     "mivo", "tralu", "gondo")
)  # fmt: skip
"""The author's, in small letters."""


def nameless_site(folder: Path, code: str) -> tuple[SiteFiles, tuple[PatternSource, ...]]:
    """Build the pattern's site in one language and return it with what it was made from."""
    write_pattern(folder / "patterns" / "qorvex", TEXT)
    sources = find_patterns(folder / "patterns")
    options = SiteOptions(papers=("a4",), has_handouts=False, has_author_guide=False, language=code)
    site = build_site(sources, options, Cache(folder / "cache"), processes=1)
    assert not site.errors, site.errors
    return site, sources


_ATTRIBUTES = frozenset(("alt", "title", "aria-label", "placeholder"))
_SAID = frozenset(
    f"data-{name}" for name in ("said", "refused", "on", "off", "done", "near", "pair", "listed", "shown")
)
"""What the scripts say, in attributes of the elements that say it."""
_EMPTY = frozenset(("br", "img", "input", "hr", "meta", "link"))
_UNSEEN = frozenset(("script", "style", "template"))


class _Seen(HTMLParser):
    """Collects the words that are seen, heard or said, but for what is marked as English on a page of ours."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self._skipped: list[bool] = [False]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        is_skipped = self._skipped[-1] or tag in _UNSEEN or (given.get("lang") == "en" and tag in ("span", "ul"))
        if not is_skipped:
            self.found += [value for name, value in attrs if value and name in _ATTRIBUTES | _SAID]
        if tag not in _EMPTY:
            self._skipped.append(is_skipped)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in _EMPTY:
            self._skipped.pop()

    def handle_endtag(self, tag: str) -> None:
        if tag not in _EMPTY:
            self._skipped.pop()

    def handle_data(self, data: str) -> None:
        if not self._skipped[-1] and data.strip():
            self.found.append(" ".join(data.split()))


def said_in(html: str) -> list[str]:
    """Return every run of words of a page that somebody sees, hears or is told."""
    reader = _Seen()
    reader.feed(html)
    reader.close()
    return reader.found


def said_on(site: SiteFiles) -> Iterator[tuple[str, str]]:
    """Yield every run of words of a site with the page it stands on: bodies, titles, contents, feeds."""
    for page in site.pages:
        about = (page.title, page.short_title, page.description, page.feed_title)
        contents = (entry.title for entry in page.contents)
        for words in (*about, *contents, *said_in(page.body(has_folders=True))):
            yield page.path, words
    for file in site.files:
        if file.path.endswith((".xml", "colouring.svg")) or "check-your-templates" in file.path:
            for words in said_in(file.stored.read_text("utf-8")):
                yield file.path, words
