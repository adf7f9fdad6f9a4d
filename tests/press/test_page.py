"""The follow-along page and the prompter, read back by a standard parser: whole, closed, literal."""

from __future__ import annotations

import base64
import hashlib
import re
from typing import Any

import html5lib
import pytest

from pegwright.lesson import Lesson, write_script
from pegwright.press import page_html, prompter_html
from tests.lesson.pieces import buoys, dinghy, ebb, lesson, pictures_of, smack
from tests.press.test_svg import HOSTILE

PIECES = {"ebb": ebb(), "dinghy": dinghy(), "smack": smack(), "buoys": buoys()}
HOSTILE_PIECE = ebb(
    title=HOSTILE, colour=HOSTILE[:50], note='" onload="alert(1) \'</script><script>alert(2)</script>'
)
H = "{http://www.w3.org/1999/xhtml}"


def read(text: str) -> Any:
    """Parse strictly as a browser would (WHATWG HTML); any parse error fails."""
    return html5lib.HTMLParser(strict=True).parse(text)


def words(node: Any) -> str:
    return " ".join("".join(node.itertext()).split())


@pytest.mark.parametrize("name", PIECES)
def test_every_step_check_and_caution_stands_on_the_page(name: str) -> None:
    """The leaves, in order, say what the lesson says."""
    made = lesson(PIECES[name])
    root = read(page_html(made))
    leaves = list(root.iter(f"{H}section"))
    told = [words(leaf) for leaf in leaves]
    at = 0
    for phase in made.phases:
        for step in phase.steps:
            at += 1
            assert f"Step {step.number}" in told[at]
            for text in (step.instruction, *step.detail, *step.ticks, step.note, step.warning):
                assert " ".join(text.split()) in told[at]
        if phase.check:
            at += 1
            for text in (phase.check.heading, *phase.check.lines, phase.check.remedy):
                assert text in told[at]
    assert at == len(leaves) - 2
    for text in (*made.cautions.lines, *made.hold.lines, *made.tools.lines, made.edition):
        assert text in told[0]
    assert all(text in told[-1] for text in (*made.cautions.lines, *made.glossary.lines, *made.colophon))


@pytest.mark.parametrize("name", PIECES)
def test_every_picture_is_there_with_its_words(name: str) -> None:
    """One drawing for each picture and close-up, and the text that says the same."""
    made = lesson(PIECES[name])
    root = read(page_html(made))
    figures = list(root.iter(f"{H}figure"))
    pictures = pictures_of(made)
    assert len(figures) == len(pictures)
    for figure, picture in zip(figures, pictures, strict=True):
        assert figure.find("{http://www.w3.org/2000/svg}svg") is not None
        assert picture.text in words(figure.find(f"{H}figcaption"))


@pytest.mark.parametrize("press", ["page", "prompter"])
def test_nothing_is_fetched_and_nothing_but_its_own_script_runs(press: str) -> None:
    """The policy (W3C CSP3) names the one style and the one script by their hash; no address is anywhere."""
    made = lesson(HOSTILE_PIECE)
    text = (
        page_html(made, lesson(HOSTILE_PIECE, hand="left"))
        if press == "page"
        else prompter_html(made, write_script(made))
    )
    root = read(text)
    policy = next(m for m in root.iter(f"{H}meta") if m.get("http-equiv") == "Content-Security-Policy").get(
        "content"
    )
    for kind, tag in (("script-src", "script"), ("style-src", "style")):
        (own,) = root.iter(f"{H}{tag}")
        digest = base64.b64encode(hashlib.sha256(own.text.encode()).digest()).decode()
        assert f"{kind} 'sha256-{digest}'" in policy
    assert policy.startswith("default-src 'none';")
    assert "unsafe" not in policy
    for node in root.iter():
        for attribute, value in node.attrib.items():
            assert attribute not in ("src", "href", "style", "action")
            assert not attribute.startswith("on")
            if "xmlns" not in attribute:
                assert not re.match(r"\s*(https?:|//|javascript:)", value)
    assert not re.search(
        r"fetch\(|XMLHttpRequest|sendBeacon|WebSocket|import\(|https?://(?!www\.w3\.org)", text
    )


def test_hostile_words_stand_there_letter_by_letter() -> None:
    """Title, colour and note: shown, not carried out."""
    made = lesson(HOSTILE_PIECE)
    root = read(page_html(made))
    assert words(next(root.iter(f"{H}h1"))) == " ".join(made.title.split())
    assert "<script>alert(1)</script>" in made.title
    assert "</script><script>alert(2)</script>" in words(next(root.iter(f"{H}main")))
    assert len(list(root.iter(f"{H}script"))) == 1


def test_the_other_hand_is_on_the_same_page() -> None:
    """Two editions with as many leaves; a page has one language."""
    one, two = lesson(dinghy()), lesson(dinghy(mirrored=True), hand="left")
    root = read(page_html(one, two))
    editions = [d for d in root.iter(f"{H}div") if d.get("class") == "edition"]
    assert [d.get("data-hand") for d in editions] == ["right", "left"]
    counts = [len(list(d.iter(f"{H}section"))) for d in editions]
    assert counts[0] == counts[1]
    with pytest.raises(ValueError, match="one language"):
        page_html(one, Lesson(**{f: getattr(two, f) for f in two.__struct_fields__} | {"language": "xx"}))


def test_every_gesture_has_a_button_and_a_name() -> None:
    """Moving on and back, the start, going anywhere: each control says what it does."""
    root = read(page_html(lesson(ebb())))
    buttons = {b.get("id"): words(b) for b in root.iter(f"{H}button")}
    assert buttons == {
        "first": "Start", "left": "Left-handed", "large": "Large text", "read": "Read aloud",
        "back": "Back", "next": "Next",
    }  # fmt: skip


@pytest.mark.parametrize("name", PIECES)
def test_the_prompter_says_the_script_at_its_times(name: str) -> None:
    """Every sentence of the script in order, with its seconds; chapters as headings; pauses marked."""
    made = lesson(PIECES[name])
    told = write_script(made)
    main = next(read(prompter_html(made, told)).iter(f"{H}main"))
    lines = list(main.iter(f"{H}p"))
    assert [words(p) for p in lines] == [" ".join(line.text.split()) for line in told.lines]
    times = [(float(p.get("data-start")), float(p.get("data-end"))) for p in lines]
    assert times == [(round(line.start_s, 3), round(line.end_s, 3)) for line in told.lines]
    assert [words(h) for h in main.iter(f"{H}h2")] == [c.title for c in told.chapters]
    pauses = [d for d in main.iter(f"{H}div") if d.get("class") == "pause"]
    assert len(pauses) == sum(shot.pause for shot in told.shots)
    assert main.get("data-wpm") == "120"
    shown = [d for d in main.iter(f"{H}div") if d.get("class") == "see"]
    assert [words(d.find(f"{H}b")) for d in shown] == [f"Step {step.number}" for step in made.steps]
    for each, step in zip(shown, made.steps, strict=True):
        pictures = list(each.iter("{http://www.w3.org/2000/svg}svg"))
        assert len(pictures) == min(3, len(step.pictures)) + bool(step.closeup)
