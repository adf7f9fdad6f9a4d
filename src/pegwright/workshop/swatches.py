"""A technique measured on its swatches: at rest, pulled, on the loom, and in a beginner's hands."""

from __future__ import annotations

import math

import msgspec

from pegwright.finding import LANGUAGES, word_phrase
from pegwright.fit import assess_fit, find_loom_loads, read_stretch_curve
from pegwright.judging import find_worst_snap
from pegwright.lesson import MistakeWriter, Phrasebook, portrait_of
from pegwright.loom import History, step_numbers
from pegwright.pattern import Level, write_pattern
from pegwright.press import portrait_png
from pegwright.rehearsal import Rehearsal
from pegwright.shape import USUAL_HANDLING, RestingPiece
from pegwright.variants import TECHNIQUES
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.lesson_plan import lesson_of
from pegwright.workshop.line import Work, work
from pegwright.workshop.rehearsals import rehearse_piece

__all__ = [
    "Bracelet",
    "KeptSwatch",
    "SwatchMeasures",
    "SwatchTask",
    "TypicalSlip",
    "do_swatch_task",
    "growth_of",
]

_PICTURE_PX = 400
_GENTLE_N, _HARD_N = 1.0, 4.0
_ABOUT_MM = 150.0  # of a bracelet at rest
_SLIPS = 2
_STEPS_NAMED = 4
_COSTS: tuple[tuple[float, Level], ...] = ((1.0, "basic"), (1.9, "easy"), (3.6, "intermediate"))
"""What slips cost in the shorter swatch, in bands, below which a technique is that difficult.

About a quarter of the atlas each; our own choice, no source.
"""


class TypicalSlip(msgspec.Struct, frozen=True, kw_only=True):
    """A slip that costs much: the steps at which it is made, and in each language what is done and the end.

    `steps` are the worst of the shorter swatch, `more` is how many there are besides.
    """

    steps: tuple[int, ...]
    more: int
    says: dict[str, tuple[str, str]]


class Bracelet(msgspec.Struct, frozen=True, kw_only=True):
    """A bracelet of the technique, about 15 cm long at rest, worked out from the swatches.

    `minutes` are a beginner's. `wrists_mm` are those that it suits, None if that cannot be told.
    """

    repeats: int
    length_mm: float
    bands: int
    minutes: float
    wrists_mm: tuple[float, float] | None


class SwatchMeasures(msgspec.Struct, frozen=True, kw_only=True):
    """One technique, measured on the longer of its two swatches; lengths in mm, at rest.

    `length_mm` lies along the repeats and `width_mm` across them, where that can be told. `repeat_mm` is what
    one repeat adds to the length, `stretch` how many times as long the swatch is when it is pulled with 1 N,
    `stack` the most loops on a peg, `strain` the most stretch of a band on the loom, 1 being slack,
    `snap_loses` how many more bands fall at worst if one snaps, `minutes` what a beginner takes,
    `failures` how many slips that bring bands down a maker makes on average in the shorter swatch,
    `cost` how many bands all slips lose or lay in another way in it. None is what could not be measured.
    """

    name: str
    group: str
    titles: dict[str, str]
    holds: bool
    bands: int
    colours: int
    repeat_bands: float
    length_mm: float
    width_mm: float
    height_mm: float
    at_rest: bool
    repeat_mm: float | None
    stretch: float | None
    bracelet: Bracelet | None
    stack: int
    strain: float
    snap_loses: int | None
    minutes: float
    failures: float
    cost: float
    level: Level
    slips: tuple[TypicalSlip, ...]


class KeptSwatch(msgspec.Struct, frozen=True, kw_only=True):
    """What is kept of a technique: its measures, the pattern (JSON) and picture (PNG) of the longer."""

    measures: SwatchMeasures
    pattern: bytes
    picture: bytes


class SwatchTask(msgspec.Struct, frozen=True, kw_only=True):
    """The technique to measure, by name, and the digest of the program that does it."""

    source: str
    name: str


