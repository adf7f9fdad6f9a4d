"""Something looks wrong: questions a maker can answer by looking, until the likely slip is left.

At a step, every slip made so far has left the loom in some state. A question is about one peg; the one whose
answer is expected to tell most is asked next (information gain: Shannon 1948; a decision tree grown so is
that of Quinlan 1986, with the chances of the slips as weights).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import Literal, NamedTuple

from pegwright.loom import Bight, History, Stack
from pegwright.rehearsal.consequence import Outcome
from pegwright.rehearsal.course import Course, course
from pegwright.rehearsal.rehearse import Rehearsal
from pegwright.rehearsal.run import Run, rehearse_slips

__all__ = ["Answer", "Candidate", "Case", "Diagnosis", "Question", "Surgery", "answers_of"]

Answer = int | str
Ask = Literal["where", "where-inside", "loops", "top", "lowest", "through-top", "through-lowest", "colours"]
_ON_A_PEG: tuple[Ask, ...] = ("loops", "top", "lowest", "through-top", "through-lowest", "colours")
Looks = Mapping[
    str, tuple[tuple[str, tuple[str, ...]], ...]
]  # holder → (letter, ribbons' letters), bottom first


class Question(NamedTuple):
    """What to look at, on a holder or, for `where` (holder empty), on the whole loom.

    `where`: on which pegs the number or the colours of the loops are other than in the picture (their names
    in order, or `none`); `where-inside`: on which of them the strands that come up inside the loops are
    other than in the picture; `loops`: how many loops are on it; `top`, `lowest`: of what colour (letter)
    that loop is, `none` where there is none; `through-top`, `through-lowest`: how many strands come up
    inside that loop; `colours`: which colours lie on it, lowest first.
    """

    ask: Ask
    holder: str


class Case(NamedTuple):
    """A slip and the loom it has left: stacks and what runs through the loops, where not as intended."""

    outcome: Outcome
    chance: float
    changed: frozenset[tuple[str, Stack] | tuple[Bight, Stack]]
    looks: Looks


class Candidate(NamedTuple):
    """A slip that fits all answers, with its likelihood among those that fit."""

    outcome: Outcome
    likelihood: float


class Diagnosis(NamedTuple):
    """What still fits after the answers given."""

    cases: tuple[Case, ...]
    intended: Looks
    asked: tuple[tuple[Question, Answer], ...] = ()

    @property
    def likely(self) -> tuple[Candidate, ...]:
        """The slips that fit, the likeliest first; the more harmful first where they are equally likely."""
        total = sum(case.chance for case in self.cases) or 1.0
        found = sorted(self.cases, key=lambda case: (-case.chance, -len(case.outcome.falls)))
        return tuple(Candidate(case.outcome, case.chance / total) for case in found)

    def question(self) -> Question | None:
        """Return the question that tells most, or None where no answer could tell the cases apart."""
        best, gain = None, 1e-9
        for question in _questions(self.cases):
            told = _entropy(self.cases, question, self.intended)
            if told > gain:
                best, gain = question, told
        return best

    def answer(self, question: Question, answer: Answer) -> Diagnosis:
        """Return the diagnosis with an answer taken in."""
        kept = tuple(case for case in self.cases if answer_in(case.looks, self.intended, question) == answer)
        return self._replace(cases=kept, asked=(*self.asked, (question, answer)))


class Surgery:
    """Replays the slips of a rehearsal once, so that many diagnoses can be opened."""

    def __init__(self, rehearsal: Rehearsal) -> None:
        self.rehearsal = rehearsal
        self.course: Course = course(rehearsal.history)
        self.runs: dict[Outcome, Run] = {}

    def open(self, after: int, fine_after: int = -1, stuck: bool = False) -> Diagnosis:
        """Return the diagnosis for a maker who stands after the move of that index and sees something wrong.

        `fine_after` is the last move after which the loom was seen to be right at a glance: what would have
        shown then has not happened. `stuck` says that the move of that index could not be made.
        """
        cases = []
        for outcome in self.rehearsal.outcomes:
            slip = outcome.slip
            shown = any(first <= fine_after < last for first, last in outcome.shows)
            if stuck:
                fits = outcome.stuck == after
            else:
                fits = slip.at + slip.replaces - 1 <= after and (
                    outcome.stuck is None or outcome.stuck > after
                )
            if fits and not shown:
                run = self.runs.get(outcome)
                if run is None:
                    run = self.runs[outcome] = rehearse_slips(self.course, slip)
                case = _case(self.course, outcome, run, after, self.rehearsal.chances[slip])
                if case.looks or stuck:
                    cases.append(case)
        state = self.rehearsal.history.done[after].after
        intended = {
            holder: _looks(self.rehearsal.history, {}, loops, state.inside)
            for holder, loops in state.stacks.items()
        }
        return Diagnosis(tuple(cases), intended)


def answers_of(diagnosis: Diagnosis, case: Case, most: int = 5) -> Diagnosis:
    """Return the diagnosis after at most so many questions, answered as the maker of that case would."""
    for _ in range(most):
        question = diagnosis.question()
        if question is None:
            break
        diagnosis = diagnosis.answer(question, answer_in(case.looks, diagnosis.intended, question))
    return diagnosis


def answer_in(looks: Looks, intended: Looks, question: Question) -> Answer:
    """Return what a maker sees, given what is not as intended."""
    if question.ask == "where":
        odd = (
            holder for holder, loops in looks.items() if _letters(loops) != _letters(intended.get(holder, ()))
        )
        return " ".join(sorted(odd)) or "none"
    if question.ask == "where-inside":
        odd = (holder for holder, loops in looks.items() if loops != intended.get(holder, ()))
        return " ".join(sorted(odd)) or "none"
    seen = looks.get(question.holder)
    loops = intended.get(question.holder, ()) if seen is None else seen
    if question.ask == "loops":
        return len(loops)
    if question.ask == "colours":
        return " ".join(_letters(loops)) or "none"
    if not loops:
        return "none"
    letter, ribbons = loops[-1 if question.ask in ("top", "through-top") else 0]
    return letter if question.ask in ("top", "lowest") else len(ribbons)


def _letters(loops: tuple[tuple[str, tuple[str, ...]], ...]) -> tuple[str, ...]:
    return tuple(letter for letter, _ in loops)


def _case(made: Course, outcome: Outcome, run: Run, after: int, chance: float) -> Case:
    stacks: dict[str, Stack] = {}
    inside: dict[Bight, Stack] = {}
    for at, where, loops in run.changes:
        if at > after:
            break
        if isinstance(where, str):
            stacks.pop(where, None)
            if loops is not None:
                stacks[where] = loops
        else:
            inside.pop(where, None)
            if loops is not None:
                inside[where] = loops
    state = made.history.done[after].after
    odd = set(stacks)
    for holder, loops in state.stacks.items():
        if holder not in odd and any(loop in inside for loop in loops):
            odd.add(holder)
    through = {**dict(state.inside), **inside} if odd else {}
    looks = {
        holder: _looks(made.history, run.colours, stacks.get(holder, state.stack(holder)), through)
        for holder in odd
    }
    changed: frozenset[tuple[str, Stack] | tuple[Bight, Stack]] = frozenset(
        [*stacks.items(), *inside.items()]
    )
    return Case(outcome, chance, changed, looks)


def _looks(
    history: History, colours: Mapping[int, str], loops: Stack, inside: Mapping[Bight, Stack]
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    def letter(loop: Bight) -> str:
        return colours.get(loop.band) or history.colours[loop.band - 1]

    return tuple((letter(loop), tuple(map(letter, inside.get(loop, ())))) for loop in loops)


def _questions(cases: Sequence[Case]) -> Iterable[Question]:
    holders = dict.fromkeys(holder for case in cases for holder in case.looks)
    # The easiest to answer come first: of questions that tell equally much the first is asked.
    yield Question("where", "")
    yield Question("where-inside", "")
    for ask in _ON_A_PEG:
        for holder in holders:
            yield Question(ask, holder)


def _entropy(cases: Sequence[Case], question: Question, intended: Looks) -> float:
    """Return what the answer is expected to tell, in bits: it follows from the slip, so its own entropy."""
    usual = answer_in({}, intended, question)
    weights: dict[Answer, float] = {}
    total = 0.0
    for case in cases:
        asked_of = not question.holder or question.holder in case.looks
        answer = answer_in(case.looks, intended, question) if asked_of else usual
        weights[answer] = weights.get(answer, 0.0) + case.chance
        total += case.chance
    return -sum(w / total * math.log2(w / total) for w in weights.values()) if len(weights) > 1 else 0.0
