"""The codecs a film can have. A module of its own, because the encoder is slow to import."""

from __future__ import annotations

from importlib.util import find_spec
from typing import Literal

Codec = Literal["vp9", "av1", "h264"]


def can_encode_films() -> bool:
    """Return whether the encoder is installed. The extra `film` brings it: its wheels carry GPL codecs."""
    return find_spec("av") is not None
