"""Ways to sew several units at once, as values for their template."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from evenseam.pattern import MakeUnits, fabric_letters
from evenseam.sizing import UnitMethod, UnitMethodKind
from evenseam.wording.marked import Markdown, escape
from evenseam.wording.scribe import Scribe
from evenseam.wording.workpieces import Workpieces

_KEYS = {
    UnitMethodKind.TWO_HALF_SQUARE: "two half",
    UnitMethodKind.EIGHT_HALF_SQUARE: "eight half",
    UnitMethodKind.FOUR_GEESE: "geese",
    UnitMethodKind.TWO_QUARTER_SQUARE: "two quarter",
    UnitMethodKind.FOUR_QUARTER_SQUARE: "four quarter",
    UnitMethodKind.CORNER_SQUARES: "corners",
    UnitMethodKind.FOUR_HALF_SQUARE: "four half",
    UnitMethodKind.ONE_GOOSE: "goose",
}


def method_values(scribe: Scribe, block: str) -> list[dict[str, Any]]:
    """Return what is said of each way to make the units of one block."""
    return [_values(scribe, method) for method in scribe.sheet.methods if method.block == block]


def chosen_values(scribe: Scribe, making: MakeUnits) -> dict[str, Any]:
    """Return what is said of the way that a step sews its units."""
    methods = scribe.sheet.chosen_methods
    method = next(one for one in methods if (one.block, one.pieces) == (making.block, making.pieces))
    return _values(scribe, method)


def _values(scribe: Scribe, method: UnitMethod) -> dict[str, Any]:
    project = scribe.sheet.project
    letters = fabric_letters(project.fabrics)
    key = _KEYS[method.kind]
    title = scribe.language.word("unit_methods", key.replace(" ", "_")).replace(
        "{letters}", escape("+".join(method.labels))
    )
    return {
        "kind": key,
        "title": Markdown(title),
        "steps": _steps(scribe, method.steps),
        "units": method.units.whole,
        "squares": [
            {
                "fabric": project.fabric(square.fabric).name,
                "letter": letters[square.fabric],
                "side": square.side,
                "height": square.height or square.side,
                "is_square": square.height is None,
                "count": square.count.whole,
                "each": square.each,
                "larger": square.larger,
            }
            for square in method.squares
        ],
        "larger": [square.larger for square in method.squares if square.larger][:1],
        "larger_fabrics": [project.fabric(square.fabric).name for square in method.squares if square.larger],
        "is_all_larger": all(square.larger for square in method.squares),
        "width": method.width,
        "height": method.height,
    }


def _steps(scribe: Scribe, ids: Sequence[str]) -> Markdown:
    """Return the numbers of steps: step 3, or steps 1, 2 and 3."""
    numbers = [str(number) for id, number in Workpieces(scribe).numbers.items() if id in ids]
    return Markdown(f"{scribe.language.noun('step', len(numbers))} {scribe.language.listed(numbers)}")
