"""What a step says is true of every round counted from it: each round is replayed against the words."""

from __future__ import annotations

import re
from pathlib import Path
from typing import NamedTuple

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


class Words(NamedTuple):
    """How a language says what a round may contradict, as regular expressions.

    `above` finds the loops above: all, where it begins like `every`, a number or one; `any` stands where
    there may be none. `lowest`, `top` and `counted` find the loops taken, `only` a lone one; `ways` are
    right, left, far, near. `letter` is a colour in a step; `order` comes before the letters of a box in
    order; `steps` finds the steps that a box or a detail speaks of, `times` how often a round is done
    again, `later` the loops above from round 2 on.
    """

    above: str
    every: str
    any: str
    lowest: str
    top: str
    counted: str
    only: str
    ways: tuple[str, str, str, str]
    letter: str
    order: str
    steps: str
    times: str
    later: str


WORDS = {
    "en": Words(
        r"(?:inside|up over) (all the loops(?:, if any,)?|the loop|the (\d+) loops) above",
        "all", "if any",
        r"the (?:(\d+) )?lowest loops?", r"the (?:(\d+) )?top loops?",
        r"loops? (\d+) (?:to (\d+) )?from the bottom", r"\bthe loop \(",
        ("to your right", "to your left", "away from you", "towards you"),
        r"\(?\b([A-Z])\)", "colours in order", r"[Ii]n steps? (\d+)(?: (?:to|and) (\d+))?",
        r"(once|\d+) more", r"there (?:is|are) (no|\d+) loops? above from round 2 on",
    ),
    "de": Words(
        r"(?:innen durch|über) (alle Schlaufen|die Schlaufe|die (\d+) Schlaufen) darüber",
        "alle", "falls dort welche liegen",
        r"die (?:(\d+) )?unterste(?:n)? Schlaufen?", r"die (?:(\d+) )?oberste(?:n)? Schlaufen?",
        r"die (?:Schlaufen )?(\d+)(?:\. Schlaufe| bis (\d+)) von unten", r"\bdie Schlaufe \(",
        (r"nach rechts", r"nach links", r"von dir weg", r"zu dir hin"),
        r"\(?\b([A-Z])\)", "Farben der Reihe nach", r"Schritte? (\d+)(?: (?:bis|und) (\d+))?",
        r"noch (einmal|\d+)(?: Mal)?", r"Ab Runde 2 lieg(?:t|en) (keine|\d+) Schlaufen? darüber",
    ),
    "es": Words(
        r"por (?:dentro|encima) (de todos los lazos|del lazo|de los (\d+) lazos) de encima",
        "de todos", "si los hay",
        r"(?:el lazo|los (\d+) lazos) más bajos?", r"(?:el lazo|los (\d+) lazos) más altos?",
        r"(?:el lazo|los lazos) (\d+) (?:a (\d+) )?desde abajo", r"\bel lazo \(",
        ("hacia tu derecha", "hacia tu izquierda", "hacia delante", r"hacia ti\b"),
        r"\(?\b([A-Z])\)", "colores por orden:", r"pasos? (\d+)(?: (?:a|y) (\d+))?",
        r"(una|\d+) ve(?:z|ces) más", r"Desde la vuelta 2 (?:no )?hay (ningún|\d+) lazos? encima",
    ),
}  # fmt: skip


def span(found: re.Match[str]) -> range:
    """Return the steps from the first to the last of a match of `steps`."""
    return range(int(found[1]), int(found[2] or found[1]) + 1)


class Replay:
    """The rounds of a lesson, and what its words claim of each move."""

    def __init__(self, pattern: Pattern, language: str = "en") -> None:
        self.words = WORDS[language]
        self.history: History = work(pattern)
        self.lesson: Lesson = lesson(pattern, language=language)
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
            return set(re.findall(self.words.letter, self.steps[index].instruction))
        step, number = self.round_of[index]
        tick = step.ticks[number] if number < len(step.ticks) else ""
        letters = set(re.findall(r"\(([A-Z])\)", tick))
        if self.words.order in tick:
            letters |= set(re.findall(r"\b[A-Z]\b", tick.split(self.words.order)[1]))
        some = re.search(self.words.steps, tick)
        if letters and some and self.taught_by(index).number not in span(some):
            letters = set()
        return letters or self.colour_told(self.model[index])


def bights(applied: AppliedMove) -> list:
    return [event.bight for event in applied.events if isinstance(event, Drawn | Moved | Lifted)]


