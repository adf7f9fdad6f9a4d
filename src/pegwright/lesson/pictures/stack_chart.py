"""A chart of the whole loom at one moment: every peg with its loops, the lowest first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise
from typing import NamedTuple

from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.picture import BadgeMark, BarMark, LabelMark, Mark, Picture, Window
from pegwright.lesson.scene.scene import Look, Scene
from pegwright.loom import Bight, Board
from pegwright.pattern import is_address, parse_address, row_letter

_LINES_AT_MOST = 8
_CHIPS_A_LINE = 6
_PARTS_AT_MOST = 60
_LINE_MM, _NAME_MM, _CHIP_MM, _TIMES_MM = 5.2, 8.0, 7.8, 5.2
_LETTER_MM, _BADGE_MM = 2.4, 1.9


class LoopRun(NamedTuple):
    """Loops of one colour that lie one above the other: their letter and how many they are."""

    letter: str
    times: int


class _Line(NamedTuple):
    """A line of the chart: a peg's name, empty where a high stack goes on, and the runs in it."""

    peg: str
    runs: tuple[LoopRun, ...]


def runs_of(look: Look, stack: Sequence[Bight]) -> tuple[LoopRun, ...]:
    """Gather the loops of a stack, the lowest first, into runs of one colour."""
    letters = (look.of(bight.band)[0] for bight in stack)
    return tuple(LoopRun(letter, len([*same])) for letter, same in groupby(letters))


def draw_chart(speaker: Speaker, scene: Scene) -> tuple[Picture, ...]:
    """Show every peg that holds a loop, in columns: the rows as they lie before the maker, far pegs on top.

    On a round loom the pegs follow their numbers. A high stack goes on in the next line. Of a very large loom
    only so many columns are shown as fit on a few pages.
    """
    found = []
    for pegs in _columns(scene):
        lines = [line for peg in pegs for line in _lines(scene, peg)]
        found.append(_draw_column(speaker, scene, pegs, lines))
    return tuple(found[:_PARTS_AT_MOST])


def _columns(scene: Scene) -> Iterator[tuple[str, ...]]:
    """Part the pegs that hold loops into columns of about equal length, none longer than its limit."""
    held = [peg for peg, stack in scene.state.stacks.items() if is_address(peg) and stack]
    for row in _rows_in_view(scene, held):
        parts = -(-len(row) // _LINES_AT_MOST)
        size = -(-len(row) // parts)
        yield from (tuple(row[k : k + size]) for k in range(0, len(row), size))


def _rows_in_view(scene: Scene, held: Sequence[str]) -> list[list[str]]:
    """Return the pegs row by row, from the maker's left to the right, each row from the far end."""
    spot = scene.view.spot
    if _is_ring(scene.view.board, held):
        return [sorted(held, key=parse_address)] if held else []
    rows: dict[str, list[str]] = {}
    for peg in held:
        rows.setdefault(row_letter(parse_address(peg).row), []).append(peg)
    ordered = sorted(rows.values(), key=lambda row: sum(spot(peg)[0] for peg in row) / len(row))
    return [sorted(row, key=lambda peg: -spot(peg)[1]) for row in ordered]


def _is_ring(board: Board, held: Sequence[str]) -> bool:
    """Say whether pegs of one row stand on both sides of each other, so that no end of it is the far one."""
    rows = {parse_address(peg).row for peg in held}
    along = [board.pegs[peg].y_mm for peg in sorted(held, key=parse_address)]
    steps = {b > a for a, b in pairwise(along) if abs(b - a) > 1e-6}
    return len(rows) == 1 and len(steps) > 1


def _lines(scene: Scene, peg: str) -> Iterator[_Line]:
    runs = runs_of(scene.look, scene.state.stack(peg))
    for k in range(0, len(runs), _CHIPS_A_LINE):
        yield _Line(peg if k == 0 else "", runs[k : k + _CHIPS_A_LINE])


def _draw_column(speaker: Speaker, scene: Scene, pegs: Sequence[str], lines: Sequence[_Line]) -> Picture:
    marks: list[Mark] = []
    right = 0.0
    tints = {scene.look.of(bight.band)[0]: scene.look.of(bight.band) for peg in pegs
             for bight in scene.state.stack(peg)}  # fmt: skip
    for k, line in enumerate(lines):
        y = -_LINE_MM * (k + 0.5)
        if line.peg:
            marks.append(LabelMark(x_mm=_NAME_MM / 2, y_mm=y, text=line.peg, size_mm=_LETTER_MM, bold=True))
        x = _NAME_MM
        for run in line.runs:
            _, _, tint, hatch = tints[run.letter]
            middle = x + _CHIP_MM / 2
            marks.append(
                BarMark(
                    x_mm=middle,
                    y_mm=y,
                    w_mm=_CHIP_MM - 0.4,
                    h_mm=_LINE_MM - 0.8,
                    letter=run.letter,
                    tint=tint,
                    hatch=hatch,
                    highlighted=True,
                )
            )
            marks.append(BadgeMark(x_mm=middle, y_mm=y, text=run.letter, r_mm=_BADGE_MM))
            x += _CHIP_MM
            if run.times > 1:
                times = f"×{run.times}"
                marks.append(LabelMark(x_mm=x + _TIMES_MM / 2, y_mm=y, text=times, size_mm=_LETTER_MM))
                x += _TIMES_MM
        right = max(right, x)
    say = speaker.phrasebook.say
    told = [
        say("chart-peg", peg=peg, loops=", ".join(_run_text(speaker, run) for run in runs))
        for peg in pegs
        if (runs := runs_of(scene.look, scene.state.stack(peg)))
    ]
    return Picture(
        title=speaker.pegs(list(pegs)),
        text=say("picture-chart", pegs="; ".join(told)),
        window=Window(left_mm=0.0, near_mm=-_LINE_MM * len(lines), right_mm=right + 1.0, far_mm=0.0),
        marks=tuple(marks),
    )


def _run_text(speaker: Speaker, run: LoopRun) -> str:
    return speaker.phrasebook.say("chart-run", n=run.times, letter=run.letter)
