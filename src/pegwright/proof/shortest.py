"""Short words written out: their least length under partial conjugations, exactly.

A partial conjugation x_i → y x_i y⁻¹ (i in a set S) leaves all letters in number but y; the y's left are
the edges of the Whitehead graph cut when S and the entries of y lie on one side and the exits of y on the
other. So the best S for y is a minimum cut (Ford & Fulkerson 1956), and a tuple of cyclic words is of least
length when no y has a cut below its number of letters (peak reduction: Collins 1989, McCool 1986).
"""

from __future__ import annotations

from collections import Counter, deque
from collections.abc import Container, Mapping, Sequence
from functools import lru_cache

from pegwright.proof.slips import Reduced
from pegwright.proof.values import Slide

__all__ = ["LETTERS", "shortened", "support", "written"]

LETTERS = 6000
"""Words are written out up to this many letters in all."""

Letters = tuple[int, ...]  # 2 i for letter i of `Reduced.letters`, 2 i + 1 for its inverse


def written(
    words: Reduced,
    roots: Sequence[Sequence[int]],
    keep: Container[int],
    *,
    flat: bool = False,
    most: int = LETTERS,
) -> list[Letters] | None:
    """Write products out as cyclic words with the bands of `keep` only; None if of over `most` letters.

    With `flat`, all loops of a band have the same letter, that of the first one met.
    """
    first: dict[int, int] = {}
    needed: set[int] = set()
    waiting = [factor for root in roots for factor in root]
    while waiting:
        core = waiting.pop() >> 1
        for inner in _trail(words, core) if words.letters[words.cores[core][0]][0] in keep else ():
            if inner not in needed:
                needed.add(inner)
                waiting += words.words[inner]
    known: dict[int, Letters] = {}

    def write(factors: Sequence[int]) -> Letters | None:
        out: list[int] = []
        for factor in factors:
            letter = words.cores[factor >> 1][0]
            band = words.letters[letter][0]
            if band in keep:
                letter = first.setdefault(band, letter) if flat else letter
                around = [known[inner] for inner in _trail(words, factor >> 1)]
                for letters in around:
                    _append(out, letters)
                _append(out, (2 * letter + (factor & 1),))
                for letters in reversed(around):
                    _append(out, _inverse(letters))
                if len(out) > most:
                    return None
        return tuple(out)

    for number in sorted(needed):
        letters = write(words.words[number])
        if letters is None:
            return None
        known[number] = letters
    found = [write(root) for root in roots]
    cyclic = [_cyclic(word) for word in found if word is not None]
    return cyclic if len(cyclic) == len(roots) and sum(map(len, cyclic)) <= most else None


def _trail(words: Reduced, core: int) -> list[int]:
    found, trail = [], words.cores[core][1]
    while trail:
        word, trail = words.trails[trail]
        found.append(word)
    return found


def _append(out: list[int], letters: Sequence[int]) -> None:
    for letter in letters:
        if out and out[-1] == letter ^ 1:
            out.pop()
        else:
            out.append(letter)


def _inverse(letters: Sequence[int]) -> Letters:
    return tuple(letter ^ 1 for letter in reversed(letters))


def _cyclic(letters: Sequence[int]) -> Letters:
    low, high = 0, len(letters)
    while high - low > 1 and letters[low] == letters[high - 1] ^ 1:
        low, high = low + 1, high - 1
    return tuple(letters[low:high])


def support(words: Sequence[Letters], letters: Sequence[tuple[int, int]]) -> set[int]:
    """Return the bands that occur; `letters[i]` is the (band, loop) of letter i."""
    return {letters[letter >> 1][0] for word in words for letter in word}


