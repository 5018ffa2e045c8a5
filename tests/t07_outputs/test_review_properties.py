"""What holds of every review: nothing of nothing, the way back, matching by id, nothing lost."""

from __future__ import annotations

from collections import Counter
from functools import cache
from random import Random

from evenseam.pattern import Quantity
from evenseam.review import (
    Added,
    InputCause,
    Kind,
    OwnCause,
    Remeasured,
    Removed,
    Renamed,
    Version,
    compare_patterns,
    compare_placed,
    swapped,
)
from evenseam.review.changes import Change
from hypothesis import given, settings
from hypothesis import strategies as st
from support.reviewed import GULLS, version

EDITS = (
    ("inner border: {width: 1,", "inner border: {width: 1 1/4,"),
    ("outer border: {width: 1}", "outer border: {width: 1 1/2}"),
    ("rows: 1, columns: 2", "rows: 2, columns: 3"),
    ("finished size: 6 x 6", "finished size: 8 x 8"),
    ("seam allowance: 1/4", "seam allowance: 3/8"),
    ("order: long sides first", "order: short sides first"),
    ("{width: 2, fabric: sea,", "{width: 2, fabric: fog,"),
    ("kind: corner pockets, fabric: sea", "kind: sleeve, fabric: sea"),
    ("finish: {kind: turned, backing: {fabric: sea}}", "finish: {kind: bound, backing: {fabric: sea}, binding: {fabric: gull}}"),
    ("name: Fog, colour", "name: Sea Fog, colour"),
    ("#1f4a63\"}", "#1f4a63\", directional: yes}"),
    ("Two gulls look out to sea.", "Three gulls look inland."),
    ("  table runner:", "  long runner:"),
    ("around: yes", "around: no"),
    ("fabric: fog, around", "fabric: gull, cornerstones: sea, around"),
    ("binding: {fabric: sea}}", "binding: {fabric: sea, strip width: 2 1/2}}"),
    ("units: inches", "units: inches\neditions: [inches, centimetres]"),
    ("      - gull: 6,0 6,6 0,6", "      - gull: 6,0 6,3 3,3\n      - sea: 6,3 6,6 0,6 3,3"),
    ("      - fog: 0,0 6,0 0,6\n", "      - fog: 0,0 6,0 3,3\n      - sea: 0,0 3,3 0,6\n"),
    ("  outer border: {width: 2", "  middle border: {width: 1/2, fabric: gull}\n  outer border: {width: 2"),
    ("version: \"1.0\"\n", "version: \"1.0\"\nskill level: beginner\n"),
    ("order: top and bottom first", "corners: mitred"),
    ("order: long sides first", "corners: mitred, ease: 6"),
    ("order: top and bottom first", "corners: partial seam"),
    ("words:\n      outer-border-sides", "words:\n      outer-border-top-bottom"),
)  # fmt: skip


@cache
def edited_version(edits: frozenset[int]) -> Version:
    text = GULLS
    for number in sorted(edits):
        old, new = EDITS[number]
        text = text.replace(old, new, 1)
    return version(text)


def edit_sets() -> st.SearchStrategy[frozenset[int]]:
    return st.frozensets(st.integers(0, len(EDITS) - 1), max_size=4)


@settings(max_examples=40, deadline=None)
@given(edit_sets())
def test_nothing_changes_between_a_version_and_itself(edits: frozenset[int]) -> None:
    text_again = edited_version.__wrapped__(edits)  # computed anew: equal, and not the same objects
    assert compare_patterns(edited_version(edits), text_again) == ()


@settings(max_examples=60, deadline=None)
@given(edit_sets(), edit_sets())
def test_swapping_the_revisions_swaps_every_change(one: frozenset[int], two: frozenset[int]) -> None:
    old, new = edited_version(one), edited_version(two)
    there = compare_patterns(old, new)
    back = compare_patterns(new, old)
    assert Counter(swapped(change) for change in there) == Counter(back)
    assert Counter(swapped(swapped(change)) for change in there) == Counter(there)
    assert len(set(there)) == len(there)


