from .crossings import (
    PlanPoint as PlanPoint,
    find_bands_across as find_bands_across,
)
from .curves import (
    Curves as Curves,
    Positions as Positions,
    strand_curves as strand_curves,
)
from .link_words import (
    Fastening as Fastening,
    Structure as Structure,
    structure_of as structure_of,
)

__all__ = [
    "Curves",
    "Fastening",
    "PlanPoint",
    "Positions",
    "Structure",
    "find_bands_across",
    "strand_curves",
    "structure_of",
]
