"""The page and the prompter in a real browser: keys, swipes, buttons, memory; axe-core finds nothing."""

from __future__ import annotations

import os
import shutil
import warnings
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Playwright

from pegwright.lesson import Conclusion, Fork, write_script
from pegwright.press import page_html, prompter_html
from tests.lesson.pieces import dinghy, ebb, lesson

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
AXE = Path(__file__).parents[2] / "frontend" / "node_modules" / "axe-core" / "axe.min.js"
pytestmark: list[pytest.MarkDecorator] = []
if not (CHROMIUM and AXE.is_file()) and not os.environ.get("CI"):
    warnings.warn("LEFT OUT, for want of Chromium or axe-core: the page by hand", stacklevel=1)
    pytestmark.append(pytest.mark.skip(reason="no Chromium or no axe-core"))

PHONE = {"width": 390, "height": 780}


@pytest.fixture(scope="module")
def browser(playwright: Playwright) -> Iterator[object]:
    opened = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
    yield opened
    opened.close()


@pytest.fixture
def page(browser, tmp_path: Path):  # type: ignore[no-untyped-def]
    """Open a page for both hands on a phone without a network; any error of the browser fails."""
    one, two = lesson(dinghy()), lesson(dinghy(mirrored=True), hand="left")
    (tmp_path / "page.html").write_text(page_html(one, two), encoding="utf-8")
    (tmp_path / "prompter.html").write_text(prompter_html(one, write_script(one)), encoding="utf-8")
    context = browser.new_context(viewport=PHONE, has_touch=True, offline=True)
    opened = context.new_page()
    said: list[str] = []
    opened.on("console", lambda m: said.append(m.text) if m.type == "error" else None)
    opened.on("pageerror", lambda e: said.append(str(e)))
    opened.goto((tmp_path / "page.html").as_uri())
    yield opened
    assert said == []
    context.close()


def _at(page) -> int:  # type: ignore[no-untyped-def]
    return int(page.inner_text("#progress").split()[0])


def test_buttons_keys_and_swipes_move_on_and_back(page) -> None:  # type: ignore[no-untyped-def]
    """Each of the three ways, both directions, and both ends hold."""
    page.click("#next")
    page.keyboard.press("ArrowRight")
    assert _at(page) == 3
    assert page.evaluate("document.activeElement.textContent") == page.inner_text(".leaf:not([hidden]) h2")
    _swipe(page, -150)
    assert _at(page) == 4
    _swipe(page, 150)
    page.keyboard.press("ArrowLeft")
    page.click("#back")
    assert _at(page) == 1
    page.keyboard.press("ArrowLeft")
    assert _at(page) == 1
    assert page.is_disabled("#back")
    page.keyboard.press("End")
    assert page.is_disabled("#next")
    page.click("summary >> nth=0")
    page.click("#first")
    assert _at(page) == 1


def _swipe(page, dx: int) -> None:  # type: ignore[no-untyped-def]
    page.evaluate(
        """dx => {
            const touch = (x) =>
                new Touch({ identifier: 1, target: document.body, clientX: x, clientY: 300 });
            const send = (type, x) => document.body.dispatchEvent(new TouchEvent(type, { bubbles: true,
                touches: type === "touchend" ? [] : [touch(x)], changedTouches: [touch(x)] }));
            send("touchstart", 200); send("touchend", 200 + dx);
        }""",
        dx,
    )


def _open_again_after(page, act: Callable[[], None]) -> None:  # type: ignore[no-untyped-def]
    """Do something, and reload until it is there again.

    A browser stores behind the page's back, and one that is short of everything may lose what it has not
    written down; then the page is as it was before, and it is done once more.
    """
    lost = []
    for _ in range(3):
        act()
        kept = page.evaluate("JSON.stringify(localStorage)")
        for _ in range(30):
            page.reload()
            found = page.evaluate("JSON.stringify(localStorage)")
            if found == kept:
                return
        lost.append((kept, found))
    raise AssertionError(f"never seen again: {lost}")


def test_place_hand_and_size_are_remembered(page) -> None:  # type: ignore[no-untyped-def]
    """After closing and opening again everything is as it was left."""

    def act() -> None:
        page.click("summary >> nth=0")
        page.click("#left")
        page.click("#large")
        page.select_option("#goto", "4")

    _open_again_after(page, act)
    assert _at(page) == 5
    assert page.get_attribute("#left", "aria-pressed") == "true"
    assert page.is_visible('[data-hand="left"]')
    assert not page.is_visible('[data-hand="right"]')
    assert page.evaluate("document.documentElement.classList.contains('large')")


