"""Runs the line, opens and saves files."""

from pegwright.workshop.demo import Made, demo, example_files
from pegwright.workshop.files import open_pattern, read_bytes, write_whole
from pegwright.workshop.line import Work, lesson, work
from pegwright.workshop.losses import Losses, losses
from pegwright.workshop.progress import Progress, silent
from pegwright.workshop.starter import starter

__all__ = [
    "Losses",
    "Made",
    "Progress",
    "Work",
    "demo",
    "example_files",
    "lesson",
    "losses",
    "open_pattern",
    "read_bytes",
    "silent",
    "starter",
    "work",
    "write_whole",
]
