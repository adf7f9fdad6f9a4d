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
from pegwright.rehearsal.outcome import Outcome
from pegwright.rehearsal.prepared_history import PreparedHistory, prepare_history
from pegwright.rehearsal.rehearsal import Rehearsal
from pegwright.rehearsal.slip_run import SlipRun, replay_slips

__all__ = ["Answer", "Candidate", "Case", "Diagnosis", "Diagnostician", "Question", "answer_as_maker"]

Answer = int | str
QuestionKind = Literal[
    "where", "inside", "crossed", "loops", "top", "lowest", "colours", "strands", "strand-colours", "leads"
]
_ON_A_PEG: tuple[QuestionKind, ...] = (
    "loops",
    "top",
    "lowest",
    "colours",
    "strands",
    "strand-colours",
    "leads",
)


class LoopAppearance(NamedTuple):
    """A loop as a maker sees it: its colour letter, those of the strands inside it, where its band leads."""

    letter: str
    strands: tuple[str, ...]
    leads: tuple[str, ...]


LoomAppearance = Mapping[str, tuple[LoopAppearance, ...]]
"""What is to be seen on each holder, the lowest loop first."""


class Question(NamedTuple):
    """What to look at, on a holder or, for the first three (holder empty), on the whole loom.

    `where`: on which pegs the number or the colours of the loops are other than in the picture (their names
    in order, or `none`); `inside`: on which of them other strands come up inside the loops; `crossed`: on
    which of them the bands that lie there lead elsewhere, or lie in another order. `loops`: how many loops
    are on the peg; `top`, `lowest`: of what colour (letter) that loop is, `none` where there is none;
    `colours`: of all of them, lowest first; `strands`: how many strands come up inside each, lowest first;
    `strand-colours`: their colours; `leads`: to which pegs the band of each loop leads, lowest first.
    """

    ask: QuestionKind
    holder: str


class Case(NamedTuple):
    """A slip and the loom it has left: stacks and what runs through the loops, where not as intended."""

    outcome: Outcome
    chance: float
    changed: frozenset[tuple[str, Stack] | tuple[Bight, Stack]]
    appearance: LoomAppearance


class Candidate(NamedTuple):
    """A slip that fits all answers, with its likelihood among those that fit."""

    outcome: Outcome
    likelihood: float


class Diagnosis(NamedTuple):
    """What still fits after the answers given."""

    cases: tuple[Case, ...]
    intended: LoomAppearance
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
        kept = tuple(
            case
            for case in self.cases
            if answer_from_appearance(case.appearance, self.intended, question) == answer
        )
        return self._replace(cases=kept, asked=(*self.asked, (question, answer)))


class Diagnostician:
    """Replays the slips of a rehearsal once, so that many diagnoses can be opened."""

    def __init__(self, rehearsal: Rehearsal) -> None:
        self.rehearsal = rehearsal
        self.prepared: PreparedHistory = prepare_history(rehearsal.history)
        self.runs: dict[Outcome, SlipRun] = {}

    def diagnose(
        self,
        after: int,
        fine_after: int = -1,
        stuck: bool = False,
        among: Iterable[Outcome] | None = None,
    ) -> Diagnosis:
        """Return the diagnosis for a maker who stands after the move of that index and sees something wrong.

        `fine_after` is the last move after which the loom was seen to be right at a glance: what would have
        shown then has not happened. `stuck` says that the move of that index could not be made.
        `among` are the slips to be thought of: by default, all.
        """
        cases = []
        for outcome in self.rehearsal.outcomes if among is None else among:
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
                    run = self.runs[outcome] = replay_slips(self.prepared, slip)
                case = _case_of(self.prepared, outcome, run, after, self.rehearsal.chances[slip])
                if case.appearance or stuck:
                    cases.append(case)
        state = self.rehearsal.history.moves[after].after
        through, ends = _RibbonTable(state.inside, {}), _holders_of_bands(_holder_of_loops(state.stacks))
        intended = {
            holder: _appearance_of(self.rehearsal.history, {}, (holder, loops), through, ends)
            for holder, loops in state.stacks.items()
        }
        return Diagnosis(tuple(cases), intended)


def answer_as_maker(diagnosis: Diagnosis, case: Case, most: int = 5) -> Diagnosis:
    """Return the diagnosis after at most so many questions, answered as the maker of that case would."""
    for _ in range(most):
        question = diagnosis.question()
        if question is None:
            break
        diagnosis = diagnosis.answer(
            question, answer_from_appearance(case.appearance, diagnosis.intended, question)
        )
    return diagnosis


