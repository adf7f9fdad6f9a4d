"""A piece off the loom as the page shows it. A module of its own, because the solver is slow to import."""

from __future__ import annotations

import msgspec

from pegwright.finding import WordedFinding


class RestingStrand(msgspec.Struct, frozen=True, kw_only=True):
    """A band, or the ring of a fastener (then `band` is 0). A closed strand's last point joins its first.

    `points_mm` holds three numbers a point, `tension_n` one for the edge starting at each point.
    """

    band: int
    radius_mm: float
    closed: bool
    points_mm: tuple[float, ...]
    tension_n: tuple[float, ...]


class AtRest(msgspec.Struct, frozen=True, kw_only=True):
    """The piece laid flat: x along it, y across, z towards the maker, centred on the origin.

    Round a wrist the arm runs along y through the origin; the lengths are those of the piece laid flat.

    `settled` tells whether it came to rest, `crossings` how often strands passed through each other on the
    way (0 unless something is wrong); `findings` say more.
    """

    length_mm: float
    width_mm: float
    height_mm: float
    settled: bool
    crossings: int
    strands: tuple[RestingStrand, ...]
    findings: tuple[WordedFinding, ...]
