"""The words of rounds that are counted: what is done again, how often, and what changes on the way."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from pegwright.lesson.say.phrasebook import single_line
from pegwright.lesson.say.round_facts import MoveFacts
from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.rounds import CountedRounds, shift_between
from pegwright.lesson.scene.view import View, compass_way
from pegwright.loom import AppliedMove, History
from pegwright.pattern import Lift, Move, Place, Wind, named_pegs


class CountedRoundsText(NamedTuple):
    """Words the rounds of one lesson. `ring` is the pegs of a round loom, else 0.

    `step_of` gives the number of the step that teaches the move of an index in full.
    """

    speaker: Speaker
    history: History
    ring: int
    step_of: Callable[[int], int]

    def _say(self, name: str, **facts: str | float) -> str:
        return self.speaker.phrasebook.say(name, **facts)

    def changing_counts(self, taught: CountedRounds, facts: Sequence[Sequence[MoveFacts]]) -> Iterator[str]:
        """Say at which steps another number of loops lies above in these rounds than in the first."""
        counts: dict[int, list[list[int]]] = {}
        for j, index in enumerate(taught.model):
            counts.setdefault(self.step_of(index), []).append([row[j].above for row in facts])
        from_two: dict[int, list[int]] = {}
        for number, rows in counts.items():
            if all(above == row[0] for row in rows for above in row):
                continue
            later = {above for row in rows for above in row[1:]}
            if len(rows) == 1 and len(later) == 1 and len(rows[0]) > 2:
                from_two.setdefault(later.pop(), []).append(number)
            else:
                lifts = isinstance(self.history.moves[taught.model[0]].move, Lift)
                yield self._say("detail-over-changes" if lifts else "detail-above-changes", step=number)
        for above, numbers in from_two.items():
            yield self._say("detail-above", steps=self.name_steps(numbers), n=above)

    def changed_colours(
        self, taught: CountedRounds, facts: Sequence[MoveFacts], changing: Sequence[int]
    ) -> str:
        """Say the colours of one round, of the moves whose colour changes from round to round."""
        letters = [" ".join(facts[j].letters) for j in changing]
        if not letters:
            return ""
        if len(set(letters)) > 1 or " " in letters[0]:
            return self._say("tick-order", letters=", ".join(letters))
        name = single_line(self.speaker.look.colours.get(letters[0], ("", "", 0))[0])
        colour = self._say("tick-colour", colour=name, letter=letters[0]) if name else letters[0]
        if len(facts) == 1:
            return colour
        if len(changing) == len(facts):
            return self._say("tick-all", colour=colour)
        numbers = sorted({self.step_of(taught.model[j]) for j in changing})
        return self._say("tick-steps", steps=self.name_steps(numbers), colour=colour)

    def name_steps(self, numbers: Sequence[int]) -> str:
        """Name steps by their numbers, those that follow each other as a span: steps 3 to 6."""
        runs: list[list[int]] = []
        for number in numbers:
            if runs and runs[-1][-1] == number - 1:
                runs[-1].append(number)
            else:
                runs.append([number])
        return self.speaker.phrasebook.both(
            [
                self._say(
                    {1: "steps-one", 2: "steps-two"}.get(len(run), "steps-many"), first=run[0], last=run[-1]
                )
                for run in runs
            ]
        )

    def tick(
        self, number: int, each: Sequence[AppliedMove], still: bool, colours: str, in_words: bool = False
    ) -> str:
        """Return a round's entry in the list: its number, its pegs, and its colours where they change.

        In words there are no arrows and dashes, which are hard to see and to hear.
        """
        shown = [self._pegs_text(applied.move, in_words) for applied in each if named_pegs(applied.move)]
        text = "" if still or not shown else shown[0]
        if text and len(set(shown)) > 1:
            text = self._say("tick-span-words" if in_words else "tick-span", first=shown[0], last=shown[-1])
        entry = ", ".join(part for part in (text, colours) if part)
        head = self._say("tick-round", n=number)
        return f"{head}: {entry}" if entry else head

    def _pegs_text(self, move: Move, in_words: bool) -> str:
        pegs = named_pegs(move)
        if in_words and len(pegs) == 2:
            return self._say("tick-way", first=pegs[0], last=pegs[1])
        if in_words:
            return self.speaker.phrasebook.both(pegs)
        return ("–" if isinstance(move, Place | Wind) else " → ").join(pegs)

    def instruction(self, view: View, rounds: Sequence[Sequence[AppliedMove]], steps: str) -> str:
        """Say that steps are done again, how often, and how far each round moves on."""
        times = len(rounds) - 1
        moves = [[d.move for d in each] for each in rounds]
        shifts = {shift_between(a, b, self.ring) for a, b in pairwise(moves)}
        shift = shifts.pop() if len(shifts) == 1 else None
        if shift is None:
            return self._say("step-again-counted", steps=steps, times=times)
        if shift == (0, 0):
            return self._say("step-again-same", steps=steps, times=times)
        start, then = named_pegs(moves[0][0]), named_pegs(moves[1][0])
        there = self._say(f"way-{compass_way(view.spot(start[0]), view.spot(then[0]))}") if start else ""
        if self.ring and not shift.rows:
            turn = self._say("turn-anticlockwise" if shift.pegs > 0 else "turn-clockwise")
            shift_text = self._say("shift-round", n=abs(shift.pegs), turn=turn)
        elif not shift.rows:
            shift_text = self._say("shift-pegs", n=abs(shift.pegs), way=there)
        elif not shift.pegs:
            shift_text = self._say("shift-rows", n=abs(shift.rows), way=there)
        else:
            shift_text = self._say("shift-both")
        end = next((p for m in reversed(moves[-1]) for p in reversed(named_pegs(m))), "")
        return self._say(
            "step-again", steps=steps, times=times, shift=shift_text, end=self.speaker.where(end)
        )
