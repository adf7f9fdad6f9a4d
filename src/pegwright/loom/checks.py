"""What a craft editor would say of a piece that can be made: things that are allowed and yet go wrong."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain
from typing import NamedTuple

from pegwright.finding import Fact, Finding, Fix, Phrase, Place, finding, phrase
from pegwright.finding.summing import MOST_OF_A_CODE, sum_up
from pegwright.loom.events import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.loom.history import Done, History
from pegwright.loom.listed import check_listed
from pegwright.loom.order import top_first
from pegwright.loom.state import START, State
from pegwright.loom.steps import step_numbers
from pegwright.pattern import BandType, Expansion, Pattern

RIM_MM = 1.0  # the flared top that keeps loops on; common practice, no source
_NAMED = 4


class _Step(NamedTuple):
    """A move that was made: its number from 1 among all moves of the pattern, its place in the history
    from 0, and the state before it.
    """

    number: int
    at: int
    done: Done
    before: State

    def place(self, peg: str | None = None, band: int | None = None) -> Place:
        """Point at this step."""
        return Place(path=self.done.doing.path, step=self.number, peg=peg, band=band)


def check_loom(pattern: Pattern, expansion: Expansion, history: History) -> tuple[Finding, ...]:
    """Return what the working of the piece gives reason to say, at most twenty findings of a code in full.

    The findings of the expansion and of the replay itself are not repeated.
    """
    steps = _steps(history)
    return sum_up(
        chain(
            check_listed(pattern, expansion),
            _starts(history, steps),
            _dragged(pattern, history, steps),
            _high(pattern, history, steps),
            _unworked(history, steps),
            _left(history, steps),
            _catches(steps),
            _after_closing(steps),
            _finish(history, steps),
        )
    )


def _steps(history: History) -> tuple[_Step, ...]:
    return tuple(
        _Step(number, i, done, history.before(i))
        for i, (number, done) in enumerate(zip(step_numbers(history), history.done, strict=True))
    )


def _events(steps: tuple[_Step, ...]) -> Iterator[tuple[_Step, Event]]:
    for step in steps:
        for event in step.done.events:
            yield step, event


def _starts(history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """The first loop taken from an untouched peg must pass something, or it simply comes off."""
    touched: set[str] = set()
    for step, event in _events(steps):
        if (
            isinstance(event, Drawn)
            and not event.through
            and not event.skipped
            and event.source not in touched
        ):
            colour, band, peg = history.colours[event.bight.band - 1], event.bight.band, event.source
            fix = None
            counted = getattr(step.done.doing.move, "loop", 1)
            # A cap on top must leave the number of the loop as it is.
            if counted > 0 and not step.done.doing.rounds and not step.done.doing.motif:
                cap = {"do": "wind", "colour": colour, "on": peg}
                patch = {"op": "add", "path": step.place().path, "value": cap}
                fix = Fix(phrase("fix-cap", peg=peg), (patch,))
            yield finding("start-not-held", step.place(peg, band), fix=fix, band=band, colour=colour, peg=peg)
        touched.update(_holders(event))


def _dragged(pattern: Pattern, history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    drawn_at: dict[Bight, int] = {}
    told = 0
    for step, event in _events(steps):
        if not isinstance(event, Drawn | Moved | Lifted):
            continue
        if event.dragged:
            fix = None
            # Past those that are told in full only the number matters.
            shown = event.dragged if told < MOST_OF_A_CODE else event.dragged[:1]
            start = min((drawn_at[b] for b in shown if b in drawn_at), default=step.at)
            if told < MOST_OF_A_CODE:
                fix = top_first(pattern, history, start, step.at)
            told += 1
            bands = list(dict.fromkeys(b.band for b in shown))
            band = event.bight.band
            peg = event.holder if isinstance(event, Lifted) else event.source
            yield finding(
                "loop-dragged",
                step.place(peg, band),
                fix=fix,
                band=band,
                colour=history.colours[band - 1],
                peg=peg,
                others=_named("band-named", history, bands),
                count=len(bands),
            )
        drawn_at[event.bight] = step.at


def _named(how: str, history: History, bands: list[int]) -> tuple[Phrase, ...]:
    """Name the first few bands, and say how many more there are."""
    named = [phrase(how, band=band, colour=history.colours[band - 1]) for band in bands[:_NAMED]]
    more = len(bands) - len(named)
    return (*named, phrase("so-many-more", count=more)) if more else tuple(named)


def _high(pattern: Pattern, history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    kinds = {band.name: band.thickness_mm for band in reversed(pattern.bands)}
    colours = {c.letter: kinds.get(c.band, BandType().thickness_mm) for c in reversed(pattern.colours)}
    thickness = [colours.get(letter, BandType().thickness_mm) for letter in history.colours]
    room = history.board.height_mm - RIM_MM
    thickest = max(thickness, default=0.0)
    first: dict[str, _Step] = {}
    highest: dict[str, tuple[Bight, ...]] = {}
    for step, event in _events(steps):
        for peg in _receiving(event):
            stack = step.done.after.stack(peg)
            if peg not in history.board.pegs or len(stack) <= len(highest.get(peg, ())):
                continue
            # Once a peg is too full only the count matters: long stacks are not summed again and again.
            if peg in first:
                highest[peg] = stack
            elif len(stack) * thickest > room and sum(thickness[b.band - 1] for b in stack) > room:
                first[peg], highest[peg] = step, stack
    for peg, stack in highest.items():
        high = sum(thickness[b.band - 1] for b in stack)
        yield finding(
            "stack-too-high", first[peg].place(peg), loops=len(stack), peg=peg, stack_mm=high, room_mm=room
        )


def _unworked(history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """A band of which no loop is ever hooked, lifted, passed through or caught just lies there."""
    worked: set[int] = set()
    laid: dict[int, tuple[_Step, str]] = {}
    for step, event in _events(steps):
        match event:
            case Laid():
                laid[event.band] = (step, event.seats[0].holder)
            case Drawn():
                worked.update(b.band for b in (event.bight, *event.through))
            case Lifted():
                worked.update(b.band for b in (event.bight, *event.over))
            case Fastened():
                worked.update(b.band for b in event.caught)
            case _:
                pass
    for band, (step, holder) in laid.items():
        if band not in worked:
            colour = history.colours[band - 1]
            yield finding("band-not-worked", step.place(holder, band), band=band, colour=colour)


def _left(history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """Loops of a finished piece with nothing through them, on pegs that were worked.

    Pegs nobody worked are the far ends; there the loop of the first band is what a clip takes.
    """
    final = history.final
    if not final.fasteners:
        return
    last: dict[str, _Step] = {}
    for step, event in _events(steps):
        last |= dict.fromkeys(_holders(event), step)
    for peg, step in last.items():
        empty = [b for b in final.stack(peg) if not final.inside.get(b)]
        if empty and peg in history.board.pegs:
            bands = list(dict.fromkeys(b.band for b in empty))
            yield finding(
                "loop-left",
                step.place(peg, empty[0].band),
                count=len(empty),
                peg=peg,
                loops=_named("the-band", history, bands),
            )


def _catches(steps: tuple[_Step, ...]) -> Iterator[Finding]:
    for step, event in _events(steps):
        if not isinstance(event, Fastened):
            continue
        wanted = getattr(step.done.doing.move, "catch", None) or 0
        patch = {"op": "remove", "path": f"{step.done.doing.path}/catch"}
        fix = Fix(phrase("fix-catch-all"), (patch,))
        for holder, count in zip(event.holders, event.counts, strict=True):
            loops = 1 if holder == START else len(step.before.stack(holder))
            told: dict[str, Fact] = {"kind": event.kind, "loops": loops, "peg": holder}
            if count == 1 < loops:
                yield finding("catches-one", step.place(holder), fix=fix, **told)
            if wanted > loops:
                yield finding("catches-more", step.place(holder), fix=fix, wanted=wanted, **told)


def _after_closing(steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """A clip closes the piece: a band laid after it is no longer part of what it holds together."""
    clip = next(
        (s for s, event in _events(steps) if isinstance(event, Fastened) and event.kind == "clip"), None
    )
    if clip is None:
        return
    later = [(s, event) for s, event in _events(steps) if isinstance(event, Laid) and s.at > clip.at]
    if later:
        step, event = later[0]
        more = len(later) - 1
        yield finding("laid-after-clip", step.place(band=event.band), clip=clip.number, more=more)


def _finish(history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    if not history.colours or history.final.fasteners:
        return
    fix = None
    end = next((h for h in history.final.stacks if "." in h), None)
    last = next((e.target for s in reversed(steps) for e in s.done.events if isinstance(e, Drawn)), None)
    at = end.rpartition(".")[0] if end else last
    if at is not None:
        clip = {"do": "clip", "at": [at]}
        fix = Fix(phrase("fix-clip", at=at), ({"op": "add", "path": "/steps/-", "value": clip},))
    yield finding("no-finish", Place(path="/steps"), fix=fix)


def _holders(event: Event) -> tuple[str, ...]:
    """Pegs that the event works, other than by laying a band on them."""
    match event:
        case Drawn() | Moved():
            return (event.source, event.target)
        case Lifted():
            return (event.holder,)
        case Fastened():
            return event.holders
        case _:
            return ()


def _receiving(event: Event) -> tuple[str, ...]:
    match event:
        case Laid():
            return tuple({seat.holder for seat in event.seats})
        case Drawn() | Moved():
            return (event.target,)
        case _:
            return ()
