"""A newcomer writes a piece down in words, drops it on the shelf, answers what is asked and has the piece."""

from __future__ import annotations

from playwright.sync_api import expect

from testing.maker_texts import TEXTS
from tests.studio.conftest import Bench

CHAIN = """Saturday ebb
Put a red band on A1 and A2. Go on like that until A12.
Turn the loom round.
Take the lowest loop of each peg and put it on the next peg, all along the row.
Pull a last band through the loops.
Close the two ends with a clip.
"""

expect.set_options(timeout=60_000)
DROP = """text => {
  const data = new DataTransfer();
  data.setData('text/plain', text);
  document.querySelector('main').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
}"""


def test_a_newcomer_drops_a_chain_in_words_and_has_a_proved_piece(bench: Bench) -> None:
    page = bench.page
    page.evaluate(DROP, CHAIN)
    questions = page.locator(".question")
    expect(questions).to_have_count(3)
    bench.shot("words-read-questions")
    picture = page.get_by_role("region", name="The loom")
    assert picture.locator("text", has_text="A12").count() == 1

    page.get_by_role("form", name="which loom").get_by_role("button", name="1 × 12").click()
    expect(questions).to_have_count(2)
    picture.get_by_role("button", name="A1", exact=True).click()
    expect(questions).to_have_count(1)
    page.get_by_role("form", name="which colour").get_by_label("another").fill("navy blue")
    bench.click("That one")
    expect(page.locator(".verdict")).to_contain_text("every band holds")

    page.get_by_role("button", name="Turn the loom round").click()
    expect(picture.get_by_text("Step 12 of 24")).to_be_visible()
    bench.shot("words-read-answered")
    bench.click("Take the last answer back")
    expect(questions).to_have_count(1)
    page.get_by_role("form", name="which colour").get_by_role("button", name="red").click()
    bench.click("Open the piece")
    page.locator(".verdict").wait_for()
    bench.settle()
    assert "12 bands" in bench.verdict or "hold" in bench.verdict.lower()


def test_a_newcomer_drops_a_strip_in_words_and_presses_its_lesson(bench: Bench) -> None:
    """Three filled, capped motifs over three rows: one question from the text to the printed sheet."""
    page = bench.page
    page.evaluate(DROP, next(one.text for one in TEXTS if one.name == "lantern strip worked"))
    questions = page.locator(".question")
    expect(questions).to_have_count(1)
    questions.get_by_role("button", name="3", exact=True).click()
    expect(questions).to_have_count(0)
    expect(page.locator(".verdict")).to_contain_text("every band holds")
    bench.click("Open the piece")
    page.locator(".verdict").wait_for()
    bench.settle()
    bench.click("The lesson")
    page.frame_locator("iframe").get_by_role("heading", name="Three lanterns, worked").wait_for()
    bench.click("Press the lesson")
    page.get_by_text("The lesson is pressed").wait_for(timeout=180_000)
    bench.shot("words-read-strip-pressed")


def test_words_are_typed_and_what_is_not_understood_is_shown(bench: Bench) -> None:
    page = bench.page
    bench.click("Read your own words")
    page.get_by_label("The pattern in your own words").fill(
        "Pair\nLoom: 1 row of 4 pegs. A red band from A1 to A2. Then hook it in the pretty way."
    )
    bench.click("Read it", exact=True)
    expect(page.get_by_text("not understood")).to_have_count(1)
    page.get_by_role("button", name="Your pieces").click()
    page.get_by_role("heading", name="Lay a first piece").wait_for()
