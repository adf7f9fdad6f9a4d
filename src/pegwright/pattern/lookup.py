"""Colours, kinds of band and motifs by their names. Where a name is given twice, the first one counts."""

from __future__ import annotations

from pegwright.pattern.document import BandType, Colour, Motif, Pattern

__all__ = ["band_types_by_letter", "colours_by_letter", "motifs_by_name"]


def colours_by_letter(pattern: Pattern) -> dict[str, Colour]:
    """Return the listed colours by letter."""
    return {colour.letter: colour for colour in reversed(pattern.colours)}


def band_types_by_letter(pattern: Pattern) -> dict[str, BandType | None]:
    """Return each listed letter's kind of band, None where that kind is not listed."""
    kinds = {kind.name: kind for kind in reversed(pattern.bands)}
    return {letter: kinds.get(colour.band) for letter, colour in colours_by_letter(pattern).items()}


def motifs_by_name(pattern: Pattern) -> dict[str, Motif]:
    """Return the motifs by name."""
    return {motif.name: motif for motif in reversed(pattern.motifs)}
