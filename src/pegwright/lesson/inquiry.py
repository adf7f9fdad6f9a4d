"""Something looks wrong: what a maker is asked at each step, decided beforehand, down to the way back."""

from __future__ import annotations

from typing import NamedTuple

from msgspec.structs import replace

from pegwright.lesson.mishap import Teller
from pegwright.lesson.sheet import Fork, Found, Guess, Phase, Reply, Step
from pegwright.lesson.words import Words
from pegwright.rehearsal import Diagnosis, Outcome, Rehearsal, Surgery, way_back
from pegwright.rehearsal.diagnosis import answer_in

SLIPS = 16
"""So many slips are told apart at a step; of older and of rarer ones there are too many for one page."""
STUCK = 8
"""So many slips are told apart where a step cannot be made."""
RECENT = 12
"""A slip older than so many moves is asked about at the steps before: its way back would be long."""
_QUESTIONS = 5
_ROUNDS = 12
"""Where a step counts more rounds than this, the maker is asked about the step as a whole."""
_SLIPS_OF_ROUND = 6
_FADES = 0.93
"""By so much a slip is the less likely to be still unseen, move by move: common practice, no source."""


def inquiring(words: Words, phases: tuple[Phase, ...], told: Rehearsal) -> tuple[Phase, ...]:
    """Return the phases with what to ask when something looks wrong, at every step that stands for moves."""
    numbers = {
        index: step.number
        for phase in phases
        for step in phase.steps
        if step.first
        for index in range(step.first - 1, step.last)
    }
    teller = Teller(words, told.history, lambda at: numbers.get(at, 0))
    doctor = _Doctor(teller, told, Surgery(told))
    return tuple(
        replace(
            phase,
            steps=tuple(
                replace(step, wrong=doctor.asks(step)) if step.first else step for step in phase.steps
            ),
        )
        for phase in phases
    )


class _Doctor(NamedTuple):
    teller: Teller
    told: Rehearsal
    surgery: Surgery

    def asks(self, step: Step) -> Fork:
        """Ask what is wrong: it looks so, after a round of it perhaps, or the step cannot be made."""
        say = self.teller.words.say
        first, last = step.first - 1, step.last - 1
        moves = (last - first + 1) // step.rounds
        look: Fork | Found = self.looks(last, SLIPS)
        if 1 < step.rounds <= _ROUNDS:
            # The pictures and the list count the round that was taught step by step as the first.
            rounds = tuple(
                Reply(
                    text=say("wrong-round-n", n=number + 2),
                    then=self.looks(first + (number + 1) * moves - 1, _SLIPS_OF_ROUND),
                )
                for number in range(step.rounds)
            )
            look = Fork(ask=say("wrong-round"), replies=rounds)
        return Fork(
            ask=say("wrong-first"),
            replies=(
                Reply(text=say("wrong-look"), then=look),
                Reply(text=say("wrong-stuck"), then=self.stuck(first, last)),
            ),
        )

    def looks(self, after: int, most: int) -> Fork | Found:
        """Ask a maker who stands after the move of that index about the likeliest slips that show there."""
        return self.fork(likeliest_at(self.surgery, after, most), after)

    def stuck(self, first: int, last: int) -> Fork | Found:
        """Ask a maker who cannot make one of these moves about what has made her so."""
        made = [o for o in self.told.outcomes if o.stuck is not None and first <= o.stuck <= last]
        if not made:
            return self.nothing()
        stops: dict[int, float] = {}
        for outcome in made:
            assert outcome.stuck is not None
            stops[outcome.stuck] = stops.get(outcome.stuck, 0.0) + self.told.chances[outcome.slip]
        after = max(stops, key=lambda at: stops[at])
        some = sorted(made, key=lambda outcome: -_weight(self.told, outcome, after))[:STUCK]
        return self.fork(self.surgery.open(after, stuck=True, among=some), after)

    def fork(self, at: Diagnosis, after: int) -> Fork | Found:
        """Ask the question that tells most, and go on below each answer; at the end say what it was."""
        if not at.cases:
            return self.nothing()
        question = at.question() if len(at.asked) < _QUESTIONS else None
        if question is None:
            return self.found(at, after)
        answers = dict.fromkeys(answer_in(case.looks, at.intended, question) for case in at.cases)
        ordered = sorted(answers, key=lambda answer: (isinstance(answer, str), answer))
        say = self.teller.words.say
        replies = [
            Reply(
                text=self.teller.answer(question, answer), then=self.fork(at.answer(question, answer), after)
            )
            for answer in ordered
        ]
        lost = Reply(text=say("wrong-other"), then=Found(text=say("wrong-lost")))
        return Fork(ask=self.teller.question(question), replies=(*replies, lost))

    def nothing(self) -> Found:
        """Say that no slip we know of looks so."""
        return Found(text=self.teller.words.say("wrong-nothing"))

    def found(self, at: Diagnosis, after: int) -> Found:
        """Say which slips are left, the likeliest first, each with its way back."""
        ways: dict[tuple[str, ...], dict[str, None]] = {}
        for candidate in at.likely:
            slip, back = self.guess(candidate.outcome, after)
            ways.setdefault(back, {})[slip] = None
        return Found(
            text=self.teller.words.say("wrong-found"),
            guesses=tuple(Guess(slips=tuple(slips), back=back) for back, slips in ways.items()),
        )

    def guess(self, outcome: Outcome, after: int) -> tuple[str, tuple[str, ...]]:
        """Word a slip and where it was made, and the way back from here."""
        slip = outcome.slip
        where = self.teller.step(slip.at, self.told.history.done[slip.at].doing.move)
        acts = way_back(self.told.history, outcome, after, self.surgery.course).acts
        return f"{where[:1].upper()}{where[1:]}: {self.teller.slip(outcome)}", self.teller.back(acts)


def likeliest_at(surgery: Surgery, after: int, most: int = SLIPS) -> Diagnosis:
    """Open the diagnosis after the move of that index for the likeliest slips that can be seen there."""
    told = surgery.rehearsal
    made = [o for o in told.outcomes if after - RECENT < o.slip.at <= after and o.result != "harmless"]
    some = sorted(made, key=lambda outcome: -_weight(told, outcome, after))[: 2 * most]
    opened = surgery.open(after, among=some)
    return opened._replace(cases=opened.cases[:most])


def _weight(told: Rehearsal, outcome: Outcome, after: int) -> float:
    """Return how likely a slip is to have been made and not yet seen."""
    return float(told.chances[outcome.slip] * _FADES ** (after - outcome.slip.at))
