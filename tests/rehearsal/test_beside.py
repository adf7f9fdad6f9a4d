"""The wrong piece beside the right one: what is worked wrong is what the slip comes to, and it is shown."""

from __future__ import annotations

import random
import xml.etree.ElementTree as ET
from base64 import b64decode

import pytest

from pegwright.cli.commands import run
from pegwright.loom import Bight, Laid
from pegwright.pattern import write_pattern
from pegwright.press import HeadedPicture, comparison_svg
from pegwright.rehearsal import find_slips
from pegwright.workshop import picture_wrong_piece, work
from pegwright.workshop.wrong_piece_picture import replay_with_slip
from testing.programs import KINDS
from testing.slow_rehearsal import loom_of, random_history, slow_run
from tests.rehearsal.pieces import jetty, outcome, rehearsed

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(2))
def test_the_wrong_piece_is_what_every_move_made_in_turn_gives(seed: int, kind: str) -> None:
    """Its bands are numbered anew, in the order in which they are laid; else the loom is the slow twin's."""
    history = random_history(seed, kind)
    slips = find_slips(history)
    for slip in random.Random(seed).sample(slips, min(25, len(slips))):
        slow = slow_run(history, slip)
        laid = [event.band for event in slow.events if isinstance(event, Laid)]
        number = {band: at for at, band in enumerate(laid, start=1)}
        stacks, inside = loom_of(slow.states[-1])
        meant = {h: tuple(Bight(number[b.band], b.index) for b in stack) for h, stack in stacks.items()}
        wrong = replay_with_slip(history, slip)
        assert loom_of(wrong.final)[0] == meant
        assert len(loom_of(wrong.final)[1]) == len(inside)


def test_a_piece_that_holds_is_shown_at_rest_and_one_that_falls_on_the_loom() -> None:
    told, made = rehearsed("jetty"), work(jetty())
    holds = next(o for o in told.outcomes if o.result == "looks-different")
    for one, at_rest in ((holds, True), (outcome(told, "too-shallow", 8), False)):
        found = picture_wrong_piece(made, told, one)
        assert found is not None
        assert found.at_rest == at_rest
        drawn = ET.fromstring(found.svg)
        right, wrong = (_inner(image) for image in drawn.iter(f"{SVG}image"))
        assert right != wrong
        headings = [text.text for text in drawn.iter(f"{SVG}text") if text.get("font-weight") == "bold"]
        assert headings == ["Right", "Wrong"]
    for language, seen in (("en", "seen from the front"), ("de", "von vorn"), ("es", "vista frontal")):
        found = picture_wrong_piece(made, told, holds, language)
        assert found is not None
        for image in ET.fromstring(found.svg).iter(f"{SVG}image"):
            assert seen in (ET.fromstring(_inner(image)).findtext(f"{SVG}desc") or "")


def _inner(image: ET.Element) -> bytes:
    data = b64decode(image.attrib["href"].partition("base64,")[2])
    assert ET.fromstring(data).tag == f"{SVG}svg"
    return data


@pytest.mark.parametrize(("wide", "below"), [(40, False), (90, True)])
def test_long_pictures_go_below_each_other_and_lines_are_broken(wide: int, below: bool) -> None:
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}mm" height="30mm"></svg>'
    words = "Count the bands & look twice. " * 6
    drawn = ET.fromstring(comparison_svg([HeadedPicture("one", svg), HeadedPicture("two", svg)], [words]))
    one, two = drawn.iter(f"{SVG}image")
    assert (one.get("x") == two.get("x")) == below
    assert (one.get("y") != two.get("y")) == below
    full = [float(n) for n in drawn.attrib["viewBox"].split()][2:]
    for image in (one, two):
        assert float(image.attrib["x"]) + wide <= full[0]
        assert float(image.attrib["y"]) + 30 <= full[1]
    lines = [text for text in drawn.iter(f"{SVG}text") if text.get("font-weight") is None]
    assert len(lines) > 1
    assert " ".join(str(line.text) for line in lines).split() == words.split()
    assert all(float(line.attrib["y"]) <= full[1] for line in lines)


def test_a_picture_of_no_size_is_refused() -> None:
    with pytest.raises(ValueError, match="size"):
        comparison_svg([HeadedPicture("one", "<svg/>")], [])


def test_the_command_writes_it_beside_the_pattern(tmp_path, monkeypatch, capsys) -> None:  # type: ignore[no-untyped-def]
    monkeypatch.setenv("PEGWRIGHT_CACHE", str(tmp_path / "kept"))
    file = tmp_path / "jetty.json"
    file.write_bytes(write_pattern(jetty()))
    assert run(["rehearse", str(file), "--picture", "1"]) == 0
    assert "trouble 1, on the loom" in capsys.readouterr().out
    assert ET.fromstring((tmp_path / "jetty-trouble-1.svg").read_text(encoding="utf-8")).tag == f"{SVG}svg"
    assert run(["rehearse", str(file), "--picture", "99"]) == 2
