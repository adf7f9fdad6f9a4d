"""A piece given away as one file: it opens by a double press, and on the shelf it is the piece again."""

from __future__ import annotations

import io
import json
from pathlib import Path

from pypdf import PdfReader

from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints


def test_a_piece_as_one_file_is_a_page_and_the_piece_again(bench: Bench, tmp_path: Path) -> None:
    """The file shows the lesson without the studio; dropped on a shelf it is the same document."""
    page = bench.page
    bench.begin("Plain chain")
    with page.expect_download() as taken:
        bench.click("Share")
    page.get_by_text("is saved where your browser saves things").wait_for()
    assert complaints(page) == []
    bench.shot("share")
    shared = tmp_path / taken.value.suggested_filename
    taken.value.save_as(shared)
    bench.page.get_by_role("dialog").get_by_role("button", name="Close").click()

    lone = page.context.new_page()
    outside: list[str] = []
    lone.on("request", lambda request: outside.append(request.url))
    lone.on("pageerror", lambda error: bench.faults.append(str(error)))
    lone.goto(shared.as_uri())
    lone.get_by_role("heading", name="Plain chain").first.wait_for()
    assert [url for url in outside if not url.startswith(("file:", "data:", "blob:"))] == []
    lone.close()

    [file] = (tmp_path / "pieces").glob("*.json")
    before = json.loads(file.read_text())
    file.unlink()
    bench.click("Shelf")
    page.locator('input[type="file"]').first.set_input_files(shared)
    page.locator(".verdict").wait_for()
    bench.settle()
    [file] = (tmp_path / "pieces").glob("*.json")
    assert json.loads(file.read_text()) == before
    bench.click("Shelf")
    other = tmp_path / "other.html"
    other.write_text("<!doctype html><p>A tide table</p>")
    page.locator('input[type="file"]').first.set_input_files(other)
    page.get_by_role("alert").get_by_text("“other.html” is not a pattern.").wait_for()


def test_the_chart_is_printed_whole(bench: Bench) -> None:
    """Bands, every phase and every step stand on the pages that the browser prints, and nothing else."""
    page = bench.page
    bench.begin("Riding lights")
    bench.click("Chart")
    page.get_by_role("heading", name="Riding lights").wait_for()
    assert complaints(page) == []
    bench.shot("chart")
    pages = PdfReader(io.BytesIO(page.pdf(format="A4", margin={"top": "15mm", "left": "15mm"}))).pages
    text = " ".join("".join(each.extract_text() for each in pages).split())
    for said in (
        "slate blue: 32 bands",
        "6 times in all",
        "Hook loop 4 from the top of B12 over to B11",
        "Clip the loops of the free end and B13",
    ):
        assert said in text, said
    assert "Print" not in text
    assert 1 < len(pages) < 8
    page.keyboard.press("Escape")
    page.locator(".verdict").wait_for()
