"""A newcomer's path, and a chain laid by hand from nothing."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pytest
from pypdf import PdfReader

from pegwright.pattern import read_pattern
from pegwright.workshop import work
from tests.studio.conftest import Bench, wait_until


def test_from_a_motif_to_a_printed_lesson(deep_bench: Bench) -> None:
    """The newcomer's path: recolour, make it fail, mend it, see it off the loom, fit it, press the lesson."""
    bench = deep_bench
    bench.begin("Plain chain")
    assert bench.verdict == "✓ All 13 bands are held."
    bench.shot("newcomer-1-chain")
    recolour(bench)
    fail_and_mend(bench)
    see_and_fit(bench)
    press(bench)


def recolour(bench: Bench) -> None:
    """One band in a colour of its own."""
    page = bench.page
    bench.click("New colour")
    page.get_by_label("Name", exact=True).fill("weed green")
    page.get_by_label("Tint").fill("#2f6b4f")
    bench.click("Add", exact=True)
    bench.settle()
    bench.click("Place ·")
    bench.press_band("A3", "A4")
    page.get_by_role("region", name="Band 3").wait_for()
    page.get_by_role("button", name="Colour: B weed green").click()
    bench.settle()
    bench.click("To the end")
    assert "weed green: 1 band" in page.locator(".heaps").inner_text()
    assert bench.verdict == "✓ All 13 bands are held."


def fail_and_mend(bench: Bench) -> None:
    """Without its clip the piece fails; the finding offers one."""
    page = bench.page
    bench.tool("Point")
    bench.press("A13")
    page.locator("button.step").last.click()
    page.get_by_role("button", name="Take this step out").click()
    bench.settle()
    assert bench.verdict.startswith("Nothing closes it yet.")
    page.get_by_role("button", name="Mend it: clip").first.click()
    bench.settle()
    assert bench.verdict == "✓ All 13 bands are held."

    bench.shot("newcomer-2-mended")


def see_and_fit(bench: Bench) -> None:
    """Off the loom, turned by the keyboard; too tight for 16 cm, and made to fit."""
    page = bench.page
    bench.settle_off_the_loom()
    bench.click("Look closely")
    view = page.get_by_role("application", name="Off the loom")
    before = view.screenshot()
    view.focus()
    page.keyboard.press("ArrowUp")
    wait_until(lambda: view.screenshot() != before)
    bench.shot("newcomer-3-off-the-loom")

    page.get_by_label("Wrist", exact=True).fill("16 cm")
    fit = page.get_by_role("region", name="Fit")
    fit.get_by_text("tight on this one").wait_for()
    fit.get_by_role("button", name="Make it fit").click()
    bench.settle()
    bench.settle_off_the_loom()
    fit.get_by_text("easy on this one").or_(fit.get_by_text("snug on this one")).wait_for()
    assert bench.verdict.startswith("✓ All ")
    bench.click("On the wrist")
    page.wait_for_timeout(1000)
    bench.shot("newcomer-4-on-the-wrist")
    bench.click("Back to the loom")


# A short lesson may be pressed between two looks of ours, so the page itself notes that the bar was there.
WATCH_THE_BAR = """() => {
  window.barShown = false;
  const look = () => { window.barShown ||= !!document.querySelector('progress[aria-label="Pressing…"]'); };
  new MutationObserver(look).observe(document.body, { childList: true, subtree: true });
}"""


def press(bench: Bench) -> None:
    """The lesson is looked at, pressed and taken along."""
    page = bench.page
    bench.click("The lesson")
    follow = page.frame_locator("iframe")
    follow.get_by_role("heading", name="Plain chain").wait_for()
    bench.shot("newcomer-5-lesson")
    page.get_by_label("Paper").select_option("letter")
    page.evaluate(WATCH_THE_BAR)
    bench.click("Press the lesson")
    page.get_by_text("The lesson is pressed").wait_for(timeout=120_000)
    assert page.evaluate("window.barShown")
    with page.expect_download() as pressed:
        bench.click("Download it all")
    with zipfile.ZipFile(pressed.value.path()) as zipped:
        pdf = zipped.read("handout-letter.pdf")
    pages = PdfReader(io.BytesIO(pdf)).pages
    assert "weed green" in "".join(p.extract_text() for p in pages)
    assert pages[0].mediabox.width == pytest.approx(612, abs=1)  # Letter, 8.5 in
    bench.shot("newcomer-6-pressed")


def test_a_piece_that_fails_is_mended_by_its_fix(bench: Bench) -> None:
    """Bands laid and hooked but not closed: the finding offers the clip, one press carries it out."""
    bench.begin("An empty loom")
    bench.drag("A1", "A2")
    for _ in range(3):
        bench.page.keyboard.press("a")
        bench.settle()
    bench.page.keyboard.press("h")
    for source, target in (("A4", "A3"), ("A3", "A2"), ("A2", "A1")):
        bench.press(source)
        bench.press(target)
        bench.settle()
    assert bench.verdict == "Nothing closes it yet. 4 bands are laid."
    bench.shot("mend-1-open")
    bench.page.get_by_role("button", name="Mend it: clip").first.click()
    bench.settle()
    assert bench.verdict.startswith("✓ All 4 bands are held.")
    bench.shot("mend-2-closed")
    bench.click("Undo")
    bench.settle()
    assert bench.verdict == "Nothing closes it yet. 4 bands are laid."


