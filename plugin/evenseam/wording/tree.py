"""Markdown to blocks of the document tree, parsed once.

Our own templates may use, beyond plain Markdown: a picture in a paragraph of its own (`![description](name "title")`),
several small ones in one paragraph, a block quote for a checkpoint, and a paragraph of nothing but emphasis before a
table for its caption. Text of an author may use none of these; what it may not use is reported and left out.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from markdown_it import MarkdownIt
from markdown_it.token import Token

from evenseam.wording.document import (
    Beside,
    Block,
    Checkpoint,
    Code,
    Emphasis,
    Heading,
    Inline,
    LineBreak,
    Link,
    ListBlock,
    Measured,
    Paragraph,
    Picture,
    Pictures,
    Strong,
    Table,
    Text,
)
from evenseam.wording.marked import split_figures, without_figures

Refuse = Callable[[str, int], None]
"""Told what was refused (a short key, such as picture) and the line of the text it stands in, counted from 0."""

LINK_SCHEMES = ("http", "https", "mailto")


@lru_cache(maxsize=2048)
def parse_ours(text: str) -> tuple[Block, ...]:
    """Return the blocks of a text from our own templates. Raises ValueError for Markdown the tree has no node for."""
    return _Builder(_our_parser().parse(text), is_ours=True, refuse=_fail).blocks()


def parse_authors(text: str, refuse: Refuse) -> tuple[Block, ...]:
    """Return the blocks of an author's text; whatever it may not use goes to `refuse` and is left out."""
    return _Builder(_authors_parser().parse(text), is_ours=False, refuse=refuse).blocks()


def plain_text(inlines: tuple[Inline, ...], figure: str | None = None) -> str:
    """Return the words of inlines without any markup; with `figure`, that text stands for every figure."""
    words: list[str] = []
    for inline in inlines:
        match inline:
            case Measured(text=text):
                words.append(text if figure is None else figure)
            case Text(text=text) | Code(text=text):
                words.append(text)
            case Strong(inlines=inner) | Emphasis(inlines=inner) | Link(inlines=inner):
                words.append(plain_text(inner, figure))
            case LineBreak():
                words.append(" ")
    return "".join(words)


def every_run(blocks: Iterable[Block]) -> Iterator[tuple[Inline, ...]]:
    """Yield every run of inlines in text blocks, lists and tables."""
    for block in blocks:
        match block:
            case Beside(blocks=inner):
                yield from every_run(inner)
            case Paragraph(inlines=inlines) | Heading(inlines=inlines) | Checkpoint(inlines=inlines):
                yield inlines
            case ListBlock(items=items):
                for item in items:
                    yield from every_run(item)
            case Table(header=header, rows=rows):
                for row in (header, *rows):
                    yield from row


def is_allowed_address(address: str) -> bool:
    """Tell whether a link may lead there: http, https, mailto, or a path or place on the same site."""
    scheme, colon, _ = address.partition(":")
    is_relative = not colon or any(sign in scheme for sign in "/?#")
    return not address.startswith("//") and (is_relative or scheme.lower() in LINK_SCHEMES)


@lru_cache(maxsize=1)
def _our_parser() -> MarkdownIt:
    """Return a parser of just what our templates use."""
    parser = MarkdownIt("zero")
    return parser.enable(
        ["table", "blockquote", "list", "heading", "escape", "emphasis", "image", "newline", "balance_pairs"]
    )


@lru_cache(maxsize=1)
def _authors_parser() -> MarkdownIt:
    parser = MarkdownIt("commonmark", {"html": False, "maxNesting": 20}).enable("table")
    # An indented line is a slip of the hand, never a program listing.
    parser.disable("code")
    # Addresses are checked here, with a problem for the author; the parser would quietly print them as words.
    parser.validateLink = _every_address  # type: ignore[method-assign]
    return parser


def _every_address(url: str) -> bool:
    return True


def _fail(what: str, line: int) -> None:
    raise ValueError(f"{what} in line {line + 1} of one of our own templates")


