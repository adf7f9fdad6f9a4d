"""The piece for other wrists: how often the repeat is worked, how long the extension is, how many bands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import NamedTuple

import msgspec

from pegwright.finding import RefusedError
from pegwright.fit import Supplies, count_supplies
from pegwright.lesson.handout.leaf import Table
from pegwright.lesson.handout.results import FinishedPiece
from pegwright.lesson.handout.sheet import SizeTable, WristRow
from pegwright.lesson.say.phrasebook import Phrasebook
from pegwright.lesson.scene.rounds import CountedRounds, group_rounds
from pegwright.loom import History, replay_pattern
from pegwright.pattern import Pattern, Round, expand, named_pegs, parse_address, repeats_of, with_repeats

WRISTS_MM = {"metric": tuple(range(130, 200, 10)), "inches": tuple(25.4 * n / 2 for n in range(10, 16))}
"""Wrists in mm that the table is made for, in round numbers of the reader's unit."""
SMALLEST_MM = 127.0
"""The smallest of them."""


class _Resized(NamedTuple):
    """How the piece is made for a wrist in mm: how often the repeat, how many extension bands, how long.

    `own` is the piece as the lesson teaches it, where that is best for no wrist in round numbers.
    """

    wrist_mm: float
    repeats: int
    extension: int
    length_mm: float
    own: bool = False


class TaughtSteps(NamedTuple):
    """How the lesson teaches the piece as it is: the steps that count rounds, the step that binds the end.

    `counted` holds step number and how many more times; `last_peg` is the farthest peg of the loom that is
    used; `bind` is 0 where no last band is bound.
    """

    counted: tuple[tuple[int, int], ...] = ()
    last_peg: str = ""
    bind: int = 0


_UNTAUGHT = TaughtSteps()


def size_table(
    phrasebook: Phrasebook, pattern: Pattern, finish: FinishedPiece, taught: TaughtSteps = _UNTAUGHT
) -> SizeTable | None:
    """Say for each wrist that a length suits how the piece is made for it, and how many bands that takes.

    Repeats stay as they are where an extension makes the piece fit; where it is too long there are fewer of
    them, and where no extension can be put in, more or fewer. Wrists for which it is made alike share a row.
    Where the repeats change, a row says on which peg the piece then ends and how often each step that counts
    rounds is done, so that it can be worked. None where nothing of it can be changed.
    """
    measured, lengths = finish.measured, finish.lengths
    if measured is None:
        return None
    say = phrasebook.say
    grows = measured.extension_mm is not None and measured.extension_mm > 0
    of = repeats_of(pattern) if lengths else None
    if of is None or not of.pegs:
        taught = taught._replace(last_peg="")  # it grows in its place
    rows: list[WristRow] = []
    works: list[TaughtSteps] = []
    wrists_mm: list[float] = []
    fitting = groupby(_fitting_sizes(phrasebook, finish), key=lambda made: (made.repeats, made.extension))
    for _, same in fitting:  # wrists for which it is made in the same way share a row
        wrists = [*same]
        made = wrists[0]
        resized = _replay_resized(
            pattern, made.repeats if lengths else None, made.extension if grows else None
        )
        if resized is None:
            continue
        wrists_mm += [each.wrist_mm for each in wrists if not each.own]
        works.append(steps_that_count(*resized, [number for number, _ in taught.counted]))
        rows.append(
            _write_row(phrasebook, finish, wrists, count_supplies(*resized), work=works[-1], taught=taught)
        )
    if not rows:
        return None
    now = [say("repeats-now", times=lengths.now, bands=lengths.bands)] if lengths else []
    now += [say("extension-now", bands=measured.extension)] if grows else []
    now.append(say("sizes-best"))
    now.append(_say_limits(phrasebook, wrists_mm))
    now += [say("sizes-pegs", peg=taught.last_peg)] if taught.last_peg else []
    now += [say("sizes-extend", step=taught.bind)] if grows and taught.bind else []
    steps = _steps_that_differ(works, taught) if lengths else []
    for i, work in enumerate(works):
        times = dict(work.counted)
        cells = (*((work.last_peg,) if taught.last_peg else ()), *(str(times[n]) for n in steps))
        rows[i] = msgspec.structs.replace(rows[i], made=cells)
    own = count_resized(pattern, None, None)
    letters = tuple(heap.letter for heap in own.heaps) if own else ()
    heads = [say("column-wrist"), say("column-possible")]
    heads += [say("column-times")] if lengths else []
    heads += [say("column-extension")] if grows else []
    heads += [say("column-last-peg")] if taught.last_peg else []
    heads += [say("column-times-step", step=number) for number in steps]
    return SizeTable(
        heading=say("heading-extension"),
        now=" ".join(now),
        columns=(*heads, *letters, say("total")),
        rows=tuple(rows),
        repeats=lengths is not None,
        extension=grows,
    )


