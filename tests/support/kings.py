"""A king-size sampler with many blocks and borders, and the same with everything changed."""

from __future__ import annotations

from random import Random

NAMES = ("Fog", "Sea", "Reed", "Lamp", "Gull", "Slate")


def king(step: int) -> str:
    """Return the pattern file; every width, fabric and order depends on the step."""
    random = Random(3)
    lines = ["format: 1", "title: Marsh Sampler", 'version: "1.0"', "designer: Saltmarsh Workshop", "units: inches"]
    lines += ["seam allowance: 1/4", "fabrics:"]
    lines += [f'  f{n}: {{name: {name}, colour: "#{0x334455 + n * 0x0F1A0B:06x}"}}' for n, name in enumerate(NAMES)]
    lines.append("blocks:")
    for block in range(6):
        lines += [f"  b{block}:", f"    name: Marsh {block + 1}", f"    finished size: {7 + step} x {7 + step}"]
        lines += ["    grid: 6 x 6", "    pieces:"]
        fabrics = [random.randrange(6) for _ in range(8)]
        for row in range(3):
            y, x = row * 2, random.choice([2, 3, 4])
            lines.append(f"      - f{(fabrics[row] + step) % 6}: 0,{y} {x},{y} {x},{y + 2} 0,{y + 2}")
            lines.append(f"      - f{fabrics[row + 3]}: {x},{y} 6,{y} 6,{y + 2}")
            lines.append(f"      - f{(fabrics[row + 4] + 1) % 6}: {x},{y} 6,{y + 2} {x},{y + 2}")
    rows = ", ".join("[" + ", ".join(f"b{(i * 5 + j) % 6}" for j in range(9)) + "]" for i in range(9))
    lines += ["arrangement:", f"  layout: [{rows}]"]
    lines += [f"  sashing: {{width: {1 + step}, fabric: f0, around: yes, cornerstones: f1}}", "borders:"]
    for n in range(6):
        corners = f"cornerstones, corner fabric: f{n}" if (n + step) % 2 else "butted"
        lines.append(
            f"  edge {n + 1}: {{width: {1 + n // 2 + step}, fabric: f{(n + 2 + step) % 6}, corners: {corners}}}"
        )
    lines += ["finish: {kind: bound, backing: {fabric: f5}, binding: {fabric: f4}}", "sizes:"]
    lines += ["  king:", "    summary: Everything at once."]
    return "\n".join(lines) + "\n"
