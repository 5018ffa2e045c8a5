"""Boxes to tick off what is done. They are plain boxes where there is no script to remember them."""

from __future__ import annotations

from evenseam.publish.html_text import escape
from evenseam.wording import Words


def step_tick(id: str, number: int, words: Words) -> str:
    """Return the box at the end of a step; `id` is the id of its heading."""
    return (
        f'<label class="tick-line" data-search-exclude><input type="checkbox" class="tick" data-tick="{escape(id)}" '
        f'autocomplete="off"> {escape(words.fill("tools", "step_done", number=number))}</label>'
    )


def cut_tick(id: str, cut: str, words: Words) -> str:
    """Return the box before a cut; `cut` are the words that say which it is.

    The words beside it are no label of the box: there are figures among them that can be asked for themselves.
    """
    return (
        f'<input type="checkbox" class="tick" data-tick="{escape(id)}" autocomplete="off" '
        f'aria-label="{escape(words.fill("tools", "cut_done", cut=cut))}">'
    )
