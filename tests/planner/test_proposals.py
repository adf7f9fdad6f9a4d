"""A proposal is a whole working: proved by the line itself, and no harder to teach than the hand-made one."""

from __future__ import annotations

import jsonpatch
import msgspec
import pytest

from examples.pieces import PIECES
from pegwright.finding import LANGUAGES, word_finding
from pegwright.loom import Drawn, replay_pattern
from pegwright.pattern import Pattern, PatternBuilder, Repeat, Rows, read_pattern, write_pattern
from pegwright.planner import measure_given_working, propose, without_working
from pegwright.workshop import plan_piece, rehearse_piece, work
from tests.planner.pieces import two_lines

PLANNED = ("ebb-line", "twin-hulls", "riding-lights", "slack-water-mat")


def chain(pegs: int = 5, *, finish: bool = False) -> Pattern:
    m = PatternBuilder("Mooring", Rows(rows=1, pegs=pegs)).colour("A", "slate", "#4A5A6A")
    with m.repeat(pegs - 1, pegs=1):
        m.place("A", "A1", "A2")
    if finish:
        m.bind("A", "A1")
        m.clip("end")
    return m.pattern()


def hooks(pattern: Pattern) -> list[tuple[str, str, str]]:
    """Return what is hooked where, in order."""
    events = replay_pattern(pattern).events
    return [
        (str(e.bight), e.source, e.target) for e in events if isinstance(e, Drawn) and "." not in e.target
    ]


@pytest.mark.parametrize("name", PLANNED)
def test_every_proposal_passes_the_ordinary_line(name, planned):
    assert planned[name].found
    for one in planned[name].found:
        made = work(one.pattern)
        assert made.holds
        assert not [f for f in made.findings if f.code == "loop-dragged"]
        assert read_pattern(write_pattern(one.pattern)).pattern == one.pattern


@pytest.mark.parametrize("name", PLANNED)
def test_the_best_is_worked_hook_for_hook_as_the_maker_does(name, planned):
    """The pieces were worked by hand before there was a planner."""
    best = planned[name].found[0]
    by_hand = hooks(PIECES[name]())
    assert sorted(hooks(best.pattern)) == sorted(by_hand)
    assert best.measures.cautions == best.measures.loose_loops == 0


@pytest.mark.parametrize("name", PLANNED)
def test_a_proposal_is_measured_as_the_given_working_is(name, planned):
    """What a proposal says of itself is what is measured of it once it is taken."""
    one = planned[name].found[0]
    given = measure_given_working(one.pattern)
    assert given is not None
    assert given._replace(phrases=0) == one.measures._replace(phrases=0)
    assert given.phrases <= one.measures.phrases
    by_hand = measure_given_working(PIECES[name]())
    assert by_hand is not None
    assert one.measures.phrases <= by_hand.phrases


def test_what_works_nothing_has_no_measures():
    assert measure_given_working(chain()) is None


@pytest.mark.parametrize("name", PLANNED)
def test_proposals_differ_and_come_in_order(name, planned):
    found = planned[name].found
    assert len({tuple(sorted(hooks(one.pattern))) for one in found}) == len(found)
    assert [one.measures.rank for one in found] == sorted(one.measures.rank for one in found)


def test_a_proposal_is_written_as_repeats(planned):
    steps = planned["ebb-line"].found[0].pattern.steps
    assert [(s.times, s.pegs, len(s.steps)) for s in steps if isinstance(s, Repeat)][1:] == [(24, -1, 1)]
    lights = planned["riding-lights"].found[0].pattern.steps
    assert [(s.times, s.pegs, len(s.steps)) for s in lights if isinstance(s, Repeat)][-1] == (6, -2, 8)


def test_what_is_laid_stays_as_it_was_written(planned):
    for name, plans in planned.items():
        given = without_working(PIECES[name]())
        for one in plans.found:
            assert one.pattern.steps[: len(given.steps)] == given.steps
            assert one.pattern.motifs == given.motifs


def test_a_given_finish_stays_and_the_piece_is_worked_towards_it():
    plans = propose(chain(finish=True), seconds=60)
    best = plans.found[0].pattern
    assert best.steps[-2:] == chain(finish=True).steps[-2:]
    assert hooks(best)[-1] == ("1b", "A2", "A1")
    assert work(best).holds


def test_a_chain_cannot_be_worked_towards_the_peg_where_its_loops_lie_uppermost():
    """Laid from A1 on, each band lies on the one before: towards A5 there is nothing to pull through."""
    given = chain(finish=True)
    away = read_pattern(write_pattern(given).replace(b'"at": "A1"', b'"at": "A5"')).pattern
    assert away is not None
    assert away != given
    assert [f.code for f in propose(away, seconds=60).findings] == ["order-none"]


