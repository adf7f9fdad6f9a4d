"""Pictures of the piece at rest, read back by independent readers; overs and unders on a known crossing."""

from __future__ import annotations

import io
import xml.etree.ElementTree as ET
from itertools import pairwise

import numpy as np
import png
import pygltflib
import pytest
import resvg_py
import trimesh
import wcag_contrast_ratio
from coloraide import Color

from pegwright.finding import RefusedError
from pegwright.lesson.scene.palette import SIGHTS, colour_distance
from pegwright.lesson.scene.portrait import RAMP, PortraitStrand, make_portrait
from pegwright.press import portrait_glb, portrait_photo, portrait_png, portrait_svg
from pegwright.press.portrait.depth_buffer import Cylinders, render_depth

RED, BLUE = "#c02020", "#2040c0"


def ring(x, r, tilt):
    """A ring in the plan, its right half raised and its left half lowered by `tilt` mm."""
    turn = np.linspace(0, 2 * np.pi, 48, endpoint=False)
    return np.column_stack([x + r * np.cos(turn), r * np.sin(turn), tilt * np.sin(turn)])


def linked():
    """Two rings; red lies over blue at the upper crossing and under it at the lower one."""
    strands = [
        PortraitStrand("band", 1, "R", ring(-4.0, 8.0, 1.5), 0.75, np.linspace(0, 0.42, 48)),
        PortraitStrand("band", 2, "B", ring(4.0, 8.0, -1.5), 0.75, 0.1),
    ]
    return make_portrait("Two rings", strands, colourway={"R": RED, "B": BLUE})


def pixels_of(data):
    width, height, rows, info = png.Reader(bytes=data).read()
    assert info["planes"] == 3
    assert info["bitdepth"] == 8
    return np.vstack([np.array(row, dtype=np.uint8) for row in rows]).reshape(height, width, 3)


def at(pixels, camera, x, y):
    left, _, _, top = camera.window_mm
    scale = pixels.shape[1] / camera.size_mm[0]
    return pixels[int((top - y) * scale), int((x - left) * scale)].astype(int)


def redder(colour):
    return colour[0] > colour[2]


CROSSING = 8.0 * np.sin(np.arccos(4.0 / 8.0))  # where the two circles meet, x = 0


@pytest.mark.parametrize("tension", [False, True])
def test_png_is_read_back_and_the_same_every_time(tension):
    shown = linked()
    data = portrait_png(shown, "front", 300, tension=tension)
    assert pixels_of(data).shape[1] == 300
    assert data == portrait_png(linked(), "front", 300, tension=tension)


def painted(shown, view, painter):
    if painter == "png":
        return pixels_of(portrait_png(shown, view, 500, bare=True))
    svg = portrait_svg(shown, view, bare=True)
    data = bytes(resvg_py.svg_to_bytes(svg_string=svg, width=500, dpi=96))
    width, height, rows, _ = png.Reader(bytes=data).asRGBA8()
    pixels = np.vstack([np.array(row, dtype=np.uint8) for row in rows])
    return pixels.reshape(height, width, 4)[:, :, :3]


@pytest.mark.parametrize("painter", ["png", "svg"])
def test_the_upper_strand_covers_the_lower_on_both_sides(painter):
    """Seen from the back the overs become unders: the reverse of a link diagram."""
    shown = linked()
    front = painted(shown, "front", painter)
    camera = shown.camera("front")
    assert redder(at(front, camera, 0.0, CROSSING))
    assert not redder(at(front, camera, 0.0, -CROSSING))
    back, camera = painted(shown, "back", painter), shown.camera("back")
    assert not redder(at(back, camera, 0.0, -CROSSING))  # the upper crossing, turned over about x
    assert redder(at(back, camera, 0.0, CROSSING))


def test_depth_agrees_with_the_plain_formula_of_a_sphere_and_a_cylinder():
    start, end = np.array([[20.0, 20.0, 5.0]]), np.array([[60.0, 20.0, 5.0]])
    seen = render_depth(Cylinders(start, end, np.array([9.0])), 80, 40)
    for x, y in ((40, 20), (40, 24), (13, 20)):
        along = min(max(x + 0.5, 20.0), 60.0)
        inside = 81 - (x + 0.5 - along) ** 2 - (y + 0.5 - 20) ** 2
        if along < 60:
            assert seen.depth[y, x] == pytest.approx(5 + np.sqrt(inside), abs=2 / 512)
    assert seen.edge[2, 2] == -1


