"""The page for authors that lists every key of a pattern file, made from the reader's own list."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby

from evenseam.publish.html import HtmlText, write_html
from evenseam.publish.html_text import escape
from evenseam.reading import KeyReference, key_reference
from evenseam.wording.document import Block, Code, Document, Heading, Inline, Paragraph, Picture, Table, Text

TITLE = "Every key"
_LEAD = (
    "Everything that can stand in a pattern file. A key that is marked “required” must be there; each of the others "
    "has a value of its own when it is left out. Words in angle brackets, such as <fabric>, are names that you choose."
)
_SIZES = "A key of which any size can say otherwise may also stand under a size, and then counts for that size only."


def write_key_page() -> tuple[str, HtmlText]:
    """Return the title and the text of the page; its first element is the page's heading."""
    text = write_html(Document(TITLE, "", tuple(_blocks(key_reference()))), _no_picture)
    body = f'<div class="pattern-page" lang="en">\n<h1>{escape(TITLE)}</h1>\n{text.body}\n</div>'
    return TITLE, HtmlText(body, text.contents, text.ids)


def _blocks(keys: Iterable[KeyReference]) -> Iterator[Block]:
    yield Paragraph((Text(_LEAD),))
    yield Paragraph((Text(_SIZES),))
    for top, group in groupby(keys, key=lambda key: key.path[0]):
        members = list(group)
        # Keys that only a size has stand under `sizes`, whose own line came earlier.
        only_in_sizes = members[0].path != (top,)
        title = "Keys that only a size has" if only_in_sizes else top
        slug = "only-in-a-size" if only_in_sizes else top.replace(" ", "-")
        yield Heading(2, slug, (Text(title),) if only_in_sizes else (Code(top),))
        if not only_in_sizes:
            yield Paragraph(_about(members[0]))
        rows = tuple(_row(key) for key in (members if only_in_sizes else members[1:]))
        if rows:
            yield Table(f"Keys under {top}", tuple((Text(name),) for name in _COLUMNS), rows)


_COLUMNS = ("Key", "What it means", "What is written", "When left out", "Example")


def _about(key: KeyReference) -> tuple[Inline, ...]:
    parts: list[Inline] = [Text(f"{key.meaning} Written as {key.takes}.")]
    if key.is_required:
        parts.append(Text(" Required."))
    elif key.default:
        parts.append(Text(f" When left out: {key.default}."))
    if key.in_a_size:
        parts.append(Text(" Any size can say otherwise."))
    if key.example:
        parts += [Text(" Example: "), Code(key.example)]
    return tuple(parts)


def _row(key: KeyReference) -> tuple[tuple[Inline, ...], ...]:
    left_out = "required" if key.is_required else key.default
    return (
        (Code(" › ".join(key.path[1:])),),
        (Text(key.meaning),),
        (Text(key.takes),),
        (Text(left_out),),
        (Code(key.example),) if key.example else (),
    )


def _no_picture(picture: Picture) -> str:
    raise ValueError(f"the page of keys has no picture, and so no {picture.name}")
