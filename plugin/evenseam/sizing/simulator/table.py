"""The table: what lies on it, how many of each, and the notebook in which problems are written."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from evenseam.exact import Number, Unit, format_length
from evenseam.pattern import Cut, CutList, Derived, Given, Project, Quantity, Step
from evenseam.problems import Code, Place, Report
from evenseam.sizing.simulator import codes
from evenseam.sizing.simulator.workpiece import CutPiece, Spoilt, Workpiece

SPOILT = Spoilt()


@dataclass(slots=True)
class Lot:
    """So many equal workpieces."""

    piece: Workpiece
    count: int

    @property
    def count_figure(self) -> tuple[Quantity, ...]:
        """The figure of the cut list that says how many there are; nothing for what has been sewn."""
        return (self.piece.cut.count,) if isinstance(self.piece, CutPiece) else ()


@dataclass(slots=True)
class Table:
    """Everything the maker has: the author's decisions, the pieces, and the problems noted so far."""

    project: Project
    seam: Number
    report: Report = field(default_factory=Report)
    lots: dict[str, Lot] = field(default_factory=dict)
    labels: dict[str, str] = field(default_factory=dict)
    """What a maker calls a piece, by cut id."""
    told: int = 0
    blamed: set[tuple[int, str]] = field(default_factory=set)
    """Which problem has been told about which cut: one wrong cut is told once, however many pieces it is used for."""

    @property
    def unit(self) -> Unit:
        """The unit of every length on this table."""
        return self.project.unit

    def lay_out(self, cuts: CutList) -> None:
        """Put the cut pieces on the table."""
        for cut in cuts.cuts:
            if cut.id in self.lots:
                self.tell(codes.NAME_USED_TWICE, f"the cut list has two entries called {cut.id}")
                continue
            count = whole(cut.count.value)
            if count is None or count < 1:
                self.tell(
                    codes.COUNT_NOT_WHOLE, f"{cut.label}: {cut.count.text} pieces cannot be cut", cut.count,
                )  # fmt: skip
            self.labels[cut.id] = cut.label
            self.lots[cut.id] = Lot(self._checked(cut), count if count is not None and count > 0 else 0)

    def take(self, step: Step, names: Iterable[str], many: Mapping[str, int] | None = None) -> list[Workpiece]:
        """Take these workpieces, each as often as it is named, and of `many` so many of each, times the times the step
        is done.

        Returns them in the order of the names, one of each of `many` last; what is not there is noted, and a spoilt
        piece is returned for it.
        """
        counts = Counter(order := list(names))
        for name, each in (many or {}).items():
            counts[name] += each
            order.append(name)
        taken: dict[str, Workpiece] = {}
        for name, each in counts.items():
            needed = each * step.times
            lot = self.lots.get(name)
            if lot is None:
                self.tell(
                    codes.WORKPIECE_UNKNOWN,
                    f"step {step.id} needs {name}, but nothing of that name has been cut or sewn by then",
                    hint="cut or sew it in an earlier step",
                )
                taken[name] = SPOILT
                continue
            if lot.count < needed:
                self.tell(
                    codes.PIECE_MISSING,
                    f"step {step.id} needs {needed} of {self.called(name)}, only {lot.count} "
                    f"{'is' if lot.count == 1 else 'are'} left",
                    *lot.count_figure,
                )
            taken[name] = lot.piece if lot.count >= needed else SPOILT
            lot.count = max(0, lot.count - needed)
        return [taken[name] for name in order]

    def put(self, step: Step, piece: Workpiece) -> None:
        """Put what a step leaves on the table."""
        if step.makes in self.lots:
            self.tell(
                codes.NAME_USED_TWICE,
                f"step {step.id} calls its result {step.makes}, but that name was given to another piece before",
            )
            return
        self.lots[step.makes] = Lot(piece, step.leaves)

    def called(self, name: str) -> str:
        """Return what a maker calls a workpiece."""
        return f"“{self.labels[name]}”" if name in self.labels else name

    def fabric_name(self, material: str) -> str:
        """Return what a maker calls a material."""
        for fabric in self.project.fabrics:
            if fabric.id == material:
                return fabric.name
        return material

    def is_directional(self, material: str) -> bool:
        """Tell whether a material has a print with an up."""
        return any(fabric.id == material and fabric.is_directional for fabric in self.project.fabrics)

    def length(self, value: Number) -> str:
        """Return a length as a maker reads it."""
        return format_length(value, self.unit)

    def size(self, width: Number, height: Number) -> str:
        """Return a size as a maker reads it."""
        return f"{self.length(width)} × {self.length(height)}"

    def tell(self, code: Code, message: str, *about: Quantity, place: Place | None = None, hint: str = "") -> None:
        """Note a problem; its place is where the author gave the first of the figures it is about."""
        self.report.add(code, given_place(about) or place or self.project.place, message, hint)
        self.told += 1

    def blame(self, cut: Cut, code: Code, message: str, *about: Quantity, place: Place | None = None) -> None:
        """Note a problem of a cut, once for each code; its place is that of `about` or of the cut's own figures."""
        if (code.number, cut.id) not in self.blamed:
            self.blamed.add((code.number, cut.id))
            self.tell(code, message, *about, cut.width, cut.height, place=place)

    def check_fabric(self, cut: Cut, material: str, what: str) -> None:
        """Note a piece that is cut from another material than the author decided."""
        if cut.material != material:
            self.blame(
                cut, codes.WRONG_FABRIC,
                f"“{cut.label}” is cut from {self.fabric_name(cut.material)}, {what} is of "
                f"{self.fabric_name(material)}",
            )  # fmt: skip

    def check_print(self, cut: Cut) -> None:
        """Note a piece of directional cloth that may be cut with its print lying down."""
        if self.is_directional(cut.material) and not cut.is_upright:
            self.blame(
                cut, codes.PRINT_LIES_SIDEWAYS,
                f"“{cut.label}” is of {self.fabric_name(cut.material)}, whose print has an up, but is not cut upright",
            )  # fmt: skip

    def check_figure(self, step: Step, what: str, stated: Quantity, decided: Quantity) -> None:
        """Note a figure of a step that is not the one the author decided."""
        if stated.value != decided.value or stated.unit is not decided.unit:
            self.tell(
                codes.FIGURE_DIFFERS,
                f"step {step.id} says {stated.text} for {what}, the pattern decides {decided.text}",
                decided, stated,
            )  # fmt: skip

    def wrong_piece(self, step: Step, name: str, piece: Workpiece, wanted: str) -> Spoilt:
        """Note a workpiece a step cannot be done with, unless it is spoilt already."""
        if not isinstance(piece, Spoilt):
            self.tell(codes.WRONG_WORKPIECE, f"step {step.id} needs {wanted}, and {self.called(name)} is not that")
        return SPOILT

    def _checked(self, cut: Cut) -> Workpiece:
        sizes = (cut.width, cut.height)
        if any(size.unit is not self.unit for size in sizes):
            self.tell(
                codes.UNIT_DIFFERS,
                f"“{cut.label}” is {cut.width.text} × {cut.height.text}, this edition is in {self.unit.symbol}", *sizes,
            )  # fmt: skip
            return SPOILT
        if not (cut.width.value > 0 and cut.height.value > 0):
            self.tell(
                codes.SIZE_NOT_POSITIVE, f"“{cut.label}” is {cut.width.text} × {cut.height.text}; nothing can be cut",
                *sizes,
            )  # fmt: skip
            return SPOILT
        return CutPiece(cut)


def given_place(quantities: Iterable[Quantity]) -> Place | None:
    """Return the place where the author gave one of the figures: of the first that has one, or else of the first
    figure that one of them was worked out from.
    """
    waiting = list(quantities)
    seen: set[int] = set()
    while waiting:
        later: list[Quantity] = []
        for quantity in waiting:
            match quantity.because:
                case Given(place=place):
                    return place
                case Derived(expression=expression) if id(quantity) not in seen:
                    seen.add(id(quantity))
                    later.extend(expression.quantities)
        waiting = later
    return None


def whole(value: Number) -> int | None:
    """Return a count as a whole number; None when it is not one."""
    if isinstance(value, int):
        return value
    denominator = getattr(value, "denominator", None)
    return int(value) if denominator == 1 and not hasattr(value, "terms") else None