def _write_row(
    phrasebook: Phrasebook,
    finish: FinishedPiece,
    wrists: Sequence[_Resized],
    counted: Supplies,
    *,
    work: TaughtSteps,
    taught: TaughtSteps,
) -> WristRow:
    say, made, measured, lengths = phrasebook.say, wrists[0], finish.measured, finish.lengths
    assert measured is not None
    wrist = phrasebook.length(made.wrist_mm)
    if len(wrists) > 1:
        wrist = phrasebook.length_range(made.wrist_mm, wrists[-1].wrist_mm)
    if not measured.extension_mm:
        said = say("repeats-line", wrist=wrist, times=made.repeats)
    elif lengths is None or made.repeats == lengths.now:
        said = say("extension-line", wrist=wrist, bands=made.extension)
    else:
        said = say("sizes-line", wrist=wrist, times=made.repeats, bands=made.extension)
    if lengths and made.repeats != lengths.now:
        said += _how_it_is_worked(phrasebook, work, taught)
    low, high = ((mm if phrasebook.units == "inches" else round(mm)) for mm in _possible_mm(finish, made))
    listed = [say("sizes-count", n=heap.worked, letter=heap.letter) for heap in counted.heaps]
    bands = say("sizes-bands", list=phrasebook.both(listed), n=counted.bands)
    return WristRow(
        wrist=wrist,
        sentence=f"{said} {bands}",
        repeats=made.repeats if lengths else 0,
        extension=made.extension,
        counts=tuple(heap.worked for heap in counted.heaps),
        bands=counted.bands,
        possible=phrasebook.length_range(low, high),
        as_taught=(made.repeats, made.extension) == (lengths.now if lengths else 0, measured.extension),
    )


def _steps_that_differ(works: Sequence[TaughtSteps], taught: TaughtSteps) -> list[int]:
    """Return the steps that are done more or less often in some size; none where sizes count other steps."""
    steps = [number for number, _ in taught.counted]
    if any([number for number, _ in work.counted] != steps for work in works):
        return []
    return [n for i, n in enumerate(steps) if len({work.counted[i][1] for work in works}) > 1]


def count_resized(pattern: Pattern, repeats: int | None, extension: int | None) -> Supplies | None:
    """Count the bands of the piece with so many repeats and extension bands; None where it cannot be made.

    None for a number leaves it as the pattern has it.
    """
    made = _replay_resized(pattern, repeats, extension)
    return None if made is None else count_supplies(*made)


def _replay_resized(
    pattern: Pattern, repeats: int | None, extension: int | None
) -> tuple[Pattern, History] | None:
    made = resize_pattern(pattern, repeats, extension)
    if made is None:
        return None
    expansion = expand(made)
    history = replay_pattern(made, expansion)
    if any(found.severity == "error" for found in (*expansion.findings, *history.findings)):
        return None
    return made, history


def steps_that_count(pattern: Pattern, history: History, numbers: Sequence[int]) -> TaughtSteps:
    """Return what a lesson of the piece counts: how often each run of rounds, and the last peg that is used.

    `numbers` are those of the steps that count rounds, in order; none are told where there are others.
    """
    ring = pattern.loom.pegs if isinstance(pattern.loom, Round) else 0
    counted = [len(one.rounds) for one in group_rounds(history.moves, ring) if isinstance(one, CountedRounds)]
    used = {peg for done in history.moves for peg in named_pegs(done.move)}
    last = max(used, key=lambda peg: (parse_address(peg).number, peg), default="")
    same = len(counted) == len(numbers)
    return TaughtSteps(tuple(zip(numbers, counted, strict=True)) if same else (), last)


