"""The atlas as it was measured last, kept with the program, for those who cannot wait for a new one.

`python -m pegwright.workshop.measured_techniques ATLAS` keeps the numbers and small pictures of a folder that
`pegwright atlas` made.
"""

from __future__ import annotations

import io
import sys
from functools import cache
from pathlib import Path

import msgspec
from PIL import Image

from pegwright.variants import TECHNIQUES
from pegwright.workshop.atlas import kept_swatches
from pegwright.workshop.files import replace_file
from pegwright.workshop.swatches import SwatchMeasures

__all__ = ["MeasuredTechnique", "keep_atlas", "load_measured_techniques"]

_FILE = Path(__file__).parent / "measured_techniques.json"
_PICTURE_PX = 200
_TONES = 48


class MeasuredTechnique(msgspec.Struct, frozen=True, kw_only=True):
    """A technique's measures, and a small picture (PNG) of its swatch at rest."""

    measures: SwatchMeasures
    picture: bytes


@cache
def load_measured_techniques() -> tuple[MeasuredTechnique, ...]:
    """Return the techniques of the atlas as they were measured last, those that the program still has."""
    known = msgspec.json.decode(_FILE.read_bytes(), type=tuple[MeasuredTechnique, ...])
    return tuple(one for one in known if one.measures.name in TECHNIQUES)


def keep_atlas(folder: Path) -> None:
    """Keep what an atlas measured in the program's own file.

    Raises:
        OSError: there is no whole atlas in the folder, or the file cannot be written.
    """
    kept = [
        MeasuredTechnique(measures=one.measures, picture=_small(one.picture)) for one in kept_swatches(folder)
    ]
    lines = b",\n".join(msgspec.json.encode(one) for one in kept)
    replace_file(_FILE, b"[\n" + lines + b"\n]\n")


def _small(picture: bytes) -> bytes:
    image = Image.open(io.BytesIO(picture)).convert("RGB")
    image.thumbnail((_PICTURE_PX, _PICTURE_PX))
    into = io.BytesIO()
    image.quantize(_TONES).save(into, "PNG", optimize=True)
    return into.getvalue()


if __name__ == "__main__":
    keep_atlas(Path(sys.argv[1]))
