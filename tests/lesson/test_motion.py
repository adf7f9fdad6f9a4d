"""The film before it is painted: motion begins and ends where the machine says, and nothing is left out."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

import pytest

from pegwright.lesson import (
    BandMark,
    FastenerMark,
    HookMark,
    Lesson,
    Mark,
    PegMark,
    Storyboard,
    Window,
    clip_storyboard,
    draw_storyboard,
    excerpt,
    look_of,
    moving_marks_at,
    still_marks_at,
    write_script,
)
from pegwright.lesson.film.keyframes import motion_of
from pegwright.lesson.pictures.step_picture import Moment
from pegwright.lesson.scene.loop_positions import LoopPositions, positions_by_move
from pegwright.lesson.scene.scene import Scene
from pegwright.lesson.scene.view import view_of
from pegwright.loom import Drawn, Fastened, Laid, Lifted, Moved, State
from pegwright.pattern import Pattern, Turn
from tests.lesson.pieces import buoys, dinghy, ebb, lesson, smack, work

PIECES = {"ebb": ebb, "dinghy": dinghy, "smack": smack, "buoys": buoys}
ALL = Window(left_mm=-999, near_mm=-999, right_mm=999, far_mm=999)


def moments(pattern: Pattern) -> list[Moment]:
    history = work(pattern)
    view, look = view_of(history.board), look_of(pattern, history)
    scenes = [Scene(view, look, LoopPositions(), State())]
    for done, lie in zip(history.moves, positions_by_move(history.moves), strict=True):
        scenes.append(Scene(view._replace(turned=done.after.turned), look, lie, done.after))
    return [Moment(done, *scenes[i : i + 2]) for i, done in enumerate(history.moves)]


def lines(marks: tuple[Mark, ...]) -> Counter[tuple[object, ...]]:
    """Every line of every band, as numbers to a thousandth of a millimetre."""
    return Counter(
        (
            m.band,
            *(tuple(round(v % 360 if i == 3 else v, 3) + 0.0 for i, v in enumerate(arc)) for arc in outline),
        )
        for m in marks
        if isinstance(m, BandMark)
        for outline in m.outlines
    )


@pytest.mark.parametrize("name", PIECES)
def test_motion_begins_and_ends_where_the_machine_says(name: str) -> None:
    """Second way: the bands of the scene before and after, drawn without any motion."""
    for moment in moments(PIECES[name]()):
        motion = motion_of(moment, ALL)
        start = (*still_marks_at(motion, 0.0), *moving_marks_at(motion, 0.0))
        end = (*still_marks_at(motion, 1.0), *moving_marks_at(motion, 1.0))
        fresh = {e.band for e in moment.done.events if isinstance(e, Laid)}
        before = Counter({k: n for k, n in lines(start).items() if k[0] not in fresh})
        assert before == lines(tuple(moment.before.bands(ALL)))
        if not isinstance(moment.done.move, Turn):
            assert lines(end) == lines(tuple(moment.after.bands(ALL)))


def test_a_turned_loom_ends_as_it_stands_then() -> None:
    """Turned by half a round, every peg stands where the turned view puts it."""
    moment = next(m for m in moments(ebb()) if isinstance(m.done.move, Turn))
    motion = motion_of(moment, ALL)
    spots = [
        {m.at: (round(m.x_mm, 6) + 0.0, round(m.y_mm, 6) + 0.0) for m in marks if isinstance(m, PegMark)}
        for marks in (still_marks_at(motion, 1.0), tuple(moment.after.pegs(ALL)))
    ]
    assert spots[0] == spots[1]
    half = {m.at: m for m in still_marks_at(motion, 0.53) if isinstance(m, PegMark)}
    assert abs(half["A1"].x_mm) > abs(half["A1"].y_mm), "half way round it lies across"


def test_nothing_jumps() -> None:
    """From one of a hundred moments to the next, nothing that moves goes further than 6 mm."""
    for piece in PIECES.values():
        for moment in moments(piece()):
            motion = motion_of(moment, ALL)
            last: dict[int, list[tuple[float, float]]] = {}
            for k in range(101):
                now: dict[int, list[tuple[float, float]]] = {}
                for mark in moving_marks_at(motion, k / 100):
                    if isinstance(mark, HookMark):
                        now.setdefault(-1, []).append(mark.spots[1])
                    if isinstance(mark, FastenerMark):
                        now.setdefault(-2, []).append((mark.x_mm, mark.y_mm))
                for who, spots in now.items():
                    for a, b in zip(last.get(who, spots), spots, strict=True):
                        assert abs(a[0] - b[0]) + abs(a[1] - b[1]) < 6
                last = now


@pytest.mark.parametrize("name", PIECES)
def test_what_the_machine_did_is_what_is_seen_to_be_done(name: str) -> None:
    """A hook comes where a loop is drawn, moved or lifted, and only there; a fastener where one is put."""
    for moment in moments(PIECES[name]()):
        motion = motion_of(moment, ALL)
        kinds = {type(event) for event in moment.done.events}
        pulled = [
            e
            for e in moment.done.events
            if isinstance(e, Lifted)
            or (
                isinstance(e, Drawn | Moved)
                and e.source in moment.before.view.board.pegs
                and e.bight.band <= moment.before.state.bands
            )
        ]
        assert bool(motion.hook) == bool(pulled)
        assert bool(motion.fasteners) == (Fastened in kinds)
        laid = {e.band for e in moment.done.events if isinstance(e, Laid)}
        seen = {m.mark.band for m in motion.movers if m.mark.highlighted}
        drawn = {b for b in laid if any(moment.after.strands(b).values())}
        assert drawn <= seen


def board(pattern: Pattern) -> tuple[Lesson, Storyboard]:
    made = lesson(pattern)
    return made, draw_storyboard(pattern, work(pattern), made, write_script(made))


@pytest.mark.parametrize("name", PIECES)
def test_the_storyboard_keeps_the_scripts_time_and_leaves_no_step_out(name: str) -> None:
    """Cuts follow without a gap; a step's cuts fill its shot; every move is made once at least."""
    pattern = PIECES[name]()
    made, film = board(pattern)
    told = write_script(made)
    for a, b in zip(film.cuts, film.cuts[1:], strict=False):
        assert a.end_s == pytest.approx(b.start_s)
        assert a.end_s > a.start_s
    assert film.length_s == pytest.approx(told.length_s)
    for shot in told.shots:
        own = [c for c in film.cuts if shot.start_s <= (c.start_s + c.end_s) / 2 < shot.end_s]
        assert {c.number for c in own} == {shot.step}
        assert own[0].start_s == pytest.approx(shot.start_s)
    for step in made.steps:
        moving = [c for c in film.cuts if c.number == step.number and c.motion is not None]
        moves = step.last - step.first + 1 if step.first else 0
        assert len(moving) >= moves


