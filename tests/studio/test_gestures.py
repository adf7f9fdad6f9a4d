"""How much a newcomer's hand has to do: a strip of six motifs by mouse, and the whole job by keyboard."""

from __future__ import annotations

from playwright.sync_api import Page

from tests.studio.conftest import Bench

# Every press, drag and key counts one; held keys (Shift) are counted as keys of their own.
COUNT = """() => {
  window.gestures = { presses: 0, drags: 0, keys: 0 };
  let at = null;
  addEventListener('pointerdown', (e) => (at = [e.clientX, e.clientY]), true);
  addEventListener('pointerup', (e) => {
    const far = at && Math.hypot(e.clientX - at[0], e.clientY - at[1]) > 8;
    window.gestures[far ? 'drags' : 'presses']++;
  }, true);
  addEventListener('keydown', (e) => { if (!e.repeat) window.gestures.keys++; }, true);
}"""


LANTERN = (("B1", "A2"), ("A2", "B3"), ("B1", "C2"), ("C2", "B3"))
LIGHT = (("B2", "B3"), ("B2", "A2"), ("B2", "C2"), ("B2", "B1"))


def gestures(page: Page) -> dict[str, int]:
    return dict(page.evaluate("window.gestures"))


def test_a_strip_of_six_motifs_takes_forty_gestures_at_most(bench: Bench) -> None:
    """Outlined, filled and capped, in two colours, from the shelf to "all held"."""
    page = bench.page
    page.evaluate(COUNT)
    bench.begin("An empty loom")
    for pegs in LANTERN:
        bench.drag(*pegs)
    page.get_by_role("radio", name="R buoy red").click()
    for pegs in LIGHT:
        bench.drag(*pegs)
    bench.press("B2")
    bench.press("B2")
    bench.settle()
    page.locator("button.step").first.click(modifiers=["Shift"])
    bench.click("With these 9 steps")
    page.get_by_role("dialog").get_by_role("button", name="Repeat").click()  # as often as there is room
    bench.settle()
    bench.press("B13")
    bench.press("B13")
    bench.settle()
    assert bench.verdict == "Nothing closes it yet. 55 bands are laid."
    bench.click("Find an order")
    shown = page.get_by_role("region", name="The order that is shown")
    enough = page.get_by_role("button", name="Show what is found")
    enough.or_(shown).first.wait_for(timeout=120_000)
    if enough.is_visible():
        enough.click()
    shown.wait_for()
    shown.get_by_role("button", name="Take it").click()
    bench.settle()
    assert bench.verdict.startswith("✓ All ")
    counted = gestures(page)
    assert (counted["drags"], counted["keys"]) == (8, 1)  # the key is Shift
    assert sum(counted.values()) <= 40, counted


def test_the_whole_job_takes_sixty_keys_at_most(bench: Bench) -> None:
    """The same strip without the mouse, from the shelf to "all held"."""
    page = bench.page
    page.evaluate(COUNT)

    def press(*names: str) -> None:
        for name in names:
            page.keyboard.press(name)

    def go(peg: str) -> None:
        here = str(page.evaluate("document.activeElement.dataset.peg"))
        rows, numbers = ord(peg[0]) - ord(here[0]), int(peg[1:]) - int(here[1:])
        press(*["ArrowRight" if numbers > 0 else "ArrowLeft"] * abs(numbers))
        press(*["ArrowDown" if rows > 0 else "ArrowUp"] * abs(rows))
        assert page.evaluate("document.activeElement.dataset.peg") == peg

    def lay(*pairs: tuple[str, str]) -> None:
        for a, b in pairs:
            go(a)
            press("Enter")
            go(b)
            press("Enter")

    press("n", "Enter")
    page.locator(".verdict").wait_for()
    bench.settle()
    lay(
        *LANTERN[:2], *(pegs[::-1] for pegs in reversed(LANTERN[2:]))
    )  # round it, the way back on the other side
    press("3")
    lay(*LIGHT)
    go("B2")
    press("Enter", "Enter")
    bench.settle()
    press("w", "Enter")
    bench.settle()
    press("End", "Enter", "Enter")
    bench.settle()
    assert bench.verdict == "Nothing closes it yet. 55 bands are laid."
    press("f")
    shown = page.get_by_role("region", name="The order that is shown")
    enough = page.get_by_role("button", name="Show what is found")
    enough.or_(shown).first.wait_for(timeout=120_000)
    if enough.is_visible():
        press("Enter")
    shown.wait_for()
    bench.settle()
    press("Enter")
    bench.settle()
    assert shown.count() == 0
    assert bench.verdict.startswith("✓ All ")
    counted = gestures(page)
    assert counted["presses"] == counted["drags"] == 0
    assert counted["keys"] <= 60, counted
