"""The words of one move, said to the maker as the loom lies before them at that moment."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from pegwright.lesson.say.phrasebook import Phrasebook, single_line
from pegwright.lesson.say.round_facts import LoopName, Wording
from pegwright.lesson.scene.picture import Spot
from pegwright.lesson.scene.scene import Look
from pegwright.lesson.scene.view import View, compass_way
from pegwright.loom import HOOK, START, AppliedMove, Bight, Drawn, Fastened, Laid, Lifted, Moved, State
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
    Put,
    Round,
    Slide,
    Transfer,
    Turn,
    Wind,
    is_address,
    parse_address,
    row_letter,
)


class StepText(NamedTuple):
    """The action in one sentence or few, and what belongs to it."""

    instruction: str
    detail: tuple[str, ...] = ()


class Speaker(NamedTuple):
    """Who speaks: a language, and the bands' names."""

    phrasebook: Phrasebook
    look: Look

    def band(self, letter: str) -> str:
        """Name a colour of band: slate band (A)."""
        colour = single_line(self.look.colours.get(letter, ("", "", 0))[0])
        if not colour:
            return self.phrasebook.say("band-plain", letter=letter)
        return self.phrasebook.say("band-name", colour=colour, letter=letter)

    def short(self, band: int) -> str:
        """Name a band shortly: slate, A."""
        letter, name, _, _ = self.look.of(band)
        return self.phrasebook.say("band-short", colour=single_line(name), letter=letter)

    def way(self, a: Spot, b: Spot) -> str:
        """Say which way b lies from a, as the maker sees it."""
        return self.phrasebook.say(f"way-{compass_way(a, b)}")

    def where(self, holder: str) -> str:
        """Name a peg or a free end."""
        if is_address(holder):
            return self.phrasebook.say("peg-one", peg=holder)
        if holder == START:
            return self.phrasebook.say("end-start")
        end = holder.partition(".")[0]
        return self.phrasebook.say("end-plain") if end == "end" else self.phrasebook.say("end-name", end=end)

    def places(self, holders: Sequence[str]) -> str:
        """Name several holders in the order of their catching: pegs A1 to A12; the free end and peg A13."""
        pegs = [holder for holder in holders if is_address(holder)]
        ends = [self.where(holder) for holder in holders if not is_address(holder)]
        if len(pegs) > 1:
            named = self.phrasebook.both(peg_runs(self.phrasebook, pegs))
            return self.phrasebook.both([*ends, self.phrasebook.say("peg-many", pegs=named)])
        return self.phrasebook.both([*ends, *map(self.where, pegs)])

    def loops(self, stack: tuple[Bight, ...], low: int, count: int, name: LoopName | None = None) -> str:
        """Name loops of a stack, the lowest of them at index `low`; `name` says which of the true names."""
        if count > 1:
            if name in (None, "lowest") and low == 0:
                return self.phrasebook.say("loops-lowest", n=count)
            if name in (None, "top") and low + count == len(stack):
                return self.phrasebook.say("loops-top", n=count)
            return self.phrasebook.say("loops-counted", first=low + 1, last=low + count)
        band = self.short(stack[low].band)
        if name is None:
            name = "only" if len(stack) == 1 else "lowest" if low == 0 else "counted"
            if name == "counted" and low == len(stack) - 1:
                name = "top"
        return self.phrasebook.say(f"loop-{name}", band=band, n=low + 1)

    def pegs(self, names: list[str]) -> str:
        """Name pegs, runs along a row as a span: A1, B2 to B5 and C7."""
        return self.phrasebook.both(self.spans(names))

    def spans(self, names: list[str], dash: bool = False) -> list[str]:
        """Gather pegs of a row that follow one another."""
        return peg_spans(self.phrasebook, names, dash)


