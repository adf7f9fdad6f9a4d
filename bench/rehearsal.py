"""The rehearsal: how fast the slips of a strip are rehearsed, how it grows, how well a slip is found."""

from __future__ import annotations

import random
import time
from collections import Counter

from bench.report import Figure
from examples.pieces import PIECES
from pegwright.loom import History, board, replay
from pegwright.pattern import Pattern, expand
from pegwright.proof import prove
from pegwright.rehearsal import Outcome, Rehearsal, Surgery, rehearse, rehearse_pairs
from pegwright.rehearsal.diagnosis import answers_of
from pegwright.structure import structure_of
from tests.fit.rosettes import rosettes
from tests.rehearsal.twin import slow_run

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
    figures = _strip(2 if quick else 6)
    figures += _growth((1, 2) if quick else (1, 2, 4, 6, 8))
    figures += _pairs(50 if quick else 400)
    figures += _diagnoses(_DEMOS[:1] if quick else _DEMOS, 40 if quick else 10_000)
    return figures


def _history(pattern: Pattern) -> History:
    return replay(board(pattern.loom), expand(pattern).doings)


def _strip(motifs: int) -> list[Figure]:
    pattern = rosettes(motifs)
    history = _history(pattern)
    began = time.perf_counter()
    told = rehearse(pattern, history, settle=0, processes=2)
    took = time.perf_counter() - began
    busy = time.process_time()
    alone = rehearse(pattern, history, settle=0)
    busy = time.process_time() - busy
    results = Counter(outcome.result for outcome in told.outcomes)
    bands = history.final.bands
    figures = [
        Figure(f"slips of a strip of {bands} bands", told.tried, "slips"),
        Figure("all of them, two processes", took, "s", "< 5 s", took < 5),
        Figure("the same on one, processor time", busy, "s"),
        Figure(
            "two processes agree with one",
            float(told.outcomes == alone.outcomes),
            "",
            "1",
            told.outcomes == alone.outcomes,
        ),
        Figure("different structures judged", told.judged, "structures"),
        *(Figure(f"slips that come to {name}", number, "slips") for name, number in sorted(results.items())),
    ]
    return figures + _against_naive(history, told, busy / told.tried)


def _against_naive(history: History, told: Rehearsal, quick_s: float) -> list[Figure]:
    """Make every move of a sample of slips afresh and prove the whole: the same bands must fall.

    Quick verdicts speak of the words alone, proved ones of what lies across in plan too.
    """
    known = {outcome.slip: outcome for outcome in told.outcomes}
    sample = random.Random(3).sample(sorted(told.chances, key=str), 30)
    wrong = 0
    spent = time.process_time()
    for slip in sample:
        spots = history.board.spots if slip in told.proved else None
        proof = prove(structure_of(slow_run(history, slip).events, spots))
        outcome = known.get(slip, Outcome(slip, 0, "harmless"))
        fell = {band for band in proof.free if band <= history.final.bands}
        wrong += not set(outcome.falls) <= fell <= {*outcome.falls, *outcome.unproved}
    each = (time.process_time() - spent) / len(sample)
    return [
        Figure("disagreements with naive replay and a full proof", wrong, "slips", "0", wrong == 0),
        Figure("naive replay and full proof", each * 1000, "ms a slip"),
        Figure("incremental replay, quick verdict", quick_s * 1000, "ms a slip"),
    ]


def _growth(sizes: tuple[int, ...]) -> list[Figure]:
    figures = []
    for motifs in sizes:
        pattern = rosettes(motifs)
        history = _history(pattern)
        spent = time.process_time()
        told = rehearse(pattern, history, settle=0)
        each = (time.process_time() - spent) / told.tried
        bands = history.final.bands
        figures.append(Figure(f"{bands} bands, {told.tried} slips, each", each * 1000, "ms"))
    return figures


def _pairs(count: int) -> list[Figure]:
    pattern = rosettes(2)
    told = rehearse(pattern, _history(pattern), settle=0)
    spent = time.process_time()
    pairs = rehearse_pairs(told, count=count, seed=1)
    each = (time.process_time() - spent) / max(1, pairs.sampled)
    return [
        Figure("pairs of slips sampled", pairs.sampled, "pairs"),
        Figure("pairs that bring down what neither does alone", len(pairs.worse), "pairs"),
        Figure("a pair", each * 1000, "ms"),
    ]


def _diagnoses(names: tuple[str, ...], most: int) -> list[Figure]:
    figures = []
    found = harmful = 0
    for name in names:
        pattern = PIECES[name]()
        told = rehearse(pattern, _history(pattern), settle=0 if most < 100 else 10_000, processes=2)
        surgery = Surgery(told)
        worse = [outcome for outcome in told.outcomes if outcome.harmful]
        sample = random.Random(5).sample(worse, min(most, len(worse)))
        right = sum(_is_found(surgery, outcome) for outcome in sample)
        figures.append(
            Figure(
                f"{name}: harmful slips found in 5 questions",
                100 * right / len(sample),
                f"% of {len(sample)}",
            )
        )
        found, harmful = found + right, harmful + len(sample)
    share = 100 * found / harmful
    return [*figures, Figure("harmful slips found in 5 questions", share, "%", ">= 90 %", share >= 90)]


def _is_found(surgery: Surgery, outcome: Outcome) -> bool:
    """Diagnose a slip where it first shows, the maker having compared each step: is it the likeliest left?

    Slips that leave the very same loops in the very same places count as one.
    """
    sign = outcome.first or outcome.close
    steps = len(surgery.rehearsal.history.done)
    at = max(outcome.slip.at + outcome.slip.replaces - 1, steps - 1 if sign is None else sign.at)
    stuck = sign is not None and sign.how == "refused"
    opened = surgery.open(at, at - 1, stuck)
    case = next((case for case in opened.cases if case.outcome is outcome), None)
    if case is None:
        return False
    likeliest = answers_of(opened, case).likely[0].outcome
    return any(c.outcome is likeliest and c.changed == case.changed for c in opened.cases)
