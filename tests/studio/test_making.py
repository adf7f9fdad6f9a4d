"""Every way of making, by hand: bands moved and copied, steps turned, motifs brought, files in and out."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page

from tests.studio.conftest import Bench, wait_until


def document(folder: Path) -> dict[str, Any]:
    """Return what the studio has saved last."""
    files = [file for file in (folder / "pieces").glob("*.json") if file.stem != "stash"]
    return dict(json.loads(max(files, key=lambda file: file.stat().st_mtime).read_text()))


def steps(folder: Path) -> list[Any]:
    return list(document(folder).get("steps", []))


def test_a_band_is_moved_and_copied(bench: Bench, tmp_path: Path) -> None:
    """Take a band up and press where its first peg goes; it is refused where a peg is wanting."""
    bench.begin("An empty loom")
    bench.drag("A1", "B1", "B2")
    bench.tool("Point")
    for name, peg in (("Copy it", "B5"), ("Move it", "A9")):
        bench.press_band("B1", "B2")
        bench.page.get_by_role("region", name="Band 1").wait_for()
        bench.click(name)
        bench.press(peg)
        bench.settle()
    over = [step["over"] for step in steps(tmp_path)]
    assert over == [["A9", "B9", "B10"], ["B5", "C5", "C6"]]
    bench.press_band("B9", "B10")
    bench.click("Move it")
    bench.press("A13")
    bench.page.get_by_text("That would lead off the loom.").wait_for()
    bench.page.keyboard.press("Escape")
    for _ in range(2):
        bench.page.keyboard.press("Control+z")
    bench.settle()
    assert [step["over"] for step in steps(tmp_path)] == [["A1", "B1", "B2"]]


def test_a_band_is_moved_by_keys_alone(bench: Bench, tmp_path: Path) -> None:
    """The stack names every band on a peg; from there it is taken up, and put down with Enter."""
    bench.begin("An empty loom")
    bench.drag("B2", "B3")
    page = bench.page
    page.keyboard.press("v")
    page.locator('[data-peg="B2"]').focus()
    page.keyboard.press("Shift+F10")
    page.get_by_role("region", name="Peg B2").get_by_role("button", name="Loop 1").focus()
    page.keyboard.press("Enter")
    page.get_by_role("region", name="Band 1").get_by_role("button", name="Move it").focus()
    page.keyboard.press("Enter")
    page.locator('[data-peg][tabindex="0"]').focus()
    assert page.evaluate("document.activeElement.dataset.peg") == "B2"
    page.keyboard.press("ArrowUp")
    there = page.evaluate("document.activeElement.dataset.peg")
    assert there != "B2"
    page.keyboard.press("Enter")
    bench.settle()
    assert steps(tmp_path)[0]["over"][0] == there


def test_steps_are_mirrored_and_turned_half_round(bench: Bench, tmp_path: Path) -> None:
    """The image follows the run, moved on; turned half round is mirrored both ways."""
    bench.begin("An empty loom")
    bench.drag("A1", "B1")
    bench.drag("A1", "A2")
    for name, mirror in (
        ("Mirror left to right", ["rows"]),
        ("Mirror near to far", ["pegs"]),
        ("Turn half round", ["rows", "pegs"]),
    ):
        bench.page.locator("button.step").first.click(modifiers=["Shift"])
        bench.click("With these 2 steps")
        bench.page.get_by_label("Move on each time, in pegs").fill("2")
        bench.page.get_by_role("dialog").get_by_role("button", name=name).click()
        bench.settle()
        first, image = steps(tmp_path)
        assert first == {"do": "motif", "name": "motif", "colours": {"A": "A"}}
        assert image == {**first, "mirror": mirror, "pegs": 2}
        bench.click("Undo")
        bench.settle()


def test_a_motif_is_laid_as_it_is_or_mirrored(bench: Bench) -> None:
    """Its first peg comes to lie where one presses, either way."""
    bench.begin("An empty loom")
    bench.drag("A1", "B1")
    bench.drag("B1", "B2")
    bench.page.locator("button.step").first.click(modifiers=["Shift"])
    bench.click("With these 2 steps")
    bench.page.get_by_label("Name of the motif").fill("wave")
    bench.click("Make a motif")
    bench.settle()
    bench.click("wave")
    bench.press("A5")
    bench.settle()
    assert "Lay A slate blue over B5 and B6" in bench.step
    bench.page.get_by_label("Mirror left to right").check()
    bench.page.get_by_label("Mirror near to far").check()
    bench.press("C9")
    bench.settle()
    assert "Lay A slate blue over B9 and B8" in bench.step


def test_bands_are_twisted_and_wound_over_several_pegs(bench: Bench, tmp_path: Path) -> None:
    """Times round and a half-twist hold for the next band; Shift, or the button, takes in more pegs."""
    bench.begin("An empty loom")
    page = bench.page
    page.get_by_label("Times round").fill("2")
    page.get_by_role("checkbox", name="Half-twist").check()
    bench.click("Several pegs")
    for peg in ("A1", "B1", "C1"):
        bench.press(peg)
    bench.click("Done")
    bench.settle()
    page.get_by_role("checkbox", name="Half-twist").uncheck()
    bench.click("Several pegs")
    bench.press("A3", shift=True)
    bench.press("B3", shift=True)
    bench.press("C4")
    bench.settle()
    assert steps(tmp_path) == [
        {"do": "place", "colour": "A", "over": ["A1", "B1", "C1"], "turns": [2, 2, 2], "twists": [1, 1]},
        {"do": "place", "colour": "A", "over": ["A3", "B3", "C4"], "turns": [2, 2, 2]},
    ]


def test_loops_are_lifted_slid_on_and_transferred(bench: Bench, tmp_path: Path) -> None:
    """Each of them is recorded as it is done; a loop higher up is lifted from the stack."""
    bench.begin("An empty loom")
    page = bench.page
    for _ in range(3):
        bench.drag("A1", "A2")
    bench.drag("B1", "B2")
    bench.tool("Lift over")
    bench.press("A1")
    bench.settle()
    page.mouse.click(*bench.middle("A2"), button="right")
    page.get_by_role("region", name="Peg A2").get_by_role("button", name="Loop 2").click()
    bench.settle()
    bench.tool("Transfer")
    bench.press("A1")
    bench.press("A3")
    bench.settle()
    bench.click("Hang on the hook")
    bench.settle()
    bench.tool("Slide on")
    bench.press("B1")
    bench.press("B2")
    bench.settle()
    assert steps(tmp_path)[4:] == [
        {"do": "lift", "at": "A1"},
        {"do": "lift", "at": "A2", "loop": 2},
        {"do": "transfer", "from": "A1", "to": "A3"},
        {"do": "hang", "colour": "A"},
        {"do": "slide", "from": "B1", "to": "B2"},
    ]
    assert page.locator(".error").count() == 0


def test_the_stack_is_one_press_away_whatever_is_in_hand(bench: Bench) -> None:
    """By the other mouse button, by the button above the loom, by the menu key; nothing is laid by it."""
    bench.begin("An empty loom")
    page = bench.page
    bench.drag("A1", "A2")
    stack = page.get_by_role("region", name="Peg A2")
    page.mouse.click(*bench.middle("A2"), button="right")
    stack.get_by_role("listitem").wait_for()
    stack.get_by_role("button", name="Close").click()
    page.get_by_role("button", name="Stack of A2").click()
    stack.wait_for()
    page.get_by_role("button", name="Stack of A2").click()
    assert stack.count() == 0
    page.locator('[data-peg="A2"]').focus()
    page.keyboard.press("Shift+F10")
    stack.wait_for()
    assert "1 of 1" in bench.step


def test_a_document_goes_out_and_comes_in(bench: Bench, tmp_path: Path) -> None:
    """What is downloaded is what lies on the disk; opened again it is another piece of the same steps."""
    bench.begin("Ebb line")
    page = bench.page
    with page.expect_download() as taken:
        bench.click("Save the document")
    given = json.loads(Path(taken.value.path()).read_text())
    assert given["steps"] == document(tmp_path)["steps"]
    given["title"] = "Flood line"
    file = tmp_path / "flood.json"
    file.write_text(json.dumps(given))
    bench.click("Shelf")
    page.locator('input[type="file"]').first.set_input_files(file)
    page.locator(".verdict").wait_for()
    bench.settle()
    assert page.get_by_label("Name of the piece").input_value() == "Flood line"
    assert bench.verdict == "✓ All 26 bands are held."
    file.write_text('{"pegwright": 2, "title": "Neither"}')
    bench.click("Shelf")
    page.locator('input[type="file"]').first.set_input_files(file)
    page.get_by_role("alert").wait_for()
    bench.faults.clear()  # the browser reports the refusal, as it should


def test_a_piece_is_duplicated_and_found_again(bench: Bench, tmp_path: Path) -> None:
    """The copy is a file of its own; the search looks through titles."""
    bench.begin("Plain chain")
    page = bench.page
    bench.click("Duplicate")
    title = page.get_by_label("Name of the piece")
    wait_until(lambda: title.input_value() == "Plain chain (copy)")
    assert len(list((tmp_path / "pieces").glob("*.json"))) == 2
    page.get_by_label("Name of the piece").fill("Breakwater")
    page.get_by_label("Name of the piece").press("Tab")
    bench.settle()
    bench.click("Shelf")
    own = page.locator("ul").first
    wait_until(lambda: set(own.locator("b").all_inner_texts()) == {"Plain chain", "Breakwater"})
    page.get_by_label("Search").fill("WATER")
    wait_until(lambda: own.locator("b").all_inner_texts() == ["Breakwater"])
    page.get_by_label("Search").fill("no such piece")
    page.get_by_text("No piece with that name.").wait_for()


def test_a_piece_is_taken_off_the_shelf_and_put_back(bench: Bench) -> None:
    """One press takes it away, another brings it back."""
    page = bench.page
    bench.begin("Plain chain")
    bench.click("Shelf")
    page.get_by_role("button", name="Take it off the shelf: Plain chain").click()
    page.get_by_text("was taken off the shelf").wait_for()
    assert page.get_by_role("heading", name="Your pieces").count() == 0
    bench.click("Put it back")
    page.get_by_role("heading", name="Your pieces").wait_for()
    page.locator("li button", has_text="Plain chain").first.click()
    page.locator(".verdict").wait_for()
    bench.settle()
    assert bench.verdict == "✓ All 13 bands are held."


def test_motifs_are_found_on_the_shelf_and_brought_along(bench: Bench, tmp_path: Path) -> None:
    """A motif of one piece is laid in another; a new piece begins with one."""
    page = bench.page
    page.get_by_role("button", name="light of Riding lights", exact=True).click()
    page.locator(".verdict").wait_for()
    bench.settle()
    assert document(tmp_path)["title"] == "light"
    assert bench.verdict == "Nothing closes it yet. 5 bands are laid."
    bench.click("Shelf")
    bench.begin("An empty loom")
    bench.click("From the shelf")
    shelf = page.get_by_role("dialog", name="From the shelf")
    shelf.get_by_label("Search").fill("outline")
    wait_until(lambda: "light" not in shelf.locator("b").all_inner_texts())
    bench.shot("making-motifs")
    shelf.get_by_role("button", name="outline of Riding lights").first.click()
    bench.settle()
    bench.press("B3")
    bench.settle()
    assert "Lay A slate blue over C4 and B5" in bench.step
    page.keyboard.press("Control+z")
    page.keyboard.press("Control+z")
    bench.settle()
    assert "motifs" not in document(tmp_path)


def test_the_stash_serves_every_piece(bench: Bench, tmp_path: Path) -> None:
    """A colour that is written down in one piece is taken in another, and what is short is said."""
    page = bench.page
    bench.begin("Plain chain")
    bench.click("New colour")
    page.get_by_label("Name", exact=True).fill("weed green")
    page.get_by_label("At hand").fill("40")
    bench.click("Add", exact=True)
    page.get_by_role("button", name="Change: A slate blue").click()
    page.get_by_label("At hand").fill("9")
    page.get_by_role("dialog").get_by_role("button", name="Change", exact=True).click()
    page.get_by_text("slate blue: 13 bands · 4 short").wait_for()
    bench.settle()
    stash = json.loads((tmp_path / "pieces" / "stash.json").read_text())
    assert {(goods["colour"], goods["have"]) for goods in stash["bands"]} == {
        ("weed green", 40),
        ("slate blue", 9),
    }
    bench.click("Shelf")
    bench.begin("An empty loom")
    bench.click("New colour")
    page.get_by_role("button", name="weed green · 40").click()
    bench.settle()
    bench.drag("A1", "A2")
    page.get_by_text("weed green: 1 band · 40 at hand").wait_for()


def test_the_colours_are_tried_the_other_way_round_and_kept(deep_bench: Bench, tmp_path: Path) -> None:
    """Another colourway is only a look until it is kept; then it is one edit."""
    bench = deep_bench
    bench.begin("Ebb line")
    before = [colour["hex"] for colour in document(tmp_path)["colours"]]
    bench.page.get_by_role("button", name="Look closely").click(timeout=300_000)
    bench.click("Other colours")
    assert [colour["hex"] for colour in document(tmp_path)["colours"]] == before
    bench.click("Keep these")
    bench.settle()
    after = [colour["hex"] for colour in document(tmp_path)["colours"]]
    assert after != before
    assert sorted(after) == sorted(before)
    bench.click("Undo")
    bench.settle()
    assert [colour["hex"] for colour in document(tmp_path)["colours"]] == before


def test_it_is_closed_round_the_wrist_by_the_solver(deep_bench: Bench) -> None:
    """First it is drawn bent, then as it settles; repeats are offered, and the proof holds for them."""
    bench = deep_bench
    page = bench.page
    bench.begin("Herring tail")
    bench.settle_off_the_loom()
    fit = page.get_by_role("region", name="Fit")
    fit.get_by_text("One repeat is").wait_for(timeout=300_000)
    page.get_by_label("Wrist", exact=True).fill("15 cm")
    offer = fit.get_by_role("button", name="Make it fit")
    wait_until(lambda: "repeats more" in offer.inner_text())
    bench.click("Look closely")
    bench.click("On the wrist")
    page.get_by_text(re.compile("Closing it|Closed round the wrist")).first.wait_for()  # it may be quick
    page.get_by_text("Closed round the wrist and settled there.").wait_for(timeout=300_000)
    bench.shot("making-worn")
    bands = int(bench.verdict.split()[2])
    offer.click()
    bench.settle()
    assert bench.verdict.startswith("✓ All ")
    assert int(bench.verdict.split()[2]) > bands
    bench.click("Undo")
    bench.settle()
    assert bench.verdict == f"✓ All {bands} bands are held."


def test_the_loom_is_changed_as_what_it_is(bench: Bench, tmp_path: Path) -> None:
    """A round loom stays round, with other pegs; it is made another kind only where that is asked for."""
    page = bench.page
    bench.begin("Lobster pot")
    before = document(tmp_path)["loom"]
    assert before["kind"] == "round"
    bench.click("Change the loom")
    page.get_by_role("dialog").get_by_role("button", name="Change", exact=True).click()
    assert document(tmp_path)["loom"] == before
    bench.click("Change the loom")
    page.get_by_label("Pegs of a ring").fill("16")
    page.get_by_role("dialog").get_by_role("button", name="Change", exact=True).click()
    bench.settle()
    loom = document(tmp_path)["loom"]
    assert (loom["kind"], loom["pegs"], loom["diameter_mm"]) == ("round", 16, before["diameter_mm"])
    assert page.locator("[data-peg]").count() == 16 * loom.get("rings", 1)
    bench.click("Change the loom")
    page.get_by_role("dialog").locator("select").first.select_option("joined")
    page.get_by_label("Looms joined").fill("2")
    page.get_by_label("Rows", exact=True).fill("1")
    page.get_by_label("Pegs in a row").fill("5")
    page.get_by_role("dialog").get_by_role("button", name="Change", exact=True).click()
    bench.settle()
    assert page.locator("[data-peg]").count() == 10
    bench.click("Undo")
    bench.click("Undo")
    bench.settle()
    assert document(tmp_path)["loom"] == before


def touch(page: Page, *spots: tuple[float, float]) -> None:
    """Put a finger down, draw it over the spots, and lift it."""
    session = page.context.new_cdp_session(page)
    for kind, points in (
        ("touchStart", spots[:1]),
        *(("touchMove", (spot,)) for spot in spots[1:]),
        ("touchEnd", ()),
    ):
        touches = [{"x": x, "y": y} for x, y in points]
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": touches})


def test_all_that_shift_does_is_done_by_touch(browser: Browser, address: str, tmp_path: Path) -> None:
    """A finger draws a band over pegs, takes in several pegs for a knot, and marks steps."""
    context = browser.new_context(viewport={"width": 900, "height": 700}, has_touch=True, locale="en-GB")
    page = context.new_page()
    page.goto(address)
    bench = Bench(page)
    page.locator("li button", has_text="An empty loom").tap()
    page.get_by_role("button", name="Begin", exact=True).tap()
    page.locator(".verdict").wait_for()
    bench.settle()
    for pegs in (("A1", "A2"), ("B1", "B2", "B3")):
        page.locator('[data-peg="A1"]').scroll_into_view_if_needed()
        touch(page, *(bench.middle(peg) for peg in pegs))
        bench.settle()
    page.get_by_role("button", name="Knot", exact=True).tap()
    page.get_by_role("button", name="Several pegs").tap()
    page.locator('[data-peg="A1"]').scroll_into_view_if_needed()
    for peg in ("A1", "B1"):
        page.touchscreen.tap(*bench.middle(peg))
    page.get_by_role("button", name="Done").tap()
    bench.settle()
    assert [step.get("over", step.get("at")) for step in steps(tmp_path)] == [
        ["A1", "A2"],
        ["B1", "B2", "B3"],
        ["A1", "B1"],
    ]
    page.get_by_role("button", name="Mark steps").tap()
    page.locator("button.step").first.tap()
    page.get_by_role("button", name="With these 3 steps").tap()
    page.get_by_role("dialog").get_by_role("button", name="Take them out").tap()
    bench.settle()
    assert steps(tmp_path) == []
    context.close()
