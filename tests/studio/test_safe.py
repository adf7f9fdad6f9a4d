"""Nothing is lost: two windows, a stopped studio, versions."""

from __future__ import annotations

import json
from pathlib import Path

from playwright.sync_api import Dialog

from tests.studio.conftest import Bench, wait_until


def test_two_windows_never_overwrite_each_other(bench: Bench, address: str) -> None:
    """The second window is told, and may keep its own as a copy; both works are then on the shelf."""
    bench.begin("Plain chain")
    page = bench.page
    other = Bench(page.context.new_page())
    other.page.goto(address)
    other.page.locator("li button", has_text="Plain chain").first.click()
    other.page.locator(".verdict").wait_for()
    other.settle()
    for each, title in ((bench, "One"), (other, "Other")):
        each.page.bring_to_front()
        each.page.get_by_label("Name of the piece").fill(title)
        each.page.get_by_label("Name of the piece").press("Tab")
        if each is bench:
            bench.settle()
    other.page.get_by_text("This piece was changed in another window.").wait_for()
    other.faults.clear()  # the browser reports the refused save, as it should
    other.click("Keep mine as a copy")
    other.settle()
    other.click("Shelf")
    titles = other.page.locator("li b")
    wait_until(lambda: {"One", "Other"} <= set(titles.all_inner_texts()))


def test_a_piece_is_there_again_after_a_reload(bench: Bench, tmp_path: Path) -> None:
    """An edit is on the disk within a second; the page comes back to its piece, the shelf opens it."""
    bench.begin("An empty loom")
    bench.drag("A1", "A2")
    [file] = (tmp_path / "pieces").glob("*.json")
    assert json.loads(file.read_text())["steps"] == [{"do": "place", "colour": "A", "over": ["A1", "A2"]}]
    bench.page.reload()
    bench.page.locator(".verdict").wait_for()
    bench.settle()
    assert bench.stack("A1") == "Peg A1, 1 loop"
    bench.click("Shelf")
    bench.page.locator("li button", has_text="New piece").first.click()
    bench.page.locator(".verdict").wait_for()
    bench.settle()
    assert bench.stack("A1") == "Peg A1, 1 loop"
    bench.click("Shelf")
    bench.page.get_by_role("heading", name="Your pieces").wait_for()
    bench.page.reload()
    bench.page.get_by_role("heading", name="Your pieces").wait_for()


def test_versions_are_compared_in_a_makers_words(bench: Bench) -> None:
    """A version says how the piece differs from it, and one press goes back; that can be undone."""
    bench.begin("Plain chain")
    page = bench.page
    bench.click("Versions")
    bench.click("Keep this version")
    page.get_by_role("button", name="kept ").first.wait_for()
    bench.click("Close", exact=True)
    bench.click("Place ·")
    page.keyboard.press("l")
    bench.drag("A12", "A13")
    bench.click("Versions")
    page.get_by_role("button", name="kept ").first.click()
    lines = page.locator(".lines li")
    lines.first.wait_for()
    assert lines.all_inner_texts() == ["one more band in A", "step 13 new"]
    bench.shot("versions")
    bench.click("Go back to it")
    bench.settle()
    assert bench.verdict == "✓ All 13 bands are held."
    bench.click("Undo")
    bench.settle()
    bench.click("To the end")
    assert "of 27" in bench.step


EVIL = "<img src=x onerror=alert(1)><script>alert(2)</script>"


def test_hostile_text_in_any_field_of_a_document_stays_text(bench: Bench, tmp_path: Path) -> None:
    """A document whose every text is markup is opened, brought from, and taught: nothing of it runs."""
    page = bench.page
    asked: list[str] = []

    def answer(dialog: Dialog) -> None:
        asked.append(dialog.message)
        dialog.dismiss()

    page.on("dialog", answer)
    place = {
        "do": "place",
        "colour": "A",
        "over": ["A1", "A2"],
        "note": EVIL,
        "warning": EVIL,
        "picture": EVIL,
    }
    document = {
        "pegwright": 2,
        "title": EVIL,
        "designer": EVIL,
        "licence": EVIL,
        "notes": EVIL,
        "loom": {"kind": "rows", "rows": 1, "pegs": 4},
        "colours": [{"letter": "A", "name": EVIL, "hex": "#34506b"}],
        "motifs": [{"name": EVIL, "steps": [place], "note": EVIL}],
        "steps": [{"do": "motif", "name": EVIL, "note": EVIL}, {"do": "knot", "at": ["A1", "A2"]}],
    }
    file = tmp_path / "evil.json"
    file.write_text(json.dumps(document))
    page.locator('input[type="file"]').first.set_input_files(file)
    page.locator(".verdict").wait_for()
    bench.settle()
    assert page.get_by_label("Name of the piece").input_value() == EVIL
    bench.click("From the shelf")
    page.get_by_role("dialog").get_by_text(f"of {EVIL}").wait_for()
    page.get_by_role("dialog").get_by_role("button", name="Close").click()
    bench.click("The lesson")
    page.frame_locator("iframe").get_by_role("heading", name=EVIL).first.wait_for()
    assert page.frame_locator("iframe").locator("img[src='x']").count() == 0
    bench.click("Close", exact=True)
    bench.click("Shelf")
    page.get_by_text(EVIL, exact=True).first.wait_for()
    assert page.locator("img").count() == 0
    assert asked == []
