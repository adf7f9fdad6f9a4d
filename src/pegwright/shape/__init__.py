"""Where the bands come to rest: elastic rods in contact."""

from pegwright.shape.hold import Dressing, Hold, Pull, Tie, wrap
from pegwright.shape.newton import Goal
from pegwright.shape.piece import Certified, Handling, Kind, Piece, piece_at_rest
from pegwright.shape.relax import Progress, Relaxed, relax
from pegwright.shape.rods import Band
from pegwright.shape.rubber import Rubber, mooney_rivlin, neo_hookean, yeoh

__all__ = [
    "Band",
    "Certified",
    "Dressing",
    "Goal",
    "Handling",
    "Hold",
    "Kind",
    "Piece",
    "Progress",
    "Pull",
    "Relaxed",
    "Rubber",
    "Tie",
    "mooney_rivlin",
    "neo_hookean",
    "piece_at_rest",
    "relax",
    "wrap",
    "yeoh",
]
