"""How long the lesson of an 80-band strip takes: plan, handout, pictures, captions, page, bundle, film.

The piece is brought to rest before, and that is not counted: `bench shape` measures the solver.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import TypeVar

import msgspec

from bench.report import Figure
from examples.pieces import riding_lights
from pegwright.fit import Supplies, count_supplies
from pegwright.lesson import (
    UNKNOWN_FINISH,
    FinishedPiece,
    Hand,
    HoldResult,
    Lesson,
    Storyboard,
    caption_script,
    draw_storyboard,
    excerpt,
    frame_stills,
    kit_sheet,
    plan_lesson,
    write_script,
)
from pegwright.loom import History, replay_pattern
from pegwright.pattern import Pattern, PatternBuilder, Rows, mirror
from pegwright.press import (
    bundle_lesson,
    captions_srt,
    captions_vtt,
    chapters_vtt,
    film_storyboard,
    handout_pdf,
    lesson_files,
    page_html,
    prompter_html,
    step_svg,
    still_png,
)
from pegwright.workshop import finish, mirrored_finish, work


def strip(lanterns: int = 8) -> Pattern:
    """Return the strip of lanterns at any length; eight take 81 bands and an extension."""
    short = riding_lights()
    pegs = 2 * lanterns + 1
    m = PatternBuilder("Riding lights, long", Rows(rows=3, pegs=pegs), level="intermediate")
    with m.repeat(lanterns, pegs=2):
        m.use("outline", colours={"rim": "A"})
    with m.repeat(lanterns // 2, pegs=4):
        m.use("light", colours={"glass": "L"})
        m.use("light", colours={"glass": "R"}, pegs=2)
    m.wind("A", f"B{pegs}", 3)
    m.turn()
    with m.repeat(lanterns, pegs=-2):
        m.use("gather light", pegs=pegs - 3)
        m.use("gather outline", pegs=pegs - 3)
    m.bind("A", "B1")
    m.extend("A", 6)
    m.clip("end", f"B{pegs}")
    return msgspec.structs.replace(m.pattern(), motifs=short.motifs, colours=short.colours)


def run(quick: bool) -> list[Figure]:
    """Measure each output of the strip; quick takes the strip of two lanterns."""
    pattern = strip(2 if quick else 8)
    found = finish(work(pattern), fit=False)
    planned, plan_s = _timed(lambda: _planned(pattern, finish=found))
    other = _planned(mirror(pattern), hand="left", finish=mirrored_finish(found))
    told = write_script(planned)
    sheet = kit_sheet(planned, told, _needs(pattern), 12)
    handout_pdf(planned)  # the typesetter reads its fonts once
    _, handout_s = _timed(lambda: handout_pdf(planned))
    pictures = [p for s in planned.steps for p in (*s.pictures, *([s.closeup] if s.closeup else []))]
    _, pictures_s = _timed(lambda: [step_svg(picture) for picture in pictures])
    _, captions_s = _timed(lambda: _captioned(planned))
    _, page_s = _timed(lambda: page_html(planned, other))
    frames = list(frame_stills(planned))
    _, stills_s = _timed(lambda: [still_png(each) for each in frames])
    files, files_s = _timed(lambda: lesson_files(planned, told, other=other, kit=sheet))
    zipped, bundle_s = _timed(lambda: bundle_lesson(planned, files))
    history = _history(pattern)
    board, board_s = _timed(lambda: draw_storyboard(pattern, history, planned, told))
    short = excerpt(board)
    made, excerpt_s = _timed(lambda: film_storyboard(short))
    whole = [] if quick else _film(board)
    return [
        Figure("steps", len(planned.steps), "steps"),
        Figure("plan", plan_s, "s"),
        Figure(
            "handout, plan included (at rest before)",
            plan_s + handout_s,
            "s",
            "< 4 s",
            plan_s + handout_s < 4,
        ),
        Figure("step pictures (SVG)", pictures_s, "s"),
        Figure("stills (PNG, 1080)", len(frames), "pictures"),
        Figure("stills (PNG, 1080), time", stills_s, "s"),
        Figure("all step pictures", pictures_s + stills_s, "s", "< 20 s", pictures_s + stills_s < 20),
        Figure("captions, chapters, page", captions_s + page_s, "s", "< 1 s", captions_s + page_s < 1),
        Figure("every file", files_s, "s"),
        Figure("bundle", bundle_s, "s"),
        Figure("bundle size", len(zipped) / 1e6, "MB"),
        Figure("film length", told.length_s, "s"),
        Figure("storyboard", board_s, "s"),
        Figure("20 s of film, all motion, 720p", excerpt_s, "s", "< 20 s", excerpt_s < short.length_s),
        Figure("20 s of film, size", len(made) / 1e6, "MB"),
        *whole,
    ]


def _film(board: Storyboard) -> list[Figure]:
    """Code the whole film: it should take no longer than it plays."""
    made, took_s = _timed(lambda: film_storyboard(board))
    speed = board.length_s / took_s
    return [
        Figure("whole film, 720p VP9", took_s, "s"),
        Figure("times as fast as it plays", speed, "", ">= 1", speed >= 1),
        Figure("whole film, size", len(made) / 1e6, "MB"),
    ]


T = TypeVar("T")


def _timed(job: Callable[[], T]) -> tuple[T, float]:
    start = time.perf_counter()
    result = job()
    return result, time.perf_counter() - start


def _history(pattern: Pattern) -> History:
    return replay_pattern(pattern)


def _needs(pattern: Pattern) -> Supplies:
    return count_supplies(pattern, _history(pattern))


def _planned(pattern: Pattern, hand: Hand = "right", finish: FinishedPiece = UNKNOWN_FINISH) -> Lesson:
    """Plan with a verdict given: the proof has a bench of its own."""
    history = _history(pattern)
    if history.findings:
        raise AssertionError(history.findings[0].message)
    verdict = HoldResult(held=True, bands=history.final.bands)
    return plan_lesson(pattern, history, count_supplies(pattern, history), verdict, hand=hand, finish=finish)


def _captioned(lesson: Lesson) -> int:
    told = write_script(lesson)
    cut = caption_script(told)
    texts = (captions_vtt(cut, told.language), captions_srt(cut), chapters_vtt(told.chapters))
    return sum(map(len, (*texts, prompter_html(lesson, told))))
