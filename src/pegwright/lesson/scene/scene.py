"""The loom at one moment, put into the plan: pegs, and every band where it lies now."""

from __future__ import annotations

import math
from collections.abc import Collection
from itertools import groupby, pairwise
from typing import NamedTuple

from pegwright.lesson.scene.loop_positions import BETWEEN, OFF, LoopPositions
from pegwright.lesson.scene.outline import Disc, FlatStrand
from pegwright.lesson.scene.picture import BandMark, Outline, PegMark, Spot, Window
from pegwright.lesson.scene.view import View, pitch_mm
from pegwright.loom import HOOK, Bight, Drawn, History, Laid, Moved, State
from pegwright.pattern import Pattern

PLAIN_TINT = "#b9b4a8"
HATCHES = 8
_HANGING_SHOWN = 2
_CHAIN_SHOWN = 4
_FADED_SHOWN = 120


class Look(NamedTuple):
    """How bands are told apart and how close they lie: by letter (name, tint, hatch); by band its letter.

    Loops on a peg are drawn at `base_mm` from its centre, each next one `rise_mm` further out.
    """

    colours: dict[str, tuple[str, str, int]]
    letters: tuple[str, ...]
    thick_mm: float
    base_mm: float
    rise_mm: float

    def of(self, band: int) -> tuple[str, str, str, int]:
        """Return a band's letter, colour name, tint and hatch."""
        letter = self.letters[band - 1]
        return (letter, *self.colours.get(letter, (letter, PLAIN_TINT, 0)))


def look_of(pattern: Pattern, history: History) -> Look:
    """Choose the look from the pattern's colours and the highest stack that will ever be drawn."""
    colours = {c.letter: (c.name, c.hex, i % HATCHES) for i, c in reversed(list(enumerate(pattern.colours)))}
    thick = min(1.6, max((band.thickness_mm for band in pattern.bands), default=1.5))
    base = history.board.peg_mm / 2 + thick / 2 + 0.35
    free = pitch_mm(history.board) / 2 - base
    highest = highest_stack(history)
    return Look(colours, history.colours, thick, base, max(0.25, min(1.1, free / max(1, highest - 1))))


def highest_stack(history: History) -> int:
    """Return the most loops that any peg ever holds."""
    highest = 0
    for done in history.moves:
        for event in done.events:
            filled: tuple[str, ...] = ()
            if isinstance(event, Laid):
                filled = tuple({seat.holder for seat in event.seats})
            elif isinstance(event, Drawn | Moved):
                filled = (event.target,)
            pegs = (holder for holder in filled if holder in history.board.pegs)
            highest = max([highest, *(len(done.after.stack(peg)) for peg in pegs)])
    return highest


