"""The oracle itself, held against published values before it is asked about our drawings.

Sources: LinkInfo as packed in `database_knotinfo`; SnapPy census volumes; the rubber-band Brunnian links'
planar diagrams from the Knot Atlas, their Jones polynomials computed with regina and with a Kauffman bracket
of our own.
"""

from __future__ import annotations

import numpy as np
import pytest
import regina
import snappy
import spherogram
from database_knotinfo import link_list

from testing.oracle.diagram import diagram, linking, meet, parts, rotation
from testing.oracle.passes import reduced

HOPF = [[4, 1, 3, 2], [2, 3, 1, 4]]
WHITEHEAD = [[6, 1, 7, 2], [10, 7, 5, 8], [4, 5, 1, 6], [2, 10, 3, 9], [8, 4, 9, 3]]
BORROMEAN = [[6, 1, 7, 2], [12, 8, 9, 7], [4, 12, 1, 11], [10, 5, 11, 6], [8, 4, 5, 3], [2, 9, 3, 10]]
VOLUME = {"hopf": 0.0, "whitehead": 3.6638623767, "borromean": 7.3277247534}
_BAND = [[1, 10, 5, 12], [2, 12, 6, 14], [5, 11, 8, 13], [6, 13, 9, 15]]
_BAND += [[10, 0, 16, 4], [11, 4, 17, 8], [14, 7, 19, 3], [15, 9, 18, 7]]
RUBBER_VOLUME = {2: 12.5289226608, 3: 29.3229926, 4: 44.0190696, 5: 57.8143934}
# Coefficients of the Jones polynomial from the middle outwards.
RUBBER_JONES = {
    3: [24, -18, 11, 0, -10, 14, -11, 5, -1],
    4: [32, -100, 131, -111, 51, 18, -56, 49, -24, 7, -1],
    5: [816, -672, 305, 189, -581, 660, -414, 57, 167, -189, 110, -40, 9, -1],
}


def rubber(n: int) -> list[list[int]]:
    """The planar diagram of n rubber bands joined into a ring (Knot Atlas): 8 crossings a band."""
    ends = {16 * n: 0, 16 * n + 1: 1, 16 * n + 2: 2, 16 * n + 3: 3}
    code = [[x + 16 * k for x in crossing] for k in range(n) for crossing in _BAND]
    return [[ends.get(x, x) for x in crossing] for crossing in code]


def volume(code: list[list[int]]) -> float:
    manifold = spherogram.Link(code).exterior()
    assert isinstance(manifold, snappy.Manifold)
    return float(manifold.volume())


def link(code: list[list[int]]) -> regina.Link:
    # Through spherogram, which numbers the strands along the components as regina wants them.
    return regina.Link.fromPD(spherogram.Link(code).PD_code(min_strand_index=1))


@pytest.mark.parametrize(
    ("name", "code", "row"),
    [("hopf", HOPF, "L2a1{0}"), ("whitehead", WHITEHEAD, "L5a1{0}"), ("borromean", BORROMEAN, "L6a4{0,0}")],
)
def test_published_links_are_what_linkinfo_says(name: str, code: list[list[int]], row: str) -> None:
    entry = next(e for e in link_list(proper_links=True) if e["name"] == row)
    assert [
        int(x)
        for x in entry["pd_notation_vector"].replace("{", " ").replace("}", " ").replace(",", " ").split()
    ] == [x for c in code for x in c]
    assert float(entry["volume"]) == pytest.approx(VOLUME[name], abs=1e-8)
    if VOLUME[name]:
        assert volume(code) == pytest.approx(VOLUME[name], abs=1e-8)


@pytest.mark.parametrize("code", [WHITEHEAD, BORROMEAN], ids=["whitehead", "borromean"])
def test_a_link_without_linking_numbers_is_not_taken_for_split(code: list[list[int]]) -> None:
    """Linking number 0 never proves that something falls off."""
    whole = link(code)
    assert not linking(whole).any()
    for _ in range(5):
        assert len(parts(reduced(whole))) == 1


def test_hopf_has_linking_number_one() -> None:
    assert abs(linking(link(HOPF))[0, 1]) == 1


@pytest.mark.parametrize("n", sorted(RUBBER_VOLUME))
def test_rubber_bands_in_a_ring_are_brunnian(n: int) -> None:
    whole = link(rubber(n))
    assert whole.countComponents() == n
    assert not linking(whole).any()
    assert volume(rubber(n)) == pytest.approx(RUBBER_VOLUME[n], abs=1e-6)
    assert len(parts(reduced(whole))) == 1
    full = spherogram.Link(rubber(n))
    for k in range(n):
        rest = full.sublink([i for i in range(n) if i != k])
        rest.simplify("global")
        assert len(rest.crossings) == 0


@pytest.mark.parametrize("n", sorted(RUBBER_JONES))
def test_rubber_bands_have_the_known_jones_polynomial(n: int) -> None:
    polynomial = link(rubber(n)).jones()  # in the square root of t
    exponents = range(polynomial.minExp(), polynomial.maxExp() + 1)
    found = {e: int(polynomial[e].longValue()) for e in exponents if polynomial[e] != 0}
    half = RUBBER_JONES[n]
    known = {}
    for k, coefficient in enumerate(half):
        known |= dict.fromkeys((2 * k + 1 - n % 2, n % 2 - 2 * k - 1), coefficient)
    sign = (-1) ** (n - 1)
    assert found in ({e: c for e, c in known.items() if c}, {e: sign * c for e, c in known.items() if c})


def test_projections_of_one_curve_agree() -> None:
    """Borromean ellipses in the three coordinate planes, seen from all sides."""
    t = np.linspace(0, 2 * np.pi, 40, endpoint=False)
    long, short, none = 2 * np.cos(t), np.sin(t), 0 * t
    rings = [np.column_stack(c) for c in ((long, short, none), (none, long, short), (short, none, long))]
    sizes = []
    for seed in range(8):
        drawn = diagram(rings, rotation(np.random.default_rng(seed)))
        small = reduced(drawn)
        assert drawn.jones() == small.jones() == link(BORROMEAN).jones()
        sizes.append(small.size())
    assert min(sizes) == 6


@pytest.mark.parametrize("seed", range(8))
def test_pass_moves_change_no_link(seed: int) -> None:
    """The Jones polynomial and the linking numbers of tangled drawings survive the simplification."""
    rng = np.random.default_rng(seed)
    rings = [rng.normal(size=(5, 3)) for _ in range(3)]
    drawn = diagram(rings, rotation(rng))
    small = reduced(drawn)
    assert drawn.jones() == small.jones()
    assert (linking(drawn) == linking(small)).all()


def test_a_split_seen_once_is_a_split() -> None:
    first = [frozenset({0, 1, 2}), frozenset({3})]
    second = [frozenset({0, 1}), frozenset({2, 3})]
    assert sorted(map(sorted, meet(first, second))) == [[0, 1], [2], [3]]
