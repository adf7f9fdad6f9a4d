"""Decide the whole lesson: phases, steps, words, pictures, checks."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from pegwright import __version__
from pegwright.fit.supplies import Supplies
from pegwright.lesson.closeup import closeup
from pegwright.lesson.finished import finished
from pegwright.lesson.front import cautions, glossary, hold, is_worn, key, level, supplied, tools
from pegwright.lesson.inquiry import inquiring
from pegwright.lesson.lie import Lie, lies
from pegwright.lesson.overview import loom_pictures, rounds_pictures
from pegwright.lesson.picture import Window
from pegwright.lesson.rounds import Again, Taught, pegs_of, shift_between, teach
from pegwright.lesson.say import Speaker, bands_of, channel, nearest, say_move, way
from pegwright.lesson.scene import Scene, look_of
from pegwright.lesson.sheet import Check, Hand, Lesson, Phase, PhaseName, Step
from pegwright.lesson.show import Moment, step_pictures
from pegwright.lesson.sizes import sizes
from pegwright.lesson.times import COUNT_OUT_S, PREPARE_S, RELEASE_S, WEAR_S, Pace, floor_s, rounds_s
from pegwright.lesson.trouble import troubled
from pegwright.lesson.verdict import UNASKED, Finish, Verdict
from pegwright.lesson.view import view_of
from pegwright.lesson.words import Units, Words, line, plain
from pegwright.loom import HOOK, Done, History, Laid, State
from pegwright.pattern import Bind, Clip, Extend, Knot, Move, Pattern, Place, Round, Turn, Wind, write
from pegwright.pattern.address import is_address, parse_address, row_letter
from pegwright.rehearsal import Rehearsal

_LABELS = ("ruler", "ruler-metric", "ruler-inch", "note", "warning", "closeup", "order", "tick")
_OWN_LABELS = (
    "licence-fonts",
    "shot-piece",
    *(f"view-{name}" for name in ("piece", "cautions", "bench", "check")),
    *(f"page-{name}" for name in ("next", "back", "first", "goto", "left", "right", "large", "read", "stop")),
    *(f"label-{name}" for name in ("trouble", "right", "wrong", "back")),
    *(f"wrong-{name}" for name in ("open", "back", "again", "lost")),
    *(f"page-{name}" for name in ("keys", "what", "tools", "moving")),
    *(f"prompter-{name}" for name in ("start", "stop", "again", "slower", "faster", "smaller", "larger")),
    *(f"prompter-{name}" for name in ("mirror", "pause", "keys")),
)
_TICKS_AT_MOST = 96


def plan(
    pattern: Pattern,
    history: History,
    supplies: Supplies,
    verdict: Verdict,
    *,
    finish: Finish = UNASKED,
    language: str = "en",
    hand: Hand = "right",
    pace: Pace | None = None,
    units: Units = "metric",
    phrases: Mapping[str, str] | None = None,
    rehearsal: Rehearsal | None = None,
) -> Lesson:
    """Decide the lesson of a pattern from its history, its supplies and its verdict.

    `finish` is the piece off the loom, as far as it is known. For the left hand give the mirrored pattern;
    `hand` only says so and says which hand holds the hook. `pace` is that of the teacher and the learners.
    `phrases` maps words of ours to the teacher's own, as in `Words`. With the rehearsal of this history the
    lesson warns of what goes wrong, shows it beside the right, and stops to look.

    Raises:
        ValueError: there are no words for the language.
    """
    words = Words(language, phrases, units)
    say = words.say
    speaker = Speaker(words, look_of(pattern, history))
    course = _Course(speaker, pattern, history, pace or Pace())
    phases = course.phases(supplies)
    if rehearsal is not None:
        phases = inquiring(words, troubled(speaker, phases, rehearsal), rehearsal)
    designer = line(pattern.designer)
    mark = hashlib.sha256(write(pattern)).hexdigest()[:8]
    colophon = [
        say("colophon-version", version=__version__, format=str(pattern.pegwright)),
        say("colophon-errata", designer=designer) if designer else say("colophon-errata-none"),
        say("colophon-print", mark=mark),
    ]
    if pattern.licence:
        colophon.append(say("colophon-licence", licence=line(pattern.licence)))
    return Lesson(
        language=language,
        hand=hand,
        title=line(pattern.title),
        designer=designer,
        byline=say("byline", designer=designer) if designer else say("byline-none"),
        edition=say(f"edition-{hand}"),
        level=level(words, pattern, history),
        notes=plain(pattern.notes),
        supplies=supplied(words, speaker.look, supplies),
        tools=tools(words, supplies),
        key_heading=say("heading-key"),
        key=key(speaker.look, supplies),
        hold=hold(speaker, verdict, course.steps_of_bands()),
        finished=finished(words, line(pattern.title), speaker.look, finish),
        phases=phases,
        cautions=cautions(words, is_worn(history)),
        sizes=sizes(words, pattern, finish),
        glossary=glossary(words, " ".join(t for step in course.made for t in (step.words, *step.detail))),
        units=units,
        mark=mark,
        licence=say("licence-as", licence=line(pattern.licence)) if pattern.licence else say("licence-none"),
        phrases=dict(phrases or {}),
        colophon=tuple(colophon),
        labels={name: say(f"label-{name}") for name in _LABELS}
        | {name: say(name) for name in _OWN_LABELS}
        | {"page": say("label-page", page="{page}", pages="{pages}"), "notes": say("heading-notes")}
        | {"shot-step": say("picture-step", n="{n}")}
        | {"page-progress": say("page-progress", n="{n}", count="{count}")}
        | {"prompter-pace": say("prompter-pace", wpm="{wpm}")},
    )


class _Unit(NamedTuple):
    """One thing to teach and the phase it falls in."""

    taught: Taught
    phase: PhaseName


class _Course:
    """Writes the phases step by step; keeps the running number and the window of the last picture."""

    def __init__(self, speaker: Speaker, pattern: Pattern, history: History, pace: Pace) -> None:
        self.speaker = speaker
        self.pace = pace
        self.say = speaker.words.say
        self.pattern = pattern
        self.history = history
        self.lies: tuple[Lie, ...] = tuple(lies(history.done))
        self.view = view_of(history.board)
        self.number = 0
        self.made: list[Step] = []
        self.window: Window | None = None
        self.off = False
        self.ring = pattern.loom.pegs if isinstance(pattern.loom, Round) else 0

    # --- scenes ---

    def scene(self, index: int) -> Scene:
        """Return the scene after the move of that index; −1 is the bare loom."""
        state = self.history.done[index].after if index >= 0 else State()
        lie = self.lies[index] if index >= 0 else Lie()
        return Scene(self.view._replace(turned=state.turned), self.speaker.look, lie, state)

    def moment(self, index: int) -> Moment:
        """Return a move between its two scenes."""
        return Moment(self.history.done[index], self.scene(index - 1), self.scene(index))

    def steps_of_bands(self) -> dict[int, int]:
        """Map each band to the number of the step that takes it up."""
        found: dict[int, int] = {}
        for step in self.made:
            for index in range(step.first - 1, step.last):
                for event in self.history.done[index].events if index >= 0 else ():
                    if isinstance(event, Laid):
                        found.setdefault(event.band, step.number)
        return found

    # --- phases ---

    def phases(self, supplies: Supplies) -> tuple[Phase, ...]:
        """Write every phase in order."""
        found = [self.prepare(supplies)]
        groups = list(_by_phase(self.history.done, self.ring))
        last_finish = max((i for i, (name, _) in enumerate(groups) if name == "finish"), default=-1)
        if last_finish < 0:
            last_finish = max((i for i, (name, _) in enumerate(groups) if name == "close"), default=-1)
        loose = any(is_address(holder) for holder in self.history.final.stacks)
        for i, (name, units) in enumerate(groups):
            steps: list[Step] = []
            for unit in units:
                steps.append(self.step(unit.taught))
            if i == last_finish and loose:
                loops = sum(len(stack) for stack in self.history.final.stacks.values())
                took = self.took([RELEASE_S * loops])
                told = (*self.kept(units[-1].taught), self.say("detail-rough"))
                steps.append(self.add(self.say("step-release"), told, **took))
                self.off = True
            intro = self.say(f"intro-{name}") if name in ("place", "work", "finish") else ""
            index = (
                units[-1].taught.rounds[-1][-1] if isinstance(units[-1].taught, Again) else units[-1].taught
            )
            check = self.check(name, index) if name in ("place", "work") else None
            found.append(
                Phase(
                    name=name, heading=self.say(f"phase-{name}"), intro=intro, steps=tuple(steps), check=check
                )
            )
        worn = is_worn(self.history)
        wear = self.add(self.say("wear-fit" if worn else "use-safe"), learner_s=WEAR_S, teacher_s=WEAR_S)
        heading = self.say("phase-wear" if worn else "phase-use")
        found.append(Phase(name="wear", heading=heading, steps=(wear,)))
        return tuple(found)

    def kept(self, last: Taught) -> Iterator[str]:
        """Say which loops are kept together as the piece is lifted off: those that are fastened after it."""
        index = last.rounds[-1][-1] if isinstance(last, Again) else last
        for done in self.history.done[index + 1 :]:
            if isinstance(done.doing.move, Clip | Knot):
                pegs = [holder for holder in done.doing.move.at if is_address(holder)]
                count = sum(len(self.history.done[index].after.stack(peg)) for peg in pegs)
                if count:
                    yield self.say("detail-keep", n=count, pegs=self.speaker.places(pegs))

    def prepare(self, supplies: Supplies) -> Phase:
        """Write how to lay the loom and the bands ready."""
        bare = self.scene(-1)
        rows = sorted({parse_address(at).row for at in self.view.board.pegs})
        letters = self.speaker.words.both([row_letter(row) for row in rows])
        if isinstance(self.pattern.loom, Round):
            about = self.say("detail-round")
        elif len(rows) == 1:
            about = self.say("detail-row-one", letter=letters)
        else:
            about = self.say("detail-rows", letters=letters)
        overview = loom_pictures(self.speaker, bare)
        loom = self.add(
            self.say("step-prepare", near=nearest(bare.view)),
            (about, *channel(self.speaker, bare.view, self.pattern.loom), *overview.left_out),
            pictures=overview.pictures,
            wide=True,
            learner_s=PREPARE_S,
            teacher_s=PREPARE_S,
        )
        heading = supplied(self.speaker.words, self.speaker.look, supplies).heading
        heaps = [bands_of(self.speaker, heap.letter, heap.total) for heap in supplies.heaps]
        bands: tuple[Step, ...] = ()
        if heaps:
            took = self.took([COUNT_OUT_S * supplies.bands])
            said = self.say("step-prepare-bands", bands=self.speaker.words.both(heaps), list=heading)
            bands = (self.add(said, **took),)
        return Phase(name="prepare", heading=self.say("phase-prepare"), steps=(loom, *bands))

    def check(self, name: PhaseName, index: int) -> Check:
        """Write what must be seen after the move of that index."""
        state = self.history.done[index].after
        lines = [self.say("check-bands", n=state.bands)]
        by_count: dict[int, list[str]] = {}
        for holder, loops in state.stacks.items():
            if is_address(holder):
                by_count.setdefault(len(loops), []).append(holder)
        for count, pegs in sorted(by_count.items()):
            named = self.speaker.pegs(pegs)
            named = self.say("peg-one", peg=named) if len(pegs) == 1 else self.say("peg-many", pegs=named)
            lines.append(self.say("check-loops", pegs=named[:1].upper() + named[1:], many=len(pegs), n=count))
        bare = len(self.view.board.pegs) - sum(map(len, by_count.values()))
        if not by_count:
            lines.append(self.say("check-bare"))
        elif bare:
            lines.append(self.say("check-left"))
        return Check(
            heading=self.say("heading-check"), lines=tuple(lines), cure=self.say(f"check-cure-{name}")
        )

    # --- steps ---

    def took(self, floors: Sequence[float], start: int = 1) -> dict[str, Any]:
        """Return the seconds for rounds with these trained times, the first one being round `start`."""
        return {
            "learner_s": rounds_s(floors, self.pace, start),
            "teacher_s": self.pace.teacher * sum(floors),
        }

    def rests(self, index: int) -> bool:
        """Say whether the work can be put down after the move of that index: no loop is on hook or finger."""
        stacks = self.history.done[index].after.stacks
        return not any(holder == HOOK or "." in holder for holder in stacks)

    def add(self, words: str, detail: tuple[str, ...] = (), **more: Any) -> Step:
        """Number a step."""
        self.number += 1
        step = Step(number=self.number, words=words, detail=detail, off=self.off, **more)
        self.made.append(step)
        return step

    def step(self, taught: Taught) -> Step:
        """Write one move in full, or rounds to be counted."""
        if isinstance(taught, Again):
            return self.again(taught)
        moment = self.moment(taught)
        said = say_move(self.speaker, moment.before.view, moment.before.state, moment.done, off=self.off)
        move = moment.done.doing.move
        if isinstance(move, Turn):
            self.window = None
        pictures = step_pictures(self.speaker, self.number + 1, moment, self.window)
        self.window = pictures[-1].window
        hint = (plain(move.picture),) if move.picture else ()
        return self.add(
            said.words,
            (*said.detail, *hint),
            note=plain(move.note),
            warning=plain(move.warning),
            pictures=pictures,
            closeup=closeup(self.speaker, moment),
            first=taught + 1,
            last=taught + 1,
            rest=self.rests(taught),
            **self.took([floor_s(moment.done, self.history.board)]),
        )

    def again(self, taught: Again) -> Step:
        """Write rounds to be counted."""
        done = self.history.done
        rounds = [[done[i] for i in each] for each in (taught.model, *taught.rounds)]
        scene = self.scene(taught.rounds[-1][-1])
        first, last = taught.model[0] + 1, taught.model[-1] + 1
        numbers = [step.number for step in self.made if first <= step.first and step.last <= last]
        span = {1: "steps-one", 2: "steps-two"}.get(len(numbers), "steps-many")
        steps = self.say(span, first=numbers[0], last=numbers[-1])
        detail = []
        colours = [[getattr(d.doing.move, "colour", "") for d in each] for each in rounds]
        changing = any(row != colours[0] for row in colours)
        if changing:
            detail.append(self.say("detail-colours"))
        if len(rounds) > _TICKS_AT_MOST:
            detail.append(self.say("detail-list-short", last=_TICKS_AT_MOST))
        moves = [[d.doing.move for d in each] for each in rounds]
        still = shift_between(moves[0], moves[1], self.ring) == (0, 0)
        self.window = None
        overview = rounds_pictures(self.speaker, scene, rounds)
        return self.add(
            self._again_words(scene, rounds, steps),
            (*detail, *overview.left_out),
            pictures=overview.pictures,
            ticks=tuple(
                _tick(k, each, changing, still)
                for k, each in enumerate(rounds[1:], start=2)
                if k <= _TICKS_AT_MOST
            ),
            wide=True,
            first=taught.rounds[0][0] + 1,
            last=taught.rounds[-1][-1] + 1,
            rounds=len(taught.rounds),
            rest=self.rests(taught.rounds[-1][-1]),
            **self.took([sum(floor_s(d, self.history.board) for d in each) for each in rounds[1:]], start=2),
        )

    def _again_words(self, scene: Scene, rounds: list[list[Done]], steps: str) -> str:
        times = len(rounds) - 1
        moves = [[d.doing.move for d in each] for each in rounds]
        shifts = {shift_between(a, b, self.ring) for a, b in pairwise(moves)}
        shift = shifts.pop() if len(shifts) == 1 else None
        if shift is None:
            return self.say("step-again-counted", steps=steps, times=times)
        if shift == (0, 0):
            return self.say("step-again-same", steps=steps, times=times)
        start, then = pegs_of(moves[0][0]), pegs_of(moves[1][0])
        there = self.say(f"way-{way(scene.view.spot(start[0]), scene.view.spot(then[0]))}") if start else ""
        if isinstance(self.pattern.loom, Round) and not shift.rows:
            turn = self.say("turn-anticlockwise" if shift.pegs > 0 else "turn-clockwise")
            told = self.say("shift-round", n=abs(shift.pegs), turn=turn)
        elif not shift.rows:
            told = self.say("shift-pegs", n=abs(shift.pegs), way=there)
        elif not shift.pegs:
            told = self.say("shift-rows", n=abs(shift.rows), way=there)
        else:
            told = self.say("shift-both")
        end = next((p for m in reversed(moves[-1]) for p in reversed(pegs_of(m))), "")
        return self.say("step-again", steps=steps, times=times, shift=told, end=self.speaker.where(end))


def _tick(number: int, each: Sequence[Done], changing: bool, still: bool) -> str:
    """Return a round's entry in the list: its number, its pegs, and its colours if they change."""
    moves = [d.doing.move for d in each]
    shown = [_pegs(move) for move in moves if pegs_of(move)]
    text = "" if still or not shown else shown[0] if len(set(shown)) == 1 else f"{shown[0]} … {shown[-1]}"
    letters = list(dict.fromkeys(str(getattr(m, "colour", "")) for m in moves if getattr(m, "colour", "")))
    told = " ".join((text, *(letters if changing else ()))).strip()
    return f"{number}: {told}" if told else str(number)


