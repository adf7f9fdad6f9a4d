"""Read free text: sentences become readings, readings a beam of drafts, and the loom is the judge.

A reading that the loom refuses is dropped at once. At the end the surviving drafts are proved: a draft whose
bands fall off, or whose counts differ from those the text states, loses to one that holds. What the words
leave out is a blank, filled only with the likeliest of the answers that the blank offers.
"""

from __future__ import annotations

import itertools
import re
from collections import Counter
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding, Location, finding, phrase
from pegwright.loom import History, State, board_of, parse_move, replay_pattern
from pegwright.pattern import (
    VERSION,
    Colour,
    Layout,
    Move,
    Pattern,
    Rows,
    StatedCounts,
    named_pegs,
    parse_address,
)
from pegwright.proof import prove
from pegwright.reading.clauses import (
    MOST_CLAUSES,
    Clause,
    clauses_of,
    groupings,
    hand_on,
    is_empty,
    says_several_things,
)
from pegwright.reading.correction import correct_reading, corrected_words
from pegwright.reading.draft import Draft, Gap, Reading
from pegwright.reading.grammar import readings
from pegwright.reading.head import Colours, bands_of, is_about_counts, loom_of
from pegwright.reading.lexicon import Lexicon, Token, free_languages
from pegwright.reading.sentence import NO_COLOURS, NamedBands, Sentence
from pegwright.reading.split import MOST_CHARACTERS, Piece, free_language, split_sentences
from pegwright.reading.text_reading import Answers, Blank, SentenceReading, TextReading
from pegwright.structure import structure_of

BEAM = 8
MOST_JUDGED_MOVES = 3_000
MOST_MOVES = 20_000
MOST_SHOWN = 4
MOST_GROUPINGS = 24
_OF_THE_TRADE = frozenset(
    (  # noqa: SIM905
        "band place wind turn hook lift last-band add again go-on same cap clip knot start step times "
        "peg-name loop loops loom row chain ends free-end center half-twist correction oclock left right half"
    ).split()
)
"""What a sentence that makes nothing does not speak of."""
_MOVES = frozenset(
    "place wind hook lift transfer hang slide turn bind extend clip knot".split()  # noqa: SIM905
)
"""The first words of the notation, whatever the language of the text."""
_WHOLE = frozenset(
    "peg-name left right far near center oclock cap again go-on same need".split()  # noqa: SIM905
)
"""What makes a clause about a band whole."""


_QUESTIONS = {
    "colour": "ask-colour",
    "turns": "ask-turns",
    "chain-bands": "ask-chain-bands",
    "peg": "ask-peg",
    "loop": "ask-loop",
    "times": "ask-times",
    "loops": "ask-how-many-loops",
    "pegs": "ask-pegs",
}
"""What a blank asks, by its key."""
_ASKED_TOGETHER = ("colour", "turns", "loop")
AS_LIKELY = 0.45
"""A reading is not sure where another is at least so likely beside it: then the maker is asked."""


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


def read_free(
    text: str, language: str | None = None, loom: Layout | None = None, answers: Answers | None = None
) -> TextReading:
    """Read a maker's text. Never raises on bad input.

    `language` is found out where it is not given; without a word list for it nothing is read. `loom` answers
    the blank of that name, `answers` the others.
    """
    language = language or free_language(text)
    if language not in free_languages():
        place = Location(line=1, column=1)
        return TextReading(None, findings=(finding("language-unread", place, language=language),))
    return _FreeReader(text, language, loom, answers or {}).read()


