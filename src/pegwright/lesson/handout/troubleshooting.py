"""What to ask a maker to whom something looks wrong: decided in advance for each step, with the way back."""

from __future__ import annotations

from typing import NamedTuple

from msgspec.structs import replace

from pegwright.lesson.handout.sheet import Conclusion, Fork, Guess, LessonStep, Phase, Reply
from pegwright.lesson.say.mistake_text import MistakeWriter
from pegwright.lesson.say.phrasebook import Phrasebook
from pegwright.rehearsal import (
    Diagnosis,
    Diagnostician,
    Outcome,
    Rehearsal,
    answer_from_appearance,
    find_way_back,
)

SLIPS = 16
"""How many slips a step tells apart at most; older and rarer ones would be too many for one page."""
STUCK = 8
"""How many slips are told apart at most where a step cannot be made."""
RECENT = 12
"""A slip older than this many moves is asked about at earlier steps only: its way back would be long."""
_QUESTIONS = 5
_ROUNDS = 12
"""Where a step counts more rounds than this, the maker is asked about the step as a whole."""
_SLIPS_OF_ROUND = 6
_FADES = 0.93
"""Each move multiplies the chance that a slip is still unseen by this: common practice, no source."""


def add_troubleshooting(
    phrasebook: Phrasebook, phases: tuple[Phase, ...], rehearsal: Rehearsal
) -> tuple[Phase, ...]:
    """Return the phases with what to ask when something looks wrong, at every step that stands for moves."""
    numbers = {
        index: step.number
        for phase in phases
        for step in phase.steps
        if step.first
        for index in range(step.first - 1, step.last)
    }
    writer = MistakeWriter(phrasebook, rehearsal.history, lambda at: numbers.get(at, 0))
    questions = _QuestionWriter(writer, rehearsal, Diagnostician(rehearsal))
    return tuple(
        replace(
            phase,
            steps=tuple(
                replace(step, troubleshooting=questions.ask(step)) if step.first else step
                for step in phase.steps
            ),
        )
        for phase in phases
    )


class _QuestionWriter(NamedTuple):
    writer: MistakeWriter
    rehearsal: Rehearsal
    diagnostician: Diagnostician

    def ask(self, step: LessonStep) -> Fork:
        """Ask what is wrong: it looks wrong, perhaps after a certain round, or the step cannot be made."""
        say = self.writer.phrasebook.say
        first, last = step.first - 1, step.last - 1
        moves = (last - first + 1) // step.rounds
        appearance: Fork | Conclusion = self.after_move(last, SLIPS)
        if 1 < step.rounds <= _ROUNDS:
            # The pictures and the list count the round that was taught step by step as the first.
            rounds = tuple(
                Reply(
                    text=say("wrong-round-n", n=number + 2),
                    then=self.after_move(first + (number + 1) * moves - 1, _SLIPS_OF_ROUND),
                )
                for number in range(step.rounds)
            )
            appearance = Fork(question=say("wrong-round"), replies=rounds)
        return Fork(
            question=say("wrong-first"),
            replies=(
                Reply(text=say("wrong-look"), then=appearance),
                Reply(text=say("wrong-stuck"), then=self.stuck(first, last)),
            ),
        )

    def after_move(self, after: int, most: int) -> Fork | Conclusion:
        """Ask a maker who stands after the move of that index about the likeliest slips that show there."""
        return self.fork(likely_slips_at(self.diagnostician, after, most), after)

    def stuck(self, first: int, last: int) -> Fork | Conclusion:
        """Ask a maker who cannot make one of these moves what may have led to that."""
        made = [o for o in self.rehearsal.outcomes if o.stuck is not None and first <= o.stuck <= last]
        if not made:
            return self.nothing()
        stops: dict[int, float] = {}
        for outcome in made:
            assert outcome.stuck is not None
            stops[outcome.stuck] = stops.get(outcome.stuck, 0.0) + self.rehearsal.chances[outcome.slip]
        after = max(stops, key=lambda at: stops[at])
        some = sorted(made, key=lambda outcome: -_weight(self.rehearsal, outcome, after))[:STUCK]
        return self.fork(self.diagnostician.diagnose(after, stuck=True, among=some), after)

    def fork(self, at: Diagnosis, after: int) -> Fork | Conclusion:
        """Ask the most telling question and go on below each answer; at the end say what it was."""
        if not at.cases:
            return self.nothing()
        question = at.question() if len(at.asked) < _QUESTIONS else None
        if question is None:
            return self.conclude(at, after)
        answers = dict.fromkeys(
            answer_from_appearance(case.appearance, at.intended, question) for case in at.cases
        )
        ordered = sorted(answers, key=lambda answer: (isinstance(answer, str), answer))
        say = self.writer.phrasebook.say
        replies = [
            Reply(
                text=self.writer.answer(question, answer), then=self.fork(at.answer(question, answer), after)
            )
            for answer in ordered
        ]
        lost = Reply(text=say("wrong-other"), then=Conclusion(text=say("wrong-lost")))
        return Fork(question=self.writer.question(question), replies=(*replies, lost))

    def nothing(self) -> Conclusion:
        """Say that no known slip looks like this."""
        return Conclusion(text=self.writer.phrasebook.say("wrong-nothing"))

    def conclude(self, at: Diagnosis, after: int) -> Conclusion:
        """Say which slips are left, the likeliest first, each with its way back."""
        ways: dict[tuple[str, ...], dict[str, None]] = {}
        for candidate in at.likely:
            slip, back = self.guess(candidate.outcome, after)
            ways.setdefault(back, {})[slip] = None
        return Conclusion(
            text=self.writer.phrasebook.say("wrong-found"),
            guesses=tuple(Guess(slips=tuple(slips), way_back=back) for back, slips in ways.items()),
        )

    def guess(self, outcome: Outcome, after: int) -> tuple[str, tuple[str, ...]]:
        """Word a slip and where it was made, and the way back from here."""
        slip = outcome.slip
        where = self.writer.step(slip.at, self.rehearsal.history.moves[slip.at].move)
        run = self.diagnostician.runs.get(outcome)
        acts = find_way_back(self.rehearsal.history, outcome, after, self.diagnostician.prepared, run).acts
        return f"{where[:1].upper()}{where[1:]}: {self.writer.slip(outcome)}", self.writer.back(acts)


def likely_slips_at(diagnostician: Diagnostician, after: int, most: int = SLIPS) -> Diagnosis:
    """Open the diagnosis after the move of that index for the likeliest slips that can be seen there."""
    rehearsal = diagnostician.rehearsal
    made = [o for o in rehearsal.outcomes if after - RECENT < o.slip.at <= after and o.result != "harmless"]
    some = sorted(made, key=lambda outcome: -_weight(rehearsal, outcome, after))[: 2 * most]
    opened = diagnostician.diagnose(after, among=some)
    return opened._replace(cases=opened.cases[:most])


def _weight(rehearsal: Rehearsal, outcome: Outcome, after: int) -> float:
    """Return how likely a slip is to have been made and not yet seen."""
    return float(rehearsal.chances[outcome.slip] * _FADES ** (after - outcome.slip.at))
