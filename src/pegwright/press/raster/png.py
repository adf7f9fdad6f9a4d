"""Encode pixels as PNG (ISO/IEC 15948); the same pixels give the same bytes."""

from __future__ import annotations

import struct
import zlib

import numpy as np
from numpy.typing import NDArray

Pixels = NDArray[np.uint8]


def rgba_png(pixels: Pixels) -> bytes:
    """Return a canvas as PNG (8-bit RGBA, alpha not premultiplied)."""
    plain = pixels.copy()
    edge = (pixels[:, :, 3] > 0) & (pixels[:, :, 3] < 255)
    seen = pixels[edge][:, 3:].astype(np.uint16)
    plain[edge, :3] = np.minimum(255, (pixels[edge][:, :3].astype(np.uint16) * 255 + seen // 2) // seen)
    height, width = plain.shape[:2]
    # Every row takes the filter “up”: a row like the one above becomes zeros.
    rows = np.zeros((height, 1 + 4 * width), np.uint8)
    rows[:, 0] = 2
    flat = plain.reshape(height, 4 * width)
    rows[0, 1:] = flat[0]
    rows[1:, 1:] = flat[1:] - flat[:-1]
    header = struct.pack(">IIBBBBB", width, height, 8, 6, 0, 0, 0)
    return _png_file(header, zlib.compress(rows.tobytes(), 4))


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
