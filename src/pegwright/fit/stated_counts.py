"""Compare counts that the designer wrote down with what the pattern takes.

`pattern.stated` is compared with the whole piece. A number in the text (“25 bands”, “12 slate”, “6 A”,
“A: 38”, “1 clip”) may be about a part, so it is accepted if it fits the whole piece, one or all workings
of any motif, one or all rounds of any repeat, or the step beside it.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from functools import cache, lru_cache
from itertools import accumulate, chain
from typing import Any, NamedTuple

import msgspec

from pegwright.finding import Finding, Fix, Location, Phrase, finding, phrase, sum_up
from pegwright.pattern import (
    MAX_DEPTH,
    Bind,
    Clip,
    Expansion,
    Extend,
    Hang,
    Motif,
    Move,
    Pattern,
    PatternStep,
    Place as Placed,
    Repeat,
    Use,
    Wind,
    colours_by_letter,
    motifs_by_name,
)

__all__ = ["QuotedCount", "check_stated_counts", "quoted_counts"]

MOST_TEXT = 50_000
"""Characters of text that are read; a handout has a few thousand."""

_CLIP, _ALL = "clip", "bands"  # no colour letter is as long as “bands”, and none means a clip here
_WORDS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_NUMBERS = {word: number for number, word in enumerate(_WORDS, start=1)}
_NUMBER = rf"(?P<number>\d{{1,6}}|{'|'.join(_WORDS[1:])})"  # “one band” is nearly always just a phrase
_ABOUT_A_PART = "first last next every each up another other extra by"
_ABOUT_A_RANGE = "about around roughly or to than least most – - /"
_NOT_AFTER = frozenset(f"{_ABOUT_A_PART} {_ABOUT_A_RANGE}".split())
_NOT_BEFORE = r"(?!\s+(?:each|every|per|or|to|at|apart|from|more|spare|between|above|below|long|wide)\b)"
_PHRASE_ENDS = r"(?=\s*(?:$|[.,;:!?)\]]|and\b|in\s+all\b|altogether\b))"


class QuotedCount(NamedTuple):
    """A count found in a text: the span of its number, its value, and what it counts.

    `what` holds colour letters, “bands” for all bands, or “clip”.
    """

    start: int
    end: int
    number: int
    what: frozenset[str]
    quote: str


def check_stated_counts(pattern: Pattern, expansion: Expansion) -> tuple[Finding, ...]:
    """Return a finding for every stated count that disagrees; none if steps could not be expanded."""
    if expansion.findings:
        return ()
    whole = _count_moves(doing.move for doing in expansion.moves)
    return sum_up(chain(_check_stated(pattern, whole), _check_texts(pattern, expansion, whole)))


def quoted_counts(text: str, names: dict[str, frozenset[str]]) -> Iterator[QuotedCount]:
    """Yield the counts in a text. `names` maps a colour's letter, and its name, to its letters."""
    by_case = {name.casefold(): letters for name, letters in names.items()}
    for match in _count_pattern(tuple(names)).finditer(text):
        before = re.findall(r"\w+|[–\-/]", text[max(0, match.start() - 20) : match.start()])[-1:]
        if before and before[0].casefold() in _NOT_AFTER:
            continue
        group = "number" if match["number"] else "after"
        word = match[group].casefold()
        colour = match["colour"] or match["named"]
        what: frozenset[str] | None = frozenset({_CLIP if match["clips"] else _ALL})
        if colour:
            what = names.get(colour) or by_case.get(colour.casefold())
        number = int(word) if word.isdigit() else _NUMBERS.get(word)
        # Case-insensitive matching equates more letters (ı, i) than case folding does.
        if what is not None and number is not None:
            yield QuotedCount(match.start(group), match.end(group), number, what, match[0].strip())


