"""Proof against knot theory on random programs with every kind of move, and on regular pieces with a slip.

The same slip is also judged in a short piece and in a longer one of the same technique.
"""

from __future__ import annotations

import time
from itertools import count, islice

from bench.report import Figure
from pegwright.variants import TECHNIQUES
from testing.oracle.agreement import Judgement, judge
from testing.programs import KINDS, fastened, program
from testing.short_twins import judge_twins
from testing.slipped_pieces import slipped_piece

_SEED = 20_000  # other programs than the tests' own


def run(quick: bool) -> list[Figure]:
    """Judge 1,000 programs of each kind and 2,000 slips (`quick`: 60 of each); count what disagrees."""
    each = 60 if quick else 1000
    figures: list[Figure] = []
    judged: list[Judgement] = []
    start = time.perf_counter()
    for kind in KINDS:
        made = (program(seed, kind) for seed in count(_SEED))
        found = [judge(p, seed=k) for k, p in enumerate(islice(filter(fastened, made), each))]
        wrong = sum(not j.agrees for j in found)
        figures.append(Figure(f"disagreements, {kind}", wrong, f"of {len(found)}", "0", wrong == 0))
        judged += found
    made = filter(None, map(slipped_piece, count(_SEED)))
    found = [judge(p, seed=k) for k, p in enumerate(islice(made, 60 if quick else 2000))]
    wrong = sum(not j.agrees for j in found)
    figures.append(
        Figure("disagreements, regular pieces with a slip", wrong, f"of {len(found)}", "0", wrong == 0)
    )
    judged += found
    twins = [one for name in TECHNIQUES for one in judge_twins(name, 3, 8, 1 if quick else 40)]
    figures.append(
        _none("slips judged otherwise in a longer piece", sum(bool(one.otherwise) for one in twins))
    )
    figures.append(Figure("slips in both lengths", len(twins)))
    spent = time.perf_counter() - start
    bands = sum(j.bands for j in judged)
    figures += [
        Figure("programs judged", len(judged)),
        _none("proved held, split off by a diagram", sum(len(j.not_held) for j in judged)),
        _none("proved free, not split off", sum(len(j.not_free) for j in judged)),
        _none("drawings with linked bands", sum(bool(j.linked) for j in judged)),
        _none("drawings threaded otherwise than the record", sum(bool(j.unthreaded) for j in judged)),
        Figure("bands not proved either way", 100 * sum(len(j.unproved) for j in judged) / bands, "%"),
        Figure("a program", 1000 * spent / len(judged), "ms"),
    ]
    return figures


def _none(name: str, count: int) -> Figure:
    return Figure(name, count, "", "0", count == 0)