def answer_from_appearance(looks: LoomAppearance, intended: LoomAppearance, question: Question) -> Answer:
    """Return what a maker sees, given what is not as intended."""
    ask, holder = question
    if not holder:
        parts = {"where": _colour_letters, "inside": _strands_inside, "crossed": _where_bands_lead}[ask]
        odd = (at for at, loops in looks.items() if parts(loops) != parts(intended.get(at, ())))
        return " ".join(sorted(odd)) or "none"
    loops = looks[holder] if holder in looks else intended.get(holder, ())
    if ask == "loops":
        return len(loops)
    if not loops:
        return "none"
    if ask in ("top", "lowest"):
        return loops[-1 if ask == "top" else 0].letter
    if ask == "strands":
        return " ".join(str(len(loop.strands)) for loop in loops)
    return {"colours": _colour_letters, "strand-colours": _strands_inside, "leads": _where_bands_lead}[ask](
        loops
    )


def _colour_letters(loops: Iterable[LoopAppearance]) -> str:
    return " ".join(loop.letter for loop in loops)


def _strands_inside(loops: Iterable[LoopAppearance]) -> str:
    return " ".join("+".join(loop.strands) or "none" for loop in loops)


def _where_bands_lead(loops: Iterable[LoopAppearance]) -> str:
    return " ".join("+".join(loop.leads) or "none" for loop in loops)


def _case_of(made: PreparedHistory, outcome: Outcome, run: SlipRun, after: int, chance: float) -> Case:
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
    state = made.history.moves[after].after
    through = _RibbonTable(state.inside, inside)
    lying = dict(state.stacks) | stacks
    at_of = _holder_of_loops(lying)
    meant_at = _holder_of_loops(state.stacks)
    moved = {loop.band for loop, holder in at_of.items() if meant_at.get(loop) != holder}
    moved |= {loop.band for loop in meant_at.keys() - at_of.keys()}
    odd = {holder for holder, loops in lying.items() if any(b in inside or b.band in moved for b in loops)}
    ends = _holders_of_bands(at_of)
    looks = {
        holder: _appearance_of(made.history, run.colours, (holder, lying[holder]), through, ends)
        for holder in sorted(odd.union(stacks), key=lambda holder: (len(holder), holder))
    }
    changed: frozenset[tuple[str, Stack] | tuple[Bight, Stack]] = frozenset(
        [*stacks.items(), *inside.items()]
    )
    return Case(outcome, chance, changed, looks)


class _RibbonTable(NamedTuple):
    usual: Mapping[Bight, Stack]
    changed: Mapping[Bight, Stack]

    def of(self, loop: Bight) -> Stack:
        found = self.changed.get(loop)
        return self.usual.get(loop, ()) if found is None else found


def _holder_of_loops(stacks: Mapping[str, Stack]) -> dict[Bight, str]:
    return {loop: holder for holder, loops in stacks.items() for loop in loops}


def _holders_of_bands(at_of: Mapping[Bight, str]) -> dict[int, set[str]]:
    """Return the holders that each band lies on."""
    found: dict[int, set[str]] = {}
    for loop, holder in at_of.items():
        found.setdefault(loop.band, set()).add(holder)
    return found


def _appearance_of(
    history: History,
    colours: Mapping[int, str],
    stack: tuple[str, Stack],
    inside: _RibbonTable,
    ends: Mapping[int, set[str]],
) -> tuple[LoopAppearance, ...]:
    holder, loops = stack

    def letter(loop: Bight) -> str:
        return colours.get(loop.band) or history.colours[loop.band - 1]

    return tuple(
        LoopAppearance(
            letter(loop),
            tuple(map(letter, inside.of(loop))),
            tuple(sorted(ends[loop.band] - {holder})),
        )
        for loop in loops
    )


def _questions(cases: Sequence[Case]) -> Iterable[Question]:
    holders = dict.fromkeys(holder for case in cases for holder in case.appearance)
    # The easiest to answer come first: of questions that tell equally much the first is asked.
    yield Question("where", "")
    yield Question("inside", "")
    yield Question("crossed", "")
    for ask in _ON_A_PEG:
        for holder in holders:
            yield Question(ask, holder)


def _entropy(cases: Sequence[Case], question: Question, intended: LoomAppearance) -> float:
    """Return what the answer is expected to tell, in bits: it follows from the slip, so its own entropy."""
    usual = answer_from_appearance({}, intended, question)
    weights: dict[Answer, float] = {}
    total = 0.0
    for case in cases:
        asked_of = not question.holder or question.holder in case.appearance
        answer = answer_from_appearance(case.appearance, intended, question) if asked_of else usual
        weights[answer] = weights.get(answer, 0.0) + case.chance
        total += case.chance
    return -sum(w / total * math.log2(w / total) for w in weights.values()) if len(weights) > 1 else 0.0