class _FreeReader:
    def __init__(self, text: str, language: str, loom: Layout | None, answers: Answers) -> None:
        self.language = language
        self.lexicon = Lexicon(language)
        self.too_long = len(text) > MOST_CHARACTERS
        self.pieces = split_sentences(text)
        self.tokens = [self.lexicon.tokens(piece.text) for piece in self.pieces]
        self._join_clauses()
        self.answers = answers
        self.colours = Colours(self.lexicon.colours)
        self.stated: dict[str, int] = {}
        self.given = loom
        self.told: Layout | None = None
        self.title = ""
        self.taken: list[int] = []
        self.asked: dict[tuple[str, str | int], Blank] = {}
        self.findings: list[Finding] = []

    def read(self) -> TextReading:
        uses = [self._head(at) for at in range(len(self.pieces))]
        loom = self.given or self.told or loom_answered(self.answers) or self._likely_loom()
        beam = [Draft(board_of(loom), State())]
        taken = self.taken = []
        for at in range(len(self.pieces)):
            if uses[at]:
                continue
            following = self._go_on(beam, at)
            if not following:
                uses[at] = "aside" if self._is_aside(at) else "unread"
                continue
            uses[at] = "steps"
            taken.append(at)
            beam = following
        best = self._judge(beam, loom)
        return self._result(best, loom, uses, taken)

    def _go_on(self, beam: list[Draft], at: int) -> list[Draft]:
        """Return the drafts that the next sentence leads to: as a whole, or clause by clause."""
        tokens = tuple(self.tokens[at])
        if words := corrected_words(tokens):
            return self._correct(beam, at, words)
        clauses = clauses_of(tokens)
        if not says_several_things(clauses):
            whole = self._extend_all(beam, at, tokens, self.pieces[at].text)
            if whole or len(clauses) < 2:
                return whole
        if self._sentence(at, tokens).breaks_off():
            return []
        if len(clauses) > MOST_CLAUSES or any(token.kind == "care" for token in tokens):
            return []
        for grouping in itertools.islice(groupings(clauses), MOST_GROUPINGS):
            drafts = beam
            before: Clause = ()
            for clause in grouping:
                if not is_empty(clause):
                    full = hand_on(clause, before)
                    drafts = self._extend_all(drafts, at, full) if drafts else []
                    before = full
            if drafts and before:
                return [draft.join_readings(len(beam[0].chosen)) for draft in drafts]
        return []

    def _is_aside(self, at: int) -> bool:
        """Say whether a sentence that was not read speaks of nothing that is made."""
        sentence = self._sentence(at, tuple(self.tokens[at]))
        if sentence.has("care") and not sentence.pegs:
            return True
        numbers = [token.number for token in sentence.tokens if token.kind == "number"]
        counts = any(number > 1 for number in numbers) or sentence.tokens[0].kind == "number"
        asks = next((token.kind for token in sentence.tokens if token.kind != "and"), "") == "do"
        moves = sentence.tokens[0].text.lower() in _MOVES  # a line of the notation that is not whole
        return not (counts or asks or moves or sentence.bands or sentence.has(*_OF_THE_TRADE))

    def _correct(self, beam: list[Draft], at: int, words: Clause) -> list[Draft]:
        """Return the drafts with the last sentence corrected; a whole sentence stands in its place."""
        said = self._sentence(at, words)
        drafts = []
        for draft in beam:
            earlier = draft.take_back()
            if earlier is None or not draft.chosen:
                continue
            reading = correct_reading(said, draft.chosen[-1])
            if reading is not None:
                made = earlier.extend(reading)
                drafts += [made] if made else []
            else:
                drafts += self._extend_all([earlier], at, words)
        return _best(drafts)

    def _extend_all(self, beam: list[Draft], at: int, tokens: Clause, text: str = "") -> list[Draft]:
        """Return the best drafts that a sentence or clause leads to; none where it leads nowhere."""
        sentence = self._sentence(at, tokens)
        following: list[Draft] = []
        for draft in beam:
            found = [(draft.extend(one), one) for one in self._readings(text, sentence, draft)]
            accepted = {one: made for made, one in found if made and len(made.moves) <= MOST_MOVES}
            following += self._ask_which(accepted, sentence)
        return _best(following)

    def _ask_which(self, accepted: dict[Reading, Draft], sentence: Sentence) -> list[Draft]:
        """Return the drafts of the readings that the machine takes; a gap where two are about as likely."""
        answer = sentence.answers.get("pegs")
        if answer and any(pegs_of(one.moves) == answer for one in accepted):
            return [made for one, made in accepted.items() if pegs_of(one.moves) == answer]
        drafts = []
        for reading, made in accepted.items():
            near = [one for one in accepted if AS_LIKELY * reading.likelihood <= one.likelihood]
            others = [pegs_of(one.moves) for one in near if one.likelihood <= reading.likelihood]
            labels = tuple(dict.fromkeys((pegs_of(reading.moves), *others)))
            asked = any(gap.key == "peg" for gap in reading.gaps)
            sure = (
                reading
                if asked or len(labels) < 2
                else reading._replace(gaps=(*reading.gaps, Gap("pegs", labels)))
            )
            drafts.append(made._replace(chosen=(*made.chosen[:-1], sure)))
        return drafts

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
        kinds = {token.kind for token in tokens}
        if loom := loom_of(tokens):
            self.told = self.told or loom.loom
            made = kinds & {"place", "hook", "lift", "wind"} and kinds & {"band", "loop", "loops", "cap"}
            return "" if made or "peg-name" in kinds else "head"
        if is_about_counts(tokens):
            self._counts(tokens)
            return "head"
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
                if after.kind != "word" or after.text.lower() in NO_COLOURS:
                    break
                words.append(after.text)
            follows = tokens[at + 1 + len(words) : at + 2 + len(words)]
            listed = not follows or follows[0].kind in ("and", "mark")  # “12 blue and 15 red bands”
            known = bool(words) and self.colours.plain(words[-1]) in self.lexicon.colours.values()
            if words and ((follows and follows[0].kind == "band") or (listed and known)):
                letter = self.colours.letter(" ".join(words))
                self.stated[letter] = token.number

    def _sentence(self, at: int, tokens: Clause) -> Sentence:
        bands = bands_of(list(tokens), self.colours, self.pieces[at].text, NO_COLOURS, self.language == "es")
        answers = {key: answer for (key, sentence), answer in self.answers.items() if sentence == at}
        named = answers.get("colour", "").strip()[:60]
        if named and (letter := self.colours.letter(named)):
            bands = tuple(one if one.letter else one._replace(letter=letter) for one in bands)
            bands = bands or (NamedBands(letter),)
        only = next(iter(self.stated)) if len(self.stated) == 1 else ""
        return Sentence(tokens, bands, answers, only, self._sentences_of_steps(tokens))

    def _sentences_of_steps(self, tokens: Clause) -> tuple[int, ...]:
        """Return which of the sentences read so far belong to the numbered steps that a sentence names."""
        named: list[int] = []
        for here, token in enumerate(tokens):
            if token.kind == "step" and all(one.kind != "last" for one in tokens):
                numbers = list(tokens[here + 1 : here + 4])
                for at, (one, other) in enumerate(itertools.pairwise(numbers)):
                    if one.kind == other.kind == "number":  # “steps 1 and 2 two more times”
                        numbers = numbers[: at + 1]
                        break
                named = [
                    one.number
                    for one in itertools.takewhile(_goes_on_numbering, numbers)
                    if one.kind == "number"
                ]
        if not named:
            return ()
        first, last = min(named), max(named)
        return tuple(order for order, at in enumerate(self.taken) if first <= self.pieces[at].step <= last)

    def _readings(self, text: str, sentence: Sentence, draft: Draft) -> list[Reading]:
        try:
            move = parse_move(text)
            msgspec.convert(msgspec.to_builtins(move), type(move))
        except (ValueError, msgspec.ValidationError):  # not the notation, or beyond a document: a sentence
            return [one for one in readings(sentence, draft) if self._names_colours(one, sentence)]
        return [Reading((move,), 1.0, colour=getattr(move, "colour", ""))]

    def _names_colours(self, reading: Reading, sentence: Sentence) -> bool:
        """Say whether the bands of a reading have every colour that its sentence names."""
        letters = {move.colour for move in reading.moves if hasattr(move, "colour")}
        names = {name for name, letter in self.colours.names.items() if letter in letters}
        words = {word for name in names for word in name.split()}
        plain = self.colours.plain
        said = {plain(token.text) for token in sentence.tokens if token.kind == "word"}
        return not letters or words >= {word for word in said if word in self.lexicon.colours.values()}

    def _likely_loom(self) -> Layout:
        """Return the smallest loom with the pegs of the text, and ask for the real one."""
        places = [parse_address(t.text) for tokens in self.tokens for t in tokens if t.kind == "peg-name"]
        rows = max((place.row for place in places), default=0) + 1
        pegs = max((place.number for place in places), default=13)
        loom = Rows(rows=min(rows, 700), pegs=min(max(pegs, 2), 10_000))
        question = phrase("ask-loom", rows=loom.rows, pegs=loom.pegs)
        self.asked["loom", ""] = Blank("loom", question, 1, (f"{loom.rows} x {loom.pegs}",), (-1,))
        return loom

    # --- the judge --------------------------------------------------------------------------------------

    def _pattern(self, draft: Draft, loom: Layout) -> Pattern:
        names = {letter: name for name, letter in self.colours.names.items()}
        letters = dict.fromkeys(m.colour for m in draft.moves if hasattr(m, "colour"))
        colours = tuple(
            Colour(letter=one, name=names.get(one, one), hex=self.lexicon.tint(names.get(one, one)))
            for one in letters
        )
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
            for gap in reading.gaps if reading else ():
                self._add_blank(gap, at)
            if uses[at] == "unread":
                place = Location(line=piece.line, column=1)
                self.findings.append(finding("sentence-unread", place, sentence=piece.text[:120]))
        if self.too_long:
            self.findings.append(finding("text-too-long", limit=MOST_CHARACTERS))
        pattern = self._pattern(best, loom) if best.moves else None
        if pattern is None:
            self.findings.append(finding("no-steps-read", Location(line=1, column=1)))
        blanks = tuple(self.asked.values())
        for blank in blanks if pattern else ():
            place = Location(line=blank.line, column=1)
            self.findings.append(finding("words-leave-open", place, question=blank.question))
        return TextReading(pattern, tuple(sentences), blanks, tuple(self.findings), self.language)

    def _add_blank(self, gap: Gap, at: int) -> None:
        """Ask for what a sentence leaves open; a colour is asked for once, for all bands without one."""
        choices = gap.offers
        if gap.key == "colour":
            names = {letter: name for name, letter in self.colours.names.items()}
            first = [names[one] for one in gap.offers if one in names]
            choices = tuple(dict.fromkeys([*first, *names.values()]))
        same = (gap.key, choices[0] if choices and gap.key in _ASKED_TOGETHER else at)
        sentences = (*(self.asked[same].sentences if same in self.asked else ()), at)
        lines = tuple(dict.fromkeys(self.pieces[one].line for one in sentences))
        question = phrase(_QUESTIONS[gap.key], lines=lines, count=len(lines))
        self.asked[same] = Blank(gap.key, question, lines[0], choices, sentences)


