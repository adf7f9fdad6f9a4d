"""For everyone: by keyboard alone, by screen reader, in three languages, on a small screen."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.studio.conftest import Bench, wait_until

AXE = Path(__file__).parents[2] / "frontend" / "node_modules" / "axe-core" / "axe.min.js"


def complaints(page: Page) -> list[str]:
    """Return what axe-core (rules WCAG 2.0–2.2 A and AA, and best practice) finds on the page."""
    # Through the debugger's own door: the page's content policy lets no script in, as it should.
    session = page.context.new_cdp_session(page)
    session.send("Runtime.evaluate", {"expression": AXE.read_text()})
    found: Any = session.send(
        "Runtime.evaluate",
        {
            "expression": "axe.run(document).then(r => JSON.stringify(r.violations.map(v =>"
            " v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(' | '))))",
            "awaitPromise": True,
            "returnByValue": True,
        },
    )
    import json

    return list(json.loads(found["result"]["value"]))


def test_axe_finds_nothing_on_the_shelf(bench: Bench) -> None:
    """The shelf is clean."""
    assert complaints(bench.page) == []


def test_axe_finds_nothing_at_the_bench(bench: Bench) -> None:
    """The bench is clean: with a piece, with an open stack, with findings, with a dialog."""
    bench.begin("Riding lights")
    assert complaints(bench.page) == []
    bench.click("Place ·")
    bench.press("B2")
    bench.page.get_by_role("region", name="Peg B2").wait_for()
    assert complaints(bench.page) == []
    bench.click("Change the loom")
    assert complaints(bench.page) == []


def test_axe_finds_nothing_off_the_loom_and_in_the_lesson(deep_bench: Bench) -> None:
    """The finished piece with its fit, beside the loom and large, and the lesson, are clean."""
    bench = deep_bench
    bench.begin("Plain chain")
    bench.settle_off_the_loom()
    assert complaints(bench.page) == []
    bench.click("Look closely")
    bench.click("Pull")
    assert complaints(bench.page) == []
    bench.click("The lesson")
    bench.page.frame_locator("iframe").get_by_role("heading", name="Plain chain").wait_for()
    assert complaints(bench.page) == []


def test_the_piece_is_turned_by_keys_by_buttons_and_by_touch(deep_bench: Bench) -> None:
    """Every gesture has a key and a button; with reduced motion there is nothing in between."""
    bench = deep_bench
    page = bench.page
    page.emulate_media(reduced_motion="reduce")
    bench.begin("Plain chain")
    bench.settle_off_the_loom()
    bench.click("Look closely")
    view = page.get_by_role("application", name="Off the loom")

    def looks_other_after(what: Any) -> None:
        before = view.screenshot()
        what()
        wait_until(lambda: view.screenshot() != before)

    for name in ("Turn to the left", "Turn away", "Larger", "On the wrist", "Pull", "Front"):
        button = page.get_by_role("region", name="Off the loom").get_by_role("button", name=name, exact=True)
        looks_other_after(button.click)
    view.focus()
    for key in ("ArrowRight", "ArrowDown", "+", "-"):
        looks_other_after(lambda key=key: page.keyboard.press(key))
    box: Any = view.bounding_box()
    page.mouse.move(box["x"] + 200, box["y"] + 200)
    page.mouse.down()
    looks_other_after(lambda: page.mouse.move(box["x"] + 300, box["y"] + 240, steps=3))
    page.mouse.up()


def test_a_browser_without_three_dimensions_says_so(bench: Bench) -> None:
    """Nothing breaks; the size and the fit are told all the same."""
    bench.page.add_init_script(
        "const given = HTMLCanvasElement.prototype.getContext;"
        "HTMLCanvasElement.prototype.getContext = function (kind, ...more) {"
        " return kind.startsWith('webgl') ? null : given.call(this, kind, ...more); };"
    )
    bench.page.reload()
    bench.page.get_by_role("heading", name="Lay a first piece").wait_for()
    bench.begin("Plain chain")
    bench.page.get_by_text("This browser cannot draw in three dimensions.").wait_for(timeout=300_000)
    bench.settle_off_the_loom()
    bench.faults[:] = [said for said in bench.faults if "WebGL" not in said]


def test_a_chain_by_keyboard_alone(bench: Bench) -> None:
    """From the shelf to a held chain without the mouse."""
    page = bench.page
    page.get_by_role("button", name="An empty loom").focus()
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")  # the name that is offered
    page.locator(".verdict").wait_for()
    bench.settle()
    page.locator('[data-peg][tabindex="0"]').focus()
    assert page.evaluate("document.activeElement.dataset.peg") == "A1"
    away = (
        "ArrowRight"
        if page.get_by_role("button", name="On its side").get_attribute("aria-pressed") == "true"
        else "ArrowUp"
    )
    back = {"ArrowRight": "ArrowLeft", "ArrowUp": "ArrowDown"}[away]
    page.keyboard.press("l")
    page.keyboard.press("Enter")
    page.keyboard.press(away)
    page.keyboard.press("Enter")
    bench.settle()
    assert "Lay A slate blue over A1 and A2" in bench.step
    for _ in range(2):
        page.keyboard.press("a")
        bench.settle()
    assert page.evaluate("document.activeElement.dataset.peg") == "A2"
    page.keyboard.press(away)
    page.keyboard.press("h")
    for _ in range(2):
        page.keyboard.press("Enter")
        page.keyboard.press(back)
        page.keyboard.press("Enter")
        bench.settle()
    page.keyboard.press("k")
    page.keyboard.press("Enter")
    bench.settle()
    assert bench.verdict == "✓ All 3 bands are held."


@pytest.mark.parametrize(
    ("locale", "heading"), [("de-DE", "Leg ein erstes Stück"), ("es-ES", "Coloca una primera pieza")]
)
def test_it_speaks_the_makers_language(browser: Browser, address: str, locale: str, heading: str) -> None:
    """The page opens in the browser's language, and another can be chosen and is remembered."""
    context = browser.new_context(locale=locale)
    page = context.new_page()
    page.goto(address)
    page.get_by_role("heading", name=heading).wait_for()
    assert page.locator("html").get_attribute("lang") == locale[:2]
    page.locator("select").select_option("en")
    page.get_by_role("heading", name="Lay a first piece").wait_for()
    page.reload()
    page.get_by_role("heading", name="Lay a first piece").wait_for()
    context.close()


