"""The piece for other wrists: how often the repeat is worked, how long the extension is, how many bands."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from pegwright.fit.supplies import Supplies, supplies
from pegwright.lesson.leaf import Grid
from pegwright.lesson.sheet import Size, Sizes
from pegwright.lesson.verdict import Finish
from pegwright.lesson.words import Words
from pegwright.loom import board, replay
from pegwright.pattern import Pattern, expand
from pegwright.pattern.lengthen import repeats_of, with_repeats

WRISTS_MM = {"metric": tuple(range(130, 200, 10)), "inches": tuple(25.4 * n / 2 for n in range(10, 16))}
"""Wrists in mm that the table is made for, in round numbers of the reader's unit."""
SMALLEST_MM = 127.0
"""The smallest of them."""


class _Made(NamedTuple):
    """How the piece is made for a wrist in mm: how often the repeat, how many extension bands."""

    wrist_mm: float
    repeats: int
    extension: int


def sizes(words: Words, pattern: Pattern, finish: Finish) -> Sizes | None:
    """Say for each wrist that a length suits how the piece is made for it, and how many bands that takes.

    Repeats stay as they are where an extension makes the piece fit; where it is too long there are fewer of
    them, and where no extension can be put in, more or fewer. None where nothing of it can be changed.
    """
    measured, lengths = finish.measured, finish.lengths
    if measured is None:
        return None
    say = words.say
    grows = measured.extension_mm is not None and measured.extension_mm > 0
    now = [say("repeats-now", times=lengths.now, bands=lengths.bands)] if lengths else []
    rows = []
    for made in _suiting(words, finish):
        counted = supplies_of(pattern, made.repeats if lengths else None, made.extension if grows else None)
        if counted is None:
            continue
        wrist = words.length(made.wrist_mm)
        if not grows:
            said = say("repeats-line", wrist=wrist, times=made.repeats)
        elif lengths is None or made.repeats == lengths.now:
            said = say("extension-line", wrist=wrist, bands=made.extension)
        else:
            said = say("sizes-line", wrist=wrist, times=made.repeats, bands=made.extension)
        listed = [say("sizes-count", n=heap.worked, letter=heap.letter) for heap in counted.heaps]
        told = say("sizes-bands", list=words.both(listed), n=counted.bands)
        rows.append(
            Size(
                wrist=wrist,
                said=f"{said} {told}",
                repeats=made.repeats if lengths else 0,
                extension=made.extension,
                counts=tuple(heap.worked for heap in counted.heaps),
                bands=counted.bands,
                own=(made.repeats, made.extension) == (lengths.now if lengths else 0, measured.extension),
            )
        )
    if not rows:
        return None
    if grows:
        now.append(say("extension-now", bands=measured.extension))
    of = repeats_of(pattern) if lengths else None
    if of and of.pegs:
        now.append(say("sizes-pegs"))
    own = supplies_of(pattern, None, None)
    letters = tuple(heap.letter for heap in own.heaps) if own else ()
    heads = [say("column-wrist")]
    heads += [say("column-times")] if lengths else []
    heads += [say("column-extension")] if grows else []
    return Sizes(
        heading=say("heading-extension"),
        now=" ".join(now),
        columns=(*heads, *letters, say("total")),
        rows=tuple(rows),
        repeats=lengths is not None,
        extension=grows,
    )


def supplies_of(pattern: Pattern, repeats: int | None, extension: int | None) -> Supplies | None:
    """Count the bands of the piece with so many repeats and extension bands; None where it cannot be made.

    None for a number leaves it as the pattern has it.
    """
    made = made_for(pattern, repeats, extension)
    if made is None:
        return None
    expansion = expand(made)
    history = replay(board(made.loom), expansion.doings)
    if any(found.severity == "error" for found in (*expansion.findings, *history.findings)):
        return None
    return supplies(made, history)


def made_for(pattern: Pattern, repeats: int | None, extension: int | None) -> Pattern | None:
    """Return the pattern with so many repeats and extension bands; None where they cannot be changed."""
    from pegwright.fit.grading import with_extension  # noqa: PLC0415 - slow to load, and seldom asked

    try:
        made: Pattern | None = pattern if repeats is None else with_repeats(pattern, repeats)
    except ValueError:
        return None
    return made if made is None or extension is None else with_extension(made, extension)


def grid(words: Words, table: Sizes) -> Grid:
    """Lay the sizes out as a table."""
    return Grid(
        heading=words.say("heading-sizes"),
        columns=table.columns,
        rows=tuple(row.cells(table) for row in table.rows),
        wide=0,
        right=tuple(range(1, len(table.columns))),
    )


def _suiting(words: Words, finish: Finish) -> Iterator[_Made]:
    from pegwright.fit.grading import plan_for  # noqa: PLC0415
    from pegwright.fit.measured import gauge_of  # noqa: PLC0415
    from pegwright.fit.wrist import Wrist  # noqa: PLC0415

    measured, lengths = finish.measured, finish.lengths
    gauge = gauge_of(measured, lengths) if measured else None
    if gauge is None:
        return
    least, most = (lengths.least, lengths.most) if lengths else (0, 0)
    if lengths and gauge.extension_mm > 0:
        most = lengths.now
    for mm in WRISTS_MM[words.units]:
        wrist = Wrist(girth_mm=mm, low_mm=mm, high_mm=mm, said="")
        found = plan_for(wrist, gauge, least_repeats=least, most_repeats=most)
        if not found.findings:
            yield _Made(mm, found.repeats, found.extension)
