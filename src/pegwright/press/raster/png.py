"""Encode pixels as PNG (ISO/IEC 15948); the same pixels give the same bytes."""

from __future__ import annotations

import struct
import zlib

import numpy as np
from numpy.typing import NDArray

Pixels = NDArray[np.uint8]


def rgba_png(pixels: Pixels) -> bytes:
    """Return a canvas as PNG (8-bit RGBA, alpha not premultiplied)."""
    height, width = pixels.shape[:2]
    # Every row takes the filter “up”: a row like the one above becomes zeros.
    rows = np.zeros((height, 1 + 4 * width), np.uint8)
    rows[:, 0] = 2
    box = _inked_box(pixels)
    if box is not None:  # what is transparent round it stays zeros
        top, bottom, left, right = box
        plain = _divide_by_alpha(pixels[top:bottom, left:right])
        lines = rows[top : bottom + 1, 1 + 4 * left : 1 + 4 * right]
        flat = plain.reshape(bottom - top, -1)
        lines[: bottom - top] = flat
        lines[1:] -= flat[: len(lines) - 1]
    header = struct.pack(">IIBBBBB", width, height, 8, 6, 0, 0, 0)
    return _png_file(header, zlib.compress(rows.data, 4))


def _inked_box(pixels: Pixels) -> tuple[int, int, int, int] | None:
    """Return the first and last row and column with anything on it, the last ones not included; or None."""
    alpha = pixels[:, :, 3]
    rows = np.flatnonzero(alpha.any(axis=1))
    if not rows.size:
        return None
    columns = np.flatnonzero(alpha[rows[0] : rows[-1] + 1].any(axis=0))
    return int(rows[0]), int(rows[-1]) + 1, int(columns[0]), int(columns[-1]) + 1


def _divide_by_alpha(pixels: Pixels) -> Pixels:
    plain = pixels.copy()
    where = np.nonzero((pixels[:, :, 3] > 0) & (pixels[:, :, 3] < 255))
    some = pixels[where].astype(np.uint16)
    alpha = some[:, 3:]
    plain[where[0], where[1], :3] = np.minimum(255, (some[:, :3] * 255 + alpha // 2) // alpha)
    return plain


def rgb_png(pixels: Pixels) -> bytes:
    """Return pixels (height, width, 3) as PNG. Each row takes the filter with the smallest differences."""
    height, width = pixels.shape[:2]
    here = pixels.reshape(height, -1).astype(np.int16)
    up = np.vstack([np.zeros_like(here[:1]), here[:-1]])
    left = np.hstack([np.zeros((height, 3), np.int16), here[:, :-3]])
    corner = np.hstack([np.zeros((height, 3), np.int16), up[:, :-3]])
    guess = left + up - corner
    a, b, c = abs(guess - left), abs(guess - up), abs(guess - corner)
    paeth = np.where((a <= b) & (a <= c), left, np.where(b <= c, up, corner))
    tried = [(here - before).astype(np.uint8) for before in (0, left, up, (left + up) >> 1, paeth)]
    cost = [np.minimum(one, 256 - one.astype(np.int32)).sum(axis=1) for one in tried]
    best = np.argmin(cost, axis=0)
    rows = np.hstack([best[:, None].astype(np.uint8), np.stack(tried)[best, np.arange(height)]])
    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return _png_file(header, zlib.compress(rows.tobytes(), 9))


def _png_file(header: bytes, data: bytes) -> bytes:
    chunks = ((b"IHDR", header), (b"IDAT", data), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in chunks
    )
