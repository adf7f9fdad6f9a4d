"""Drawn freely: pegs put where the maker wants them, and bands laid over a picture."""

from __future__ import annotations

import io
import json
from pathlib import Path
from typing import Any

import pytest
from PIL import Image, ImageDraw

from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints


def picture() -> bytes:
    """A sheet with two marks, at (40, 300) and (540, 300) of 600 × 400 pixels."""
    sheet = Image.new("RGB", (600, 400), "#dbe7ee")
    pen = ImageDraw.Draw(sheet)
    for x in (40, 540):
        pen.ellipse((x - 20, 280, x + 20, 320), fill="#b5382a")
    out = io.BytesIO()
    sheet.save(out, "PNG")
    return out.getvalue()


# Where the two marks of the picture are on the screen.
MARKS = """() => {
  const m = new DOMMatrix(getComputedStyle(document.querySelector('.under img')).transform);
  const b = document.querySelector('.board').getBoundingClientRect();
  return [40, 540].map((x) => {
    const p = m.transformPoint(new DOMPoint(x, 300));
    return [p.x + b.x, p.y + b.y];
  });
}"""


def draw_pegs(bench: Bench) -> None:
    """Leave one peg of an empty loom, put down another by a press and in numbers, a third by keys."""
    page = bench.page
    bench.click("Change the loom")
    page.get_by_role("dialog").get_by_role("combobox").first.select_option("pegs")
    sheet = page.get_by_role("application", name="each peg placed by itself")
    assert page.locator("[data-drawn]").count() == 39
    assert complaints(page) == []
    bench.shot("pegs")
    page.locator(".fields select").first.select_option("C13")
    for _ in range(38):
        bench.click("Take the peg out")
    assert page.locator("[data-drawn]").count() == 1
    box: Any = sheet.bounding_box()
    page.mouse.click(box["x"] + box["width"] / 2 + 80, box["y"] + box["height"] / 2)
    page.get_by_label("To the right, mm").fill("40")
    page.get_by_label("Away from you, mm").fill("16")
    page.get_by_label("Away from you, mm").press("Tab")
    bench.click("One more peg")
    sheet.focus()
    page.keyboard.press("ArrowRight")
    page.get_by_role("dialog").get_by_role("button", name="Change", exact=True).click()
    bench.settle()


def test_pegs_are_drawn_and_a_picture_is_traced(bench: Bench, tmp_path: Path) -> None:
    """A loom of three pegs drawn by hand is in the document; a picture is laid by two points and kept."""
    page = bench.page
    bench.begin("An empty loom")
    draw_pegs(bench)
    [file] = (tmp_path / "pieces").glob("*.json")
    pegs = json.loads(file.read_text())["loom"]["pegs"]
    assert [(peg["x_mm"], peg["y_mm"]) for peg in pegs[1:]] == [(40, 16), (41, 32)]
    first, second, third = (peg["at"] for peg in pegs)
    page.keyboard.press("l")
    bench.drag(first, second)
    assert bench.stack(second) == f"Peg {second}, 1 loop"

    sent: list[bytes] = []
    page.on("request", lambda request: sent.append(request.post_data_buffer or b""))
    bench.click("Trace a picture")
    page.locator('dialog[open] input[type="file"]').set_input_files(
        {"name": "buoys.png", "mimeType": "image/png", "buffer": picture()}
    )
    page.get_by_label("Strength").wait_for()
    assert complaints(page) == []
    bench.click("Fit it by two points")
    for k, peg in enumerate((first, second)):
        page.mouse.click(*page.evaluate(MARKS)[k])
        bench.press(peg)
    bench.shot("traced")

    def assert_fitted() -> None:
        for mark, peg in zip(page.evaluate(MARKS), (first, second), strict=True):
            assert mark == pytest.approx(bench.middle(peg), abs=3)

    assert_fitted()
    bench.drag(first, third)
    assert bench.stack(third) == f"Peg {third}, 1 loop"
    assert not any(b"WEBP" in body or b"PNG" in body for body in sent), "the picture stays in the browser"
    page.reload()
    page.locator(".under img").wait_for()
    bench.settle()
    assert_fitted()
    bench.click("Trace a picture")
    bench.click("Take the picture out")
    assert page.locator(".under img").count() == 0
