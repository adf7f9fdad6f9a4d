"""Loops lifted on to other pegs, last bands through some of the loops, loose ends put on pegs."""

from __future__ import annotations

from pathlib import Path

from tests.studio.conftest import Bench
from tests.studio.test_making import steps


def test_loops_are_lifted_on_and_a_new_band_is_drawn_through_some_and_put_on_two_pegs(
    bench: Bench, tmp_path: Path
) -> None:
    """An arm is begun on a body: each gesture by mouse, and again by keys alone."""
    page = bench.page
    page.set_default_timeout(10_000)
    bench.begin("An empty loom")
    for _ in range(3):
        bench.drag("A1", "A2")
    bench.tool("Lift over")
    bench.drag("A1", "B1")
    page.locator('[data-peg="A2"]').focus()
    page.keyboard.press("Shift+Enter")
    card = page.get_by_role("region", name="Peg A2", exact=True)
    card.get_by_role("button", name="Loop 2").focus()
    page.keyboard.press("Enter")
    page.locator('[data-peg="B2"]').focus()
    page.keyboard.press("Enter")
    bench.settle()
    assert bench.step.endswith("Lift loop 2 of A2 over the others and on to B2")

    bench.tool("Last band")
    bench.press("A1", shift=True)
    page.get_by_text("Press the lowest loop that the last band goes through.").wait_for()
    page.get_by_role("region", name="Peg A1", exact=True).get_by_role("button", name="Loop 2").click()
    bench.settle()
    assert bench.step.endswith("through the loops of A1, only the top one")
    assert page.evaluate("document.activeElement.dataset.peg") == "A1"
    bench.tool("Transfer")
    bench.press("end.0")
    bench.press("C1", shift=True)
    page.get_by_text("The loose end on C1: the next peg, or Done.").wait_for()
    bench.press("C2")
    bench.settle()
    assert bench.step.endswith("Put the free end on C1 and C2")
    for peg in ("C1", "C2"):
        assert "1 loop" in bench.stack(peg)
    assert page.locator("button.step").last.locator("svg path").count() >= 2, "its picture shows the band"
    bench.shot("joining-arm")

    page.keyboard.press("b")
    page.locator('[data-peg="A2"]').focus()
    page.keyboard.press("Enter")
    bench.settle()
    page.locator('[data-peg="B1"]').focus()
    page.keyboard.press("Enter")
    bench.settle()
    bench.click("Extension", exact=True)
    bench.settle()
    page.keyboard.press("t")
    page.locator('[data-peg^="end."]').focus()
    page.keyboard.press("Enter")
    for peg, keys in (("C5", "Shift+Enter"), ("C6", "Enter")):
        page.locator(f'[data-peg="{peg}"]').focus()
        page.keyboard.press(keys)
    bench.settle()
    assert steps(tmp_path)[3:] == [
        {"do": "lift", "at": "A1", "to": "B1"},
        {"do": "lift", "at": "A2", "loop": 2, "to": "B2"},
        {"do": "bind", "colour": "A", "at": "A1", "catch": 1},
        {"do": "put", "on": ["C1", "C2"]},
        {"do": "bind", "colour": "A", "at": "A2"},
        {"do": "bind", "colour": "A", "at": "B1", "end": "end-2"},
        {"do": "extend", "colour": "A", "bands": 8, "end": "end-2"},
        {"do": "put", "on": ["C5", "C6"]},
    ]
    assert page.locator(".error").count() == 0
