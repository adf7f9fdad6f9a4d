"""Where every holder stands in plan: pegs, free ends, and the hook's shaft."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence

import numpy as np
from scipy.spatial import cKDTree

from pegwright.finding import RefusedError, phrase
from pegwright.loom import HOOK, Drawn, Event, Laid, Moved
from pegwright.structure.plane_geometry import PlanVector, azimuth, wrap_angle

ALONE_MM = 16.0
"""The unit of length where there is only one holder."""


def place_holders(
    events: Iterable[Event], position: Callable[[str], tuple[float, float]]
) -> dict[str, PlanVector]:
    """Place every holder: pegs where they stand, free ends beyond the piece, unused hung bands far away.

    Raises:
        KeyError: a peg has no position.
    """
    names: list[str] = []
    origin: dict[str, str] = {}
    hung: list[int] = []
    for e in events:
        match e:
            case Laid():
                if e.seats[0].holder == HOOK:
                    hung.append(e.band)
                else:
                    names += [s.holder for s in e.seats]
            case Drawn() | Moved():
                names += [e.source, e.target]
                origin.setdefault(e.target, e.source)
                if isinstance(e, Drawn):
                    hung = [b for b in hung if b not in {s.band for s in e.slid}]
    found = {n: np.array(position(n), float) for n in dict.fromkeys(names) if "." not in n}
    middle = np.mean(list(found.values()), axis=0) if found else np.zeros(2)
    far = max((float(np.hypot(*(p - middle))) for p in found.values()), default=0.0)
    unit = least_gap(list(found.values()))
    angles: dict[str, float] = {}
    for name in dict.fromkeys(n for n in names if "." in n):
        end, _, number = name.rpartition(".")
        if end not in angles:
            lean = found.get(origin.get(name, ""), middle) - middle
            angle = azimuth(lean) if float(np.hypot(*lean)) > 1e-9 else 0.0
            while any(abs(wrap_angle(angle - a)) < 0.45 for a in angles.values()) and len(angles) < 12:
                angle += 0.5
            angles[end] = angle
        out = far + unit * (1.5 + int(number))
        found[name] = middle + out * np.array([math.cos(angles[end]), math.sin(angles[end])])
    for k, band in enumerate(hung):
        found[f"{HOOK}:{band}"] = middle + np.array([(k - len(hung) / 2) * unit, -far - 4 * unit])
    return found


def least_gap(found: Sequence[PlanVector]) -> float:
    """Return the least distance between two spots (mm).

    Raises:
        ValueError: two of them are one.
    """
    if len(found) < 2:
        return ALONE_MM
    gap = float(cKDTree(np.array(found)).query(np.array(found), k=2)[0][:, 1].min())
    if gap < 1e-3:
        raise RefusedError(phrase("pegs-coincide"))
    return gap
