"""Where a "stop and look" catches most.

A check after a move catches the slips that then show at a glance; each is mended there, for the price of the
moves to be done again. With a set of checks a slip is caught by the one that saves most, so what a set saves
is a sum of maxima: monotone and submodular. Taking the best next check each time saves at least 1 − 1/e
(63 %) of what the best set of that size does (Nemhauser, Wolsey & Fisher 1978). How near it really comes is
bounded afterwards: no set of k saves more than this one and the k best single gains on top of it together
(the bound given for this method by Leskovec et al. 2007).
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import numpy as np

from pegwright.rehearsal.ranking import REDO, Risk

__all__ = ["REDO", "InspectionPoints", "choose_inspection_points"]


class InspectionPoints(NamedTuple):
    """After which moves (indices, in order) to stop and look; bands saved by it for one maker on average.

    `lost` is what is lost without any check; `at_least` is how much of the best possible saving this is
    sure to be (0 to 1).
    """

    after: tuple[int, ...]
    saved: float
    lost: float
    at_least: float


def choose_inspection_points(risks: Iterable[Risk], steps: int, count: int = 3) -> InspectionPoints:
    """Choose up to `count` of the moves (of `steps`) after which a look saves most."""
    given = [risk for risk in risks if risk.harm]
    gains = np.zeros((len(given), steps))
    for row, risk in enumerate(given):
        end = steps if risk.outcome.stuck is None else risk.outcome.stuck
        for first, last in risk.outcome.shows:
            after = np.arange(first, min(last, end))
            left = risk.harm - REDO * (after - risk.outcome.slip.at + 1)
            gains[row, first : min(last, end)] = risk.chance * np.maximum(left, 0)
    best = np.zeros(len(given))
    chosen: list[int] = []
    while len(chosen) < min(count, steps):
        more = np.maximum(gains - best[:, None], 0).sum(axis=0)
        at = int(more.argmax())
        if not more[at] > 0:
            break
        chosen.append(at)
        best = np.maximum(best, gains[:, at])
    saved = float(best.sum())
    more = np.sort(np.maximum(gains - best[:, None], 0).sum(axis=0)) if steps else np.zeros(0)
    bound = min(saved + float(more[::-1][:count].sum()), float(gains.max(axis=1).sum()) if steps else 0.0)
    lost = sum(risk.expected for risk in given)
    return InspectionPoints(tuple(sorted(chosen)), saved, lost, saved / bound if bound else 1.0)
