"""Which steps go wrong most, and what it costs: harm × likelihood. Bands are the coin."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from pegwright.loom import AppliedMove
from pegwright.rehearsal.outcome import Outcome
from pegwright.rehearsal.slips import Slip

__all__ = [
    "NOTICED",
    "REDO",
    "Comparison",
    "FailureMode",
    "Risk",
    "RiskyStep",
    "Trouble",
    "group_into_troubles",
    "harm_of",
    "heat_by_step",
    "rank_steps",
]

UNPROVED = 0.5
"""A band of which nothing is proved counts as half a band lost."""
LOOKS = 0.1
"""A band that only lies or looks otherwise counts as a tenth."""
REDO = 0.5
"""A move done again counts as half a band."""
NOTICED = 0.5
"""The chance that a maker notices at one move what shows at a glance; common practice, no source."""
SNAP = 0.05
"""One piece in twenty has a band snap while it is worn; common practice, no source."""


class Risk(NamedTuple):
    """An outcome, the chance that one maker comes to it, and the bands it costs."""

    outcome: Outcome
    chance: float
    harm: float

    @property
    def expected(self) -> float:
        """The bands it costs one maker on average."""
        return self.chance * self.harm


class RiskyStep(NamedTuple):
    """A step where makers go wrong: bands lost on average by one maker there, and by what, worst first."""

    at: int
    step: int
    expected: float
    risks: tuple[Risk, ...]


class FailureMode(NamedTuple):
    """One kind of slip at the steps of a trouble: bands lost by it in all, and where, worst first."""

    kind: str
    expected: float
    risks: tuple[Risk, ...]

    @property
    def worst(self) -> Outcome:
        """The outcome that costs most."""
        return self.risks[0].outcome


class Trouble(NamedTuple):
    """Steps with one kind of move that go wrong in the same way above all: one thing to warn of.

    `paths` are those steps of the document, `spots` where they are worked, worst first, `ways` what goes
    wrong there, the costliest kind of slip first.
    """

    paths: tuple[str, ...]
    expected: float
    risky_steps: tuple[RiskyStep, ...]
    failure_modes: tuple[FailureMode, ...]


class Comparison(NamedTuple):
    """Two working orders: slips that bring bands down, and bands lost, by one maker on average."""

    failures: tuple[float, float]
    lost: tuple[float, float]

    @property
    def better(self) -> int:
        """Which order fails less: 0 or 1; the first where they are alike."""
        return 0 if self.failures[0] <= self.failures[1] else 1


def harm_of(outcome: Outcome, bands: int) -> float:
    """Return what an outcome costs one maker on average, in bands of a piece of that many.

    A maker who cannot go on mends the slip there, so it costs no more than the moves made since. At each move
    at which it shows at a glance, the maker may notice it and do the moves since then again: so what is seen
    at once costs little, and what never shows costs all that is lost.
    """
    if outcome.result == "harmless":
        return 0.0
    lost = len(outcome.falls) + UNPROVED * len(outcome.unproved) + SNAP * bands * bool(outcome.weak)
    lost = lost or LOOKS * len(outcome.differs)
    if outcome.stuck is not None:
        lost = min(lost, float(outcome.stuck - outcome.slip.at))
    return _less_what_is_noticed(outcome, lost)


def _less_what_is_noticed(outcome: Outcome, lost: float) -> float:
    """Return the mean cost, given that at every move at which the slip shows it is noticed by `NOTICED`."""
    cost, unnoticed = 0.0, 1.0
    for first, last in outcome.shows:
        for at in range(first, last if outcome.stuck is None else min(last, outcome.stuck)):
            mended = REDO * (at - outcome.slip.at + 1)
            if mended >= lost or unnoticed < 1e-6:
                break
            cost += unnoticed * NOTICED * mended
            unnoticed *= 1 - NOTICED
    return cost + unnoticed * lost


def rank_steps(
    outcomes: Iterable[Outcome], chances: Mapping[Slip, float], bands: int
) -> tuple[RiskyStep, ...]:
    """Return the steps at which slips cost anything, the costliest first."""
    by_step: dict[int, list[Risk]] = {}
    for outcome in outcomes:
        cost = harm_of(outcome, bands)
        if cost:
            by_step.setdefault(outcome.slip.at, []).append(Risk(outcome, chances[outcome.slip], cost))
    spots = []
    for at, risks in by_step.items():
        risks.sort(key=lambda risk: -risk.expected)
        total = sum(risk.expected for risk in risks)
        spots.append(RiskyStep(at, risks[0].outcome.step, total, tuple(risks)))
    return tuple(sorted(spots, key=lambda spot: (-spot.expected, spot.at)))


def group_into_troubles(spots: Iterable[RiskyStep], done: Sequence[AppliedMove]) -> tuple[Trouble, ...]:
    """Gather spots into troubles, the costliest first.

    Spots of one step of the document belong together, and so do steps with moves of one kind whose costliest
    kind of slip is the same: a teacher warns once of what goes wrong at every hook.
    """
    by_path: dict[tuple[type, str], list[RiskyStep]] = {}
    for spot in spots:
        doing = done[spot.at].located
        by_path.setdefault((type(doing.move), doing.path), []).append(spot)
    alike: dict[tuple[type, str], dict[str, list[RiskyStep]]] = {}
    for (move, path), some in by_path.items():
        alike.setdefault((move, _failure_modes(some)[0].kind), {})[path] = some
    troubles = []
    for by in alike.values():
        some = sorted((spot for each in by.values() for spot in each), key=lambda s: (-s.expected, s.at))
        troubles.append(Trouble(tuple(by), sum(s.expected for s in some), tuple(some), _failure_modes(some)))
    return tuple(sorted(troubles, key=lambda trouble: -trouble.expected))


def _failure_modes(spots: Iterable[RiskyStep]) -> tuple[FailureMode, ...]:
    by_kind: dict[str, list[Risk]] = {}
    for spot in spots:
        for risk in spot.risks:
            by_kind.setdefault(risk.outcome.slip.kind, []).append(risk)
    ways = [
        FailureMode(
            kind, sum(r.expected for r in risks), tuple(sorted(risks, key=lambda r: (-r.harm, -r.chance)))
        )
        for kind, risks in by_kind.items()
    ]
    return tuple(sorted(ways, key=lambda way: -way.expected))


def heat_by_step(spots: Iterable[RiskyStep], steps: int) -> tuple[float, ...]:
    """Return for every move made (of `steps`) the bands that slips there cost one maker on average."""
    strip = [0.0] * steps
    for spot in spots:
        strip[spot.at] = spot.expected
    return tuple(strip)
