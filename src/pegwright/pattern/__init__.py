"""The document: frozen nouns, reading, writing, migrating, motifs and repeats."""

from pegwright.pattern.build import Maker
from pegwright.pattern.document import VERSION, BandType, Colour, Motif, Pattern, Stated
from pegwright.pattern.expand import MOST_PEGS, Doing, Expansion, expand
from pegwright.pattern.layout import Joined, Layout, Peg, PegAt, Pegs, Round, Rows, peg_count, pegs
from pegwright.pattern.moves import (
    AnyStep,
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Repeat,
    Slide,
    Transfer,
    Turn,
    Use,
    Wind,
)
from pegwright.pattern.read import Reading, read
from pegwright.pattern.write import schema, write

__all__ = [
    "MOST_PEGS",
    "VERSION",
    "AnyStep",
    "BandType",
    "Bind",
    "Clip",
    "Colour",
    "Doing",
    "Expansion",
    "Extend",
    "Hang",
    "Hook",
    "Joined",
    "Knot",
    "Layout",
    "Lift",
    "Maker",
    "Motif",
    "Move",
    "Pattern",
    "Peg",
    "PegAt",
    "Pegs",
    "Place",
    "Reading",
    "Repeat",
    "Round",
    "Rows",
    "Slide",
    "Stated",
    "Transfer",
    "Turn",
    "Use",
    "Wind",
    "expand",
    "peg_count",
    "pegs",
    "read",
    "schema",
    "write",
]
