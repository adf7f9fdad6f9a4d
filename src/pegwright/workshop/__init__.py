"""Runs the line, opens and saves files.

What only opens and saves is there at once; what runs the line is loaded when it is first asked for, so that
a command that needs none of it starts without it.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from pegwright.workshop.files import open_pattern, read_bytes, write_whole
from pegwright.workshop.folder import write_into
from pegwright.workshop.progress import Progress, silent
from pegwright.workshop.starter import starter

if TYPE_CHECKING:
    from pegwright.press import Codec, Edition
    from pegwright.workshop.demo import Made, demo, example_files
    from pegwright.workshop.lessons import (
        FilmOrder,
        Order,
        Piece,
        Taught,
        edited,
        pressed,
        teach,
    )
    from pegwright.workshop.line import Work, lesson, work
    from pegwright.workshop.losses import Losses, losses
    from pegwright.workshop.pictures import Picture, PictureOrder, Pictures, pictures
    from pegwright.workshop.rehearse import rehearsed, weights_from
    from pegwright.workshop.wrong_piece import Beside, beside

__all__ = [
    "Beside",
    "Codec",
    "Edition",
    "FilmOrder",
    "Losses",
    "Made",
    "Order",
    "Picture",
    "PictureOrder",
    "Pictures",
    "Piece",
    "Progress",
    "Taught",
    "Work",
    "beside",
    "demo",
    "edited",
    "example_files",
    "lesson",
    "losses",
    "open_pattern",
    "pictures",
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

_LATER = {
    "demo": ("Made", "demo", "example_files"),
    "lessons": ("Codec", "Edition", "FilmOrder", "Order", "Piece", "Taught", "edited", "pressed", "teach"),
    "line": ("Work", "lesson", "work"),
    "losses": ("Losses", "losses"),
    "pictures": ("Picture", "PictureOrder", "Pictures", "pictures"),
    "rehearse": ("rehearsed", "weights_from"),
    "wrong_piece": ("Beside", "beside"),
}


def __getattr__(name: str) -> Any:
    """Load a name of the line when it is first asked for (PEP 562).

    All names of its module are set at once: a module may be called like a function in it.
    """
    for module, names in _LATER.items():
        if name in names:
            loaded = import_module(f"{__name__}.{module}")
            globals().update({each: getattr(loaded, each) for each in names})
            return globals()[name]
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