def test_a_chain_by_hand_is_on_the_disk_as_it_was_laid(bench: Bench, tmp_path: Path) -> None:
    """What is done at the screen is what the file says, and what the line makes of it."""
    bench.begin("An empty loom")
    page = bench.page
    page.get_by_label("Name of the piece").fill("Neap line")
    page.get_by_label("Name of the piece").press("Tab")
    for a, b in (("B1", "B2"), ("B2", "B3"), ("B3", "B4"), ("B4", "B5")):
        bench.drag(a, b)
    bench.click("Turn round")
    bench.settle()
    page.keyboard.press("h")
    for source, target in (("B4", "B3"), ("B3", "B2"), ("B2", "B1")):
        bench.press(source)
        bench.press(target)
        bench.settle()
    page.keyboard.press("b")
    bench.press("B1")
    bench.settle()
    page.keyboard.press("c")
    bench.press("B5")
    bench.settle()
    assert bench.verdict == "✓ All 5 bands are held."
    bench.shot("by-hand")
    [file] = (tmp_path / "pieces").glob("*.json")
    pattern = read_pattern(file.read_bytes()).pattern
    assert pattern is not None
    assert pattern.title == "Neap line"
    made = work(pattern)
    assert made.holds
    assert len(made.history.moves) == 10


def test_undo_goes_back_to_the_empty_loom_and_forth_again(bench: Bench) -> None:
    """Every step can be undone, to the first, and done again, to the last."""
    bench.begin("An empty loom")
    bench.drag("A1", "A2")
    bench.drag("A2", "B2", "B3")
    bench.press("C1")
    bench.press("C1")
    bench.settle()
    assert "3 of 3" in bench.step
    for _ in range(3):
        bench.page.keyboard.press("Control+z")
    bench.settle()
    assert bench.verdict == "Nothing is laid yet."
    assert bench.page.get_by_role("button", name="Undo").is_disabled()
    for _ in range(3):
        bench.page.keyboard.press("Control+Shift+z")
    bench.settle()
    assert "Wind A slate blue 3 times round C1" in bench.step
    assert bench.stack("B2") == "Peg B2, 1 loop"


def test_the_stack_is_seen_from_the_side_and_any_loop_is_taken(bench: Bench) -> None:
    """The close-up lists the loops top first; the one that is chosen is the one that is hooked."""
    bench.begin("An empty loom")
    bench.drag("B2", "B1")
    bench.drag("B2", "B3")
    bench.drag("B2", "A2")
    bench.page.keyboard.press("h")
    bench.press("B2")
    side = bench.page.get_by_role("region", name="Peg B2")
    loops = side.get_by_role("listitem")
    assert loops.count() == 3
    side.get_by_role("button", name="Loop 2").click()
    bench.shot("side")
    bench.press("B3")
    bench.settle()
    assert "Hook loop 2 of B2 over to B3" in bench.step
    bench.click("Undo")
    bench.settle()
    wait_until(lambda: "3 of 3" in bench.step)


def test_what_falls_if_one_snaps(bench: Bench) -> None:
    """Point at a band: the page says how many fall with it, and undoes nothing."""
    bench.begin("Plain chain")
    bench.page.keyboard.press("x")
    bench.press_band("A6", "A5")
    bench.page.get_by_text("If band 5 snaps").wait_for()
    text = bench.page.get_by_text("If band 5 snaps").inner_text()
    assert text == "If band 5 snaps, 11 more bands fall."
    bench.shot("snap")
    bench.page.keyboard.press("Escape")
    assert bench.page.get_by_text("If band 5 snaps").count() == 0


def test_a_strip_of_motifs_without_reading_anything(bench: Bench, tmp_path: Path) -> None:
    """Lay one lantern, mark its steps, repeat them along the loom; make a motif and lay it once more."""
    bench.begin("An empty loom")
    page = bench.page
    for pegs in (("B1", "A2"), ("A2", "B3"), ("B1", "C2"), ("C2", "B3")):
        bench.drag(*pegs)
    bench.press("B2")
    bench.press("B2")
    bench.settle()
    page.locator("button.step").first.click(modifiers=["Shift"])
    bench.click("With these 5 steps")
    page.get_by_label("Times in all").fill("3")
    assert page.get_by_label("Move on each time, in pegs").input_value() == "2"
    bench.shot("strip-1-repeat")
    page.get_by_role("dialog").get_by_role("button", name="Repeat").click()
    bench.settle()
    assert "15 of 15" in bench.step
    assert bench.stack("B7") == "Peg B7, 2 loops"
    bench.click("Undo")
    bench.settle()
    page.locator("button.step").first.click(modifiers=["Shift"])
    bench.click("With these 5 steps")
    page.get_by_label("Name of the motif").fill("lantern")
    page.get_by_role("dialog").get_by_role("button", name="Make a motif").click()
    bench.settle()
    bench.click("lantern")
    bench.press("B5")
    bench.settle()
    assert "10 of 10" in bench.step
    assert bench.stack("B7") == "Peg B7, 2 loops"
    bench.shot("strip-2-motif")
    [file] = (tmp_path / "pieces").glob("*.json")
    pattern = read_pattern(file.read_bytes()).pattern
    assert pattern is not None
    assert [motif.name for motif in pattern.motifs] == ["lantern"]
    assert len(work(pattern).history.moves) == 10