def test_a_finish_at_a_peg_without_a_loop_is_none_to_work_towards():
    """Nothing comes to it in any order, and that is said."""
    given = chain(finish=True)
    away = read_pattern(write_pattern(given).replace(b'"at": "A1"', b'"at": "A9"')).pattern
    assert away is not None
    assert away != given
    plans = propose(away, seconds=60)
    assert plans.found == ()
    assert [found.code for found in plans.findings] == ["order-none"]


def test_what_is_worked_already_stays():
    m = PatternBuilder("Mooring", Rows(rows=1, pegs=5)).colour("A", "slate", "#4A5A6A")
    for peg in range(1, 5):
        m.place("A", f"A{peg}", f"A{peg + 1}")
    m.hook("A4", "A3")
    begun = m.pattern()
    best = propose(begun, seconds=60).found[0].pattern
    assert best.steps[: len(begun.steps)] == begun.steps
    assert hooks(best)[0] == ("3b", "A4", "A3")
    assert work(best).holds


def test_two_chains_that_nothing_joins_have_no_order():
    """One fastener at one peg is given; the other chain can never come to it."""
    plans = propose(two_lines(4, pegs=5), seconds=60)
    assert plans.found == ()
    assert [f.code for f in plans.findings] == ["order-not-found"]
    assert plans.tried > 1


def test_a_loom_of_caps_has_nothing_to_be_worked():
    m = PatternBuilder("Caps", Rows(rows=1, pegs=3)).colour("A", "slate", "#4A5A6A")
    m.wind("A", "A1")
    assert [f.code for f in propose(m.pattern()).findings] == ["nothing-to-work"]


def test_a_finished_piece_is_said_to_hold_already():
    plans = propose(PIECES["ebb-line"]())
    assert not plans.found
    assert [(f.code, f.severity) for f in plans.findings] == [("holds-already", "note")]


def test_a_pattern_that_cannot_be_made_is_not_planned():
    m = PatternBuilder("Off the loom", Rows(rows=1, pegs=2)).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A9")
    plans = propose(m.pattern())
    assert (plans.found, [f.code for f in plans.findings]) == ((), ["peg-unknown"])


def test_a_short_time_still_returns_the_best_so_far():
    plans = propose(without_working(PIECES["riding-lights"]()), seconds=1e-9)
    assert plans.cut_short
    assert plans.found or plans.tried == 1


def test_it_is_broken_off_by_whoever_is_told_how_far_it_is():
    class EnoughError(Exception):
        pass

    def report(_what: str, done: int, _total: int) -> None:
        if done == 2:
            raise EnoughError

    with pytest.raises(EnoughError):
        propose(chain(), progress=report)


def test_proposals_are_rehearsed_where_that_is_asked():
    """The planner is given the way to rehearse, and reports what it says of each proposal it shows."""
    seen: list[Pattern] = []

    def count(pattern: Pattern, history, _ends: float) -> float:
        assert history.final.fasteners
        seen.append(pattern)
        return 1.5

    plans = propose(chain(), most=1, seconds=60, count_failures=count)
    assert seen == [one.pattern for one in plans.found]
    assert [one.measures.failures for one in plans.found] == [1.5]


def test_the_workshop_rehearses_proposals():
    plans = plan_piece(chain(), most=1, seconds=60, rehearsed=True)
    assert (
        plans.found[0].measures.failures == rehearse_piece(work(plans.found[0].pattern), kept=False).failures
    )


def test_a_move_that_cannot_stand_with_another_is_named_and_let_go():
    """With both its loops on A4, and A3 hooked through both, the last band slips off again.

    In by one loop and out by the other, nothing is caught: proved, and known to makers (common practice).
    """
    m = PatternBuilder("Mooring", Rows(rows=1, pegs=5)).colour("A", "slate", "#4A5A6A")
    with m.repeat(4, pegs=1):
        m.place("A", "A1", "A2")
    m.hook("A5", "A4")
    m.hook("A4", "A3")
    begun = m.pattern()
    [told] = propose(begun, seconds=60).findings
    assert (told.code, told.place.path, told.place.step) == ("order-pinned", "/steps/2", 6)
    assert [str(other) for other in told.facts["others"]] == ["move 5 (hook A5 loop 1 to A4)"]
    assert told.fix is not None
    raw = jsonpatch.apply_patch(msgspec.json.decode(write_pattern(begun)), list(told.fix.patch))
    let_go = msgspec.convert(raw, Pattern)
    assert let_go.steps == begun.steps[:2]
    assert propose(let_go, seconds=60).found


def test_a_move_that_no_order_keeps_is_named_alone():
    told = propose(PIECES["broken/shallow-water"](), seconds=60).findings
    assert told[0].code == "order-pinned"
    assert (told[0].place.step, told[0].facts["count"]) == (13, 0)
    assert {len({word_finding(told[0], language).message for language in LANGUAGES})} == {len(LANGUAGES)}
