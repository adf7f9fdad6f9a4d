"""Step pictures for film: another reader and another painter see the same, inside the safe area."""

from __future__ import annotations

import io
import xml.etree.ElementTree as ET
from pathlib import Path

import numpy as np
import pytest
import resvg_py
from PIL import Image

import pegwright.press
from pegwright.lesson import Still, frame_stills
from pegwright.press import still_png
from pegwright.press.svg.pictures import still_svg
from tests.lesson.pieces import dinghy, ebb, lesson, smack

FONTS = [str(f) for f in (Path(pegwright.press.__file__).parent / "fonts").glob("*.ttf")]
SVG = "{http://www.w3.org/2000/svg}"


def chosen() -> list[Still]:
    """A step with a torn edge, rounds to be counted, a cap, a stack with the hook in it, a lifted loop."""
    found = {s.name: s for made in (ebb(), dinghy(), smack()) for s in frame_stills(lesson(made))}
    torn = next(s for s in found.values() if s.picture.window.goes_on)
    hooked = next(s for s in found.values() if any("HookMark" in str(type(m)) for m in s.picture.marks))
    return [torn, hooked, *list(found.values())[3:9:2]]


STILLS = chosen()


def read(data: bytes) -> np.ndarray:
    image = Image.open(io.BytesIO(data))
    image.load()
    assert (image.format, image.mode) == ("PNG", "RGBA")
    return np.asarray(image)


@pytest.mark.parametrize("tall", [1080, 2160])
def test_size_and_safe_area(tall: int) -> None:
    """16:9 of 1920 × 1080 or 3840 × 2160 (ITU-R BT.709, BT.2020); nothing in the outer 5 % (EBU R 95)."""
    for still in STILLS[:2]:
        seen = read(still_png(still, tall))
        assert seen.shape == (tall, tall * 16 // 9, 4)
        across, down = round(0.05 * seen.shape[1]), round(0.05 * tall)
        inner = seen[down:-down, across:-across, 3]
        assert np.count_nonzero(inner) == np.count_nonzero(seen[:, :, 3]) > 10_000
        assert {0, 255} <= set(np.unique(inner)), "clear and covered parts"


def test_another_painter_puts_the_same_on_the_page() -> None:
    """The SVG, painted by resvg with the same fonts, and our PNG differ at edges only."""
    for still in STILLS:
        ours = read(still_png(still)).astype(int)
        theirs = read(
            bytes(
                resvg_py.svg_to_bytes(svg_string=still_svg(still), skip_system_fonts=True, font_files=FONTS)
            )
        ).astype(int)
        assert ours.shape == theirs.shape
        weighed = [a[:, :, :3] * a[:, :, 3:] // 255 for a in (ours, theirs)]
        apart = np.abs(weighed[0] - weighed[1]).max(axis=2)
        covered = theirs[:, :, 3].sum() / 255
        assert np.count_nonzero(apart > 96) < 0.02 * covered
        assert ours[:, :, 3].sum() / 255 == pytest.approx(covered, rel=0.01)


def test_a_torn_edge_is_cut_off() -> None:
    """Beyond the teeth nothing is left, within them something is."""
    still = STILLS[0]
    seen = read(still_png(still))
    window = still.picture.window
    for side in window.goes_on:
        if side in ("far", "near"):
            at = still.top_px if side == "far" else still.top_px + window.height_mm * still.px_a_mm
            line = round(at + (1.5 if side == "far" else -1.5) * still.px_a_mm)
            assert not seen[line, :, 3].any()
            within = round(at + (6 if side == "far" else -6) * still.px_a_mm)
            assert seen[within, :, 3].any()


def test_the_svg_is_a_frame_with_a_title_and_no_ground() -> None:
    for still in STILLS:
        root = ET.fromstring(still_svg(still, 2160))
        assert (root.attrib["width"], root.attrib["height"]) == ("3840", "2160")
        assert root.attrib["viewBox"] == "0 0 1920 1080"
        assert root.findtext(f"{SVG}title") == still.picture.title
        assert root.findtext(f"{SVG}desc") == still.picture.text
        assert root.find(f"{SVG}rect") is None


def test_every_step_has_its_stills_and_a_stack_shows_the_hook() -> None:
    """Names tell the step; where a loop is fetched from a stack, the hook is in the picture."""
    made = lesson(ebb())
    names = [s.name for s in frame_stills(made)]
    assert len(set(names)) == len(names)
    for step in made.steps:
        own = [n for n in names if n.startswith(f"step-{step.number:03}")]
        assert len(own) == len(step.pictures) + bool(step.closeup)
    hooks = [
        s
        for s in made.steps
        if s.closeup and "hook" in {type(m).__struct_config__.tag for m in s.closeup.marks}
    ]
    assert hooks
