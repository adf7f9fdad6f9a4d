from __future__ import annotations

from pathlib import Path
from typing import Any

import jsonpatch
import msgspec
import pytest
from hypothesis import given, strategies as st

from pegwright.finding import Finding
from pegwright.fit import check_stated_counts, check_stretch, count_supplies
from pegwright.loom import History, check_loom, replay_pattern
from pegwright.loom.checks import RIM_MM
from pegwright.pattern import Pattern, PatternBuilder, Rows, Use, expand, read_pattern, write_pattern
from testing import strategies
from testing.rosettes import rosettes

EXAMPLES = Path(__file__).parents[2] / "examples"


def worked(pattern: Pattern) -> History:
    return replay_pattern(pattern)


def check(pattern: Pattern) -> tuple[Finding, ...]:
    return check_loom(pattern, expand(pattern), worked(pattern))


def codes(pattern: Pattern) -> list[str]:
    return [f.code for f in check(pattern)]


def mend(pattern: Pattern, found: Finding) -> Pattern:
    assert found.fix is not None
    raw: Any = jsonpatch.apply_patch(msgspec.json.decode(write_pattern(pattern)), list(found.fix.patch))
    mended, findings = read_pattern(msgspec.json.encode(raw))
    assert mended is not None, findings
    return mended


def chain(pegs: int = 6, *, clip: bool = True) -> PatternBuilder:
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=pegs, channel="near")).colour("A", "slate", "#4A5A6A")
    for k in range(1, pegs - 1):
        m.place("A", f"A{k}", f"A{k + 1}")
    m.wind("A", f"A{pegs - 1}")
    for k in range(pegs - 1, 1, -1):
        m.hook(f"A{k}", f"A{k - 1}")
    if clip:
        m.clip("A1")
    return m


def test_the_rosette_strip_worked_in_the_right_order_is_without_fault() -> None:
    """Common practice, no source: filling from the top, under the cap, before the outline."""
    assert check(rosettes(6)) == ()
    assert check(rosettes(6, extend=4)) == ()


def test_the_rosette_filled_from_below_drags_five_bands_a_rosette() -> None:
    """Common practice, no source: the filling is worked from the top of the stack; here it is not."""
    found = check(rosettes(2, top_first=False))
    assert [f.code for f in found] == ["loop-dragged"] * 10
    assert [len(f.facts["others"]) for f in found[:5]] == [1, 2, 3, 4, 5]
    assert "and 1 more pass through it" in found[4].message


def test_the_fix_puts_a_whole_filling_in_order() -> None:
    wrong = rosettes(1, "B", top_first=False)
    last = check(wrong)[-1]
    right = mend(wrong, last)
    assert check(right) == ()
    assert [b.events for b in worked(right).moves] == [b.events for b in worked(rosettes(1, "B")).moves]


def test_the_fix_reaches_over_the_moves_between() -> None:
    """Lower loop, then its chain, then the upper loop: the upper one is moved to the front."""
    m = PatternBuilder("Fork", Rows(rows=2, pegs=3, channel="near")).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A2")
    m.place("A", "A2", "A3")
    m.place("A", "B2", "A3")
    m.wind("A", "A3")
    m.hook("A3", "A2", note="the lower one")
    m.hook("A2", "A1")
    m.hook("A3", "B2", note="the upper one")
    m.knot("A1", "B2")
    (one,) = check(m.pattern())
    assert (one.code, one.place.step, one.place.peg, one.place.band) == ("loop-dragged", 7, "A3", 3)
    mended = mend(m.pattern(), one)
    assert check(mended) == ()
    assert [step.note for step in mended.steps[4:6]] == ["the upper one", "the lower one"]


def test_no_fix_where_the_moves_stand_in_different_rounds() -> None:
    m = PatternBuilder("Fork", Rows(rows=1, pegs=4, channel="near")).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A2")
    m.place("A", "A1", "A2")
    m.wind("A", "A2")
    with m.repeat(2):
        m.hook("A2", "A1")
    m.clip("A1")
    (one,) = check(m.pattern())
    assert (one.code, one.fix) == ("loop-dragged", None)


def test_a_forgotten_move_leaves_loops_behind() -> None:
    for forgotten in range(3):
        m = chain(6)
        del m._steps[6 + forgotten]
        found = [f for f in check(m.pattern()) if f.code == "loop-left"]
        assert [f.place.peg for f in found] == [f"A{4 - forgotten}"]


