"""How far apart colours look, for thousands at once: CIEDE2000, and as other eyes see them.

CIEDE2000 after Sharma, Wu and Dalal (2005), with all weights 1. CIELAB has the white point D65. Colour-vision
deficiency is simulated at full severity with the matrices of Machado, Oliveira and Fernandes (2009), in
linear light, clipped to what a screen can show.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import numpy.typing as npt

__all__ = [
    "SIGHTS",
    "Floats",
    "colour_distances",
    "encode_srgb",
    "lab_of_linear",
    "linear_of_srgb",
    "linear_of_tints",
    "simulate_sight",
]

Floats = npt.NDArray[np.float64]

_XYZ = np.array(  # linear sRGB to XYZ, IEC 61966-2-1
    [
        [0.4123907992659595, 0.35758433938387796, 0.1804807884018343],
        [0.21263900587151036, 0.7151686787677559, 0.07219231536073371],
        [0.01933081871559185, 0.11919477979462599, 0.9505321522496606],
    ]
)
_WHITE = np.array([0.3127 / 0.3290, 1.0, (1 - 0.3127 - 0.3290) / 0.3290])

SIGHTS: dict[str, Floats] = {
    "everybody": np.eye(3),
    "protan": np.array(
        [
            [0.152286, 1.052583, -0.204868],
            [0.114503, 0.786281, 0.099216],
            [-0.003882, -0.048116, 1.051998],
        ]
    ),
    "deutan": np.array(
        [
            [0.367322, 0.860646, -0.227968],
            [0.280085, 0.672501, 0.047413],
            [-0.011820, 0.042940, 0.968881],
        ]
    ),
    "tritan": np.array(
        [
            [1.255528, -0.076749, -0.178779],
            [-0.078411, 0.930809, 0.147602],
            [0.004733, 0.691367, 0.303900],
        ]
    ),
}
"""The matrix of each kind of sight on linear sRGB: Machado et al. 2009, table 1, severity 1.0."""


def linear_of_srgb(srgb: npt.ArrayLike) -> Floats:
    """Return linear light, 0 to 1, of sRGB values 0 to 1 of any shape (IEC 61966-2-1)."""
    given = np.asarray(srgb, dtype=np.float64)
    return np.where(given <= 0.04045, given / 12.92, ((np.maximum(given, 0.0) + 0.055) / 1.055) ** 2.4)


def encode_srgb(linear: npt.ArrayLike) -> Floats:
    """Return sRGB values 0 to 1 of linear light of any shape; what is outside 0 to 1 is clipped."""
    light = np.clip(np.asarray(linear, dtype=np.float64), 0.0, 1.0)
    return np.where(light <= 0.0031308, light * 12.92, 1.055 * light ** (1 / 2.4) - 0.055)


def linear_of_tints(tints: Iterable[str]) -> Floats:
    """Return the linear light of tints (#rrggbb), shape (n, 3)."""
    bytes_ = [[int(tint[at : at + 2], 16) for at in (1, 3, 5)] for tint in tints]
    return linear_of_srgb(np.array(bytes_, dtype=np.float64).reshape(-1, 3) / 255)


def lab_of_linear(linear: Floats) -> Floats:
    """Return CIELAB (D65) of linear sRGB, shape (…, 3)."""
    xyz = (linear @ _XYZ.T) / _WHITE
    low = (24389 / 27 * xyz + 16) / 116
    f = np.where(xyz > 216 / 24389, np.cbrt(xyz), low)
    return np.stack(
        (116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])), axis=-1
    )


def simulate_sight(linear: Floats, sight: str) -> Floats:
    """Return linear sRGB, shape (…, 3), as a kind of sight of `SIGHTS` sees it."""
    return linear if sight == "everybody" else np.clip(linear @ SIGHTS[sight].T, 0.0, 1.0)


def colour_distances(one: Floats, other: Floats) -> Floats:
    """Return the CIEDE2000 distances of CIELAB colours; shapes (…, 3) broadcast against each other."""
    l1, a1, b1 = np.moveaxis(one, -1, 0)
    l2, a2, b2 = np.moveaxis(other, -1, 0)
    chroma7 = ((np.hypot(a1, b1) + np.hypot(a2, b2)) / 2) ** 7
    stretch = 1 + 0.5 * (1 - np.sqrt(chroma7 / (chroma7 + 25.0**7)))
    a1, a2 = a1 * stretch, a2 * stretch
    c1, c2 = np.hypot(a1, b1), np.hypot(a2, b2)
    h1, h2 = np.degrees(np.arctan2(b1, a1)) % 360, np.degrees(np.arctan2(b2, a2)) % 360
    grey = c1 * c2 == 0
    turn = h2 - h1
    turn = np.where(turn > 180, turn - 360, np.where(turn < -180, turn + 360, turn))
    turn = np.where(grey, 0.0, turn)
    hue = 2 * np.sqrt(c1 * c2) * np.sin(np.radians(turn) / 2)
    light, chroma = (l1 + l2) / 2, (c1 + c2) / 2
    total = h1 + h2
    wide = np.abs(h1 - h2) > 180
    mean = np.where(wide, np.where(total < 360, total + 360, total - 360), total) / 2
    mean = np.where(grey, total, mean)
    t = (
        1
        - 0.17 * np.cos(np.radians(mean - 30))
        + 0.24 * np.cos(np.radians(2 * mean))
        + 0.32 * np.cos(np.radians(3 * mean + 6))
        - 0.20 * np.cos(np.radians(4 * mean - 63))
    )
    off = (light - 50) ** 2
    by_light = (l2 - l1) / (1 + 0.015 * off / np.sqrt(20 + off))
    by_chroma = (c2 - c1) / (1 + 0.045 * chroma)
    by_hue = hue / (1 + 0.015 * chroma * t)
    seven = chroma**7
    turned = (
        -np.sin(np.radians(60 * np.exp(-(((mean - 275) / 25) ** 2)))) * 2 * np.sqrt(seven / (seven + 25.0**7))
    )
    square = by_light**2 + by_chroma**2 + by_hue**2 + turned * by_chroma * by_hue
    return np.asarray(np.sqrt(np.maximum(square, 0.0)))
