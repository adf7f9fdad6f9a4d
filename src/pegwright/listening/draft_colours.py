"""The colours of a recording that has no pattern, by the words that stand beside bands."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from pegwright.listening.draft_words import DraftWord, Signs


class Palette:
    """The colours that are named beside bands, with the words before them: “slate” of “slate blue”."""

    def __init__(self, words: Sequence[DraftWord], signs: Signs) -> None:
        self.signs = signs
        pairs: Counter[tuple[str, str]] = Counter()
        before: Counter[str] = Counter()
        self.heads: Counter[str] = Counter()
        for one, other in pairwise(words):
            if one.peg or one.number is not None or one.colour or len(one.text) < 3 or other.peg:
                continue
            before[one.text] += 1
            if other.colour and not any(weight == 1.0 for _, weight in one.signs):
                pairs[one.text, other.colour] += 1
        for word in words:
            if word.colour:
                self.heads[word.colour] += 1
        self.names = {
            word.colour: word.text
            for word in words
            if word.colour and word.text != word.colour and word.text.endswith(word.colour)
        }
        self.by_first: dict[str, str] = {}
        for (first, head), count in pairs.most_common():
            if count >= 2 and count >= 0.4 * before[first]:
                self.by_first.setdefault(first, head)
                if head not in self.names and count >= 0.3 * self.heads[head]:
                    self.names[head] = f"{first} {head}"

    def colour_of(self, words: Sequence[DraftWord]) -> str | None:
        """Return the one colour that words name, or None."""
        heads = {word.colour for word in words if word.colour}
        if not heads:
            heads = {
                self.by_first[one]
                for word in words
                for one in (word.text, *self.signs.misheard.get(word.text, ()))
                if one in self.by_first
            }
        if not heads and len(self.heads) == 1 and self.heads.total() >= 3:
            return next(iter(self.heads))  # there is no other
        return heads.pop() if len(heads) == 1 else None

    def name(self, head: str) -> str:
        """Return the name of a colour as it is mostly said."""
        return self.names.get(head, head)
