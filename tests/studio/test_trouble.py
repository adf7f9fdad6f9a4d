"""What goes wrong is said and drawn: a step that cannot be made, a piece that falls, work cut short."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints


def test_a_step_that_cannot_be_made_is_seen_and_taken_out(bench: Bench) -> None:
    """Clip twice: the second clip is named beside the steps that were made, and one press takes it out."""
    bench.begin("Plain chain")
    bench.page.keyboard.press("c")
    bench.press("A13")
    bench.settle()
    faulty = bench.page.locator(".impossible")
    expect(faulty).to_contain_text("Step 27 cannot be made. Clip the loops of A13")
    bench.shot("trouble-step")
    assert complaints(bench.page) == []
    faulty.get_by_role("button", name="Take this step out").click()
    bench.settle()
    expect(faulty).to_have_count(0)
    assert bench.verdict == "✓ All 13 bands are held."


def test_a_piece_that_falls_apart_says_so_and_shows_what_is_left(deep_bench: Bench) -> None:
    """No absurd length, no blank picture, no fit of what does not hold."""
    bench = deep_bench
    page = bench.page
    bench.begin("An empty loom")
    bench.drag("A1", "A2")
    bench.drag("A5", "A6")
    page.keyboard.press("c")
    bench.press("A1")
    bench.settle()
    piece = page.get_by_role("region", name="Off the loom")
    piece.get_by_text("It falls apart:").wait_for(timeout=120_000)
    size = piece.locator(".size").inner_text()
    assert size == "" or float(size.split()[0]) < 100
    expect(page.get_by_role("region", name="Fit")).to_have_count(0)
    bench.shot("trouble-falls")


def test_a_lesson_that_is_cut_short_gives_a_reason_and_another_try(bench: Bench) -> None:
    """The job is overtaken or stopped: the page never stays blank."""
    page = bench.page
    bench.begin("Plain chain")
    page.route("**/api/jobs?*", lambda route: route.fulfill(json={"job": "none", "state": "ended"}))
    bench.click("The lesson")
    wait = page.get_by_role("dialog").locator(".wait")
    expect(wait).to_contain_text("It was stopped before it was ready.")
    page.unroute("**/api/jobs?*")
    wait.get_by_role("button", name="Once more").click()
    page.frame_locator("iframe").get_by_role("heading", name="Plain chain").wait_for()


def test_the_loose_end_is_pressed_and_closed_with_the_far_end(bench: Bench, tmp_path: Path) -> None:
    """One guided gesture: press the loose end, then the peg at the other end."""
    page = bench.page
    bench.begin("Plain chain")
    bench.click("Take this step out")
    bench.settle()
    bench.press(str(page.get_by_role("button", name="Loose end").get_attribute("data-peg")))
    page.get_by_text("Now press the peg at the far end").wait_for()
    bench.press("A13")
    bench.settle()
    assert bench.verdict == "✓ All 13 bands are held."
    [file] = (tmp_path / "pieces").glob("*.json")
    assert len(json.loads(file.read_text())["steps"][-1]["at"]) == 2


def test_keys_are_shown_and_the_loom_is_ready_for_them(bench: Bench) -> None:
    """The first peg has the focus on opening; the question mark shows the keys; a mend keeps the focus."""
    page = bench.page
    bench.begin("An empty loom")
    assert page.evaluate("document.activeElement.dataset.peg") == "A1"
    page.keyboard.press("?")
    page.get_by_role("dialog", name="Keys").get_by_text("Lift over").wait_for()
    assert complaints(page) == []
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Shelf", exact=True).focus()
    for _ in range(10):
        page.keyboard.press("Tab")
        if page.evaluate("!!document.activeElement.dataset.peg"):
            break
    assert page.evaluate("document.activeElement.dataset.peg") == "A1"
    page.get_by_role("button", name="Shelf", exact=True).click()
    bench.begin("Plain chain")
    bench.click("Take this step out")
    bench.settle()
    page.get_by_role("button", name="Mend it: clip").first.focus()
    page.keyboard.press("Enter")
    bench.settle()
    assert page.evaluate("document.activeElement !== document.body")


@pytest.mark.parametrize(
    ("locale", "shelf", "words"),
    [
        ("de-DE", "Ein leerer Webrahmen", "A schieferblau über A1 und A2 legen"),
        ("es-ES", "Un telar vacío", "Coloca A azul pizarra sobre A1 y A2"),
    ],
)
def test_steps_are_said_in_the_pages_language(
    browser: Browser, address: str, locale: str, shelf: str, words: str
) -> None:
    """Never the notation, and never another language's words."""
    context = browser.new_context(viewport={"width": 1366, "height": 768}, locale=locale)
    page = context.new_page()
    page.goto(address)
    page.locator("li button", has_text=shelf).click()
    page.keyboard.press("Enter")
    page.locator("[data-peg]").first.wait_for()
    bench = Bench(page)
    for peg in ("A1", "A2"):
        bench.press(peg)
    expect(page.locator("output")).to_contain_text(words)
    clipped = page.locator(".tools button").evaluate_all(
        "all => all.filter((one) => one.scrollWidth > one.clientWidth + 1)"
        ".map((one) => one.textContent.trim())"
    )
    assert clipped == []
    context.close()
