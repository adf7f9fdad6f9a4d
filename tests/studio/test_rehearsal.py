"""The rehearsal at the bench: where makers slip, shown on the loom, to its end and back."""

from __future__ import annotations

from typing import Any

from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints


def test_a_chain_is_rehearsed_by_keys_alone(bench: Bench) -> None:
    """Too shallow a hook is the worst that happens to a chain (common practice, no source)."""
    page = bench.page
    bench.begin("Plain chain")
    steps = page.locator(".step")
    assert "often goes wrong" not in " ".join(steps.evaluate_all("all => all.map((one) => one.ariaLabel)"))
    page.get_by_role("button", name="Rehearse it").focus()
    page.keyboard.press("Enter")
    spots = page.get_by_role("region", name="Where makers slip")
    spots.locator("ol > li").first.wait_for(timeout=120_000)
    worst = spots.locator("ol > li").first
    assert "You go down inside only the top loop" in worst.inner_text()
    assert "often goes wrong" in " ".join(steps.evaluate_all("all => all.map((one) => one.ariaLabel)"))
    assert "Stop and look after step" in spots.inner_text()
    worst.locator("summary").focus()
    page.keyboard.press("Enter")
    worst.get_by_text("The way back").wait_for()
    assert worst.get_by_role("img").count() == 2
    aside: Any = page.locator("aside.right").bounding_box()
    verdict: Any = page.locator(".verdict").bounding_box()
    assert aside["y"] <= verdict["y"] < aside["y"] + aside["height"], "the verdict stays in sight"
    assert all(worst.get_by_role("img").evaluate_all("all => all.map((one) => one.naturalWidth && one.alt)"))
    before = page.locator(".table").screenshot()
    worst.get_by_role("button", name="Show how it ends").focus()
    page.keyboard.press("Enter")
    worst.get_by_text("bands that fall off are marked").wait_for()
    page.wait_for_timeout(300)  # the loom is painted on the next frame
    assert page.locator(".table").screenshot() != before
    assert complaints(page) == []
    worst.get_by_role("button", name="Show step").focus()
    page.keyboard.press("Enter")
    assert worst.get_by_text("bands that fall off are marked").count() == 0
    assert not bench.step.startswith("Step 26")
    page.get_by_role("region", name="Peg A").wait_for()


def test_another_design_is_another_rehearsal(bench: Bench) -> None:
    """What was found is let go of with the first change, and offered again."""
    page = bench.page
    bench.begin("Plain chain")
    page.get_by_role("button", name="Rehearse it").click()
    spots = page.get_by_role("region", name="Where makers slip")
    spots.locator("ol > li").first.wait_for(timeout=120_000)
    bench.click("Take this step out")
    bench.settle()
    assert spots.locator("ol").count() == 0
    assert page.get_by_role("button", name="Rehearse it").is_disabled(), (
        "a piece that falls apart is mended first"
    )
    bench.click("Undo")
    bench.settle()
    assert page.get_by_role("button", name="Rehearse it").is_enabled()
