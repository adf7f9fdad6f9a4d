"""The atlas: every technique at rest, measured, rehearsed and shown, for a designer to choose by numbers."""

from __future__ import annotations

import hashlib
import math
from collections.abc import Collection, Sequence
from pathlib import Path

import msgspec

from pegwright.finding import Language, RefusedError, phrase, word_phrase
from pegwright.fit import find_loom_loads
from pegwright.judging import find_worst_snap
from pegwright.lesson import GalleryCard, GalleryLink, Phrasebook, plan_gallery, portrait_of
from pegwright.loom import History
from pegwright.pattern import write_pattern
from pegwright.press import gallery_html, portrait_png
from pegwright.shape import USUAL_HANDLING
from pegwright.variants import TECHNIQUES
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.batch_cluster import BatchCluster
from pegwright.workshop.batch_engine import run_tasks
from pegwright.workshop.batch_tasks import source_digest
from pegwright.workshop.cache import key_of
from pegwright.workshop.files import read_plain_file
from pegwright.workshop.folder import write_into
from pegwright.workshop.lesson_plan import lesson_of
from pegwright.workshop.line import work
from pegwright.workshop.progress import ReportProgress, report_nothing
from pegwright.workshop.rehearsals import rehearse_piece

__all__ = ["SwatchMeasures", "build_atlas"]

_PICTURE_PX = 400
_GENTLE_N = 1.0
_KEPT = "kept"


class SwatchMeasures(msgspec.Struct, frozen=True, kw_only=True):
    """One technique, measured on the longer of its two swatches; lengths in mm, at rest.

    `repeat_mm` is what one repeat adds to the length, `stretch` how many times as long the swatch is when
    it is pulled with 1 N, `stack` the most loops on a peg, `strain` the most stretch of a band on the loom,
    1 being slack, `snap_loses` how many more bands fall at worst if one snaps, `minutes` what a beginner
    takes, `failures` how many slips that bring bands down a maker makes on average in the shorter swatch.
    None is what could not be measured.
    """

    name: str
    group: str
    titles: dict[str, str]
    holds: bool
    bands: int
    repeat_bands: float
    length_mm: float
    width_mm: float
    height_mm: float
    at_rest: bool
    repeat_mm: float | None
    stretch: float | None
    stack: int
    strain: float
    snap_loses: int | None
    minutes: float
    failures: float


class _Swatch(msgspec.Struct, frozen=True, kw_only=True):
    measures: SwatchMeasures
    pattern: bytes
    picture: bytes


class _SwatchTask(msgspec.Struct, frozen=True, kw_only=True):
    source: str
    name: str


def do_swatch_task(data: bytes) -> bytes:
    """Measure the technique of an encoded task; return it encoded, with its pattern and picture."""
    task = msgspec.msgpack.decode(data, type=_SwatchTask)
    technique = TECHNIQUES[task.name]
    short, long = (work(technique.make(repeats)) for repeats in technique.repeats)
    rest, less = bring_to_rest(long), bring_to_rest(short)
    pulled = bring_to_rest(long, handling=USUAL_HANDLING._replace(straight_n=_GENTLE_N))
    settled = rest.relaxed.converged and less.relaxed.converged
    grown = growth_mm((less.length_mm, less.width_mm), (rest.length_mm, rest.width_mm)) if settled else None
    stretch = pulled.length_mm / rest.length_mm if settled and rest.length_mm > 0 else 0.0
    worst = find_worst_snap(long.structure, long.proof)
    repeats = technique.repeats[1] - technique.repeats[0]
    loads = find_loom_loads(long.pattern, long.history).bands
    measures = SwatchMeasures(
        name=technique.name,
        group=technique.group,
        titles={language: word_phrase(technique.title, language) for language in ("en", "es", "de")},
        holds=short.holds and long.holds,
        bands=long.supplies.bands,
        repeat_bands=(long.supplies.bands - short.supplies.bands) / repeats,
        length_mm=rest.length_mm,
        width_mm=rest.width_mm,
        height_mm=rest.height_mm,
        at_rest=settled,
        repeat_mm=None if grown is None else grown / repeats,
        stretch=stretch if stretch > 1 else None,  # a wide swatch settles anew and tells nothing
        stack=_highest_stack(long.history),
        strain=max((one.stretch for one in loads), default=1.0),
        snap_loses=None if worst is None else worst.loses,
        minutes=sum(step.learner_s for step in lesson_of(long).steps) / 60,
        failures=rehearse_piece(short, processes=1).failures,
    )
    picture = portrait_png(portrait_of(rest, long.pattern, long.history.colours), "front", _PICTURE_PX)
    return msgspec.msgpack.encode(
        _Swatch(measures=measures, pattern=write_pattern(long.pattern), picture=picture)
    )


