"""What a craft editor would say of a piece that can be made: things that are allowed and yet go wrong."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import chain
from typing import NamedTuple

from pegwright.finding import MAX_PER_CODE, Fact, Finding, Fix, Location, Phrase, finding, phrase, sum_up
from pegwright.loom.colour_list import check_colour_list
from pegwright.loom.events import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.loom.history import AppliedMove, History
from pegwright.loom.hook_order import reorder_top_first
from pegwright.loom.state import START, State
from pegwright.loom.steps import step_numbers
from pegwright.pattern import BandType, Expansion, Pattern, Round, Turn, band_types_by_letter

RIM_MM = 1.0  # the flared top that keeps loops on; common practice, no source
_NAMED = 4
_AWAY = 0.9  # sine of the angle from which on a channel opens away from the maker


class _Step(NamedTuple):
    """A move that was made: its number from 1 among all moves of the pattern, its place in the history
    from 0, and the state before it.
    """

    number: int
    at: int
    done: AppliedMove
    before: State

    def place(self, peg: str | None = None, band: int | None = None) -> Location:
        """Point at this step."""
        return Location(path=self.done.path, step=self.number, peg=peg, band=band)


def check_loom(pattern: Pattern, expansion: Expansion, history: History) -> tuple[Finding, ...]:
    """Return what the working of the piece gives reason to say, at most twenty findings of a code in full.

    The findings of the expansion and of the replay itself are not repeated.
    """
    steps = _number_steps(history)
    return sum_up(
        chain(
            check_colour_list(pattern, expansion),
            _find_unheld_starts(history, steps),
            _find_closed_sides(pattern, history, steps),
            _find_dragged_loops(pattern, history, steps),
            _find_high_stacks(pattern, history, steps),
            _find_unworked_bands(history, steps),
            _find_loops_left(history, steps),
            _find_odd_catches(steps),
            _find_bands_after_clip(steps),
            _find_missing_finish(history, steps),
        )
    )


def _number_steps(history: History) -> tuple[_Step, ...]:
    return tuple(
        _Step(number, i, done, history.before(i))
        for i, (number, done) in enumerate(zip(step_numbers(history), history.moves, strict=True))
    )


def _events_of(steps: tuple[_Step, ...]) -> Iterator[tuple[_Step, Event]]:
    for step in steps:
        for event in step.done.events:
            yield step, event


def _find_unheld_starts(history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """The first loop taken from an untouched peg must pass something, or it simply comes off."""
    touched: set[str] = set()
    for step, event in _events_of(steps):
        if (
            isinstance(event, Drawn)
            and not event.through
            and not event.skipped
            and event.source not in touched
        ):
            colour, band, peg = history.colours[event.bight.band - 1], event.bight.band, event.source
            fix = None
            counted = getattr(step.done.move, "loop", 1)
            # A cap on top must leave the number of the loop as it is.
            if counted > 0 and not step.done.located.rounds and not step.done.located.motif:
                cap = {"do": "wind", "colour": colour, "on": peg}
                patch = {"op": "add", "path": step.place().path, "value": cap}
                fix = Fix(phrase("fix-cap", peg=peg), (patch,))
            yield finding("start-not-held", step.place(peg, band), fix=fix, band=band, colour=colour, peg=peg)
        touched.update(_holders_worked(event))


def _find_closed_sides(pattern: Pattern, history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """The hook reaches down the channel from the maker's side, so a channel that opens away is out of reach.

    Looms that are turned a little for each peg, and pegs that open to one side, are left out.
    """
    if isinstance(pattern.loom, Round):
        return
    away: list[tuple[_Step, str]] = []
    for step, event in _events_of(steps):
        if (
            isinstance(event, Drawn)
            and event.source in history.board.pegs
            and (event.through or event.skipped)
        ):
            opens = math.sin(math.radians(history.board.pegs[event.source].channel_deg))
            if (-opens if step.before.turned else opens) > _AWAY:
                away.append((step, event.source))
    if not away:
        return
    step, peg = away[0]
    top = "/".join(step.done.path.split("/")[:3])
    fix = Fix(phrase("fix-turn"), ({"op": "add", "path": top, "value": {"do": "turn"}},))
    located = step.done.located
    turns = any(isinstance(done.move, Turn) for done in history.moves)
    yield finding(
        "channel-opens-away",
        step.place(peg),
        fix=None if turns or located.motif else fix,
        peg=peg,
        more=len(away) - 1,
    )


def _find_dragged_loops(pattern: Pattern, history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    drawn_at: dict[Bight, int] = {}
    count = 0
    for step, event in _events_of(steps):
        if not isinstance(event, Drawn | Moved | Lifted):
            continue
        if event.dragged:
            fix = None
            # Past those that are told in full only the number matters.
            loops = event.dragged if count < MAX_PER_CODE else event.dragged[:1]
            start = min((drawn_at[b] for b in loops if b in drawn_at), default=step.at)
            if count < MAX_PER_CODE:
                fix = reorder_top_first(pattern, history, start, step.at)
            count += 1
            bands = list(dict.fromkeys(b.band for b in loops))
            band = event.bight.band
            peg = event.holder if isinstance(event, Lifted) else event.source
            yield finding(
                "loop-dragged",
                step.place(peg, band),
                fix=fix,
                band=band,
                colour=history.colours[band - 1],
                peg=peg,
                others=_name_bands("band-named", history, bands),
                count=len(bands),
            )
        drawn_at[event.bight] = step.at


def _name_bands(how: str, history: History, bands: list[int]) -> tuple[Phrase, ...]:
    """Name the first few bands, and say how many more there are."""
    named = [phrase(how, band=band, colour=history.colours[band - 1]) for band in bands[:_NAMED]]
    more = len(bands) - len(named)
    return (*named, phrase("so-many-more", count=more)) if more else tuple(named)


def _find_high_stacks(pattern: Pattern, history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    kinds, plain = band_types_by_letter(pattern), BandType()
    thickness = [(kinds.get(letter) or plain).thickness_mm for letter in history.colours]
    room = history.board.height_mm - RIM_MM
    thickest = max(thickness, default=0.0)
    first: dict[str, _Step] = {}
    highest: dict[str, tuple[Bight, ...]] = {}
    for step, event in _events_of(steps):
        for peg in _holders_receiving(event):
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


def _find_unworked_bands(history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """A band of which no loop is ever hooked, lifted, passed through or caught just lies there."""
    worked: set[int] = set()
    laid: dict[int, tuple[_Step, str]] = {}
    for step, event in _events_of(steps):
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


def _find_loops_left(history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """Loops of a finished piece with nothing through them, on pegs that were worked.

    Pegs nobody worked are the far ends; there the loop of the first band is what a clip takes.
    """
    final = history.final
    if not final.fasteners:
        return
    last: dict[str, _Step] = {}
    for step, event in _events_of(steps):
        last |= dict.fromkeys(_holders_worked(event), step)
    for peg, step in last.items():
        empty = [b for b in final.stack(peg) if not final.inside.get(b)]
        if empty and peg in history.board.pegs:
            bands = list(dict.fromkeys(b.band for b in empty))
            yield finding(
                "loop-left",
                step.place(peg, empty[0].band),
                count=len(empty),
                peg=peg,
                loops=_name_bands("the-band", history, bands),
            )


def _find_odd_catches(steps: tuple[_Step, ...]) -> Iterator[Finding]:
    for step, event in _events_of(steps):
        if not isinstance(event, Fastened):
            continue
        wanted = getattr(step.done.move, "catch", None) or 0
        patch = {"op": "remove", "path": f"{step.done.path}/catch"}
        fix = Fix(phrase("fix-catch-all"), (patch,))
        for holder, count in zip(event.holders, event.counts, strict=True):
            loops = 1 if holder == START else len(step.before.stack(holder))
            facts: dict[str, Fact] = {"kind": event.kind, "loops": loops, "peg": holder}
            if count == 1 < loops:
                yield finding("catches-one", step.place(holder), fix=fix, **facts)
            if wanted > loops:
                yield finding("catches-more", step.place(holder), fix=fix, wanted=wanted, **facts)


def _find_bands_after_clip(steps: tuple[_Step, ...]) -> Iterator[Finding]:
    """A clip closes the piece: a band laid after it is no longer part of what it holds together."""
    clip = next(
        (s for s, event in _events_of(steps) if isinstance(event, Fastened) and event.kind == "clip"), None
    )
    if clip is None:
        return
    later = [(s, event) for s, event in _events_of(steps) if isinstance(event, Laid) and s.at > clip.at]
    if later:
        step, event = later[0]
        more = len(later) - 1
        yield finding("laid-after-clip", step.place(band=event.band), clip=clip.number, more=more)


def _find_missing_finish(history: History, steps: tuple[_Step, ...]) -> Iterator[Finding]:
    if not history.colours or history.final.fasteners:
        return
    fix = None
    end = min((h for h in history.final.stacks if "." in h), default=None)
    put = (e.target for s in reversed(steps) for e in s.done.events if isinstance(e, Drawn | Moved))
    last = next((at for at in put if at in history.board.pegs and history.final.stack(at)), None)
    at = end.rpartition(".")[0] if end else last
    if at is not None:
        worked = {holder for _, event in _events_of(steps) for holder in _holders_worked(event)}
        far = [peg for peg in history.board.pegs if peg not in worked and history.final.stack(peg)]
        both = len(far) == 1  # the other end lies where it was laid: clipped together they close the piece
        clip = {"do": "clip", "at": [at, *far] if both else [at]}
        said = phrase("fix-clip-both", at=at, far=far[0]) if both else phrase("fix-clip", at=at)
        fix = Fix(said, ({"op": "add", "path": "/steps/-", "value": clip},))
    yield finding("no-finish", Location(path="/steps"), fix=fix)


def _holders_worked(event: Event) -> tuple[str, ...]:
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


def _holders_receiving(event: Event) -> tuple[str, ...]:
    match event:
        case Laid():
            return tuple(dict.fromkeys(seat.holder for seat in event.seats))
        case Drawn() | Moved():
            return (event.target,)
        case _:
            return ()
