"""From a worked piece to everything a teacher hands out: an order, the lesson for it, its files."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Literal, NamedTuple

import msgspec

from pegwright.finding import Finding
from pegwright.fit.packs import packs
from pegwright.fit.stash import Stash
from pegwright.fit.supplies import for_class
from pegwright.lesson import (
    UNASKED,
    Finish,
    Hand,
    Leaf,
    Lesson,
    Pace,
    Script,
    Units,
    edit,
    excerpt,
    kit,
    motif_moves,
    script,
    storyboard,
    timed,
)
from pegwright.loom import History
from pegwright.pattern.mirror import mirror
from pegwright.press import PARTS, Codec, Edition, Paper, Part, bundle, lesson_files
from pegwright.rehearsal import DEFAULT, Weights
from pegwright.workshop.finished import finish as finished
from pegwright.workshop.finished import known_finish, mirrored_finish
from pegwright.workshop.line import Work, lesson, work
from pegwright.workshop.progress import Progress, silent
from pegwright.workshop.rehearse import rehearsed

Piece = Literal[Part, "film", "bundle"]
_TIMING = re.compile(r"\s*(?P<what>.+?)\s*=\s*(?P<seconds>[0-9]{1,6}(?:\.[0-9]{1,3})?)\s*s?\s*")
_MOVES = re.compile(r"([0-9]{1,7})\s*[-–]\s*([0-9]{1,7})")


class FilmOrder(msgspec.Struct, frozen=True, kw_only=True):
    """How the film is made.

    `excerpt` asks for 20 seconds only. `voice` says whether an installed voice may speak, `model` names the
    file of one for piper.
    """

    codec: Codec = "vp9"
    tall_px: int = 720
    excerpt: bool = False
    voice: bool = True
    model: Path | None = None


class Order(msgspec.Struct, frozen=True, kw_only=True):
    """What is wanted of a lesson.

    `timing` is the teacher's own time of one stretch of work, in seconds: `outline=42` for the motif of that
    name, `1-8=60` for the moves 1 to 8. `learners` is the size of the class, `spare` the share of spare bands
    and clips. `heights_px` are those of the stills. `phrases` are the teacher's own words for ours. With
    `rehearse` the lesson warns of what a rehearsal with these `weights` has found. With `picture` the piece
    is brought to rest, shown and measured; with `fit` as well, one that goes round a wrist is pulled at.
    """

    language: str = "en"
    hand: Hand = "right"
    units: Units = "metric"
    papers: tuple[Paper, ...] = ("a4",)
    editions: tuple[Edition, ...] = ("standard",)
    parts: tuple[Piece, ...] = (*PARTS, "bundle")
    learners: int = 1
    spare: float = 0.1
    stash: Stash | None = None
    timing: str = ""
    wpm: int = 120
    heights_px: tuple[int, ...] = (1080,)
    film: FilmOrder = FilmOrder()
    phrases: dict[str, str] = {}
    rehearse: bool = False
    picture: bool = False
    fit: bool = False
    weights: Weights = DEFAULT


class Taught(NamedTuple):
    """A lesson ready for the press, with the other hand's where the piece can be mirrored, and all findings.

    `made` is the piece as it is taught: mirrored, where the lesson is for the left hand.
    """

    made: Work
    lesson: Lesson
    other: Lesson | None
    script: Script
    kit: Leaf
    findings: tuple[Finding, ...]


def teach(made: Work, order: Order, progress: Progress = silent, *, finish: Finish | None = None) -> Taught:
    """Plan a lesson as ordered. For the left hand the pattern is mirrored, worked and proved again.

    `finish` is how the piece comes out, where that is known already; else it is found as ordered.

    Raises:
        ValueError: the order cannot be met: no such language, motif or moves, a pace nobody can follow, no
            learner, or a pattern that cannot be mirrored.
    """
    progress("working it for the other hand", 0, 3)
    mirrored = _mirrored(made)
    if order.hand == "left" and mirrored is None:
        raise ValueError("the piece cannot be mirrored: a step names a peg beyond the loom")
    here, there = (mirrored, made) if order.hand == "left" and mirrored else (made, mirrored)
    pace = _pace(made.history, order.timing)
    if finish is None:
        finish = finished(made, progress, fit=order.fit) if order.picture else UNASKED
    finishes: dict[Hand, Finish] = {"right": finish, "left": mirrored_finish(finish)}
    progress("planning the lesson", 1, 3)
    planned = _planned(here, order, order.hand, pace, progress=progress, finish=finishes[order.hand])
    other: Hand = "left" if order.hand == "right" else "right"
    second = _planned(there, order, other, pace, progress=progress, finish=finishes[other]) if there else None
    progress("writing what is said", 2, 3)
    told = script(planned, order.wpm)
    shopping = None
    findings = here.findings
    if order.stash is not None:
        shopping = packs(for_class(here.supplies, order.learners, order.spare), order.stash)
        findings = (*findings, *shopping.findings)
    sheet = kit(planned, told, here.supplies, order.learners, spare_share=order.spare, shopping=shopping)
    return Taught(here, planned, second, told, sheet, findings)


def pressed(taught: Taught, order: Order, progress: Progress = silent) -> Iterator[tuple[str, bytes]]:
    """Press what was ordered, part by part: the name of each file in its folder, and what is in it."""
    kept: dict[str, bytes] = {}
    for done, part in enumerate(order.parts):
        progress(f"pressing: {part}", done, len(order.parts))
        match part:
            case "bundle":
                files = {"lesson.zip": bundle(taught.lesson, kept or _parts(taught, order, PARTS))}
            case "film":
                files = filmed(taught, order.film, progress)
            case _:
                files = _parts(taught, order, (part,))
        kept |= files
        yield from files.items()


def filmed(taught: Taught, order: FilmOrder, progress: Progress = silent) -> dict[str, bytes]:
    """Return the film by the name of its file, or an excerpt of it.

    Raises:
        ValueError: a height that no film has, or a voice that is named and cannot speak.
    """
    # The coder and the painter of pixels are large; the other parts start without them.
    from pegwright.press.film import film  # noqa: PLC0415
    from pegwright.press.voice import find_voice, narrate  # noqa: PLC0415

    progress("drawing the storyboard", 0, 1)
    board = storyboard(taught.made.pattern, taught.made.history, taught.lesson, taught.script)
    board = excerpt(board) if order.excerpt else board
    voice = find_voice(order.model) if order.voice else None
    sound = None
    if voice is not None:
        progress("speaking", 0, 1)
        sound = narrate(board.lines, board.length_s, board.language, voice)
    name = ("film-excerpt" if order.excerpt else "film") + (".mp4" if order.codec == "h264" else ".webm")
    made = film(board, tall_px=order.tall_px, codec=order.codec, voice=sound, progress=progress)
    return {name: made}


class Edited(NamedTuple):
    """What an editor found, and whether the sizes were looked at, or left out because they are not known."""

    findings: tuple[Finding, ...]
    sizes: bool


def edited(made: Work, language: str = "en", *, sizes: bool = False, progress: Progress = silent) -> Edited:
    """Return all that the line and then an editor find in a piece.

    Its size, and the numbers of every wrist, are looked at where a lesson has worked them out before, or
    where `sizes` asks for them.

    Raises:
        ValueError: there are no words for the language.
    """
    found = finished(made, progress) if sizes else known_finish(made)
    planned = lesson(made, language, finish=found or UNASKED)
    findings = (*made.findings, *edit(made.pattern, made.history, made.supplies, planned))
    return Edited(findings, found is not None)


def _parts(taught: Taught, order: Order, parts: tuple[Part, ...]) -> dict[str, bytes]:
    return lesson_files(
        taught.lesson,
        taught.script,
        other=taught.other,
        kit=taught.kit,
        parts=parts,
        papers=order.papers,
        editions=order.editions,
        heights_px=order.heights_px,
    )


def _mirrored(made: Work) -> Work | None:
    try:
        return work(mirror(made.pattern))
    except ValueError:
        return None


def _planned(
    made: Work, order: Order, hand: Hand, pace: Pace, *, progress: Progress, finish: Finish
) -> Lesson:
    told = rehearsed(made, order.weights, progress=progress) if order.rehearse else None
    return lesson(
        made,
        order.language,
        hand=hand,
        pace=pace,
        units=order.units,
        phrases=order.phrases,
        rehearsal=told,
        finish=finish,
    )


def _pace(history: History, timing: str) -> Pace:
    """Return the pace that a teacher's own timing tells, as in `Order`."""
    if not timing:
        return Pace()
    told = _TIMING.fullmatch(timing)
    if told is None:
        raise ValueError(f"{timing!r} is no timing; write outline=42 or 1-8=60")
    span = _MOVES.fullmatch(told["what"])
    first, last = (int(span[1]), int(span[2])) if span else motif_moves(history, told["what"])
    return timed(history, first, last, float(told["seconds"]))
