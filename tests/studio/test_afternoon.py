"""An afternoon of use: what was cut, covered, lost or too long once, and what takes how many gestures."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from playwright.sync_api import expect

from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints


def steps_of(folder: Path) -> list[dict[str, Any]]:
    [file] = (folder / "pieces").glob("*.json")
    return list(json.loads(file.read_text()).get("steps", []))


def test_a_chain_by_keys_alone_in_sixty_and_undone_after_the_shelf(bench: Bench) -> None:
    """From the loom to "all held"; then the shelf and a reload, and still every edit can be taken back."""
    page = bench.page
    bench.begin("An empty loom")
    pressed = 0

    def keys(*names: str) -> None:
        nonlocal pressed
        for name in names:
            page.keyboard.press(name)
            pressed += 1

    keys("n", "Home", "Enter", "End", "Enter", "n")
    bench.settle()
    assert "12 of 12" in bench.step
    keys("r")
    bench.settle()
    side = page.get_by_role("button", name="On its side").get_attribute("aria-pressed") == "true"
    keys("h", "End", "ArrowRight" if side else "ArrowUp", "Enter", "Enter")  # A12, where it usually goes
    bench.settle()
    assert "Hook the lowest loop of A12 over to A11" in bench.step
    keys("Shift+A", "b", "Home", "Enter", "c", "End", "Enter")
    bench.settle()
    assert bench.verdict == "✓ All 13 bands are held."
    assert pressed <= 60
    bench.click("Shelf")
    page.locator("li button", has_text="New piece").first.click()
    page.locator(".verdict").wait_for()
    page.reload()
    page.locator(".verdict").wait_for()
    bench.settle()
    page.keyboard.press("Control+z")
    bench.settle()
    assert bench.verdict == "Nothing closes it yet. 13 bands are laid."


def test_the_stack_card_is_whole_and_whole_shows_the_free_end(bench: Bench) -> None:
    """At 1366 × 768 nothing of the card is cut, the loop is lit, and a free end lies on the board."""
    page = bench.page
    page.set_viewport_size({"width": 1366, "height": 768})
    bench.begin("Plain chain")
    bench.click("Take this step out")
    bench.settle()
    page.keyboard.press("0")
    end: Any = page.get_by_role("button", name="Loose end").locator(".loose").bounding_box()
    table: Any = page.locator(".table").bounding_box()
    assert table["x"] <= end["x"]
    assert end["x"] + end["width"] <= table["x"] + table["width"]
    assert table["y"] <= end["y"]
    assert end["y"] + end["height"] <= table["y"] + table["height"]
    bench.click("Place ·")
    page.keyboard.press("h")
    for peg in ("A1", "A7", "A13"):
        bench.press(peg)
        card: Any = page.get_by_role("region", name=f"Peg {peg}", exact=True).bounding_box()
        assert card["y"] >= table["y"]
        assert card["y"] + card["height"] <= table["y"] + table["height"]
        assert card["x"] >= table["x"]
        assert card["x"] + card["width"] <= table["x"] + table["width"]
        expect(page.locator(".lit")).to_have_count(1)
        page.keyboard.press("Escape")


def test_steps_take_colours_notes_and_places(bench: Bench, tmp_path: Path) -> None:
    """Marked steps are recoloured, a step is moved by keys, a warning is written where it stands."""
    page = bench.page
    bench.begin("An empty loom")
    bench.drag("A1", "A2")
    bench.drag("B1", "B2")
    bench.drag("C1", "C2")
    page.get_by_label("Turns of a cap").fill("2")
    bench.press("C5")
    bench.press("C5")
    bench.settle()
    page.get_by_role("group", name="Steps").focus()
    page.keyboard.press("Alt+ArrowLeft")
    bench.settle()
    assert [step["do"] for step in steps_of(tmp_path)] == ["place", "place", "wind", "place"]
    assert steps_of(tmp_path)[2]["turns"] == 2, "a cap is wound as often as its own field says"
    bench.click("Add a note")
    page.get_by_label("Warning").fill("Keep a finger on it.")
    assert complaints(page) == []
    bench.click("Write it down")
    bench.settle()
    expect(page.locator("output")).to_contain_text("⚠ Keep a finger on it.")
    assert [step.get("warning") for step in steps_of(tmp_path)] == [None, None, "Keep a finger on it.", None]
    bench.click("Mark steps")
    page.locator("button.step").first.click()
    bench.click("With these 3 steps")
    assert complaints(page) == []
    page.get_by_label("A slate blue becomes").select_option("R")
    bench.settle()
    assert [step["colour"] for step in steps_of(tmp_path)] == ["R", "R", "R", "A"]


def test_bands_are_chosen_in_a_frame_copied_and_laid_in_another_piece(bench: Bench, tmp_path: Path) -> None:
    """A frame over two bands, Ctrl+C; in another piece Ctrl+V and one press."""
    page = bench.page
    bench.begin("An empty loom")
    bench.drag("B2", "B3")
    bench.drag("B3", "B4")
    page.keyboard.press("v")
    box: Any = page.locator(".board").bounding_box()
    page.mouse.move(box["x"] + 3, box["y"] + 3)
    page.mouse.down()
    page.mouse.move(box["x"] + box["width"] - 3, box["y"] + box["height"] - 3, steps=3)
    page.mouse.up()
    page.get_by_role("region", name="2 bands chosen").wait_for()
    assert complaints(page) == []
    page.keyboard.press("Control+c")
    bench.click("Shelf")
    bench.begin("An empty loom")
    assert page.get_by_label("Name of the piece").input_value() == "New piece 2"
    page.keyboard.press("Control+v")
    bench.press("A6")
    bench.settle()
    assert "2 of 2 · Lay A slate blue over A7 and A8" in bench.step


def test_every_command_is_found_by_name_and_the_tour_leads_on(bench: Bench) -> None:
    """Ctrl+K, a word, Enter; the tour goes on by what is done, and is left for good."""
    page = bench.page
    bench.begin("An empty loom")
    tip = page.locator(".tip")
    expect(tip).to_contain_text("1 of 6:")
    page.keyboard.press("Control+k")
    page.get_by_role("combobox", name="Find a command").fill("last")
    assert complaints(page) == []
    page.keyboard.press("Enter")
    expect(page.get_by_role("button", name="Last band")).to_have_attribute("aria-pressed", "true")
    page.keyboard.press("l")
    bench.drag("A1", "A2")
    expect(tip).to_contain_text("2 of 6:")
    bench.click("Leave the tour")
    expect(tip).not_to_contain_text("of 6:")
    page.keyboard.press("?")
    page.get_by_role("dialog", name="Keys").get_by_text("Lay what was copied").wait_for()
    assert complaints(page) == []


def test_at_double_size_in_forced_colours_and_without_motion(bench: Bench) -> None:
    """Twice as large the page still holds all; in colours of the user's own what is chosen has an edge."""
    page = bench.page
    page.set_viewport_size({"width": 683, "height": 384})  # 1366 × 768 at 200 %
    page.emulate_media(forced_colors="active", reduced_motion="reduce")
    page.locator("li button", has_text="Plain chain").last.click()
    page.locator("[data-peg]").first.wait_for()
    bench.settle()
    assert page.evaluate("document.documentElement.scrollWidth") <= 683
    page.keyboard.press("h")
    chosen = page.get_by_role("toolbar").get_by_role("button", name="Hook", exact=True)
    assert chosen.evaluate("one => getComputedStyle(one).outlineStyle") == "solid"
    page.get_by_role("navigation").get_by_role("button", name="Steps").click()
    now = page.locator("[aria-current=step]")
    assert now.evaluate("one => getComputedStyle(one).outlineStyle") == "solid"
    assert now.evaluate("one => getComputedStyle(one).transitionDuration") == "0s"
