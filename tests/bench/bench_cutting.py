"""How good and how fast cutting plans are, on generated fabrics of quilts: `python tests/bench/bench_cutting.py [N]`.

Prints the share proved shortest, the gap of the others to their bound, and the time for each fabric.
"""

from __future__ import annotations

import sys
from fractions import Fraction
from pathlib import Path
from random import Random
from time import process_time

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2] / "plugin")]

from support.fabrics import generated_fabric  # noqa: E402

from evenseam.cutting import plan_cutting  # noqa: E402


def main() -> None:
    """Plan N generated fabrics (200 unless told otherwise) and print what came out."""
    number = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    random = Random(20)
    proved, gaps, seconds, kinds = 0, [], [], []
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
        if not plan.is_shortest or seconds[-1] > 1:
            print(
                f"fabric {place}: {len(cuts.cuts)} cuts, {plan.length.text}, bound {plan.lower_bound},"
                f" gap {float(gap):.2%}, {seconds[-1]:.3f} s"
            )
    seconds.sort()
    print(f"{number} fabrics, {sum(kinds) / number:.1f} kinds of piece each")
    print(f"proved shortest: {proved / number:.1%}; gap mean {float(sum(gaps) / number):.3%}, worst {float(max(gaps)):.2%}")
    print(
        f"seconds: mean {sum(seconds) / number:.3f}, median {seconds[number // 2]:.3f},"
        f" 95th of 100 {seconds[number * 95 // 100]:.3f}, worst {seconds[-1]:.3f}"
    )


if __name__ == "__main__":
    main()
