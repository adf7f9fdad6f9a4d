"""What knot theory says of a drawing: which bands hang together with a fastener."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from pegwright.structure import Curves
from testing.oracle.diagram import diagram, linking, meet, parts, rotation
from testing.oracle.passes import reduced


def components(c: Curves) -> tuple[list[int], list[int], list[np.ndarray]]:
    bands, fasteners = sorted(c.bands), sorted(c.fasteners)
    return bands, fasteners, [c.bands[b] for b in bands] + [c.fasteners[f] for f in fasteners]


def linked_bands(c: Curves, seed: int = 0) -> list[tuple[int, int]]:
    """Pairs of bands whose linking number is not 0: proof that the drawing is wrong."""
    bands, _, curves = components(c)
    lk = linking(diagram(curves, rotation(np.random.default_rng(seed))))
    n = len(bands)
    return [(bands[i], bands[j]) for i in range(n) for j in range(i) if lk[i, j]]


def held(c: Curves, expected: frozenset[int], seed: int = 0, tries: int = 12) -> frozenset[int]:
    """Return the bands that no projection splits from every fastener; stop early once they are as expected.

    Fewer bands than this may be held in truth, never more.
    """
    bands, fasteners, curves = components(c)
    rng = np.random.default_rng(seed)
    found: list[frozenset[int]] | None = None
    result = frozenset(bands)
    for attempt in range(tries):
        link = diagram(curves, rotation(rng))
        link.simplify()
        for thorough in (False, True):
            if thorough:
                link = reduced(link, rounds=2 + attempt)
            split = parts(link)
            found = split if found is None else meet(found, split)
            result = _with_fastener(found, bands, fasteners)
            if result <= expected:
                return result
    return result


def _with_fastener(
    split: list[frozenset[int]], bands: Sequence[int], fasteners: Sequence[int]
) -> frozenset[int]:
    n = len(bands)
    return frozenset(bands[k] for part in split if any(x >= n for x in part) for k in part if k < n)


def clings(c: Curves, band: int, seed: int = 0) -> bool:
    """Say whether the Jones polynomial proves that a band does not split off as an unknot.

    V(L ⊔ O) = (−√t − 1/√t) V(L), so a different value is a proof; an equal one proves nothing.
    """
    bands, _, curves = components(c)
    rng = np.random.default_rng(seed)
    rest = [curve for k, curve in enumerate(curves) if k >= len(bands) or bands[k] != band]

    def jones(strands: list[np.ndarray]) -> dict[int, int]:
        drawn = [reduced(diagram(strands, rotation(rng))) for _ in range(4)]
        value = min(drawn, key=lambda link: link.size()).jones()
        exponents = range(value.minExp(), value.maxExp() + 1)
        return {e: int(value[e].longValue()) for e in exponents if value[e] != 0}

    loose: dict[int, int] = {}
    for exponent, coefficient in jones(rest).items():
        for step in (1, -1):
            loose[exponent + step] = loose.get(exponent + step, 0) - coefficient
    return jones(curves) != {e: x for e, x in loose.items() if x}
