"""The reader's tools as HTML: hidden until the script is there, so that nothing on the page is a promise it breaks."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from evenseam.pattern import Fabric, fabric_letters
from evenseam.publish.html_text import colour, escape

_TICKED = "# of # steps done"
_TICKED_SHORT = "# of # done"


def page_marks(slug: str, version: str, size: str = "", edition: str = "") -> str:
    """Return the attributes by which the script knows which page of which pattern this is."""
    marks = (("pattern", slug), ("version", version), ("size", size), ("edition", edition))
    return "".join(f' data-{name}="{escape(value)}"' for name, value in marks if value)


def write_tools() -> str:
    """Return the row of buttons at the top of a size's page."""
    buttons = (
        _button("awake", "Keep the screen on", 'aria-pressed="false" data-on="The screen stays on." '
                'data-off="The screen may go dark again." data-refused="This browser would not keep the screen on."'),
        _button("shopping", "Copy the shopping list",
                'data-said="The shopping list is copied." data-refused="This browser would not copy it."'),
        _button("print", "Print this page"),
        _button("untick", "Clear all ticks", 'data-said="All ticks are cleared."'),
    )  # fmt: skip
    return (
        '<div class="reader-tools" role="group" aria-label="While you sew" data-search-exclude hidden>'
        f'{"".join(buttons)}<span class="ticked" data-done="{_TICKED}"></span>'
        '<p class="reader-hint">Tick off cuts and steps as you go: this device remembers them. Tap a figure to see why '
        'it is what it is. <span class="by-keyboard"><kbd>Alt</kbd> + <kbd>↓</kbd> and <kbd>Alt</kbd> + <kbd>↑</kbd> '
        "lead to the next and the previous step.</span></p></div>\n"
        '<p class="reader-said" role="status" data-search-exclude></p>'
    )


def write_step_bar(other_editions: Sequence[tuple[str, str, str]] = ()) -> str:
    """Return the bar that stays at the lower edge of the screen: one step on, one step back, and the other edition.

    `other_editions` are their names, the words for them and their addresses.
    """
    back = _button("previous", "‹<span> Previous</span>", 'aria-label="Previous step"')
    on = _button("next", "<span>Next </span>›", 'aria-label="Next step"')
    links = "".join(
        f'<a href="{address}" data-edition="{escape(edition)}">{escape(words)}</a>'
        for edition, words, address in other_editions
    )
    return (
        '<div class="step-bar" role="group" aria-label="Steps" data-search-exclude hidden>'
        f'{back}<span class="ticked" data-done="{_TICKED_SHORT}"></span>{links}{on}</div>'
    )


def write_why_window() -> str:
    """Return the window in which a figure tells why it is what it is."""
    rows = (
        ("because", "Worked out"), ("from", "From"), ("rule", "Rule"), ("source", "Source"),
        ("place", "Given by the designer in"),
    )  # fmt: skip
    lines = "".join(f"<div><dt>{words}</dt><dd>{_why_place(part)}</dd></div>" for part, words in rows)
    return (
        '<dialog class="why" aria-labelledby="why-name" data-search-exclude><div class="why-inner">'
        '<p class="why-name"><span id="why-name" data-why="name"></span> <strong data-why="value"></strong></p>'
        f"<dl>{lines}</dl>{_button('close', 'Close')}</div></dialog>"
    )


def _why_place(part: str) -> str:
    return f'<ul data-why="{part}"></ul>' if part == "from" else f'<span data-why="{part}"></span>'


def write_fabrics(fabrics: Iterable[Fabric]) -> str:
    """Return the panel in which a reader puts her own fabrics in place of the pattern's."""
    listed = tuple(fabrics)
    letters = fabric_letters(listed)
    rows = "\n".join(_fabric(fabric, letters[fabric.id]) for fabric in listed)
    buttons = (
        _button("fabric-link", "Copy a link to these colours",
                'data-said="The link is copied." data-refused="The link is now in the address bar."'),
        _button("fabric-picture", "Save the picture",
                'data-said="The picture is saved." data-refused="This browser could not make the picture."'),
        _button("fabric-greys", "See it in greys", 'aria-pressed="false"'),
        _button("fabric-reset", "Back to the pattern’s colours", 'data-said="These are the pattern’s colours."'),
    )  # fmt: skip
    return (
        '<details class="try-fabrics" data-search-exclude hidden>\n<summary>Try your fabrics</summary>\n'
        "<p>Choose a colour, or take a photo of your fabric: every picture on this page changes with it. Photos stay "
        "on your device. The figure beside a fabric is how light it looks, from 0 to 100.</p>\n"
        f'<ul class="fabric-choices">\n{rows}\n</ul>\n'
        '<p class="fabric-hint" role="status" data-near="Nearly equally light, so that an edge between them will '
        'be hard to see: #." data-pair="# and #"></p>\n'
        f'<div class="buttons">{"".join(buttons)}</div>\n</details>'
    )


def _fabric(fabric: Fabric, letter: str) -> str:
    name, id = escape(fabric.name), escape(fabric.id)
    return (
        f'<li data-fabric="{id}" data-name="{name}" data-colour="{colour(fabric.colour).lower()}">'
        f'<label><input type="color" value="{colour(fabric.colour).lower()}"> '
        f'<span class="fabric-letter">{escape(letter)}</span> {name}</label> '
        '<span class="fabric-grey" data-words="#" title="How light it looks, 0 to 100"></span> '
        f'<label class="photo"><input type="file" accept="image/*" aria-label="Photo of {name}">'
        '<span aria-hidden="true">Photo…</span></label></li>'
    )


def _button(does: str, words: str, marks: str = "") -> str:
    return f'<button type="button" data-do="{does}"{" " + marks if marks else ""}>{words}</button>'
