"""Read free text: sentences become readings, readings a beam of drafts, and the loom is the judge.

A reading that the loom refuses is dropped at once. At the end the surviving drafts are proved: a draft whose
bands fall off, or whose counts differ from those the text states, loses to one that holds. What the words
leave out is a blank, filled only with the likeliest of the answers that the blank offers.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding, Location, finding, phrase
from pegwright.loom import History, State, board_of, parse_move, replay_pattern
from pegwright.pattern import VERSION, Colour, Layout, Pattern, Rows, StatedCounts, parse_address
from pegwright.proof import prove
from pegwright.reading.draft import Draft, Reading
from pegwright.reading.grammar import Sentence, readings
from pegwright.reading.head import Colours, colours_of_bands, is_about_counts, loom_of
from pegwright.reading.lexicon import Lexicon, Token, free_languages
from pegwright.reading.printed import GREY
from pegwright.reading.text_reading import Blank, SentenceReading, TextReading
from pegwright.structure import structure_of

BEAM = 8
MOST_CHARACTERS = 60_000
MOST_SENTENCES = 1_500
MOST_JUDGED_MOVES = 3_000
_SENTENCE = re.compile(r"[^.;!?\n]+(?:[.;!?](?=\s|$)|\n|$)")
_CLAUSE = re.compile(
    r",? (?:and then|then|und dann|dann|y luego|luego) |, (?=(?:one|1) (?!peg|row|more|time|pin))",
    re.IGNORECASE,
)
_LIST_NUMBER = re.compile(r"(?m)^[ \t]*\d{1,3}[.)][ \t]+")
_ACTIONS = frozenset(
    "band place wind turn hook lift last-band add again same cap clip knot start".split()  # noqa: SIM905
)
_NO_COLOURS = (
    "a an the one this that next new of it then and lowest your first second third each every another more "
    "last final finishing cap single few some its ein eine einen das die der den dem dann und mehr "
    "una un la el las los otra cada luego y"
)
_STOPPED = frozenset(_NO_COLOURS.split())
_WHOLE = frozenset(
    "peg-name left right far near center oclock cap again same need".split()  # noqa: SIM905
)
"""What makes a clause about a band whole."""


_QUESTIONS = {"colour": "ask-colour", "chain-bands": "ask-chain-bands"}
"""What a blank asks, by its key."""


class Piece(NamedTuple):
    """A sentence or clause of the text, with its line."""

    text: str
    line: int


class _Trial(NamedTuple):
    """A draft, replayed unless it is too long to judge, and how many of the stated counts it misses."""

    draft: Draft
    history: History | None
    miscounted: int

    def count_falls(self) -> int:
        """Return how many bands fall off; 0 if nothing was replayed."""
        if self.history is None:
            return 0
        return len(prove(structure_of(self.history.events, self.history.board.spots)).free)


def free_language(text: str) -> str:
    """Return the language whose word list covers most of a text."""
    sample = text[:6000]
    known = {}
    for language in free_languages():
        tokens = Lexicon(language).tokens(sample[:600]) + Lexicon(language).tokens(sample[600:1200])
        known[language] = sum(token.kind not in ("word", "mark", "number", "peg-name") for token in tokens)
    return max(known, key=lambda language: (known[language], language == "en"))


def split_sentences(text: str) -> list[Piece]:
    """Return the sentences of a text, split at clauses, each with its line."""
    found: list[Piece] = []
    line = 1
    at = 0
    unnumbered = _LIST_NUMBER.sub(" ", text[:MOST_CHARACTERS])
    for match in _SENTENCE.finditer(unnumbered):
        line += unnumbered.count("\n", at, match.start())
        at = match.start()
        for clause in _CLAUSE.split(match[0]):
            bare = clause.strip(" \t\r\n.;!?•*-–,")
            if any(sign.isalnum() for sign in bare):
                found.append(Piece(bare, line))
        if len(found) >= MOST_SENTENCES:
            break
    return found[:MOST_SENTENCES]


def read_free(text: str, language: str | None = None, loom: Layout | None = None) -> TextReading:
    """Read a maker's text. Never raises on bad input.

    A missing `language` is detected; `loom` answers the blank of that name.
    """
    return _FreeReader(text, language or free_language(text), loom).read()


class _FreeReader:
    def __init__(self, text: str, language: str, loom: Layout | None) -> None:
        self.language = language
        self.lexicon = Lexicon(language)
        self.too_long = len(text) > MOST_CHARACTERS
        self.pieces = split_sentences(text)
        self.tokens = [self.lexicon.tokens(piece.text) for piece in self.pieces]
        self._join_clauses()
        self.colours = Colours()
        self.stated: dict[str, int] = {}
        self.given = loom
        self.told: Layout | None = None
        self.title = ""
        self.blanks: list[Blank] = []
        self.findings: list[Finding] = []

    def read(self) -> TextReading:
        uses = [self._head(at) for at in range(len(self.pieces))]
        loom = self.given or self.told or self._likely_loom()
        board = board_of(loom)
        beam = [Draft(State())]
        taken: list[int] = []
        for at, piece in enumerate(self.pieces):
            if uses[at]:
                continue
            sentence = self._sentence(at)
            following: list[Draft] = []
            for draft in beam:
                for reading in self._readings(piece, sentence, draft):
                    made = draft.extend(board, reading)
                    if made is not None and len(made.moves) <= 20_000:
                        following.append(made)
            if not following:
                told = (sentence.has(*_ACTIONS) and not sentence.has("care")) or sentence.pegs
                uses[at] = "unread" if told else "aside"
                continue
            uses[at] = "steps"
            taken.append(at)
            beam = _best(following)
        best = self._judge(beam, loom)
        return self._result(best, loom, uses, taken)

    def _join_clauses(self) -> None:
        """Join a clause that names a band but no place to the next one: “one red and then one white band”."""
        at = 0
        while at + 1 < len(self.pieces):
            kinds = {token.kind for token in self.tokens[at]}
            after = {token.kind for token in self.tokens[at + 1]}
            same_line = self.pieces[at].line == self.pieces[at + 1].line
            whole = kinds & _WHOLE
            if same_line and "band" in kinds and not whole and "peg-name" in after and "band" in after:
                text = f"{self.pieces[at].text} and {self.pieces[at + 1].text}"
                self.pieces[at : at + 2] = [Piece(text, self.pieces[at].line)]
                self.tokens[at : at + 2] = [self.tokens[at] + self.tokens[at + 1]]
            at += 1

    # --- sentence by sentence ---------------------------------------------------------------------------

    def _head(self, at: int) -> str:
        """Take what a sentence says of the whole piece. Return what it was taken for, or an empty string."""
        piece, tokens = self.pieces[at], self.tokens[at]
        if loom := loom_of(tokens):
            self.told = self.told or loom.loom
            return "head"
        if is_about_counts(tokens, self.lexicon):
            self._counts(tokens)
            return "head"
        kinds = {token.kind for token in tokens}
        if at == 0 and "peg-name" not in kinds and not kinds & {"band", "loop"} and len(tokens) <= 8:
            self.title = piece.text[:200]
            return "head"
        return ""

    def _counts(self, tokens: list[Token]) -> None:
        """Take counts stated before the steps: a number, a colour, bands."""
        for at, token in enumerate(tokens):
            if token.kind != "number":
                continue
            words = []
            for after in tokens[at + 1 : at + 5]:
                if after.kind != "word" or after.text.lower() in _STOPPED:
                    break
                words.append(after.text)
            follows = tokens[at + 1 + len(words) : at + 2 + len(words)]
            if words and follows and follows[0].kind == "band":
                letter = self.colours.letter(" ".join(words))
                self.stated[letter] = token.number

    def _sentence(self, at: int) -> Sentence:
        tokens = self.tokens[at]
        letters = colours_of_bands(
            tokens, self.colours, self.pieces[at].text, _STOPPED, self.language == "es"
        )
        return Sentence(tuple(tokens), letters[0] if letters else "", letters)

    def _readings(self, piece: Piece, sentence: Sentence, draft: Draft) -> list[Reading]:
        try:
            move = parse_move(piece.text)
            return [Reading((move,), 1.0, colour=getattr(move, "colour", ""))]
        except (ValueError, msgspec.ValidationError):
            pass
        try:
            return readings(sentence, draft)
        except ValueError:
            return []

    def _likely_loom(self) -> Layout:
        """Return the smallest loom with the pegs of the text, and ask for the real one."""
        places = [parse_address(t.text) for tokens in self.tokens for t in tokens if t.kind == "peg-name"]
        rows = max((place.row for place in places), default=0) + 1
        pegs = max((place.number for place in places), default=13)
        loom = Rows(rows=min(rows, 700), pegs=min(max(pegs, 2), 10_000))
        question = phrase("ask-loom", rows=loom.rows, pegs=loom.pegs)
        self.blanks.append(Blank("loom", question, 1, (f"{loom.rows} x {loom.pegs}",)))
        return loom

    # --- the judge --------------------------------------------------------------------------------------

    def _pattern(self, draft: Draft, loom: Layout) -> Pattern:
        names = {letter: name for name, letter in self.colours.names.items()}
        letters = dict.fromkeys(m.colour for m in draft.moves if hasattr(m, "colour"))
        colours = tuple(Colour(letter=one, name=names.get(one, one), hex=GREY) for one in letters)
        stated = StatedCounts(bands=self.stated) if self.stated else None
        title = self.title or "?"
        return Pattern(
            pegwright=VERSION, title=title, loom=loom, colours=colours, steps=draft.moves, stated=stated,
            language=self.language,
        )  # fmt: skip

    def _judge(self, beam: list[Draft], loom: Layout) -> Draft:
        """Return the likeliest draft that holds, among those nearest to the stated counts.

        If all of them fall, return the likeliest; among equals, the one that loses fewest bands.
        """
        if len(beam) == 1:
            return beam[0]
        trials = [self._try(draft, loom) for draft in beam]
        fewest = min(trial.miscounted for trial in trials)
        likeliest_first = sorted(
            (trial for trial in trials if trial.miscounted == fewest), key=lambda trial: -trial.draft.score
        )
        fallen: list[tuple[Draft, int]] = []
        for trial in likeliest_first:  # a proof can take seconds, so stop at the first draft that holds
            falls = trial.count_falls()
            if not falls:
                return trial.draft
            fallen.append((trial.draft, falls))
        return min(fallen, key=lambda one: (-one[0].score, one[1]))[0]

    def _try(self, draft: Draft, loom: Layout) -> _Trial:
        if not draft.moves or len(draft.moves) > MOST_JUDGED_MOVES:
            return _Trial(draft, None, 0)
        history = replay_pattern(self._pattern(draft, loom))
        made = Counter(history.colours)
        return _Trial(draft, history, sum(made[letter] != count for letter, count in self.stated.items()))

    def _result(self, best: Draft, loom: Layout, uses: list[str], taken: list[int]) -> TextReading:
        chosen = dict(zip(taken, best.chosen, strict=True))
        sentences = []
        for at, piece in enumerate(self.pieces):
            reading = chosen.get(at)
            likelihood = reading.likelihood if reading else 1.0
            moves = reading.moves if reading else ()
            sentences.append(SentenceReading(piece.text, piece.line, uses[at], moves, likelihood))  # type: ignore[arg-type]
            for key in reading.blanks if reading else ():
                if all(blank.key != key for blank in self.blanks):
                    self.blanks.append(Blank(key, phrase(_QUESTIONS[key], line=piece.line), piece.line))
            if uses[at] == "unread":
                place = Location(line=piece.line, column=1)
                self.findings.append(finding("sentence-unread", place, sentence=piece.text[:120]))
        if self.too_long:
            self.findings.append(finding("text-too-long", limit=MOST_CHARACTERS))
        pattern = self._pattern(best, loom) if best.moves else None
        if pattern is None:
            self.findings.append(finding("no-steps-read", Location(line=1, column=1)))
        for blank in self.blanks if pattern else ():
            place = Location(line=blank.line, column=1)
            self.findings.append(finding("words-leave-open", place, question=blank.question))
        return TextReading(pattern, tuple(sentences), tuple(self.blanks), tuple(self.findings), self.language)


def _best(drafts: list[Draft]) -> list[Draft]:
    """Keep the likeliest drafts; among drafts with the same moves, the first."""
    kept: dict[tuple[object, ...], Draft] = {}
    for draft in sorted(drafts, key=lambda one: -one.score):
        kept.setdefault((draft.moves, draft.cursor, draft.block), draft)
        if len(kept) == BEAM:
            break
    return list(kept.values())
