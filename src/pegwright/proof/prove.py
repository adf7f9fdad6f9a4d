"""Is every band held? The way from a structure to its proof, cheapest certificates first."""

from __future__ import annotations

from collections.abc import Iterable, Set

from pegwright.proof.carriers import carried, carry
from pegwright.proof.parts import hold_by_parts
from pegwright.proof.reader import Reader
from pegwright.proof.shortest import shortened, support, written
from pegwright.proof.slips import Reduced, first_passed, in_use, reduced
from pegwright.proof.values import Free, HeldByPart, NotProved, Proof, Slide, Verdict
from pegwright.structure import Structure

__all__ = ["decide", "kept_across", "prove"]

_MOST_FOR_A_REASON = 1500
"""Letters that are worked out only to say why nothing is proved; with 4,000 that took seconds."""


def prove(structure: Structure) -> Proof:
    """Decide for every band whether it is held, with a certificate that `check` accepts.

    In this order: what no fastener uses after all slips (free, any size); paths of carriers (held, any
    size); the words written out and shortened by slides, if they are short enough (free); parts of few bands
    (held). What is left is not proved, with the reason.
    """
    words = reduced(structure)
    reader = Reader(words)
    used = in_use(words, first_passed(structure))
    held, steps = carry(reader, used)
    verdicts: dict[int, Verdict] = {band: Free() for band in structure.bands if band not in used}
    verdicts |= held
    left = [band for band in structure.bands if band not in verdicts]
    slides: tuple[Slide, ...] = ()
    # Bands ride along each other's strands only where these lie flat.
    if left and used.isdisjoint(structure.twists):
        off, slides = _slide_off(words, used, left)
        verdicts |= dict.fromkeys(off, Free(slid=True))
        left = [band for band in left if band not in off]
    by_part, parts, steps = hold_by_parts(reader, left, used, steps) if left else ({}, [], steps)
    verdicts |= {band: HeldByPart(part) for band, part in by_part.items()}
    left = [band for band in left if band not in by_part]
    if left:
        verdicts |= _open(structure, words, used, left)
    free = {band for band, verdict in verdicts.items() if isinstance(verdict, Free)}
    verdicts |= {band: NotProved("across", by) for band, by in kept_across(structure, free).items()}
    if not any(isinstance(verdict, Free) and verdict.slid for verdict in verdicts.values()):
        slides = ()
    return Proof(dict(sorted(verdicts.items())), steps, tuple(parts), words.slips, slides)


def decide(structure: Structure, wanted: Set[int]) -> tuple[set[int], set[int]]:
    """Return which of a few bands are free and which can be proved neither way, without certificates.

    The means are those of `prove`, but that the shortest paths of carriers are taken to be tried already, and
    what lies across in plan is not looked at.
    """
    words = reduced(structure)
    reader = Reader(words)
    used = in_use(words, first_passed(structure))
    free, left = wanted - used, set(wanted & used)
    if left:
        left -= carried(reader, left, 1)
    if left and used.isdisjoint(structure.twists):
        off, _ = _slide_off(words, used, sorted(left))
        free, left = free | off, left - off
    if left:
        left -= hold_by_parts(reader, sorted(left), used, ())[0].keys()
    return set(free), left


def kept_across(structure: Structure, free: Iterable[int]) -> dict[int, tuple[int, ...]]:
    """Return which bands that are free by their words may yet be kept, and by which that lie across them.

    A band that comes off keeps none; one that is kept stays, and may keep others (see `structure.plan`).
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


def _slide_off(words: Reduced, used: set[int], left: list[int]) -> tuple[set[int], tuple[Slide, ...]]:
    """Return which bands come off by slides, and the slides, if the words are short enough to see."""
    letters = written(words, words.roots, used)
    if letters is None:
        return set(), ()
    short, slides = shortened(letters, words.letters)
    off = set(left) - support(short, words.letters)
    return off, tuple(slides) if off else ()


def _open(structure: Structure, words: Reduced, used: set[int], left: list[int]) -> dict[int, NotProved]:
    """Say why nothing is proved: the words let the band go only past a twist, or they are too long."""
    twisted = tuple(sorted(structure.twists.keys() & used))
    flat = in_use(reduced(structure, flat=True), first_passed(structure))
    letters = written(words, words.roots, used, flat=True, most=_MOST_FOR_A_REASON)
    if letters is not None:
        flat &= support(shortened(letters, [(band, -1) for band, _ in words.letters])[0], words.letters)
    return {band: NotProved("too-long") if band in flat else NotProved("twist", twisted) for band in left}
