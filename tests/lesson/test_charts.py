"""The chart of every peg, the closure, and the hands: what these pictures show is what was worked."""

from __future__ import annotations

import re
from collections import Counter
from itertools import groupby

import pytest

from pegwright.lesson import BadgeMark, FastenerMark, FingerMark, Lesson, Phrasebook, Picture
from pegwright.lesson.pictures.holding import draw_band_held, draw_hook_held
from pegwright.loom import Fastened, History
from pegwright.pattern import Clip, Knot, is_address, mirror
from tests.lesson.pieces import lesson, work
from tests.lesson.test_repeats import PIECES

NAMES = [name for name in PIECES if not name.endswith("-left")]
RUN = {"en": r"(\d+) of (\w+)", "de": r"(\d+) von (\w+)", "es": r"(\d+) de (\w+)"}


def told_stacks(pictures: tuple[Picture, ...], language: str) -> dict[str, list[str]]:
    """Read a chart's words: for each peg the letters of its loops, the lowest first."""
    found: dict[str, list[str]] = {}
    for picture in pictures:
        for entry in picture.text.split(": ", 1)[1].rstrip(".").split("; "):
            peg, _, runs = entry.partition(": ")
            assert peg not in found
            found[peg] = [c for n, c in re.findall(RUN[language], runs) for _ in range(int(n))]
    return found


def worked_stacks(history: History, index: int) -> dict[str, list[str]]:
    stacks = history.moves[index].after.stacks
    return {
        peg: [history.colours[bight.band - 1] for bight in stack]
        for peg, stack in stacks.items()
        if is_address(peg) and stack
    }


@pytest.mark.parametrize(("name", "language"), [(n, ("en", "de", "es")[i % 3]) for i, n in enumerate(NAMES)])
def test_a_chart_shows_every_peg_as_it_is(name: str, language: str) -> None:
    """After each phase of placing or working: all pegs that hold loops, their colours from below."""
    history, made = work(PIECES[name]), lesson(PIECES[name], language=language)
    checked = [phase for phase in made.phases if phase.check]
    assert checked
    for phase in checked:
        assert phase.check
        index = max(step.last for step in phase.steps) - 1
        right = worked_stacks(history, index)
        assert told_stacks(phase.check.chart, language) == right
        badges = [m.text for p in phase.check.chart for m in p.marks if isinstance(m, BadgeMark)]
        runs = [letter for stack in right.values() for letter, _ in groupby(stack)]
        assert Counter(badges) == Counter(runs)


@pytest.mark.parametrize("name", NAMES)
def test_the_closure_shows_the_loops_that_are_caught(name: str) -> None:
    history, made = work(PIECES[name]), lesson(PIECES[name])
    seen = 0
    for index, done in enumerate(history.moves):
        if not isinstance(done.move, Clip | Knot) or done.move.catch is not None:
            continue
        step = next(step for step in made.steps if step.first == index + 1)
        event = next(e for e in done.events if isinstance(e, Fastened))
        caught = Counter(history.colours[bight.band - 1] for bight in event.caught)
        assert step.closeup
        told = Counter({c: int(n) for n, c in re.findall(RUN["en"], step.closeup.text)})
        assert told == caught
        assert f"through {len(event.caught)} loop" in step.closeup.text
        kinds = [mark.kind for mark in step.closeup.marks if isinstance(mark, FastenerMark)]
        assert kinds == [event.kind]
        seen += 1
    assert seen or name == "reef-points"


def fingers(picture: Picture) -> list[tuple[tuple[float, float], ...]]:
    return [mark.spots for mark in picture.marks if isinstance(mark, FingerMark)]


@pytest.mark.parametrize("draw", [draw_band_held, draw_hook_held])
def test_the_other_hand_is_the_mirror_image(draw) -> None:
    right, left = (draw(Phrasebook("en"), hand) for hand in (False, True))
    assert fingers(left) == [tuple((-x, y) for x, y in spots) for spots in fingers(right)]
    assert (left.window.left_mm, left.window.right_mm) == (-right.window.right_mm, -right.window.left_mm)


def held(made: Lesson) -> list[tuple[str, Picture]]:
    return [(phase.name, phase.holding) for phase in made.phases if phase.holding]


def test_hands_are_shown_once_where_their_work_begins() -> None:
    """The lobster pot places and works in turn: each hold is shown once, for either hand."""
    pot = PIECES["lobster-pot"]
    shown = held(lesson(pot))
    assert [name for name, _ in shown] == ["place", "work"]
    other = held(lesson(mirror(pot), hand="left"))
    assert [fingers(picture) for _, picture in other] == [
        [tuple((-x, y) for x, y in spots) for spots in fingers(picture)] for _, picture in shown
    ]


@pytest.mark.parametrize("name", NAMES)
def test_every_round_has_its_number_in_a_picture(name: str) -> None:
    """Strips overlap, so a number that the torn edge of one would cut stands whole in the next."""
    for step in lesson(PIECES[name]).steps:
        marks = [mark for picture in step.pictures for mark in picture.marks]
        numbers = {mark.text for mark in marks if isinstance(mark, BadgeMark) and mark.role == "number"}
        assert not numbers or numbers == {str(k) for k in range(1, step.rounds + 2)}
