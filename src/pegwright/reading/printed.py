"""Printed steps read back: the numbered steps of a handout, in any language it is printed in.

Every step is looked up in the phrasebook that printed it. A step that starts with none of its messages is
unread, with a finding. Text after the message, such as a maker's note, is dropped. A step that is no move
(getting the loom ready, lifting the piece off) is an aside.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from typing import Any

import msgspec

from pegwright.finding import Finding, Location, finding
from pegwright.lesson import languages
from pegwright.pattern import (
    VERSION,
    Colour,
    JoinedLooms,
    Layout,
    PatternStep,
    Repeat,
    Round,
    Rows,
    parse_address,
    read_document,
)
from pegwright.reading.lexicon import GREY
from pegwright.reading.phrase_reader import PhraseReader, UnreadableError, spread_contractions
from pegwright.reading.printed_moves import MoveReader
from pegwright.reading.printed_pages import (
    ASIDES,
    LONGEST_OPENING,
    MOST_LOOKED_AT,
    OPENINGS,
    PrintedStep,
    printed_steps,
    running_text,
)
from pegwright.reading.printed_rounds import ROUNDS, RoundReader, TaughtMove
from pegwright.reading.text_reading import SentenceReading, TextReading

_END_OF_STEP = ("mistake-heading", "heading-check", "look-heading", "look-heading-round")
"""What follows the words of a step on the page and is no part of them."""


def printed_language(text: str, phrases: Mapping[str, str] | None = None) -> str | None:
    """Return the language that most steps of a text are printed in, or None if few match any."""
    found = {language: printed_steps(text, PhraseReader(language, phrases)) for language in languages()}
    best = max(found, key=lambda language: found[language].known)
    known, steps = found[best].known, len(found[best].steps)
    return best if known > 1 and known * 2 > min(steps, 2 * MOST_LOOKED_AT) else None


def read_printed(
    text: str, phrases: Mapping[str, str] | None = None, language: str | None = None
) -> TextReading:
    """Read the numbered steps of a handout back; `phrases` are the teacher's own wordings.

    A missing `language` is detected.
    """
    language = language or printed_language(text, phrases) or "en"
    return _PrintedReader(text, PhraseReader(language, phrases)).read()


class _PrintedReader:
    def __init__(self, text: str, words: PhraseReader) -> None:
        self.text, self.words = text, words
        self.moves = MoveReader(words)
        self.first_word = re.compile(rf"\b(?={words.first_words(OPENINGS)})", re.IGNORECASE)
        self.taught: list[TaughtMove] = []
        self.spans: dict[int, tuple[int, int]] = {}
        """Which of the moves taught so far each step stands for: from, to."""
        self.steps: list[tuple[int, PatternStep]] = []
        """The document's steps so far, each with the first printed step that it stands for."""
        self.sentences: list[SentenceReading] = []
        self.findings: list[Finding] = []

    def read(self) -> TextReading:
        printed = printed_steps(self.text, self.words)
        steps = printed.steps
        spread = [(one, spread_contractions(one.text, self.words.language)) for one in steps]
        whole = running_text(self.text, self.words)
        ends = [one.facts["end"] for one in self.words.all(whole, "end-name")]
        self.moves.end = ends[0] if ends else "end"
        loom = self._loom(whole)
        rounds = RoundReader(self.words, loom, self.moves.colours)
        for step, text in spread:
            self._step(step, text, rounds)
        for first, last, line in printed.missing:
            place = Location(line=line, column=1)
            self.findings.append(
                finding("steps-missing", place, first=first, last=last, count=last - first + 1)
            )
        raw = {"pegwright": VERSION, "title": self._title(steps), "loom": msgspec.to_builtins(loom)}
        pattern = read_document(raw).pattern
        if pattern is not None and self.steps:
            colours = tuple(
                Colour(letter=letter, name=name or letter, hex=GREY)
                for letter, name in self.moves.colours.items()
            )
            pattern = msgspec.structs.replace(
                pattern, colours=colours, steps=tuple(one for _, one in self.steps)
            )
        else:
            self.findings.append(finding("no-steps-read", Location(line=1, column=1)))
            pattern = None
        return TextReading(pattern, tuple(self.sentences), (), tuple(self.findings), self.words.language)

    def _title(self, steps: Sequence[PrintedStep]) -> str:
        before = self.text.splitlines()[: steps[0].line - 1] if steps else []
        lines = [" ".join(line.split()) for line in before]
        first = next((line for line in lines if any(sign.isalnum() for sign in line)), "")
        script = self.words.whole(first, ("heading-script",))
        return (script.facts["title"] if script else first)[:200] or "?"

    def _step(self, step: PrintedStep, text: str, rounds: RoundReader) -> None:
        said = self.words.begins(text, OPENINGS)
        text = text[: self._end_of_step(text)]
        begin = len(self.taught)
        use: Any = "unread"
        made: tuple[PatternStep, ...] = ()
        try:
            if said is None:
                pass
            elif said.name in ASIDES:
                use = "aside"
            elif said.name in ROUNDS:
                made = self._again(said, text[said.end :], rounds, step)
                use = "steps"
            else:
                move = self.moves.read(said, text[said.end :])
                self.taught.append(TaughtMove(move, step.number))
                self.steps.append((step.number, move))
                made, use = (move,), "steps"
        except UnreadableError:
            use = "unread"
        self.spans[step.number] = (begin, len(self.taught))
        self.sentences.append(SentenceReading(step.text, step.line, use, made))
        if use == "unread":
            place = Location(line=step.line, column=1)
            self.findings.append(finding("sentence-unread", place, sentence=step.text[:120]))
        if said is not None:
            self._find_lost(step, text[said.end :])

    def _end_of_step(self, text: str) -> int:
        """Return where the words of a step end and what is printed under it begins."""
        heads = (next(self.words.all(text, name), None) for name in _END_OF_STEP)
        return min((head.start for head in heads if head), default=len(text))

    def _find_lost(self, step: PrintedStep, rest: str) -> None:
        """Report what reads like a step within another one: its number was lost when the text was copied."""
        at = 0
        for word in self.first_word.finditer(rest):
            lost = self.words.begins(rest[word.start() : word.start() + LONGEST_OPENING], OPENINGS)
            if lost is not None and lost.name not in ASIDES and word.start() >= at:
                at = word.start() + lost.end
                text = rest[word.start() : at]
                self.sentences.append(SentenceReading(text, step.line, "unread"))
                place = Location(line=step.line, column=1)
                self.findings.append(finding("sentence-unread", place, sentence=text[:120]))

    def _again(self, said: Any, rest: str, rounds: RoundReader, step: PrintedStep) -> tuple[PatternStep, ...]:
        """Return rounds written out, or as one repeat of the document if they are all alike."""
        first, last = rounds.steps(said)
        if not 1 <= first <= last < step.number or not self.spans.keys() >= set(range(first, last + 1)):
            raise UnreadableError(said.facts)
        model = self.taught[self.spans[first][0] : self.spans[last][1]]
        if not model or len(model) * said.number("times") > 60_000:
            raise UnreadableError(said.facts)
        made, shift = rounds.rounds(said, rest, model)
        self.taught += [one for each in made for one in each]
        at = next((i for i, (number, _) in enumerate(self.steps) if number >= first), len(self.steps))
        if (
            shift is not None
            and last == step.number - 1
            and at < len(self.steps)
            and self.steps[at][0] == first
        ):
            inner = tuple(one for _, one in self.steps[at:])
            repeat = Repeat(times=len(made) + 1, steps=inner, rows=shift.rows, pegs=shift.pegs)
            self.steps[at:] = [(first, repeat)]
            return (repeat,)
        plain = tuple(one.move for each in made for one in each)
        self.steps += [(step.number, move) for move in plain]
        return plain

    # --- the loom ---------------------------------------------------------------------------------------

    def _loom(self, whole: str) -> Layout:
        """Return the loom from the list of tools, or else the smallest one with the pegs of the text."""
        channel = self._channel(whole)
        for name in ("tool-straight", "tool-round"):
            for said in self.words.all(whole, name):
                rows, count = said.number("rows"), said.number("pegs", 0)
                pitch = self._pitch(said.facts)
                if name == "tool-round" and count >= 3:
                    return Round(
                        pegs=count,
                        rings=rows,
                        diameter_mm=round(pitch * count / math.pi, 1),
                        channel="in" if any(self.words.all(whole, "detail-channel-in")) else "out",
                    )
                if count:
                    one = Rows(rows=rows, pegs=count, pitch_mm=pitch, channel=channel)  # type: ignore[arg-type]
                    several = said.number("n")
                    if several == 1:
                        return one
                    beside = self._rows_named(whole) == several * rows
                    return JoinedLooms(looms=(one,) * min(several, 50), side="beside" if beside else "beyond")
        places = [parse_address(peg) for peg in re.findall(r"\b[A-Z]{1,2}[1-9][0-9]{0,3}\b", whole)]
        rows = min(max((place.row for place in places), default=0) + 1, 700)
        return Rows(rows=rows, pegs=max((place.number for place in places), default=1), channel=channel)  # type: ignore[arg-type]

    def _pitch(self, facts: dict[str, str]) -> float:
        said = self.words.whole(facts.get("pitch", ""), ("length-mm",))
        text = said.facts["n"].replace(",", ".") if said else ""
        return float(text) if re.fullmatch(r"\d{1,3}(\.\d+)?", text) and float(text) else 16.0

    def _channel(self, whole: str) -> str:
        sides = {"far": "far", "near": "near", "left": "left", "right": "right"}
        for said in self.words.all(whole, "detail-channel"):
            for side in sides:
                if self.words.whole(said.facts["side"], (f"side-{side}",)):
                    return side
            break
        return "far"

    def _rows_named(self, whole: str) -> int:
        for said in self.words.all(whole, "detail-rows"):
            return len(re.findall(r"\b[A-Z]{1,2}\b", said.facts["letters"]))
        return 1
