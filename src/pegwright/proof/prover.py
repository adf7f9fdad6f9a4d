"""Is every band held? The way from a structure to its proof: what is quick first, then the least words."""

from __future__ import annotations

from collections.abc import Iterable, Set
from typing import NamedTuple

from pegwright.proof.fastener_words import FastenerWords
from pegwright.proof.holding_paths import bands_on_paths, find_holding_paths
from pegwright.proof.least import MOST_VISITED, Least, certify, make_least
from pegwright.proof.reader import Reader
from pegwright.proof.ropes import Ropes
from pegwright.proof.values import Free, HeldInLeast, LeastWords, NotProved, Proof, Verdict
from pegwright.proof.word_reduction import (
    ReducedWords,
    bands_in_use,
    bands_that_may_cling,
    first_passing_events,
    reduce_words,
)
from pegwright.structure import Structure

__all__ = ["LeastVerdict", "decide", "decide_by_least", "kept_across", "prove"]


_QUICK = 60_000
"""Bands looked at in searches where answers are wanted by the dozen: tenths of a second each."""


class LeastVerdict(NamedTuple):
    """What the least words say of some bands: held, off the words, or (all of them) given up.

    `off` are free where none of the bands in use carries a twist of its own, or the words are apart.
    """

    held: dict[int, int]  # each with a fastening in whose least word it occurs
    off: set[int]
    given_up: set[int]
    certificate: LeastWords | None
    visited: int  # bands looked at in all searches


def prove(structure: Structure, most_visited: int = MOST_VISITED) -> Proof:
    """Decide for every band whether it is held, with a certificate that `check` accepts.

    In this order: what no fastener uses after all cancellations (free, any size); holding paths (held, any
    size); the least words, which decide all that is left. Not proved is what is off the words while a twist
    may cling, what lies across, and what is too much to work out (`most_visited`, as in `make_least`).
    """
    words = reduce_words(structure)
    used = bands_in_use(words, first_passing_events(structure), structure.crossed_bands())
    verdicts: dict[int, Verdict] = {band: Free() for band in structure.bands if band not in used}
    held, steps = find_holding_paths(Reader(words), used)
    verdicts |= held
    left = used - verdicts.keys()
    least = apart = None
    if left:
        said = decide_by_least(words, used, left, most_visited)
        least = said.certificate
        verdicts |= {band: HeldInLeast(fastening) for band, fastening in said.held.items()}
        verdicts |= dict.fromkeys(said.given_up, NotProved("too-long"))
        off, twisted = said.off, tuple(sorted(structure.twists.keys() & used))
        if off and twisted:
            flat = off - bands_that_may_cling(words, used, structure.twists, structure.crossed_bands())
            moved = decide_by_least(words, used, flat, most_visited, apart=True)
            verdicts |= dict.fromkeys(off - moved.off, NotProved("twist", twisted))
            off = moved.off
            apart = moved.certificate if off else None
        verdicts |= dict.fromkeys(off, Free(least=True))
    free = {band for band, verdict in verdicts.items() if isinstance(verdict, Free)}
    verdicts |= {band: NotProved("across", by) for band, by in kept_across(structure, free).items()}
    return Proof(dict(sorted(verdicts.items())), steps, words.cancellations, least, apart)


def decide(structure: Structure, wanted: Set[int]) -> tuple[set[int], set[int]]:
    """Return which of a few bands are free and which can be proved neither way, without certificates.

    The means are those of `prove`, but that the shortest holding paths are taken to be tried already, and
    what lies across in plan is not looked at; and least words that take long are given up.
    """
    words = reduce_words(structure)
    used = bands_in_use(words, first_passing_events(structure), structure.crossed_bands())
    free, left = wanted - used, set(wanted & used)
    if left:
        left -= bands_on_paths(Reader(words), left, 1)
    if left:
        said = decide_by_least(words, used, left, _QUICK)
        left -= said.held.keys()
        off = said.off
        if off and not used.isdisjoint(structure.twists):
            off -= bands_that_may_cling(words, used, structure.twists, structure.crossed_bands())
            off = decide_by_least(words, used, off, _QUICK, apart=True).off
        free, left = free | off, left - off
    return set(free), left


def decide_by_least(
    words: ReducedWords,
    used: Set[int],
    wanted: Set[int],
    most_visited: int = MOST_VISITED,
    *,
    apart: bool = False,
) -> LeastVerdict:
    """Make the fasteners' words least, with the bands in use only, and see which of `wanted` occur.

    With `apart`, each loop of a band that carries a twist of its own has its own letter. What is off the
    words then is free in spite of twists; what is not may be free or held.
    """
    ropes = Ropes()
    roots = ropes.ignore_bands(FastenerWords(ropes, apart=apart).write(words), used)
    least: Least = make_least(ropes, roots, most_visited)
    if least.flows is None:
        return LeastVerdict({}, set(), set(wanted), None, least.visited)
    held: dict[int, int] = {}
    for fastening, word in enumerate(least.words):
        for band in ropes.bands_in(word) & wanted:
            held.setdefault(band, fastening)
    letters = sorted({(band, loop if apart else -1) for band, loop in words.letters if band in used})
    certificate = certify(ropes, least._replace(flows={}) if apart else least, letters)
    return LeastVerdict(held, set(wanted) - held.keys(), set(), certificate, least.visited)


def kept_across(structure: Structure, free: Iterable[int]) -> dict[int, tuple[int, ...]]:
    """Return which bands that are free by their words may yet be kept, and by which that lie across them.

    A band that comes off keeps none; one that is kept stays, and may keep others (see `structure.crossings`).
    """
    loose = set(free)
    kept: dict[int, tuple[int, ...]] = {}
    while True:
        found = {band: structure.across[band] - loose for band in loose & structure.across.keys()}
        more = {band: tuple(sorted(by)) for band, by in found.items() if by}
        if not more:
            return kept
        kept |= more
        loose -= more.keys()
