"""The atlas: every technique at rest, measured, rehearsed and shown, for a designer to choose by numbers."""

from __future__ import annotations

import hashlib
from collections.abc import Collection, Sequence
from pathlib import Path

import msgspec

from pegwright.finding import Language, RefusedError, phrase
from pegwright.lesson import GalleryCard, GalleryLink, Phrasebook, plan_gallery
from pegwright.press import gallery_html
from pegwright.variants import TECHNIQUES
from pegwright.workshop.batch_cluster import BatchCluster
from pegwright.workshop.batch_engine import run_tasks
from pegwright.workshop.batch_tasks import source_digest
from pegwright.workshop.cache import key_of
from pegwright.workshop.files import read_plain_file
from pegwright.workshop.folder import write_into
from pegwright.workshop.progress import ReportProgress, report_nothing
from pegwright.workshop.swatches import KeptSwatch, SwatchMeasures, SwatchTask, do_swatch_task

__all__ = ["build_atlas", "kept_swatches"]

_KEPT = "kept"


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
    tasks = {name: msgspec.msgpack.encode(SwatchTask(source=source, name=name)) for name in names}
    made = {name: known for name in names if (known := _read_kept(folder, tasks[name])) is not None}
    missing = [name for name in names if name not in made]
    progress("measuring the techniques", len(made), len(names))
    for outcome in run_tasks(cluster, do_swatch_task, [tasks[name] for name in missing]):
        name = missing[outcome.number]
        if outcome.result is None:
            raise RefusedError(phrase("technique-failed", name=name, why=outcome.error))
        digest = hashlib.sha256(outcome.result).digest()
        write_into(folder, f"{_KEPT}/{key_of(tasks[name])}", digest + outcome.result)
        made[name] = msgspec.msgpack.decode(outcome.result, type=KeptSwatch)
        progress("measuring the techniques", len(made), len(names))
    swatches = [made[name] for name in names]
    for one in swatches:
        write_into(folder, f"patterns/{one.measures.name}.json", one.pattern)
    measures = tuple(one.measures for one in swatches)
    write_into(folder, "atlas.json", msgspec.json.format(msgspec.json.encode(measures)) + b"\n")
    write_into(folder, "index.html", _page(swatches, language).encode())
    return measures


def kept_swatches(folder: Path) -> tuple[KeptSwatch, ...]:
    """Return the swatches of an atlas in a folder, one for each technique that `atlas.json` lists.

    Raises:
        OSError: there is no whole atlas there.
    """
    names = [
        one.name for one in msgspec.json.decode(read_plain_file(folder / "atlas.json"), type=list[_Named])
    ]
    found = {}
    for file in (folder / _KEPT).iterdir():
        data = read_plain_file(file)
        if hashlib.sha256(data[32:]).digest() == data[:32]:
            one = msgspec.msgpack.decode(data[32:], type=KeptSwatch)
            found[one.measures.name] = one
    if set(names) - set(found):
        raise FileNotFoundError(folder / _KEPT)
    return tuple(found[name] for name in names)


class _Named(msgspec.Struct):
    name: str


def _read_kept(folder: Path, task: bytes) -> KeptSwatch | None:
    try:
        data = read_plain_file(folder / _KEPT / key_of(task))
        if hashlib.sha256(data[32:]).digest() != data[:32]:
            return None
        return msgspec.msgpack.decode(data[32:], type=KeptSwatch)
    except (OSError, msgspec.DecodeError):
        return None


def _page(swatches: Sequence[KeptSwatch], language: Language) -> str:
    book = Phrasebook(language)
    cards = [
        GalleryCard(
            title=one.measures.titles[language],
            variant=_sort(book, one.measures),
            holds=one.measures.holds,
            bands=one.measures.bands,
            colours=(),
            links=(GalleryLink("", "", one.measures.name, f"patterns/{one.measures.name}.json"),),
            facts=_facts(book, one.measures),
            notes=_slips(book, one.measures, language),
            picture=one.picture,
        )
        for one in swatches
    ]
    return gallery_html(plan_gallery(cards, (), language, title=book.say("atlas-title")))


def _sort(book: Phrasebook, one: SwatchMeasures) -> str:
    return f"{book.say(f'atlas-group-{one.group}')}, {book.say(f'level-{one.level}')}"


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
        *_bracelet_facts(book, one),
        (say("atlas-stack"), str(one.stack)),
        (say("atlas-strain"), say("atlas-times", n=book.decimal(one.strain))),
        (say("atlas-snap"), "–" if one.snap_loses is None else say("atlas-snaps", n=one.snap_loses)),
        (say("atlas-minutes"), say("atlas-minutes-about", n=max(1, round(one.minutes)))),
        (say("atlas-slips"), book.decimal(one.failures, 2)),
        (say("atlas-difficulty"), say(f"level-{one.level}")),
    )


def _bracelet_facts(book: Phrasebook, one: SwatchMeasures) -> tuple[tuple[str, str], ...]:
    say, worn = book.say, one.bracelet
    if worn is None:
        return ((say("atlas-bracelet"), "–"), (say("atlas-wrists"), "–"))
    wrists = "–"
    if worn.wrists_mm is not None:
        wrists = say("atlas-from-to", low=book.length(worn.wrists_mm[0]), high=book.length(worn.wrists_mm[1]))
    about = say("atlas-bracelet-about", bands=worn.bands, n=max(1, round(worn.minutes)))
    return ((say("atlas-bracelet"), about), (say("atlas-wrists"), wrists))


def _slips(book: Phrasebook, one: SwatchMeasures, language: Language) -> tuple[str, ...]:
    """Return where makers slip: a heading and a line for each slip; nothing where none costs anything."""
    said = [
        book.say(
            "atlas-slip",
            steps=", ".join(map(str, slip.steps)) + (" …" if slip.more else ""),
            n=len(slip.steps) + slip.more,
            slip=slip.says[language][0],
            end=slip.says[language][1],
        )
        for slip in one.slips
    ]
    return (book.say("atlas-where"), *said) if said else ()