@lru_cache(maxsize=8)
def _count_pattern(names: tuple[str, ...]) -> re.Pattern[str]:
    """Return the pattern of a count: letters match in their own case (“a” is not “A”), names in any case."""
    options = [
        re.escape(n) if len(n) < 3 else f"(?i:{re.escape(n)})" for n in sorted(names, key=len, reverse=True)
    ]
    colour = "|".join(options) or r"(?!)"
    return re.compile(
        rf"(?<![\w.])(?i:{_NUMBER})\s{{0,2}}[×x]?\s{{1,2}}"
        rf"(?:(?P<colour>{colour})(?:\s{{1,2}}(?i:bands?)\b{_NOT_BEFORE}|{_PHRASE_ENDS})"
        rf"|(?i:bands?)\b{_NOT_BEFORE}|(?P<clips>(?i:clips?))\b{_NOT_BEFORE})"
        rf"|(?<!\w)(?P<named>{colour})\s{{0,2}}[:=×]\s{{0,2}}(?P<after>\d{{1,6}})(?!\w|\.\d|\s{{0,2}}[×:])"
    )


def _check_stated(pattern: Pattern, whole: Counter[str]) -> Iterator[Finding]:
    if pattern.stated is None:
        return
    colours = colours_by_letter(pattern)
    for letter, number in pattern.stated.bands.items():
        if number != whole[letter]:
            listed = letter in colours
            what = (
                phrase("stated-bands", letter=letter, name=colours[letter].name)
                if listed
                else phrase("stated-bands-unlisted", letter=letter)
            )
            yield _wrong_count_finding(f"/stated/bands/{letter}", number, what, whole[letter])
    clips = pattern.stated.clips
    if clips is not None and clips != whole[_CLIP]:
        yield _wrong_count_finding("/stated/clips", clips, phrase("stated-clips"), whole[_CLIP])


def _wrong_count_finding(path: str, stated: int, what: Phrase, counted: int) -> Finding:
    fix = Fix(phrase("fix-write", number=counted), ({"op": "replace", "path": path, "value": counted},))
    return finding(
        "stated-count-wrong", Location(path=path), fix=fix, stated=stated, what=what, counted=counted
    )


def _check_texts(pattern: Pattern, expansion: Expansion, whole: Counter[str]) -> Iterator[Finding]:
    names: dict[str, frozenset[str]] = {}
    for colour in pattern.colours:
        names[colour.name] = names.get(colour.name, frozenset()) | {colour.letter}
    names |= {colour.letter: frozenset({colour.letter}) for colour in pattern.colours}
    parts = cache(
        lambda: _count_parts(pattern, expansion)
    )  # not needed while the numbers fit the whole piece
    own = {doing.path: doing.move for doing in reversed(expansion.moves)}
    accepted: dict[frozenset[str], set[int]] = {}
    texts = list(_all_texts(msgspec.to_builtins(pattern)))
    sofar = accumulate(len(text) for _, text in texts)
    texts = [one for one, length in zip(texts, sofar, strict=True) if length <= MOST_TEXT]
    folded = "\n".join(text for _, text in texts).casefold()
    names = {name: letters for name, letters in names.items() if name.casefold() in folded}
    for path, text in texts:
        step = path.rpartition("/")[0]
        beside = _count_moves([own[step]] if step in own else [])
        for one in quoted_counts(text, names):
            counted = sum(whole[w] for w in one.what)
            if one.number in (counted, sum(beside[w] for w in one.what)):
                continue
            if one.what not in accepted:
                accepted[one.what] = {sum(part[w] for w in one.what) for part in parts()}
            if one.number in accepted[one.what]:
                continue
            corrected = f"{text[: one.start]}{counted}{text[one.end :]}"
            fix = Fix(
                phrase("fix-write", number=counted), ({"op": "replace", "path": path, "value": corrected},)
            )
            yield finding(
                "text-count-wrong",
                Location(path=path),
                fix=fix,
                quote=one.quote,
                stated=one.number,
                counted=counted,
            )


