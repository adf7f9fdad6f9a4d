"""The lesson says what the history did, counts what the supplies count, and keeps to the maker's view."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest

from pegwright.fit import count_supplies
from pegwright.lesson import ArrowMark, BandMark, HoldResult, PegMark, plan_lesson
from pegwright.loom import Laid
from pegwright.pattern import Pattern, PatternBuilder, Rows
from tests.lesson.pieces import buoys, dinghy, ebb, everything, lesson, smack, work

GOLDEN = Path(__file__).parent / "golden"
PIECES = {"ebb": ebb(), "dinghy": dinghy(), "smack": smack()}


@pytest.mark.parametrize("pattern", PIECES.values(), ids=PIECES)
def test_every_move_is_taught_once_and_in_order(pattern: Pattern) -> None:
    """The steps' spans of moves, laid end to end, are the whole history."""
    spans = [(step.first, step.last) for step in lesson(pattern).steps if step.first]
    assert spans[0][0] == 1
    assert all(a[1] + 1 == b[0] for a, b in pairwise(spans))
    assert spans[-1][1] == len(work(pattern).moves)


@pytest.mark.parametrize("pattern", PIECES.values(), ids=PIECES)
def test_steps_are_numbered_from_one_without_a_gap(pattern: Pattern) -> None:
    """A step's number is its place in the lesson."""
    steps = lesson(pattern).steps
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))


@pytest.mark.parametrize("pattern", PIECES.values(), ids=PIECES)
def test_numbers_in_words_are_those_of_the_supplies_and_of_the_record(pattern: Pattern) -> None:
    """Bands laid out in words, in the table, and laid by the events are the same, colour by colour."""
    made = lesson(pattern)
    history = work(pattern)
    laid: dict[str, int] = {}
    bands = [event.band for event in history.events if isinstance(event, Laid)]
    for band in bands:
        letter = history.colours[band - 1]
        laid[letter] = laid.get(letter, 0) + 1
    said = {
        letter: int(n)
        for n, letter in re.findall(r"(\d+) [a-z ]+? bands? \((\w+)\)", made.steps[1].instruction)
    }
    assert said == laid == {row.letter: row.count for row in made.supplies.bands}
    assert made.supplies.total_count == len(bands)
    assert f"{len(bands)} bands in all." in made.level.lines


def test_a_repeat_is_taught_once_and_then_counted() -> None:
    """Eight bands placed: one step in full, seven more in one step with seven boxes to tick."""
    place = next(phase for phase in lesson(ebb()).phases if phase.name == "place")
    first, again = place.steps
    assert first.instruction == "Stretch one slate band (A) from peg A1 to peg A2, away from you."
    assert again.instruction == (
        "Do step 3 again, 7 more times. Move one peg further away from you each time. "
        "The last one ends on peg A9."
    )
    assert [tick.partition(":")[0] for tick in again.ticks] == [f"Round {k}" for k in range(2, 9)]


def test_rounds_in_the_same_place_are_counted_without_places() -> None:
    """Fish-tail work stays where it is: the boxes name no pegs, only what changes: the colour."""
    again = next(step for step in lesson(smack()).steps if step.ticks)
    assert again.ticks == (
        "Round 2: buoy (B) in steps 6 and 7",
        *(f"Round {k}: tar (A) in steps 6 and 7" for k in (3, 4, 5)),
    )
    assert "in the same place, 4 more times" in again.instruction