def test_a_whole_chain_leaves_none_and_the_far_end_is_not_meant() -> None:
    assert codes(chain().pattern()) == []
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=4, channel="near")).colour("A", "slate", "#4A5A6A")
    for k in (1, 2, 3):
        m.place("A", f"A{k}", f"A{k + 1}")
    m.hook("A3", "A2")
    m.hook("A2", "A1")
    m.clip("A1", "A4")
    assert codes(m.pattern()) == []


def test_a_hook_on_the_closed_side_is_told_once_and_turning_the_loom_mends_it() -> None:
    """Common practice, no source: the open side of the pegs looks at the maker while loops are hooked."""
    away = PatternBuilder("Ebb", Rows(rows=1, pegs=4)).colour("A", "slate", "#4A5A6A")
    for k in range(1, 4):
        away.place("A", f"A{k}", f"A{k + 1}")
    for k in (3, 2):
        away.hook(f"A{k}", f"A{k - 1}")
    away.clip("A1")
    found = [f for f in check(away.pattern()) if f.code == "channel-opens-away"]
    assert [(f.facts["peg"], f.facts["more"]) for f in found] == [("A3", 1)]
    assert codes(mend(away.pattern(), found[0])) == []
    to_one_side = msgspec.structs.replace(away.pattern(), loom=Rows(rows=1, pegs=4, channel="left"))
    assert codes(to_one_side) == []


def test_a_loom_turned_the_wrong_way_is_told_without_a_fix() -> None:
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=4, channel="near")).colour("A", "slate", "#4A5A6A")
    for k in range(1, 4):
        m.place("A", f"A{k}", f"A{k + 1}")
    m.turn()
    m.hook("A3", "A2")
    m.hook("A2", "A1")
    m.clip("A1")
    found = check(m.pattern())
    assert [(f.code, f.fix) for f in found] == [("channel-opens-away", None)]


def test_a_stack_is_measured_by_its_bands() -> None:
    """Ten loops of 1.5 mm are 15 mm, which a peg of 16 mm holds below its rim; of 1.6 mm too many."""
    for thickness, expected in ((1.5, []), (1.6, ["stack-too-high"])):
        m = PatternBuilder("Pile", Rows(rows=1, pegs=2, height_mm=15 + RIM_MM, channel="near"))
        m.band("standard", thickness_mm=thickness).colour("A", "slate", "#4A5A6A")
        for _ in range(9):
            m.place("A", "A1", "A2")
        m.wind("A", "A2", turns=1)
        for loop in range(9, 0, -1):
            m.hook("A2", "A1", loop=loop)
        m.clip("A1")
        # Nine bands with both loops on A1 are too many for either; A2 is what differs.
        found = [f for f in check(m.pattern()) if f.place.peg == "A2"]
        assert [f.code for f in found] == expected


def test_the_highest_moment_is_told_at_the_first_step_too_high() -> None:
    m = PatternBuilder("Pile", Rows(rows=1, pegs=2, height_mm=5.0 + RIM_MM)).colour("A", "slate", "#4A5A6A")
    for _ in range(6):
        m.place("A", "A1", "A2")
    found = [f for f in check(m.pattern()) if f.code == "stack-too-high"]
    assert {(f.place.step, f.facts["loops"]) for f in found} == {(4, 6)}
    assert found[0].facts["stack_mm"] == pytest.approx(9.0)


def test_idle_bands_are_named_by_the_step_that_laid_them() -> None:
    m = chain(8)
    m.place("A", "A7", "A8")
    m.hang("A")
    found = [(f.place.step, f.facts["band"]) for f in check(m.pattern()) if f.code == "band-not-worked"]
    assert found == [(15, 8), (16, 9)]


def test_steps_are_counted_with_those_that_were_refused() -> None:
    m = chain(4)
    m.hook("A4", "A3")  # refused: bare
    m.hang("A")
    assert {f.place.step for f in check(m.pattern())} == {8}


def test_a_finish_is_proposed_for_the_last_loops_or_the_free_end() -> None:
    m = chain(clip=False)
    (one,) = check(m.pattern())
    assert one.code == "no-finish"
    assert check(mend(m.pattern(), one)) == ()
    m.bind("A", "A1", end="tail")
    (one,) = check(m.pattern())
    assert mend(m.pattern(), one).steps[-1].at == ("tail",)  # type: ignore[union-attr]
    assert codes(PatternBuilder("Nothing yet", Rows(rows=1, pegs=2, channel="near")).pattern()) == []