def do_swatch_task(data: bytes) -> bytes:
    """Measure the technique of an encoded task; return an encoded `KeptSwatch`."""
    technique = TECHNIQUES[msgspec.msgpack.decode(data, type=SwatchTask).name]
    short, long = (work(technique.make(repeats)) for repeats in technique.repeats)
    rest, less = bring_to_rest(long), bring_to_rest(short)
    settled = rest.relaxed.converged and less.relaxed.converged
    open_ = settled and not technique.closed
    grown = growth_of((less.length_mm, less.width_mm), (rest.length_mm, rest.width_mm)) if open_ else None
    growth, length, width = grown or (None, rest.length_mm, rest.width_mm)
    along = growth is not None and length == rest.length_mm
    pulls = _stretches(long, rest) if along else ()
    repeats = technique.repeats[1] - technique.repeats[0]
    repeat_mm = None if growth is None else growth / repeats
    minutes, less_minutes = (
        sum(step.learner_s for step in lesson_of(each).steps) / 60 for each in (long, short)
    )
    worst = find_worst_snap(long.structure, long.proof)
    rehearsal = rehearse_piece(short, processes=1)
    cost = sum(trouble.expected for trouble in rehearsal.troubles)
    bracelet = None
    if repeat_mm is not None:
        more = max(1 - technique.repeats[1], round((_ABOUT_MM - length) / repeat_mm))
        per_repeat = (long.supplies.bands - short.supplies.bands) / repeats
        bracelet = Bracelet(
            repeats=technique.repeats[1] + more,
            length_mm=length + more * repeat_mm,
            bands=round(long.supplies.bands + more * per_repeat),
            minutes=minutes + more * (minutes - less_minutes) / repeats,
            wrists_mm=_wrists(length + more * repeat_mm, width, pulls),
        )
    measures = SwatchMeasures(
        name=technique.name,
        group=technique.group,
        titles={language: word_phrase(technique.title, language) for language in LANGUAGES},
        holds=short.holds and long.holds,
        bands=long.supplies.bands,
        colours=len(long.supplies.heaps),
        repeat_bands=(long.supplies.bands - short.supplies.bands) / repeats,
        length_mm=length,
        width_mm=width,
        height_mm=rest.height_mm,
        at_rest=settled,
        repeat_mm=repeat_mm,
        stretch=pulls[0][1] if pulls else None,
        bracelet=bracelet,
        stack=_highest_stack(long.history),
        strain=max((one.stretch for one in find_loom_loads(long.pattern, long.history).bands), default=1.0),
        snap_loses=None if worst is None else worst.loses,
        minutes=minutes,
        failures=rehearsal.failures,
        cost=cost,
        level=next((level for most, level in _COSTS if cost < most), "complex"),
        slips=_typical_slips(rehearsal),
    )
    picture = portrait_png(portrait_of(rest, long.pattern, long.history.colours), "front", _PICTURE_PX)
    return msgspec.msgpack.encode(
        KeptSwatch(measures=measures, pattern=write_pattern(long.pattern), picture=picture)
    )


def growth_of(less: tuple[float, float], more: tuple[float, float]) -> tuple[float, float, float] | None:
    """Return by how much the longer of two swatches is longer, its length and its width, in mm.

    Given are the longer and the shorter side of each as it lies. A swatch that is wider than long lies
    turned, so its length is what is across the repeats. The directions belong together in which the swatches
    are equally wide. None if neither way it grows.
    """
    ways = [
        (
            abs(math.log(more[1 - there] / less[1 - here])),
            more[there] - less[here],
            more[there],
            more[1 - there],
        )
        for here in (0, 1)
        for there in (0, 1)
        if min(*less, *more) > 0
    ]
    growing = [way for way in ways if way[1] > 0]
    return min(growing)[1:] if growing else None


def _stretches(long: Work, rest: RestingPiece) -> tuple[tuple[float, float], ...]:
    """Return how many times as long the swatch is under a gentle and a hard pull, in N; none if it is not.

    A wide swatch settles anew when it is pulled, and tells nothing.
    """
    found: list[tuple[float, float]] = []
    for pull in (_GENTLE_N, _HARD_N):
        pulled = bring_to_rest(long, handling=USUAL_HANDLING._replace(straight_n=pull))
        times = pulled.length_mm / rest.length_mm if rest.length_mm > 0 else 0.0
        if not pulled.relaxed.converged or times <= (found[-1][1] if found else 1.0):
            break
        found.append((pull, times))
    return tuple(found)


def _wrists(
    length_mm: float, width_mm: float, pulls: tuple[tuple[float, float], ...]
) -> tuple[float, float] | None:
    """Return the wrists in mm that a bracelet suits that stretches like the swatch."""
    points = [(0.0, length_mm), *((pull, length_mm * times) for pull, times in pulls)]
    curve = read_stretch_curve(points).curve if pulls else None
    return None if curve is None else assess_fit(length_mm, curve, width_mm=width_mm).wrists_mm


def _typical_slips(rehearsal: Rehearsal) -> tuple[TypicalSlip, ...]:
    numbers = step_numbers(rehearsal.history)
    writers = {
        language: MistakeWriter(Phrasebook(language), rehearsal.history, numbers.__getitem__)
        for language in LANGUAGES
    }
    found = []
    for trouble in rehearsal.troubles[:_SLIPS]:
        worst = trouble.failure_modes[0].worst
        steps = list(dict.fromkeys(numbers[spot.at] for spot in trouble.risky_steps))
        found.append(
            TypicalSlip(
                steps=tuple(sorted(steps[:_STEPS_NAMED])),
                more=max(0, len(steps) - _STEPS_NAMED),
                says={language: (say.slip(worst), say.end(worst)) for language, say in writers.items()},
            )
        )
    return tuple(found)


def _highest_stack(history: History) -> int:
    return max(
        (len(done.after.stack(peg)) for done in history.moves for peg in history.board.pegs), default=0
    )
