"""Puts into the lesson what a rehearsal found: warnings, pictures of wrong beside right, and checkpoints."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

from msgspec.structs import replace

from pegwright.lesson.handout.sheet import Checkpoint, CommonMistake, LessonStep, Phase
from pegwright.lesson.pictures.close_up import GAP_MM, THICK_MM, WIDTH_MM, draw_close_up
from pegwright.lesson.pictures.step_picture import CARD_MM, Moment, draw_step
from pegwright.lesson.say.mistake_text import MistakeWriter, count_caught_loops
from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.loop_positions import LoopPositions, positions_by_move
from pegwright.lesson.scene.picture import BadgeMark, BarMark, LabelMark, Mark, Picture, PostMark, Window
from pegwright.lesson.scene.scene import PLAIN_TINT, Scene
from pegwright.lesson.scene.view import view_of
from pegwright.loom import HOOK, AppliedMove, Effect, History, Laid, State, apply_move
from pegwright.pattern import Clip, Hook, Knot, Lift, Place, Slide, Transfer, is_address, named_pegs
from pegwright.rehearsal import (
    FailureMode,
    Outcome,
    PreparedHistory,
    Rehearsal,
    find_way_back,
    prepare_history,
)

MOST_MISTAKES = 6
"""How many troubles go into a lesson at most: nobody heeds more warnings."""
_PEGS_NAMED = 4
_HARM_LEAST = 0.02
"""Troubles that cost one maker less than this many bands on average are not worth a warning."""


def add_mistakes(speaker: Speaker, phases: tuple[Phase, ...], rehearsal: Rehearsal) -> tuple[Phase, ...]:
    """Return the phases with common mistakes and checkpoints at the steps concerned.

    A trouble stands at the first step where it can happen, and says the worst that can come of it.
    """
    pages = _MistakePages(speaker, rehearsal, prepare_history(rehearsal.history), _steps_by_move(phases))
    mistakes: dict[int, list[CommonMistake]] = {}
    for trouble in rehearsal.troubles[:MOST_MISTAKES]:
        way = trouble.failure_modes[0]
        if trouble.expected >= _HARM_LEAST:
            model = min(way.risks, key=lambda risk: risk.outcome.slip.at).outcome
            mistakes.setdefault(pages.numbers[model.slip.at], []).append(pages.mistake(way, model))
    checkpoints = {pages.numbers[at]: at for at in reversed(rehearsal.checks.after)}
    found = (
        replace(
            phase,
            steps=tuple(
                replace(
                    step,
                    mistakes=tuple(mistakes.get(step.number, ())),
                    checkpoint=pages.checkpoint(phase, step, checkpoints[step.number])
                    if step.number in checkpoints
                    else None,
                )
                for step in phase.steps
            ),
        )
        for phase in phases
    )
    return tuple(_merge_checkpoints(speaker, phase) for phase in found)


def _merge_checkpoints(speaker: Speaker, phase: Phase) -> Phase:
    """Make one stop of two that would follow each other: in the last rounds, and after the last one."""
    last = phase.steps[-1] if phase.steps else None
    if phase.check is None or last is None or last.checkpoint is None:
        return phase
    say = speaker.phrasebook.say
    sooner, later = last.checkpoint, phase.check
    lines = (
        say("look-sooner", when=sooner.heading, line=sooner.lines[0]),
        *sooner.lines[1:],
        say("look-later", line=later.lines[0]),
        *later.lines[1:],
    )
    steps = (*phase.steps[:-1], replace(last, checkpoint=None))
    return replace(phase, steps=steps, check=replace(later, lines=lines))


def draw_mistake(
    speaker: Speaker, rehearsal: Rehearsal, outcome: Outcome, numbers: Sequence[int]
) -> tuple[Picture, Picture] | None:
    """Return the wrong picture of a slip on the loom and the right one, or None where they look alike.

    `numbers` are those of the moves.
    """
    pages = _MistakePages(speaker, rehearsal, prepare_history(rehearsal.history), dict(enumerate(numbers)))
    return pages.action(outcome) or pages.stacks(outcome)


def _steps_by_move(phases: tuple[Phase, ...]) -> dict[int, int]:
    """Map each move (by index) to the number of the step that stands for it."""
    found: dict[int, int] = {}
    for phase in phases:
        for step in phase.steps:
            if step.first:
                found |= dict.fromkeys(range(step.first - 1, step.last), step.number)
    return found


class _MistakePages(NamedTuple):
    speaker: Speaker
    rehearsal: Rehearsal
    prepared: PreparedHistory
    numbers: dict[int, int]

    @property
    def history(self) -> History:
        return self.rehearsal.history

    def mistake(self, way: FailureMode, model: Outcome) -> CommonMistake:
        """Word one failure mode, shown at the first step where it can happen."""
        say = self.speaker.phrasebook.say
        writer = MistakeWriter(self.speaker.phrasebook, self.history, lambda at: self.numbers.get(at, 0))
        slip = writer.slip(model)
        shut = isinstance(self.history.moves[model.slip.at].move, Clip | Knot)
        pair = None if shut else self.action(model) or self.stacks(model)
        wrong = right = None
        if pair is not None:
            wrong = replace(
                pair[0],
                title=say("label-wrong"),
                text=say("picture-wrong", slip=slip, text=pair[0].text),
            )
            right = replace(pair[1], title=say("label-right"), text=say("picture-right", text=pair[1].text))
        return CommonMistake(
            kind=way.kind,
            heading=say("mistake-heading", n=self.numbers[model.slip.at]),
            slip=slip,
            outcome=writer.end(way.worst),
            sign=writer.sign(model),
            warning=writer.warning(model),
            filming_note=say("look-film", slip=slip),
            way_back=writer.back(find_way_back(self.history, model, made=self.prepared).acts),
            wrong_picture=wrong,
            right_picture=right,
        )

    def action(self, model: Outcome) -> tuple[Picture, Picture] | None:
        """Show the wrong move beside the right one, where it is one move for one."""
        slip = model.slip
        done = self.history.moves[slip.at]
        if len(slip.moves) != 1 or slip.replaces != 1 or slip.about:
            return None
        before = self.history.before(slip.at)
        made = apply_move(self.history.board, before, slip.moves[0])
        if type(slip.moves[0]) is not type(done.move) or not isinstance(made, Effect):
            return None
        wrong = AppliedMove(done.located._replace(move=slip.moves[0]), made.events, made.state)
        pair = []
        for each in (wrong, done):
            moment = Moment(
                each, self.scene(self.history.moves[: slip.at], before), self.after(slip.at, each)
            )
            if isinstance(done.move, Place):
                pictures = draw_step(self.speaker, self.numbers[slip.at], moment, None)
                pair.append(pictures[0])
            elif isinstance(done.move, Hook | Slide | Lift | Transfer):
                picture = draw_close_up(self.speaker, moment)
                if picture is not None:
                    pair.append(picture)
        same = len(pair) == 2 and pair[0].marks == pair[1].marks
        return (pair[0], pair[1]) if len(pair) == 2 and not same else None

    def scene(self, moves: tuple[AppliedMove, ...], state: State) -> Scene:
        """Return the scene after those moves."""
        positions = LoopPositions()
        for positions in positions_by_move(moves):  # noqa: B007 - the last one counts
            pass
        view = view_of(self.history.board)
        return Scene(view._replace(turned=state.turned), self.speaker.look, positions, state)

    def after(self, at: int, done: AppliedMove) -> Scene:
        """Return the scene after the moves before `at` and one more."""
        return self.scene((*self.history.moves[:at], done), done.after)

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
        phrasebook = self.speaker.phrasebook
        high = max(16.0, 4.0 + GAP_MM * highest)
        marks: list[Mark] = [PostMark(x_mm=0.0, y_mm=0.0, w_mm=5.0, h_mm=high)]
        for level, letter in enumerate(letters):
            _, tint, hatch = self.speaker.look.colours.get(letter, ("", PLAIN_TINT, 0))
            y = 2.0 + GAP_MM * level + THICK_MM / 2
            bar = BarMark(
                x_mm=0.0, y_mm=y, w_mm=WIDTH_MM, h_mm=THICK_MM, letter=letter, tint=tint, hatch=hatch,
                highlighted=True,
            )  # fmt: skip
            marks += [bar, BadgeMark(x_mm=-WIDTH_MM / 2 - 2.6, y_mm=y, text=letter, r_mm=1.7)]
        name = phrasebook.say("label-hook") if holder == HOOK else holder
        marks.append(LabelMark(x_mm=0.0, y_mm=-2.4, text=name, size_mm=3.0, bold=True))
        frame = Window(left_mm=-11.0, near_mm=-5.0, right_mm=11.0, far_mm=high + 1.5)
        shown = phrasebook.both(list(letters)) or phrasebook.say("answer-no-loop")
        text = phrasebook.say("picture-closeup", peg=name, loops=shown)
        return Picture(
            title=name,
            text=text,
            window=frame,
            marks=tuple(marks),
            scale=min(1.0, CARD_MM[1] / frame.height_mm),
        )

    def checkpoint(self, phase: Phase, step: LessonStep, at: int) -> Checkpoint | None:
        """Write what must be seen after the round that the move of that index falls in.

        It names every peg worked in the step so far; if the step works none, the pegs that show most.
        """
        say = self.speaker.phrasebook.say
        moves = (step.last - step.first + 1) // step.rounds
        number = (at - step.first + 1) // moves
        at = step.first - 2 + (number + 1) * moves
        if phase.check is not None and step is phase.steps[-1] and at == step.last - 1:
            return None
        worked = self.history.moves[step.first - 1 : at + 1]
        weights: Counter[str] = Counter()
        for risk in self.rehearsal.risks:
            sign = risk.outcome.first
            if sign is not None and any(first <= at < last for first, last in risk.outcome.shows):
                weights[sign.holder] += risk.expected  # type: ignore[assignment]
        state = self.history.moves[at].after
        by_count: dict[int, list[str]] = {}
        telling = [holder for holder, _ in weights.most_common() if is_address(holder)][:_PEGS_NAMED]
        for peg in dict.fromkeys(peg for applied in worked for peg in named_pegs(applied.move)) or telling:
            by_count.setdefault(len(state.stack(peg)), []).append(peg)
        lines = [say("look-why")]
        move = self.history.moves[at].move
        if isinstance(move, Clip | Knot):
            name = "check-clip" if isinstance(move, Clip) else "check-cord"
            lines.append(say(name, n=count_caught_loops(self.history.moves[at].events)))
        on_loom = not (step.off_loom or isinstance(move, Clip | Knot))
        for count, pegs in sorted(by_count.items() if on_loom else ()):
            named = self.speaker.pegs(pegs)
            named = say("peg-one", peg=named) if len(pegs) == 1 else say("peg-many", pegs=named)
            lines.append(say("check-loops", pegs=named[:1].upper() + named[1:], many=len(pegs), n=count))
        if any(isinstance(event, Laid) for applied in worked for event in applied.events):
            lines.append(say("check-bands", n=state.bands))
        heading = say("look-heading")
        if step.rounds > 1:
            heading = say("look-heading-round", n=number + 2)
        return Checkpoint(heading=heading, lines=tuple(lines), remedy=say("look-cure"))
