"""The reader's tools as HTML: hidden until the script is there, so that nothing on the page is a promise it breaks."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from evenseam.pattern import Fabric, fabric_letters
from evenseam.publish.html_text import colour, escape, filled
from evenseam.wording import Words


def page_marks(slug: str, version: str, size: str = "", edition: str = "", language: str = "") -> str:
    """Return the attributes by which the script knows which page of which pattern this is, and its language."""
    marks = (("pattern", slug), ("version", version), ("size", size), ("edition", edition))
    spoken = f' lang="{escape(language)}"' if language else ""
    return spoken + "".join(f' data-{name}="{escape(value)}"' for name, value in marks if value)


def write_tools(words: Words) -> str:
    """Return the row of buttons at the top of a size's page."""
    buttons = (
        _button(words, "awake", "tools", "awake", 'aria-pressed="false"',
                on="awake_on", off="awake_off", refused="awake_refused"),
        _button(words, "shopping", "tools", "shopping", said="shopping_done", refused="shopping_refused"),
        _button(words, "print", "tools", "print"),
        _button(words, "untick", "tools", "untick", said="untick_done"),
    )  # fmt: skip
    keys = {name: f"<kbd>Alt</kbd> + <kbd>{arrow}</kbd>" for name, arrow in (("down", "↓"), ("up", "↑"))}
    return (
        f'<div class="reader-tools" role="group" aria-label="{escape(words.word("tools", "while_you_sew"))}" '
        f"data-search-exclude hidden>{''.join(buttons)}{_ticked(words, 'steps_done')}"
        f'<p class="reader-hint">{escape(words.word("tools", "hint"))} <span class="by-keyboard">'
        f"{filled(words.word('tools', 'hint_keys'), **keys)}</span></p></div>\n"
        '<p class="reader-said" role="status" data-search-exclude></p>'
    )


def write_step_bar(words: Words, other_editions: Sequence[tuple[str, str, str]] = ()) -> str:
    """Return the bar that stays at the lower edge of the screen: one step on, one step back, and the other edition.

    `other_editions` are their names, the words for them and their addresses.
    """
    before, after = (escape(words.word("tools", key)) for key in ("previous", "next"))
    back = _step_button(words, "previous", "previous_step", f"‹<span> {before}</span>")
    on = _step_button(words, "next", "next_step", f"<span>{after} </span>›")
    links = "".join(
        f'<a href="{address}" data-edition="{escape(edition)}">{escape(said)}</a>'
        for edition, said, address in other_editions
    )
    return (
        f'<div class="step-bar" role="group" aria-label="{escape(words.word("tools", "steps"))}" '
        "data-search-exclude hidden>"
        f"{back}{_ticked(words, 'steps_done_short')}{links}{on}</div>"
    )


def _step_button(words: Words, does: str, key: str, inner: str) -> str:
    name = escape(words.word("tools", key))
    return f'<button type="button" data-do="{does}" aria-label="{name}">{inner}</button>'


def _ticked(words: Words, key: str) -> str:
    return f'<span class="ticked" data-done="{escape(words.word("tools", key))}"></span>'


def write_why_window(words: Words) -> str:
    """Return the window in which a figure tells why it is what it is."""
    lines = "".join(
        f"<div><dt>{escape(words.word('tools', key))}</dt><dd>{_why_place(key.removeprefix('why_'))}</dd></div>"
        for key in ("why_because", "why_from", "why_rule", "why_source", "why_place")
    )
    return (
        '<dialog class="why" aria-labelledby="why-name" data-search-exclude><div class="why-inner">'
        '<p class="why-name"><span id="why-name" data-why="name" lang="en"></span> <strong data-why="value"></strong>'
        f"</p><dl>{lines}</dl>{_button(words, 'close', 'tools', 'close')}</div></dialog>"
    )


def _why_place(part: str) -> str:
    """Return where one part of a reason is put. Reasons are the engine's own words, which are English."""
    if part == "place":
        return f'<span data-why="{part}"></span>'
    return f'<ul data-why="{part}" lang="en"></ul>' if part == "from" else f'<span data-why="{part}" lang="en"></span>'


def write_fabrics(fabrics: Iterable[Fabric], words: Words) -> str:
    """Return the panel in which a reader puts her own fabrics in place of the pattern's."""
    listed = tuple(fabrics)
    letters = fabric_letters(listed)
    rows = "\n".join(_fabric(fabric, letters[fabric.id], words) for fabric in listed)
    buttons = (
        _button(words, "fabric-link", "fabrics", "link", said="link_done", refused="link_refused"),
        _button(words, "fabric-picture", "fabrics", "picture", said="picture_done", refused="picture_refused"),
        _button(words, "fabric-greys", "fabrics", "grays", 'aria-pressed="false"'),
        _button(words, "fabric-reset", "fabrics", "reset", said="reset_done"),
    )
    title, about, near, pair = (escape(words.word("fabrics", key)) for key in ("title", "about", "near", "pair"))
    return (
        f'<details class="try-fabrics" data-search-exclude hidden>\n<summary>{title}</summary>\n'
        f'<p>{about}</p>\n<ul class="fabric-choices">\n{rows}\n</ul>\n'
        f'<p class="fabric-hint" role="status" data-near="{near}" data-pair="{pair}"></p>\n'
        f'<div class="buttons">{"".join(buttons)}</div>\n</details>'
    )


def _fabric(fabric: Fabric, letter: str, words: Words) -> str:
    name, id = escape(fabric.name), escape(fabric.id)
    photo_of = escape(words.fill("fabrics", "photo_of", fabric=fabric.name))
    return (
        f'<li data-fabric="{id}" data-name="{name}" data-colour="{colour(fabric.colour).lower()}">'
        f'<label><input type="color" value="{colour(fabric.colour).lower()}"> '
        f'<span class="fabric-letter">{escape(letter)}</span> {name}</label> '
        f'<span class="fabric-grey" title="{escape(words.word("fabrics", "lightness"))}"></span> '
        f'<label class="photo"><input type="file" accept="image/*" aria-label="{photo_of}">'
        f'<span aria-hidden="true">{escape(words.word("fabrics", "photo"))}</span></label></li>'
    )


def _button(words: Words, does: str, table: str, key: str, marks: str = "", **answers: str) -> str:
    """Return a button with what it says when it was pressed, by the name under which the script looks for it."""
    told = "".join(f' data-{name}="{escape(words.word(table, answer))}"' for name, answer in answers.items())
    marked = f" {marks}" if marks else ""
    return f'<button type="button" data-do="{does}"{marked}{told}>{escape(words.word(table, key))}</button>'
