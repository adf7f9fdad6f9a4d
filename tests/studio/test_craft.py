"""Two pieces designed from an empty loom by someone who knows the craft, with nothing but the hand."""

from __future__ import annotations

from pathlib import Path

from pegwright.pattern import read_pattern
from pegwright.workshop import Work, work
from tests.studio.conftest import Bench


def on_disk(folder: Path) -> Work:
    """Work what the studio has saved."""
    [file] = (folder / "pieces").glob("*.json")
    pattern = read_pattern(file.read_bytes()).pattern
    assert pattern is not None
    return work(pattern)


def carry(bench: Bench, source: str, target: str, loop: int = 1) -> None:
    """Hook a loop over: press its peg, choose it in the stack unless it is the lowest, press the other."""
    bench.press(source)
    if loop != 1:
        stack = bench.page.get_by_role("region", name=f"Peg {source}", exact=True)
        stack.get_by_role("button", name=f"Loop {loop} ").click()
    bench.press(target)
    bench.settle()


def test_a_plain_chain_takes_ten_gestures(bench: Bench, tmp_path: Path) -> None:
    """One band laid and on to the end, turned, one loop hooked and on to the end, the last band, the clip."""
    page = bench.page
    bench.begin("An empty loom")
    bench.drag("A1", "A2")
    bench.click("On to the end")
    bench.settle()
    assert "12 of 12" in bench.step
    assert page.locator(".what").filter(has_text="fault").count() == 0
    bench.click("Turn round")
    bench.tool("Hook")
    carry(bench, "A12", "A11")
    bench.click("On to the end")
    bench.settle()
    bench.tool("Last band")
    bench.press("A1")
    bench.settle()
    bench.tool("Clip")
    bench.press("A13")
    bench.settle()
    assert bench.verdict == "✓ All 13 bands are held."
    bench.shot("craft-1-chain")
    made = on_disk(tmp_path)
    assert made.holds
    assert len(made.history.moves) == 12 + 1 + 11 + 1 + 1
    bench.click("Undo")
    bench.click("Undo")
    bench.click("Undo")
    bench.settle()
    assert "14 of 14" in bench.step, "what went on to the end is one edit"


def test_once_more_stops_at_the_last_peg(bench: Bench) -> None:
    """It never lays a band past the loom; it says that there is no way on."""
    bench.begin("An empty loom")
    bench.drag("C12", "C13")
    bench.page.keyboard.press("a")
    bench.page.get_by_text("That would lead off the loom.").wait_for()
    bench.settle()
    assert "1 of 1" in bench.step


def test_a_strip_of_filled_capped_motifs(bench: Bench, tmp_path: Path) -> None:
    """Outlines, fillings and caps are laid once and repeated along the loom, worked once and repeated back.

    The order of work is that of the trade (common practice, no source): under the cap from the top of the
    stack down, each loop to its own peg; then the outline, the lowest loop each time.
    """
    page = bench.page
    bench.begin("An empty loom")
    page.get_by_label("Name of the piece").fill("Quay lights")
    page.get_by_label("Name of the piece").press("Tab")
    for pegs in (("B1", "A2"), ("A2", "B3"), ("B1", "C2"), ("C2", "B3")):
        bench.drag(*pegs)
    repeat_all(bench, first=1, count=4)
    assert "24 of 24" in bench.step
    page.get_by_role("radio", name="R buoy red").click()
    for to in ("B3", "A2", "C2", "B1"):
        bench.drag("B2", to)
    bench.press("B2")
    bench.press("B2")
    bench.settle()
    repeat_all(bench, first=25, count=5)
    assert "54 of 54" in bench.step
    page.get_by_role("radio", name="A slate blue").click()
    bench.press("B13")
    bench.press("B13")
    bench.settle()
    bench.shot("craft-2-laid")
    bench.click("Turn round")
    bench.settle()
    bench.tool("Hook")
    for to, loop in (("B11", 4), ("C12", 3), ("A12", 2), ("B13", 1)):
        carry(bench, "B12", to, loop)
    carry(bench, "B13", "C12", 2)
    for source, to in (("B13", "A12"), ("A12", "B11"), ("C12", "B11")):
        carry(bench, source, to)
    repeat_all(bench, first=57, count=8)
    bench.tool("Last band")
    bench.press("B1")
    bench.settle()
    bench.tool("Clip")
    bench.press("B13")
    bench.settle()
    bench.shot("craft-3-strip")
    assert bench.verdict == "✓ All 56 bands are held."
    made = on_disk(tmp_path)
    assert made.holds
    assert made.pattern.title == "Quay lights"
    assert sum(heap.worked for heap in made.supplies.heaps if heap.letter == "R") == 6 * 5


def repeat_all(bench: Bench, first: int, count: int) -> None:
    """Mark the last steps, from `first` on, and repeat them as often as is offered: as the loom has room."""
    page = bench.page
    bench.click("Mark steps")
    page.locator("button.step", has_text=str(first)).first.click()
    page.get_by_role("button", name=f"With these {count} steps").click()
    assert page.get_by_label("Times in all").input_value() == "6"
    page.get_by_role("dialog").get_by_role("button", name="Repeat").click()
    bench.settle()
