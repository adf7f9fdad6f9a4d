"""From a worked piece to everything a teacher hands out: the order, its lesson, its files."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import nullcontext
from pathlib import Path
from typing import Literal, NamedTuple

import msgspec

from pegwright.finding import Finding, RefusedError, phrase
from pegwright.fit import Stash, choose_packs, supplies_for_class
from pegwright.lesson import (
    UNKNOWN_FINISH,
    FinishedPiece,
    Hand,
    HoldResult,
    Leaf,
    Lesson,
    Pace,
    Script,
    Units,
    draw_storyboard,
    excerpt,
    kit_sheet,
    motif_moves,
    pace_from_timing,
    plan_lesson,
    review_lesson,
    translation_findings,
    write_script,
)
from pegwright.loom import History
from pegwright.pattern import mirror
from pegwright.press import (
    OUTPUTS,
    Codec,
    Edition,
    Output,
    Paper,
    bundle_lesson,
    can_encode_films,
    lesson_files,
)
from pegwright.rehearsal import DEFAULT_WEIGHTS, Rehearsal, SlipWeights
from pegwright.workshop.beside import do_beside
from pegwright.workshop.finishes import cached_finish, finish as finished, mirrored_finish
from pegwright.workshop.lesson_plan import hold_result, lesson_of
from pegwright.workshop.line import Work, work
from pegwright.workshop.mats import chart_of
from pegwright.workshop.progress import ReportProgress, report_nothing
from pegwright.workshop.rehearsals import mirror_rehearsal, rehearse_beside, rehearse_piece

__all__ = [
    "Codec",
    "Edition",
    "FilmOrder",
    "LessonOrder",
    "LessonOutput",
    "PreparedLesson",
    "first_handout",
    "prepare_lesson",
    "press_lesson",
    "review_piece",
]

LessonOutput = Literal[Output, "film", "bundle"]
_TIMING = re.compile(r"\s*(?P<what>.+?)\s*=\s*(?P<seconds>[0-9]{1,6}(?:\.[0-9]{1,3})?)\s*s?\s*")
_MOVES = re.compile(r"([0-9]{1,7})\s*[-–]\s*([0-9]{1,7})")


class FilmOrder(msgspec.Struct, frozen=True, kw_only=True):
    """How a film is made.

    `excerpt` asks for 20 seconds only. `voice` allows an installed voice to speak; `model` is a voice model
    for piper.
    """

    codec: Codec = "vp9"
    tall_px: int = 720
    excerpt: bool = False
    voice: bool = True
    model: Path | None = None


class LessonOrder(msgspec.Struct, frozen=True, kw_only=True):
    """What is wanted of a lesson.

    `timing` is the teacher's own time of one stretch of work, in seconds: `outline=42` for the motif of that
    name, `1-8=60` for the moves 1 to 8. `learners` is the size of the class, `spare` the share of spare bands
    and clips, `heights_px` the heights of the stills. `phrases` are the teacher's own wordings. With
    `rehearse` the lesson warns of what a rehearsal with these `weights` found. With `picture` the piece is
    brought to rest and pictured; with `fit` as well, the stretch and lengths of a worn piece are measured.
    """

    language: str = "en"
    hand: Hand = "right"
    units: Units = "metric"
    papers: tuple[Paper, ...] = ("a4",)
    editions: tuple[Edition, ...] = ("standard",)
    parts: tuple[LessonOutput, ...] = (*OUTPUTS, "bundle")
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
    weights: SlipWeights = DEFAULT_WEIGHTS


class PreparedLesson(NamedTuple):
    """A lesson ready for the press, the other hand's if the piece can be mirrored, and all findings.

    `made` is the piece as taught: mirrored if the lesson is for the left hand.
    """

    made: Work
    lesson: Lesson
    other: Lesson | None
    script: Script
    kit: Leaf
    findings: tuple[Finding, ...]


def prepare_lesson(
    made: Work,
    order: LessonOrder,
    progress: ReportProgress = report_nothing,
    *,
    finish: FinishedPiece | None = None,
) -> PreparedLesson:
    """Plan a lesson as ordered. For the left hand the pattern is mirrored, worked and proved again.

    `finish` is how the piece comes out, if that is already known; otherwise it is worked out as ordered.

    Raises:
        RefusedError: the order names a motif or moves that do not exist, a pace that nobody can follow or no
            learner, or the pattern cannot be mirrored.
        ValueError: the language is unknown.
    """
    progress("working it for the other hand", 0, 3)
    mirrored = _work_mirrored(made, must=order.hand == "left")
    here, there = (mirrored, made) if order.hand == "left" and mirrored else (made, mirrored)
    pace = _pace(made.history, order.timing)
    beside = rehearse_beside(here, order.weights, progress=progress) if order.rehearse else nullcontext()
    with beside as rehearsal:  # the two slow parts at once, as they use different means
        if finish is None:
            finish = finished(made, progress, fit=order.fit) if order.picture else UNKNOWN_FINISH
        progress("planning the lesson", 1, 3)
        verdict = hold_result(here)
        rehearsed = rehearsal() if rehearsal else None
    finishes: dict[Hand, FinishedPiece] = {"right": finish, "left": mirrored_finish(finish)}

    def plan_here() -> Lesson:
        found = finishes[order.hand]
        return _plan(here, order, order.hand, pace, rehearsal=rehearsed, finish=found, verdict=verdict)

    if there is None:
        planned, second = plan_here(), None
    else:
        again = mirror_rehearsal(rehearsed, here, there) if rehearsed else None
        if rehearsed and again is None:
            again = rehearse_piece(there, order.weights, progress=progress)
        plan_there = _plan_for_other_hand(
            there, order, pace, rehearsal=again, finishes=finishes, here_holds=verdict
        )
        with do_beside(plan_there) if again else nullcontext(plan_there) as other:
            planned = plan_here()
            second = other()
    progress("writing what is said", 2, 3)
    script = write_script(planned, order.wpm)
    shopping = None
    findings = (*here.findings, *translation_findings(here.pattern, order.language))
    if order.stash is not None:
        shopping = choose_packs(supplies_for_class(here.supplies, order.learners, order.spare), order.stash)
        findings = (*findings, *shopping.findings)
    sheet = kit_sheet(
        planned, script, here.supplies, order.learners, spare_share=order.spare, shopping=shopping
    )
    return PreparedLesson(here, planned, second, script, sheet, findings)


def _plan_for_other_hand(
    there: Work,
    order: LessonOrder,
    pace: Pace,
    *,
    rehearsal: Rehearsal | None,
    finishes: Mapping[Hand, FinishedPiece],
    here_holds: HoldResult,
) -> Callable[[], Lesson]:
    """Return what plans the other hand's lesson; of the mirror image the same bands are held and snap."""
    other: Hand = "left" if order.hand == "right" else "right"

    def plan() -> Lesson:
        verdict = here_holds if here_holds.held and there.holds else hold_result(there)
        found = finishes[other]
        return _plan(there, order, other, pace, rehearsal=rehearsal, finish=found, verdict=verdict)

    return plan


