"""What the maker has given: the laid bands, the moves that must stay, and a finish if there is one."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding
from pegwright.loom import Bight, Fastened, History, Laid, replay_pattern
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Pattern,
    PatternStep,
    Put,
    Repeat,
    Slide,
    Transfer,
    Turn,
    Use,
    expand,
    motifs_by_name,
)

__all__ = ["FEW_BANDS", "PlanDraft", "laying_steps", "read_draft", "without_working"]

FEW_BANDS = 6
"""Bands up to which every order is tried, and a finish takes up one peg or two."""

FINISHING = (Bind, Extend, Clip, Knot)
WORKING = (Hook, Lift, Transfer, Slide, Hang, Turn, Put, *FINISHING)


class PlanDraft(NamedTuple):
    """A pattern to work: `opening` holds its steps up to the finish, all of which stay as they are.

    `history` is the opening made on the loom. `homes` maps every loop that is still on the peg where it was
    laid to the other pegs of its band; loops already worked are not in it. `finish` holds the steps that end
    the pattern, if any: they stay last.
    """

    pattern: Pattern
    opening: tuple[PatternStep, ...]
    finish: tuple[PatternStep, ...]
    history: History
    homes: dict[Bight, tuple[str, ...]]

    @property
    def links(self) -> list[tuple[str, str]]:
        """The pairs of pegs that bands still to be worked lie over, a pair for each band over two pegs."""
        pegs = {bight: peg for peg, bight in self.resting() if len(self.homes[bight]) == 1}
        return [
            (peg, self.homes[bight][0])
            for bight, peg in sorted(pegs.items())
            if bight.index == 0 and pegs.get(Bight(bight.band, 1)) == self.homes[bight][0]
        ]

    def first_moves(self) -> list[int]:
        """For each step of the opening how many moves come before it, and in the end how many there are."""
        counts = [0]
        for step in self.opening:
            alone = msgspec.structs.replace(self.pattern, steps=(step,), stated=None)
            counts.append(counts[-1] + len(expand(alone).moves))
        return counts

    def resting(self) -> Iterable[tuple[str, Bight]]:
        """Yield every peg with each loop on it that still lies where it was laid."""
        for holder, loops in self.history.final.stacks.items():
            for bight in loops:
                if bight in self.homes:
                    yield holder, bight


def read_draft(pattern: Pattern) -> PlanDraft | tuple[Finding, ...]:
    """Read a pattern as a draft, or return the findings that make it impossible to work.

    A fastener before the last steps closes the piece: it stays in the opening, and nothing can follow it.
    """
    cut = len(pattern.steps)
    while cut and isinstance(pattern.steps[cut - 1], FINISHING):
        cut -= 1
    opening, finish = pattern.steps[:cut], pattern.steps[cut:]
    begun = msgspec.structs.replace(pattern, steps=opening)
    expansion = expand(begun)
    history = replay_pattern(begun, expansion)
    wrong = [f for f in (*expansion.findings, *history.findings) if f.severity == "error"]
    if wrong:
        return tuple(wrong)
    return PlanDraft(pattern, opening, finish, history, _homes(history))


def _homes(history: History) -> dict[Bight, tuple[str, ...]]:
    homes: dict[Bight, tuple[str, ...]] = {}
    for event in history.events:
        if isinstance(event, Laid):
            holders = [seat.holder for seat in event.seats]
            if len(set(holders)) == len(holders) > 1:
                for seat in event.seats:
                    homes[seat.bight] = tuple(h for h in holders if h != seat.holder)
        elif not isinstance(event, Fastened):
            homes.pop(getattr(event, "bight", Bight(0, 0)), None)
    return homes


def without_working(pattern: Pattern) -> Pattern:
    """Return the pattern with its bands laid and nothing worked: no loop hooked or lifted, no finish.

    Repeats and motifs that end up empty are dropped, and so are the stated counts.
    """
    motifs = motifs_by_name(pattern)
    empty: set[str] = set()
    while True:
        more = {
            name
            for name, motif in motifs.items()
            if name not in empty and not laying_steps(motif.steps, frozenset(empty))
        }
        if not more:
            break
        empty |= more
    gone = frozenset(empty)
    kept = tuple(
        msgspec.structs.replace(motif, steps=laying_steps(motif.steps, gone))
        for motif in pattern.motifs
        if motif.name not in gone
    )
    return msgspec.structs.replace(pattern, steps=laying_steps(pattern.steps, gone), motifs=kept, stated=None)


def laying_steps(
    steps: tuple[PatternStep, ...], empty: frozenset[str] = frozenset()
) -> tuple[PatternStep, ...]:
    """Return the steps without those that work loops; motifs of the names `empty` are left out."""
    kept: list[PatternStep] = []
    for step in steps:
        if isinstance(step, Repeat):
            inner = laying_steps(step.steps, empty)
            if inner:
                kept.append(msgspec.structs.replace(step, steps=inner))
        elif not (isinstance(step, WORKING) or (isinstance(step, Use) and step.name in empty)):
            kept.append(step)
    return tuple(kept)
