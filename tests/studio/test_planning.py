"""Two newcomers: one lays bands and asks for an order, one has a piece that falls and gets it mended."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser

from pegwright.pattern import Pattern, read_pattern
from pegwright.workshop import example_files, work
from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints


def read_piece(folder: Path) -> Pattern:
    """Return the one piece as it is on the disk."""
    [file] = (folder / "pieces").glob("*.json")
    pattern = read_pattern(file.read_bytes()).pattern
    assert pattern is not None
    return pattern


def lay_lantern(bench: Bench) -> None:
    """Four bands round, four from the middle, and a cap."""
    for pegs in (("B1", "A2"), ("A2", "B3"), ("B1", "C2"), ("C2", "B3")):
        bench.drag(*pegs)
    for tip in ("B3", "A2", "C2", "B1"):
        bench.drag("B2", tip)
    bench.press("B2")
    bench.press("B2")
    bench.settle()


def lay_strip(bench: Bench) -> None:
    """Two lanterns in a row, and a cap at the end."""
    page = bench.page
    lay_lantern(bench)
    page.locator("button.step").first.click(modifiers=["Shift"])
    bench.click("With these 9 steps")
    page.get_by_label("Times in all").fill("2")
    page.get_by_role("dialog").get_by_role("button", name="Repeat").click()
    bench.settle()
    bench.press("B5")
    bench.press("B5")
    bench.settle()


def test_from_bands_laid_to_a_lesson_without_a_hook(bench: Bench, tmp_path: Path) -> None:
    """A strip of filled, capped motifs is laid, an order asked for, stepped through, taken, and taught."""
    page = bench.page
    bench.begin("An empty loom")
    lay_strip(bench)
    assert bench.verdict == "Nothing closes it yet. 19 bands are laid."
    laid = read_piece(tmp_path)
    bench.shot("planning-1-laid")

    bench.click("Find an order")
    shown = page.get_by_role("region", name="The order that is shown")
    shown.wait_for(timeout=120_000)
    bench.settle()
    assert "Order 1 of 5, not taken yet" in shown.inner_text()
    assert bench.verdict.startswith("✓ All ")
    assert complaints(page) == []
    bench.shot("planning-2-proposed")
    first = bench.step
    shown.get_by_role("button", name="The next order").click()
    bench.settle()
    assert "Order 2 of 5" in shown.inner_text()
    page.get_by_role("button", name="One step back", exact=True).click()
    assert bench.step != first
    assert read_piece(tmp_path) == laid, "what is only shown is not saved"
    shown.get_by_role("button", name="Leave it as it was").click()
    bench.settle()
    assert bench.verdict == "Nothing closes it yet. 19 bands are laid."
    page.get_by_role("region", name="Orders and mends").get_by_role("button").nth(1).click()
    shown.get_by_role("button", name="Take it").click()
    bench.settle()
    assert shown.count() == 0
    taken = read_piece(tmp_path)
    assert work(taken).holds
    bench.click("Undo")
    bench.settle()
    assert read_piece(tmp_path) == laid, "one undo goes back"
    bench.click("Redo")
    bench.settle()

    bench.click("The lesson")
    page.frame_locator("iframe").get_by_role("heading", name="New piece").wait_for()
    assert page.get_by_role("button", name="Press the lesson").is_enabled(), (
        "a piece that holds can be printed"
    )


def test_the_flat_tail_is_mended_in_one_press(bench: Bench, tmp_path: Path) -> None:
    """By keys alone; another way is a press away, and one undo goes back to the tail as it was."""
    page = bench.page
    page.locator("input[type=file]").first.set_input_files(example_files()["broken/flat-tail"])
    page.locator(".verdict").wait_for()
    bench.settle()
    assert bench.verdict.startswith("✗ ")
    bench.shot("planning-3-falls")
    page.get_by_role("button", name="Mend the piece").focus()
    page.keyboard.press("Enter")
    page.get_by_text("Mended: put the band of move 1 on crossed").wait_for(timeout=120_000)
    bench.settle()
    assert bench.verdict.startswith("✓ All ")
    assert page.evaluate("document.activeElement.className").startswith("verdict")
    assert complaints(page) == []
    bench.shot("planning-4-mended")
    assert work(read_piece(tmp_path)).holds
    page.keyboard.press("Control+z")
    bench.settle()
    assert bench.verdict.startswith("✗ ")


def test_on_a_phone_an_order_is_found_stepped_through_and_taken(browser: Browser, address: str) -> None:
    """What is offered lies under *Found*; the order that is shown stands above the board, in sight."""
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, locale="de-DE")
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.goto(address)
    page.locator("li button").first.tap()
    bench = Bench(page)
    page.get_by_role("button", name="Befund").tap()
    page.get_by_role("button", name="Andere Reihenfolgen finden").tap()
    shown = page.get_by_role("region", name="Die gezeigte Reihenfolge")
    shown.wait_for(timeout=120_000)
    page.get_by_role("button", name="Befund").tap()
    bench.shot("planning-5-phone")
    assert page.evaluate("document.documentElement.scrollWidth") == 390
    for button in shown.get_by_role("button").all():
        box = button.bounding_box()
        assert box is not None
        assert box["x"] + box["width"] <= 390
    assert complaints(page) == []
    shown.get_by_role("button", name="Übernehmen").tap()
    shown.wait_for(state="detached")
    assert page.get_by_role("button", name="Zurück").is_enabled()
    context.close()
    assert bench.faults == []