def test_what_was_found_is_said_in_the_language_that_is_chosen(bench: Bench) -> None:
    """At the bench, at once, with the fix; a move that cannot be made is told in it too."""
    bench.begin("An empty loom")
    bench.drag("A1", "A2")
    bench.page.keyboard.press("a")
    bench.settle()
    bench.page.keyboard.press("h")
    bench.press("A2")
    bench.press("A1")
    bench.settle()
    found = bench.page.locator("section", has=bench.page.locator(".verdict"))
    found.get_by_text("nothing closes the piece: there is no clip and no knot").wait_for()
    bench.page.get_by_label("Language", exact=True).select_option("de")
    found.get_by_text("nichts schließt das Stück: Es fehlt ein Clip oder ein Knoten").wait_for()
    assert "schließ mit einem Clip oder einem Knoten" in found.inner_text()
    bench.shot("findings-de")
    bench.page.get_by_label("Sprache", exact=True).select_option("es")
    found.get_by_text("nada cierra la pieza: no hay cierre ni nudo").wait_for()
    bench.shot("findings-es")
    found.get_by_role("button", name="Arreglar: unir los dos extremos con un cierre: A1 y A3").click()
    bench.page.locator(".verdict").get_by_text("✓").wait_for()
    bench.page.get_by_label("Idioma", exact=True).select_option("en")
    bench.settle()
    assert bench.verdict == "✓ All 2 bands are held."


def test_the_left_handed_view_changes_sides(bench: Bench) -> None:
    """Tools lie under the left hand, or under the right one."""
    page = bench.page

    def tools_left_of_loom() -> bool:
        tools: Any = page.get_by_role("toolbar").bounding_box()
        loom: Any = page.locator(".table").bounding_box()
        return bool(tools["x"] < loom["x"])

    bench.begin("Plain chain")
    assert tools_left_of_loom()
    bench.click("Shelf")
    page.get_by_label("Left-handed").check()
    page.locator("li button", has_text="Plain chain").first.click()
    page.locator(".verdict").wait_for()
    assert not tools_left_of_loom()


def test_it_works_by_touch_on_a_small_screen(browser: Browser, address: str) -> None:
    """Nothing is wider than a narrow screen, and a tap lays a band."""
    context = browser.new_context(viewport={"width": 390, "height": 800}, has_touch=True, locale="en-GB")
    page = context.new_page()
    page.goto(address)
    page.get_by_role("heading", name="Lay a first piece").wait_for()
    bench = Bench(page)
    page.locator("li button", has_text="An empty loom").tap()
    page.get_by_role("button", name="Begin", exact=True).tap()
    page.locator("[data-peg]").first.wait_for()
    bench.settle()
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    for peg in ("A1", "A2"):
        page.locator(f'[data-peg="{peg}"]').scroll_into_view_if_needed()
        page.touchscreen.tap(*bench.middle(peg))
    bench.settle()
    page.get_by_role("navigation").get_by_role("button", name="Steps").tap()
    assert "Lay A slate blue over A1 and A2" in bench.step
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    bench.shot("small")
    context.close()


def test_hostile_text_is_shown_literally(bench: Bench) -> None:
    """Markup in a title or a colour's name stays text."""
    bench.begin("Plain chain")
    page = bench.page
    evil = "<img src=x onerror=alert(1)>"
    page.get_by_label("Name of the piece").fill(evil)
    page.get_by_label("Name of the piece").press("Tab")
    bench.click("New colour")
    page.get_by_label("Name", exact=True).fill(evil)
    bench.click("Add", exact=True)
    bench.settle()
    assert page.locator("img").count() == 0
    bench.click("Shelf")
    page.get_by_text(evil).first.wait_for()
    assert page.locator("img").count() == 0
