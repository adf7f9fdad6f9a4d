"""One printed step read back as a move."""

from __future__ import annotations

import itertools
import re
from typing import NamedTuple

from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Slide,
    Transfer,
    Turn,
    Wind,
    parse_address,
    row_letter,
)
from pegwright.reading.phrase_reader import PhraseReader, Said

MOVES = (
    "step-place-two",
    "step-place-many",
    "step-wind",
    "step-turn",
    "step-hook",
    "step-hook-top",
    "step-slide",
    "step-slide-through",
    "step-lift",
    "step-transfer",
    "step-hang",
    "step-bind",
    "step-extend",
    "step-knot",
    "step-clip",
    "step-clip-join",
    "step-clip-join-off",
)
_LOOPS = (
    "loop-lowest",
    "loop-top",
    "loop-counted",
    "loop-only",
    "loops-lowest",
    "loops-top",
    "loops-counted",
)
_PEG = re.compile(r"\b[A-Z]{1,2}[1-9][0-9]{0,4}\b")
_NUMBERS = {"once": 1, "twice": 2}


class PrintedLoops(NamedTuple):
    """Which loops are taken: the lowest of them, counted from the bottom, or from the top if negative."""

    loop: int
    together: int


class MoveReader:
    """Turns printed sentences into moves."""

    def __init__(self, words: PhraseReader) -> None:
        self.words = words
        self.end = "end"
        self.colours: dict[str, str] = {}

    def read(self, said: Said, rest: str) -> Move:
        """Return the move of a message; `rest` is the text after it in the same step.

        Raises:
            ValueError: one of its facts cannot be read.
        """
        facts = said.facts
        match said.name:
            case "step-place-two":
                return self._place(facts, (facts["first"], facts["last"]), rest)
            case "step-place-many":
                return self._place(facts, tuple(_PEG.findall(facts["pegs"])), rest)
            case "step-wind":
                return Wind(colour=self._letter(facts), on=facts["peg"], turns=self._times(facts["times"]))
            case "step-hang":
                return Hang(colour=self._letter(facts), turns=self._times(facts["times"]))
            case "step-turn":
                return Turn()
            case "step-hook" | "step-hook-top":
                loops = self._loops(facts["loop"])
                return Hook(
                    source=facts["source"],
                    target=facts["target"],
                    loop=loops.loop,
                    together=loops.together,
                    through=self._through(rest),
                )
            case "step-slide" | "step-slide-through":
                loop = self._loops(facts["loop"]).loop
                through = self._through(rest)
                return Slide(source=facts["source"], target=facts["target"], loop=loop, through=through)
            case "step-lift":
                loops = self._loops(facts["loop"])
                return Lift(at=facts["peg"], loop=loops.loop, together=loops.together)
            case "step-transfer":
                together = self._loops(facts["loop"]).together
                return Transfer(source=facts["source"], target=facts["target"], together=together)
            case "step-bind":
                return Bind(colour=self._letter(facts), at=facts["peg"], end=self.end)
            case "step-extend":
                letter, count = self._heap(facts["bands"])
                return Extend(colour=letter, bands=count, end=self.end)
            case _:
                return self._fasten(said, rest)

    def _place(self, facts: dict[str, str], over: tuple[str, ...], rest: str) -> Place:
        twists = {
            (one.facts["first"], one.facts["last"]): one.number("n")
            for one in self.words.all(rest, "detail-twist")
        }
        turns = {
            one.facts["peg"]: self._times(one.facts["times"]) for one in self.words.all(rest, "detail-turns")
        }
        between = tuple(twists.get(pair, 0) for pair in itertools.pairwise(over))
        return Place(
            colour=self._letter(facts),
            over=over,
            turns=tuple(turns.get(peg, 1) for peg in over) if turns else (),
            twists=between if any(between) else (),
        )

    def _letter(self, facts: dict[str, str]) -> str:
        """Return the letter of a band, and remember its name."""
        said = self.words.whole(facts["band"], ("band-plain", "band-name"))
        if said and not re.fullmatch(r"[A-Za-z][A-Za-z0-9]{0,5}", said.facts["letter"]):
            said = self.words.whole(facts["band"], ("band-name",))
        if said is None:
            raise ValueError(facts["band"])
        letter = said.facts["letter"]
        self.colours.setdefault(letter, said.facts.get("colour", ""))
        return letter

    def _heap(self, text: str) -> tuple[str, int]:
        for name in ("bands-of", "bands-plain"):
            said = self.words.whole(text, (name,))
            if said and re.fullmatch(r"[A-Za-z][A-Za-z0-9]{0,5}", said.facts["letter"]):
                self.colours.setdefault(said.facts["letter"], said.facts.get("colour", ""))
                return said.facts["letter"], said.number("n")
        raise ValueError(text)

    def _loops(self, text: str) -> PrintedLoops:
        said = self.words.whole(text, _LOOPS)
        if said is None:
            raise ValueError(text)
        match said.name:
            case "loop-top":
                return PrintedLoops(-1, 1)
            case "loop-counted":
                return PrintedLoops(said.number("n"), 1)
            case "loops-lowest":
                return PrintedLoops(1, said.number("n"))
            case "loops-top":
                return PrintedLoops(-said.number("n"), said.number("n"))
            case "loops-counted":
                first, last = said.number("first"), said.number("last")
                return PrintedLoops(first, max(last - first + 1, 1))
            case _:
                return PrintedLoops(1, 1)

    def _through(self, rest: str) -> int | None:
        """Return how many loops the hook goes through if it leaves some out, else None."""
        for one in self.words.all(rest, "detail-skipped"):
            return one.number("through")
        return 0 if any(self.words.all(rest, "detail-skipped-all")) else None

    def _times(self, text: str) -> int:
        said = self.words.whole(text, ("times",))
        if said is None:
            raise ValueError(text)
        return said.number("n")

    def _fasten(self, said: Said, rest: str) -> Move:
        where = " ".join(said.facts.get(name, "") for name in ("where", "ends", "pegs"))
        catch = next((one.number("n") for one in self.words.all(rest, "detail-catch")), None)
        kind = Knot if said.name == "step-knot" else Clip
        return kind(at=self.holders(where), catch=catch)

    def holders(self, text: str) -> tuple[str, ...]:
        """Return the free ends and pegs that a text names, with spans written out.

        Raises:
            ValueError: it names none.
        """
        found: list[tuple[int, tuple[str, ...]]] = []
        named = [(one.start, (one.facts["end"],)) for one in self.words.all(text, "end-name")]
        found += named
        found += [
            (one.start, (self.end,))
            for one in self.words.all(text, "end-plain")
            if all(one.start != at for at, _ in named)
        ]
        found += [(one.start, ("start",)) for one in self.words.all(text, "end-start")]
        spans = list(_spans(text, self.words))
        found += [(start, pegs) for start, _, pegs in spans]
        found += [
            (peg.start(), (peg[0],))
            for peg in _PEG.finditer(text)
            if not any(start <= peg.start() < stop for start, stop, _ in spans)
        ]
        holders = tuple(holder for _, several in sorted(found) for holder in several)
        if not holders:
            raise ValueError(text)
        return holders


def _spans(text: str, words: PhraseReader) -> list[tuple[int, int, tuple[str, ...]]]:
    """Return the spans that a text names, such as A1 to A12: start and end in the text, and their pegs."""
    found = []
    pegs = list(_PEG.finditer(text))
    for one, other in itertools.pairwise(pegs):
        first, last = parse_address(one[0]), parse_address(other[0])
        within = text[one.start() : other.end()]
        if (
            first.row == last.row
            and first.number != last.number
            and words.whole(within, ("span", "span-dash"))
        ):
            on = 1 if first.number < last.number else -1
            run = tuple(f"{row_letter(first.row)}{n}" for n in range(first.number, last.number + on, on))
            found.append((one.start(), other.end(), run))
    return found
