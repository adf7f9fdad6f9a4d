"""Runs the line, opens and saves files."""

from pegwright.workshop.demo import Made, demo, example_files
from pegwright.workshop.files import open_pattern, read_bytes, write_whole
from pegwright.workshop.folder import write_into
from pegwright.workshop.lessons import FilmOrder, Order, Piece, Taught, edited, pressed, teach
from pegwright.workshop.line import Work, lesson, work
from pegwright.workshop.losses import Losses, losses
from pegwright.workshop.progress import Progress, silent
from pegwright.workshop.rehearse import kept_folder, rehearsed, weights_from
from pegwright.workshop.starter import starter

__all__ = [
    "FilmOrder",
    "Losses",
    "Made",
    "Order",
    "Piece",
    "Progress",
    "Taught",
    "Work",
    "demo",
    "edited",
    "example_files",
    "kept_folder",
    "lesson",
    "losses",
    "open_pattern",
    "pressed",
    "read_bytes",
    "rehearsed",
    "silent",
    "starter",
    "teach",
    "weights_from",
    "work",
    "write_into",
    "write_whole",
]
