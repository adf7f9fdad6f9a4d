"""The rehearsal: how fast the slips of a strip are rehearsed, how it grows, how well a slip is found.

Each figure goes to standard error as soon as it is measured. Processor time tells what the work costs where
others work on the machine too.
"""

from __future__ import annotations

import os
import random
import time
from collections import Counter
from collections.abc import Iterator

from bench.real import told
from bench.report import Figure
from examples.pieces import PIECES
from pegwright.loom import History, replay_pattern
from pegwright.pattern import Pattern
from pegwright.proof import prove
from pegwright.rehearsal import Diagnostician, Outcome, Rehearsal, answer_as_maker, rehearse, rehearse_pairs
from pegwright.structure import structure_of
from testing.rosettes import rosettes
from testing.slow_rehearsal import slow_run

_DEMOS = (
    "ebb-line",
    "twin-hulls",
    "riding-lights",
    "herring-tail",
    "slack-water-mat",
    "lobster-pot",
    "buoy-line",
)


def run(quick: bool) -> list[Figure]:
    """Rehearse the strip and the demo pieces; on less of them when quick."""
    return told(_all(quick))


def _all(quick: bool) -> Iterator[Figure]:
    yield from _strip(2 if quick else 6)
    yield from _growth((1, 2) if quick else (1, 2, 4, 6, 8))
    yield from _pairs(50 if quick else 400)
    yield from _diagnoses(_DEMOS[:1] if quick else _DEMOS, 40 if quick else 10_000)


def _history(pattern: Pattern) -> History:
    return replay_pattern(pattern)


def _busy() -> float:
    """Return the processor time of this process and of those it has waited for, in s."""
    spent = os.times()
    return spent.user + spent.system + spent.children_user + spent.children_system


def _strip(motifs: int) -> Iterator[Figure]:
    pattern = rosettes(motifs)
    history = _history(pattern)
    if hasattr(os, "getloadavg"):
        yield Figure("others at work on the machine (load, 1 minute)", os.getloadavg()[0])
    began, busy = time.perf_counter(), _busy()
    found = rehearse(pattern, history, settle=0, processes=2)
    took, both = time.perf_counter() - began, _busy() - busy
    yield Figure(f"slips of a strip of {history.final.bands} bands", found.tried, "slips")
    yield Figure("all of them, two processes", took, "s", "< 5 s", took < 5)
    yield Figure("processor time of the two", both, "s")
    busy = _busy()
    alone = rehearse(pattern, history, settle=0)
    busy = _busy() - busy
    same = found.outcomes == alone.outcomes
    yield Figure("the same on one, processor time", busy, "s")
    yield Figure("two processes agree with one", float(same), "", "1", same)
    yield Figure("different structures judged", found.judged, "structures")
    for name, number in sorted(Counter(outcome.result for outcome in found.outcomes).items()):
        yield Figure(f"slips that come to {name}", number, "slips")
    yield from _against_naive(history, found, busy / found.tried)


def _against_naive(history: History, found: Rehearsal, quick_s: float) -> Iterator[Figure]:
    """Make every move of a sample of slips afresh and prove the whole: the same bands must fall.

    Quick verdicts speak of the words alone, proved ones of what lies across in plan too.
    """
    known = {outcome.slip: outcome for outcome in found.outcomes}
    sample = random.Random(3).sample(sorted(found.chances, key=str), 30)
    wrong = 0
    spent = time.process_time()
    for slip in sample:
        spots = history.board.spots if slip in found.proved else None
        proof = prove(structure_of(slow_run(history, slip).events, spots))
        outcome = known.get(slip, Outcome(slip, 0, "harmless"))
        fell = {band for band in proof.free if band <= history.final.bands}
        wrong += not set(outcome.falls) <= fell <= {*outcome.falls, *outcome.unproved}
    each = (time.process_time() - spent) / len(sample)
    yield Figure("disagreements with naive replay and a full proof", wrong, "slips", "0", wrong == 0)
    yield Figure("naive replay and full proof", each * 1000, "ms a slip")
    yield Figure("incremental replay, verdict, top spots proved", quick_s * 1000, "ms a slip")


def _growth(sizes: tuple[int, ...]) -> Iterator[Figure]:
    for motifs in sizes:
        pattern = rosettes(motifs)
        history = _history(pattern)
        spent = time.process_time()
        found = rehearse(pattern, history, settle=0)
        each = (time.process_time() - spent) / found.tried
        yield Figure(f"{history.final.bands} bands, {found.tried} slips, each", each * 1000, "ms")


def _pairs(count: int) -> Iterator[Figure]:
    pattern = rosettes(2)
    found = rehearse(pattern, _history(pattern), settle=0)
    spent = time.process_time()
    pairs = rehearse_pairs(found, count=count, seed=1)
    each = (time.process_time() - spent) / max(1, pairs.sampled)
    yield Figure("pairs of slips sampled", pairs.sampled, "pairs")
    yield Figure("pairs that bring down what neither does alone", len(pairs.worse), "pairs")
    yield Figure("a pair", each * 1000, "ms")


def _diagnoses(names: tuple[str, ...], most: int) -> Iterator[Figure]:
    right = harmful = 0
    for name in names:
        pattern = PIECES[name]()
        rehearsed = rehearse(pattern, _history(pattern), settle=0 if most < 100 else 10_000, processes=2)
        diagnostician = Diagnostician(rehearsed)
        worse = [outcome for outcome in rehearsed.outcomes if outcome.harmful]
        sample = random.Random(5).sample(worse, min(most, len(worse)))
        hits = sum(_is_found(diagnostician, outcome) for outcome in sample)
        share = 100 * hits / len(sample)
        yield Figure(
            f"{name}: harmful slips found in 5 questions",
            share,
            f"% of {len(sample)}",
            ">= 90 %",
            share >= 90,
        )
        right, harmful = right + hits, harmful + len(sample)
    share = 100 * right / harmful
    yield Figure("harmful slips found in 5 questions", share, f"% of {harmful}", ">= 90 %", share >= 90)


def _is_found(diagnostician: Diagnostician, outcome: Outcome) -> bool:
    """Diagnose a slip where it first shows, the maker having compared each step: is it the likeliest left?

    Slips that leave the very same loops in the very same places count as one.
    """
    sign = outcome.first or outcome.close
    steps = len(diagnostician.rehearsal.history.moves)
    at = max(outcome.slip.at + outcome.slip.replaces - 1, steps - 1 if sign is None else sign.at)
    stuck = sign is not None and sign.how == "refused"
    opened = diagnostician.diagnose(at, at - 1, stuck)
    case = next((case for case in opened.cases if case.outcome is outcome), None)
    if case is None:
        return False
    likeliest = answer_as_maker(opened, case).likely[0].outcome
    return any(c.outcome is likeliest and c.changed == case.changed for c in opened.cases)
