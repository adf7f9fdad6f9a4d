"""A piece that falls is mended by one small change, proved, and the fault is told as one cause."""

from __future__ import annotations

import jsonpatch
import msgspec
import pytest

from examples.pieces import PIECES, flat_tail, herring_tail, runs_out, shallow_water
from pegwright.finding import LANGUAGES, word_phrase
from pegwright.pattern import Bind, Hook, Pattern, Wind, expand, write_pattern
from pegwright.planner import Mends, find_mends
from pegwright.workshop import work
from tests.planner.pieces import two_lines


@pytest.fixture(scope="session")
def mended() -> dict[str, Mends]:
    return {name: find_mends(PIECES[name](), seconds=60) for name in PIECES if name.startswith("broken/")}


def flat(pattern: Pattern) -> Pattern:
    """Return the pattern with every move written out."""
    return msgspec.structs.replace(pattern, steps=tuple(m.move for m in expand(pattern).moves), motifs=())


def test_every_mend_passes_the_ordinary_line(mended):
    for name, mends in mended.items():
        assert mends.found
        for one in mends.found:
            assert work(one.pattern).holds
            raw = msgspec.json.decode(write_pattern(PIECES[name]()))
            assert jsonpatch.apply_patch(raw, list(one.fix.patch)) == msgspec.json.decode(
                write_pattern(one.pattern)
            )


def test_the_flat_tail_gets_its_first_band_half_twisted(mended):
    """Common practice, no source: a fish-tail begins with a band put on crossed."""
    best = mended["broken/flat-tail"].found[0]
    assert best.fix.label.phrase == "mend-twist"
    assert best.pattern.steps == herring_tail().steps
    assert flat_tail().steps != best.pattern.steps


def test_the_open_chain_is_closed_where_it_ends(mended):
    best = mended["broken/runs-out"].found[0]
    assert str(best.fix.label) == "close the piece: clip A1"
    assert best.pattern.steps[:-1] == runs_out().steps


def test_the_shallow_hook_goes_up_through_all_loops(mended):
    best = mended["broken/shallow-water"].found[0]
    hooks = [step for step in best.pattern.steps if isinstance(step, Hook)]
    assert best.fix.label.phrase == "mend-through-all"
    assert all(hook.through is None for hook in hooks)
    assert len(best.pattern.steps) == len(shallow_water().steps)


def test_the_fault_is_told_as_one_cause_with_its_cure(mended):
    for mends in mended.values():
        [cause] = mends.findings
        assert cause.code == "band-falls"
        assert cause.fix == mends.found[0].fix
    facts = mended["broken/flat-tail"].findings[0].facts
    assert (facts["bands"], facts["hanging"], facts["loose"]) == ((24, 25), 22, 1)


def test_a_mend_has_words_in_every_language(mended):
    for mends in mended.values():
        for one in mends.found:
            assert len({word_phrase(one.fix.label, language) for language in LANGUAGES}) == len(LANGUAGES)


@pytest.mark.parametrize("name", ["ebb-line", "twin-hulls"])
def test_a_hook_left_out_is_put_back(name):
    whole = flat(PIECES[name]())
    at = next(i for i, step in enumerate(whole.steps) if isinstance(step, Hook)) + 7
    faulty = msgspec.structs.replace(whole, steps=(*whole.steps[:at], *whole.steps[at + 1 :]))
    assert not work(faulty).holds
    mends = find_mends(faulty, seconds=60)
    assert whole.steps in [one.pattern.steps for one in mends.found]


def test_a_loop_put_on_the_wrong_peg_is_put_right():
    whole = flat(PIECES["ebb-line"]())
    at = next(i for i, step in enumerate(whole.steps) if isinstance(step, Hook)) + 5
    wrong = msgspec.structs.replace(whole.steps[at], target="A24")
    faulty = msgspec.structs.replace(whole, steps=(*whole.steps[:at], wrong, *whole.steps[at + 1 :]))
    mends = find_mends(faulty, seconds=60)
    assert mends.found[0].pattern.steps == whole.steps


def test_a_clip_put_on_before_the_extension_comes_last():
    whole = flat(PIECES["riding-lights"]())
    *before, extension, clip = whole.steps
    faulty = msgspec.structs.replace(whole, steps=(*before, clip, extension))
    mends = find_mends(faulty, seconds=60)
    assert mends.found[0].pattern.steps == whole.steps
    assert mends.found[0].fix.label.phrase == "mend-swap"


@pytest.mark.parametrize("at", [38, 104])
def test_a_cap_or_a_last_band_left_out_is_put_back(at):
    """The cap is expected between two others of its colour; the extension asks for the free end."""
    whole = flat(PIECES["riding-lights"]())
    assert isinstance(whole.steps[at], Wind | Bind)
    faulty = msgspec.structs.replace(whole, steps=(*whole.steps[:at], *whole.steps[at + 1 :]))
    mends = find_mends(faulty, seconds=60)
    assert whole.steps in [one.pattern.steps for one in mends.found]


def test_two_faults_are_mended_by_two_changes():
    """A hook left out, and farther on one that does not go deep enough: neither cure helps alone."""
    steps = [
        msgspec.structs.replace(step, through=1 if step.source == "A3" else None)
        if isinstance(step, Hook)
        else step
        for step in shallow_water().steps
    ]
    steps.remove(Hook(source="A7", target="A6"))
    faulty = msgspec.structs.replace(shallow_water(), steps=tuple(steps))
    best = find_mends(faulty, seconds=60).found[0]
    assert best.changes == 2
    assert best.fix.label.phrase == "mend-both"
    assert work(best.pattern).holds
    raw = jsonpatch.apply_patch(msgspec.json.decode(write_pattern(faulty)), list(best.fix.patch))
    assert raw == msgspec.json.decode(write_pattern(best.pattern))


def test_several_ways_are_offered_the_smallest_first(mended):
    for mends in mended.values():
        assert len(mends.found) == 3
        assert [one.rank for one in mends.found] == sorted(one.rank for one in mends.found)
        assert {one.changes for one in mends.found} == {1}


def test_what_two_changes_cannot_mend_is_said():
    mends = find_mends(two_lines(3, pegs=6, row_gap_mm=60), seconds=60)
    assert mends.found == ()
    assert mends.findings[-1].code == "mend-not-found"


def test_a_piece_that_holds_is_left_alone():
    mends = find_mends(PIECES["ebb-line"]())
    assert (mends.found, [f.code for f in mends.findings]) == ((), ["holds-already"])