def test_the_view_is_the_makers_at_that_moment() -> None:
    """After the turn the pegs with smaller numbers lie away from the maker, in words and in the picture."""
    steps = {step.instruction.partition(" ")[0]: step for step in lesson(ebb()).steps}
    hook = (
        steps["Push"]
        if "A8" in steps["Push"].instruction
        else next(s for s in lesson(ebb()).steps if "A8" in s.instruction)
    )
    assert "Put it on peg A7, away from you." in hook.instruction
    spots = {m.at: m.y_mm for m in hook.pictures[0].marks if isinstance(m, PegMark)}
    assert spots["A7"] > spots["A8"]
    place = lesson(ebb()).steps[2]
    spots = {m.at: m.y_mm for m in place.pictures[0].marks if isinstance(m, PegMark)}
    assert spots["A2"] > spots["A1"]
    assert {m.channel_deg for m in place.pictures[0].marks if isinstance(m, PegMark)} == {90.0}
    assert {m.channel_deg for m in hook.pictures[0].marks if isinstance(m, PegMark)} == {270.0}


def test_the_loops_a_check_counts_are_those_one_counts_by_hand() -> None:
    """Eight bands over neighbours: one loop on each end peg, two on the seven between."""
    place = next(phase for phase in lesson(ebb()).phases if phase.name == "place")
    assert place.check is not None
    assert place.check.lines == (
        "8 bands have been used so far.",
        "Pegs A1 and A9 each hold 1 loop.",
        "Pegs A2 to A8 each hold 2 loops.",
    )


def _swapped(words: str) -> str:
    return re.sub(r"\b(left|right)\b", lambda m: {"left": "right", "right": "left"}[m[1]], words)


def _address_swapped(words: str) -> str:
    return re.sub(r"\b([AC])(\d)\b", lambda m: {"A": "C", "C": "A"}[m[1]] + m[2], words)


def test_the_lesson_of_a_mirrored_pattern_mirrors() -> None:
    """Words swap left and right and rows A and C; every mark of a step's picture swaps sides."""
    here, there = lesson(dinghy()), lesson(dinghy(mirrored=True))
    assert len(here.steps) == len(there.steps)
    for a, b in zip(here.steps[2:], there.steps[2:], strict=True):
        assert _sorted_list(_address_swapped(_swapped(a.instruction))) == _sorted_list(b.instruction)
        for p, q in zip(a.pictures, b.pictures, strict=True):
            left = sorted((m.at, round(-m.x_mm, 6), m.y_mm) for m in p.marks if isinstance(m, PegMark))
            right = sorted(
                (_address_swapped(m.at), round(m.x_mm, 6), m.y_mm) for m in q.marks if isinstance(m, PegMark)
            )
            assert left == right
            bands = [m for m in p.marks if isinstance(m, BandMark)]
            others = [m for m in q.marks if isinstance(m, BandMark)]
            assert [(m.band, m.highlighted) for m in bands] == [(m.band, m.highlighted) for m in others]
            for m, n in zip(bands, others, strict=True):
                assert _circles(m, -1) == _circles(n, 1)


def _sorted_list(words: str) -> list[str]:
    return sorted(re.findall(r"\w+", words))


def _circles(mark: BandMark, sign: int) -> set[tuple[float, float, float]]:
    return {
        (round(sign * a.x_mm, 3) + 0.0, round(a.y_mm, 3) + 0.0, round(a.r_mm, 3))
        for outline in mark.outlines
        for a in outline
    }


def test_the_arrow_of_a_hook_leads_from_its_peg_to_the_other() -> None:
    """The arrow starts by the peg that is worked and ends by the peg that receives the loop."""
    hook = next(
        step for step in lesson(ebb()).steps if "Push the hook down the open side" in step.instruction
    )
    marks = hook.pictures[0].marks
    pegs = {m.at: (m.x_mm, m.y_mm) for m in marks if isinstance(m, PegMark)}
    arrow = next(m for m in marks if isinstance(m, ArrowMark))
    near = {
        at: min(pegs, key=lambda p: abs(pegs[p][0] - s[0]) + abs(pegs[p][1] - s[1]))
        for at, s in (("start", arrow.start), ("end", arrow.end))
    }
    assert near == {"start": "A8", "end": "A7"}


def test_a_close_up_shows_the_stack_from_the_bottom_up() -> None:
    """The close-up of a cap names the loops below it first."""
    cap = next(step for step in lesson(dinghy()).steps if "This is the cap" in step.instruction)
    assert cap.closeup is not None
    assert cap.closeup.text.startswith("Peg B2 from the side, bottom to top: S, H, H and H.")


