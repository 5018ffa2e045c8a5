"""A review as one page that needs nothing else: what changed and why, with pictures before and after."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from evenseam.exact import Unit
from evenseam.problems import Problem
from evenseam.publish.html_text import escape
from evenseam.publish.review_picture import Marks, common_scale, draw_top, marks_of
from evenseam.review import (
    Cause,
    Change,
    EngineReview,
    Failure,
    Kind,
    PatternReview,
    PlacedChanges,
    Renamed,
    Review,
    Version,
    Where,
    compare_placed,
)
from evenseam.review.account import (
    SizeLine,
    editions,
    failures_together,
    headline,
    line_name,
    size_lines,
    standing_alone,
    state_words,
    unchanged_words,
    without_consequences,
)
from evenseam.review.cause_words import cause_figures, cause_place, cause_words, listed, reason_words
from evenseam.review.change_words import edition_words, size_words
from evenseam.review.grouping import MANY, Group, group_changes, is_root, is_told, told_only_here
from evenseam.review.markdown import MOST_IN_A_LINE
from evenseam.review.rows import row_of
from evenseam.sheet import PatternSheet

Versions = Mapping[str, tuple[Version | None, Version | None]]

_STYLE = """
:root { color-scheme: light dark; --ink: #1d2428; --quiet: #56636b; --ground: #fbfaf7; --card: #ffffff; --line: #d5d8d4;
  --mark: #b3126b; --stop: #9c2b1d; --plus: #1c6b3c; }
@media (prefers-color-scheme: dark) { :root { --ink: #e8e6e0; --quiet: #a9b3b8; --ground: #161b1e; --card: #1e2529;
  --line: #3a444a; --mark: #ff7ac0; --stop: #ff9a8a; --plus: #7fd6a2; } }
body { font: 16px/1.5 system-ui, sans-serif; color: var(--ink); background: var(--ground); margin: 0 auto;
  max-width: 66rem; padding: 1.5rem 1rem 4rem; }
h1 { font-size: 1.6rem; line-height: 1.25; margin: 0 0 .25rem; } h2 { font-size: 1.3rem; margin: 2.5rem 0 .5rem; }
h3 { font-size: 1.05rem; margin: 1.5rem 0 .5rem; }
.quiet { color: var(--quiet); } code { font-size: .9em; overflow-wrap: anywhere; }
.cause { background: var(--card); border: 1px solid var(--line); border-radius: .4rem; padding: .75rem 1rem;
  margin: .75rem 0; }
.cause p { margin: 0; font-weight: 600; } .cause p code { font-weight: 400; }
.cause ul { margin: .5rem 0 0; padding-left: 1.2rem; } .cause ul ul { margin: 0 0 .5rem; }
.stop { border-left: .35rem solid var(--stop); } .stop p { color: var(--stop); } .cause p .quiet { font-weight: 400; }
.pair { display: flex; flex-wrap: wrap; gap: 1rem; align-items: flex-end; margin: .5rem 0 0; }
figure { margin: 0; flex: 0 1 auto; max-width: 100%; } figcaption { color: var(--quiet); font-size: .9rem; }
svg { max-width: 100%; height: auto; display: block; }
.cloth { stroke: #0006; stroke-width: .6; fill-rule: nonzero; }
.halo { fill: none; stroke: #fff; stroke-width: 4; stroke-linejoin: round; }
.changed { fill: none; stroke: #b3126b; stroke-width: 1.8; stroke-linejoin: round; }
.moved { fill: none; stroke: #b3126b; stroke-width: 1.6; stroke-dasharray: .1 4; stroke-linecap: round; }
.wide { overflow-x: auto; } table { border-collapse: collapse; font-size: .92rem; width: 100%; }
th, td { text-align: left; padding: .3rem .6rem; border-bottom: 1px solid var(--line); vertical-align: top; }
th { color: var(--quiet); font-weight: 600; } td:nth-child(4) { white-space: nowrap; }
summary { cursor: pointer; padding: .4rem 0; }
"""
_KEY = (
    "Both pictures are at one scale. A full line goes round what is new, gone, of another size or of another fabric; "
    "dots go round pieces that are the same and lie elsewhere."
)
_NEARLY_ALL = "Both pictures are at one scale. Nearly every piece differs, so none is marked."
LEAST_KEPT = 0.15
"""Share of pieces that must be as they were for marks on the others to help."""


def write_review_page(review: Review, versions: Versions) -> str:
    """Return the whole page. It has no script and loads nothing, and says so to the browser."""
    title = _title(review)
    body = [f"<h1>{escape(title)}</h1>", _compared(review), *_engine(review.engine)]
    for pattern in review.patterns:
        body += _pattern(pattern, *versions.get(pattern.slug, (None, None)))
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">\n'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>{_STYLE}</style></head>\n<body><main>\n"
        + "\n".join(body)
        + "\n</main></body></html>\n"
    )


def _title(review: Review) -> str:
    if review.is_same:
        return _upper(review.same_words)
    names = listed([pattern.title for pattern in review.patterns if not pattern.is_same][:4])
    return f"Review: {names}"


def _compared(review: Review) -> str:
    same = len(review.untouched)
    others = f" {same} other pattern{' has' if same == 1 else 's have'} the same files on both sides." if same else ""
    return (
        f'<p class="quiet">Compared <code>{escape(review.base)}</code> with <code>{escape(review.head)}</code>.'
        f"{others}</p>"
    )


def _engine(engine: EngineReview | None) -> list[str]:
    """Return what is said of the publisher itself."""
    if engine is None:
        return []
    lines = [f'<div class="cause"><p>{escape(engine.words)}</p>']
    if engine.compared and engine.is_same:
        lines.append(f"From the same texts both compute the same figures ({engine.compared} sheets compared).")
    lines += [f'<p class="stop">{escape(_upper(failure))}.</p>' for failure in engine.failures]
    if engine.changes:
        lines.append("<details open><summary>From the same texts it computes otherwise</summary>")
        for one in engine.changes:
            items = "".join(f"<li>{escape(_upper(words))}</li>" for words in one.words)
            lines.append(f"{escape(one.title)}, {escape(one.name)} in {escape(one.edition)}<ul>{items}</ul>")
        lines.append("</details>")
    return ["".join([*lines, "</div>"])]


def _pattern(review: PatternReview, old: Version | None, new: Version | None) -> list[str]:
    lines = [f"<h2>{escape(review.title)}</h2>", f"<p>{escape(_upper(headline(review)))}.</p>"]
    lines += [_failure(name, failure) for name, failure in failures_together(review)]
    lines += [f'<div class="cause stop"><p>{_problem(problem)}</p></div>' for problem in review.problems]
    groups, rest = group_changes(review.changes)
    lines += [_group(group, groups, review) for group in groups if is_told(group, groups)]
    alone = standing_alone(rest, review)
    if alone:
        items = "".join(f"<li>{escape(_upper(words))}</li>" for words in alone)
        lines.append(f'<div class="cause"><p>Also</p><ul>{items}</ul></div>')
    same = unchanged_words(review)
    lines += [f"<p>{escape(same)}</p>"] if same else []
    lines += _sizes(review, old, new)
    return lines


def _group(group: Group, groups: tuple[Group, ...], review: PatternReview) -> str:
    first = editions(review)[:1]
    told = size_lines(group, review, first) or size_lines(group, review, editions(review))
    many = len(group.causes) > MANY
    heading = f"{len(group.causes)} changes together" if many else _upper(listed([_cause(c) for c in group.causes]))
    if not told:
        return f'<div class="cause"><p>{heading}{escape(without_consequences(group, review))}.</p></div>'
    items = "".join(f"<li>{_line(line)}</li>" for line in told)
    if many:
        only_here = told_only_here(group, groups)
        below = len(group.causes) - len(only_here)
        causes = [_cause(cause) for cause in only_here]
        causes += [f"{'and' if causes else 'all'} {below} that are told below"] if below else []
        items = "".join(f"<li>{cause}</li>" for cause in causes) + items
    others = [unit for unit in editions(review)[1:] if size_lines(group, review, (unit,))]
    if others and told[0].wheres[0].unit in first:
        items += f"<li>likewise in {escape(listed([edition_words(unit) for unit in others]))}</li>"
    return f'<div class="cause"><p>{heading}</p><ul>{items}</ul></div>'


def _cause(cause: Cause) -> str:
    figures, place, words = cause_figures(cause), cause_place(cause), escape(cause_words(cause))
    inside = [escape(figures)] if figures else []
    inside += [f"<code>{escape(f'{place.file}:{place.line}')}</code>"] if place else []
    return f"{words} ({', '.join(inside)})" if inside else words


def _line(line: SizeLine) -> str:
    """Return a size with what follows in it: in one line if that is short, else one below the other."""
    told = [escape(part) for part in line.told]
    left = [escape(f"and {line.left_out}" if told else line.left_out)] if line.left_out else []
    kept = [escape(line.kept)] if line.kept else []
    name = f"<strong>{escape(_upper(line_name(line)))}:</strong> " if line_name(line) else ""
    if len(told) <= MOST_IN_A_LINE:
        words = ", ".join(part for part in ("; ".join(told), *left) if part)
        return name + "; ".join((words, *kept))
    return f"{name}<ul>{''.join(f'<li>{part}</li>' for part in (*told, *left, *kept))}</ul>"


def _failure(name: str, failure: Failure) -> str:
    known = "" if failure.is_computed else "; nothing is known about what changes in it"
    items = "".join(f"<li>{_problem(problem)}</li>" for problem in failure.problems)
    heading = f"{escape(_upper(name))} {state_words(failure)}{known}."
    return f'<div class="cause stop"><p>{heading}</p><ul>{items}</ul></div>'


def _problem(problem: Problem) -> str:
    place = f"<code>{escape(str(problem.place))}</code>: " if problem.place else ""
    hint = f' <span class="quiet">{escape(_upper(problem.hint))}.</span>' if problem.hint else ""
    return f"{place}{escape(_upper(problem.message))}.{hint}"


def _sizes(review: PatternReview, old: Version | None, new: Version | None) -> list[str]:
    by_where: dict[Where, list[Change]] = {}
    for change in review.changes:
        if change.where.size:
            by_where.setdefault(change.where, []).append(change)
    lines = []
    for where, changes in by_where.items():
        lines.append(f"<h3>{escape(_upper(size_words(where)))} in {edition_words(where.unit)}</h3>")
        before = _sheet(old, _old_size(changes, where), where.unit)
        pictures = _pictures(where, before, _sheet(new, where.size, where.unit))
        if pictures and where.unit not in editions(review)[:1]:
            # Another edition differs in the same places as a rule: there to be looked at, and not in the way.
            pictures = (
                f"<details><summary>Before and after in {edition_words(where.unit)}</summary>{pictures}</details>"
            )
        lines += [pictures, _table(changes)]
    return lines


def _old_size(changes: Iterable[Change], where: Where) -> str:
    """Return the slug a size had before, if it was renamed."""
    for change in changes:
        if isinstance(change, Renamed) and change.kind is Kind.SIZE:
            return change.old_id
    return where.size


def _sheet(version: Version | None, size: str, unit: Unit | None) -> PatternSheet | None:
    return version.sheet(size, unit) if version and unit else None


def _pictures(where: Where, old: PatternSheet | None, new: PatternSheet | None) -> str:
    if old is None or new is None:
        known = old or new
        if known is None:
            return ""
        found = PlacedChanges(0, (), (), (), (), ())
        _, after = marks_of(found)
        caption = "Gone" if new is None else "New"
        picture = draw_top(known, after, common_scale(known, known), f"{size_words(where)}, {caption.lower()}")
        return f'<div class="pair"><figure>{picture}<figcaption>{caption}</figcaption></figure></div>'
    found = compare_placed(old, new)
    if found.is_same and not _recoloured(old, new):
        return '<p class="quiet">The finished piece looks as it did.</p>'
    is_all = found.kept < LEAST_KEPT * len(new.sized.placed)
    # Where nearly everything differs, marks on everything would hide the quilt and show nothing.
    before, after = (Marks((), ()), Marks((), ())) if is_all else marks_of(found)
    scale = common_scale(old, new)
    widest = max(float(sheet.sized.finished_width.value) for sheet in (old, new))
    figures = []
    for sheet, marks, name in ((old, before, "Before"), (new, after, "After")):
        size = f"{sheet.sized.finished_width.number} × {sheet.sized.finished_height.text}"
        told = "" if is_all else "; what differs is marked"
        title = f"{size_words(where)} {name.lower()}, {size}{told}"
        picture = draw_top(sheet, marks, scale, title)
        # On a narrow screen both shrink alike, so that they stay at one scale.
        share = round(100 * float(sheet.sized.finished_width.value) / widest, 2)
        caption = f"<figcaption>{name}: {escape(size)}</figcaption>"
        figures.append(f'<figure style="max-width:{share}%">{picture}{caption}</figure>')
    key = _NEARLY_ALL if is_all else _KEY
    return f'<div class="pair">{"".join(figures)}</div><p class="quiet">{key}{_counts(found)}</p>'


def _recoloured(old: PatternSheet, new: PatternSheet) -> bool:
    return [fabric.colour for fabric in old.project.fabrics] != [fabric.colour for fabric in new.project.fabrics]


def _counts(found: PlacedChanges) -> str:
    numbers = (
        (len(found.added), "new"), (len(found.removed), "gone"), (len(found.reshaped), "of another size"),
        (len(found.recoloured), "of another fabric"), (len(found.moved), "elsewhere"), (found.kept, "as before"),
    )  # fmt: skip
    return " Pieces: " + ", ".join(f"{number} {words}" for number, words in numbers if number) + "."


def _table(changes: list[Change]) -> str:
    rows = []
    for change in changes:
        row = row_of(change)
        because = "" if is_root(change) else reason_words(change.because)
        cells = (row.before, row.after, row.difference, because)
        rows.append(
            f'<tr><th scope="row">{escape(row.what)}</th>'
            + "".join(f"<td>{escape(cell)}</td>" for cell in cells)
            + "</tr>"
        )
    number = f"{len(changes)} change{'' if len(changes) == 1 else 's'}"
    head = "".join(f'<th scope="col">{name}</th>' for name in ("What", "Before", "After", "Difference", "Because"))
    return (
        f'<details><summary>{number} in figures and words</summary><div class="wide" tabindex="0"><table>'
        f"<thead><tr>{head}</tr></thead><tbody>{''.join(rows)}</tbody></table></div></details>"
    )


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]
