"""Slips followed by hand: what comes of them, when they show. Worked out on paper, in words beside each."""

from __future__ import annotations

import pytest

from examples.pieces import PIECES
from pegwright.finding import LANGUAGES
from pegwright.lesson import MistakeWriter, Phrasebook
from pegwright.loom import replay_pattern
from pegwright.pattern import Clip, Lift
from pegwright.proof import check, prove
from pegwright.rehearsal import SLIP_KINDS, Slip, prepare_history, rehearse, rehearse_pairs
from pegwright.rehearsal.judge import Judge
from pegwright.rehearsal.outcome import outcome_of, with_loose_band
from pegwright.rehearsal.slip_run import replay_slips
from pegwright.rehearsal.slips import find_slips
from pegwright.structure import structure_of
from testing.programs import KINDS as PROGRAMS
from testing.slow_rehearsal import loom_of, random_history, slow_run
from tests.rehearsal.pieces import caps, history_of, jetty, outcome, rehearsed


def test_too_shallow_at_the_second_hook() -> None:
    """Step 8 hooks A4 to A3 through two loops, those of band 4: it now goes through the upper one only.

    Band 3 then passes through one loop of band 4 only. Band 4 hangs on there like a ring, but its empty loop
    lets the other be drawn out of band 5, which falls.
    """
    one = outcome(rehearsed("jetty"), "too-shallow", 8)
    assert one.result == "falls"
    assert one.falls == (5,)
    assert one.first is None  # every stack is as high, and of the same colours, as it should be
    assert one.close is not None
    assert (one.close.step, one.close.holder) == (8, "A4")
    assert (len(one.close.wrong), len(one.close.right)) == (0, 1)  # the loop that was missed stands empty


def test_the_clip_is_left_out() -> None:
    """Nothing holds the last band: all six fall. The free end still hangs there with its two loops."""
    one = outcome(rehearsed("jetty"), "step-skipped", 12)
    assert one.falls == (1, 2, 3, 4, 5, 6)
    assert one.first is not None
    assert (one.first.holder, one.first.wrong, one.first.right) == ("end.0", ("A", "A"), ())


def test_the_last_band_is_left_out() -> None:
    """There is no free end for the clip: the maker is stuck at step 12; if she goes on, all comes apart."""
    one = outcome(rehearsed("jetty"), "step-skipped", 11)
    assert one.result == "falls"
    assert one.falls == (1, 2, 3, 4, 5)
    assert one.stuck == 11


def test_a_wrong_colour_only_looks_otherwise() -> None:
    one = outcome(rehearsed("jetty"), "wrong-colour", 2)
    assert (one.result, one.differs) == ("looks-different", (2,))
    assert one.first is not None
    assert (one.first.wrong, one.first.right) in (
        (("F", "F"), ("F", "A")),
        (("F",), ("A",)),
    )


def test_a_cap_forgotten() -> None:
    """Without its cap the loop on A3 is pulled through nothing, and band 2 slips out of band 1."""
    one = outcome(rehearsed("caps"), "cap-forgotten", 3)
    assert 3 not in one.falls  # the cap itself is not in the piece
    assert one.result == "falls"
    assert one.first is not None
    assert (one.first.step, one.first.holder, len(one.first.right)) == (3, "A3", 4)


def test_one_loop_caught() -> None:
    """A clip through one loop of the last band: it hangs there like a ring, and all the others run off it."""
    one = outcome(rehearsed("jetty"), "one-loop-caught", 12)
    assert one.falls == (1, 2, 3, 4, 5)


def test_a_slip_of_the_strip_in_words() -> None:
    told = rehearsed("jetty")
    one = outcome(told, "too-shallow", 8)
    teller = MistakeWriter(Phrasebook("en"), told.history, lambda at: at + 1)
    assert teller.slip(one) == "You go down inside only the top loop, not inside all the loops above."
    assert teller.end(one) == "In the end one band falls off."
    assert teller.sign(one) == (
        "It looks right from above, so look closely now: "
        "the moved band should come up through every loop on peg A4."
    )
    assert teller.warning(one) == "Go down inside all the loops above, not only the top one."


@pytest.mark.parametrize("kind", PROGRAMS)
@pytest.mark.parametrize("seed", range(3))
def test_what_comes_to_the_intended_piece_is_never_reported(seed: int, kind: str) -> None:
    """And whatever is left out comes to it: the same loom, loop for loop and strand for strand."""
    history = random_history(seed, kind)
    told = rehearse(jetty(), history, settle=0)
    reported = {o.slip for o in told.outcomes}
    for slip in told.chances:
        stopped = bool(slip.moves) and not replay_slips(prepare_history(history), slip).wrong
        slow = slow_run(history, slip)
        same = loom_of(slow.states[-1]) == loom_of(history.final)
        letters = sorted(history.colours) == sorted(_letters(history, slip))
        caught = [h.caught for h in slow.states[-1].fasteners] == [h.caught for h in history.final.fasteners]
        if slip not in reported and not stopped:
            assert same
            assert caught
        if slip in reported and slip.moves == tuple(
            d.move for d in history.moves[slip.at : slip.at + slip.replaces]
        ):
            raise AssertionError("the intended moves are reported as a slip")
        assert letters or stopped or slip in reported
        assert not (stopped and slip in reported)


