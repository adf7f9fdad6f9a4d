"""Long words compared without writing them out: 2 × 2 matrices over the field of 2⁶¹ − 1 elements.

Each generator gets a random matrix of determinant 1. A word whose matrix is not the identity is not trivial:
that is a proof. A matrix that is the identity is strong evidence only: a word of n letters that is not
trivial gives it by chance with a likelihood of about n / 2⁶¹ (Schwartz 1980, Zippel 1979).
"""

from __future__ import annotations

import random

from pegwright.proof import ReducedWords

__all__ = ["PRIME", "trivial"]

PRIME = (1 << 61) - 1
Matrix = tuple[int, int, int, int]
ONE: Matrix = (1, 0, 0, 1)


def trivial(words: ReducedWords, seed: int = 0) -> list[bool]:
    """Say for every fastener whether its word's matrix is the identity."""
    rng = random.Random(seed)
    letters = [_random(rng) for _ in words.letters]
    values: list[Matrix] = []
    trails: dict[int, Matrix] = {0: ONE}
    for factors in words.words:
        values.append(_product(words, factors, letters, values, trails))
    return [_product(words, root, letters, values, trails) == ONE for root in words.roots]


def _product(
    words: ReducedWords,
    factors: tuple[int, ...],
    letters: list[Matrix],
    values: list[Matrix],
    trails: dict[int, Matrix],
) -> Matrix:
    out = ONE
    for factor in factors:
        letter, trail = words.cores[factor >> 1]
        inside = inverse(letters[letter]) if factor & 1 else letters[letter]
        waiting = []
        while trail not in trails:
            waiting.append(trail)
            trail = words.trails[trail][1]
        around = trails[trail]
        for outer in reversed(waiting):
            around = trails[outer] = times(values[words.trails[outer][0]], around)
        out = times(times(times(out, around), inside), inverse(around))
    return out


def times(a: Matrix, b: Matrix) -> Matrix:
    """Return the product of two matrices."""
    return (
        (a[0] * b[0] + a[1] * b[2]) % PRIME,
        (a[0] * b[1] + a[1] * b[3]) % PRIME,
        (a[2] * b[0] + a[3] * b[2]) % PRIME,
        (a[2] * b[1] + a[3] * b[3]) % PRIME,
    )


def inverse(a: Matrix) -> Matrix:
    """Return the inverse of a matrix of determinant 1."""
    return (a[3], -a[1] % PRIME, -a[2] % PRIME, a[0])


def _random(rng: random.Random) -> Matrix:
    a, b, c = (rng.randrange(1, PRIME) for _ in range(3))
    return (a, b, c, (1 + b * c) * pow(a, -1, PRIME) % PRIME)