def loom_answered(answers: Answers) -> Layout | None:
    """Return the loom that was answered as rows x pegs, as in 3 x 13; None where none was."""
    said = re.fullmatch(r"\s*(\d{1,3})\s*[x×]\s*(\d{1,5})\s*", answers.get(("loom", -1), ""))
    rows, pegs = (int(said[1]), int(said[2])) if said else (0, 0)
    return Rows(rows=rows, pegs=pegs) if 1 <= rows <= 700 and 1 <= pegs <= 10_000 else None


def pegs_of(moves: tuple[Move, ...]) -> str:
    """Return the pegs that moves are on, as one tells one reading from another: “B1 A2, A2 B3”."""
    shown = [" ".join(named_pegs(move)) for move in moves[:MOST_SHOWN]]
    more = f" … {' '.join(named_pegs(moves[-1]))} ({len(moves)})" if len(moves) > MOST_SHOWN else ""
    return ", ".join(shown) + more


def _goes_on_numbering(token: Token) -> bool:
    return token.kind in ("number", "to", "and", "until")


def _best(drafts: list[Draft]) -> list[Draft]:
    """Keep the likeliest drafts; among drafts with the same moves, the first."""
    kept: dict[tuple[object, ...], Draft] = {}
    for draft in sorted(drafts, key=lambda one: -one.score):
        kept.setdefault((draft.moves, draft.cursor, draft.block), draft)
        if len(kept) == BEAM:
            break
    return list(kept.values())