def test_rounds_ticked_off_are_remembered(page, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    """A maker who puts the telephone away in the fifth round goes on with the sixth."""
    (tmp_path / "page.html").write_text(page_html(lesson(ebb())), encoding="utf-8")
    page.reload()

    def act() -> None:
        while not page.is_visible(".ticks"):
            page.click("#next")
        page.locator(".ticks:visible input").nth(3).check()

    _open_again_after(page, act)
    assert page.locator(".ticks:visible input").evaluate_all("all => all.map((one) => one.checked)") == [
        round == 3 for round in range(7)
    ]


def test_nothing_is_wider_than_the_phone_and_every_button_is_large(page) -> None:  # type: ignore[no-untyped-def]
    """WCAG 2.2: reflow at 320 px (1.4.10), also in large text; targets of 44 px (2.5.5)."""
    page.set_viewport_size({"width": 320, "height": 640})
    page.click("summary >> nth=0")
    page.click("#large")
    page.keyboard.press("Home")
    while True:
        assert page.evaluate("document.documentElement.scrollWidth") <= 320
        if page.is_disabled("#next"):
            break
        page.click("#next")
    for button in page.query_selector_all("button:visible, select:visible"):
        box = button.bounding_box()
        assert min(box["width"], box["height"]) >= 44


def test_axe_finds_nothing(page) -> None:  # type: ignore[no-untyped-def]
    """axe-core, WCAG 2.2 A and AA and best practice, on every leaf; and on the prompter."""
    from tests.studio.test_everyone import complaints

    page.click("summary >> nth=0")
    for _ in range(3):
        assert complaints(page) == []
        page.click("#next")
    page.keyboard.press("End")
    assert complaints(page) == []
    page.goto(page.url.replace("page.html", "prompter.html"))
    assert complaints(page) == []


@pytest.fixture
def rehearsed_page(page, tmp_path: Path):  # type: ignore[no-untyped-def]
    """Put the page of a rehearsed lesson in its place."""
    from tests.rehearsal.pieces import lesson_of

    (tmp_path / "page.html").write_text(page_html(lesson_of("jetty")), encoding="utf-8")
    page.reload()
    return page


def _focused(page) -> str:  # type: ignore[no-untyped-def]
    return str(page.evaluate("document.activeElement.textContent"))


def test_something_looks_wrong_is_asked_and_answered_by_keys_alone(rehearsed_page) -> None:  # type: ignore[no-untyped-def]
    """Tab and Enter lead down to a slip and its way back, and from there to the start."""
    page = rehearsed_page
    page.keyboard.press("End")
    while not page.is_visible(".wrong"):
        page.keyboard.press("ArrowLeft")
    for _ in range(40):
        if _focused(page) == "Something looks wrong?":
            break
        page.keyboard.press("Tab")
    assert _focused(page) == "Something looks wrong?"
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert _focused(page) == "It looks different"
    page.keyboard.press("Enter")
    asked = 0
    while not page.is_visible(".found:visible"):
        assert page.evaluate("document.activeElement.parentElement.open")
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        asked += 1
        assert asked <= 5
    assert page.inner_text(".guess:visible >> nth=0").startswith("Step ")
    assert page.is_visible(".guess li")
    page.keyboard.press("Tab")
    assert _focused(page) == "Start again"
    page.keyboard.press("Enter")
    assert _focused(page) == "Something looks wrong?"
    assert not page.is_visible(".found")


def test_the_script_unfolds_the_questions_of_every_step(rehearsed_page) -> None:  # type: ignore[no-untyped-def]
    """Leaf by leaf the questions, answers, slips and ways back are the lesson's, in its order."""
    from tests.rehearsal.pieces import lesson_of

    def told(fork: Fork | Conclusion) -> list[str]:
        if isinstance(fork, Conclusion):
            guesses = [
                [*guess.slips, *(["The way back:", *guess.way_back] if guess.way_back else [])]
                for guess in fork.guesses
            ]
            return [fork.text, *(text for guess in guesses for text in guess), "Start again"]
        return [fork.question, *(text for r in fork.replies for text in (r.text, *told(r.then)))]

    page = rehearsed_page
    made = lesson_of("jetty")
    assert made.phrasebook.say("wrong-back") == "The way back"
    seen = 0
    for step in made.steps:
        while f"Step {step.number}" != page.inner_text("h2:visible >> nth=0"):
            page.keyboard.press("ArrowRight")
        if step.troubleshooting:
            parts = page.query_selector_all(".leaf:not([hidden]) .wrong :is(p, li, .reply > summary, button)")
            assert [part.text_content() for part in parts] == told(step.troubleshooting)
            seen += 1
    assert seen > 5


def test_the_questions_are_open_to_all(rehearsed_page) -> None:  # type: ignore[no-untyped-def]
    """axe-core finds nothing, targets have 44 px, no wider than a phone; from the right to the left too."""
    from tests.studio.test_everyone import complaints

    page = rehearsed_page
    page.set_viewport_size({"width": 320, "height": 640})
    for direction in ("ltr", "rtl"):
        page.evaluate("way => { document.documentElement.dir = way; }", direction)
        page.keyboard.press("End")
        while not page.is_visible(".wrong"):
            page.keyboard.press("ArrowLeft")
        page.evaluate("for (const d of document.querySelectorAll('.wrong, .wrong details')) d.open = true;")
        assert page.is_visible(".found:visible")
        assert page.evaluate("document.documentElement.scrollWidth") <= 320
        for target in page.query_selector_all(".wrong summary:visible, .wrong button:visible"):
            box = target.bounding_box()
            assert min(box["width"], box["height"]) >= 44
        assert complaints(page) == []


def _until(page, told: str) -> None:  # type: ignore[no-untyped-def]
    """Wait for it by asking again and again: the content policy lets no waiting script in."""
    for _ in range(200):
        if page.evaluate(told):
            return
        page.wait_for_timeout(50)
    raise AssertionError(told)


def test_the_prompter_scrolls_while_it_runs_and_stops_when_told(page) -> None:  # type: ignore[no-untyped-def]
    """The line that is said now moves on; space stops it; the pace can be changed."""
    page.goto(page.url.replace("page.html", "prompter.html"))
    first = page.evaluate("scrollY")
    page.click("#start")
    _until(page, f"scrollY > {first + 5}")
    page.click("#start")
    assert page.inner_text("#start") == "Start"
    held = page.evaluate("scrollY")
    page.keyboard.press("ArrowUp")
    assert page.inner_text("#pace") == "125 words a minute"
    assert page.evaluate("scrollY") == held
    page.click("main p >> nth=8")
    assert page.evaluate("document.querySelector('main p.now').textContent") == page.inner_text(
        "main p >> nth=8"
    )
