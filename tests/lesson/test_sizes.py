"""The table of sizes: lengths tried one by one, bands counted by hand, and read back from the files."""

from __future__ import annotations

import io
import re
from typing import Any

import pytest
from pypdf import PdfReader

from pegwright.fit import RepeatOptions, count_supplies
from pegwright.lesson import FinishedPiece, kit_sheet, write_script
from pegwright.lesson.handout.sizes import count_resized, resize_pattern
from pegwright.pattern import named_pegs
from pegwright.press import handout_pdf, leaf_pdf, page_html
from tests.lesson.pieces import dinghy, ebb, lesson, work
from tests.lesson.test_finished import measured, row
from tests.press.test_handout import _bare, _present

LONG = FinishedPiece(
    portrait=row(9),
    measured=measured(150.0, 6.0, 3),
    lengths=RepeatOptions(now=7, least=3, most=7, one_mm=11.0, bands=1),
)
"""A chain too long for small wrists: seven repeats of 11 mm, three extension bands of 6 mm."""


@pytest.mark.parametrize(("units", "wrists"), [("metric", range(130, 200, 10)), ("inches", range(10, 16))])
def test_the_extension_by_trying_every_count(units: Any, wrists: range) -> None:
    """Naive: of all lengths at rest from 0.85 to 1.0 of the wrist, the one nearest to the middle."""
    long, adds, now = 118.0, 6.5, 4
    finish = FinishedPiece(portrait=row(9), measured=measured(long, adds, now))
    table = lesson(ebb(), finish=finish, units=units).sizes
    assert table is not None
    found = []
    for each in wrists:
        wrist = float(each) if units == "metric" else 25.4 * each / 2
        lengths = {n: long + adds * (n - now) for n in range(60)}
        suiting = [n for n, mm in lengths.items() if 0.85 * wrist <= mm <= wrist]
        best = min(suiting, key=lambda n: abs(lengths[n] - 0.925 * wrist))
        told = f"{each} mm" if units == "metric" else f"{each // 2}{' 1/2' if each % 2 else ''} in"
        count = "no extension." if not best else f"an extension of {best} band{'s' if best > 1 else ''}."
        # By hand: eight placed of A; of B the band that binds the end, and the extension.
        bands = f"It takes 8 of A and {1 + best} of B, {9 + best} bands in all."
        found.append(f"For a wrist of {told}: {count} {bands}")
    assert table.now.startswith("As shown here, it has an extension of 4 bands. ")
    assert "“Possible on” where it can be worn." in table.now
    assert "Do so once for every band of the extension" in table.now
    assert table.lines == (table.now, *found)


def test_a_piece_that_is_too_long_is_worked_with_fewer_repeats() -> None:
    """Naive: as many repeats as fit, no more than there are; then the extension nearest to the middle."""
    table = lesson(ebb(), finish=LONG).sizes
    assert table is not None
    for wrist, line in zip(range(130, 200, 10), table.rows, strict=True):
        tried = {(r, e): 150.0 + 11.0 * (r - 7) + 6.0 * (e - 3) for r in range(3, 8) for e in range(60)}
        fit = [made for made, mm in tried.items() if 0.85 * wrist <= mm <= wrist]
        most = max(r for r, _ in fit)
        best = min((e for r, e in fit if r == most), key=lambda e: abs(tried[most, e] - 0.925 * wrist))
        assert (line.repeats, line.extension) == (most, best)
        assert sum(line.counts) == line.bands
    fewer = [line for line in table.rows if line.repeats < 7]
    assert fewer
    for line in fewer:
        assert f"work the repeat {line.repeats} times in all" in line.sentence
    assert [line.as_taught for line in table.rows].count(True) <= 1


def test_bands_of_a_size_are_those_of_the_pattern_spelled_out() -> None:
    """The second way: a chain of the other length, written move by move, and its bands counted."""
    for repeats, extension in ((7, 3), (5, 0), (3, 2)):
        counted = count_resized(ebb(), repeats, extension)
        assert counted is not None
        # Repeats of seven pulled loops have eight bands placed; both change together.
        assert [heap.worked for heap in counted.heaps] == [repeats + 1, 1 + extension]
    own = count_resized(ebb(), None, None)
    assert own == count_supplies(ebb(), work(ebb()))
    assert count_resized(dinghy(), None, 4) is None  # nothing ends free
    assert count_resized(ebb(), 0, 0) is None


@pytest.mark.parametrize("edition", ["standard", "large", "grey"])
@pytest.mark.parametrize("language", ["en", "es", "de"])
def test_sizes_are_read_back_from_handout_kit_and_page(language: str, edition: Any) -> None:
    """Row by row, the same numbers in both PDF files, and the same sentences on the page."""
    made = lesson(ebb(), finish=LONG, language=language)
    table = made.sizes
    assert table is not None
    sheet = kit_sheet(made, write_script(made), count_supplies(ebb(), work(ebb())), 12)
    for name, pdf in (("handout", handout_pdf(made, edition=edition)), ("kit", leaf_pdf(sheet))):
        text = "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages)
        words = text.split()
        for line in table.rows:
            if name == "handout" and edition == "large":  # there in sentences
                assert _present(line.sentence, _bare(text))
                continue
            cells = " ".join(line.cells(table)).split()
            assert any(words[i : i + len(cells)] == cells for i in range(len(words))), cells
    page = page_html(made)
    assert all(line in page for line in table.lines)