def test_the_left_hand_holds_the_hook_on_its_own_side() -> None:
    moment = next(m for m in moments(ebb()) if any(isinstance(e, Drawn) for e in m.done.events))
    right, left = (motion_of(moment, ALL, hand).shaft for hand in ("right", "left"))
    assert right[0] == -left[0] > 0


def test_an_excerpt_is_the_opening_and_then_the_first_pulled_loop() -> None:
    """Twenty seconds without a gap, with its own captions and chapters, all inside it."""
    _, film = board(ebb())
    short = excerpt(film)
    assert short.length_s == pytest.approx(20.0)
    assert short.cuts[0].opening
    assert short.cuts[0].counted
    assert short.cuts[0].lines == film.cuts[0].lines
    assert all(a.end_s == pytest.approx(b.start_s) for a, b in pairwise(short.cuts))
    first = next(c for c in film.cuts if c.motion is not None and c.motion.hook)
    assert first.number in {c.number for c in short.cuts}
    assert all(a.end_s <= b.start_s for a, b in pairwise(short.chapters))
    assert all(a.end_s <= b.start_s + 1e-9 for a, b in pairwise(short.captions))
    assert any(c.motion is not None and c.motion.hook for c in short.cuts)
    assert short.captions
    assert film.safety is not None
    said = [line.text for line in short.lines]
    assert all(text in said for text in film.safety.lines), "an excerpt carries the cautions"
    read = " ".join(" ".join(c.lines) for c in short.captions)
    assert all(text in read for text in film.safety.lines)
    assert film.safety.heading in {c.title for c in short.chapters}
    assert all(0 <= c.start_s < c.end_s <= 20.0 for c in (*short.captions, *short.chapters, *short.lines))
    both = clip_storyboard(film, film.chapters[1].end_s - 5, film.chapters[1].end_s + 5)
    assert [c.title for c in both.chapters] == [film.chapters[1].title, film.chapters[2].title]
    assert both.chapters[0].end_s == both.chapters[1].start_s == pytest.approx(5.0)


@pytest.mark.parametrize("name", ["ebb", "smack"])
def test_a_loop_lies_under_the_loops_above_it_until_it_is_pulled(name: str) -> None:
    """Before a loop is moved the film draws the bands as they lie, those above it last."""
    pattern = PIECES[name]()
    made = lesson(pattern)
    board = draw_storyboard(pattern, work(pattern), made, write_script(made))
    under = 0
    for cut, after in pairwise(board.cuts):
        if cut.motion is None and after.motion is not None and cut.pictures:
            marks = [mark for mark in cut.pictures[0].marks if isinstance(mark, BandMark)]
            moved = [i for i, mark in enumerate(marks) if mark.highlighted]
            under += bool(moved) and moved[-1] < len(marks) - 1
    assert under
