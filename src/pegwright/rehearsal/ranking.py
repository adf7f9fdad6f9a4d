"""Which steps go wrong most, and what it costs: harm × likelihood. Bands are the coin."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from pegwright.loom import Done
from pegwright.rehearsal.consequence import Outcome
from pegwright.rehearsal.slips import Slip

__all__ = ["Comparison", "Risk", "Spot", "Trouble", "Way", "gather", "harm", "heat", "rank"]

UNPROVED = 0.5
"""A band of which nothing is proved counts as half a band lost."""
LOOKS = 0.1
"""A band that only lies or looks otherwise counts as a tenth."""
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


class Spot(NamedTuple):
    """A step where makers go wrong: bands lost on average by one maker there, and by what, worst first."""

    at: int
    step: int
    expected: float
    risks: tuple[Risk, ...]


class Way(NamedTuple):
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
    spots: tuple[Spot, ...]
    ways: tuple[Way, ...]


class Comparison(NamedTuple):
    """Two working orders: slips that bring bands down, and bands lost, by one maker on average."""

    failures: tuple[float, float]
    lost: tuple[float, float]

    @property
    def better(self) -> int:
        """Which order fails less: 0 or 1; the first where they are alike."""
        return 0 if self.failures[0] <= self.failures[1] else 1


def harm(outcome: Outcome, bands: int) -> float:
    """Return what an outcome costs, in bands of a piece of that many.

    A maker who cannot go on mends the slip there, so it costs no more than the moves made since.
    """
    if outcome.result == "harmless":
        return 0.0
    lost = len(outcome.falls) + UNPROVED * len(outcome.unproved) + SNAP * bands * bool(outcome.weak)
    lost = lost or LOOKS * len(outcome.differs)
    return lost if outcome.stuck is None else min(lost, float(outcome.stuck - outcome.slip.at))


def rank(outcomes: Iterable[Outcome], chances: Mapping[Slip, float], bands: int) -> tuple[Spot, ...]:
    """Return the steps at which slips cost anything, the costliest first."""
    by_step: dict[int, list[Risk]] = {}
    for outcome in outcomes:
        cost = harm(outcome, bands)
        if cost:
            by_step.setdefault(outcome.slip.at, []).append(Risk(outcome, chances[outcome.slip], cost))
    spots = []
    for at, risks in by_step.items():
        risks.sort(key=lambda risk: -risk.expected)
        total = sum(risk.expected for risk in risks)
        spots.append(Spot(at, risks[0].outcome.step, total, tuple(risks)))
    return tuple(sorted(spots, key=lambda spot: (-spot.expected, spot.at)))


def gather(spots: Iterable[Spot], done: Sequence[Done]) -> tuple[Trouble, ...]:
    """Gather spots into troubles, the costliest first.

    Spots of one step of the document belong together, and so do steps with moves of one kind whose costliest
    kind of slip is the same: a teacher warns once of what goes wrong at every hook.
    """
    by_path: dict[tuple[type, str], list[Spot]] = {}
    for spot in spots:
        doing = done[spot.at].doing
        by_path.setdefault((type(doing.move), doing.path), []).append(spot)
    alike: dict[tuple[type, str], dict[str, list[Spot]]] = {}
    for (move, path), some in by_path.items():
        alike.setdefault((move, _ways(some)[0].kind), {})[path] = some
    troubles = []
    for by in alike.values():
        some = sorted((spot for each in by.values() for spot in each), key=lambda s: (-s.expected, s.at))
        troubles.append(Trouble(tuple(by), sum(s.expected for s in some), tuple(some), _ways(some)))
    return tuple(sorted(troubles, key=lambda trouble: -trouble.expected))


def _ways(spots: Iterable[Spot]) -> tuple[Way, ...]:
    by_kind: dict[str, list[Risk]] = {}
    for spot in spots:
        for risk in spot.risks:
            by_kind.setdefault(risk.outcome.slip.kind, []).append(risk)
    ways = [
        Way(kind, sum(r.expected for r in risks), tuple(sorted(risks, key=lambda r: (-r.harm, -r.chance))))
        for kind, risks in by_kind.items()
    ]
    return tuple(sorted(ways, key=lambda way: -way.expected))


def heat(spots: Iterable[Spot], steps: int) -> tuple[float, ...]:
    """Return for every move made (of `steps`) the bands that slips there cost one maker on average."""
    strip = [0.0] * steps
    for spot in spots:
        strip[spot.at] = spot.expected
    return tuple(strip)
