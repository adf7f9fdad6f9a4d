"""The phases of a lesson: the loom laid ready, the steps of each phase, and what must be seen after it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from pegwright.fit import Supplies
from pegwright.lesson.handout.front import is_worn
from pegwright.lesson.handout.phases import group_by_phase
from pegwright.lesson.handout.sheet import Checkpoint, Hand, LessonStep, Phase, PhaseName
from pegwright.lesson.handout.step_writer import StepWriter
from pegwright.lesson.pictures.holding import draw_band_held, draw_hook_held
from pegwright.lesson.pictures.overview import loom_pictures
from pegwright.lesson.pictures.stack_chart import draw_chart
from pegwright.lesson.say.phrasebook import Phrasebook
from pegwright.lesson.say.say import channel_text, count_bands, nearest_peg
from pegwright.lesson.scene.picture import Picture
from pegwright.lesson.scene.rounds import CountedRounds, Teachable
from pegwright.lesson.scene.times import COUNT_OUT_S, PREPARE_S, RELEASE_S, WEAR_S
from pegwright.pattern import Clip, Knot, Round, is_address, parse_address, row_letter

_HOLDING: dict[PhaseName, Callable[[Phrasebook, bool], Picture]] = {
    "place": draw_band_held,
    "work": draw_hook_held,
}


def write_phases(writer: StepWriter, supplies: Supplies, hand: Hand = "right") -> tuple[Phase, ...]:
    """Write every phase in order. `hand` is the one that holds the hook."""
    found = [_write_preparation(writer, supplies)]
    groups = list(group_by_phase(writer.history.moves, writer.taught))
    last_finish = max((i for i, (name, _) in enumerate(groups) if name == "finish"), default=-1)
    if last_finish < 0:
        last_finish = max((i for i, (name, _) in enumerate(groups) if name == "close"), default=-1)
    loose = any(is_address(holder) for holder in writer.history.final.stacks)
    for i, (name, units) in enumerate(groups):
        steps = [writer.step(unit.taught) for unit in units]
        last = _last_move(units[-1].taught)
        if i == last_finish and loose:
            loops = sum(len(stack) for stack in writer.history.final.stacks.values())
            took = writer.took([RELEASE_S * loops])
            detail = (*_say_kept_together(writer, last), writer.say("detail-rough"))
            view = writer.say("view-release")
            steps.append(writer.add(writer.say("step-release"), detail, view=view, **took))
            writer.off_loom = True
        intro = writer.say(f"intro-{name}") if name in ("place", "work", "finish") else ""
        check = _write_check(writer, name, last) if name in ("place", "work") else None
        heading = writer.say(f"phase-{name}")
        holding = None
        if name in _HOLDING and all(phase.name != name for phase in found):
            holding = _HOLDING[name](writer.speaker.phrasebook, hand == "left")
        found.append(
            Phase(name=name, heading=heading, intro=intro, holding=holding, steps=tuple(steps), check=check)
        )
    worn = is_worn(writer.history)
    view = writer.say("view-wear" if worn else "view-piece")
    wear = writer.add(
        writer.say("wear-fit" if worn else "use-safe"), view=view, learner_s=WEAR_S, teacher_s=WEAR_S
    )
    heading = writer.say("phase-wear" if worn else "phase-use")
    found.append(Phase(name="wear", heading=heading, steps=(wear,)))
    return tuple(found)


def _write_preparation(writer: StepWriter, supplies: Supplies) -> Phase:
    """Write how to lay the loom and the bands ready."""
    bare = writer.scene(-1)
    rows = sorted({parse_address(at).row for at in writer.view.board.pegs})
    letters = writer.speaker.phrasebook.both([row_letter(row) for row in rows])
    if isinstance(writer.pattern.loom, Round):
        about = writer.say("detail-round")
    elif len(rows) == 1:
        about = writer.say("detail-row-one", letter=letters)
    else:
        about = writer.say("detail-rows", letters=letters)
    overview = loom_pictures(writer.speaker, bare)
    loom = writer.add(
        writer.say("step-prepare", near=nearest_peg(bare.view)),
        (about, *channel_text(writer.speaker, bare.view, writer.pattern.loom)),
        legend=(writer.say("legend-channel"), *overview.left_out),
        view=writer.say("view-loom"),
        pictures=overview.pictures,
        wide=True,
        learner_s=PREPARE_S,
        teacher_s=PREPARE_S,
    )
    heaps = [count_bands(writer.speaker, heap.letter, heap.total) for heap in supplies.heaps]
    bands: tuple[LessonStep, ...] = ()
    if heaps:
        took = writer.took([COUNT_OUT_S * supplies.bands])
        said = writer.say("step-prepare-bands", bands=writer.speaker.phrasebook.both(heaps))
        bands = (writer.add(said, view=writer.say("view-heaps"), **took),)
    return Phase(name="prepare", heading=writer.say("phase-prepare"), steps=(loom, *bands))


def _write_check(writer: StepWriter, name: PhaseName, index: int) -> Checkpoint:
    """Write what must be seen after the move of that index."""
    state = writer.history.moves[index].after
    seen = sorted((holder for holder in state.stacks if is_address(holder)), key=parse_address)
    lines = [writer.say("check-bands", n=state.bands)] if name == "place" else []
    by_count: dict[int, list[str]] = {}
    for holder, loops in state.stacks.items():
        if is_address(holder):
            by_count.setdefault(len(loops), []).append(holder)
    for count, pegs in sorted(by_count.items()):
        named = writer.speaker.pegs(pegs)
        named = writer.say("peg-one", peg=named) if len(pegs) == 1 else writer.say("peg-many", pegs=named)
        lines.append(writer.say("check-loops", pegs=named[:1].upper() + named[1:], many=len(pegs), n=count))
    bare = len(writer.view.board.pegs) - sum(map(len, by_count.values()))
    if not by_count:
        lines.append(writer.say("check-bare"))
    elif bare:
        lines.append(writer.say("check-left"))
    chart = draw_chart(writer.speaker, writer.scene(index))
    return Checkpoint(
        heading=writer.say("heading-check"),
        chart_heading=writer.say("heading-chart") if chart else "",
        chart=chart,
        lines=tuple(lines),
        remedy=writer.say(f"check-cure-{name}"),
        view=writer.say("view-check-pegs", pegs=writer.speaker.places(seen))
        if seen
        else writer.say("view-check"),
    )


def _last_move(taught: Teachable) -> int:
    """Return the index of the last move that is taught."""
    return taught.rounds[-1][-1] if isinstance(taught, CountedRounds) else taught


def _say_kept_together(writer: StepWriter, index: int) -> Iterator[str]:
    """Say which loops are kept together as the piece is lifted off: those fastened after that move."""
    for done in writer.history.moves[index + 1 :]:
        if isinstance(done.move, Clip | Knot):
            pegs = [holder for holder in done.move.at if is_address(holder)]
            count = sum(len(writer.history.moves[index].after.stack(peg)) for peg in pegs)
            if count:
                yield writer.say("detail-keep", n=count, many=len(pegs), pegs=writer.speaker.places(pegs))
