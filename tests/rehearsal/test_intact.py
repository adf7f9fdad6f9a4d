"""What a slip cannot reach, and the tables shared between runs, against reading every run afresh."""

from __future__ import annotations

import random

import pytest

from pegwright.loom import Bight
from pegwright.proof import prove
from pegwright.proof.carriers import carried, carry
from pegwright.proof.prove import decide
from pegwright.proof.reader import Reader
from pegwright.proof.slips import first_passed, in_use, reduced
from pegwright.rehearsal.course import course
from pegwright.rehearsal.intact import Intact
from pegwright.rehearsal.lanes import Lanes
from pegwright.rehearsal.run import events_of, rehearse_slips
from pegwright.rehearsal.slips import find_slips
from pegwright.rehearsal.verdicts import Judge
from pegwright.rehearsal.words import Words
from pegwright.structure import structure_of
from tests.programs import KINDS
from tests.rehearsal.twin import random_history


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(7, 10))
def test_the_words_of_a_part_out_of_reach_have_not_changed(seed: int, kind: str) -> None:
    """Any few bands that a run is said not to reach: the fasteners' words of these alone are equal."""
    history = random_history(seed, kind)
    made = course(history)
    rng = random.Random(seed)
    bands = range(1, history.final.bands + 1)
    keeps = [frozenset(rng.sample(bands, rng.randint(1, min(4, len(bands))))) for _ in range(6)]
    keeps = list(dict.fromkeys(keeps))
    lanes = Lanes(made.words, keeps)
    intended = [lanes.product(root) for reading in made.readings for root in reading.roots]
    out_of_reach = 0
    for slip in find_slips(history):
        run = rehearse_slips(made, slip)
        readings = [run.readings.get(at, reading) for at, reading in enumerate(made.readings)]
        found = [lanes.product(root) for reading in readings for root in reading.roots]
        for at, keep in enumerate(keeps):
            if Intact(made, [(keep, keep)]).of(run).held:
                out_of_reach += 1
                now = [v[:, :, at].tolist() for v in found if v[:, :, at].tolist() != [[1, 0], [0, 1]]]
                meant = [v[:, :, at].tolist() for v in intended if v[:, :, at].tolist() != [[1, 0], [0, 1]]]
                assert now == meant
    assert out_of_reach


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(10, 13))
def test_what_is_out_of_reach_is_held(seed: int, kind: str) -> None:
    history = random_history(seed, kind)
    made = course(history)
    judge = Judge(made)
    for slip in find_slips(history):
        run = rehearse_slips(made, slip)
        assert judge.intact.of(run).held.isdisjoint(prove(structure_of(events_of(made, run))).free)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(13, 16))
def test_shared_tables_tell_what_a_structure_of_its_own_does(seed: int, kind: str) -> None:
    """The same bands are in use, and the same are held by paths, with the words of all runs in one table."""
    history = random_history(seed, kind)
    made = course(history)
    judge = Judge(made)
    for slip in find_slips(history):
        run = rehearse_slips(made, slip)
        structure = structure_of(events_of(made, run))
        words = reduced(structure)
        used = in_use(words, first_passed(structure))
        key = judge._key(run)
        assert key.twisted == structure.twists.keys()
        shared, first = judge.reducing.reduced(judge._passes(run, key), key.twisted)
        assert in_use(shared, first) == used
        for many in (1, len(used)):
            wanted = frozenset(sorted(used)[:many])
            reader = judge.reducing.read(shared)
            assert carried(reader, wanted) == wanted & carry(Reader(words), wanted, (0,))[0].keys()


def test_a_word_of_bands_left_out_holds_nothing_whichever_way_it_is_read() -> None:
    words = Words()
    loop = words.flat(Bight(1, 0), 1)
    lanes = Lanes(words, [frozenset({1}), frozenset({2})])
    for word in ([loop], [loop ^ 1], [loop ^ 1, loop]):
        value = lanes.product(words.word(word))[:, :, 1]
        assert value.tolist() == [[1, 0], [0, 1]]
        assert lanes.idle(words.word(word)).all()


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(16, 22))
def test_a_few_bands_are_decided_as_the_whole_proof_does(seed: int, kind: str) -> None:
    """Those that the shortest paths leave open, for such is what is asked."""
    structure = structure_of(random_history(seed, kind).events)
    whole = prove(structure)
    wanted = frozenset(structure.bands) - carried(Reader(reduced(structure)), frozenset(structure.bands))
    free, left = decide(structure, wanted)
    assert free == wanted.intersection(whole.free)
    assert left == wanted.intersection(whole.unproved)