def shortened(
    words: Sequence[Letters], letters: Sequence[tuple[int, int]]
) -> tuple[list[Letters], list[Slide]]:
    """Slide bands along one another while that shortens the words; return them and the slides."""
    used = sorted({letter >> 1 for word in words for letter in word})
    place = {old: new for new, old in enumerate(used)}
    renamed = tuple(tuple(2 * place[f >> 1] + (f & 1) for f in word) for word in words)
    owners: dict[int, int] = {}
    bands = tuple(owners.setdefault(letters[old][0], len(owners)) for old in used)
    short, slides = _shortened(renamed, bands)
    name = list(owners)
    back = [tuple(2 * used[f >> 1] + (f & 1) for f in word) for word in short]
    by = [(-name[bands[y >> 1]] if y & 1 else name[bands[y >> 1]], sliding) for y, sliding in slides]
    return back, [Slide(band, tuple(sorted(name[other] for other in sliding))) for band, sliding in by]


@lru_cache(maxsize=8192)
def _shortened(
    words: tuple[Letters, ...], bands: tuple[int, ...]
) -> tuple[list[Letters], list[tuple[int, set[int]]]]:
    """Do the same with letters and bands named by their order: like parts of a piece have like words."""
    now = [_cyclic(word) for word in words]
    slides: list[tuple[int, set[int]]] = []
    while True:
        beside = Counter(pair for word in now for pair in zip(word, word[1:] + word[:1], strict=True))
        often = Counter(letter >> 1 for word in now for letter in word)
        tried = (_best(beside, bands, y, often[y >> 1]) for k in sorted(often) for y in (2 * k, 2 * k + 1))
        slide = next(filter(None, tried), None)
        if slide is None:
            return now, slides
        slides.append(slide)
        now = [slid(word, bands, *slide) for word in now]


def slid(word: Letters, bands: Sequence[int], y: int, sliding: set[int]) -> Letters:
    """Return the cyclic word with x → y x y⁻¹ for all letters of the bands sliding."""
    out: list[int] = []
    for letter in word:
        _append(out, (y, letter, y ^ 1) if bands[letter >> 1] in sliding else (letter,))
    return _cyclic(out)


def _best(
    beside: Mapping[tuple[int, int], int], bands: Sequence[int], y: int, total: int
) -> tuple[int, set[int]] | None:
    """Return y and the bands whose conjugation by y leaves fewest y's, if that is fewer than the `total` now.

    `beside` counts how often a letter stands right before another.
    """
    own, entry, leave = bands[y >> 1], -1, -2
    capacity: dict[int, dict[int, int]] = {end: {} for end in (entry, leave, *bands)}
    for (here, there), count in beside.items():
        one, two = bands[here >> 1], bands[there >> 1]
        if one == own:
            one = entry if here == y ^ 1 else leave
        if two == own:
            two = entry if there == y else leave
        if one != two:
            capacity[one][two] = capacity[one].get(two, 0) + count
            capacity[two][one] = capacity[two].get(one, 0) + count
    # Ways over one band, or none, are the most by far and need no search.
    flow = 0
    for node, room in list(capacity[entry].items()):
        narrow = room if node == leave else min(room, capacity[node].get(leave, 0))
        if narrow:
            flow += narrow
            for way in ((entry, node), (node, leave)) if node != leave else ((entry, leave),):
                capacity[way[0]][way[1]] -= narrow
                capacity[way[1]][way[0]] += narrow
    while flow < total:
        before = _search(capacity, entry, leave)
        if leave not in before:
            return y, {band for band in before if band >= 0}
        node = leave
        narrow = total
        while node != entry:
            narrow = min(narrow, capacity[before[node]][node])
            node = before[node]
        node = leave
        while node != entry:
            capacity[before[node]][node] -= narrow
            capacity[node][before[node]] += narrow
            node = before[node]
        flow += narrow
    return None


def _search(capacity: dict[int, dict[int, int]], entry: int, leave: int) -> dict[int, int]:
    before = {entry: entry}
    queue = deque([entry])
    while queue:
        node = queue.popleft()
        for other, room in capacity[node].items():
            if room and other not in before:
                before[other] = node
                if other == leave:
                    return before
                queue.append(other)
    return before
