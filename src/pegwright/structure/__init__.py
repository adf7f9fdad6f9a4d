"""The made thing: what passes through what, and where each strand runs."""

from pegwright.structure.words import Fastening, Structure, structure_of

__all__ = ["Fastening", "Structure", "structure_of"]
