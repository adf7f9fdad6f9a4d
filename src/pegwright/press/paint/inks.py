"""Inks, and the tints mixed from them."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.lesson import luminance


class Inks(NamedTuple):
    """The colours of everything but bands. `bands` says whether bands keep their tints or turn grey."""

    ground: str = "#faf7f0"
    graphite: str = "#2e3338"
    soft: str = "#888a8c"
    name: str = "#5c6166"
    accent: str = "#a83f2a"
    steel: str = "#c9d3d9"
    bands: bool = True

    def tint(self, tint: str) -> str:
        """Return the tint as printed: itself or, in grey, one of three greys by its luminance."""
        if self.bands:
            return tint
        light = luminance(tint)
        return "#ffffff" if light > 0.5 else "#c4c4c4" if light > 0.12 else "#3c3c3c"


COLOUR = Inks()


GREY = Inks("#ffffff", "#000000", "#8a8a8a", "#4a4a4a", "#000000", "#ffffff", bands=False)


def pattern_tint(tint: str, inks: Inks) -> str:
    """Return a tint for a pattern that shows up on the tint of a band."""
    return "#ffffff" if luminance(tint) < 0.18 else "#1c1f22" if inks.bands else "#000000"


def mix_tints(a: str, b: str, share: float) -> str:
    """Mix two tints; `share` (0 to 1) is the part of the first."""
    pairs = [(int(a[i : i + 2], 16), int(b[i : i + 2], 16)) for i in (1, 3, 5)]
    return "#" + "".join(f"{round(share * p + (1 - share) * q):02x}" for p, q in pairs)