def check_loops(how: Words, words: str, stack: tuple, taken: list, above: int) -> None:
    """Compare the named loops and the number above with the stack as it is."""
    low = min(stack.index(bight) for bight in taken)
    said = re.search(how.above, words)
    if said is None:
        assert above == 0, words
    elif said[1].startswith(how.every):
        assert above > 0 or how.any in words, words
    else:
        assert above == int(said[2] or 1), (words, above)
    if named := re.search(how.lowest, words):
        assert (low, len(taken)) == (0, int(named[1] or 1)), words
    elif named := re.search(how.top, words):
        assert (low + len(taken), len(taken)) == (len(stack), int(named[1] or 1)), words
    elif named := re.search(how.counted, words):
        assert (low + 1, low + len(taken)) == (int(named[1]), int(named[2] or named[1])), words
    else:
        assert re.search(how.only, words), words
        assert len(stack) == 1


def check_way(replay: Replay, words: str, index: int, a: str, b: str) -> None:
    """Compare a direction in the words with where the pegs stand before the maker."""
    history = replay.history
    pegs, sign = history.board.pegs, -1 if history.before(index).turned else 1
    dx, dy = (sign * (pegs[b].x_mm - pegs[a].x_mm), sign * (pegs[b].y_mm - pegs[a].y_mm))
    for said, so in zip(replay.words.ways, (dx > 1e-6, dx < -1e-6, dy > 1e-6, dy < -1e-6), strict=True):
        if re.search(said, words):
            assert so, (index, words)


@pytest.mark.parametrize("language", WORDS)
@pytest.mark.parametrize("name", PIECES)
def test_every_round_is_as_its_words_say(name: str, language: str) -> None:
    """Loops above, which loop, which way and which colour: in every round, not only in the first."""
    replay = Replay(PIECES[name], language)
    history, how = replay.history, replay.words
    for index, applied in enumerate(history.moves):
        words = replay.taught_by(index).instruction
        before, taken = history.before(index), bights(applied)
        works_loops = isinstance(applied.move, Hook | Slide | Transfer | Lift)
        for event in applied.events if works_loops else ():
            match event:
                case Drawn() if not event.skipped:
                    above = len(event.through) - len(event.slid)
                    check_loops(how, words, before.stack(event.source), taken, above)
                    check_way(replay, words, index, event.source, event.target)
                case Moved():
                    check_way(replay, words, index, event.source, event.target)
                case Lifted():
                    check_loops(how, words, before.stack(event.holder), taken, len(event.over))
                case _:
                    continue
            break
        if isinstance(applied.move, Place) and len(applied.move.over) == 2:
            check_way(replay, words, index, *applied.move.over)
        bands = [b.band for b in taken] or [e.band for e in applied.events if isinstance(e, Laid)]
        letters = {history.colours[band - 1] for band in bands}
        told = replay.colour_told(index) or letters  # several loops at once are named by their places
        assert letters <= told, (index, words, letters, told)


def loops_over(replay: Replay, index: int) -> int:
    """Count the loops that a move goes through or over."""
    events = (e for e in replay.history.moves[index].events if isinstance(e, Drawn | Lifted))
    counts = {len(e.through) - len(e.slid) if isinstance(e, Drawn) else len(e.over) for e in events}
    return counts.pop()


@pytest.mark.parametrize("language", WORDS)
@pytest.mark.parametrize("name", PIECES)
def test_rounds_are_counted_as_they_are_done(name: str, language: str) -> None:
    """How often a round is done again, a box for each, and how many loops lie above from round 2 on."""
    replay = Replay(PIECES[name], language)
    how, claims = replay.words, 0
    for each in replay.counted:
        step = replay.steps[each.rounds[0][0]]
        said = re.search(how.times, step.instruction)
        assert said, step.instruction
        assert (int(said[1]) if said[1].isdigit() else 1) == len(each.rounds) == len(step.ticks)
        for detail in step.detail:
            if later := re.search(how.later, detail):
                told = int(later[1]) if later[1].isdigit() else 0
                named = {n for found in re.finditer(how.steps, detail) for n in span(found)}
                done = [i for one in each.rounds for i in one if replay.taught_by(i).number in named]
                assert {loops_over(replay, i) for i in done} == {told}, detail
                claims += 1
    assert claims or name not in ("ebb-line", "riding-lights")


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
