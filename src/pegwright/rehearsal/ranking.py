"""Which steps go wrong most, and what it costs: harm × likelihood. Bands are the coin."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from pegwright.rehearsal.consequence import Outcome
from pegwright.rehearsal.slips import Slip

__all__ = ["Comparison", "Risk", "Spot", "Trouble", "gather", "harm", "heat", "rank"]

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


class Trouble(NamedTuple):
    """The same step of the document wherever it is worked (`path`), and its spots, worst first."""

    path: str
    expected: float
    spots: tuple[Spot, ...]

    @property
    def worst(self) -> Spot:
        """The spot of this step that costs most."""
        return self.spots[0]


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


def gather(spots: Iterable[Spot], paths: Sequence[str]) -> tuple[Trouble, ...]:
    """Gather spots by the step of the document (`paths[i]` is that of move i), the costliest first."""
    by_path: dict[str, list[Spot]] = {}
    for spot in spots:
        by_path.setdefault(paths[spot.at], []).append(spot)
    troubles = [Trouble(path, sum(s.expected for s in some), tuple(some)) for path, some in by_path.items()]
    return tuple(sorted(troubles, key=lambda trouble: -trouble.expected))


def heat(spots: Iterable[Spot], steps: int) -> tuple[float, ...]:
    """Return for every move made (of `steps`) the bands that slips there cost one maker on average."""
    strip = [0.0] * steps
    for spot in spots:
        strip[spot.at] = spot.expected
    return tuple(strip)