def say_move(
    speaker: Speaker,
    view: View,
    before: State,
    done: AppliedMove,
    *,
    off_loom: bool = False,
    wording: Wording | None = None,
) -> StepText:
    """Word one move; `off_loom` says that the piece has been lifted off the loom before it.

    `wording` is what to say so that the sentence is true of the rounds that repeat it too.
    """
    say = speaker.phrasebook.say
    move = done.move
    match move:
        case Place():
            return _say_place(speaker, view, move, wording)
        case Wind():
            times = say("times", n=move.turns)
            return StepText(say("step-wind", band=speaker.band(move.colour), times=times, peg=move.on))
        case Hang():
            return StepText(
                say("step-hang", band=speaker.band(move.colour), times=say("times", n=move.turns))
            )
        case Turn():
            after = view._replace(turned=not view.turned)
            return StepText(
                say("step-turn", near=nearest_peg(after)),
                (say("detail-turned"), *channel_text(speaker, after)),
            )
        case Hook() | Slide():
            return _say_hook(speaker, view, before, done, wording)
        case Lift():
            lifted = [event for event in done.events if isinstance(event, Lifted)]
            stack = before.stack(move.at)
            low = min(stack.index(event.bight) for event in lifted)
            loop = speaker.loops(stack, low, len(lifted), wording and wording.name)
            above = wording.above if wording else len(lifted[0].over)
            facts = {"peg": move.at, "loop": loop, "above": above, "taken": len(lifted)}
            if move.target is None:
                return StepText(say("step-lift", **facts))
            there = _way_clause(speaker, view, move.at, move.target, wording)
            return StepText(say("step-lift-on", target=move.target, way=there, **facts))
        case Transfer():
            moved = [event for event in done.events if isinstance(event, Moved)]
            stack = before.stack(move.source)
            loop = speaker.loops(stack, len(stack) - len(moved), len(moved), wording and wording.name)
            there = _way_clause(speaker, view, move.source, move.target, wording)
            return StepText(
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
            bands = count_bands(speaker, move.colour, move.together)
            facts = {
                "peg": move.at,
                "count": move.together,
                "band": speaker.band(move.colour),
                "bands": bands,
            }
            if move.catch is not None and move.catch < loops:
                return StepText(say("step-bind-some", n=move.catch, **facts))
            return StepText(say("step-bind", n=loops, **facts))
        case Put():
            loops = len(done.events)
            if len(move.on) == 1:
                return StepText(say("step-put", n=loops, peg=move.on[0]))
            pegs = speaker.phrasebook.both(list(move.on))
            return StepText(say("step-put-apart", n=loops // len(move.on), pegs=pegs))
        case Extend():
            count = sum(isinstance(event, Laid) for event in done.events)
            bands = count_bands(speaker, move.colour, count)
            detail = (say("detail-extend-together", n=move.together),) if move.together > 1 else ()
            return StepText(say("step-extend", bands=bands), detail)
        case Knot() | Clip():
            return _say_fasten(speaker, before, move, done, off_loom)


def count_bands(speaker: Speaker, letter: str, count: int) -> str:
    """Count bands of a colour: 3 slate bands (A)."""
    colour = single_line(speaker.look.colours.get(letter, ("", "", 0))[0])
    if not colour:
        return speaker.phrasebook.say("bands-plain", n=count, letter=letter)
    return speaker.phrasebook.say("bands-of", n=count, colour=colour, letter=letter)


def nearest_peg(view: View) -> str:
    """Return the peg nearest the maker, of several the leftmost."""
    pegs = view.board.pegs
    return min(pegs, key=lambda at: (round(view.spot(at)[1], 3), round(view.spot(at)[0], 3)))


def channel_text(speaker: Speaker, view: View, loom: Layout | None = None) -> tuple[str, ...]:
    """Say which way the pegs' channels open, if it is one way for all."""
    if isinstance(loom, Round):
        return (speaker.phrasebook.say(f"detail-channel-{loom.channel}"),)
    ways = {round(view.channel_deg(at)) % 360 for at in view.board.pegs}
    side = {0: "right", 90: "far", 180: "left", 270: "near"}
    if len(ways) == 1 and (only := ways.pop()) in side:
        return (speaker.phrasebook.say("detail-channel", side=speaker.phrasebook.say(f"side-{side[only]}")),)
    return (speaker.phrasebook.say("detail-channel-any"),)


def _say_place(speaker: Speaker, view: View, move: Place, wording: Wording | None) -> StepText:
    say = speaker.phrasebook.say
    detail = [
        say("detail-twist" if n > 0 else "detail-twist-back", first=a, last=b, n=abs(n))
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
        there = _way_clause(speaker, view, first, last, wording)
        return StepText(say("step-place-two", band=band, first=first, last=last, way=there), tuple(detail))
    pegs = speaker.phrasebook.both(list(move.over))
    return StepText(say("step-place-many", band=band, pegs=pegs), tuple(detail))


def _say_hook(
    speaker: Speaker, view: View, before: State, done: AppliedMove, wording: Wording | None
) -> StepText:
    say = speaker.phrasebook.say
    drawn = [event for event in done.events if isinstance(event, Drawn)]
    first = drawn[0]
    stack = before.stack(first.source)
    low = min(stack.index(event.bight) for event in drawn)
    loop = speaker.loops(stack, low, len(drawn), wording and wording.name)
    there = _way_clause(speaker, view, first.source, first.target, wording)
    through: int | str = len(first.through) - len(first.slid)
    if wording is not None:
        through = wording.above
    facts: dict[str, Any] = {"source": first.source, "target": first.target, "loop": loop, "way": there}
    detail: list[str] = []
    if first.skipped:
        detail.append(say("detail-skipped", through=through, n=len(first.skipped)))
    elif isinstance(done.events[0], Lifted):
        detail.append(say("detail-skipped-all", n=len(done.events[0].over)))
    if first.slid:
        bands = {bight.band for bight in before.stack(HOOK)}
        hung = speaker.phrasebook.both([speaker.band(speaker.look.of(band)[0]) for band in sorted(bands)])
        facts |= {"hung": hung, "taken": len(drawn)}
        if through:
            return StepText(say("step-slide-through", above=through, **facts), tuple(detail))
        return StepText(say("step-slide", **facts), tuple(detail))
    if through:
        return StepText(say("step-hook", above=through, taken=len(drawn), **facts), tuple(detail))
    return StepText(say("step-hook-top", taken=len(drawn), **facts), tuple(detail))


def _way_clause(speaker: Speaker, view: View, a: str, b: str, wording: Wording | None) -> str:
    """Return ", to your left" and the like; nothing where the direction changes from round to round."""
    if wording is not None and not wording.says_way:
        return ""
    return speaker.phrasebook.say("way-clause", way=speaker.way(view.spot(a), view.spot(b)))


def _say_fasten(
    speaker: Speaker, before: State, move: Knot | Clip, done: AppliedMove, off_loom: bool
) -> StepText:
    say = speaker.phrasebook.say
    event = next(event for event in done.events if isinstance(event, Fastened))
    where = speaker.places(event.holders)
    caught = len(event.caught)
    pegs = [holder for holder in event.holders if is_address(holder)]
    ends = [holder for holder in event.holders if not is_address(holder)]
    if off_loom and pegs and ends and isinstance(move, Clip):
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
    if pegs and not off_loom:
        detail.append(say("detail-off"))
    return StepText(text, tuple(detail))


def peg_runs(phrasebook: Phrasebook, names: Sequence[str]) -> list[str]:
    """Gather pegs that follow one another along a row, either way, and keep them in their order."""
    found: list[list[str]] = []
    for name in names:
        run = found[-1] if found else []
        steps = (
            [parse_address(run[k]) for k in (-2, -1) if len(run) >= -k] + [parse_address(name)] if run else []
        )
        ways = {(b.row - a.row, b.number - a.number) for a, b in pairwise(steps)}
        if ways in ({(0, 1)}, {(0, -1)}):
            run.append(name)
        else:
            found.append([name])
    said: list[str] = []
    for run in found:
        said += [phrasebook.say("span", first=run[0], last=run[-1])] if len(run) > 2 else run
    return said


def peg_spans(phrasebook: Phrasebook, names: Iterable[str], dash: bool = False) -> list[str]:
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
            said.append(phrasebook.say("span-dash" if dash else "span", first=a, last=b))
    return said
