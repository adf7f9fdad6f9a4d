"""A photo becomes a mat to be taught from, and a piece its variants, in the browser."""

from __future__ import annotations

import io
import json
from pathlib import Path

import html5lib
import numpy as np
from PIL import Image
from playwright.sync_api import Browser, expect

from pegwright.pattern import untranslated_texts
from pegwright.variants import TECHNIQUES, read_mat
from pegwright.workshop import load_measured_techniques, open_pattern, work
from tests.studio.conftest import Bench, open_page
from tests.studio.test_everyone import complaints

SVG = "{http://www.w3.org/2000/svg}"
expect.set_options(timeout=60_000)
DROP = """bytes => {
  const data = new DataTransfer();
  data.items.add(new File([new Uint8Array(bytes)], 'harbour-light.jpg', { type: 'image/jpeg' }));
  document.querySelector('main').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
}"""


def photo() -> bytes:
    """Return a photo of a yellow light over a blue sea: half and half, with the grain of a camera."""
    y, x = np.mgrid[:300, :400]
    dots = np.where((y < 150)[..., None], [242, 201, 58], [52, 80, 107]).astype(float)
    dots += np.random.default_rng(3).normal(0, 8, dots.shape) + 10 * np.sin(x / 40)[..., None]
    into = io.BytesIO()
    Image.fromarray(np.clip(dots, 0, 255).astype(np.uint8)).save(into, "JPEG", quality=85)
    return into.getvalue()


def test_a_newcomer_turns_a_photo_into_a_mat_and_its_chart(bench: Bench, tmp_path: Path) -> None:
    page = bench.page
    page.evaluate(DROP, list(photo()))
    look = page.get_by_role("region", name="How it will lie")
    expect(look.get_by_text("25 bands across")).to_be_visible()
    assert page.get_by_label("Name of the piece").input_value() == "harbour light"
    assert complaints(page) == []
    across = page.get_by_role("spinbutton", name="Bands across")
    across.fill("6")
    across.press("Tab")
    expect(look.get_by_text("6 bands across, 11 rows, 66 bands in all")).to_be_visible()
    top = page.get_by_label("From the top")
    top.focus()
    for _ in range(25):  # by key alone: a quarter of the picture is left out above, so the light is smaller
        top.press("ArrowRight")
    expect(look.get_by_text("6 bands across, 8 rows")).to_be_visible()
    expect(look.get_by_label("Clear areas")).to_be_checked()
    look.get_by_label("Mixed from dots").check()
    look.get_by_label("Clear areas").check()
    bench.shot("picture-to-mat")
    bench.click("Make the mat")
    page.locator(".verdict").wait_for()
    bench.settle()
    assert "All 48 bands are held" in bench.verdict
    (saved,) = (tmp_path / "pieces").glob("*.json")
    pattern = open_pattern(saved).pattern
    assert pattern is not None
    rows = read_mat(pattern)
    assert rows is not None
    names = {colour.letter: colour.name for colour in pattern.colours}
    told = [{names[letter] for letter in row} for row in rows]
    # A third of what is left is light: two rows and part of the third.
    assert told[:2] == [{"lamp yellow"}] * 2
    assert told[3:] == [{"slate blue"}] * 5

    bench.click("The lesson")
    bench.click("Press the lesson")
    with page.expect_download() as got:
        page.get_by_role("button", name="chart.html").first.click()
    chart = html5lib.HTMLParser(namespaceHTMLElements=False).parse(Path(got.value.path()).read_bytes())
    drawn = [one.text for one in chart.iter(f"{SVG}text") if one.get("class") is None]
    assert drawn == [letter for row in rows for letter in row]
    # It was pressed before it could be looked at: once it is pressed the page is there all the same.
    page.get_by_text("The lesson is pressed").wait_for(timeout=180_000)
    page.frame_locator("iframe").get_by_role("heading", level=1).wait_for()


def test_what_is_no_picture_is_said_and_a_way_back_is_there(bench: Bench) -> None:
    page = bench.page
    page.get_by_label("Make a mat of a picture").set_input_files(
        {"name": "torn.png", "mimeType": "image/png", "buffer": b"\x89PNG\r\n\x1a\nno more of it"}
    )
    expect(page.get_by_role("alert")).to_contain_text("cannot be read")
    bench.click("Your pieces")
    page.get_by_role("heading", name="Lay a first piece").wait_for()