def growth_mm(less: tuple[float, float], more: tuple[float, float]) -> float | None:
    """Return by how much the longer of two swatches is longer, from the length and width of each, all in mm.

    A swatch that is wider than long lies turned, so its length is what is across the repeats. The
    directions belong together in which the swatches are equally wide. None if neither way it grows.
    """
    ways = [
        (abs(math.log(more[1 - there] / less[1 - here])), more[there] - less[here])
        for here in (0, 1)
        for there in (0, 1)
        if min(*less, *more) > 0
    ]
    growing = [way for way in ways if way[1] > 0]
    return min(growing)[1] if growing else None


def build_atlas(
    folder: Path,
    cluster: BatchCluster,
    *,
    only: Collection[str] = (),
    language: Language = "en",
    progress: ReportProgress = report_nothing,
) -> tuple[SwatchMeasures, ...]:
    """Write `index.html`, `atlas.json` and a pattern of every technique; return the measures, in order.

    What was measured before, by this version of the program, is read from the folder.

    Raises:
        RefusedError: there is no such technique, one cannot be measured, or there are no workers.
        OSError: the folder cannot be written to.
    """
    unknown = sorted(set(only) - set(TECHNIQUES))
    if unknown:
        raise RefusedError(phrase("no-such-technique", name=unknown[0]))
    names = [name for name in TECHNIQUES if not only or name in only]
    source = source_digest()
    tasks = {name: msgspec.msgpack.encode(_SwatchTask(source=source, name=name)) for name in names}
    made = {name: known for name in names if (known := _read_kept(folder, tasks[name])) is not None}
    missing = [name for name in names if name not in made]
    progress("measuring the techniques", len(made), len(names))
    for outcome in run_tasks(cluster, do_swatch_task, [tasks[name] for name in missing]):
        name = missing[outcome.number]
        if outcome.result is None:
            raise RefusedError(phrase("technique-failed", name=name, why=outcome.error))
        digest = hashlib.sha256(outcome.result).digest()
        write_into(folder, f"{_KEPT}/{key_of(tasks[name])}", digest + outcome.result)
        made[name] = msgspec.msgpack.decode(outcome.result, type=_Swatch)
        progress("measuring the techniques", len(made), len(names))
    swatches = [made[name] for name in names]
    for one in swatches:
        write_into(folder, f"patterns/{one.measures.name}.json", one.pattern)
    measures = tuple(one.measures for one in swatches)
    write_into(folder, "atlas.json", msgspec.json.format(msgspec.json.encode(measures)) + b"\n")
    write_into(folder, "index.html", _page(swatches, language).encode())
    return measures


def _highest_stack(history: History) -> int:
    return max(
        (len(done.after.stack(peg)) for done in history.moves for peg in history.board.pegs), default=0
    )


def _read_kept(folder: Path, task: bytes) -> _Swatch | None:
    try:
        data = read_plain_file(folder / _KEPT / key_of(task))
        if hashlib.sha256(data[32:]).digest() != data[:32]:
            return None
        return msgspec.msgpack.decode(data[32:], type=_Swatch)
    except (OSError, msgspec.DecodeError):
        return None


def _page(swatches: Sequence[_Swatch], language: Language) -> str:
    book = Phrasebook(language)
    cards = [
        GalleryCard(
            title=one.measures.titles[language],
            variant=book.say(f"atlas-group-{one.measures.group}"),
            holds=one.measures.holds,
            bands=one.measures.bands,
            colours=(),
            links=(GalleryLink("", "", one.measures.name, f"patterns/{one.measures.name}.json"),),
            facts=_facts(book, one.measures),
            picture=one.picture,
        )
        for one in swatches
    ]
    return gallery_html(plan_gallery(cards, (), language, title=book.say("atlas-title")))


def _facts(book: Phrasebook, one: SwatchMeasures) -> tuple[tuple[str, str], ...]:
    """Return the table of a technique: what is measured, and how much it is."""
    say = book.say
    stretch = "–" if one.stretch is None else say("atlas-times", n=book.decimal(one.stretch, 2))
    return (
        (say("atlas-width"), book.length(one.width_mm)),
        (say("atlas-height"), book.length(one.height_mm)),
        (say("atlas-repeat"), "–" if one.repeat_mm is None else book.length(one.repeat_mm)),
        (say("atlas-bands"), book.decimal(one.repeat_bands)),
        (say("atlas-stretch"), stretch),
        (say("atlas-stack"), str(one.stack)),
        (say("atlas-strain"), say("atlas-times", n=book.decimal(one.strain))),
        (say("atlas-snap"), "–" if one.snap_loses is None else say("atlas-snaps", n=one.snap_loses)),
        (say("atlas-minutes"), say("atlas-minutes-about", n=max(1, round(one.minutes)))),
        (say("atlas-slips"), book.decimal(one.failures, 2)),
    )
