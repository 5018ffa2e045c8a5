"""How good and how fast cutting plans are, on generated fabrics of quilts: `python tests/bench/bench_cutting.py [N]`.

Prints the share proved shortest, the gap of the others to their bound, and the time for each fabric. Where rectpack is
installed (a general-purpose rectangle packer), its guillotine heuristics pack the same pieces on the same width: they
may turn joined lengths too and are not held to two stages, which helps them; fabrics with upright pieces are left out.
"""

from __future__ import annotations

import sys
from fractions import Fraction
from pathlib import Path
from random import Random
from time import process_time

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2] / "plugin")]

from evenseam.cutting import CuttingPlan, plan_cutting  # noqa: E402
from support.fabrics import generated_fabric  # noqa: E402

try:
    import rectpack

    HAS_RECTPACK = True
except ImportError:
    HAS_RECTPACK = False
MOST_PACKED = 120


def packed_height(plan: CuttingPlan) -> Fraction | None:
    """Return the least height, in steps of 1 percent of ours, at which some guillotine heuristic packs all pieces."""
    scale = 64
    pieces = [(int(piece.width * scale), int(piece.height * scale)) for strip in plan.strips for piece in strip.pieces]
    if len(pieces) > MOST_PACKED:
        return None
    width = int(plan.usable_width.value * scale)
    ours = max(strip.y + strip.height for strip in plan.strips)
    algorithms = (rectpack.GuillotineBssfSas, rectpack.GuillotineBafMaxas, rectpack.GuillotineBlsfLas)
    for percent in range(60, 200):
        height = ours * percent / 100
        for algorithm in algorithms:
            packer = rectpack.newPacker(rotation=True, pack_algo=algorithm)
            packer.add_bin(width, int(height * scale))
            for piece in pieces:
                packer.add_rect(*piece)
            packer.pack()
            if len(packer.rect_list()) == len(pieces):
                return height
    return 2 * ours


def main() -> None:
    """Plan N generated fabrics (200 unless told otherwise) and print what came out."""
    number = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    random = Random(20)
    proved, gaps, seconds, kinds = 0, [], [], []
    beside: list[Fraction] = []
    for place in range(number):
        cuts, project = generated_fabric(random)
        start = process_time()
        outcome = plan_cutting(cuts, project)
        seconds.append(process_time() - start)
        plan = outcome.value[0].plan
        proved += plan.is_shortest
        gap = Fraction(plan.length.value - plan.lower_bound, 1) / plan.lower_bound
        gaps.append(gap)
        kinds.append(len(cuts.cuts))
        packed = packed_height(plan) if HAS_RECTPACK and not any(cut.is_upright for cut in cuts.cuts) else None
        if packed is not None:
            beside.append(packed / max(strip.y + strip.height for strip in plan.strips))
        if not plan.is_shortest or seconds[-1] > 1:
            print(
                f"fabric {place}: {len(cuts.cuts)} cuts, {plan.length.text}, bound {plan.lower_bound},"
                f" gap {float(gap):.2%}, {seconds[-1]:.3f} s"
            )
    if beside:
        shorter = sum(ratio < 1 for ratio in beside)
        print(
            f"rectpack on {len(beside)} of them (at most {MOST_PACKED} pieces): length {float(sum(beside) / len(beside)):.3f}"
            f" times ours in the mean, {float(min(beside)):.3f} to {float(max(beside)):.3f}; shorter on {shorter}"
        )
    seconds.sort()
    print(f"{number} fabrics, {sum(kinds) / number:.1f} kinds of piece each")
    print(
        f"proved shortest: {proved / number:.1%}; gap mean {float(sum(gaps) / number):.3%}, worst {float(max(gaps)):.2%}"
    )
    print(
        f"seconds: mean {sum(seconds) / number:.3f}, median {seconds[number // 2]:.3f},"
        f" 95th of 100 {seconds[number * 95 // 100]:.3f}, worst {seconds[-1]:.3f}"
    )


if __name__ == "__main__":
    main()
