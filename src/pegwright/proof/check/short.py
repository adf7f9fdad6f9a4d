"""Short words written out: parts that hold by themselves; and what is free."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence
from itertools import combinations

from pegwright.proof.check.link import Link, Product, cyclic, need, push
from pegwright.proof.values import Free, Part, Proof, Slide

Letter = tuple[int, int, int]  # band, loop (−1: all its loops alike), sign
Words = list[list[Letter]]
_MOST_BANDS, _MOST_LETTERS = 10, 6000  # of words written out


def _inverse(letter: Letter) -> Letter:
    return letter[0], letter[1], -letter[2]


def _bands(words: Words) -> set[int]:
    return {letter[0] for word in words for letter in word}


def _written(
    link: Link, roots: Sequence[Product], keep: Collection[int], slides: Sequence[Slide], *, apart: bool
) -> Words:
    """Return products after the slides, cyclically reduced, written out with the bands of `keep` only."""
    known: dict[int, list[Letter]] = {}

    def write(word: Product) -> list[Letter]:
        out: list[Letter] = []
        for factor in word:
            band, loop, _ = link.cores[factor >> 1]
            if band in keep:
                before = [letter for inner in link.along(factor) for letter in known[inner]]
                middle = (band, loop if apart else -1, 1 - 2 * (factor & 1))
                for letter in [*before, middle, *map(_inverse, reversed(before))]:
                    push(out, letter, _inverse(letter))
                need(len(out) <= _MOST_LETTERS, "a word is too long to write out")
        return out

    waiting, needed = [factor for root in roots for factor in root], set[int]()
    while waiting:
        factor = waiting.pop()
        fresh = set(link.along(factor)) - needed if link.band(factor) in keep else set[int]()
        needed |= fresh
        waiting += [f for inner in fresh for f in link.words[inner]]
    for number in sorted(needed):
        known[number] = write(link.words[number])
    words = [write(root) for root in roots]
    for by, loop, sign, moving in slides:
        need(abs(sign) == 1 and by not in moving, "a band cannot slide along itself")
        y: Letter = (by, loop, sign)
        for number, word in enumerate(words):
            words[number] = []
            for new in (n for x in word for n in ((y, x, _inverse(y)) if x[0] in moving else (x,))):
                push(words[number], new, _inverse(new))
    return [cyclic(word, _inverse) for word in words]


def check_part(link: Link, part: Part, roots: list[Product], carrying: set[int], held: set[int]) -> None:
    """Check that the words of a part are of least length and have the bands said to be held."""
    before = _written(link, roots, carrying.union(part.keep), (), apart=False)
    words = _written(link, roots, part.keep, part.slides, apart=False)
    need(len(part.keep) <= _MOST_BANDS and _bands(before) <= set(part.keep), "a part does not stand alone")
    bands = _bands(words)
    need(held <= bands <= set(part.keep), "a part does not hold its bands")
    pairs = Counter(pair for word in words for pair in zip(word, word[1:] + word[:1], strict=True))
    for y in bands:  # does any set of bands, slid along y, leave fewer y's?
        now = sum(many for (one, _), many in pairs.items() if one[0] == y)
        others = sorted(bands - {y})
        for moving in (c for size in range(1, len(others)) for c in combinations(others, size)):
            cut = 0
            for (one, two), many in pairs.items():
                leaves = one[2] < 0 if one[0] == y else one[0] in moving
                enters = two[2] > 0 if two[0] == y else two[0] in moving
                cut += many * (leaves != enters)
            need(cut >= now, "a part's words are not of least length")


def check_free(link: Link, proof: Proof) -> None:
    """Check every band said to be free: its slips and slides, and that nothing uses it then."""
    claims = {band: verdict for band, verdict in proof.verdicts.items() if isinstance(verdict, Free)}
    need(proof.slips == (tuple(link.slips) if claims else ()), "these are not the slips to be taken")
    used = _in_use(link) if claims else {}
    slid = {band for band, verdict in claims.items() if verdict.slid}
    need(slid == claims.keys() & used.keys(), "a band is still used")
    need(not slid or link.twisted.isdisjoint(used), "a slide goes past a twist")
    words = _written(link, link.roots, used, proof.slides, apart=True) if slid else []
    need(slid.isdisjoint(_bands(words)), "a band is still held")


def _in_use(link: Link) -> dict[int, int]:
    """Return the bands that a fastener uses, directly or through what it uses (why: see `slips.in_use`)."""
    used: dict[int, int] = {}
    seen: set[int] = set()
    waiting = [factor for root in link.roots for factor in root]
    while waiting:
        factor = waiting.pop() & ~1
        if factor in seen:
            continue
        seen.add(factor)
        band, trail = link.band(factor), link.along(factor)
        if used.setdefault(band, factor) != factor:
            first = link.along(used[band])
            trail = [] if first == trail else first + trail
        elif trail and link.made[trail[0]] < link.passed[band]:
            continue  # it rides back out of all it went through
        waiting += [inner for word in trail for inner in link.words[word]]
    return used
