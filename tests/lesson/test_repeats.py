"""What a step says is true of every round counted from it: each round is replayed against the words."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from pegwright.lesson import Lesson, LessonStep
from pegwright.lesson.scene.rounds import CountedRounds, group_rounds
from pegwright.loom import AppliedMove, Drawn, History, Laid, Lifted, Moved
from pegwright.pattern import (
    Hook,
    Lift,
    Pattern,
    PatternBuilder,
    Place,
    Round,
    Rows,
    Slide,
    Transfer,
    mirror,
    read_pattern,
)
from tests.lesson.pieces import buoys, dinghy, ebb, lesson, smack, work

EXAMPLES = Path(__file__).parents[2] / "examples"


def example(name: str) -> Pattern:
    found = read_pattern((EXAMPLES / f"{name}.json").read_bytes()).pattern
    assert found is not None
    return found


PIECES = {path.stem: example(path.stem) for path in sorted(EXAMPLES.glob("*.json"))} | {
    "ebb": ebb(), "ebb-spelled": ebb(spelled_out=True),
    "dinghy": dinghy(), "smack": smack(), "buoys": buoys(),
}  # fmt: skip
PIECES |= {f"{name}-left": mirror(PIECES[name]) for name in ("riding-lights", "lobster-pot", "herring-tail")}


class Replay:
    """The rounds of a lesson, and what its words claim of each move."""

    def __init__(self, pattern: Pattern) -> None:
        self.history: History = work(pattern)
        self.lesson: Lesson = lesson(pattern)
        ring = pattern.loom.pegs if isinstance(pattern.loom, Round) else 0
        taught = group_rounds(self.history.moves, ring)
        self.counted = [each for each in taught if isinstance(each, CountedRounds)]
        self.steps = {step.first - 1: step for step in self.lesson.steps if step.first}
        self.model: dict[int, int] = {}
        self.round_of: dict[int, tuple[LessonStep, int]] = {}
        for each in self.counted:
            step = self.steps[each.rounds[0][0]]
            for number, indices in enumerate(each.rounds):
                for a, b in zip(indices, each.model, strict=True):
                    if a not in self.model:
                        self.model[a], self.round_of[a] = b, (step, number)

    def taught_by(self, index: int) -> LessonStep:
        while index in self.model:
            index = self.model[index]
        return self.steps[index]

    def colour_told(self, index: int) -> set[str]:
        """Return the letters that the words give the move: its round's box, or else its model's."""
        if index not in self.model:
            return set(re.findall(r"\(?\b([A-Z])\)", self.steps[index].instruction))
        step, number = self.round_of[index]
        tick = step.ticks[number] if number < len(step.ticks) else ""
        letters = set(re.findall(r"\(([A-Z])\)", tick))
        if "colours in order" in tick:
            letters |= set(re.findall(r"\b[A-Z]\b", tick.split("colours in order")[1]))
        some = re.search(r"in steps? (\d+)(?: (?:to|and) (\d+))?", tick)
        if letters and some:
            first, last = int(some[1]), int(some[2] or some[1])
            if not first <= self.taught_by(index).number <= last:
                letters = set()
        return letters or self.colour_told(self.model[index])


def bights(applied: AppliedMove) -> list:
    return [event.bight for event in applied.events if isinstance(event, Drawn | Moved | Lifted)]


def check_loops(words: str, stack: tuple, taken: list, above: int) -> None:
    """Compare the named loops and the number above with the stack as it is."""
    low = min(stack.index(bight) for bight in taken)
    said = re.search(
        r"(?:inside|up over) (all the loops(?:, if any,)?|the loop|the (\d+) loops) above", words
    )
    if said is None:
        assert above == 0, words
    elif said[1] == "all the loops":
        assert above > 0, words
    elif not said[1].startswith("all"):
        assert above == int(said[2] or 1), (words, above)
    if named := re.search(r"the (?:(\d+) )?lowest loops?", words):
        assert (low, len(taken)) == (0, int(named[1] or 1)), words
    elif named := re.search(r"the (?:(\d+) )?top loops?", words):
        assert (low + len(taken), len(taken)) == (len(stack), int(named[1] or 1)), words
    elif named := re.search(r"loops? (\d+) (?:to (\d+) )?from the bottom", words):
        assert (low + 1, low + len(taken)) == (int(named[1]), int(named[2] or named[1])), words
    else:
        assert re.search(r"\bthe loop \(", words), words
        assert len(stack) == 1


def check_way(words: str, history: History, index: int, a: str, b: str) -> None:
    """Compare a direction in the words with where the pegs stand before the maker."""
    pegs, sign = history.board.pegs, -1 if history.before(index).turned else 1
    dx, dy = (sign * (pegs[b].x_mm - pegs[a].x_mm), sign * (pegs[b].y_mm - pegs[a].y_mm))
    for said, so in (
        ("to your right", dx > 1e-6), ("to your left", dx < -1e-6),
        ("away from you", dy > 1e-6), ("towards you", dy < -1e-6),
    ):  # fmt: skip
        if said in words:
            assert so, (index, words)


@pytest.mark.parametrize("name", PIECES)
def test_every_round_is_as_its_words_say(name: str) -> None:
    """Loops above, which loop, which way and which colour: in every round, not only in the first."""
    replay = Replay(PIECES[name])
    history = replay.history
    for index, applied in enumerate(history.moves):
        words = replay.taught_by(index).instruction
        before, taken = history.before(index), bights(applied)
        works_loops = isinstance(applied.move, Hook | Slide | Transfer | Lift)
        for event in applied.events if works_loops else ():
            match event:
                case Drawn() if not event.skipped:
                    above = len(event.through) - len(event.slid)
                    check_loops(words, before.stack(event.source), taken, above)
                    check_way(words, history, index, event.source, event.target)
                case Moved():
                    check_way(words, history, index, event.source, event.target)
                case Lifted():
                    check_loops(words, before.stack(event.holder), taken, len(event.over))
                case _:
                    continue
            break
        if isinstance(applied.move, Place) and len(applied.move.over) == 2:
            check_way(words, history, index, *applied.move.over)
        bands = [b.band for b in taken] or [e.band for e in applied.events if isinstance(e, Laid)]
        letters = {history.colours[band - 1] for band in bands}
        told = replay.colour_told(index) or letters  # several loops at once are named by their places
        assert letters <= told, (index, words, letters, told)


def test_the_second_round_is_taught_where_it_differs() -> None:
    """On the ebb line one loop lies above at first, then two; its colours alternate, and the boxes say so."""
    steps = lesson(PIECES["ebb-line"]).steps
    again = next(step for step in steps if step.rounds == 23)
    assert "inside all the loops above" in steps[again.number - 2].instruction
    assert "In step 8 there are 2 loops above from round 2 on." in again.detail
    assert again.ticks[:2] == ("Round 2: A24 → A23, slate blue (A)", "Round 3: A23 → A22, foam white (F)")


def test_a_box_gives_the_colour_of_the_steps_that_change() -> None:
    """Riding lights: the caps of even rounds are yellow, and only they change."""
    steps = lesson(PIECES["riding-lights"]).steps
    ticks = [step.ticks for step in steps if step.ticks]
    assert ticks[1] == ("Round 2: B4–B5 to B4, all bands buoy red (R)",)
    assert ticks[3][0] == "Round 2: B10 → B9 to C10 → B9, lamp yellow (L) in steps 17 to 20"


def test_a_direction_that_turns_with_the_ring_is_not_said() -> None:
    """On a round loom the next peg lies elsewhere each time."""
    words = lesson(PIECES["lobster-pot"]).steps[2].instruction
    assert words == "Stretch one sand band (S) from peg A1 to peg A2."


def test_a_direction_that_holds_is_said() -> None:
    m = PatternBuilder("Line", Rows(rows=1, pegs=8))
    m.colour("S", "sand", "#d8c8a0")
    with m.repeat(7, pegs=1):
        m.place("S", "A1", "A2")
    words = lesson(m.pattern()).steps[2].instruction
    assert words == "Stretch one sand band (S) from peg A1 to peg A2, away from you."
