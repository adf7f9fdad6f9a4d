"""Design elastic-band pieces on a peg loom, prove that they hold, and teach them."""

__version__ = "0.1.0"
