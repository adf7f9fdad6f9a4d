"""The storyboard of the film: what stands or moves in the frame from which second to which.

It follows the script shot by shot. A step is shown as it was before, in motion, and as it is then; where
there is time, twice. Rounds that are only counted run through, one move after the other.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise
from typing import TypeVar

import msgspec

from pegwright.lesson.film.captions import Caption, caption_lines, caption_script
from pegwright.lesson.film.frame import PICTURE
from pegwright.lesson.film.keyframes import motion_of
from pegwright.lesson.film.motion import Motion, stack_at
from pegwright.lesson.film.script import Chapter, Script, ScriptLine, Shot
from pegwright.lesson.handout.sheet import Block, Lesson, LessonStep, Swatch
from pegwright.lesson.pictures.step_picture import Moment, draw_picture, focus_of, window_of
from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.loop_positions import LoopPositions, positions_by_move
from pegwright.lesson.scene.picture import Mark, Picture, Window
from pegwright.lesson.scene.portrait import Portrait
from pegwright.lesson.scene.scene import Scene, look_of
from pegwright.lesson.scene.view import View, frame_window, view_of
from pegwright.loom import History, State
from pegwright.pattern import Clip, Hook, Knot, Lift, Pattern, Slide, Transfer, Turn, localise

PAN = 0.15
"""The share of a cut in which the camera goes to its place."""
EXCERPT_S = 20.0
CARD_S = 5.0
"""An excerpt shows the opening for so long at most."""
SAFE_S = 8.0
"""And the cautions in short for so long: four short sentences at 0.3 s a word and more."""
_SHORTEST_PLAY_S, _LONGEST_PLAY_S = 2.2, 6.0
_HOLD_S = 2.5
_SHORTEST_CUT_S = 0.16
_LINES = 5
_ASPECT = (PICTURE.right - PICTURE.left) / (PICTURE.bottom - PICTURE.top)


class Cut(msgspec.Struct, frozen=True, kw_only=True):
    """A stretch of film: a motion, or pictures side by side, or words alone.

    `opening` says that the finished piece is to be seen, `counted`, how many bands of each colour it takes.
    `window` is what the camera sees of a motion; it comes from `came_from`. `side` stands beside it; where
    there is none, the key does. Of `lines` the one numbered `line_said` is being said. `speed` is how much
    faster than the teacher works it is shown; `number` is the step's, 0 for none. `sound` says of each
    picture whether it shows the work right or wrong, where that is what they are there for.
    """

    start_s: float
    end_s: float
    heading: str
    number: int = 0
    opening: bool = False
    counted: bool = False
    speed: float = 1.0
    pictures: tuple[Picture, ...] = ()
    sound: tuple[bool, ...] = ()
    motion: Motion | None = None
    window: Window | None = None
    came_from: Window | None = None
    side: Picture | None = None
    lines: tuple[str, ...] = ()
    line_said: int = -1


class Storyboard(msgspec.Struct, frozen=True, kw_only=True):
    """A film before it is painted, in seconds from its start. Cuts follow each other without a gap.

    `safety` is the short form of the cautions, which an excerpt carries; `portrait` is the finished piece,
    which is seen at the opening; `counts` are the bands of each entry of
    the key.
    """

    title: str
    designer: str
    language: str
    key: tuple[Swatch, ...]
    cuts: tuple[Cut, ...]
    lines: tuple[ScriptLine, ...]
    captions: tuple[Caption, ...]
    chapters: tuple[Chapter, ...]
    safety: Block | None = None
    portrait: Portrait | None = None
    counts: tuple[int, ...] = ()

    @property
    def length_s(self) -> float:
        """Length of the film in seconds."""
        return self.cuts[-1].end_s


def draw_storyboard(pattern: Pattern, history: History, lesson: Lesson, script: Script) -> Storyboard:
    """Lay a lesson out as a film: `pattern` and `history` are those the lesson was planned from."""
    reel = _StoryboardWriter(pattern, history, lesson, script)
    steps = {step.number: step for step in lesson.steps}
    counted = {row.letter: row.count for row in lesson.supplies.bands}
    cuts: list[Cut] = []
    for shot in script.shots:
        step = steps.get(shot.step)
        cuts += reel.show(shot, step) if step is not None and step.first else reel.talk(shot, step)
    return Storyboard(
        title=lesson.title,
        designer=lesson.designer,
        language=lesson.language,
        key=lesson.key,
        cuts=tuple(cuts),
        lines=script.lines,
        captions=caption_script(script),
        chapters=script.chapters,
        safety=lesson.safety,
        portrait=lesson.finished.portrait,
        counts=tuple(counted[swatch.letter] for swatch in lesson.key),
    )


def excerpt(board: Storyboard, length_s: float = EXCERPT_S) -> Storyboard:
    """Join the opening, the cautions in short and the most telling stretch: from the first loop pulled.

    Where no loop is pulled, it is the first step. One that is too short for the cautions leaves them out.
    """
    pulled = (cut for cut in board.cuts if cut.motion is not None and cut.motion.hook)
    shown = (cut for cut in board.cuts if cut.motion is not None)
    first = next(pulled, None) or next(shown, board.cuts[0])
    own = next(cut for cut in board.cuts if cut.number == first.number)
    head_s = min(CARD_S, board.cuts[0].end_s, length_s)
    safe_s = SAFE_S if length_s >= SAFE_S + 2 * CARD_S else 0.0
    rest_s = length_s - head_s - safe_s
    start = min(own.start_s, max(0.0, board.length_s - rest_s))
    if start < head_s and not safe_s:
        return clip_storyboard(board, start, min(start + length_s, board.length_s))
    card, main = (
        clip_storyboard(board, 0.0, head_s),
        clip_storyboard(board, start, min(start + rest_s, board.length_s)),
    )
    safe = _safety_card(board, head_s, head_s + safe_s) if safe_s else clip_storyboard(board, 0.0, 0.0)
    head_s += safe_s
    return msgspec.structs.replace(
        main,
        cuts=(*card.cuts, *safe.cuts, *_shift_times(main.cuts, head_s)),
        chapters=(*card.chapters, *safe.chapters, *_shift_times(main.chapters, head_s)),
        lines=(*card.lines, *safe.lines, *_shift_times(main.lines, head_s)),
        captions=(
            *card.captions,
            *safe.captions,
            *(Caption(c.start_s + head_s, c.end_s + head_s, c.lines) for c in main.captions),
        ),
    )


def _safety_card(board: Storyboard, start_s: float, end_s: float) -> Storyboard:
    """Return the card of an excerpt that carries the cautions: to be read, and as captions."""
    safe = board.safety
    if safe is None:
        return clip_storyboard(board, 0.0, 0.0)
    each_s = (end_s - start_s) / len(safe.lines)
    lines = tuple(
        ScriptLine(start_s=start_s + i * each_s, end_s=start_s + (i + 1) * each_s, text=text)
        for i, text in enumerate(safe.lines)
    )
    cut = Cut(start_s=start_s, end_s=end_s, heading=safe.heading, lines=safe.lines)
    chapter = Chapter(start_s=start_s, end_s=end_s, title=safe.heading)
    return msgspec.structs.replace(
        board, cuts=(cut,), lines=lines, chapters=(chapter,), captions=caption_lines(lines, board.language)
    )


def clip_storyboard(board: Storyboard, start_s: float, end_s: float) -> Storyboard:
    """Return a stretch of a film; a motion that is cut into starts over."""

    whole = (c for c in board.captions if c.start_s >= start_s and c.end_s <= end_s)
    return msgspec.structs.replace(
        board,
        cuts=_clip_parts(board.cuts, start_s, end_s),
        chapters=_clip_parts(board.chapters, start_s, end_s),
        lines=_clip_parts(board.lines, start_s, end_s),
        captions=tuple(Caption(c.start_s - start_s, c.end_s - start_s, c.lines) for c in whole),
    )


_Timed = TypeVar("_Timed", Cut, Chapter, ScriptLine)


def _shift_times(parts: tuple[_Timed, ...], by_s: float) -> tuple[_Timed, ...]:
    return tuple(
        msgspec.structs.replace(part, start_s=part.start_s + by_s, end_s=part.end_s + by_s) for part in parts
    )


def _clip_parts(parts: tuple[_Timed, ...], start_s: float, end_s: float) -> tuple[_Timed, ...]:
    return tuple(
        msgspec.structs.replace(
            part, start_s=max(part.start_s, start_s) - start_s, end_s=min(part.end_s, end_s) - start_s
        )
        for part in parts
        if part.end_s > start_s and part.start_s < end_s
    )


class _StoryboardWriter:
    """Runs through the history; keeps the window the camera sees and the move that was made last."""

    def __init__(self, pattern: Pattern, history: History, lesson: Lesson, script: Script) -> None:
        self.history = history
        self.lesson = lesson
        self.script = script
        self.speaker = Speaker(lesson.phrasebook, look_of(localise(pattern, lesson.language), history))
        self.view = view_of(history.board)
        self.positions: tuple[LoopPositions, ...] = tuple(positions_by_move(history.moves))
        self.window: Window | None = None
        self.made = -1

    def scene(self, index: int) -> Scene:
        """Return the scene after the move of that index; −1 is the bare loom."""
        state = self.history.moves[index].after if index >= 0 else State()
        positions = self.positions[index] if index >= 0 else LoopPositions()
        return Scene(self.view._replace(turned=state.turned), self.speaker.look, positions, state)

    def talk(self, shot: Shot, step: LessonStep | None) -> Iterator[Cut]:
        """Show what is being talked about: a step's pictures, the loom as it stands, or the words."""
        pictures = step.pictures if step is not None else self.standing()
        said = [line for line in self.script.lines if shot.start_s <= line.start_s < shot.end_s]
        opening = shot.start_s == 0
        heading = self.lesson.title if opening else shot.title
        spoken = [line for line in said if line.text.rstrip(".") != heading.rstrip(".")]
        lines = tuple(line.text for line in spoken)
        spoken = [line for line in spoken if line.text.rstrip(".") != heading.rstrip(".")]
        facts = {
            "opening": opening,
            "counted": opening or (step is not None and not pictures and step in self.lesson.phases[0].steps),
            "heading": heading,
            "number": shot.step,
            "pictures": pictures,
            "lines": lines,
        }
        if (step is not None and pictures) or not spoken:
            facts["lines"] = () if step is not None and pictures else lines
            yield Cut(start_s=shot.start_s, end_s=shot.end_s, **facts)  # type: ignore[arg-type]
            return
        facts.pop("lines")
        starts = [shot.start_s, *(line.start_s for line in spoken[1:]), shot.end_s]
        for i, (start, end) in enumerate(pairwise(starts)):
            first = i - i % _LINES
            shown = lines[first : first + _LINES]
            yield Cut(start_s=start, end_s=end, lines=shown, line_said=i - first, **facts)  # type: ignore[arg-type]

    def standing(self) -> tuple[Picture, ...]:
        """Show the loom as it stands after the move made last, if any was made."""
        if self.made < 0:
            return ()
        scene = self.scene(self.made)
        frame = self.window or self.frame_of(self.moment(self.made))
        marks: tuple[Mark, ...] = (*scene.pegs(frame), *scene.bands(frame))
        return (Picture(title="", text="", window=frame, marks=marks),)

    def show(self, shot: Shot, step: LessonStep) -> Iterator[Cut]:
        """Show a step in motion, or rounds one move after the other."""
        facts = {"heading": shot.title, "number": step.number, "speed": shot.speed}
        if step.first == step.last:
            yield from self.once(shot, step, facts)
            return
        long = shot.end_s - shot.start_s
        moves = range(step.first - 1, step.last)
        stride = max(1, math.ceil(len(moves) * _SHORTEST_CUT_S / long))
        shown = moves[::stride]
        for i, index in enumerate(shown):
            start, end = (shot.start_s + long * k / len(shown) for k in (i, i + 1))
            yield self.motion(index, (start, end), facts, self.window)
        self.made = step.last - 1

    def once(self, shot: Shot, step: LessonStep, facts: dict[str, object]) -> Iterator[Cut]:
        """Show one move: before, in motion, then; and once more where there is time."""
        index = step.first - 1
        moment = self.moment(index)
        long = shot.end_s - shot.start_s
        play = min(_LONGEST_PLAY_S, max(_SHORTEST_PLAY_S, 0.4 * long), 0.75 * long)
        hold = min(_HOLD_S, (long - play) / 3)
        came_from, move = self.window, moment.done.move
        twice = long > 2 * play + 3 * hold and not isinstance(move, Turn)
        frame = self.frame_of(moment)
        facts = {**facts, "side": step.closeup}
        gone = facts
        if step.closeup is not None and isinstance(move, Hook | Slide | Transfer | Lift):
            gone = {**facts, "side": stack_at(step.closeup, 1.0, taken=True)}
        before = draw_picture(self.speaker, step.number, moment, moment.before, frame, raised=False)
        then = moment.before if isinstance(move, Knot | Clip) else moment.after
        if isinstance(move, Turn):
            before = then_picture = self.standing()[0] if self.made >= 0 else before
        else:
            then_picture = draw_picture(self.speaker, step.number, moment, then, frame)
        now = shot.start_s
        plays = []
        for again in range(2 if twice else 1):
            if not isinstance(move, Knot | Clip):
                plays.append(Cut(start_s=now, end_s=now + hold, pictures=(before,), **facts))  # type: ignore[arg-type]
                now += hold
            plays.append(self.motion(index, (now, now + play), facts, None if again else came_from))
            now += play
            if twice and not again:
                plays.append(Cut(start_s=now, end_s=now + hold, pictures=(then_picture,), **gone))  # type: ignore[arg-type]
                now += hold
        self.made = index
        if isinstance(move, Turn):
            self.window = None
            self.window = self.frame_of(self.moment(min(index + 1, len(self.history.moves) - 1)))
            then_picture = self.standing()[0]
        yield from plays
        pairs = [
            (t.right_picture, t.wrong_picture)
            for t in getattr(step, "mistakes", ())
            if t.right_picture and t.wrong_picture
        ]
        if pairs and shot.end_s - now > _SHORTEST_PLAY_S:
            half = (now + shot.end_s) / 2
            yield Cut(start_s=now, end_s=half, pictures=(then_picture,), **gone)  # type: ignore[arg-type]
            shown = {**facts, "pictures": pairs[0], "sound": (True, False), "side": None}
            yield Cut(start_s=half, end_s=shot.end_s, **shown)  # type: ignore[arg-type]
            return
        yield Cut(start_s=now, end_s=shot.end_s, pictures=(then_picture,), **gone)  # type: ignore[arg-type]

    def moment(self, index: int) -> Moment:
        """Return a move between its two scenes."""
        return Moment(self.history.moves[index], self.scene(index - 1), self.scene(index))

    def motion(
        self, index: int, span_s: tuple[float, float], facts: dict[str, object], came_from: Window | None
    ) -> Cut:
        """Set one move in motion."""
        moment = self.moment(index)
        frame = self.frame_of(moment)
        came = came_from or frame
        motion = motion_of(moment, _union_of(self.view, came, frame), self.lesson.hand)
        (start, end), shown = span_s, {**facts, "motion": motion, "window": frame, "came_from": came}
        return Cut(start_s=start, end_s=end, **shown)  # type: ignore[arg-type]

    def frame_of(self, moment: Moment) -> Window:
        """Choose what the camera sees of a move, as steadily as may be, in the shape of its box."""
        if isinstance(moment.done.move, Turn):
            far = math.hypot(*self.view.half) + 8.0
            return _widen_to_frame(self.view, (-far, -far), (far, far))
        scene = moment.before if isinstance(moment.done.move, Knot | Clip) else moment.after
        chosen = window_of(scene, focus_of(scene, moment.done), self.window)
        if chosen is not self.window:
            low, high = (chosen.left_mm, chosen.near_mm), (chosen.right_mm, chosen.far_mm)
            self.window = _widen_to_frame(self.view, low, high)
        return self.window or chosen


def _widen_to_frame(view: View, low: tuple[float, float], high: tuple[float, float]) -> Window:
    """Widen a window to the shape of the picture's box."""
    wide, tall = high[0] - low[0], high[1] - low[1]
    more = (max(0.0, tall * _ASPECT - wide) / 2, max(0.0, wide / _ASPECT - tall) / 2)
    return frame_window(view, (low[0] - more[0], low[1] - more[1]), (high[0] + more[0], high[1] + more[1]))


def _union_of(view: View, a: Window, b: Window) -> Window:
    low = (min(a.left_mm, b.left_mm), min(a.near_mm, b.near_mm))
    return frame_window(view, low, (max(a.right_mm, b.right_mm), max(a.far_mm, b.far_mm)))
