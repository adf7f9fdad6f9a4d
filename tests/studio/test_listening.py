"""A newcomer drops captions: beside a piece they are laid beside its lesson, alone they become a draft."""

from __future__ import annotations

import base64
import io
import json
import wave
from pathlib import Path

import pytest
import webvtt
from playwright.sync_api import Page, expect

from pegwright.listening import read_captions
from testing.listening.by_hand import BY_HAND
from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints

expect.set_options(timeout=60_000)
GARBLED = BY_HAND[1]
HEARD = Path(__file__).parents[2] / "testing" / "listening" / "captions" / "04.vtt"
"""What a recogniser made of a spoken talk on the ebb line."""
TALK = """[0:02] Hello and welcome to the workshop.
[0:06] Stretch a red band from A1 to A2.
[0:12] Stretch a red band from A2 to A3.
[0:20] Mind the ferry, it hoots at noon.
[0:25] Turn the whole loom round.
"""
DROP = """files => {
  const data = new DataTransfer();
  for (const [name, type, base64] of files) {
    const bytes = Uint8Array.from(atob(base64), c => c.charCodeAt(0));
    data.items.add(new File([bytes], name, { type }));
  }
  const event = new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true });
  document.body.dispatchEvent(event);
}"""


def drop(page: Page, *files: tuple[str, str, bytes]) -> None:
    page.evaluate(DROP, [(name, kind, base64.b64encode(data).decode()) for name, kind, data in files])


