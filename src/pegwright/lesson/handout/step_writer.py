"""The steps of a lesson, written one after another: words, pictures, times, and rounds that are counted."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from pegwright.lesson.handout.counted_rounds_text import CountedRoundsText
from pegwright.lesson.handout.sheet import LessonStep
from pegwright.lesson.handout.sizes import TaughtSteps, steps_that_count
from pegwright.lesson.pictures.close_up import draw_close_up
from pegwright.lesson.pictures.closure import draw_closure
from pegwright.lesson.pictures.overview import rounds_pictures
from pegwright.lesson.pictures.step_picture import Moment, draw_step
from pegwright.lesson.say.phrasebook import plain_text
from pegwright.lesson.say.round_facts import facts_of, models_of, wordings
from pegwright.lesson.say.say import Speaker, say_move
from pegwright.lesson.scene.loop_positions import LoopPositions, positions_by_move
from pegwright.lesson.scene.picture import Window
from pegwright.lesson.scene.rounds import CountedRounds, Teachable, group_rounds, shift_between
from pegwright.lesson.scene.scene import Scene
from pegwright.lesson.scene.times import Pace, rounds_s, split_by_tool
from pegwright.lesson.scene.view import view_of
from pegwright.loom import HOOK, AppliedMove, History, Laid, State
from pegwright.pattern import (
    Bind,
    Hang,
    Hook,
    Lift,
    Pattern,
    Round,
    Slide,
    Turn,
    named_holders,
    translations_into,
)

_TICKS_AT_MOST = 96


class StepWriter:
    """Writes the steps one after another; keeps the running number and the window of the last picture."""

    def __init__(self, speaker: Speaker, pattern: Pattern, history: History, pace: Pace) -> None:
        self.speaker = speaker
        self.pace = pace
        self.say = speaker.phrasebook.say
        self.pattern = pattern
        self.translations = translations_into(pattern, speaker.phrasebook.language)
        self.history = history
        self.positions: tuple[LoopPositions, ...] = tuple(positions_by_move(history.moves))
        self.view = view_of(history.board)
        self.number = 0
        self.made: list[LessonStep] = []
        self.window: Window | None = None
        self.off_loom = False
        self.ring = pattern.loom.pegs if isinstance(pattern.loom, Round) else 0
        self.taught = group_rounds(history.moves, self.ring)
        self.models = models_of(self.taught)
        self.number_of: dict[int, int] = {}
        self.first_done: dict[str, int] = {}
        for i, done in enumerate(history.moves):
            self.first_done.setdefault(done.located.path, i)
        self.rounds_text = CountedRoundsText(speaker, history, self.ring, self.step_of)
        self.wordings = wordings(history, self.view, self.taught)

    def scene(self, index: int) -> Scene:
        """Return the scene after the move of that index; −1 is the bare loom."""
        state = self.history.moves[index].after if index >= 0 else State()
        positions = self.positions[index] if index >= 0 else LoopPositions()
        return Scene(self.view._replace(turned=state.turned), self.speaker.look, positions, state)

    def moment(self, index: int) -> Moment:
        """Return a move between its two scenes."""
        return Moment(self.history.moves[index], self.scene(index - 1), self.scene(index))

    def steps_of_bands(self) -> dict[int, int]:
        """Map each band to the number of the step that takes it up."""
        found: dict[int, int] = {}
        for step in self.made:
            for index in range(step.first - 1, step.last):
                for event in self.history.moves[index].events if index >= 0 else ():
                    if isinstance(event, Laid):
                        found.setdefault(event.band, step.number)
        return found

    def taught_steps(self) -> TaughtSteps:
        """Return what a resized piece is compared with: the rounds counted, the last peg, the bound end."""
        counted = [step for step in self.made if step.rounds > 1 and step.first]
        made = steps_that_count(self.pattern, self.history, [step.number for step in counted])
        binds = (i for i, done in enumerate(self.history.moves) if isinstance(done.move, Bind))
        bind = next(binds, None)
        return made if bind is None else made._replace(bind=self.number_of.get(bind, 0))

    def took(self, floors: Sequence[float], start: int = 1) -> dict[str, Any]:
        """Return the seconds for rounds with these trained times, the first one being round `start`."""
        return {
            "learner_s": rounds_s(floors, self.pace, start),
            "teacher_s": self.pace.teacher * sum(floors),
        }

    def took_moves(self, rounds: Sequence[Sequence[AppliedMove]], start: int = 1) -> dict[str, Any]:
        """Return the seconds for rounds of moves, the first one being round `start`."""
        split = [split_by_tool(each, self.history.board) for each in rounds]
        by_hand, hooked = [one for one, _ in split], [other for _, other in split]
        took = self.took(by_hand, start)
        return {
            "learner_s": took["learner_s"] + rounds_s(hooked, self.pace, start, hooked=True),
            "teacher_s": took["teacher_s"] + self.pace.teacher * sum(hooked),
        }

    def took_once(self, index: int) -> dict[str, Any]:
        """Return the seconds for one move: as long as the teacher was heard to show it, where that is known.

        A beginner is never quicker than the teacher.
        """
        done = self.history.moves[index]
        reckoned = self.took_moves([[done]])
        heard_s = done.move.taught_s
        if heard_s is None or self.first_done[done.located.path] != index:
            return reckoned
        return {
            "learner_s": max(reckoned["learner_s"], heard_s),
            "teacher_s": heard_s,
            "is_timed": True,
        }

    def can_pause_after(self, index: int) -> bool:
        """Say whether the work can be put down after the move of that index: no loop is on hook or finger."""
        stacks = self.history.moves[index].after.stacks
        return not any(holder == HOOK or "." in holder for holder in stacks)

    def add(self, instruction: str, detail: tuple[str, ...] = (), **more: Any) -> LessonStep:
        """Number a step."""
        self.number += 1
        step = LessonStep(
            number=self.number, instruction=instruction, detail=detail, off_loom=self.off_loom, **more
        )
        self.made.append(step)
        return step

    def own_text(self, text: str) -> str:
        """Return a designer's text in the language of the lesson, where it is translated, made harmless."""
        return plain_text(self.translations.get(text, text))

    def step(self, taught: Teachable) -> LessonStep:
        """Write one move in full, or rounds to be counted."""
        if isinstance(taught, CountedRounds):
            return self.again(taught)
        moment = self.moment(taught)
        said = say_move(
            self.speaker,
            moment.before.view,
            moment.before.state,
            moment.done,
            off_loom=self.off_loom,
            wording=self.wordings.get(taught),
        )
        move = moment.done.move
        if isinstance(move, Turn):
            self.window = None
        pictures = draw_step(self.speaker, self.number + 1, moment, self.window)
        self.window = None if isinstance(move, Turn) else pictures[-1].window
        hint = (self.own_text(move.picture),) if move.picture else ()
        self.number_of[taught] = self.number + 1
        return self.add(
            said.instruction,
            (*said.detail, *hint),
            view=self.view_of_moves([moment]),
            note=self.own_text(move.note),
            warning=self.own_text(move.warning),
            pictures=pictures,
            closeup=draw_close_up(self.speaker, moment) or draw_closure(self.speaker, moment),
            first=taught + 1,
            last=taught + 1,
            can_pause=self.can_pause_after(taught),
            **self.took_once(taught),
        )

    def again(self, taught: CountedRounds) -> LessonStep:
        """Write rounds to be counted."""
        done, words = self.history.moves, self.rounds_text
        rounds = [[done[i] for i in each] for each in (taught.model, *taught.rounds)]
        scene = self.scene(taught.rounds[-1][-1])
        first, last = taught.model[0] + 1, taught.model[-1] + 1
        numbers = [step.number for step in self.made if first <= step.first and step.last <= last]
        span = {1: "steps-one", 2: "steps-two"}.get(len(numbers), "steps-many")
        steps = self.say(span, first=numbers[0], last=numbers[-1])
        facts = [
            [facts_of(self.history, self.view, i) for i in each] for each in (taught.model, *taught.rounds)
        ]
        detail = [*words.changing_counts(taught, facts)]
        changing = [
            j for j, column in enumerate(zip(*facts, strict=True)) if len({f.letters for f in column}) > 1
        ]
        if changing:
            detail.append(self.say("detail-colours"))
        moves = [[d.move for d in each] for each in rounds]
        still = shift_between(moves[0], moves[1], self.ring) == (0, 0)
        ticked = [
            (k, each, still, words.changed_colours(taught, facts[k - 1], changing))
            for k, each in enumerate(rounds[1:], start=2)
            if k <= _TICKS_AT_MOST
        ]
        alike = len({shift_between(a, b, self.ring) for a, b in pairwise(moves)}) == 1
        laid = any(isinstance(event, Laid) for each in rounds for one in each for event in one.events)
        told = (changing and laid) or not (still or alike)
        self.window = None
        overview = rounds_pictures(self.speaker, scene, rounds)
        return self.add(
            words.instruction(scene.view, rounds, steps),
            tuple(detail),
            legend=(
                *(
                    (self.say("detail-list-short", last=_TICKS_AT_MOST),)
                    if len(rounds) > _TICKS_AT_MOST
                    else ()
                ),
                *overview.left_out,
            ),
            view=self.view_of_moves([self.moment(i) for each in taught.rounds for i in each]),
            pictures=overview.pictures,
            ticks=tuple(words.tick(*each) for each in ticked),
            ticks_in_words=tuple(words.tick(*each, in_words=True) for each in ticked),
            rounds_spoken=tuple(
                words.tick(number, each, still or alike, colours, in_words=True) + "."
                for number, each, still, colours in ticked
                if told
            ),
            wide=True,
            first=taught.rounds[0][0] + 1,
            last=taught.rounds[-1][-1] + 1,
            rounds=len(taught.rounds),
            can_pause=self.can_pause_after(taught.rounds[-1][-1]),
            **self.took_moves(rounds[1:], start=2),
        )

    def view_of_moves(self, moments: Sequence[Moment]) -> str:
        """Say what a camera must see of moves: their pegs from above, and the stack a loop is taken from."""
        moves = [moment.done.move for moment in moments]
        if any(isinstance(move, Turn) for move in moves):
            return self.say("view-turn")
        named = dict.fromkeys(holder for move in moves for holder in named_holders(move))
        seen = [self.say("view-pegs", where=self.speaker.places(list(named)))] if named else []
        taken = dict.fromkeys(m.source for m in moves if isinstance(m, Hook | Slide))
        taken |= dict.fromkeys(m.at for m in moves if isinstance(m, Lift))
        if len(taken) == 1:
            seen.append(self.say("view-side", peg=next(iter(taken))))
        if any(isinstance(move, Hang) for move in moves):
            seen.append(self.say("view-shaft"))
        return " ".join(seen) or self.say("view-standing")

    def step_of(self, index: int) -> int:
        """Return the number of the step that teaches the move of that index in full."""
        while index in self.models:
            index = self.models[index]
        return self.number_of[index]
