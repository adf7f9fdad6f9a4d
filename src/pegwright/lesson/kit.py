"""The kit sheet for a class: one bag's contents, the whole class's, what to buy, and the timetable."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import accumulate

from pegwright.fit import ShoppingItem, ShoppingList, Supplies, supplies_for_class
from pegwright.lesson.film.filming import clock_time, duration_text
from pegwright.lesson.film.script import Script
from pegwright.lesson.handout.leaf import Leaf, Table
from pegwright.lesson.handout.sheet import Block, Lesson
from pegwright.lesson.handout.sizes import sizes_as_table
from pegwright.lesson.say.phrasebook import Phrasebook, single_line

SLOWEST = 1.5
"""The slowest of a class against the reckoned beginner (common practice, no source)."""


def kit_sheet(
    lesson: Lesson,
    script: Script,
    one: Supplies,
    learners: int,
    *,
    spare_share: float = 0.1,
    shopping: ShoppingList | None = None,
) -> Leaf:
    """Plan the kit for a class of `learners`, from the supplies of `one` piece.

    `shopping`, where a stash is at hand, is what `fit.packs.packs` gives for the class's supplies.

    Raises:
        ValueError: fewer than one learner, or a spare share outside 0 to 10.
    """
    needs = supplies_for_class(one, learners, spare_share)
    phrasebook = lesson.phrasebook
    say = phrasebook.say
    names = _colour_names(lesson)
    parts: list[Table | Block] = [
        _bag_table(phrasebook, names, one),
        _class_table(phrasebook, names, one, needs, learners),
    ]
    if lesson.sizes is not None:
        parts += [sizes_as_table(phrasebook, lesson.sizes), Block(heading="", lines=(lesson.sizes.now,))]
    parts.append(Block(heading=say("heading-tick"), lines=tuple(_tick_list(phrasebook, needs, learners))))
    if shopping is not None:
        parts.append(_shopping_table(phrasebook, names, needs, shopping))
    parts += [
        _timetable_table(phrasebook, lesson, script),
        Block(heading="", lines=(_slowest_text(phrasebook, lesson, script),)),
    ]
    parts.append(Block(heading=lesson.cautions.heading, lines=(say("kit-safe"), *lesson.cautions.lines)))
    return Leaf(
        title=say("heading-kit", title=lesson.title),
        language=lesson.language,
        designer=lesson.designer,
        about=say("kit-about", n=learners),
        parts=tuple(parts),
        foot=lesson.colophon,
        page=lesson.page_label,
    )


def making_times_s(lesson: Lesson) -> tuple[float, ...]:
    """Return a learner's seconds of making, phase by phase."""
    return tuple(sum(step.learner_s for step in phase.steps) for phase in lesson.phases)


def showing_times_s(script: Script) -> tuple[float, ...]:
    """Return the seconds of showing and telling, for the opening and the cautions, then phase by phase."""
    return tuple(chapter.end_s - chapter.start_s for chapter in script.chapters)


def _bag_table(phrasebook: Phrasebook, names: Mapping[str, str], one: Supplies) -> Table:
    say = phrasebook.say
    rows = [
        (heap.letter, names.get(heap.letter, ""), str(heap.total), _weight_text(phrasebook, heap.mass_g))
        for heap in one.heaps
    ]
    rows.append(("", say("total"), str(one.bands), _weight_text(phrasebook, one.mass_g)))
    return Table(
        heading=say("heading-bag"),
        columns=("", *(say(f"column-{c}") for c in ("band", "count", "weight"))),
        rows=tuple(rows),
        wide=1,
        right=(2, 3),
        last=True,
    )


def _class_table(
    phrasebook: Phrasebook, names: Mapping[str, str], one: Supplies, needs: Supplies, learners: int
) -> Table:
    say = phrasebook.say
    rows = [
        (heap.letter, names.get(heap.letter, ""), f"{learners} × {each.total}", str(heap.spares),
         str(heap.total), _weight_text(phrasebook, heap.mass_g))
        for each, heap in zip(one.heaps, needs.heaps, strict=True)
    ]  # fmt: skip
    spares = sum(heap.spares for heap in needs.heaps)
    rows.append(
        (
            "",
            say("total"),
            f"{learners} × {one.bands}",
            str(spares),
            str(needs.bands),
            _weight_text(phrasebook, needs.mass_g),
        )
    )
    return Table(
        heading=say("heading-class"),
        columns=("", *(say(f"column-{c}") for c in ("band", "bag", "spares", "all", "weight"))),
        rows=tuple(rows),
        wide=1,
        right=(2, 3, 4, 5),
        last=True,
    )


