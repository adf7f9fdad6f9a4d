from __future__ import annotations

from typing import Any

import jsonpatch
import msgspec
import pytest
from hypothesis import given, strategies as st

from pegwright.finding import Finding
from pegwright.fit import check_stated_counts
from pegwright.fit.stated_counts import quoted_counts
from pegwright.pattern import Pattern, PatternBuilder, Rows, StatedCounts, expand

NAMES = {"A": frozenset("A"), "B": frozenset("B"), "slate": frozenset("A"), "sea foam": frozenset("B")}


def chain(bands: int, stated: StatedCounts | None = None, step: str = "", **about: Any) -> Pattern:
    """A chain in slate with one band of foam at its end, and a clip."""
    m = PatternBuilder(about.pop("title", "Ebb"), Rows(rows=1, pegs=bands + 1), **about)
    m.colour("A", "slate", "#4A5A6A").colour("B", "foam", "#DDEEEE")
    for k in range(1, bands):
        m.place("A", f"A{k}", f"A{k + 1}")
    m.place("B", f"A{bands}", f"A{bands + 1}")
    with m.repeat(bands - 1, pegs=-1):
        m.hook(f"A{bands}", f"A{bands - 1}", note=step)
    m.clip("A1")
    return m.pattern(stated)


def check(pattern: Pattern) -> tuple[Finding, ...]:
    return check_stated_counts(pattern, expand(pattern))


def quotes(text: str) -> list[tuple[int, str]]:
    return [(one.number, "".join(sorted(one.what))) for one in quoted_counts(text, NAMES)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Takes 25 bands.", [(25, "bands")]),
        ("26 bands in all and two clips", [(26, "bands"), (2, "clip")]),
        ("12 slate bands, 6 A and 7 Sea Foam", [(12, "A"), (6, "A"), (7, "B")]),
        ("12 × slate; A: 38, B × 4", [(12, "A"), (38, "A"), (4, "B")]),
        ("Twelve slate bands", [(12, "A")]),
        ("the first 3 bands, then every 2 bands", []),
        ("3 or 4 bands, 20–25 bands, about 25 bands, add up to 6 bands", []),
        ("2 bands at a time, 6 bands each, 3 bands or more", []),
        ("hook 2 slate loops over 3 pegs; 6 a day; row A: 3.5 mm; band A1", []),
        ("one band and one clip, 1.5 bands, 13 rubber bands", []),
        ("A 3 × 13 loom, peg A3, 250 g", []),
        ("1 clip", [(1, "clip")]),
    ],
)
def test_what_is_read_as_a_count(text: str, found: list[tuple[int, str]]) -> None:
    assert quotes(text) == found


def test_stated_counts() -> None:
    good = chain(12, StatedCounts(bands={"A": 11, "B": 1}, clips=1))
    assert check(good) == ()
    bad = chain(12, StatedCounts(bands={"A": 12, "B": 1, "Z": 3}, clips=2))
    assert [(f.place.path, f.facts["counted"]) for f in check(bad)] == [
        ("/stated/bands/A", 11),
        ("/stated/bands/Z", 0),
        ("/stated/clips", 1),
    ]


@pytest.mark.parametrize(
    ("text", "cured"),
    [
        ("24 bands in a row", "12 bands in a row"),
        ("All in slate: 12 slate bands.", "All in slate: 11 slate bands."),
        ("Takes 6 B", "Takes 1 B"),
        ("two clips close it", "1 clips close it"),
    ],
)
def test_a_wrong_number_in_the_notes_is_found_and_cured(text: str, cured: str) -> None:
    pattern = chain(12, notes=text)
    (one,) = check(pattern)
    assert one.code == "text-count-wrong"
    assert one.fix is not None
    mended = jsonpatch.apply_patch(msgspec.to_builtins(pattern), list(one.fix.patch))
    assert mended["notes"] == cured
    assert check(msgspec.convert(mended, Pattern)) == ()


def test_title_step_and_motif_are_read_too() -> None:
    pattern = chain(5, title="9 bands of ebb", step="Hook the other 3 bands; 4 bands in all", notes="5 bands")
    assert [f.place.path for f in check(pattern)] == ["/title", "/steps/5/steps/0/note"]


def test_a_part_may_be_counted() -> None:
    """A motif of six, worked five times, with an extension of seven: every part's number is accepted."""
    m = PatternBuilder("Roses", Rows(rows=3, pegs=30), notes="6 bands a rose; 15 A in all, of 30 bands")
    m.colour("A", "slate", "#4A5A6A").colour("B", "foam", "#DDEEEE")
    with m.motif("rose", "O"), m.repeat(6):
        m.place("O", "A1", "A2", note="6 O bands, 3 bands")
    for k in range(5):
        m.use("rose", pegs=k, colours={"O": "AB"[k % 2]})
    m.bind("B", "A1")
    m.extend("B", 7, note="7 bands for the wrist; 8 bands for mine")
    found = [(f.place.path, f.facts["quote"]) for f in check(m.pattern())]
    assert found == [
        ("/notes", "15 A"),
        ("/motifs/0/steps/0/steps/0/note", "3 bands"),
        ("/steps/6/note", "8 bands"),
    ]


def test_nothing_is_said_where_the_steps_are_not_known() -> None:
    m = PatternBuilder("Fog", Rows(rows=1, pegs=3), notes="99 bands")
    m.use("gone")
    assert check(m.pattern()) == ()


@given(st.integers(2, 20), st.integers(0, 60), st.integers(0, 60))
def test_agreement_is_silence(bands: int, said_all: int, said_a: int) -> None:
    """Only a number that fits no part is found; the parts here are 1 (a step) and the whole."""
    pattern = chain(
        bands, StatedCounts(bands={"A": said_a}), notes=f"{said_all} bands", title=f"{said_a} slate bands"
    )
    found = {f.place.path for f in check(pattern)}
    # The repeated round lays no band at all, so 0 is the true count of a part.
    assert ("/notes" in found) == (said_all not in (0, bands))
    assert ("/title" in found) == (said_a not in (0, bands - 1))
    assert ("/stated/bands/A" in found) == (said_a != bands - 1)


@given(
    st.text(max_size=200)
    | st.lists(st.sampled_from(["sıx", "6 ", "SEA FOAM", "ſlate", " slate", "A: ", "bands"])).map(" ".join)
)
def test_any_text_may_be_read(text: str) -> None:
    for one in quoted_counts(text, NAMES):
        assert text[one.start : one.end].strip()