def _how_it_is_worked(phrasebook: Phrasebook, work: TaughtSteps, taught: TaughtSteps) -> str:
    """Say how often the counted steps are done, where that differs, and which peg is the last one then."""
    own = dict(taught.counted)
    ways = [
        phrasebook.say("sizes-step", step=number, times=times)
        for number, times in work.counted
        if own.get(number) != times
    ]
    if taught.last_peg and work.last_peg != taught.last_peg:
        ways.append(phrasebook.say("sizes-last-peg", peg=work.last_peg, own=taught.last_peg))
    return "".join(f" {text}" for text in ways)


def resize_pattern(pattern: Pattern, repeats: int | None, extension: int | None) -> Pattern | None:
    """Return the pattern with so many repeats and extension bands; None where they cannot be changed."""
    from pegwright.fit import with_extension  # noqa: PLC0415 - slow to load, and seldom asked

    try:
        made: Pattern | None = pattern if repeats is None else with_repeats(pattern, repeats)
    except RefusedError:
        return None
    return made if made is None or extension is None else with_extension(made, extension)


def sizes_as_table(phrasebook: Phrasebook, table: SizeTable) -> Table:
    """Lay the sizes out as a table."""
    return Table(
        heading=phrasebook.say("heading-sizes"),
        columns=table.columns,
        rows=tuple(row.cells(table) for row in table.rows),
        wide=0,
        right=tuple(range(1, len(table.columns))),
    )


def _possible_mm(finish: FinishedPiece, made: _Resized) -> tuple[float, float]:
    """Return the smallest and largest wrist of a size, which stretches as the piece itself does."""
    from pegwright.fit import advise_fit  # noqa: PLC0415 - slow to load, and seldom asked

    fit = advise_fit(finish.measured).fit if finish.measured else None
    if fit is None or fit.wrists_mm is None:
        return made.wrist_mm, made.wrist_mm
    low, high = fit.wrists_mm
    return made.length_mm * low / fit.length_mm, made.length_mm * high / fit.length_mm


def _fitting_sizes(phrasebook: Phrasebook, finish: FinishedPiece) -> Iterator[_Resized]:
    from pegwright.fit import Wrist, gauge_from_measurements, plan_size  # noqa: PLC0415

    measured, lengths = finish.measured, finish.lengths
    gauge = gauge_from_measurements(measured, lengths) if measured else None
    if gauge is None:
        return
    least, most = (lengths.least, lengths.most) if lengths else (0, 0)
    if lengths and gauge.extension_mm > 0:
        most = lengths.now
    made = []
    for mm in WRISTS_MM[phrasebook.units]:
        wrist = Wrist(girth_mm=mm, low_mm=mm, high_mm=mm, said="")
        found = plan_size(wrist, gauge, least_repeats=least, most_repeats=most)
        if not found.findings:
            made.append(_Resized(mm, found.repeats, found.extension, found.length_mm))
    yield from sorted([*made, *_as_taught(phrasebook, finish, made)], key=lambda each: each.wrist_mm)


def _as_taught(phrasebook: Phrasebook, finish: FinishedPiece, others: Sequence[_Resized]) -> list[_Resized]:
    """Return the piece as it is taught with the wrist it fits best, if none of the others is made so."""
    from pegwright.fit import EASE, advise_fit  # noqa: PLC0415 - slow to load, and seldom asked

    measured, lengths = finish.measured, finish.lengths
    assert measured is not None
    own = (lengths.now if lengths else 0, measured.extension)
    fit = advise_fit(measured).fit
    if fit is None or fit.wrists_mm is None or own in [(each.repeats, each.extension) for each in others]:
        return []
    low, high = fit.wrists_mm
    best_mm = min(max(fit.length_mm / (sum(EASE) / 2), low), high)
    best_mm = float(round(best_mm)) if phrasebook.units == "metric" else best_mm
    return [_Resized(best_mm, *own, fit.length_mm, own=True)]


def _say_limits(phrasebook: Phrasebook, wrists_mm: Sequence[float]) -> str:
    """Say which wrists the table is made for, and where the piece can be made no shorter or no longer."""
    asked = WRISTS_MM[phrasebook.units]
    limits = []
    if wrists_mm and wrists_mm[0] > asked[0]:
        limits.append(phrasebook.say("sizes-no-shorter"))
    if wrists_mm and wrists_mm[-1] < asked[-1]:
        limits.append(phrasebook.say("sizes-no-longer"))
    whom = phrasebook.say("sizes-wrists", wrists=phrasebook.length_range(asked[0], asked[-1]))
    return " ".join((whom, *limits))