def first_handout(made: Work, order: LessonOrder) -> tuple[str, bytes]:
    """Return the name and bytes of the handout that can be pressed at once.

    It has every step, count and caution, but nothing that takes long to work out: how the piece lies, what
    goes wrong, what a snapped band costs. The lesson's full handout has the same name and replaces it.

    Raises:
        RefusedError: as for `prepare_lesson`.
    """
    here = (_work_mirrored(made, must=True) or made) if order.hand == "left" else made
    pace = _pace(made.history, order.timing)
    planned = _plan(
        here,
        order,
        order.hand,
        pace,
        rehearsal=None,
        finish=UNKNOWN_FINISH,
        verdict=hold_result(here, snaps=False),
    )
    first: Output = "handout"
    pressed = lesson_files(
        planned,
        write_script(planned, order.wpm),
        parts=(first,),
        papers=order.papers[:1],
        editions=order.editions[:1],
    )
    return next(iter(pressed.items()))


def press_lesson(
    taught: PreparedLesson, order: LessonOrder, progress: ReportProgress = report_nothing
) -> Iterator[tuple[str, bytes]]:
    """Press what was ordered, part by part: yield the name and bytes of each file.

    The handout of a mat comes with its chart.
    """
    kept: dict[str, bytes] = {}
    both = "handout" in order.parts and "stills" in order.parts  # two slow parts

    def press_stills() -> dict[str, bytes]:
        return _parts(taught, order, ("stills",))

    with do_beside(press_stills) if both else nullcontext(press_stills) as stills:
        for done, part in enumerate(order.parts):
            progress(f"pressing: {part}", done, len(order.parts))
            match part:
                case "bundle":
                    files = {
                        "lesson.zip": bundle_lesson(taught.lesson, kept or _parts(taught, order, OUTPUTS))
                    }
                case "film":
                    files = press_film(taught, order.film, progress)
                case "stills":
                    files = stills()
                case _:
                    files = _parts(taught, order, (part,))
                    chart = chart_of(taught.made.pattern, order.language) if part == "handout" else None
                    if chart is not None:  # nobody works a mat from a hundred pages of one and the same step
                        files["chart.html"] = chart
            kept |= files
            yield from files.items()


