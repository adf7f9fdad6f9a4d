"""The tasks of a batch: what goes to a worker and what comes back, as bytes, wherever it runs.

A task holds everything it needs, and its address is the digest of its content and of the program's source;
so the same task is never done twice, and its result has the same bytes on every machine.
"""

from __future__ import annotations

from typing import Literal

import msgspec

from pegwright import __version__
from pegwright.finding import Finding, Language, RefusedError, sum_up, word_finding, word_phrase
from pegwright.lesson import Hand, portrait_of
from pegwright.pattern import Pattern, localise, mirror, read_pattern, write_pattern
from pegwright.press import portrait_png
from pegwright.variants import BandColour
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.cache import key_of, source_of
from pegwright.workshop.lesson_outputs import LessonOrder, LessonOutput, prepare_lesson, press_lesson
from pegwright.workshop.line import work
from pegwright.workshop.variant_pieces import VariantOrder, make_variants

__all__ = [
    "BatchNote",
    "BatchPart",
    "BatchResult",
    "BatchTask",
    "VariantResult",
    "VariantTask",
    "address_of",
    "do_task",
    "do_variant_task",
]

BatchPart = Literal["pattern", "picture", LessonOutput]
PICTURE_PX = 400
_AXIS_OF = {"no-other-size": "sizes", "loom-not-straight": "looms"}
"""What is left out of a piece's variants where they are refused for this reason."""
_ROOMS = (
    *("finding", "pattern", "text", "loom", "structure", "proof", "shape", "fit", "judging", "planner"),
    *("rehearsal", "variants", "lesson", "press", "workshop"),
)


class BatchNote(msgspec.Struct, frozen=True, order=True):
    """Something found, in the words of one language."""

    code: str
    severity: str
    message: str
    hint: str = ""


class VariantTask(msgspec.Struct, frozen=True, kw_only=True, array_like=True, tag=True):
    """Make the variants of one pattern (JSON). Sizes and looms are left out where it has none."""

    source: str
    pattern: bytes
    order: VariantOrder
    colours: tuple[tuple[str, str, str, int | None], ...] = ()
    language: Language = "en"


class VariantResult(msgspec.Struct, frozen=True, kw_only=True, array_like=True):
    """The variants: name, pattern (JSON) and size of each, and what was found."""

    variants: tuple[tuple[str, bytes, str], ...]
    findings: tuple[BatchNote, ...]


class BatchTask(msgspec.Struct, frozen=True, kw_only=True, array_like=True, tag=True):
    """Make some parts of one pattern (JSON) in one language for one hand."""

    source: str
    pattern: bytes
    parts: tuple[BatchPart, ...]
    language: Language = "en"
    hand: Hand = "right"
    rehearse: bool = False
    fit: bool = False


class BatchResult(msgspec.Struct, frozen=True, kw_only=True):
    """What a task made: its files by name, and facts for the page of the whole batch."""

    title: str
    holds: bool
    bands: int
    colours: tuple[tuple[str, str, str, int], ...]
    files: dict[str, bytes]
    findings: tuple[BatchNote, ...] = ()


def address_of(task: BatchTask | VariantTask) -> str:
    """Return the content address of a task: SHA-256 in hex."""
    return key_of(msgspec.msgpack.encode(task))


def source_digest() -> str:
    """Return the digest of the program that makes the results."""
    return key_of(__version__, source_of(*_ROOMS))


def do_variant_task(data: bytes) -> bytes:
    """Do an encoded `VariantTask`; return an encoded `VariantResult`.

    Raises:
        RefusedError: the variants cannot be made.
        RuntimeError: this worker runs another version of the program.
    """
    task = msgspec.msgpack.decode(data, type=VariantTask)
    _require_source(task.source)
    made = work(_pattern_in(task.pattern))
    colours = [BandColour(*each) for each in task.colours]
    order = task.order
    findings: list[BatchNote] = []
    while True:
        try:
            variants = make_variants(made, order, colours)
            break
        except RefusedError as refused:
            axis = _AXIS_OF.get(refused.reason.phrase)
            if axis is None or not getattr(order, axis):
                raise
            why = word_phrase(refused.reason, task.language)
            findings.append(BatchNote(refused.reason.phrase, "note", why))
            order = msgspec.structs.replace(order, **{axis: ()})
    told = tuple((one.name, write_pattern(one.work.pattern), one.size or "") for one in variants.made)
    findings += [_note(each, task.language) for each in sum_up(variants.findings)]
    return msgspec.msgpack.encode(VariantResult(variants=told, findings=tuple(findings)))


def do_task(data: bytes) -> bytes:
    """Do an encoded `BatchTask`; return an encoded `BatchResult`.

    Of a piece that does not hold only its pattern and picture are made: nobody is to be taught it.

    Raises:
        RefusedError: a part cannot be made.
        RuntimeError: this worker runs another version of the program.
    """
    task = msgspec.msgpack.decode(data, type=BatchTask)
    _require_source(task.source)
    given = _pattern_in(task.pattern)
    pattern = mirror(given) if task.hand == "left" else given
    made = work(pattern)
    files: dict[str, bytes] = {}
    if "pattern" in task.parts:
        files["pattern.json"] = write_pattern(pattern)
    if "picture" in task.parts and made.history.final.bands:
        piece = bring_to_rest(made)
        portrait = portrait_of(piece, pattern, made.history.colours)
        files["picture.png"] = portrait_png(portrait, "front", PICTURE_PX)
    taught = tuple(part for part in task.parts if part != "pattern" and part != "picture")  # noqa: PLR1714
    findings = made.findings
    if taught and made.holds:
        order = LessonOrder(
            language=task.language,
            hand=task.hand,
            parts=taught,
            picture="picture" in task.parts,
            fit=task.fit,
            rehearse=task.rehearse,
        )
        lesson = prepare_lesson(work(given) if task.hand == "left" else made, order)
        findings = lesson.findings
        files |= dict(press_lesson(lesson, order))
    said = localise(pattern, task.language)
    names = {colour.letter: colour.name for colour in said.colours}
    return msgspec.msgpack.encode(
        BatchResult(
            title=said.title,
            holds=made.holds,
            bands=made.supplies.bands,
            colours=tuple(
                (heap.letter, names.get(heap.letter, heap.name), heap.hex, heap.total)
                for heap in made.supplies.heaps
            ),
            files=files,
            findings=tuple(_note(each, task.language) for each in findings),
        )
    )


def _note(found: Finding, language: Language) -> BatchNote:
    said = word_finding(found, language)
    return BatchNote(said.code, said.severity, said.message, said.hint)


def _pattern_in(data: bytes) -> Pattern:
    pattern, findings = read_pattern(data)
    if pattern is None:
        raise AssertionError(f"a task's pattern cannot be read: {findings[0].message}")
    return pattern


def _require_source(expected: str) -> None:
    if expected != source_digest():
        raise RuntimeError("this worker runs another version of pegwright")