def test_variants_are_taken_here_or_laid_on_the_shelf(bench: Bench, tmp_path: Path) -> None:
    page = bench.page
    stash = {
        "stash": 1,
        "bands": [
            {"colour": name, "tint": tint, "band": "standard", "have": have}
            for name, tint, have in (
                ("ochre", "#c98a2b", 90),
                ("deep sea", "#123a5a", 90),
                ("pale shell", "#f3e9dc", 90),
                ("rust", "#8e3b1f", 90),
            )
        ],
    }
    (tmp_path / "pieces" / "stash.json").write_text(json.dumps(stash))
    bench.begin("Ebb line")
    before = bench.verdict
    bench.click("Variants", exact=True)
    dialog = page.get_by_role("dialog", name="Variants")
    expect(dialog.get_by_text("From the 4 colours of your stash")).to_be_visible()
    dialog.get_by_label("How many to show").fill("2")
    dialog.get_by_label("For the left hand too").check()
    dialog.get_by_role("button", name="Make them").click()
    expect(dialog.get_by_role("listitem")).to_have_count(4)
    cards = dialog.get_by_role("listitem")
    expect(cards.nth(0).get_by_role("img")).to_be_visible()  # at rest, as soon as the solver has it
    assert complaints(page) == []
    bench.shot("variants")
    cards.nth(0).get_by_role("button", name="New piece").click()
    expect(dialog.get_by_text("is on the shelf")).to_be_visible()
    assert len(list((tmp_path / "pieces").glob("*.json"))) == 3  # the stash, the chain, the new piece
    cards.nth(2).get_by_role("button", name="Take it here").click()
    bench.settle()
    assert bench.verdict == before
    names = page.locator(".stash [role=radio]").all_inner_texts()
    assert all(any(known in name for known in ("ochre", "deep sea", "pale shell", "rust")) for name in names)
    bench.click("Undo")
    bench.settle()
    assert page.locator(".stash [role=radio]").all_inner_texts() != names
    assert page.get_by_role("button", name="Undo").is_disabled()


def test_a_mat_is_chosen_on_a_phone_in_the_dark_in_german(browser: Browser, address: str) -> None:
    with open_page(browser, address) as page:
        page.set_viewport_size({"width": 390, "height": 780})
        page.emulate_media(color_scheme="dark")
        page.get_by_label("Language").select_option("de")
        page.evaluate(DROP, list(photo()))
        expect(page.get_by_text("25 Gummis quer")).to_be_visible()
        assert complaints(page) == []
        wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
        assert wide == 0


def test_a_technique_is_found_by_what_is_wanted_and_begun_or_laid(bench: Bench, tmp_path: Path) -> None:
    """One to two centimetres wide, two colours, an hour, for a beginner."""
    page = bench.page
    page.get_by_text("Techniques", exact=True).click()
    listed = page.get_by_role("list", name="Techniques").get_by_role("listitem")
    expect(listed).to_have_count(len(TECHNIQUES))
    page.get_by_label("Width from, cm").fill("1")
    page.get_by_label("Width to, cm").fill("2")
    page.get_by_role("combobox", name="Colours").select_option("2")
    page.get_by_role("combobox", name="Time").select_option("60")
    page.get_by_role("combobox", name="As hard as").select_option("basic")
    wanted = [
        one.titles["en"]
        for one in (kept.measures for kept in load_measured_techniques())
        if 10 <= one.width_mm <= 20
        and one.colours == 2
        and one.level == "basic"
        and one.bracelet is not None
        and one.bracelet.minutes <= 60
    ]
    assert 2 <= len(wanted) < len(TECHNIQUES)
    expect(listed).to_have_count(len(wanted))
    assert complaints(page) == []
    bench.shot("techniques")
    page.get_by_role("button", name="Begin a piece: plain chain").click()
    page.locator(".verdict").wait_for()
    bench.settle()
    (saved,) = (tmp_path / "pieces").glob("*.json")
    pattern = open_pattern(saved).pattern
    assert pattern is not None
    assert pattern.title == "plain chain"
    assert work(pattern).holds
    assert list(untranslated_texts(pattern, "de")) == []

    page.get_by_role("button", name="From the shelf").click()
    dialog = page.get_by_role("dialog", name="From the shelf")
    dialog.get_by_text("Techniques", exact=True).click()
    dialog.get_by_role("button", name="Lay it: stem that parts into 2 arms").click()
    assert page.locator(".motif[aria-pressed=true]").inner_text() == "stem that parts into 2 arms"
    expect(dialog).not_to_be_visible()
