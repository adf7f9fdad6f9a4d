"""The words of one move, said to the maker as the loom lies before them at that moment."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from pegwright.lesson.picture import Spot
from pegwright.lesson.scene import Look
from pegwright.lesson.view import View
from pegwright.lesson.words import Words, line
from pegwright.loom import HOOK, Bight, Done, Drawn, Fastened, Laid, Lifted, Moved, State
from pegwright.loom.state import START
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Layout,
    Lift,
    Place,
    Round,
    Slide,
    Transfer,
    Turn,
    Wind,
)
from pegwright.pattern.address import is_address, parse_address, row_letter

_WAYS = ("right", "far-right", "far", "far-left", "left", "near-left", "near", "near-right")


class Said(NamedTuple):
    """The action in one sentence or few, and what belongs to it."""

    words: str
    detail: tuple[str, ...] = ()


class Speaker(NamedTuple):
    """Who speaks: a language, and the bands' names."""

    words: Words
    look: Look

    def band(self, letter: str) -> str:
        """Name a colour of band: slate band (A)."""
        colour = line(self.look.colours.get(letter, ("", "", 0))[0])
        if not colour:
            return self.words.say("band-plain", letter=letter)
        return self.words.say("band-name", colour=colour, letter=letter)

    def short(self, band: int) -> str:
        """Name a band shortly: slate, A."""
        letter, name, _, _ = self.look.of(band)
        return self.words.say("band-short", colour=line(name), letter=letter)

    def way(self, a: Spot, b: Spot) -> str:
        """Say which way b lies from a, as the maker sees it."""
        return self.words.say(f"way-{way(a, b)}")

    def where(self, holder: str) -> str:
        """Name a peg or a free end."""
        if is_address(holder):
            return self.words.say("peg-one", peg=holder)
        if holder == START:
            return self.words.say("end-start")
        end = holder.partition(".")[0]
        return self.words.say("end-plain") if end == "end" else self.words.say("end-name", end=end)

    def places(self, holders: Sequence[str]) -> str:
        """Name several holders: pegs A1 to A12; the free end and peg A13."""
        pegs = [holder for holder in holders if is_address(holder)]
        ends = [self.where(holder) for holder in holders if not is_address(holder)]
        if len(pegs) > 1:
            return self.words.both([*ends, self.words.say("peg-many", pegs=self.pegs(pegs))])
        return self.words.both([*ends, *map(self.where, pegs)])

    def loops(self, stack: tuple[Bight, ...], low: int, count: int) -> str:
        """Name loops of a stack by where they lie, the lowest of them being at index `low`."""
        if count > 1:
            if low == 0:
                return self.words.say("loops-lowest", n=count)
            if low + count == len(stack):
                return self.words.say("loops-top", n=count)
            return self.words.say("loops-counted", first=low + 1, last=low + count)
        band = self.short(stack[low].band)
        if len(stack) == 1:
            return self.words.say("loop-only", band=band)
        if low == 0:
            return self.words.say("loop-lowest", band=band)
        if low == len(stack) - 1:
            return self.words.say("loop-top", band=band)
        return self.words.say("loop-counted", n=low + 1, band=band)

    def pegs(self, names: list[str]) -> str:
        """Name pegs, runs along a row as a span: A1, B2 to B5 and C7."""
        return self.words.both(self.spans(names))

    def spans(self, names: list[str], dash: bool = False) -> list[str]:
        """Gather pegs of a row that follow one another."""
        return spans(self.words, names, dash)


def way(a: Spot, b: Spot) -> str:
    """Name the eighth of the compass in which b lies from a: right, far-right, far, …"""
    angle = math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))
    # A row shifted by half a pitch still counts as straight ahead; so the four sides get the wider share.
    eighth = round(angle / 45) % 8
    if eighth % 2 and abs((angle / 90 + 0.5) % 1 - 0.5) * 90 < 25:
        eighth = (round(angle / 90) * 2) % 8
    return _WAYS[eighth]


def say_move(speaker: Speaker, view: View, before: State, done: Done, *, off: bool = False) -> Said:
    """Word one move; `off` says that the piece has been lifted off the loom before it."""
    say = speaker.words.say
    move = done.doing.move
    match move:
        case Place():
            return _place(speaker, view, move)
        case Wind():
            times = say("times", n=move.turns)
            return Said(say("step-wind", band=speaker.band(move.colour), times=times, peg=move.on))
        case Hang():
            return Said(say("step-hang", band=speaker.band(move.colour), times=say("times", n=move.turns)))
        case Turn():
            after = view._replace(turned=not view.turned)
            return Said(
                say("step-turn", near=nearest(after)), (say("detail-turned"), *channel(speaker, after))
            )
        case Hook() | Slide():
            return _hook(speaker, view, before, done)
        case Lift():
            lifted = [event for event in done.events if isinstance(event, Lifted)]
            stack = before.stack(move.at)
            low = min(stack.index(event.bight) for event in lifted)
            loop = speaker.loops(stack, low, len(lifted))
            above = len(lifted[0].over)
            return Said(say("step-lift", peg=move.at, loop=loop, above=above, taken=len(lifted)))
        case Transfer():
            moved = [event for event in done.events if isinstance(event, Moved)]
            stack = before.stack(move.source)
            loop = speaker.loops(stack, len(stack) - len(moved), len(moved))
            there = speaker.way(view.spot(move.source), view.spot(move.target))
            return Said(
                say(
                    "step-transfer",
                    loop=loop,
                    source=move.source,
                    target=move.target,
                    way=there,
                    taken=len(moved),
                )
            )
        case Bind():
            loops = len(before.stack(move.at))
            return Said(say("step-bind", n=loops, peg=move.at, band=speaker.band(move.colour)))
        case Extend():
            count = sum(isinstance(event, Laid) for event in done.events)
            return Said(say("step-extend", bands=bands_of(speaker, move.colour, count)))
        case Knot() | Clip():
            return _fasten(speaker, before, move, done, off)


