"""How a film is encoded. Apart, because the encoder itself takes long to load."""

from __future__ import annotations

from importlib.util import find_spec
from typing import Literal

Codec = Literal["vp9", "av1", "h264"]


def can_encode_films() -> bool:
    """Say whether the encoder is installed: the extra `film` brings it, for its wheels carry GPL coders."""
    return find_spec("av") is not None
