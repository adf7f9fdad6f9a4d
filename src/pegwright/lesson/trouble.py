"""What a rehearsal found, put into the lesson: a warning where it goes wrong, wrong beside right, checks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

from msgspec.structs import replace

from pegwright.lesson.closeup import GAP_MM, THICK_MM, WIDTH_MM, closeup
from pegwright.lesson.lie import Lie, lies
from pegwright.lesson.mishap import Teller, loops_caught
from pegwright.lesson.picture import BadgeMark, BarMark, LabelMark, Mark, Picture, PostMark, Window
from pegwright.lesson.say import Speaker
from pegwright.lesson.scene import PLAIN_TINT, Scene
from pegwright.lesson.sheet import Check, Phase, Step, Trouble
from pegwright.lesson.show import CARD_MM, Moment, step_pictures
from pegwright.lesson.view import view_of
from pegwright.loom import HOOK, Applied, Done, History, State, apply
from pegwright.pattern import Clip, Hook, Knot, Lift, Place, Slide, Transfer
from pegwright.pattern.address import is_address
from pegwright.rehearsal import Outcome, Rehearsal, Way, way_back
from pegwright.rehearsal.course import Course, course

TROUBLES = 6
"""So many troubles are taken into a lesson; more warnings are heard by nobody."""
_PEGS_NAMED = 4
_HARM_LEAST = 0.02
"""Troubles that cost one maker less than this many bands on average are not worth a warning."""


def troubled(speaker: Speaker, phases: tuple[Phase, ...], told: Rehearsal) -> tuple[Phase, ...]:
    """Return the phases with troubles and checks at the steps concerned.

    A trouble stands at the step that first gives occasion for it, and tells the worst that can come of it.
    """
    stage = _Stage(speaker, told, course(told.history), _numbers(phases))
    troubles: dict[int, list[Trouble]] = {}
    for trouble in told.troubles[:TROUBLES]:
        way = trouble.ways[0]
        if trouble.expected >= _HARM_LEAST:
            model = min(way.risks, key=lambda risk: risk.outcome.slip.at).outcome
            troubles.setdefault(stage.numbers[model.slip.at], []).append(stage.trouble(way, model))
    looks = {stage.numbers[at]: at for at in reversed(told.checks.after)}
    found = (
        replace(
            phase,
            steps=tuple(
                replace(
                    step,
                    troubles=tuple(troubles.get(step.number, ())),
                    look=stage.look(phase, step, looks[step.number]) if step.number in looks else None,
                )
                for step in phase.steps
            ),
        )
        for phase in phases
    )
    return tuple(_one_stop(speaker, phase) for phase in found)


def _one_stop(speaker: Speaker, phase: Phase) -> Phase:
    """Make one stop of two that would follow each other: in the last rounds, and after the last one."""
    last = phase.steps[-1] if phase.steps else None
    if phase.check is None or last is None or last.look is None:
        return phase
    say = speaker.words.say
    sooner, later = last.look, phase.check
    lines = (
        say("look-sooner", when=sooner.heading, line=sooner.lines[0]),
        *sooner.lines[1:],
        say("look-later", line=later.lines[0]),
        *later.lines[1:],
    )
    steps = (*phase.steps[:-1], replace(last, look=None))
    return replace(phase, steps=steps, check=replace(later, lines=lines))


def pictured(
    speaker: Speaker, told: Rehearsal, outcome: Outcome, numbers: Sequence[int]
) -> tuple[Picture, Picture] | None:
    """Return the wrong picture of a slip on the loom and the right one, or None where they look alike.

    `numbers` are those of the moves.
    """
    stage = _Stage(speaker, told, course(told.history), dict(enumerate(numbers)))
    return stage.action(outcome) or stage.stacks(outcome)


def _numbers(phases: tuple[Phase, ...]) -> dict[int, int]:
    """Map each move (by index) to the number of the step that stands for it."""
    found: dict[int, int] = {}
    for phase in phases:
        for step in phase.steps:
            if step.first:
                found |= dict.fromkeys(range(step.first - 1, step.last), step.number)
    return found


class _Stage(NamedTuple):
    speaker: Speaker
    told: Rehearsal
    course: Course
    numbers: dict[int, int]

    @property
    def history(self) -> History:
        return self.told.history

    def trouble(self, way: Way, model: Outcome) -> Trouble:
        """Word one way to go wrong, shown where it can first be gone."""
        say = self.speaker.words.say
        teller = Teller(self.speaker.words, self.history, lambda at: self.numbers.get(at, 0))
        slip = teller.slip(model)
        shut = isinstance(self.history.done[model.slip.at].doing.move, Clip | Knot)
        pair = None if shut else self.action(model) or self.stacks(model)
        wrong = right = None
        if pair is not None:
            wrong = replace(
                pair[0],
                title=say("label-wrong"),
                text=say("picture-wrong", slip=slip, text=pair[0].text),
            )
            right = replace(pair[1], title=say("label-right"), text=say("picture-right", text=pair[1].text))
        return Trouble(
            kind=way.kind,
            slip=slip,
            end=teller.end(way.worst),
            sign=teller.sign(model),
            warning=teller.warning(model),
            film=say("look-film", slip=slip),
            back=teller.back(way_back(self.history, model, made=self.course).acts),
            wrong=wrong,
            right=right,
        )

    def action(self, model: Outcome) -> tuple[Picture, Picture] | None:
        """Show the wrong move beside the right one, where it is one move for one."""
        slip = model.slip
        done = self.history.done[slip.at]
        if len(slip.moves) != 1 or slip.replaces != 1 or slip.about:
            return None
        before = self.history.before(slip.at)
        made = apply(self.history.board, before, slip.moves[0])
        if type(slip.moves[0]) is not type(done.doing.move) or not isinstance(made, Applied):
            return None
        wrong = Done(done.doing._replace(move=slip.moves[0]), made.events, made.state)
        pair = []
        for each in (wrong, done):
            moment = Moment(each, self.scene(self.history.done[: slip.at], before), self.after(slip.at, each))
            if isinstance(done.doing.move, Place):
                pictures = step_pictures(self.speaker, self.numbers[slip.at], moment, None)
                pair.append(pictures[0])
            elif isinstance(done.doing.move, Hook | Slide | Lift | Transfer):
                picture = closeup(self.speaker, moment)
                if picture is not None:
                    pair.append(picture)
        same = len(pair) == 2 and pair[0].marks == pair[1].marks
        return (pair[0], pair[1]) if len(pair) == 2 and not same else None

    def scene(self, done: tuple[Done, ...], state: State) -> Scene:
        """Return the scene after those moves."""
        lie = Lie()
        for lie in lies(done):  # noqa: B007 - the last one counts
            pass
        view = view_of(self.history.board)
        return Scene(view._replace(turned=state.turned), self.speaker.look, lie, state)

    def after(self, at: int, done: Done) -> Scene:
        """Return the scene after the moves before `at` and one more."""
        return self.scene((*self.history.done[:at], done), done.after)

    def stacks(self, model: Outcome) -> tuple[Picture, Picture] | None:
        """Show the loops on the peg where it first shows, wrong beside right."""
        sign = model.first
        if sign is None or sign.how != "glance" or not (is_address(sign.holder) or sign.holder == HOOK):
            return None
        highest = max(len(sign.wrong), len(sign.right))
        return (
            self.stack(sign.holder, sign.wrong, highest),
            self.stack(sign.holder, sign.right, highest),
        )

    def stack(self, holder: str, letters: tuple[str, ...], highest: int) -> Picture:
        """Show loops on a peg from the side, the lowest first."""
        words = self.speaker.words
        high = max(16.0, 4.0 + GAP_MM * highest)
        marks: list[Mark] = [PostMark(x_mm=0.0, y_mm=0.0, w_mm=5.0, h_mm=high)]
        for level, letter in enumerate(letters):
            _, tint, hatch = self.speaker.look.colours.get(letter, ("", PLAIN_TINT, 0))
            y = 2.0 + GAP_MM * level + THICK_MM / 2
            bar = BarMark(
                x_mm=0.0, y_mm=y, w_mm=WIDTH_MM, h_mm=THICK_MM, letter=letter, tint=tint, hatch=hatch,
                strong=True,
            )  # fmt: skip
            marks += [bar, BadgeMark(x_mm=-WIDTH_MM / 2 - 2.6, y_mm=y, text=letter, r_mm=1.7)]
        name = words.say("label-hook") if holder == HOOK else holder
        marks.append(LabelMark(x_mm=0.0, y_mm=-2.4, text=name, size_mm=3.0, bold=True))
        frame = Window(left_mm=-11.0, near_mm=-5.0, right_mm=11.0, far_mm=high + 1.5)
        shown = words.both(list(letters)) or words.say("answer-none")
        text = words.say("picture-closeup", peg=name, loops=shown)
        return Picture(
            title=name,
            text=text,
            window=frame,
            marks=tuple(marks),
            scale=min(1.0, CARD_MM[1] / frame.height_mm),
        )

    def look(self, phase: Phase, step: Step, at: int) -> Check | None:
        """Write what must be seen after the round that the move of that index falls in, where most shows."""
        say = self.speaker.words.say
        moves = (step.last - step.first + 1) // step.rounds
        number = (at - step.first + 1) // moves
        at = step.first - 2 + (number + 1) * moves
        if phase.check is not None and step is phase.steps[-1] and at == step.last - 1:
            return None
        weights: Counter[str] = Counter()
        for risk in self.told.risks:
            sign = risk.outcome.first
            if sign is not None and any(first <= at < last for first, last in risk.outcome.shows):
                weights[sign.holder] += risk.expected  # type: ignore[assignment]
        state = self.history.done[at].after
        by_count: dict[int, list[str]] = {}
        for holder, _ in weights.most_common():
            if is_address(holder) and sum(map(len, by_count.values())) < _PEGS_NAMED:
                by_count.setdefault(len(state.stack(holder)), []).append(holder)
        lines = [say("look-why")]
        move = self.history.done[at].doing.move
        if isinstance(move, Clip | Knot):
            name = "check-clip" if isinstance(move, Clip) else "check-cord"
            lines.append(say(name, n=loops_caught(self.history.done[at].events)))
        on_loom = not (step.off or isinstance(move, Clip | Knot))
        for count, pegs in sorted(by_count.items() if on_loom else ()):
            named = self.speaker.pegs(pegs)
            named = say("peg-one", peg=named) if len(pegs) == 1 else say("peg-many", pegs=named)
            lines.append(say("check-loops", pegs=named[:1].upper() + named[1:], many=len(pegs), n=count))
        lines.append(say("check-bands", n=state.bands))
        heading = say("look-heading")
        if step.rounds > 1:
            heading = say("look-heading-round", n=number + 2)
        return Check(heading=heading, lines=tuple(lines), cure=say("look-cure"))
