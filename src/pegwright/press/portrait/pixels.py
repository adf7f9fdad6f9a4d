"""A portrait as a shaded picture (PNG): one light, soft shadows, a darker rim where strands cross.

Deterministic: the same portrait gives the same bytes.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
from scipy.ndimage import gaussian_filter

from pegwright.lesson import Portrait, ViewName
from pegwright.press.portrait.depth_buffer import Cylinders, DepthBuffer, render_depth
from pegwright.press.portrait.legend import draw_legend
from pegwright.press.portrait.tubes import linear_rgb, parse_rgb, point_tints, project, smooth
from pegwright.press.raster.canvas import Placement, paint_on
from pegwright.press.raster.png import Pixels, rgb_png

GROUND = "#e6e9ec"
_FINER = 3.5  # longest edge of a smoothed strand, px
_SAMPLES = 3
_LIGHT = np.array([-0.42, -0.58, 0.70], dtype=np.float32)
_LIGHT /= np.linalg.norm(_LIGHT)
_HALF = _LIGHT + np.array([0.0, 0.0, 1.0], dtype=np.float32)
_HALF /= np.linalg.norm(_HALF)
Lights = npt.NDArray[np.float32]


def portrait_png(
    portrait: Portrait,
    view: ViewName,
    width_px: int = 1600,
    *,
    tension: bool = False,
    bare: bool = False,
    samples: int = _SAMPLES,
) -> bytes:
    """Return one view as PNG (8-bit RGB; ISO/IEC 15948), `width_px` wide.

    `tension` colours by the tension map, with less shading so that colours match the legend. `bare` leaves
    out the scale bar and key. Every pixel is the mean of `samples`² samples in linear light.

    Raises:
        KeyError: the portrait has no such view.
            ValueError: the width is outside 100 to 8000.
    """
    if not 100 <= width_px <= 8000:
        raise ValueError(f"a picture is 100 to 8000 pixels wide, not {width_px}")
    scale = width_px / portrait.camera(view).size_mm[0]
    pixels = portrait_pixels(portrait, view, width_px, tension=tension, samples=samples)
    if not bare:
        strip = draw_legend(portrait, width_px / scale, tension=tension)
        tall = max(1, round(strip.height_mm * scale))
        foot = np.zeros((tall * samples, width_px * samples, 4), np.uint8)
        foot[:] = (*parse_rgb(GROUND), 255)
        paint_on(foot, strip.paints, Placement(0.0, 0.0, scale * samples))
        parts = foot.reshape(tall, samples, width_px, samples, 4)[..., :3]
        pixels = np.concatenate([pixels, np.rint(parts.mean(axis=(1, 3))).astype(np.uint8)])
    return rgb_png(pixels)


def portrait_pixels(
    portrait: Portrait,
    view: ViewName,
    width_px: int,
    ground: str = GROUND,
    *,
    tension: bool = False,
    samples: int = _SAMPLES,
) -> Pixels:
    """Return one view as pixels (height, width, 3), sRGB, on a background of tint `ground`.

    Raises:
        KeyError: the portrait has no such view.
    """
    camera = portrait.camera(view)
    scale = width_px / camera.size_mm[0]
    width, height = width_px, max(1, round(camera.size_mm[1] * scale))
    fine = scale * samples
    starts, ends, radii, colours, gloss = [], [], [], [], []
    for tube in portrait.tubes:
        long = np.linalg.norm(np.diff(np.array(tube.points_mm), axis=0), axis=1).max() * scale
        line = smooth(tube, max(1, min(8, int(np.ceil(long / _FINER)))))
        at = project(line, camera) * fine
        after = np.roll(at, -1, axis=0)
        keep = slice(None) if line.closed else slice(0, -1)
        starts.append(at[keep])
        ends.append(after[keep])
        radii.append(line.radius[keep] * fine)
        tones = {t: linear_rgb(t) for t in set(point_tints(portrait, tube, line, tension=tension))}
        colours.append(np.array([tones[t] for t in point_tints(portrait, tube, line, tension=tension)])[keep])
        gloss.append(np.full(len(at[keep]), {"band": 1.0, "fastener": 1.6, "wrist": 0.0}[tube.kind]))
        if not line.closed and tube.kind != "wrist":  # a ball at the far end as well
            starts.append(at[-1:])
            ends.append(at[-1:])
            radii.append(line.radius[-1:] * fine)
            colours.append(colours[-1][-1:])
            gloss.append(gloss[-1][-1:])
    edges = Cylinders(np.concatenate(starts), np.concatenate(ends), np.concatenate(radii))
    looked = render_depth(edges, width * samples, height * samples)
    colour = np.vstack([np.concatenate(colours), linear_rgb(ground)]).astype(np.float32)[looked.edge]
    shine = np.append(np.concatenate(gloss), 0.0).astype(np.float32)[looked.edge]
    lit = _light(looked, colour, shine, flat=tension)
    shade = _shade(looked, samples, float(np.median(edges.radius)) / samples)
    mean = lit.reshape(height, samples, width, samples, 3).mean(axis=(1, 3))
    return _srgb(mean * shade[..., None])


def _light(looked: DepthBuffer, colour: Lights, shine: Lights, *, flat: bool) -> Lights:
    """Return the linear light (height, width, 3) of everything visible, before shading."""
    n = looked.normal
    falls = np.clip(0.5 + 0.5 * (n @ _LIGHT), 0.0, 1.0) ** 1.6
    diffuse = 0.62 + 0.42 * falls if flat else 0.32 + 0.80 * falls
    rim = 0.45 + 0.55 * np.sqrt(np.clip(n[..., 2], 0.0, 1.0))
    diffuse = np.where(looked.edge >= 0, diffuse * rim, np.float32(1.0))
    bright = np.clip(n @ _HALF, 0.0, 1.0) ** 28 * shine * (0.05 if flat else 0.16)
    return np.asarray(colour * diffuse[..., None] + bright[..., None], dtype=np.float32)


def _shade(looked: DepthBuffer, samples: int, radius: float) -> Lights:
    """Return the share of light (height, width) that occlusion and shadow leave in each pixel.

    A point deeper than its surroundings is darker, and so is one that something nearer hides from the light.
    `radius` (px) is how far that reaches. The background is shaded less, or the piece would seem to float in
    fog.
    """
    rows, columns = (size // samples for size in looked.edge.shape)
    parts = looked.depth.reshape(rows, samples, columns, samples) / samples
    cover = np.isfinite(parts).mean(axis=(1, 3))
    # The deepest sample of a pixel, so that at a crossing the upper strand gets a dark rim, not a bright one.
    depth = np.where(np.isfinite(parts), parts, np.inf).min(axis=(1, 3))
    lowest = float(depth[cover > 0].min()) if cover.any() else 0.0
    depth = np.where(cover > 0, depth, lowest - 0.4 * radius).astype(np.float32)
    left = np.ones_like(depth)
    for size, share in ((0.5, 0.30), (1.3, 0.38), (3.0, 0.22)):
        deeper = (gaussian_filter(depth, size * radius, truncate=2.5) - depth) / (1.6 * radius)
        left *= 1 - share * np.clip(deeper, 0.0, 1.0)
    blocked = np.zeros_like(depth)
    for i in range(1, 15):
        far = i / 14 * 4.0 * radius
        dx, dy = (round(float(v / _LIGHT[2]) * far) for v in _LIGHT[:2])
        blocked = np.maximum(
            blocked, np.clip((_shift(depth, dx, dy) - depth - far) / (0.5 * radius), 0.0, 1.0)
        )
    shadow = 1 - 0.42 * gaussian_filter(blocked, 0.4 * radius, truncate=2.5)
    on_piece, on_ground = left * shadow, (0.5 + 0.5 * left) * (0.3 + 0.7 * shadow)
    return np.asarray(on_ground + (on_piece - on_ground) * cover, dtype=np.float32)


def _shift(values: Lights, dx: int, dy: int) -> Lights:
    """Return the values (dx, dy) pixels away from each pixel, with the border repeated."""
    h, w = values.shape
    rows = np.clip(np.arange(h) + dy, 0, h - 1)
    columns = np.clip(np.arange(w) + dx, 0, w - 1)
    return values[rows][:, columns]


def _srgb(light: Lights) -> Pixels:
    v = np.clip(light, 0.0, 1.0)
    v = np.where(v <= 0.0031308, 12.92 * v, 1.055 * v ** (1 / 2.4) - 0.055)
    return np.rint(v * 255).astype(np.uint8)