def test_what_falls_is_named_with_the_step_that_laid_it() -> None:
    """A verdict that a band falls becomes a sentence with its colour and its step."""
    made = lesson(ebb(), HoldResult(held=False, bands=12, falling=(9, 3), unproved=(1,)))
    assert made.hold.lines == (
        "No. 2 bands are not held and fall off: band 9 (foam, B, step 8) and band 3 (slate, A, step 4).",
        "Not proved for one band: band 1 (slate, A, step 3).",
    )
    assert not made.hold.held


def test_nothing_is_claimed_that_was_not_proved() -> None:
    """A verdict without facts does not say that the piece holds."""
    made = lesson(ebb(), HoldResult(held=False, bands=12))
    assert made.hold.lines == ("It is not proved that every band is held.",)


def test_cautions_stand_in_every_lesson_and_defer_to_local_rules() -> None:
    """Choking, tight bands, eyes, latex, and the rules of the place."""
    lines = " ".join(lesson(smack()).cautions.lines)
    for word in ("choke", "under 3", "tightly", "eye", "latex", "Pets", "rules where you live"):
        assert word in lines


def test_the_other_hand_holds_the_hook() -> None:
    """The left-handed edition says so."""
    assert "left hand" in lesson(dinghy(mirrored=True), hand="left").edition
    assert "right hand" in lesson(dinghy()).edition


def test_an_unknown_language_is_refused() -> None:
    """There is no lesson without words for it."""
    pattern = ebb()
    history = work(pattern)
    with pytest.raises(ValueError, match="no words for 'xx'"):
        plan_lesson(
            pattern, history, count_supplies(pattern, history), HoldResult(held=True, bands=12), language="xx"
        )


def test_an_empty_pattern_still_gives_a_lesson() -> None:
    """No moves: the loom, the cautions, nothing worked."""
    made = lesson(Pattern(pegwright=2, title="Slack", loom=ebb().loom), HoldResult(held=False, bands=0))
    assert [phase.name for phase in made.phases] == ["prepare", "wear"]
    assert made.supplies.total_count == 0


def test_a_hung_band_is_wound_and_then_slid_on() -> None:
    """The two moves of a charm, in words that name the band, the pegs and what the loop goes through."""
    words = [step.instruction for step in lesson(buoys()).steps]
    assert "Wind one red band (R) twice round the shaft of the hook. Leave it hanging there." in words
    slide = next(step for step in lesson(buoys()).steps if "Slide the red band (R)" in step.instruction)
    assert slide.instruction == (
        "Push the hook down the open side of peg A3, inside the loop above, and catch the lowest loop "
        "(rope, A). Slide the red band (R) from the hook on to the loop you caught, pull the loop up through "
        "the loop above, and put it on peg A2, towards you."
    )


def test_a_shallow_hook_says_which_loops_to_leave() -> None:
    """Through one of three loops above: the other two stay where they are."""
    hook = next(step for step in lesson(buoys()).steps if "Put it on peg A1" in step.instruction)
    above = len(work(buoys()).before(5).stack("A2")) - 1
    assert above == 2
    assert hook.detail == (
        "Go through the top loop only. Leave the loop just above the one you catch where it is.",
    )


def test_a_very_long_loom_is_shown_at_both_ends() -> None:
    """Not a hundred strips: the first ones, the last two, and a sentence on those between."""
    m = PatternBuilder("Mole", Rows(rows=1, pegs=400)).colour("A", "stone", "#888888")
    with m.repeat(399, pegs=1):
        m.place("A", "A1", "A2")
    made = lesson(m.pattern())
    for step in (made.steps[0], made.steps[-2]):
        assert len(step.pictures) == 10
        assert any("are left out here" in line for line in step.legend)
        assert "A1 to " in step.pictures[0].text
        assert step.pictures[-1].text.rstrip(".").endswith("A400")
    assert len(made.steps[-2].ticks) == 95
    assert any("up to 96 only" in line for line in made.steps[-2].legend)