def test_wrists_for_which_it_is_made_alike_share_a_row() -> None:
    """A piece that grows by long repeats only comes in few lengths: no two rows of the table are equal."""
    coarse = FinishedPiece(portrait=row(9), measured=measured(150.0, 24.0, 0))
    table = lesson(ebb(), finish=coarse).sizes
    assert table is not None
    made = [(row.repeats, row.extension) for row in table.rows]
    assert len(set(made)) == len(made) < 7
    assert any("–" in row.wrist for row in table.rows)


def test_an_extension_is_explained() -> None:
    """Whoever is to add one finds the word among those that the lesson explains."""
    lines = lesson(ebb(), finish=LONG).glossary.lines
    assert any(line.startswith("extension: a plain chain") for line in lines)


def test_a_resized_piece_is_told_so_that_it_can_be_worked() -> None:
    """The last peg and the rounds of each counted step are those of the piece, made so long and planned anew.

    The words of the lesson of the resized pattern are the second way: "do … again, n more times".
    """
    made = lesson(ebb(), finish=LONG)
    table = made.sizes
    assert table is not None
    assert table.columns[:5] == ("Wrist", "Possible on", "Repeats", "Extension", "Last peg")
    for line in table.rows:
        resized = resize_pattern(ebb(), line.repeats, line.extension)
        assert resized is not None
        anew = lesson(resized)
        again = {s.number: len(s.ticks) for s in anew.steps if s.rounds > 1}
        last = max((int(peg[1:]), peg) for done in work(resized).moves for peg in named_pegs(done.move))[1]
        own_last = "A9"
        if line.repeats == 7:
            assert "takes the place" not in line.sentence
        else:
            assert f"Peg {last} takes the place of peg {own_last}." in line.sentence
        if len(again) == sum(s.rounds > 1 for s in made.steps) and line.repeats != 7:
            for number, times in again.items():
                assert f"Step {number}: {times} more times." in line.sentence


def test_the_possible_wrists_of_the_own_size_are_those_of_the_piece() -> None:
    """The table does not contradict the first page, and every row can be worn on its own wrist."""
    made = lesson(ebb(), finish=LONG)
    table = made.sizes
    assert table is not None
    for line in table.rows:
        low, high = (int(mm) for mm in re.findall(r"([0-9]+)", line.possible))
        wrists = [int(mm) for mm in re.findall(r"([0-9]+)", line.wrist)]
        assert low <= min(wrists) and max(wrists) <= high  # noqa: PT018
        if line.as_taught:
            assert f"from {low} mm to {high} mm" in made.finished.wrists


@pytest.mark.parametrize("language", ["en", "de", "es"])
@pytest.mark.parametrize("units", ["metric", "inches"])
def test_the_piece_as_it_is_taught_has_its_row_however_small(language: str, units: Any) -> None:
    """A bracelet of 88 mm suits 88 to 104 mm (at rest 0.85 to 1.0 of the wrist), below every round number."""
    small = FinishedPiece(portrait=row(9), measured=measured(88.0, 6.0, 0))
    table = lesson(ebb(), finish=small, language=language, units=units).sizes
    assert table is not None
    [own] = [row for row in table.rows if row.as_taught]
    assert own is table.rows[0]
    metric = units == "metric"
    unit = {"en": "in", "de": "Zoll", "es": "pulgadas"}[language]
    assert own.wrist == ("95 mm" if metric else f"3 3/4 {unit}")
    assert not metric or own.possible == "88–104 mm"
    assert own.extension == 0
    made = [(row.repeats, row.extension) for row in table.rows]
    assert len(set(made)) == len(made), "no two rows are equal"
    assert ("130" if metric else "5") in table.now
    assert "190" in table.now or not metric


def test_the_table_says_where_it_ends_and_why() -> None:
    """All wrists: nothing to explain. A piece of few repeats and without an extension reaches only some."""
    table = lesson(ebb(), finish=LONG).sizes
    assert table is not None
    assert "from a child of about seven to a large adult." in table.now
    assert "cannot be made" not in table.now
    stiff = FinishedPiece(
        portrait=row(9),
        measured=measured(150.0, None),
        lengths=RepeatOptions(now=7, least=6, most=7, one_mm=11.0, bands=1),
    )
    table = lesson(ebb(), finish=stiff).sizes
    assert table is not None
    # By hand: 150 mm suits, at 0.85 to 1.0, wrists from 150 to 176 mm, and 139 mm smaller ones from 139 mm.
    assert [row.wrist for row in table.rows] == ["140 mm", "150–170 mm"]
    assert "For smaller wrists than it lists, the piece cannot be made short enough." in table.now
    assert "For larger wrists than it lists, the piece cannot be made long enough." in table.now
