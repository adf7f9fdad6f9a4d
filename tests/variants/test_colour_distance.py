"""CIEDE2000 against the published test pairs, and simulated sight against a general library."""

from __future__ import annotations

import numpy as np
import pytest
from coloraide import Color

from pegwright.variants.colour_distance import (
    SIGHTS,
    colour_distances,
    encode_srgb,
    lab_of_linear,
    linear_of_srgb,
    linear_of_tints,
    simulate_sight,
)

# Sharma, Wu and Dalal, "The CIEDE2000 color-difference formula: implementation notes, supplementary test
# data, and mathematical observations", Color Research and Application 30 (2005), table 1: all 34 pairs.
SHARMA = np.array(
    [
        [50.0000, 2.6772, -79.7751, 50.0000, 0.0000, -82.7485, 2.0425],
        [50.0000, 3.1571, -77.2803, 50.0000, 0.0000, -82.7485, 2.8615],
        [50.0000, 2.8361, -74.0200, 50.0000, 0.0000, -82.7485, 3.4412],
        [50.0000, -1.3802, -84.2814, 50.0000, 0.0000, -82.7485, 1.0000],
        [50.0000, -1.1848, -84.8006, 50.0000, 0.0000, -82.7485, 1.0000],
        [50.0000, -0.9009, -85.5211, 50.0000, 0.0000, -82.7485, 1.0000],
        [50.0000, 0.0000, 0.0000, 50.0000, -1.0000, 2.0000, 2.3669],
        [50.0000, -1.0000, 2.0000, 50.0000, 0.0000, 0.0000, 2.3669],
        [50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0009, 7.1792],
        [50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0010, 7.1792],
        [50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0011, 7.2195],
        [50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0012, 7.2195],
        [50.0000, -0.0010, 2.4900, 50.0000, 0.0009, -2.4900, 4.8045],
        [50.0000, -0.0010, 2.4900, 50.0000, 0.0010, -2.4900, 4.8045],
        [50.0000, -0.0010, 2.4900, 50.0000, 0.0011, -2.4900, 4.7461],
        [50.0000, 2.5000, 0.0000, 50.0000, 0.0000, -2.5000, 4.3065],
        [50.0000, 2.5000, 0.0000, 73.0000, 25.0000, -18.0000, 27.1492],
        [50.0000, 2.5000, 0.0000, 61.0000, -5.0000, 29.0000, 22.8977],
        [50.0000, 2.5000, 0.0000, 56.0000, -27.0000, -3.0000, 31.9030],
        [50.0000, 2.5000, 0.0000, 58.0000, 24.0000, 15.0000, 19.4535],
        [50.0000, 2.5000, 0.0000, 50.0000, 3.1736, 0.5854, 1.0000],
        [50.0000, 2.5000, 0.0000, 50.0000, 3.2972, 0.0000, 1.0000],
        [50.0000, 2.5000, 0.0000, 50.0000, 1.8634, 0.5757, 1.0000],
        [50.0000, 2.5000, 0.0000, 50.0000, 3.2592, 0.3350, 1.0000],
        [60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644],
        [63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630],
        [61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731],
        [35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645],
        [22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373],
        [36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146],
        [90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441],
        [90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381],
        [6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377],
        [2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082],
    ]
)
TINTS = [f"#{n:06x}" for n in np.random.default_rng(19).integers(0, 1 << 24, 40)] + [
    "#000000",
    "#ffffff",
    "#777777",
]


def test_all_published_pairs_to_the_last_printed_figure() -> None:
    there = colour_distances(SHARMA[:, :3], SHARMA[:, 3:6])
    back = colour_distances(SHARMA[:, 3:6], SHARMA[:, :3])
    assert np.abs(there - SHARMA[:, 6]).max() < 5.1e-5
    assert np.abs(back - SHARMA[:, 6]).max() < 5.1e-5


def test_distances_of_tints_are_those_of_the_library() -> None:
    lab = lab_of_linear(linear_of_tints(TINTS))
    ours = colour_distances(lab[:, None], lab[None])
    theirs = [[Color(a).delta_e(b, method="2000") for b in TINTS[:8]] for a in TINTS]
    assert ours[:, :8] == pytest.approx(np.array(theirs), abs=1e-4)


@pytest.mark.parametrize("sight", ["protan", "deutan", "tritan"])
def test_simulated_sight_is_that_of_the_library(sight: str) -> None:
    ours = encode_srgb(simulate_sight(linear_of_tints(TINTS), sight))
    theirs = [
        Color(t).filter(sight, 1.0, method="machado", space="srgb-linear").clip("srgb").convert("srgb")[:3]
        for t in TINTS
    ]
    assert ours == pytest.approx(np.array(theirs, dtype=float), abs=1e-5)


def test_grey_stays_grey_for_every_eye() -> None:
    """The rows of each matrix add up to 1, as the paper has it."""
    for matrix in SIGHTS.values():
        assert matrix.sum(axis=1) == pytest.approx(1.0, abs=2e-6)


def test_srgb_is_encoded_back() -> None:
    values = np.linspace(0, 1, 257)
    assert encode_srgb(linear_of_srgb(values)) == pytest.approx(values, abs=1e-9)
