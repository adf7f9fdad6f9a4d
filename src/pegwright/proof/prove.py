"""Is every band held? The way from a structure to its proof, cheapest certificates first."""

from __future__ import annotations

import random
from collections.abc import Iterable

from pegwright.proof.carriers import carry
from pegwright.proof.matrices import trivial
from pegwright.proof.shortest import shortened, support, written
from pegwright.proof.slips import first_passed, in_use, reduced
from pegwright.proof.values import Free, HeldByPart, NotProved, Part, Proof, Slide, Verdict
from pegwright.structure import Structure

__all__ = ["prove"]

_TRIES = 6  # orders in which bands are taken away while looking for a part that holds one band
_SEARCHES = 24  # bands for which such a part is looked for


def prove(structure: Structure) -> Proof:
    """Decide for every band whether it is held, with a certificate that `check` accepts.

    In this order: paths of carriers (held, any size); what no fastener uses after all slips (free, any
    size); the words written out, if short enough, and made as short as can be (either); a part of the piece
    that comes off without the band (held). What is left is not proved, with the reason.
    """
    held, steps = carry(structure)
    verdicts: dict[int, Verdict] = dict(held)
    if len(held) == len(structure.bands):
        return Proof(dict(sorted(verdicts.items())), steps)
    passed = first_passed(structure)
    words = reduced(structure)
    used = in_use(words, passed)
    for band in structure.bands:
        if band not in used:
            verdicts[band] = Free()
    open_bands = [band for band in structure.bands if band not in verdicts]
    parts: list[Part] = []
    slides: list[Slide] = []
    if open_bands:
        found, parts, slides = _settle(structure, open_bands)
        verdicts |= found
    taken = any(isinstance(verdict, Free) for verdict in verdicts.values())
    return Proof(
        dict(sorted(verdicts.items())), steps, tuple(parts), words.slips if taken else (), tuple(slides)
    )


def _settle(structure: Structure, bands: list[int]) -> tuple[dict[int, Verdict], list[Part], list[Slide]]:
    """Decide the bands that neither carriers nor slips have settled."""
    apart, flat = reduced(structure), reduced(structure, flat=True)
    letters = written(apart)
    plain = written(flat)
    if letters is None or plain is None:
        return _settle_long(structure, bands)
    short, slides = shortened(letters, apart.letters)
    least, _ = shortened(plain, flat.letters)
    loose = support(short, [band for band, _ in apart.letters])
    tight = support(least, [band for band, _ in flat.letters])
    keep = tuple(sorted(support(plain, [band for band, _ in flat.letters])))
    verdicts: dict[int, Verdict] = {}
    for band in bands:
        if band in tight:
            verdicts[band] = HeldByPart(0)
        elif band not in loose:
            verdicts[band] = Free(len(slides))
        else:
            verdicts[band] = NotProved("twist", tuple(sorted(loose & structure.twists.keys())))
    parts = [Part(keep, "short")] if any(isinstance(v, HeldByPart) for v in verdicts.values()) else []
    needed = any(isinstance(v, Free) for v in verdicts.values())
    return verdicts, parts, slides if needed else []


def _settle_long(
    structure: Structure, bands: list[int]
) -> tuple[dict[int, Verdict], list[Part], list[Slide]]:
    """Look for parts that hold the bands; say why where none is found."""
    flat_use = in_use(reduced(structure, flat=True), first_passed(structure))
    verdicts: dict[int, Verdict] = {}
    parts: list[Part] = []
    for band in bands:
        if band not in flat_use:
            verdicts[band] = NotProved("twist", tuple(sorted(structure.twists)))
    for band in [band for band in bands if band in flat_use][:_SEARCHES]:
        if band in verdicts:
            continue
        part = _part_with(structure, band)
        if part is not None:
            verdicts |= {b: HeldByPart(len(parts)) for b in part.keep if b in bands}
            parts.append(part)
    return verdicts | {b: NotProved("too-long") for b in bands if b not in verdicts}, parts, []


def _part_with(structure: Structure, band: int) -> Part | None:
    """Take bands away as long as some fastener's word stays non-trivial, the wanted band last."""
    for number in range(len(structure.fastenings)):
        for seed in range(_TRIES):
            others = [b for b in structure.bands if b != band]
            random.Random(seed).shuffle(others)
            keep = _thinned(structure, number, others, band)
            if band in keep:
                return Part(tuple(sorted(keep)), "brunnian", number)
    return None


def _thinned(structure: Structure, number: int, others: Iterable[int], band: int) -> set[int]:
    missing: set[int] = set()
    for out in [*others, band]:
        if not trivial(reduced(structure, missing | {out}, flat=True))[number]:
            missing.add(out)
    return set(structure.bands) - missing