@pytest.mark.parametrize("name", PIECES)
def test_the_words_are_those_last_read_and_approved(name: str) -> None:
    """The whole text of a lesson, as a person has read it."""
    assert everything(lesson(PIECES[name])) == (GOLDEN / f"{name}.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("language", ["en", "es", "de"])
def test_no_two_stops_follow_each_other(language: str) -> None:
    """A look in the last rounds of a phase and the check after it are one box; nothing of either is lost."""
    from tests.rehearsal.pieces import lesson_of

    made, bare = (lesson_of("jetty", language, carried=carried) for carried in (True, False))
    assert any(phase.check for phase in made.phases)
    for phase, plain in zip(made.phases, bare.phases, strict=True):
        if phase.check is None or plain.check is None:
            continue
        assert phase.steps[-1].checkpoint is None
        assert all(any(line in told for told in phase.check.lines) for line in plain.check.lines)


def quay() -> Pattern:
    """A chain of five bands, bound, lifted off, and closed by a clip through both ends."""
    m = PatternBuilder("Quay", Rows(rows=1, pegs=6)).colour("A", "slate", "#34506b")
    for k in range(1, 6):
        m.place("A", f"A{k}", f"A{k + 1}")
    m.turn()
    for k in range(5, 1, -1):
        m.hook(f"A{k}", f"A{k - 1}")
    m.bind("A", "A1")
    m.extend("A", 2)
    m.clip("end", "A6")
    return m.pattern()


@pytest.mark.parametrize("language", ["en", "es", "de"])
def test_nothing_lies_on_a_peg_once_the_piece_is_off(language: str) -> None:
    """After the piece is lifted off no check counts loops on pegs; those still needed are kept in hand."""
    from pegwright.rehearsal import rehearse

    history = work(quay())
    told = rehearse(quay(), history, settle=0)
    verdict = HoldResult(held=True, bands=history.final.bands)
    made = plan_lesson(
        quay(),
        history,
        count_supplies(quay(), history),
        verdict,
        language=language,
        rehearsal=told,
        hand="right",
    )
    off = [step for step in made.steps if step.off_loom]
    release = made.steps[made.steps.index(off[0]) - 1]
    assert any("A6" in line for line in release.detail)
    assert off[-2].first == len(history.moves)
    caught = "3"  # by hand: the first band's loop on A6, and both ends of the last band
    assert caught in off[-2].instruction
    looks = [step.checkpoint for step in off if step.checkpoint]
    assert looks
    for look in looks:
        assert not re.search(r"\bA[0-9]", " ".join(look.lines))
        assert any(caught in line for line in look.lines)


def test_a_way_back_names_the_steps_it_leads_over() -> None:
    """No sign of our own stands for a move: its step does, with the pegs where a step has many."""
    from tests.rehearsal.pieces import lesson_of

    made = lesson_of("jetty")
    told = [line for step in made.steps for trouble in step.mistakes for line in trouble.way_back]
    steps = [int(n) for line in told for n in re.findall(r"step ([0-9]+)", line)]
    assert steps
    assert set(steps) <= {step.number for step in made.steps}
    assert not re.search(r"[↑↻+×]", " ".join(told))


@pytest.mark.parametrize("language", ["en", "es", "de"])
def test_what_is_not_worn_is_not_told_to_be_worn(language: str) -> None:
    """A piece that no clip closes has a last step and cautions of its own."""
    worn, used = lesson(ebb(), language=language), lesson(dinghy(), language=language)
    assert worn.phases[-1].heading != used.phases[-1].heading
    assert worn.phases[-1].steps[0].instruction != used.phases[-1].steps[0].instruction
    assert set(used.cautions.lines) < set(worn.cautions.lines)
