"""A sentence by what its words mean: its pegs, its numbers, its directions, and the bands that it names."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from pegwright.pattern import is_address
from pegwright.reading.draft import Draft, Gap
from pegwright.reading.lexicon import Token

CLOCK = {12: (0, 1), 1: (1, 1), 2: (1, 1), 3: (1, 0), 4: (1, -1), 5: (1, -1), 6: (0, -1)}
CLOCK |= {7: (-1, -1), 8: (-1, -1), 9: (-1, 0), 10: (-1, 1), 11: (-1, 1)}
"""What lies in the direction of each hour: so many rows to the right and pegs away."""


_ENDS_A_WAY = frozenset(
    "end from to and mark again go-on place put hook lift turn wind clip band".split()  # noqa: SIM905
)
NO_COLOURS = frozenset(
    (  # noqa: SIM905
        "a an the one this that next new of it then and lowest your first second third each every another "
        "more "
        "last final finishing cap single few some its ein eine einen einer das die der den dem dann und mehr "
        "i s we now goes is too on at by so una un la el las los otra cada luego y se del al "
        "entre para como between zwischen all todo toda todos todas alle allen aller"
    ).split()
)
"""Words that stand before a band and are no colour."""


ORDINAL_ENDS = frozenset({"st", "nd", "rd", "th", "º", "ª", "."})
"""What is left of an ordinal beside its figure."""


class NamedBands(NamedTuple):
    """Bands as a sentence names them: their colour as a letter, empty where it is not said, and how many.

    The number is None where the sentence gives none.
    """

    letter: str
    number: int | None = None


class Sentence(NamedTuple):
    """The words of a sentence by their meaning, and the bands that it names.

    `answers` are what the maker has answered where this sentence leaves something open, by key;
    `only` is the letter of the one colour there is, where the counts up front name just one;
    `earlier` are the sentences of the steps that it names by number, by their order among those read.
    """

    tokens: tuple[Token, ...]
    bands: tuple[NamedBands, ...] = ()
    answers: Mapping[str, str] = {}
    only: str = ""
    earlier: tuple[int, ...] = ()

    def has(self, *kinds: str) -> bool:
        """Return whether a word has one of these meanings."""
        return any(token.kind in kinds for token in self.tokens)

    def count_of(self, kind: str) -> int:
        """Return how many words of a meaning there are."""
        return sum(token.kind == kind for token in self.tokens)

    def kinds_before_pegs(self) -> tuple[str, ...]:
        """Return what stands right before each peg that is named, by its meaning."""
        kinds = ["", *(token.kind for token in self.tokens)]
        return tuple(kinds[at] for at, token in enumerate(self.tokens) if token.kind == "peg-name")

    def takes_loop(self) -> bool:
        """Say whether a loop is spoken of, perhaps as “the bottom band”."""
        return self.has("loop", "loops") or (self.has("lowest", "top") and self.has("band"))

    def has_one(self) -> bool:
        """Say whether a band is meant by “one”: “then one over A4 and A5”."""
        counted = ("peg", "row", "more", "times", "step-on", "oclock")
        pairs = self._in_pairs()
        return any(
            one.kind == "another" or (one.kind == "number" and other.kind not in counted)
            for one, other in pairs
        )

    def counted_loop(self) -> int | None:
        """Return which loop is counted, as “the second loop”; below zero from the top, or None."""
        for at, token in enumerate(self.tokens):
            if token.kind == "loop" and at:
                back = at - 1 if self.tokens[at - 1].text in ORDINAL_ENDS else at
                one = self.tokens[back - 1] if back else token
                if one.kind == "number" and one.number > 1:
                    return -one.number if self.has("top") else one.number
        return None

    def leads_on(self) -> bool:
        """Say whether the pegs are pairs of “from here to there”, not pegs in a list: “on A1 and on B1”."""
        named = [at for at, token in enumerate(self.tokens) if token.kind == "peg-name"]
        if len(named) % 2:
            return False
        for one, other in zip(named[::2], named[1::2], strict=True):
            between = [token for token in self.tokens[one + 1 : other] if token.kind != "mark"]
            if between and not any(token.kind == "to" for token in between):
                return False
            before = self.tokens[one - 1] if one else Token("mark", "")
            if before.kind == "to" and before.text == self.tokens[other - 1].text:
                return False
        return True

    def breaks_off(self) -> bool:
        """Say whether a peg is left out after “from”, “to” or “on”, a clause after “and”, or an hour."""
        kinds = [token.kind for token in self.tokens]
        following = (*kinds, "end", "end")
        if any(kind == "oclock" and (not at or kinds[at - 1] != "number") for at, kind in enumerate(kinds)):
            return True
        if len(kinds) > 1 and kinds[-1] in ("at", "from", "to", "with", "through"):
            return True
        if not self.pegs:
            return False
        for at, kind in enumerate(kinds):
            after, second = following[at + 1 : at + 3]
            if kind in ("from", "to") and (
                after in _ENDS_A_WAY or (after == "number" and second in ("from", "to", "band", "word"))
            ):
                return True
            if kind in ("at", "with") and after in ("and", "mark", "end"):
                return True
            if (
                kind == "from"
                and self.counted_loop()
                and after not in ("peg-name", "top", "lowest", "number")
            ):
                return not self.has("top", "lowest")
        return kinds[-1] == "and"

    def times(self) -> int | None:
        """Return how often something is said to be done: the number right before “times” or “more times”."""
        numbers_step = False
        for at, (one, other) in enumerate(self._in_pairs()):
            again = one.kind == "number" and at > 0 and self.tokens[at - 1].kind == "number"
            numbers_step = (one.kind == "step" and not self.has("last")) or (
                numbers_step and one.kind in ("number", "and", "to") and not again
            )
            if numbers_step:
                continue
            more_bands = other.kind == "more" and self.tokens[at + 2 : at + 3]
            if more_bands and self.tokens[at + 2].kind == "band":
                continue
            if one.kind == "number" and other.kind in ("times", "more", "again", "go-on"):
                return one.number
        if self.has("twice"):
            return 2
        pairs = self._in_pairs() if self.has("same") else []  # “fill the other two frames the same way”
        return next((a.number for a, b in pairs if a.kind == "number" and b.kind == "word"), None)

    def _in_pairs(self) -> list[tuple[Token, Token]]:
        return list(zip(self.tokens, (*self.tokens[1:], Token("mark", "")), strict=True))

    def has_plain_words(self) -> bool:
        """Say whether there are words of which nobody knows what they mean, a colour perhaps."""
        return any(token.kind == "word" and token.text.lower() not in NO_COLOURS for token in self.tokens)

    def pairs(self) -> tuple[tuple[str, str], ...]:
        """Return the pairs of pegs where each is named with its “from” or “to”; several ends share a start.

        None where a peg stands without either, or ends follow one another without “and” or comma.
        """
        found: list[tuple[str, str]] = []
        start, way, apart = "", "", True
        for token, after in self._in_pairs():
            if token.kind in ("from", "to"):
                way = token.kind
            elif token.kind in ("and", "mark"):
                apart = True
            elif token.kind == "peg-name":
                if way == "from":
                    start = token.text
                elif way == "to" and start and (apart or not found or found[-1][0] != start):
                    found.append((start, token.text))
                elif not way and apart and found and found[-1][0] == start and after.kind != "to":
                    found.append((start, token.text))  # “to A2, C2 and to B1”
                else:
                    return ()
                way, apart = "", False
        return tuple(found)

    @property
    def colour(self) -> str:
        """The letter of the first colour that is named; empty where none is."""
        return next((one.letter for one in self.bands if one.letter), "")

    @property
    def pegs(self) -> tuple[str, ...]:
        """Return the pegs that are named, in order."""
        return tuple(token.text for token in self.tokens if token.kind == "peg-name")

    def number_before(self, *kinds: str, reach: int = 4) -> int | None:
        """Return the number at most `reach` words before a word with one of these meanings, or None."""
        for at, token in enumerate(self.tokens):
            if token.kind in kinds:
                for back in range(at - 1, max(at - 1 - reach, -1), -1):
                    if self.tokens[back].kind == "number":
                        return self.tokens[back].number
                    if self.tokens[back].kind == "mark":
                        break
        return None

    def direction(self) -> tuple[int, int] | None:
        """Return the direction of the sentence as (rows to the right, pegs away), or None."""
        for at, token in enumerate(self.tokens):
            if token.kind == "oclock" and at and self.tokens[at - 1].kind == "number":
                return CLOCK.get(self.tokens[at - 1].number)
        rows = self.has("right") - self.has("left")
        pegs = self.has("far") - self.has("near")
        return (rows, pegs) if rows or pegs else None

    # --- what may be left open ----------------------------------------------------------------------------

    def colour_or_gap(self, draft: Draft) -> tuple[str, tuple[Gap, ...]]:
        """Return the band's colour; “one from A2 to A3” means the one before, “a band” leaves it open."""
        if self.colour:
            return self.colour, ()
        if draft.colour and not self.has("band", "last-band", "cap", "chain") and not self.has_plain_words():
            return draft.colour, ()
        if self.only:
            return self.only, ()
        return draft.colour, (Gap("colour", (draft.colour,) if draft.colour else ()),)

    def number_or_gap(
        self, key: str, said: int | None, offers: tuple[int, ...]
    ) -> tuple[int, tuple[Gap, ...]]:
        """Return a number as it is said or answered, or the first that is offered, with its gap."""
        answer = self.answers.get(key, "").strip()
        if said is None and answer.isdecimal():
            said = int(answer[:6])
        return (said, ()) if said is not None else (offers[0], (Gap(key, tuple(map(str, offers))),))

    def peg_or_gap(self, offers: list[str]) -> tuple[str, tuple[Gap, ...]]:
        """Return the last peg that is named or the one answered, or the first offered, with its gap."""
        answer = self.answers.get("peg", "").strip().upper()
        if self.pegs or is_address(answer):
            return (self.pegs[-1] if self.pegs else answer), ()
        offered = tuple(dict.fromkeys(offers))
        return (offered[0], (Gap("peg", offered[:8]),)) if offered else ("", ())

    def loop_or_gap(self, several: bool) -> tuple[int, tuple[Gap, ...]]:
        """Return 1 for the lowest loop, −1 for the top one; a gap where neither of several is said."""
        answer = self.answers.get("loop", "")
        if self.has("lowest") or answer == "lowest":
            return 1, ()
        if self.has("top") or answer == "top":
            return -1, ()
        return 1, (Gap("loop", ("lowest", "top")),) if several else ()