def bands_of(speaker: Speaker, letter: str, count: int) -> str:
    """Count bands of a colour: 3 slate bands (A)."""
    colour = line(speaker.look.colours.get(letter, ("", "", 0))[0])
    if not colour:
        return speaker.words.say("bands-plain", n=count, letter=letter)
    return speaker.words.say("bands-of", n=count, colour=colour, letter=letter)


def nearest(view: View) -> str:
    """Return the peg nearest the maker, of several the leftmost."""
    pegs = view.board.pegs
    return min(pegs, key=lambda at: (round(view.spot(at)[1], 3), round(view.spot(at)[0], 3)))


def channel(speaker: Speaker, view: View, loom: Layout | None = None) -> tuple[str, ...]:
    """Say which way the pegs' channels open, if it is one way for all."""
    if isinstance(loom, Round):
        return (speaker.words.say(f"detail-channel-{loom.channel}"),)
    ways = {round(view.channel_deg(at)) % 360 for at in view.board.pegs}
    side = {0: "right", 90: "far", 180: "left", 270: "near"}
    if len(ways) == 1 and (only := ways.pop()) in side:
        return (speaker.words.say("detail-channel", side=speaker.words.say(f"side-{side[only]}")),)
    return (speaker.words.say("detail-channel-any"),)


def _place(speaker: Speaker, view: View, move: Place) -> Said:
    say = speaker.words.say
    detail = [
        say("detail-twist", first=a, last=b, n=n)
        for a, b, n in zip(move.over, move.over[1:], move.twists or (0,) * len(move.over), strict=False)
        if n
    ]
    detail += [
        say("detail-turns", peg=peg, times=say("times", n=n))
        for peg, n in zip(move.over, move.turns, strict=False)
        if n > 1
    ]
    band = speaker.band(move.colour)
    if len(move.over) == 2:
        first, last = move.over
        there = speaker.way(view.spot(first), view.spot(last))
        return Said(say("step-place-two", band=band, first=first, last=last, way=there), tuple(detail))
    pegs = speaker.words.both(list(move.over))
    return Said(say("step-place-many", band=band, pegs=pegs), tuple(detail))


def _hook(speaker: Speaker, view: View, before: State, done: Done) -> Said:
    say = speaker.words.say
    drawn = [event for event in done.events if isinstance(event, Drawn)]
    first = drawn[0]
    stack = before.stack(first.source)
    low = min(stack.index(event.bight) for event in drawn)
    loop = speaker.loops(stack, low, len(drawn))
    there = speaker.way(view.spot(first.source), view.spot(first.target))
    through = len(first.through) - len(first.slid)
    facts = {"source": first.source, "target": first.target, "loop": loop, "way": there}
    detail: list[str] = []
    if first.skipped and through:
        detail.append(say("detail-skipped", through=through, n=len(first.skipped)))
    elif first.skipped:
        detail.append(say("detail-skipped-all", n=len(first.skipped)))
    if first.slid:
        bands = {bight.band for bight in before.stack(HOOK)}
        hung = speaker.words.both([speaker.band(speaker.look.of(band)[0]) for band in sorted(bands)])
        if through:
            return Said(say("step-slide-through", hung=hung, above=through, **facts), tuple(detail))
        return Said(say("step-slide", hung=hung, **facts), tuple(detail))
    if through:
        return Said(say("step-hook", above=through, taken=len(drawn), **facts), tuple(detail))
    return Said(say("step-hook-top", taken=len(drawn), **facts), tuple(detail))


def _fasten(speaker: Speaker, before: State, move: Knot | Clip, done: Done, off: bool) -> Said:
    say = speaker.words.say
    event = next(event for event in done.events if isinstance(event, Fastened))
    where = speaker.places(event.holders)
    caught = len(event.caught)
    pegs = [holder for holder in event.holders if is_address(holder)]
    ends = [holder for holder in event.holders if not is_address(holder)]
    if off and pegs and ends and isinstance(move, Clip):
        there = {"ends": speaker.places(ends), "pegs": speaker.places(pegs)}
        text = say("step-clip-join-off", n=caught, **there)
    elif isinstance(move, Knot):
        text = say("step-knot", n=caught, where=where)
    elif len(event.holders) > 1:
        text = say("step-clip-join", n=caught, where=where)
    else:
        text = say("step-clip", n=caught, where=where)
    detail = []
    if move.catch is not None and any(
        len(before.stack(h)) > n for h, n in zip(event.holders, event.counts, strict=True)
    ):
        detail.append(say("detail-catch", n=move.catch))
    if pegs and not off:
        detail.append(say("detail-off"))
    return Said(text, tuple(detail))


def spans(words: Words, names: Iterable[str], dash: bool = False) -> list[str]:
    """Gather pegs of a row that follow one another."""
    places = sorted({parse_address(name) for name in names})
    found: list[list[int]] = []
    for place in places:
        if found and found[-1][0] == place.row and found[-1][2] == place.number - 1:
            found[-1][2] = place.number
        else:
            found.append([place.row, place.number, place.number])
    said = []
    for row, first, last in found:
        a, b = f"{row_letter(row)}{first}", f"{row_letter(row)}{last}"
        if first == last:
            said.append(a)
        elif last == first + 1 and not dash:
            said += [a, b]
        else:
            said.append(words.say("span-dash" if dash else "span", first=a, last=b))
    return said