def _letters(history, slip):  # type: ignore[no-untyped-def]
    letters = list(history.colours)
    for at in range(slip.at, slip.at + slip.replaces):
        first, last = history.before(at).bands, history.moves[at].after.bands
        if isinstance(history.moves[at].move, Clip) or first == last:
            continue
        mine = [getattr(m, "colour", None) for m in slip.moves]
        for band in range(first, last):
            if history.colours[band] not in mine:
                letters[band] = "other"
    return letters


def test_every_kind_of_slip_is_met_in_the_pieces() -> None:
    met = set()
    pieces = ("riding-lights", "buoy-line", "herring-tail", "twin-hulls", "lobster-pot")
    for name in (*pieces, "swatches/reef-points", "swatches/mooring-lines"):
        met |= {slip.kind for slip in rehearsed(name).chances}
    assert met == set(SLIP_KINDS)


def test_shared_out_work_gives_the_same() -> None:
    pattern = jetty()
    one = rehearse(pattern, history_of(pattern))
    two = rehearse(pattern, history_of(pattern), processes=2)
    assert one.outcomes == two.outcomes
    assert one.risky_steps == two.risky_steps


def test_progress_is_told_and_reaches_its_end() -> None:
    told: list[tuple[str, int, int]] = []
    pattern = caps()
    result = rehearse(pattern, history_of(pattern), progress=lambda *what: told.append(what))
    assert told[0][1] == 0
    assert ("rehearsing slips", result.tried, result.tried) in told


def test_pairs_are_drawn_by_a_seed() -> None:
    told = rehearsed("jetty")
    seen: list[int] = []
    one = rehearse_pairs(told, count=60, seed=4, progress=lambda _what, done, _total: seen.append(done))
    assert one == rehearse_pairs(told, count=60, seed=4)
    assert one != rehearse_pairs(told, count=60, seed=5)
    assert seen == list(range(1, 61))
    assert sum(one.results.values()) == one.sampled
    alone = {o.slip: set(o.falls) for o in told.outcomes}
    for first, second, both in one.worse:
        slow = slow_run(told.history, first, second)
        assert set(both.falls) - alone.get(first, set()) - alone.get(second, set())
        assert slow.refused is not None


@pytest.mark.parametrize("name", ["jetty", "riding-lights"])
def test_the_top_troubles_are_proved(name: str) -> None:
    """What is shown first was proved in full and its certificates checked; a proof of our own agrees."""
    told = rehearsed(name)
    for trouble in told.troubles[:5]:
        for way in trouble.failure_modes[:2]:
            assert way.worst.slip in told.proved
            proof = prove(
                structure_of(slow_run(told.history, way.worst.slip).events, told.history.board.spots)
            )
            total = told.history.final.bands
            assert set(way.worst.falls) == {band for band in proof.free if band <= total}


def test_steps_that_go_wrong_alike_are_one_trouble() -> None:
    """Every hook of a chain can be too shallow: one warning, not twenty-four; no spot is told twice."""
    told = rehearsed("jetty")
    spots = [spot.at for trouble in told.troubles for spot in trouble.risky_steps]
    assert sorted(spots) == sorted(spot.at for spot in told.risky_steps)
    assert told.troubles[0].failure_modes[0].kind == "too-shallow"
    steps = {risky.step for risky in told.troubles[0].risky_steps}
    assert steps == {9, 10}  # at 8 one band falls, at 7 it cannot be
    assert sum(trouble.expected for trouble in told.troubles) == pytest.approx(sum(told.heat))


def test_a_half_twist_forgotten_shows_by_a_tug_at_the_first_band() -> None:
    """Every stack is as it should be, but the first band of a flat tail drops off after its two lifts."""
    history = history_of(PIECES["herring-tail"]())
    made = prepare_history(history)
    judge = Judge(made)
    run = replay_slips(made, next(slip for slip in find_slips(history) if slip.kind == "twist-forgotten"))
    found = outcome_of(made, judge, run, judge.prove_run(run))
    assert found is not None
    assert found.first is found.close is None
    sign = with_loose_band(made, run, found).close
    assert sign is not None
    assert (sign.how, sign.step, sign.band) == ("loose", 5, 1)
    said = {
        MistakeWriter(Phrasebook(language), history, lambda at: at + 1).sign(found._replace(close=sign))
        for language in LANGUAGES
    }
    assert len(said) == len(LANGUAGES)
    assert "It looks right, but after step 5 you can tell: tug band 1 (A), and it comes off." in said


def test_what_falls_beside_a_twisted_band_is_decided() -> None:
    """A lift at the wrong peg: the twisted first band of a tail keeps none of those that fall."""
    history = replay_pattern(PIECES["herring-tail"]())
    events = slow_run(history, Slip(4, "wrong-peg", (Lift(at="A1"),), 1)).events
    proof = prove(structure_of(events, history.board.spots))
    assert proof.apart
    assert proof.free
    assert not proof.unproved
    assert check(events, proof, history.board.spots) is None