def _pegs(move: Move) -> str:
    joint = "–" if isinstance(move, Place | Wind) else " → "
    return joint.join(pegs_of(move))


def _by_phase(done: tuple[Done, ...], ring: int) -> Iterator[tuple[PhaseName, list[_Unit]]]:
    """Gather what is taught into phases; a lone placing between other work is part of the work."""
    units = [_Unit(t, _phase(done, t)) for t in teach(done, ring)]
    worked = False
    group: list[_Unit] = []
    for i, unit in enumerate(units):
        worked = worked or unit.phase == "work"
        beside = [u.phase for u in units[max(0, i - 1) : i + 2] if u is not unit]
        if worked and unit.phase == "place" and "place" not in beside:
            unit = unit._replace(phase="work")  # noqa: PLW2901
        if group and group[0].phase != unit.phase:
            yield group[0].phase, group
            group = []
        group.append(unit)
    if group:
        yield group[0].phase, group


def _phase(done: tuple[Done, ...], taught: Taught) -> PhaseName:
    indices = (taught,) if isinstance(taught, int) else taught.rounds[0]
    names = {_phase_of(done[i].doing.move) for i in indices}
    return names.pop() if len(names) == 1 else "work"


def _phase_of(move: Move) -> PhaseName:
    match move:
        case Place() | Wind():
            return "place"
        case Turn():
            return "turn"
        case Bind() | Knot():
            return "finish"
        case Extend():
            return "extend"
        case Clip():
            return "close" if len(move.at) > 1 else "finish"
        case _:
            return "work"