@settings(max_examples=40, deadline=None)
@given(edit_sets(), edit_sets())
def test_every_cut_is_accounted_for(one: frozenset[int], two: frozenset[int]) -> None:
    """Old cuts, less those removed, plus those added, are the new cuts; each changed figure is a change, once."""
    old, new = edited_version(one), edited_version(two)
    changes = compare_patterns(old, new)
    renamed = {c.new_id: c.old_id for c in changes if isinstance(c, Renamed) and c.kind is Kind.SIZE}
    for after in new.sheets:
        project = after.project
        before = old.sheet(renamed.get(project.size, project.size), project.unit)
        if before is None:
            continue
        mine = [c for c in changes if (c.where.size, c.where.unit) == (project.size, project.unit)]
        cuts = [c for c in mine if c.kind is Kind.CUT]
        removed = {c.id for c in cuts if isinstance(c, Removed)}
        added = {c.id for c in cuts if isinstance(c, Added)}
        named = {c.old_id: c.new_id for c in cuts if isinstance(c, Renamed)}
        stayed = {named.get(cut.id, cut.id): cut for cut in before.cuts.cuts if cut.id not in removed}
        assert len(stayed) == len(before.cuts.cuts) - len(removed)
        kept = {cut.id: cut for cut in after.cuts.cuts if cut.id not in added}
        assert stayed.keys() == kept.keys()
        differing = {
            id for id, cut in kept.items()
            if (cut.width, cut.height, cut.count.value) != (stayed[id].width, stayed[id].height, stayed[id].count.value)
            and [cut.width.value, cut.height.value, cut.count.value]
            != [stayed[id].width.value, stayed[id].height.value, stayed[id].count.value]
        }  # fmt: skip
        assert differing == {c.id for c in cuts if isinstance(c, Remeasured)}
        buys = {m.material: m.buy.value for m in after.materials}
        bought = {m.material: m.buy.value for m in before.materials}
        moved = {m for m in buys.keys() & bought.keys() if buys[m] != bought[m]}
        assert moved == {
            c.id for c in mine if c.kind in (Kind.YARDAGE, Kind.BATTING) and isinstance(c, Remeasured)
        }  # fmt: skip


@settings(max_examples=40, deadline=None)
@given(edit_sets(), edit_sets())
def test_every_changed_figure_has_a_reason_in_the_files(one: frozenset[int], two: frozenset[int]) -> None:
    for change in compare_patterns(edited_version(one), edited_version(two)):
        if change.kind in (Kind.CUT, Kind.FINISHED, Kind.YARDAGE, Kind.BATTING, Kind.CHECKPOINT, Kind.TEMPLATE):
            assert change.because, change
            assert not any(isinstance(cause, OwnCause) for cause in change.because), change
            for cause in change.because:
                if isinstance(cause, InputCause):
                    assert all(differs(*pair) for pair in cause.figures)


def differs(old: Quantity, new: Quantity) -> bool:
    return old.value != new.value or old.unit is not new.unit


@settings(max_examples=15, deadline=None)
@given(edit_sets(), edit_sets(), st.randoms(use_true_random=False))
def test_the_order_of_a_cut_list_is_no_change(one: frozenset[int], two: frozenset[int], random: Random) -> None:
    """Cuts, materials and figures are matched by what they are, never by their place in a list."""
    from dataclasses import replace

    old, new = edited_version(one), edited_version(two)
    shuffled = []
    for sheet in new.sheets:
        cuts, materials = list(sheet.cuts.cuts), list(sheet.materials)
        random.shuffle(cuts)
        random.shuffle(materials)
        shuffled.append(
            replace(sheet, cuts=replace(sheet.cuts, cuts=tuple(cuts)), materials=tuple(materials))
        )  # fmt: skip
    assert compare_patterns(new, replace(new, sheets=tuple(shuffled))) == ()
    ids = [change_key(change) for change in compare_patterns(old, new)]
    assert Counter(ids) == Counter(
        change_key(change) for change in compare_patterns(old, replace(new, sheets=tuple(shuffled)))
    )  # fmt: skip


def change_key(change: Change) -> tuple[object, ...]:
    return type(change), change.kind, change.where, getattr(change, "id", "")


@settings(max_examples=25, deadline=None)
@given(edit_sets(), edit_sets())
def test_every_visible_piece_is_accounted_for(one: frozenset[int], two: frozenset[int]) -> None:
    old, new = edited_version(one), edited_version(two)
    for after in new.sheets:
        before = old.sheet(after.project.size, after.project.unit)
        if before is None:
            continue
        found = compare_placed(before, after)
        both = found.kept + len(found.recoloured) + len(found.reshaped) + len(found.moved)
        assert both + len(found.removed) == len(before.sized.placed)
        assert both + len(found.added) == len(after.sized.placed)
        assert compare_placed(after, after).is_same


def test_a_wider_border_moves_nothing_inside_it() -> None:
    old = edited_version(frozenset())
    new = edited_version(frozenset({1}))
    before, after = (version.sheet("mug-rug", version.sheets[0].project.unit) for version in (old, new))
    assert before is not None and after is not None
    found = compare_placed(before, after)
    assert not found.moved and not found.added and not found.removed
    # The four strips of the border are of another size; the two pieces of the block stay.
    assert len(found.reshaped) == 4 and found.kept == 2


def test_figures_that_differ_though_nothing_was_decided_otherwise_are_said_to_be_ours() -> None:
    """A sheet worked out in another way from the same inputs, as by another version of the program."""
    from dataclasses import replace
    from fractions import Fraction

    old = edited_version(frozenset())
    sheet = old.sheets[0]
    cut = sheet.cuts.cuts[0]
    wider = replace(cut, width=replace(cut.width, value=cut.width.value + Fraction(1, 8)))
    cuts = replace(sheet.cuts, cuts=(wider, *sheet.cuts.cuts[1:]))
    new = replace(old, sheets=(replace(sheet, cuts=cuts), *old.sheets[1:]))
    (change,) = compare_patterns(old, new)
    assert isinstance(change, Remeasured) and change.because == (OwnCause(),)