def _all_texts(raw: Any) -> Iterator[tuple[str, str]]:
    """Yield the path and text of the title and of every note, warning and picture hint."""
    todo = [("", raw)]
    while todo:
        path, value = todo.pop()
        if isinstance(value, dict):
            for key in ("title", "notes", "note", "warning", "picture"):
                if isinstance(value.get(key), str):
                    yield f"{path}/{key}", value[key]
            todo += [(f"{path}/{key}", value[key]) for key in ("steps", "motifs") if key in value]
        else:
            todo += [(f"{path}/{i}", value[i]) for i in reversed(range(len(value)))]


def _count_parts(pattern: Pattern, expansion: Expansion) -> list[Counter[str]]:
    """Return the counts of every part that a text may be about, each once."""
    groups: defaultdict[Any, Counter[str]] = defaultdict(Counter)
    for doing in expansion.moves:
        if doing.motif:
            _add_move(groups[doing.motif], doing.move)
        for k, (path, _, _) in enumerate(doing.rounds):
            if path.startswith("/steps"):  # repeats inside motifs are counted below
                for key in (doing.rounds[: k + 1], (*doing.rounds[:k], path)):
                    _add_move(groups[key], doing.move)
    counter = _MotifCounter(pattern)
    for motif in pattern.motifs:
        counter.motif(motif, 0)
    parts = (*groups.values(), *counter.motifs.values(), *counter.repeats)
    return list({frozenset(part.items()): part for part in parts}.values())


class _MotifCounter:
    """Counts the bands of motifs in their own letters and counts, without making their moves.

    `repeats` collects one round, and all rounds, of every repeat met on the way.
    """

    def __init__(self, pattern: Pattern) -> None:
        self.known = motifs_by_name(pattern)
        self.motifs: dict[str, Counter[str]] = {}
        self.repeats: list[Counter[str]] = []

    def motif(self, motif: Motif, deep: int) -> Counter[str]:
        if motif.name not in self.motifs:
            self.motifs[motif.name] = Counter()  # a motif inside itself adds nothing
            self.motifs[motif.name] = self.steps(motif.steps, motif, deep)
        return self.motifs[motif.name]

    def steps(self, steps: tuple[PatternStep, ...], motif: Motif, deep: int) -> Counter[str]:
        count: Counter[str] = Counter()
        if deep > MAX_DEPTH:
            return count
        for step in steps:
            match step:
                case Repeat():
                    times = motif.counts.get(step.times, 0) if isinstance(step.times, str) else step.times
                    named = self.steps(step.steps, motif, deep + 1)
                    rounds = _count_rounds(named, step, times)
                    self.repeats += [_count_rounds(named, step, 1), rounds]
                    count.update(rounds)
                case Use():
                    if step.name in self.known:
                        for what, n in self.motif(self.known[step.name], deep + 1).items():
                            count[step.colours.get(what, what)] += n
                case _:
                    _add_move(count, step)
        return count


def _count_rounds(named: Counter[str], step: Repeat, times: int) -> Counter[str]:
    """Return the bands of so many rounds, given those of one by the letters that its steps name."""
    count: Counter[str] = Counter()
    for what, n in named.items():
        turns = step.colours.get(what, (what,))
        for k, letter in enumerate(turns):
            count[letter] += n * len(range(k, times, len(turns)))
    return count


def _count_moves(moves: Iterable[Move]) -> Counter[str]:
    """Count bands by letter, all bands, and clips."""
    count: Counter[str] = Counter()
    for move in moves:
        _add_move(count, move)
    return count


def _add_move(count: Counter[str], move: Move) -> None:
    if isinstance(move, Clip):
        count[_CLIP] += 1
    elif isinstance(move, Placed | Wind | Hang | Bind | Extend):
        bands = move.bands if isinstance(move, Extend) else move.together if isinstance(move, Bind) else 1
        count[move.colour] += bands
        count[_ALL] += bands
