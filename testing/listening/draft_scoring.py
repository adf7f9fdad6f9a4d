"""How much of what was taught in a recording its draft has, step by step, and what it invents.

A step of the lesson counts as taught if one of its lines is said. It is right if the draft has a step with
the same moves, all of them, at its place in the order: every peg, the loop, how many at once, through how
many, every round of a repeat, and the colour by name (“blue” for slate blue will do). Where a fact was
planted wrong, the step as it was said is right as well. Any other step of a draft is invented, unless it is
a single move that is taught: a round that is shown, or something that is said twice.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple

import msgspec

from pegwright.listening import Cue, draft_recording
from pegwright.loom import print_move
from pegwright.pattern import Move, Repeat, expand
from pegwright.reading import TextReading
from pegwright.workshop import example_files, lesson_of, open_pattern, work
from testing.listening.recordings import Recording, script_of
from testing.listening.talk import Planted

Moves = tuple[str, ...]
"""What a step does, one line a move, with the names of the colours."""


class DraftScore(NamedTuple):
    """Steps taught; of those that drafts have, how many are right, and those invented, each named."""

    taught: int
    drafted: int
    right: int
    invented: tuple[str, ...]

    @property
    def share(self) -> float:
        """Share of the steps taught that the drafts have right."""
        return self.right / max(1, self.taught)


def score_drafts(recordings: Iterable[tuple[Recording, tuple[Cue, ...]]]) -> DraftScore:
    """Draft recordings and compare with what was taught in them."""
    taught = right = drafted = 0
    invented: list[str] = []
    for truth, cues in recordings:
        ours = taught_steps(truth)
        reading = draft_recording(cues, "en").reading
        theirs = draft_steps(reading)
        pairs = _match([one for _, one in ours], theirs)
        taught, right, drafted = taught + len(ours), right + len(pairs), drafted + len(theirs)
        matched = set(pairs.values())
        extra = {_pegs(one.said) for one in truth.planted if one.kind == "extra"}
        every = {move for _, ways in ours for way in ways for move in way}
        invented += [
            f"{truth.seed}: {len(one)} {one[:2]}"
            for k, one in enumerate(theirs)
            if k not in matched
            and not (
                len(one) == 1 and (_pegs(one[0]) in extra or any(_is_same_move(m, one[0]) for m in every))
            )
        ]
    return DraftScore(taught, drafted, right, tuple(invented))


def taught_steps(truth: Recording) -> list[tuple[int, frozenset[Moves]]]:
    """Return the steps that make moves and are said, each with the ways in which it may be written down."""
    moves, spans = _pattern_steps(truth.piece)
    script = script_of(truth.piece)
    lines = {one.line for one in truth.spoken if one.line >= 0}
    said = {script.lines[i].step for i in lines}
    changes = {script.lines[i].step for i in lines if "colours change" in script.lines[i].text}
    found = []
    order = {
        script.lines[one.line].step: k for k, one in reversed(list(enumerate(truth.spoken))) if one.line >= 0
    }
    for number in sorted(said & set(spans), key=lambda n: order[n]):
        first, last, before = spans[number]
        true = moves[first:last]
        block = moves[before:first] if before < first else true
        ways = {true, _from_below(true, block, number, truth.piece)}
        for planted in truth.planted:
            at = spans.get(planted.step)
            if planted.step == number:
                ways |= {other for way in ways for other in _as_said(way, planted, range(len(true)))}
            elif at is not None and before <= at[0] < first:
                inside = [k for k in range(len(true)) if at[0] <= before + k % len(block) < at[1]]
                ways |= {other for way in ways for other in _as_said(way, planted, inside)}
                ways |= {other for way in ways for other in _as_said(way, planted, range(len(true)))}
        if not any("only" in script.lines[i].text for i in lines if script.lines[i].step == number):
            ways |= {tuple(re.sub(r" through \d+", "", one) for one in way) for way in ways}
        if number not in changes and before < first:  # nobody said that the colours change
            ways |= {_same_colours(way, moves[before:first]) for way in ways}
        found.append((number, frozenset(ways)))
    return found


def _as_said(true: Moves, planted: Planted, places: Sequence[int]) -> set[Moves]:
    """Return moves as they were said, with a fact planted wrong in some of them."""
    kind, meant, said = planted.kind, planted.meant, planted.said
    if kind in ("peg", "colour"):
        whole = _change(true, places, rf"\b{meant}\b", said)
        return {whole, _change(true, places[:1], rf"\b{meant}\b", said)}
    if kind == "order":
        return {_change(true, places, r"\bloop 1\b", "loop -1")}
    if kind == "repeats" and len(places) == len(true):
        a_round = len(true) // int(meant)
        if int(said) < int(meant):
            return {true[: a_round * int(said)]}
        more = int(said) - int(meant)
        return {true + tuple(one for k in range(more) for one in _next_round(true, a_round, k + 1))}
    return set()


def _next_round(moves: Moves, a_round: int, n: int) -> Moves:
    """Return the round n after the last, moved on as the last was from the one before."""
    last, before = moves[-a_round:], moves[-2 * a_round : -a_round] or moves[-a_round:]

    def move_on(move: str, earlier: str) -> str:
        numbers = iter([int(k) for k in re.findall(r"(?<=[A-Z])\d+", earlier)])
        return re.sub(r"(?<=[A-Z])\d+", lambda m: str(int(m[0]) + n * (int(m[0]) - next(numbers))), move)

    return tuple(map(move_on, last, before))


def _change(moves: Moves, places: Sequence[int], pattern: str, said: str) -> Moves:
    return tuple(re.sub(pattern, said, one) if k in places else one for k, one in enumerate(moves))


def _from_below(true: Moves, block: Moves, number: int, piece: str) -> Moves:
    """Return moves with loops counted from below, as the narration does; the pattern may count from above."""
    moves, spans = _pattern_steps(piece)
    below = {}
    for step, (first, last, _) in spans.items():
        text = " ".join(line.text for line in script_of(piece).lines if line.step == step)
        found = re.search(r"[Cc]atch (?:loop (\d+) from the bottom|the lowest loop)", text)
        if last == first + 1 and found:
            below[moves[first]] = found[1] or "1"
    return tuple(
        re.sub(r"loop -\d+", f"loop {below.get(block[k % len(block)], '?')}", one)
        for k, one in enumerate(true)
    )


def _same_colours(moves: Moves, block: Moves) -> Moves:
    """Return the moves of further rounds in the colours of the first."""
    colours = [re.search(r"‹.*›", one) for one in block]
    return tuple(
        re.sub(r"‹.*›", found[0], one) if (found := colours[k % len(block)]) else one
        for k, one in enumerate(moves)
    )


@lru_cache(maxsize=32)
def _pattern_steps(piece: str) -> tuple[Moves, dict[int, tuple[int, int, int]]]:
    """Return the moves of a piece, and for each step its first, the one after its last, its block's first."""
    pattern = open_pattern(example_files()[piece]).pattern
    assert pattern is not None
    names = {colour.letter: colour.name for colour in pattern.colours}
    moves = tuple(plain_move(one.move, names) for one in expand(pattern).moves)
    steps = [one for one in lesson_of(work(pattern), "en").steps if one.first]
    spans = {}
    for one, after in zip(steps, [*steps[1:], None], strict=True):
        first, last = one.first - 1, after.first - 1 if after else len(moves)
        block = last - first
        script = " ".join(line.text for line in script_of(piece).lines if line.step == one.number)
        if found := re.search(r"Do steps? (\d+)", script):
            block = first - next(s.first - 1 for s in steps if s.number == int(found[1]))
            spans[one.number] = (first, last, first - block)
        else:
            spans[one.number] = (first, last, first)
    return moves, spans