def _tick_list(phrasebook: Phrasebook, needs: Supplies, learners: int) -> Iterator[str]:
    """List what is laid out besides the bands, as the supplies of the lesson say it."""
    say = phrasebook.say
    yield say("class-bags", n=learners)
    if needs.clips and needs.spare_clips:
        yield say("thing-clips-spare", n=needs.clips, spare=needs.spare_clips)
    elif needs.clips:
        yield say("thing-clips", n=needs.clips)
    for loom in needs.looms:
        pitch = "" if loom.pitch_mm is None else phrasebook.length(loom.pitch_mm)
        yield say(f"tool-{loom.kind}", n=loom.count, rows=loom.rows, pegs=loom.pegs, pitch=pitch)
    for name, count in (("hooks", needs.hooks), ("cord", needs.knots), ("scissors", needs.scissors)):
        if count:
            yield say(f"tool-{name}", n=count)


def _shopping_table(
    phrasebook: Phrasebook, names: Mapping[str, str], needs: Supplies, shopping: ShoppingList
) -> Table:
    say = phrasebook.say
    heaps, looms = iter(needs.heaps), iter(needs.looms)
    rows = []
    for each in shopping.lines:
        match each.kind:
            case "bands":
                heap = next(heaps)
                what = f"{heap.letter} {names.get(heap.letter, '')}".strip()
            case "loom":
                loom = next(looms)
                what = say("thing-loom", rows=loom.rows, pegs=loom.pegs)
            case "clips":
                what = say("thing-clips-word")
            case kind:
                what = say(f"thing-{kind}")
        rows.append(
            (
                what,
                str(each.needed),
                str(each.have),
                _packs_text(phrasebook, each),
                _cost_text(phrasebook, each, shopping),
            )
        )
    total = say("cost-total" if shopping.complete else "cost-part")
    rows.append((total, "", "", "", f"{shopping.cost} {single_line(shopping.currency)}".strip()))
    return Table(
        heading=say("heading-buy"),
        columns=tuple(say(f"column-{c}") for c in ("band", "need", "have", "packs", "cost")),
        rows=tuple(rows),
        wide=0,
        right=(1, 2, 3, 4),
        last=True,
    )


def _packs_text(phrasebook: Phrasebook, each: ShoppingItem) -> str:
    if not each.missing:
        return phrasebook.say("packs-none")
    if not each.packs:
        return phrasebook.say("packs-unknown")
    return ", ".join(phrasebook.say("packs-of", n=number, size=pack.size) for number, pack in each.packs)


def _cost_text(phrasebook: Phrasebook, each: ShoppingItem, shopping: ShoppingList) -> str:
    return (
        phrasebook.say("cost-open")
        if each.cost is None
        else f"{each.cost} {single_line(shopping.currency)}".strip()
    )


def _timetable_table(phrasebook: Phrasebook, lesson: Lesson, script: Script) -> Table:
    """Show, then make, phase by phase, from minute 0."""
    say = phrasebook.say
    titles = [chapter.title for chapter in script.chapters]
    shows, making = list(showing_times_s(script)), making_times_s(lesson)
    makes = [*(0.0 for _ in range(len(shows) - len(making))), *making]
    starts = [0.0, *accumulate(show + make for show, make in zip(shows, makes, strict=True))]
    rows = [
        (
            clock_time(start),
            title,
            duration_text(phrasebook, show),
            duration_text(phrasebook, make) if make else "–",
        )
        for start, title, show, make in zip(starts[:-1], titles, shows, makes, strict=True)
    ]
    rows.append(
        (
            clock_time(starts[-1]),
            say("timetable-sum"),
            duration_text(phrasebook, sum(shows)),
            duration_text(phrasebook, sum(makes)),
        )
    )
    return Table(
        heading=say("heading-timetable"),
        columns=tuple(say(f"column-{c}") for c in ("from", "part", "show", "make")),
        rows=tuple(rows),
        wide=1,
        right=(0, 2, 3),
        last=True,
    )


def _slowest_text(phrasebook: Phrasebook, lesson: Lesson, script: Script) -> str:
    slow = script.length_s + SLOWEST * sum(making_times_s(lesson))
    # As roughly as it is known: to 5 minutes.
    minutes = max(5, 5 * round(slow / 300))
    timed = sum(step.is_timed for step in lesson.steps)
    texts = [phrasebook.say("timetable-about"), phrasebook.say("timetable-slow", n=minutes)]
    if timed:
        texts.insert(1, phrasebook.say("times-heard", n=timed))
    return " ".join(texts)


def _colour_names(lesson: Lesson) -> dict[str, str]:
    """Map each letter to the name of its colour, in the language of the lesson."""
    return {swatch.letter: swatch.name for swatch in lesson.key}


def _weight_text(phrasebook: Phrasebook, grams: float | None) -> str:
    return "" if grams is None else phrasebook.say("weight-about", grams=phrasebook.decimal(round(grams, 1)))
