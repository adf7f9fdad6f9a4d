"""What the words of a move say: its pegs, directions and numbers, and which steps are done again."""

from __future__ import annotations

from collections.abc import Sequence

from pegwright.listening.draft_sayings import Saying
from pegwright.listening.draft_words import DraftWord, HeardPeg

TAIL = 9
"""Words after the last sign of a saying in which its direction may still be said."""
LONG_TAIL = 60
"""The same where many pegs may be named."""
Way = frozenset[str]


def tail_of(saying: Saying, words: Sequence[DraftWord], follows: int) -> tuple[DraftWord, ...]:
    """Return the words after a saying up to the end of its sentence, or where the next saying begins."""
    last = saying.first + len(saying.words)
    end = last
    most = LONG_TAIL if saying.kind in ("cord", "need") else TAIL
    while end < min(follows, last + most, len(words)) and not words[end].begins:
        end += 1
    return tuple(words[last:end])


def lead_of(saying: Saying, words: Sequence[DraftWord], before: int) -> tuple[DraftWord, ...]:
    """Return the words of the sentence before its first sign."""
    first = saying.first
    while first > max(before, saying.first - TAIL) and not words[first].begins:
        first -= 1
    return tuple(words[first : saying.first])


def signs_in(words: Sequence[DraftWord], least: float = 0.0) -> set[str]:
    """Return the signs in words that count for at least so much."""
    return {sign for word in words for sign, weight in word.signs if weight >= least}


def pegs_in(saying: Saying) -> list[HeardPeg]:
    """Return the pegs that a saying names."""
    return [word.peg for word in saying.words if word.peg is not None]


def from_and_to(words: Sequence[DraftWord]) -> list[HeardPeg]:
    """Return where a band goes from and to; a side of “to” on which no peg was heard is empty."""
    at = [k for k, word in enumerate(words) if word.peg is not None]
    if len(at) == 1:
        before, start = signs_in(words[max(0, at[0] - 3) : at[0]], 1.0), signs_in(words[: at[0]], 1.0)
        peg = words[at[0]].peg
        assert peg is not None
        empty = HeardPeg(None, None)
        if "from" in before and "to" not in before:
            return [peg, empty]
        if "to" in before or "over" in before or "from" in start:
            return [empty, peg]
        return [empty, empty]
    return [word.peg for word in words if word.peg is not None]


def after_pegs(saying: Saying) -> tuple[DraftWord, ...]:
    """Return the words of a saying after its last peg."""
    last = max(
        (k for k, word in enumerate(saying.words) if word.peg is not None), default=len(saying.words) - 1
    )
    return saying.words[last + 1 :]


def ways_in(words: Sequence[DraftWord]) -> Way:
    """Return the directions that are said."""
    return frozenset(word.way for word in words if word.way is not None)


def named_steps(words: Sequence[DraftWord]) -> tuple[tuple[int | None, int | None] | None, list[DraftWord]]:
    """Return the numbers of the steps that are named, and the words that remain."""
    at = next(
        (k for k, word in enumerate(words) if any(s == "step" and w == 1.0 for s, w in word.signs)), None
    )
    if at is None:
        return None, list(words)
    end = at + 1
    numbers: list[int] = []
    single = words[at].text == "step"
    while end < len(words) and end - at < 5:
        word = words[end]
        value = word.peg.number if word.peg is not None else word.number
        if value is None and word.text != "to" and word.perhaps is not None:
            value = word.perhaps
        if any(s in ("again", "place", "more") for s, _ in word.signs):
            break
        if value is not None and word.text not in ("to",):
            numbers.append(value)
        end += 1
        if len(numbers) == 2:
            break
    adjacent = words[end - 2].number is not None and words[end - 2].text.isdecimal()
    if len(numbers) == 2 and adjacent and signs_in(words[end : end + 2]) & {"more", "times"}:
        numbers, end = numbers[:1], end - 1  # “repeat steps 7, 20 more times”
    first = numbers[0] if numbers else None
    if len(numbers) == 2 and numbers[1] > numbers[0]:
        named: tuple[int | None, int | None] = (numbers[0], numbers[1])
    elif len(numbers) == 1 and not single and any(_is_joint(word) for word in words[at + 1 : end]):
        named = (None, first)
    elif len(numbers) == 1 and (single or end - at == 2):
        named = (first, first)
    elif len(numbers) == 2:
        return (None, None), [*words[:at], *words[end - 1 :]]
    else:
        named = (None, None)
    return named, [*words[:at], *words[end:]]


def _is_joint(word: DraftWord) -> bool:
    """Say whether a word stands before the last of several numbers."""
    return any(sign in ("to", "and") for sign, _ in word.signs)


def times_in(words: Sequence[DraftWord]) -> int | None:
    """Return how many more times; None where it was not heard."""
    for k, word in enumerate(words):
        near = [signs_in(words[j : j + 1]) for j in (k + 1, k + 2)]
        if word.number is not None and {"more", "times"} & (near[0] | near[1]):
            return word.number
        if word.perhaps is not None and "more" in near[0]:
            return word.perhaps
    return None


def shift_in(words: Sequence[DraftWord]) -> tuple[int | None, str | None, Way]:
    """Return by how many of what, peg or row, and which way each round is moved on."""
    number, unit = None, None
    for k, word in enumerate(words):
        signs = {sign for sign, _ in word.signs}
        if unit is None and ("pegs" in signs or "peg" in signs or word.text in ("peg", "pegs")):
            unit = "peg"
        elif unit is None and "row" in signs:
            unit = "row"
        if number is None and word.number is not None and k < 8:
            number = word.number
        elif number is None and word.perhaps is not None and signs_in(words[k + 1 : k + 2]) & {"peg", "row"}:
            number = word.perhaps
        if word.peg is not None and word.peg.number is not None and number is None:
            number = word.peg.number
    way = ways_in(words)
    if any(sign == "round-way" for word in words for sign, _ in word.signs):
        way = way | {"round"}
    return number, unit, way
