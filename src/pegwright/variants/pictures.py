"""Read a picture of any usual kind into linear light; whatever is wrong with it is a finding.

Pillow reads the file, turned as its camera says (Exif orientation). Colour profiles are not applied: values
are taken as sRGB. Of an animation the first frame is taken. Clear parts are seen on white.
"""

from __future__ import annotations

import io
import warnings
from typing import NamedTuple

import numpy as np
from PIL import Image, ImageOps, UnidentifiedImageError

from pegwright.finding import Finding, finding, phrase
from pegwright.variants.colour_distance import Floats, linear_of_srgb

__all__ = ["PictureReading", "SourcePicture", "read_picture"]

FORMATS = ("PNG", "JPEG", "WEBP", "GIF", "BMP", "TIFF")
MOST_BYTES = 100 * 2**20
MOST_DOTS = 150_000_000
_LONGEST = 1600  # dots; a finer picture tells no cell of a mat more
_CLEAR = 0.02  # less alpha than this is nothing to see
_UNSEEN = 0.001  # fewer clear parts than this share are not worth a word


class SourcePicture(NamedTuple):
    """A picture in linear light on white, shape (height, width, 3), from 0 to 1, its top row first."""

    linear: Floats


class PictureReading(NamedTuple):
    """The picture, or None, and the findings."""

    picture: SourcePicture | None
    findings: tuple[Finding, ...]


def read_picture(data: bytes) -> PictureReading:
    """Read the bytes of a picture. Never raises on bad input."""
    if not data:
        return PictureReading(None, (finding("picture-unreadable", reason=phrase("picture-empty")),))
    if len(data) > MOST_BYTES:
        return PictureReading(None, (finding("picture-too-large", limit=MOST_DOTS // 1_000_000),))
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # what Pillow would print about odd metadata
            return _read(data)
    except Image.DecompressionBombError:
        return PictureReading(None, (finding("picture-too-large", limit=MOST_DOTS // 1_000_000),))
    except UnidentifiedImageError:
        reason = phrase("picture-unknown-kind", known=FORMATS)
    except (OSError, ValueError, TypeError, SyntaxError, EOFError, ArithmeticError, LookupError, MemoryError):
        # A damaged file makes the decoders raise whatever they come upon.
        reason = phrase("picture-damaged")
    return PictureReading(None, (finding("picture-unreadable", reason=reason),))


def _read(data: bytes) -> PictureReading:
    found: list[Finding] = []
    with Image.open(io.BytesIO(data), formats=FORMATS) as file:
        if file.width * file.height > MOST_DOTS:
            return PictureReading(None, (finding("picture-too-large", limit=MOST_DOTS // 1_000_000),))
        frames = int(getattr(file, "n_frames", 1))
        if frames > 1:
            found.append(finding("picture-moves", frames=frames))
        if file.format == "JPEG":
            file.draft("RGB", (_LONGEST, _LONGEST))  # decodes at a fraction of the size, at least this large
        image: Image.Image = ImageOps.exif_transpose(file) or file
        image.load()
        srgb, alpha = _dots(_shrink(image))
    if alpha.max() < _CLEAR:
        return PictureReading(None, (*found, finding("picture-all-clear")))
    clear = float(np.mean(alpha < 1 - _CLEAR))
    if clear > _UNSEEN:
        found.append(finding("picture-clear-parts", share=round(100 * clear)))
    linear = linear_of_srgb(srgb) * alpha[..., None] + (1 - alpha[..., None])
    return PictureReading(SourcePicture(linear), tuple(found))


def _shrink(image: Image.Image) -> Image.Image:
    """Return the picture with its longer side at most about `_LONGEST` dots."""
    times = max(image.width, image.height) // _LONGEST
    deep = image.mode.startswith(("I", "F")) or image.mode in ("P", "1")
    return image if times < 2 or deep else image.reduce(times)


def _dots(image: Image.Image) -> tuple[Floats, Floats]:
    """Return sRGB values, shape (h, w, 3), and opacity, shape (h, w), both 0 to 1."""
    if image.mode.startswith(("I", "F")):  # 16 bits and more, which a conversion would clip
        deep = np.asarray(image, dtype=np.float64)
        grey = np.clip(deep / (65535.0 if deep.max() > 255 else 255.0), 0.0, 1.0)
        return np.repeat(grey[..., None], 3, axis=2), np.ones_like(grey)
    rgba = np.asarray(image.convert("RGBA"), dtype=np.float64) / 255
    return rgba[..., :3], rgba[..., 3]