@dataclass(slots=True)
class _Builder:
    tokens: list[Token]
    is_ours: bool
    refuse: Refuse
    position: int = 0
    line: int = 0

    def blocks(self, end: str = "") -> tuple[Block, ...]:
        """Return blocks up to the token named `end`, and step past it."""
        found: list[Block] = []
        caption = ""
        while self.position < len(self.tokens):
            token = self.tokens[self.position]
            self.position += 1
            if token.map:
                self.line = token.map[0]
            if token.type == end:
                break
            if token.type == "table_open":
                found.append(self.table(caption))
                caption = ""
                continue
            built = self.block(token)
            if self.is_caption(built):
                caption = plain_text(built[0].inlines)  # type: ignore[union-attr]
                continue
            found += built
        return tuple(found)

    def is_caption(self, built: tuple[Block, ...]) -> bool:
        following = self.tokens[self.position] if self.position < len(self.tokens) else None
        match built:
            case (Paragraph(inlines=(Emphasis(),)),):
                return self.is_ours and following is not None and following.type == "table_open"
        return False

    def block(self, token: Token) -> tuple[Block, ...]:
        match token.type:
            case "heading_open":
                inlines = self.inline_content()
                if self.is_ours:
                    return (Heading(int(token.tag[1:]), "", inlines),)
                # A heading among the author's words would cut the outline of the page in two.
                return (Paragraph((Strong(inlines),)),)
            case "paragraph_open":
                return self.paragraph()
            case "bullet_list_open":
                return (ListBlock(False, self.items("bullet_list_close")),)
            case "ordered_list_open":
                return (ListBlock(True, self.items("ordered_list_close")),)
            case "blockquote_open":
                inner = self.blocks("blockquote_close")
                if not self.is_ours:
                    return inner
                return tuple(Checkpoint(part.inlines) for part in inner if isinstance(part, Paragraph))
            case "fence":
                self.refuse("program listing", self.line)
                return ()
            case "hr":
                self.refuse("rule across the page", self.line)
                return ()
        raise ValueError(f"no block for the token {token.type}")

    def paragraph(self) -> tuple[Block, ...]:
        children = self.tokens[self.position].children or []
        if self.is_ours and len(children) == 1 and children[0].type == "image":
            self.position += 2
            return (self.picture(children[0]),)
        images = [child for child in children if child.type == "image"]
        if self.is_ours and len(images) > 1 and all(child.type in ("image", "softbreak") for child in children):
            self.position += 2
            return (Pictures(tuple(map(self.picture, images))),)
        inlines = self.inline_content()
        return (Paragraph(inlines),) if inlines else ()

    def picture(self, image: Token) -> Picture:
        return Picture(
            str(image.attrs["src"]),
            without_figures(str(image.attrs.get("title", ""))),
            without_figures(image.content and plain_text(self.inlines(image.children or []))),
        )

    def items(self, end: str) -> tuple[tuple[Block, ...], ...]:
        items: list[tuple[Block, ...]] = []
        while self.tokens[self.position].type != end:
            self.position += 1
            items.append(self.blocks("list_item_close"))
        self.position += 1
        return tuple(item for item in items if item)

    def table(self, caption: str) -> Table:
        rows: list[tuple[tuple[Inline, ...], ...]] = []
        cells: list[tuple[Inline, ...]] = []
        while (token := self.tokens[self.position]).type != "table_close":
            self.position += 1
            if token.type == "inline":
                cells.append(self.inlines(token.children or []))
            elif token.type == "tr_close":
                rows.append(tuple(cells))
                cells = []
        self.position += 1
        return Table(caption, rows[0], tuple(rows[1:]))

    def inline_content(self) -> tuple[Inline, ...]:
        """Return the inlines of a paragraph or heading, and step past its end."""
        token = self.tokens[self.position]
        self.position += 2
        return self.inlines(token.children or [])

    def inlines(self, children: list[Token]) -> tuple[Inline, ...]:
        stack: list[list[Inline]] = [[]]
        for child in children:
            match child.type:
                case "text":
                    _add_text(stack[-1], child.content)
                case "softbreak":
                    _add_text(stack[-1], " ")
                case "hardbreak":
                    stack[-1].append(LineBreak())
                case "code_inline":
                    stack[-1].append(Code(without_figures(child.content)))
                case "strong_open" | "em_open" | "link_open":
                    stack.append([])
                case "strong_close":
                    inner = tuple(stack.pop())
                    stack[-1].append(Strong(inner))
                case "em_close":
                    inner = tuple(stack.pop())
                    stack[-1].append(Emphasis(inner))
                case "link_close":
                    inner = tuple(stack.pop())
                    self.add_link(stack[-1], child, children, inner)
                case "image":
                    self.refuse("picture", self.line)
                case _:
                    raise ValueError(f"no inline for the token {child.type}")
        return tuple(stack[0])

    def add_link(self, onto: list[Inline], close: Token, children: list[Token], inner: tuple[Inline, ...]) -> None:
        opens: list[Token] = []
        for child in children:
            if child is close:
                break
            if child.type == "link_open":
                opens.append(child)
            elif child.type == "link_close":
                opens.pop()
        address = str(opens[-1].attrs.get("href", ""))
        if is_allowed_address(address):
            onto.append(Link(address, inner))
        else:
            self.refuse("link address", self.line)
            onto.extend(inner)


def _add_text(onto: list[Inline], text: str) -> None:
    for words, figure in split_figures(text):
        if figure is not None:
            onto.append(Measured(words, figure))
        elif onto and isinstance(last := onto[-1], Text):
            onto[-1] = Text(last.text + words)
        else:
            onto.append(Text(words))