def press_film(
    taught: PreparedLesson, order: FilmOrder, progress: ReportProgress = report_nothing
) -> dict[str, bytes]:
    """Return the film, or an excerpt of it, by the name of its file.

    Raises:
        RefusedError: no encoder is installed, no film has that height, or the voice asked for cannot speak.
    """
    if not can_encode_films():
        raise RefusedError(phrase("no-film-encoder"))
    # The encoder and the pixel painter are slow to import, and the other parts need neither.
    from pegwright.press import (  # noqa: PLC0415
        film_storyboard,
        find_voice,
        narrate,
    )

    progress("drawing the storyboard", 0, 1)
    board = draw_storyboard(taught.made.pattern, taught.made.history, taught.lesson, taught.script)
    board = excerpt(board) if order.excerpt else board
    voice = find_voice(order.model) if order.voice else None
    sound = None
    if voice is not None:
        progress("speaking", 0, 1)
        sound = narrate(board.lines, board.length_s, board.language, voice)
    name = ("film-excerpt" if order.excerpt else "film") + (".mp4" if order.codec == "h264" else ".webm")
    made = film_storyboard(board, tall_px=order.tall_px, codec=order.codec, voice=sound, progress=progress)
    return {name: made}


class Review(NamedTuple):
    """What an editor found, and whether sizes were checked or left out because they are not known."""

    findings: tuple[Finding, ...]
    sizes: bool


def review_piece(
    made: Work, language: str = "en", *, sizes: bool = False, progress: ReportProgress = report_nothing
) -> Review:
    """Return everything that the line and then an editor find in a piece.

    Its size and the numbers of every wrist are checked if an earlier lesson has worked them out, or if
    `sizes` asks for them.

    Raises:
        ValueError: the language is unknown.
    """
    found = finished(made, progress) if sizes else cached_finish(made)
    planned = lesson_of(made, language, finish=found or UNKNOWN_FINISH)
    findings = (*made.findings, *review_lesson(made.pattern, made.history, made.supplies, planned))
    return Review(findings, found is not None)


def _parts(taught: PreparedLesson, order: LessonOrder, parts: tuple[Output, ...]) -> dict[str, bytes]:
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


def _work_mirrored(made: Work, must: bool) -> Work | None:
    """Work the mirrored piece. One that cannot be mirrored gives None, or is refused if it `must` be."""
    try:
        mirrored = mirror(made.pattern)
    except RefusedError:
        if must:
            raise
        return None
    return work(mirrored)


def _plan(
    made: Work,
    order: LessonOrder,
    hand: Hand,
    pace: Pace,
    *,
    rehearsal: Rehearsal | None,
    finish: FinishedPiece,
    verdict: HoldResult,
) -> Lesson:
    return plan_lesson(
        made.pattern,
        made.history,
        made.supplies,
        verdict,
        language=order.language,
        hand=hand,
        pace=pace,
        units=order.units,
        phrases=order.phrases,
        rehearsal=rehearsal,
        finish=finish,
    )


def _pace(history: History, timing: str) -> Pace:
    """Return the pace that follows from a teacher's own `timing` (see `LessonOrder`)."""
    if not timing:
        return Pace()
    timed = _TIMING.fullmatch(timing)
    if timed is None:
        raise RefusedError(phrase("timing-unreadable", text=timing))
    span = _MOVES.fullmatch(timed["what"])
    first, last = (int(span[1]), int(span[2])) if span else motif_moves(history, timed["what"])
    return pace_from_timing(history, first, last, float(timed["seconds"]))
