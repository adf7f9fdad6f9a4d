"""The kit sheet for a class: one bag's contents, the whole class's, what to buy, and the timetable."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import accumulate

from pegwright.fit.packs import Buying, Shopping
from pegwright.fit.supplies import Heap, Supplies, for_class
from pegwright.lesson.filming import clock, minutes
from pegwright.lesson.leaf import Grid, Leaf
from pegwright.lesson.script import Script
from pegwright.lesson.sheet import Block, Lesson
from pegwright.lesson.sizes import grid
from pegwright.lesson.words import Words, line

SLOWEST = 1.5
"""The slowest of a class against the reckoned beginner (common practice, no source)."""


def kit(
    lesson: Lesson,
    script: Script,
    one: Supplies,
    learners: int,
    *,
    spare_share: float = 0.1,
    shopping: Shopping | None = None,
) -> Leaf:
    """Plan the kit for a class of `learners`, from the supplies of `one` piece.

    `shopping`, where a stash is at hand, is what `fit.packs.packs` gives for the class's supplies.

    Raises:
        ValueError: fewer than one learner, or a spare share outside 0 to 10.
    """
    needs = for_class(one, learners, spare_share)
    words = lesson.words
    say = words.say
    parts: list[Grid | Block] = [_bag(words, one), _whole(words, one, needs, learners)]
    if lesson.sizes is not None:
        parts += [grid(words, lesson.sizes), Block(heading="", lines=(lesson.sizes.now,))]
    parts.append(Block(heading=say("heading-tick"), lines=tuple(_things(words, needs, learners))))
    if shopping is not None:
        parts.append(_buy(words, needs, shopping))
    parts += [_timetable(words, lesson, script), Block(heading="", lines=(_slow(words, lesson, script),))]
    parts.append(Block(heading=lesson.cautions.heading, lines=(say("kit-safe"), *lesson.cautions.lines)))
    return Leaf(
        title=say("heading-kit", title=lesson.title),
        language=lesson.language,
        designer=lesson.designer,
        about=say("kit-about", n=learners),
        parts=tuple(parts),
        foot=lesson.colophon,
        page=lesson.labels["page"],
    )


def making_s(lesson: Lesson) -> tuple[float, ...]:
    """Return a learner's seconds of making, phase by phase."""
    return tuple(sum(step.learner_s for step in phase.steps) for phase in lesson.phases)


def showing_s(script: Script) -> tuple[float, ...]:
    """Return the seconds of showing and telling, for the opening and then phase by phase."""
    return tuple(chapter.end_s - chapter.start_s for chapter in script.chapters)


def _bag(words: Words, one: Supplies) -> Grid:
    say = words.say
    rows = [(heap.letter, _name(heap), str(heap.total), _grams(words, heap.mass_g)) for heap in one.heaps]
    rows.append(("", say("total"), str(one.bands), _grams(words, one.mass_g)))
    return Grid(
        heading=say("heading-bag"),
        columns=("", *(say(f"column-{c}") for c in ("band", "count", "weight"))),
        rows=tuple(rows),
        wide=1,
        right=(2, 3),
        last=True,
    )


def _whole(words: Words, one: Supplies, needs: Supplies, learners: int) -> Grid:
    say = words.say
    rows = [
        (heap.letter, _name(heap), f"{learners} × {each.total}", str(heap.spares), str(heap.total),
         _grams(words, heap.mass_g))
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
            _grams(words, needs.mass_g),
        )
    )
    return Grid(
        heading=say("heading-class"),
        columns=("", *(say(f"column-{c}") for c in ("band", "bag", "spares", "all", "weight"))),
        rows=tuple(rows),
        wide=1,
        right=(2, 3, 4, 5),
        last=True,
    )


def _things(words: Words, needs: Supplies, learners: int) -> Iterator[str]:
    """List what is laid out besides the bands, as the supplies of the lesson say it."""
    say = words.say
    yield say("class-bags", n=learners)
    if needs.clips and needs.spare_clips:
        yield say("thing-clips-spare", n=needs.clips, spare=needs.spare_clips)
    elif needs.clips:
        yield say("thing-clips", n=needs.clips)
    for loom in needs.looms:
        pitch = "" if loom.pitch_mm is None else words.length(loom.pitch_mm)
        yield say(f"tool-{loom.kind}", n=loom.count, rows=loom.rows, pegs=loom.pegs, pitch=pitch)
    for name, count in (("hooks", needs.hooks), ("cord", needs.knots), ("scissors", needs.scissors)):
        if count:
            yield say(f"tool-{name}", n=count)


def _buy(words: Words, needs: Supplies, shopping: Shopping) -> Grid:
    say = words.say
    heaps, looms = iter(needs.heaps), iter(needs.looms)
    rows = []
    for each in shopping.lines:
        match each.kind:
            case "bands":
                heap = next(heaps)
                what = f"{heap.letter} {_name(heap)}".strip()
            case "loom":
                loom = next(looms)
                what = say("thing-loom", rows=loom.rows, pegs=loom.pegs)
            case "clips":
                what = say("thing-clips-word")
            case kind:
                what = say(f"thing-{kind}")
        rows.append(
            (what, str(each.needed), str(each.have), _packs(words, each), _cost(words, each, shopping))
        )
    total = say("cost-total" if shopping.complete else "cost-part")
    rows.append((total, "", "", "", f"{shopping.cost} {line(shopping.currency)}".strip()))
    return Grid(
        heading=say("heading-buy"),
        columns=tuple(say(f"column-{c}") for c in ("band", "need", "have", "packs", "cost")),
        rows=tuple(rows),
        wide=0,
        right=(1, 2, 3, 4),
        last=True,
    )


def _packs(words: Words, each: Buying) -> str:
    if not each.missing:
        return words.say("packs-none")
    if not each.packs:
        return words.say("packs-unknown")
    return ", ".join(words.say("packs-of", n=number, size=pack.size) for number, pack in each.packs)


def _cost(words: Words, each: Buying, shopping: Shopping) -> str:
    return words.say("cost-open") if each.cost is None else f"{each.cost} {line(shopping.currency)}".strip()


def _timetable(words: Words, lesson: Lesson, script: Script) -> Grid:
    """Show, then make, phase by phase, from minute 0."""
    say = words.say
    titles = [chapter.title for chapter in script.chapters]
    makes = [0.0, *making_s(lesson)]
    shows = list(showing_s(script))
    starts = [0.0, *accumulate(show + make for show, make in zip(shows, makes, strict=True))]
    rows = [
        (clock(start), title, minutes(words, show), minutes(words, make) if make else "–")
        for start, title, show, make in zip(starts[:-1], titles, shows, makes, strict=True)
    ]
    rows.append(
        (clock(starts[-1]), say("timetable-sum"), minutes(words, sum(shows)), minutes(words, sum(makes)))
    )
    return Grid(
        heading=say("heading-timetable"),
        columns=tuple(say(f"column-{c}") for c in ("from", "part", "show", "make")),
        rows=tuple(rows),
        wide=1,
        right=(0, 2, 3),
        last=True,
    )


def _slow(words: Words, lesson: Lesson, script: Script) -> str:
    slow = script.length_s + SLOWEST * sum(making_s(lesson))
    return f"{words.say('timetable-about')} {words.say('timetable-slow', minutes=minutes(words, slow))}"


def _name(heap: Heap) -> str:
    return line(heap.name)


def _grams(words: Words, grams: float | None) -> str:
    return "" if grams is None else words.say("weight-about", grams=words.decimal(round(grams, 1)))
