"""The same slip in a short piece and in its long twin: a verdict must not hang on the number of repeats.

Bands are told apart by the move that lays them, slips by what is done in place of what; both only where
such a move is made once. What lies on the pegs of the short piece's last repeat is left out: there the long
one goes on.
"""

from __future__ import annotations

import random
import re
from collections import Counter
from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

from pegwright.loom import Fastened, History, Laid, print_move, replay_pattern
from pegwright.pattern import named_pegs
from pegwright.rehearsal import Slip, find_slips
from pegwright.variants import TECHNIQUES
from testing.slow_rehearsal import slow_run, slow_verdict


class Twins(NamedTuple):
    """A slip in both: how many bands were compared, how many long before, and those judged otherwise."""

    technique: str
    slip: str
    compared: int
    long_bands: int
    otherwise: tuple[str, ...]


def judge_twins(name: str, short: int, long: int, most: int, seed: int = 0) -> Iterator[Twins]:
    """Judge up to `most` slips of a technique that both lengths have, drawn at random."""
    one, other = _worked(name, short), _worked(name, long)
    there, here = _slips(other), _slips(one)
    end = max(map(_furthest, _lines(one))) * (short - 1) // short
    keys = sorted(
        key
        for key in set(here) & set(there)
        if _furthest(key) <= end and _touching(one, here[key]) == _touching(other, there[key])
    )
    random.Random(f"{name} {seed}").shuffle(keys)
    for key in keys[:most]:
        events, long_events = (slow_run(one, here[key]).events, slow_run(other, there[key]).events)
        if not any(isinstance(event, Fastened) for event in events):
            continue
        verdict, long_verdict = slow_verdict(events), slow_verdict(long_events)
        bands, long_bands = _bands(one), _bands(other)
        common = [line for line in bands if line in long_bands and _furthest(line) <= end]
        yield Twins(
            name,
            key,
            len(common),
            other.final.bands,
            tuple(
                line
                for line in common
                if _said(bands[line], verdict) != _said(long_bands[line], long_verdict)
            ),
        )


@cache
def _worked(name: str, repeats: int) -> History:
    return replay_pattern(TECHNIQUES[name].make(repeats))


def _lines(history: History) -> list[str]:
    return [print_move(done.move) for done in history.moves]


def _furthest(line: str) -> int:
    """Return the highest number of a peg that a move names."""
    return max((int(number) for number in re.findall(r"\b[A-Z]+(\d+)", line)), default=0)


def _touching(history: History, slip: Slip) -> set[str]:
    """Return all moves at the pegs where a slip is made: the place is the same where these are."""
    pegs = set(named_pegs(history.moves[slip.at].move))
    return {print_move(done.move) for done in history.moves if pegs & set(named_pegs(done.move))}


def _slips(history: History) -> dict[str, Slip]:
    """Return the slips by what is done in place of which move, of moves that are made once."""
    lines = _lines(history)
    often = Counter(lines)
    return {
        f"{slip.kind}: {lines[slip.at]} ({slip.replaces}) → {', '.join(map(print_move, slip.moves))}": slip
        for slip in find_slips(history)
        if often[lines[slip.at]] == 1 and not slip.about
    }


def _bands(history: History) -> dict[str, int]:
    """Return the bands by the move that lays them, of moves that are made once."""
    lines = _lines(history)
    often = Counter(lines)
    return {
        lines[k]: event.band
        for k, done in enumerate(history.moves)
        if often[lines[k]] == 1
        for event in done.events
        if isinstance(event, Laid)
    }


def _said(band: int, verdict: tuple[set[int], set[int]]) -> str:
    free, open_ = verdict
    return "free" if band in free else "open" if band in open_ else "held"