def tone(seconds: int) -> bytes:
    """A silent sound file."""
    made = io.BytesIO()
    with wave.open(made, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(1)
        file.setframerate(8000)
        file.writeframes(b"\x80" * 8000 * seconds)
    return made.getvalue()


def test_a_garbled_recording_beside_a_demo_piece(bench: Bench, tmp_path: Path) -> None:
    """Chapters, mended captions, and the one slip that was planted; every mend is accepted or refused."""
    page = bench.page
    asked: list[str] = []
    page.on("request", lambda request: asked.append((request.post_data or "")[:200_000]))
    bench.begin("Ebb line")
    drop(page, ("rain.txt", "text/plain", GARBLED.text.encode()), ("rain.wav", "audio/wav", tone(190)))
    dialog = page.get_by_role("dialog", name="Listen back")
    expect(dialog.get_by_role("status")).to_contain_text("One thing is said otherwise")
    bench.shot("listen-back")
    assert complaints(page) == []
    otherwise = dialog.locator("ul.otherwise li.warning")
    expect(otherwise).to_have_count(1)
    expect(otherwise).to_contain_text("“top” is said where the lesson says “lowest”")
    otherwise.get_by_role("button").click()
    page.wait_for_function("() => document.querySelector('audio').currentTime >= 115")
    assert all("RIFF" not in body and "UklGR" not in body for body in asked), "the sound left the page"

    chapters = dialog.locator("details", has_text="of its words heard").locator("li")
    starts = dict(
        zip(
            chapters.locator("p").all_text_contents(),
            chapters.get_by_role("button").all_inner_texts(),
            strict=True,
        )
    )
    times = {title.split()[0]: start for title, start in starts.items()}
    assert {name: times[name] for name in ("Place", "Turn", "Work", "Finish")} == {
        "Place": "0:34",
        "Turn": "1:36",
        "Work": "1:46",
        "Finish": "2:20",
    }
    mended = dialog.get_by_role("checkbox", name="Take “peg” for “pegg”")
    expect(mended).to_be_checked()
    with page.expect_download() as taken:
        dialog.get_by_role("button", name="captions.vtt").click()
    first = webvtt.from_string(Path(taken.value.path()).read_text("utf-8"))
    assert not any("pegg" in one.text for one in first)
    mended.uncheck()
    with page.expect_download() as taken:
        dialog.get_by_role("button", name="captions.srt").click()
    texts = [one.text for one in read_captions(Path(taken.value.path()).read_bytes()).cues]
    assert any("pegg A1" in text for text in texts)
    assert not any("826" in text or "ban " in text for text in texts)
    with page.expect_download() as taken:
        dialog.get_by_role("button", name="steps.json").click()
    steps = json.loads(Path(taken.value.path()).read_text("utf-8"))
    assert [one["pictures"] for one in steps if one["number"] == 3] == [["pictures/step-003.svg"]]

    dialog.get_by_role("button", name="Keep my pace").click()
    expect(dialog).to_contain_text("Your pace is kept with the piece")
    dialog.get_by_role("button", name="Close").click()
    bench.settle()
    (saved,) = (tmp_path / "pieces").glob("*.json")
    assert saved.read_text("utf-8").count("taught_s") >= 5
    bench.click("The lesson")
    page.frame_locator("iframe").get_by_text(
        "steps take as long as in the teacher's recording"
    ).first.wait_for()


def test_a_recording_without_a_pattern_becomes_a_piece(bench: Bench) -> None:
    page = bench.page
    drop(page, ("talk.txt", "text/plain", TALK.encode()), ("talk.wav", "audio/wav", tone(40)))
    expect(page.get_by_role("status").first).to_contain_text("3 steps are read from 5 sentences")
    bench.shot("listen-draft")
    assert complaints(page) == []
    lines = page.locator("main ol li")
    expect(lines).to_have_count(5)
    expect(lines.nth(1)).to_contain_text("Lay R red over A1 and A2")
    expect(lines.nth(3)).to_contain_text("left to you")
    page.get_by_role("button", name="Go to 0:12").click()
    page.wait_for_function("() => document.querySelector('audio').currentTime >= 12")
    page.get_by_role("form", name="which loom").get_by_role("button").first.click()
    expect(page.locator(".question")).to_have_count(0)
    bench.click("Open the piece")
    page.locator(".verdict").wait_for()
    bench.settle()
    expect(page.get_by_role("button", name="Stretch a band A2 A1")).to_have_count(0)
    assert page.locator("output").count() == 1


def test_files_that_hold_nothing_are_told_and_lose_nothing(bench: Bench) -> None:
    page = bench.page
    bench.begin("Ebb line")
    drop(page, ("rain.vtt", "text/vtt", GARBLED.text.encode()))
    dialog = page.get_by_role("dialog", name="Listen back")
    expect(dialog.get_by_role("status")).to_contain_text("One thing is said otherwise")
    drop(page, ("notes.pdf", "application/pdf", b"%PDF-1.4"))
    expect(dialog.get_by_role("alert")).to_contain_text("notes.pdf is neither captions nor a recording.")
    expect(dialog.get_by_role("status")).to_contain_text("One thing is said otherwise")
    drop(page, ("empty.srt", "", b""))
    expect(dialog.get_by_role("alert")).to_contain_text("nothing is said in these captions")
    broken = HEARD.read_bytes().replace(b"WEBVTT", b"WEBVTT\n\n00:xx --> 00:05\nlost\n", 1)
    drop(page, ("broken.vtt", "text/vtt", broken))
    expect(dialog.get_by_role("status")).to_contain_text("chapters heard")
    expect(dialog.locator(".found").first).to_contain_text("this caption has no time that can be read")
    page.keyboard.press("Escape")
    expect(dialog).to_be_hidden()
    bench.settle()


def test_listening_is_stopped_and_begun_again(bench: Bench) -> None:
    """On a phone, by keyboard: stopped in the middle, the captions are still there to listen to again."""
    page = bench.page
    bench.begin("Ebb line")
    page.set_viewport_size({"width": 390, "height": 844})
    page.route("**/api/jobs/*?**", lambda _route: None)  # no news of it
    drop(page, ("ebb.vtt", "text/vtt", HEARD.read_bytes()))
    dialog = page.get_by_role("dialog", name="Listen back")
    dialog.get_by_role("button", name="Stop").focus()
    assert complaints(page) == []
    page.keyboard.press("Enter")
    page.unroute("**/api/jobs/*?**")
    again = dialog.get_by_role("button", name="Listen again")
    again.focus()
    page.keyboard.press("Enter")
    expect(dialog.get_by_role("status")).to_contain_text("chapters heard")
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    bench.shot("listen-back-phone")


@pytest.mark.parametrize(
    ("code", "name", "verdict"),
    [("de", "Nachhören", "anders gesagt"), ("es", "Repasar la grabación", "de otro modo")],
)
def test_it_is_said_in_the_language_of_the_page(bench: Bench, code: str, name: str, verdict: str) -> None:
    page = bench.page
    bench.begin("Ebb line")
    page.get_by_label("Language", exact=True).select_option(code)
    mine = next(one for one in BY_HAND if one.language == code)
    page.get_by_role("button", name=name).last.click()
    dialog = page.get_by_role("dialog", name=name)
    dialog.locator("select").select_option(code)
    dialog.locator("input[type=file]").first.set_input_files(
        [{"name": "mine.txt", "mimeType": "text/plain", "buffer": mine.text.encode()}]
    )
    expect(dialog.get_by_role("status")).to_contain_text(verdict)
    expect(dialog.locator("ul.otherwise li.warning")).to_have_count(1)
