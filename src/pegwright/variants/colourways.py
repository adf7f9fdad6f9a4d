"""Colourways of a piece from the bands at hand: told apart by every eye, and sparing of what is left.

A thousand are drawn with a seed, or all if there are fewer, and ranked; of the best, those are shown that
differ most.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import permutations
from typing import NamedTuple

import msgspec
import numpy as np
import numpy.typing as npt

from pegwright.finding import RefusedError, phrase
from pegwright.pattern import Pattern
from pegwright.variants.band_colours import BandColour
from pegwright.variants.colour_distance import (
    SIGHTS,
    Floats,
    colour_distances,
    lab_of_linear,
    linear_of_tints,
    simulate_sight,
)

__all__ = ["ALIKE", "Colourway", "rank_colourways", "with_colours"]

ALIKE = 10.0
"""Bands nearer than this CIEDE2000 distance are easily taken for each other; common practice, no source."""

_ENOUGH = 35.0  # colours farther apart than this are no easier to tell
_DRAWN = 1000
_SHARED = 0.15  # what a colourway loses for each of its colours that one shown before has in the same place

Choices = npt.NDArray[np.int64]


class Colourway(NamedTuple):
    """Bands for each letter of a piece.

    `apart` is the least CIEDE2000 distance of two of them, for the eye that tells least.
    `used` is the largest share of a colour at hand that the piece takes: above 1 some must be bought.
    """

    colours: Mapping[str, BandColour]
    apart: float
    used: float

    @property
    def told_apart(self) -> bool:
        """Whether every eye can tell all its colours apart."""
        return self.apart >= ALIKE


def rank_colourways(
    needs: Mapping[str, int], colours: Sequence[BandColour], count: int, *, seed: int = 1, drawn: int = _DRAWN
) -> tuple[Colourway, ...]:
    """Return the best colourways, at most `count`, for letters that need so many bands each.

    Those come first that every eye can tell apart and that the bands at hand suffice for. The same seed
    gives the same colourways.

    Raises:
        RefusedError: there are fewer colours than letters, or no letter.
    """
    letters = list(needs)
    if not letters or len(colours) < len(letters):
        raise RefusedError(phrase("stash-few-colours", needed=len(letters), have=len(colours)))
    choices = _draw_choices(len(colours), len(letters), drawn, np.random.default_rng(seed))
    apart = _least_distances(choices, _distances_of_every_eye([colour.tint for colour in colours]))
    used = _largest_shares(choices, np.array([needs[letter] for letter in letters]), colours)
    worth = np.minimum(apart, _ENOUGH) / _ENOUGH - 0.5 * np.minimum(used, 1.0)
    worth = worth - 2.0 * (used > 1.0) - 4.0 * (apart < ALIKE)
    picked = _pick_varied(choices, worth, count)
    return tuple(
        Colourway(
            {letter: colours[each] for letter, each in zip(letters, choices[at].tolist(), strict=True)},
            float(apart[at]),
            float(used[at]),
        )
        for at in picked
    )


def with_colours(pattern: Pattern, colours: Mapping[str, BandColour]) -> Pattern:
    """Return the pattern in other colours: letters stay, names and tints change.

    What the old names read in other languages is left out.
    """
    changed = {c.name for c in pattern.colours if c.letter in colours}
    kept = {
        language: {text: reads for text, reads in table.items() if text not in changed}
        for language, table in pattern.translations.items()
    }
    return msgspec.structs.replace(
        pattern,
        colours=tuple(
            msgspec.structs.replace(c, name=colours[c.letter].name, hex=colours[c.letter].tint)
            if c.letter in colours
            else c
            for c in pattern.colours
        ),
        translations={language: table for language, table in kept.items() if table},
    )


def _draw_choices(colours: int, letters: int, drawn: int, rng: np.random.Generator) -> Choices:
    """Return which colour each letter has, shape (n, letters), no colour twice in a row of it."""
    if math.perm(colours, letters) <= drawn:
        return np.array(list(permutations(range(colours), letters)), dtype=np.int64)
    return np.argsort(rng.random((drawn, colours)), axis=1)[:, :letters]


def _distances_of_every_eye(tints: Sequence[str]) -> Floats:
    """Return the CIEDE2000 distance of every two tints as the eye sees it that tells them apart least."""
    linear = linear_of_tints(tints)
    seen = [lab_of_linear(simulate_sight(linear, sight)) for sight in SIGHTS]
    return np.asarray(np.min([colour_distances(lab[:, None], lab[None]) for lab in seen], axis=0))


def _least_distances(choices: Choices, far: Floats) -> Floats:
    letters = choices.shape[1]
    if letters == 1:
        return np.full(len(choices), np.inf)
    one, other = np.triu_indices(letters, 1)
    return np.asarray(far[choices[:, one], choices[:, other]].min(axis=1))


def _largest_shares(choices: Choices, needs: Choices, colours: Sequence[BandColour]) -> Floats:
    """Return the largest share of a colour at hand that each choice takes; 0 where it is not told."""
    have = np.array([np.inf if colour.have is None else colour.have for colour in colours], dtype=np.float64)
    there = have[choices]
    taken = np.broadcast_to(needs.astype(np.float64), choices.shape)
    shares = np.divide(taken, there, out=np.full(choices.shape, np.inf), where=there > 0)
    return np.asarray(np.where(taken > 0, shares, 0.0).max(axis=1))


def _pick_varied(choices: Choices, worth: Floats, count: int) -> list[int]:
    """Return the best choice, then over and over the best of those that differ from the ones before."""
    picked: list[int] = []
    left = worth.copy()
    while len(picked) < min(count, len(choices)):
        at = int(left.argmax())
        if not np.isfinite(left[at]):
            break
        picked.append(at)
        same = (choices == choices[at]).sum(axis=1)
        left = left - _SHARED * same
        left[same == choices.shape[1]] = -np.inf
    return picked
