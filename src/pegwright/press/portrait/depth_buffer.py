"""What a camera sees of round strands, pixel by pixel: which strand, how near, and its surface normal.

Every edge of a strand is a cylinder with a sphere at its start, so bends have no gaps. The depth at a pixel
is exact and the nearest wins (E. Catmull's depth buffer, 1974), so crossings come out as they are in space.
Distances in pixels, the third coordinate towards the viewer.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]

_FINE = 512  # steps of depth to a pixel
_EDGE_BITS = 24
_AT_ONCE = 400_000
_FAR = -(2**62)


class DepthBuffer(NamedTuple):
    """Per pixel (height, width): the visible edge or −1, its depth in px, its unit normal (…, 3)."""

    edge: Ints
    depth: Floats
    normal: npt.NDArray[np.float32]


class Cylinders(NamedTuple):
    """Edges from `start` (n, 3) to `end` (n, 3) with one `radius` (n,) each, all in px."""

    start: Floats
    end: Floats
    radius: Floats


def render_depth(edges: Cylinders, width_px: int, height_px: int) -> DepthBuffer:
    """Return what is visible in every pixel.

    Raises:
        ValueError: there are over 16 million edges, more than an index holds.
    """
    if len(edges.start) >= 1 << _EDGE_BITS:
        raise ValueError("too many strands for one picture")
    nearest = np.full(width_px * height_px, _FAR, dtype=np.int64)
    low = np.floor(np.minimum(edges.start, edges.end)[:, :2] - edges.radius[:, None]).astype(np.int64)
    high = np.ceil(np.maximum(edges.start, edges.end)[:, :2] + edges.radius[:, None]).astype(np.int64)
    span = high - low + 1
    within = (high >= 0).all(axis=1) & (low[:, 0] < width_px) & (low[:, 1] < height_px)
    order = np.flatnonzero(within)
    order = order[np.lexsort((order, span[order, 0], span[order, 1]))]
    at = 0
    while at < len(order):
        first = span[order[at]]
        chunk = order[at : at + max(1, _AT_ONCE // int(first[0] * first[1]))]
        wide, tall = span[chunk].max(axis=0)
        while len(chunk) > 1 and len(chunk) * wide * tall > 2 * _AT_ONCE:
            chunk = chunk[: len(chunk) // 2]
            wide, tall = span[chunk].max(axis=0)
        at += len(chunk)
        x = low[chunk, 0, None, None] + np.arange(wide)[None, None, :]
        y = low[chunk, 1, None, None] + np.arange(tall)[None, :, None]
        depth = _depth(edges, chunk, x, y)
        hit = np.isfinite(depth) & (x >= 0) & (x < width_px) & (y >= 0) & (y < height_px)
        spot = (y * width_px + x)[hit]
        who = np.broadcast_to(chunk[:, None, None], depth.shape)[hit]
        key = (np.rint(depth[hit] * _FINE).astype(np.int64) << _EDGE_BITS) | who
        np.maximum.at(nearest, spot, key)
    found = nearest.reshape(height_px, width_px)
    edge = np.where(found == _FAR, -1, found & ((1 << _EDGE_BITS) - 1))
    depth = np.where(edge < 0, -np.inf, (found >> _EDGE_BITS) / _FINE)
    return DepthBuffer(edge, depth, _normals(edges, edge))


def _depth(edges: Cylinders, chunk: Ints, x: Ints, y: Ints) -> Floats:
    """Return the depth (k, tall, wide) of each edge's surface at each pixel's centre; −∞ where it misses.

    For the cylinder with unit axis d through a, the point a + u with u = (ux, uy, z) lies on the skin where
    |u|² − (u·d)² = r², a quadratic in z whose larger root is seen.
    """
    a, b = edges.start[chunk], edges.end[chunk]
    long = np.linalg.norm(b - a, axis=1)
    d = (b - a) / np.maximum(long, 1e-12)[:, None]
    dx, dy, dz, r = (v[:, None, None] for v in (d[:, 0], d[:, 1], d[:, 2], edges.radius[chunk]))
    ux, uy = x + 0.5 - a[:, 0, None, None], y + 0.5 - a[:, 1, None, None]
    flat = ux * ux + uy * uy - r * r
    along = ux * dx + uy * dy
    steep = np.maximum(1 - dz * dz, 1e-12)
    root = (along * dz) ** 2 - steep * (flat - along * along)
    z = (along * dz + np.sqrt(np.maximum(root, 0.0))) / steep
    at = along + z * dz
    cylinder = np.where((root >= 0) & (at >= 0) & (at <= long[:, None, None]), z, -np.inf)
    ball = np.where(flat <= 0, np.sqrt(np.maximum(-flat, 0.0)), -np.inf)
    return np.asarray(np.maximum(cylinder, ball) + a[:, 2, None, None], dtype=np.float64)


def _normals(edges: Cylinders, edge: Ints) -> npt.NDArray[np.float32]:
    """Return unit normals (height, width, 3), towards the viewer where a pixel is empty."""
    normal = np.zeros((*edge.shape, 3), dtype=np.float32)
    normal[..., 2] = 1.0
    y, x = np.nonzero(edge >= 0)
    which = edge[y, x]
    a, b, r = edges.start[which], edges.end[which], edges.radius[which]
    long = np.linalg.norm(b - a, axis=1)
    d = (b - a) / np.maximum(long, 1e-12)[:, None]
    u = np.column_stack([x + 0.5 - a[:, 0], y + 0.5 - a[:, 1]])
    along = u[:, 0] * d[:, 0] + u[:, 1] * d[:, 1]
    steep = np.maximum(1 - d[:, 2] ** 2, 1e-12)
    flat = (u * u).sum(axis=1) - r * r
    root = (along * d[:, 2]) ** 2 - steep * (flat - along * along)
    z = (along * d[:, 2] + np.sqrt(np.maximum(root, 0.0))) / steep
    at = along + z * d[:, 2]
    cylinder = (root >= 0) & (at >= 0) & (at <= long)
    z = np.where(cylinder, z, np.sqrt(np.maximum(-flat, 0.0)))
    out = np.column_stack([u, z]) - np.where(cylinder, at, 0.0)[:, None] * d
    normal[y, x] = out / np.maximum(np.linalg.norm(out, axis=1), 1e-12)[:, None]
    return normal