def test_a_finish_is_proposed_where_an_end_was_put_on_pegs() -> None:
    """The free end is there no more: what is clipped is the last peg that took a loop."""
    m = chain(4, clip=False)
    m.bind("A", "A1")
    m.put("A2", "A1")
    (one,) = [f for f in check(m.pattern()) if f.code == "no-finish"]
    [clip] = mend(m.pattern(), one).steps[-1:]
    assert clip.at[0] in {"A1", "A2"}  # type: ignore[union-attr]


def test_letters_differing_in_case_only() -> None:
    m = chain(4)
    m._steps[0] = msgspec.structs.replace(m._steps[0], colour="a")
    (one,) = check(m.pattern())
    assert one.code == "colour-not-listed"
    assert one.fix is not None
    assert one.fix.patch == ({"op": "replace", "path": "/steps/0/colour", "value": "A"},)
    assert check(mend(m.pattern(), one)) == ()


def test_unused_colours_are_not_named_while_steps_are_missing() -> None:
    m = chain().colour("B", "foam", "#DDEEEE")
    assert codes(m.pattern()) == ["colour-unused"]
    broken = msgspec.structs.replace(m.pattern(), steps=(*m.pattern().steps, Use(name="gone")))
    assert codes(broken) == []


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*.json")), ids=lambda path: path.stem)
def test_the_workshop_pieces_are_without_fault(path: Path) -> None:
    pattern, _ = read_pattern(path.read_bytes())
    assert pattern is not None
    assert check(pattern) == ()
    assert check_stretch(pattern, worked(pattern)) == ()
    assert check_stated_counts(pattern, expand(pattern)) == ()


@given(strategies.patterns)
def test_any_pattern_may_be_checked(pattern: Pattern) -> None:
    """Whatever the document says, the checks come to an end, and every fix can be carried out."""
    expansion, history = expand(pattern), worked(pattern)
    found = (
        *check_loom(pattern, expansion, history),
        *check_stretch(pattern, history),
        *check_stated_counts(pattern, expansion),
    )
    raw = msgspec.json.decode(write_pattern(pattern))
    for one in found:
        assert str(one)
        if one.fix is not None:
            jsonpatch.apply_patch(raw, list(one.fix.patch))
    needs = count_supplies(pattern, history)
    assert sum(heap.total for heap in needs.heaps) == history.final.bands


@given(st.data())
def test_a_fix_for_a_dragged_loop_moves_the_same_loops_and_drags_less(data: st.DataObject) -> None:
    """Random hooks: where a fix is offered, as many moves are made and fewer loops are dragged."""
    m = PatternBuilder("Tangle", Rows(rows=1, pegs=4, channel="near")).colour("A", "slate", "#4A5A6A")
    for _ in range(data.draw(st.integers(2, 5))):
        m.place("A", "A1", "A2")
    for _ in range(data.draw(st.integers(2, 5))):
        source, target = data.draw(st.sampled_from([("A2", "A1"), ("A2", "A3"), ("A1", "A3"), ("A3", "A4")]))
        m.hook(source, target, loop=data.draw(st.integers(1, 3)))
    m.clip("A1")
    pattern = m.pattern()
    for one in check(pattern):
        if one.code == "loop-dragged" and one.fix is not None:
            mended = mend(pattern, one)
            before, after = worked(pattern), worked(mended)
            assert len(after.moves) == len(before.moves)
            assert sorted(_moved(after)) == sorted(_moved(before))
            assert _drags(after) < _drags(before)


def _moved(history: History) -> list[tuple[int, int, str]]:
    return [(*e.bight, e.target) for e in history.events if hasattr(e, "target")]


def _drags(history: History) -> int:
    return sum(bool(getattr(e, "dragged", ())) for e in history.events)


def test_more_loops_than_there_are_cannot_be_caught() -> None:
    m = chain(clip=False)
    m.clip("A1", catch=9)
    (found,) = [f for f in check(m.pattern()) if f.code == "catches-more"]
    loops = len(worked(chain(clip=False).pattern()).final.stack("A1"))
    assert found.facts == {"kind": "clip", "loops": loops, "peg": found.facts["peg"], "wanted": 9}
    assert found.place.step == len(m.pattern().steps)
    assert "catches-more" not in codes(mend(m.pattern(), found))


def test_a_band_laid_after_the_clip_is_told() -> None:
    m = chain()
    assert "laid-after-clip" not in codes(m.pattern())
    m.place("A", "A1", "A2")
    m.place("A", "A2", "A3")
    (found,) = [f for f in check(m.pattern()) if f.code == "laid-after-clip"]
    assert found.place.step == len(m.pattern().steps) - 1
    assert "and 1 more" in found.message