def test_a_steep_edge_is_where_marching_along_the_ray_finds_it():
    """Second way: thousands of balls along the edge, the highest of them over each pixel."""
    a, b, r = np.array([12.0, 14.0, -20.0]), np.array([30.0, 22.0, 25.0]), 7.0
    seen = render_depth(Cylinders(a[None], b[None], np.array([r])), 45, 40)
    centres = a + np.linspace(0, 1, 4000)[:, None] * (b - a)
    for y in range(4, 36, 5):
        for x in range(2, 42, 5):
            flat = r * r - (x + 0.5 - centres[:, 0]) ** 2 - (y + 0.5 - centres[:, 1]) ** 2
            over = np.where(flat >= 0, centres[:, 2] + np.sqrt(np.maximum(flat, 0)), -np.inf).max()
            upper_end = np.hypot(x + 0.5 - b[0], y + 0.5 - b[1]) < r  # the next edge's ball stands there
            if np.isfinite(over) and not upper_end:
                assert seen.depth[y, x] == pytest.approx(over, abs=0.02)


def test_svg_is_xml_with_title_and_what_is_seen():
    text = portrait_svg(linked(), "front")
    root = ET.fromstring(text)
    space = "{http://www.w3.org/2000/svg}"
    assert root.find(f"{space}title").text == "Two rings"
    assert "seen from the front" in root.find(f"{space}desc").text
    assert text == portrait_svg(linked(), "front")
    used = {e.get("href")[1:] for e in root.iter(f"{space}use")}
    assert used == {e.get("id") for e in root.iter(f"{space}path") if e.get("id")}


def test_glb_is_read_by_two_readers_and_holds_the_tubes():
    """Volume of a torus: 2π²Rr² (Pappus). The tubes are polygons, so a little less."""
    data = portrait_glb(linked(), sides=24)
    assert data == portrait_glb(linked(), sides=24)
    file = pygltflib.GLTF2.load_from_bytes(data)
    assert file.asset.version == "2.0"
    assert [node.name for node in file.nodes] == ["band 1 R", "band 2 B"]
    scene = trimesh.load(io.BytesIO(data), file_type="glb")
    for one in scene.geometry.values():
        assert one.is_watertight
        assert one.is_winding_consistent
        assert one.volume * 1e9 == pytest.approx(2 * np.pi**2 * 8 * 0.75**2, rel=0.04)


def test_the_tension_colours_keep_their_order_for_every_eye():
    """WCAG 2.2 for the ends of the scale; CIEDE2000 between steps, for every kind of sight."""
    light = [Color(tint).convert("lab-d65")["lightness"] for tint in RAMP]
    assert all(a - b > 5 for a, b in pairwise(light))
    ends = [tuple(int(t[i : i + 2], 16) / 255 for i in (1, 3, 5)) for t in (RAMP[0], RAMP[-1])]
    assert wcag_contrast_ratio.rgb(*ends) > 7
    for sight in SIGHTS.values():
        assert all(colour_distance(a, b, sight) >= 8 for a, b in pairwise(RAMP))


def test_the_scale_covers_the_greatest_tension_in_round_steps():
    shown = linked()
    assert shown.most_n >= 0.42
    assert [step.from_n for step in shown.steps] == pytest.approx([0.1 * i for i in range(len(shown.steps))])
    assert shown.most_n - shown.steps[-1].from_n == pytest.approx(0.1)


def test_a_photo_is_read_back_and_the_same_every_time():
    """With the renderer of the extra `photo`; the extra `test` brings it."""
    data = portrait_photo(linked(), "front", 120, samples=4)
    pixels = pixels_of(data)
    assert redder(at(pixels, linked().camera("front"), -12.0, 0.0))
    assert not redder(at(pixels, linked().camera("front"), 12.0, 0.0))
    assert data == portrait_photo(linked(), "front", 120, samples=4)


def test_nonsense_is_refused():
    with pytest.raises(RefusedError, match="no band"):
        make_portrait("Nothing", [])
    with pytest.raises(RefusedError, match="is not a colour"):
        make_portrait("One", [PortraitStrand("band", 1, "R", ring(0, 5, 0), 0.7)], colourway={"R": "red"})
    with pytest.raises(KeyError):
        portrait_png(linked(), "worn", 300)
