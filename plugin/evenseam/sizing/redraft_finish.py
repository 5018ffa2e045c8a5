"""A finish, a hanging and a size to come near to with lengths in both units, re-drafted on the ruler of one edition."""

from __future__ import annotations

from dataclasses import replace

from evenseam.pattern import (
    Binding,
    Bound,
    CornerPockets,
    EnvelopeBack,
    Faced,
    Finish,
    Fit,
    Hanging,
    KnifeEdge,
    Loops,
    Rings,
    Sleeve,
    Turned,
)
from evenseam.sizing.binding_width import strip_showing
from evenseam.sizing.ruler import Ruler


def redraft_finish(finish: Finish, ruler: Ruler) -> Finish:
    """Return a finish with every length in the ruler's unit."""
    layers = replace(
        finish,
        backing_overage=ruler.finished(finish.backing_overage),
        batting_overage=ruler.finished(finish.batting_overage),
    )
    if isinstance(layers, Turned):
        return replace(layers, opening=ruler.finished(layers.opening), topstitch=ruler.fine(layers.topstitch))
    layers = replace(layers, backing_seam=ruler.finished(layers.backing_seam))
    match layers:
        case Bound():
            radius = layers.corner_radius
            return replace(
                layers,
                binding=_binding(layers.binding, ruler),
                corner_radius=None if radius is None else ruler.finished(radius),
            )
        case Faced():
            return replace(
                layers,
                facing_width=ruler.finished(layers.facing_width),
                facing_fold=ruler.fine(layers.facing_fold),
            )
        case KnifeEdge():
            return replace(layers, quilting_stop=ruler.finished(layers.quilting_stop), stitch=ruler.fine(layers.stitch))
        case EnvelopeBack():
            return replace(layers, overlap=ruler.finished(layers.overlap), hem=ruler.finished(layers.hem))


def _binding(binding: Binding, ruler: Ruler) -> Binding:
    shows = None if binding.shows is None else ruler.fine(binding.shows)
    return replace(
        binding,
        strip_width=ruler.finished(binding.strip_width) if shows is None else strip_showing(shows),
        extra_length=ruler.finished(binding.extra_length),
        shows=shows,
    )


def redraft_fit(fit: Fit | None, ruler: Ruler) -> Fit | None:
    """Return a size to come near to in the ruler's unit."""
    if fit is None:
        return None
    return replace(
        fit,
        width=ruler.finished(fit.width),
        height=ruler.finished(fit.height),
        widest_border=None if fit.widest_border is None else ruler.finished(fit.widest_border),
        drop=None if fit.drop is None else ruler.finished(fit.drop),
    )


def redraft_hanging(hanging: Hanging | None, ruler: Ruler) -> Hanging | None:
    """Return a hanging with every length in the ruler's unit."""
    match hanging:
        case Sleeve():
            return replace(
                hanging,
                cut_depth=ruler.finished(hanging.cut_depth),
                cut_extra=ruler.finished(hanging.cut_extra),
                hem=ruler.finished(hanging.hem),
                drop=ruler.finished(hanging.drop),
            )
        case CornerPockets():
            return replace(hanging, square=ruler.finished(hanging.square))
        case Loops():
            return replace(
                hanging,
                cut_width=ruler.finished(hanging.cut_width),
                cut_length=ruler.finished(hanging.cut_length),
            )
        case Rings():
            return replace(hanging, drop=ruler.finished(hanging.drop))
    return None
