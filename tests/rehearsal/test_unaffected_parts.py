"""What a slip cannot reach, and the tables shared between runs, against reading every run afresh."""

from __future__ import annotations

import random

import pytest

from pegwright.loom import Bight
from pegwright.proof import (
    Reader,
    bands_in_use,
    bands_on_paths,
    decide,
    find_holding_paths,
    prove,
    reduce_words,
)
from pegwright.proof.word_reduction import first_passing_events
from pegwright.rehearsal import find_slips, prepare_history
from pegwright.rehearsal.batched_words import BatchedWords
from pegwright.rehearsal.judge import Judge
from pegwright.rehearsal.shared_words import SharedWords
from pegwright.rehearsal.slip_run import events_of_run, replay_slips
from pegwright.rehearsal.unaffected_parts import UnaffectedParts
from pegwright.structure import structure_of
from testing.programs import KINDS
from testing.slow_rehearsal import random_history


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(7, 10))
def test_the_words_of_a_part_out_of_reach_have_not_changed(seed: int, kind: str) -> None:
    """Any few bands that a run is said not to reach: the fasteners' words of these alone are equal."""
    history = random_history(seed, kind)
    made = prepare_history(history)
    rng = random.Random(seed)
    bands = range(1, history.final.bands + 1)
    keeps = [frozenset(rng.sample(bands, rng.randint(1, min(4, len(bands))))) for _ in range(6)]
    keeps = list(dict.fromkeys(keeps))
    batch = BatchedWords(made.words, keeps)
    intended = [batch.product(root) for reading in made.word_changes for root in reading.roots]
    out_of_reach = 0
    for slip in find_slips(history):
        run = replay_slips(made, slip)
        readings = [run.word_changes.get(at, reading) for at, reading in enumerate(made.word_changes)]
        found = [batch.product(root) for reading in readings for root in reading.roots]
        for at, keep in enumerate(keeps):
            if UnaffectedParts(made, [(keep, keep)]).after(run).held:
                out_of_reach += 1
                now = [v[:, :, at].tolist() for v in found if v[:, :, at].tolist() != [[1, 0], [0, 1]]]
                meant = [v[:, :, at].tolist() for v in intended if v[:, :, at].tolist() != [[1, 0], [0, 1]]]
                assert now == meant
    assert out_of_reach


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(10, 13))
def test_what_is_out_of_reach_is_held(seed: int, kind: str) -> None:
    history = random_history(seed, kind)
    made = prepare_history(history)
    judge = Judge(made)
    for slip in find_slips(history):
        run = replay_slips(made, slip)
        assert judge.unaffected.after(run).held.isdisjoint(prove(structure_of(events_of_run(made, run))).free)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(13, 16))
def test_shared_tables_tell_what_a_structure_of_its_own_does(seed: int, kind: str) -> None:
    """The same bands are in use, and the same are held by paths, with the words of all runs in one table."""
    history = random_history(seed, kind)
    made = prepare_history(history)
    judge = Judge(made)
    for slip in find_slips(history):
        run = replay_slips(made, slip)
        structure = structure_of(events_of_run(made, run))
        words = reduce_words(structure)
        used = bands_in_use(words, first_passing_events(structure))
        key = judge._key(run)
        assert key.twisted == structure.twists.keys()
        shared, first = judge.reduction.reduce(judge._word_passes(run, key), key.twisted)
        assert bands_in_use(shared, first) == used
        for many in (1, len(used)):
            wanted = frozenset(sorted(used)[:many])
            reader = judge.reduction.reader_of(shared)
            assert (
                bands_on_paths(reader, wanted)
                == wanted & find_holding_paths(Reader(words), wanted, (0,))[0].keys()
            )


def test_a_word_of_bands_left_out_holds_nothing_whichever_way_it_is_read() -> None:
    words = SharedWords()
    loop = words.laid_factor(Bight(1, 0), 1)
    batch = BatchedWords(words, [frozenset({1}), frozenset({2})])
    for word in ([loop], [loop ^ 1], [loop ^ 1, loop]):
        value = batch.product(words.word(word))[:, :, 1]
        assert value.tolist() == [[1, 0], [0, 1]]
        assert batch.holds_nothing(words.word(word)).all()


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(16, 22))
def test_a_few_bands_are_decided_as_the_whole_proof_does(seed: int, kind: str) -> None:
    """Those that the shortest paths leave open, for such is what is asked."""
    structure = structure_of(random_history(seed, kind).events)
    whole = prove(structure)
    wanted = frozenset(structure.bands) - bands_on_paths(
        Reader(reduce_words(structure)), frozenset(structure.bands)
    )
    free, left = decide(structure, wanted)
    assert free == wanted.intersection(whole.free)
    assert left == wanted.intersection(whole.unproved)
