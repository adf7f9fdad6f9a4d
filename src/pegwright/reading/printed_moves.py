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
    Put,
    Slide,
    Transfer,
    Turn,
    Wind,
    parse_address,
    row_letter,
)
from pegwright.reading.phrase_reader import PhraseReader, Said, UnreadableError

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
    "step-lift-on",
    "step-transfer",
    "step-hang",
    "step-bind",
    "step-bind-some",
    "step-put",
    "step-put-apart",
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
            UnreadableError: one of its facts cannot be read.
        """
        match said.name:
            case "step-place-two":
                return self._place(said, (said.text("first"), said.text("last")), rest)
            case "step-place-many":
                return self._place(said, tuple(_PEG.findall(said.text("pegs"))), rest)
            case "step-wind":
                return Wind(
                    colour=self._letter(said), on=said.text("peg"), turns=self._times(said.text("times"))
                )
            case "step-hang":
                return Hang(colour=self._letter(said), turns=self._times(said.text("times")))
            case "step-turn":
                return Turn()
            case "step-hook" | "step-hook-top":
                loops = self._loops(said.text("loop"))
                return Hook(
                    source=said.text("source"),
                    target=said.text("target"),
                    loop=loops.loop,
                    together=loops.together,
                    through=self._through(rest),
                )
            case "step-slide" | "step-slide-through":
                loops = self._loops(said.text("loop"))
                return Slide(
                    source=said.text("source"),
                    target=said.text("target"),
                    loop=loops.loop,
                    together=loops.together,
                    through=self._through(rest),
                )
            case "step-lift":
                loops = self._loops(said.text("loop"))
                return Lift(at=said.text("peg"), loop=loops.loop, together=loops.together)
            case "step-lift-on":
                loops, target = self._loops(said.text("loop")), said.text("target")
                return Lift(at=said.text("peg"), loop=loops.loop, together=loops.together, target=target)
            case "step-transfer":
                together = self._loops(said.text("loop")).together
                return Transfer(source=said.text("source"), target=said.text("target"), together=together)
            case "step-bind" | "step-bind-some":
                several = self._heap(said.text("bands")) if "bands" in said.facts else None
                letter, together = several or (self._letter(said), 1)
                catch = said.number("n") if said.name == "step-bind-some" else None
                peg = said.text("peg")
                return Bind(colour=letter, at=peg, end=self.end, catch=catch, together=together)
            case "step-put":
                return Put(on=(said.text("peg"),), end=self.end)
            case "step-put-apart":
                return Put(on=tuple(_PEG.findall(said.text("pegs"))), end=self.end)
            case "step-extend":
                letter, count = self._heap(said.text("bands"))
                together = next((d.number("n") for d in self.words.all(rest, "detail-extend-together")), 1)
                return Extend(colour=letter, bands=count, end=self.end, together=together)
            case _:
                return self._fasten(said, rest)

    def _place(self, said: Said, over: tuple[str, ...], rest: str) -> Place:
        twists = {
            (one.text("first"), one.text("last")): way * one.number("n")
            for name, way in (("detail-twist", 1), ("detail-twist-back", -1))
            for one in self.words.all(rest, name)
        }
        turns = {
            one.text("peg"): self._times(one.text("times")) for one in self.words.all(rest, "detail-turns")
        }
        between = tuple(twists.get(pair, 0) for pair in itertools.pairwise(over))
        return Place(
            colour=self._letter(said),
            over=over,
            turns=tuple(turns.get(peg, 1) for peg in over) if turns else (),
            twists=between if any(between) else (),
        )

    def _letter(self, said: Said) -> str:
        """Return the letter of a band, and remember its name."""
        text = said.text("band")
        band = self.words.whole(text, ("band-plain", "band-name"))
        if band and not re.fullmatch(r"[A-Za-z][A-Za-z0-9]{0,5}", band.text("letter")):
            band = self.words.whole(text, ("band-name",))
        if band is None:
            raise UnreadableError(text)
        letter = band.text("letter")
        self.colours.setdefault(letter, band.facts.get("colour", ""))
        return letter

    def _heap(self, text: str) -> tuple[str, int]:
        for name in ("bands-of", "bands-plain"):
            said = self.words.whole(text, (name,))
            if said and re.fullmatch(r"[A-Za-z][A-Za-z0-9]{0,5}", said.text("letter")):
                self.colours.setdefault(said.text("letter"), said.facts.get("colour", ""))
                return said.text("letter"), said.number("n")
        raise UnreadableError(text)

    def _loops(self, text: str) -> PrintedLoops:
        said = self.words.whole(text, _LOOPS)
        if said is None:
            raise UnreadableError(text)
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
            raise UnreadableError(text)
        return said.number("n")

    def _fasten(self, said: Said, rest: str) -> Move:
        where = " ".join(said.facts.get(name, "") for name in ("where", "ends", "pegs"))
        catch = next((one.number("n") for one in self.words.all(rest, "detail-catch")), None)
        kind = Knot if said.name == "step-knot" else Clip
        return kind(at=self.holders(where), catch=catch)

    def holders(self, text: str) -> tuple[str, ...]:
        """Return the free ends and pegs that a text names, with spans written out.

        Raises:
            UnreadableError: it names none.
        """
        found: list[tuple[int, tuple[str, ...]]] = []
        named = [(one.start, (one.text("end"),)) for one in self.words.all(text, "end-name")]
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
            raise UnreadableError(text)
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