def plain_move(move: Move, names: dict[str, str]) -> str:
    """Return a move in one line with the name of its colour, as in ‹slate blue›."""
    line = print_move(move)
    colour = getattr(move, "colour", None)
    if colour is not None:
        line = re.sub(
            rf"^(\w+) {colour}\b|\b{colour}$",
            lambda m: f"{m[1] or ''} ‹{names.get(colour, colour)}›".strip(),
            line,
        )
    return line


def draft_steps(reading: TextReading) -> list[Moves]:
    """Return what each step of a draft does; of a repeat the rounds after the first."""
    pattern = reading.pattern
    if pattern is None:
        return []
    names = {colour.letter: colour.name for colour in pattern.colours}
    found: list[Moves] = []
    for sentence in reading.sentences:
        again = False
        for step in sentence.steps:
            whole = msgspec.structs.replace(pattern, steps=(step,))
            moves = tuple(plain_move(one.move, names) for one in expand(whole).moves)
            if isinstance(step, Repeat):
                found.append(moves[len(moves) // int(step.times) :])
            elif again:
                found[-1] += moves  # the rounds that close a ring
            else:
                found.append(moves)
            again = again or isinstance(step, Repeat)
    return found


def _match(ours: Sequence[frozenset[Moves]], theirs: Sequence[Moves]) -> dict[int, int]:
    """Return which step of a draft is which of those taught: as many as fit in order."""
    best: list[list[int]] = [[0] * (len(theirs) + 1) for _ in range(len(ours) + 1)]
    for i in range(len(ours) - 1, -1, -1):
        for j in range(len(theirs) - 1, -1, -1):
            same = any(_is_same(way, theirs[j]) for way in ours[i])
            best[i][j] = max(best[i + 1][j], best[i][j + 1], best[i + 1][j + 1] + 1 if same else 0)
    pairs, i, j = {}, 0, 0
    while i < len(ours) and j < len(theirs):
        if best[i][j] == best[i + 1][j]:
            i += 1
        elif best[i][j] == best[i][j + 1]:
            j += 1
        else:
            pairs[i] = j
            i, j = i + 1, j + 1
    return pairs


def _is_same(true: Moves, drafted: Moves) -> bool:
    return len(true) == len(drafted) and all(map(_is_same_move, true, drafted))


def _is_same_move(true: str, drafted: str) -> bool:
    one, other = (re.search(r"‹(.*)›", move) for move in (true, drafted))
    if (one is None) != (other is None):
        return False
    if one and other and one[1].split()[-1] != other[1].split()[-1]:
        return False
    return re.sub("‹.*›", "", true) == re.sub("‹.*›", "", drafted)


def _pegs(text: str) -> tuple[str, ...]:
    return tuple(re.findall(r"\b[A-Z]\d+\b", text))