class Scene(NamedTuple):
    """One moment before the maker."""

    view: View
    look: Look
    positions: LoopPositions
    state: State

    def place(self, holder: str) -> Spot | None:
        """Return where a holder is, mm; None where the plan does not show it."""
        if holder in self.view.board.pegs:
            return self.view.spot(holder)
        if BETWEEN in holder:
            a, b = (self.view.spot(peg) for peg in holder.split(BETWEEN))
            return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        end, dot, count = holder.partition(".")
        if not dot or end not in self.positions.ends or int(count) >= _CHAIN_SHOWN:
            return None
        foot = self.place(self.positions.ends[end])
        if foot is None:
            return None
        away = _unit_vector(foot) if self.view.half[0] + self.view.half[1] > 0 else (0.0, -1.0)
        far = 9.0 + 8.0 * int(count)
        return (foot[0] + away[0] * far, foot[1] + away[1] * far)

    def spot_of(self, holder: str) -> Spot | None:
        """Return where a holder is, mm; of a long chain, where what is drawn of it ends."""
        end, dot, _ = holder.partition(".")
        return self.place(holder) or (self.place(f"{end}.{_CHAIN_SHOWN - 1}") if dot else None)

    def radius(self, bight: Bight, holder: str) -> float:
        """Return how far from the middle of its holder a loop is drawn, mm."""
        if holder not in self.view.board.pegs:
            return 1.7
        loops = self.state.stack(holder)
        level = loops.index(bight) if bight in loops else 0
        return self.look.base_mm + level * self.look.rise_mm

    def pegs(self, window: Window, busy: Collection[str] = ()) -> list[PegMark]:
        """Return the pegs in the window; the busy ones are what the step is about."""
        marks = []
        for at, peg in self.view.board.pegs.items():
            x, y = self.view.turn((peg.x_mm, peg.y_mm))
            if window.left_mm < x < window.right_mm and window.near_mm < y < window.far_mm:
                marks.append(
                    PegMark(
                        at=at,
                        x_mm=x,
                        y_mm=y,
                        r_mm=self.view.board.peg_mm / 2,
                        channel_deg=self.view.channel_deg(at),
                        busy=at in busy,
                    )
                )
        return marks

    def bands(
        self,
        window: Window,
        highlighted: Collection[int] = (),
        without: Collection[int | Bight] = (),
        *,
        raised: bool = True,
    ) -> list[BandMark]:
        """Return what can be seen of the bands in the window, the oldest first, the highlighted ones last.

        Unless they are `raised`, highlighted bands too are drawn where they lie. Parts named in `without` (as
        in `strands`) are left out.
        """
        parts: list[tuple[bool, int, BandMark]] = []
        hanging = faded = 0
        for band in range(self.state.bands, 0, -1):
            laid = self.positions.laid[band]
            trails = [self.positions.trails[seat.bight] for seat in laid.seats]
            if all(trail[-1].startswith(OFF) for trail in trails):
                hanging += 1
                if hanging > _HANGING_SHOWN and band not in highlighted:
                    continue
            if not self._near(laid, window) or (band not in highlighted and faded >= _FADED_SHOWN):
                continue
            faded += band not in highlighted
            letter, _, tint, hatch = self.look.of(band)
            for part, strands in self.strands(band).items():
                if part in without:
                    continue
                when = self.positions.when[part]
                seen = tuple(o for o in (strand.outline for strand in strands) if _overlaps(o, window))
                if seen:
                    mark = BandMark(
                        band=band,
                        letter=letter,
                        tint=tint,
                        hatch=hatch,
                        outlines=seen,
                        thick_mm=self.look.thick_mm,
                        highlighted=band in highlighted,
                    )
                    parts.append((raised and band in highlighted, when, mark))
        return [mark for *_, mark in sorted(parts, key=lambda part: part[:2])]

    def strands(self, band: int) -> dict[int | Bight, list[FlatStrand]]:
        """Return a band's parts: under its number how it was laid, under a loop the way it was pulled."""
        laid = self.positions.laid[band]
        found: dict[int | Bight, list[FlatStrand]] = {band: self._base(laid)}
        for seat in laid.seats:
            if len(self.positions.trails[seat.bight]) > 1:
                found[seat.bight] = self._neck(seat.bight)
        return found

    def _near(self, laid: Laid, window: Window) -> bool:
        """Say whether any of a band can lie in the window, by the holders it has been on."""
        holders = {holder.lstrip(OFF) for seat in laid.seats for holder in self.positions.trails[seat.bight]}
        spots = [spot for spot in map(self.place, holders) if spot is not None]
        slack = 2 * self.look.base_mm + 8.0
        return bool(spots) and (
            min(x for x, _ in spots) - slack < window.right_mm
            and max(x for x, _ in spots) + slack > window.left_mm
            and min(y for _, y in spots) - slack < window.far_mm
            and max(y for _, y in spots) + slack > window.near_mm
        )

    def _base(self, laid: Laid) -> list[FlatStrand]:
        """Draw a band as it was laid, each loop that has gone drawn in to the neck it left."""
        holders = [list(seats) for _, seats in groupby(laid.seats, key=lambda seat: seat.holder)]
        discs: list[Disc] = []
        more: list[FlatStrand] = []
        splits: list[int] = []
        spots = [self.place(self.positions.trails[seats[0].bight][0].lstrip(OFF)) for seats in holders]
        known = [spot for spot in spots if spot is not None]
        for i, (seats, spot) in enumerate(zip(holders, spots, strict=True)):
            if spot is None:
                continue
            others = [s for s in known if s != spot] or [spot]
            towards = _unit_vector((_mean_of(others, 0) - spot[0], _mean_of(others, 1) - spot[1]))
            discs.append(self._disc(seats[0].bight, spot, towards))
            if i and laid.twists and laid.twists[i - 1]:
                splits.append(len(discs) - 1)
            for seat in seats[1:]:
                if len(self.positions.trails[seat.bight]) == 1:
                    more.append(FlatStrand((self._disc(seat.bight, spot, towards),), along=True))
        if not discs:
            return more
        if not splits:
            return [FlatStrand(tuple(discs)), *more]
        groups = [discs[a:b] for a, b in zip([0, *splits], [*splits, len(discs)], strict=True)]
        if all(len(group) == 1 for group in groups) and len(groups) == 2:
            return [FlatStrand((discs[0], discs[1]._replace(sense=-1)), along=True), *more]
        knots = [FlatStrand((a[-1], b[0]._replace(sense=-1)), along=True) for a, b in pairwise(groups)]
        return [FlatStrand(tuple(group)) for group in groups if len(group) > 1] + knots + more

    def _disc(self, bight: Bight, spot: Spot, towards: Spot) -> Disc:
        trail = self.positions.trails[bight]
        if trail[-1].startswith(OFF) and len(trail) == 1:
            beside = self.look.base_mm + 2.2
            return Disc(spot[0] + towards[0] * beside, spot[1] + towards[1] * beside, 1.3)
        if len(trail) > 1:
            near = self.view.board.peg_mm / 2 - 0.3
            return Disc(spot[0] + towards[0] * near, spot[1] + towards[1] * near, 0.8)
        return Disc(spot[0], spot[1], self.radius(bight, trail[0]))

    def _neck(self, bight: Bight) -> list[FlatStrand]:
        """Draw the way of a loop that was pulled on: a drop from the peg it came from to the one it is on."""
        strands: list[FlatStrand] = []
        trail = self.positions.trails[bight]
        for i, (a, b) in enumerate(pairwise(trail)):
            start, end = self.place(a.lstrip(OFF)), self.place(b.lstrip(OFF))
            if start is None or end is None or a == HOOK:
                continue
            way = _unit_vector((end[0] - start[0], end[1] - start[1]))
            near = self.view.board.peg_mm / 2 - 0.3
            tip = Disc(start[0] + way[0] * near, start[1] + way[1] * near, 0.8)
            if i < len(trail) - 2:
                head = Disc(end[0] - way[0] * near, end[1] - way[1] * near, 0.8)
            elif b.startswith(OFF):
                beside = self.look.base_mm + 2.2
                head = Disc(end[0] - way[0] * beside, end[1] - way[1] * beside, 1.3)
            else:
                head = Disc(end[0], end[1], self.radius(bight, b))
            strands.append(FlatStrand((tip, head)))
        return strands


def _overlaps(outline: Outline, window: Window) -> bool:
    """Say whether any of an outline can lie in the window, by its bounding box."""
    return (
        min(a.x_mm - a.r_mm for a in outline) < window.right_mm
        and max(a.x_mm + a.r_mm for a in outline) > window.left_mm
        and min(a.y_mm - a.r_mm for a in outline) < window.far_mm
        and max(a.y_mm + a.r_mm for a in outline) > window.near_mm
    )


def _unit_vector(v: Spot) -> Spot:
    length = math.hypot(*v)
    return (v[0] / length, v[1] / length) if length > 1e-9 else (0.0, -1.0)


def _mean_of(spots: list[Spot], axis: int) -> float:
    return sum(spot[axis] for spot in spots) / len(spots)
