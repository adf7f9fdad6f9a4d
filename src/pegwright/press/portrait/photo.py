"""A photo-like picture of a portrait: light traced round the tubes by an optional renderer.

Needs the extra `photo` (mitsuba, BSD). Deterministic: one seed, the scalar variant, a fixed number of
samples.
"""

from __future__ import annotations

from typing import Any, cast

import numpy as np

from pegwright.lesson import Portrait, Tube, ViewName
from pegwright.press.portrait.tubes import linear_rgb, smooth, tube_mesh
from pegwright.press.raster.png import Pixels, rgb_png

_SIDES = 16
_BACKDROP = "#f1efe9"


class RendererMissingError(Exception):
    """The renderer is not installed."""

    def __str__(self) -> str:
        return "photo-like pictures need the renderer: pip install 'pegwright[photo]'"


def portrait_photo(portrait: Portrait, view: ViewName, width_px: int = 1200, *, samples: int = 32) -> bytes:
    """Return one view as PNG (8-bit RGB), `width_px` wide, with `samples` light paths a pixel.

    Raises:
        RendererMissingError: the extra `photo` is not installed.
        KeyError: the portrait has no such view.
        ValueError: the width is outside 100 to 4000, or `samples` outside 1 to 4096.
    """
    if not (100 <= width_px <= 4000 and 1 <= samples <= 4096):
        raise ValueError("a photo is 100 to 4000 pixels wide and takes 1 to 4096 samples")
    try:
        import mitsuba  # noqa: PLC0415 - large and optional
    except ImportError as error:
        raise RendererMissingError from error
    mitsuba.set_variant("scalar_rgb")
    scene = mitsuba.load_dict(_scene(mitsuba, portrait, view, width_px, samples))
    image = mitsuba.render(scene, seed=cast(Any, 1))
    bitmap = mitsuba.Bitmap(image).convert(
        mitsuba.Bitmap.PixelFormat.RGB, mitsuba.Struct.Type.UInt8, srgb_gamma=True
    )
    pixels: Pixels = np.array(bitmap, dtype=np.uint8)
    return rgb_png(pixels)


def _scene(mitsuba: Any, portrait: Portrait, view: ViewName, width_px: int, samples: int) -> dict[str, Any]:
    camera = portrait.camera(view)
    wide, tall = camera.size_mm
    right, up = np.array(camera.right), np.array(camera.up)
    toward = np.cross(right, up)
    left, bottom, _, top = camera.window_mm
    middle = (left + wide / 2) * right + (bottom + top) / 2 * up
    every = np.concatenate(
        [np.array(t.points_mm) - np.array(t.radius_mm)[:, None] * toward for t in portrait.tubes]
    )
    floor = float((every @ toward).min())
    at = middle + floor * toward
    reach = 4 * max(wide, tall)
    look = mitsuba.ScalarTransform4f
    # An orthographic sensor spans −1 to 1 across its width.
    sensor = look().look_at(origin=list(at + reach * toward), target=list(at), up=list(up)) @ look().scale(
        [wide / 2, wide / 2, 1.0]
    )
    ground = look().look_at(origin=list(at - 0.05 * toward), target=list(at + toward), up=list(up))
    lamp = at + reach * (0.9 * toward - 0.7 * right + 0.8 * up)
    found: dict[str, Any] = {
        "type": "scene",
        "integrator": {"type": "path", "max_depth": 5},
        "sensor": {
            "type": "orthographic",
            "near_clip": 0.01,
            "far_clip": 3 * reach,
            "to_world": sensor,
            "film": {
                "type": "hdrfilm",
                "width": width_px,
                "height": max(1, round(width_px * tall / wide)),
                "rfilter": {"type": "gaussian"},
            },
            "sampler": {"type": "independent", "sample_count": samples},
        },
        "sky": {"type": "constant", "radiance": {"type": "rgb", "value": 0.45}},
        "lamp": {
            "type": "rectangle",
            "to_world": look().look_at(origin=list(lamp), target=list(at), up=list(up))
            @ look().scale([0.35 * reach] * 3),
            "emitter": {"type": "area", "radiance": {"type": "rgb", "value": 6.0}},
        },
        "ground": {
            "type": "rectangle",
            "to_world": ground @ look().scale([reach, reach, 1.0]),
            "bsdf": _matt(_BACKDROP),
        },
    }
    for i, tube in enumerate(portrait.tubes):
        found[f"tube{i}"] = _tube(mitsuba, tube, f"tube{i}")
    return found


def _matt(tint: str) -> dict[str, Any]:
    return {"type": "diffuse", "reflectance": {"type": "rgb", "value": linear_rgb(tint).tolist()}}


def _skin(tube: Tube) -> dict[str, Any]:
    """Return the material of a strand: rubber has a soft gloss, a clip a hard one, the arm none."""
    if tube.kind == "wrist":
        return _matt(tube.tint)
    return {
        "type": "principled",
        "base_color": {"type": "rgb", "value": linear_rgb(tube.tint).tolist()},
        "roughness": 0.32 if tube.kind == "band" else 0.2,
        "metallic": 0.0 if tube.kind == "band" else 0.7,
        "specular": 0.5,
    }


def _tube(mitsuba: Any, tube: Tube, name: str) -> Any:
    skin = tube_mesh(smooth(tube, 2), 96 if tube.kind == "wrist" else _SIDES)
    properties = mitsuba.Properties()
    properties["bsdf"] = mitsuba.load_dict(_skin(tube))
    made = mitsuba.Mesh(
        name, len(skin.corners), len(skin.triangles), has_vertex_normals=True, props=properties
    )
    values = mitsuba.traverse(made)
    values["vertex_positions"] = skin.corners.astype(np.float32).ravel()
    values["vertex_normals"] = skin.normals.astype(np.float32).ravel()
    values["faces"] = skin.triangles.astype(np.uint32).ravel()
    values.update()
    return made
