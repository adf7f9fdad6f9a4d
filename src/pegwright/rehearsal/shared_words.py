"""Words of the link, shared between the histories of all slips: equal words carry equal numbers everywhere.

The calculus is that of `structure.link_words` (`docs/line.md`); there the numbers are those of one finished
history, here they stay the same from one slip to the next, so that equal structures are known by their roots.
"""

from __future__ import annotations

from collections.abc import Iterable

from pegwright.loom import Bight

__all__ = ["SharedWords"]


class SharedWords:
    """Numbers for factors, trails and words. Factor `2 k` is core k = (loop, trail), `2 k + 1` its inverse.

    `trails[t]` is (word, inner trail), `trails[0]` the empty one; `words[w]` are factors.
    """

    def __init__(self) -> None:
        self.cores: list[tuple[Bight, int]] = []
        self.trails: list[tuple[int, int]] = [(-1, -1)]
        self.words: list[tuple[int, ...]] = []
        self._core: dict[tuple[Bight, int], int] = {}
        self._trail: dict[tuple[int, int], int] = {}
        self._word: dict[tuple[int, ...], int] = {}

    def laid_factor(self, loop: Bight, sign: int) -> int:
        """Return the factor of a loop just laid."""
        return self._factor(loop, 0, sign < 0)

    def word(self, factors: Iterable[int]) -> int:
        """Return the number of a product."""
        key = tuple(factors)
        known = self._word.get(key)
        if known is None:
            known = self._word[key] = len(self.words)
            self.words.append(key)
        return known

    def conjugate(self, word: int, factor: int) -> int:
        """Return the factor word · factor · word⁻¹."""
        loop, inner = self.cores[factor >> 1]
        trail = self._trail.get((word, inner))
        if trail is None:
            trail = self._trail[word, inner] = len(self.trails)
            self.trails.append((word, inner))
        return self._factor(loop, trail, bool(factor & 1))

    def inner_core(self, core: int) -> int:
        """Return the core that a loop had before it went through the outermost word of its trail."""
        loop, trail = self.cores[core]
        return self._core[loop, self.trails[trail][1]]

    def _factor(self, loop: Bight, trail: int, inverse: bool) -> int:
        core = self._core.get((loop, trail))
        if core is None:
            core = self._core[loop, trail] = len(self.cores)
            self.cores.append((loop, trail))
        return 2 * core + inverse
