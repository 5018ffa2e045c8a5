"""What one fabric is asked for: rectangles in whole steps, the ways each may lie, and what is joined from them."""

from __future__ import annotations

from dataclasses import dataclass

from evenseam.cutting.scale import Scale
from evenseam.pattern import Cut, Quantity, StripJoin


@dataclass(frozen=True, slots=True)
class Lie:
    """One way a piece may lie on the cloth, in steps."""

    across: int
    along: int
    is_turned: bool
    """True when the cut's own width lies along the cloth."""


@dataclass(frozen=True, slots=True)
class Request:
    """Equal rectangles, and the ways they may lie."""

    cut: Cut
    lies: tuple[Lie, ...]
    """At least one; every one fits between the selvages."""
    count: int
    is_length: bool = False
    """True for a length of something joined."""
    is_lengthwise: bool = False
    """True when it is cut from a strip parallel to the selvage."""
    side: Quantity | None = None
    """The side of a square that is worked out here, for bias binding; None when the cut's own figures hold."""

    def along(self, lie: Lie) -> Quantity:
        """Return the figure of the side that lies along the cloth."""
        if self.side is not None:
            return self.side
        return self.cut.width if lie.is_turned else self.cut.height

    @property
    def area(self) -> int:
        """Cloth of all pieces, in square steps."""
        return self.count * self.lies[0].across * self.lies[0].along


@dataclass(frozen=True, slots=True)
class JoinedStrip:
    """What is cut from one joined strip, or one pieced backing."""

    name: str
    """Id of the first cut that uses it."""
    cuts: tuple[Cut, ...]
    join: StripJoin
    lengths: int
    panels: bool
    is_turned: bool = False
    """True when the joined length is the cut's height: always of its own cut, others may differ."""


@dataclass(frozen=True, slots=True)
class BiasRequest:
    """Squares asked for, and the bias binding made of them."""

    cut: Cut
    side: Quantity
    squares: int


@dataclass(frozen=True, slots=True)
class FabricRequest:
    """Everything asked of one fabric."""

    scale: Scale
    width: int
    """Usable width in steps."""
    requests: tuple[Request, ...]
    joined: tuple[JoinedStrip, ...]
    bias: tuple[BiasRequest, ...] = ()
