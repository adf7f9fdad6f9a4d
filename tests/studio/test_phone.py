"""On a phone: the board fills the screen, tools lie under the thumb, and nothing moves under a finger."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints


@pytest.fixture
def phone(browser: Browser, address: str) -> Iterator[Bench]:
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, locale="en-GB")
    page = context.new_page()
    page.goto(address)
    page.get_by_role("heading", name="Lay a first piece").wait_for()
    bench = Bench(page)
    page.locator("li button", has_text="An empty loom").tap()
    page.get_by_role("button", name="Begin", exact=True).tap()
    page.locator("[data-peg]").first.wait_for()
    yield bench
    context.close()
    assert bench.faults == []


class Finger:
    """One finger on the glass, by the browser's own touch events."""

    def __init__(self, page: Page) -> None:
        self.session = page.context.new_cdp_session(page)

    def touch(self, kind: str, *at: tuple[float, float]) -> None:
        points = [{"x": x, "y": y} for x, y in at]
        self.session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})


def test_nothing_moves_under_a_finger(phone: Bench) -> None:
    """A drag lays the band that it goes over: the board stays where it is while the tip changes."""
    page = phone.page
    finger = Finger(page)
    for a, b in (("A1", "A2"), ("B2", "B3"), ("C4", "B4")):
        before = {peg: phone.middle(peg) for peg in (a, b)}
        finger.touch("touchStart", before[a])
        page.wait_for_timeout(80)  # the words above the board change
        assert phone.middle(b) == before[b], "the board moved under the finger"
        finger.touch("touchMove", before[b])
        page.wait_for_timeout(30)
        assert phone.middle(a) == before[a]
        finger.touch("touchEnd")
        phone.page.wait_for_function("() => document.querySelector('.state').textContent === 'Saved'")
    page.get_by_role("button", name="Steps").tap()
    assert "3 of 3" in phone.step
    assert [phone.stack(peg) for peg in ("A1", "A2", "B2", "B3", "C4", "B4")] == [
        f"Peg {peg}, 1 loop" for peg in ("A1", "A2", "B2", "B3", "C4", "B4")
    ]


def test_the_board_fills_the_screen_and_the_rest_is_pulled_up(phone: Bench) -> None:
    """At once, without scrolling: back, name, lesson above; tools and panels below; sheets between."""
    page = phone.page
    phone.shot("phone-1-board")
    assert page.evaluate(
        "[scrollY, document.documentElement.scrollHeight, document.documentElement.scrollWidth]"
    ) == [
        0,
        844,
        390,
    ]
    board: Any = page.locator(".table").bounding_box()
    assert board["height"] > 500
    assert board["width"] == 390
    tools: Any = page.get_by_role("toolbar").bounding_box()
    assert tools["y"] > 700
    assert complaints(page) == []
    for name, inside in (
        ("Found", page.locator(".verdict")),
        ("Bands", page.get_by_role("radio", name="A slate blue")),
        ("Steps", page.get_by_text("Nothing is laid yet.").last),
        ("Finished", page.get_by_role("region", name="Off the loom")),
        ("More", page.get_by_role("button", name="Versions")),
    ):
        page.get_by_role("navigation").get_by_role("button", name=name, exact=True).tap()
        inside.wait_for()
        box: Any = inside.bounding_box()
        assert 0 <= box["x"] <= 390
        assert 100 < box["y"] < 740
        assert page.evaluate("document.documentElement.scrollWidth") == 390
        phone.shot(f"phone-2-{name.lower()}")
        assert complaints(page) == []
        page.get_by_role("navigation").get_by_role("button", name=name, exact=True).tap()


def test_a_chain_is_made_with_a_thumb(phone: Bench) -> None:
    """From the empty loom to a held piece by taps alone."""
    page = phone.page

    def tap(*pegs: str) -> None:
        for peg in pegs:
            page.touchscreen.tap(*phone.middle(peg))
        page.wait_for_function("() => document.querySelector('.state').textContent === 'Saved'")

    def press(name: str) -> None:
        page.get_by_role("button", name=name, exact=True).first.tap()

    tap("A1", "A2")
    press("Once more")
    page.wait_for_timeout(300)
    press("Once more")
    page.wait_for_timeout(300)
    press("Hook")
    for source, target in (("A3", "A2"), ("A2", "A1")):
        tap(source, target)
        page.wait_for_timeout(300)
    press("Knot")
    tap("A1")
    page.get_by_role("navigation").get_by_role("button", name="Found").tap()
    page.locator(".verdict").get_by_text("All 3 bands are held.").wait_for()
    phone.shot("phone-3-held")
