"""The lesson as it is filmed and spoken: who says what when, shot by shot, chapter by chapter.

Speech, captions, chapters, prompter, filming plan and film all read this one line of time.
"""

from __future__ import annotations

import re
from typing import Literal

import msgspec

from pegwright.finding import RefusedError, phrase
from pegwright.lesson.handout.sheet import Checkpoint, Lesson, LessonStep, Phase

SLOWEST_WPM, FASTEST_WPM = 110, 130
"""Words a minute for work that is followed along (common practice, no source)."""
SHORTEST_S = 1.0
GAP_S = 1.5
"""Between what is said for two steps; captions stand at least 1 s apart, better 1.5, or not at all (BBC)."""
FAST_S = 6.0
"""Rounds that are only counted are shown in about so long, speeded up."""
_LONG_WORD = 20
_LETTERS_A_WORD = 10

ShotKind = Literal["talk", "show", "fast"]


class _Value(msgspec.Struct, frozen=True, kw_only=True):
    """Parts of a script are values."""


class ScriptLine(_Value, frozen=True, kw_only=True):
    """One sentence and when it is said, in seconds from the start; `step` is 0 where it belongs to none."""

    start_s: float
    end_s: float
    text: str
    step: int = 0


class Shot(_Value, frozen=True, kw_only=True):
    """One stretch of film: what is done, and what must be in view.

    `speed` is how much faster than the teacher works it is shown; `pause` tells the viewer to stop the film
    and do it. `takes_s` is how long the camera runs.
    """

    start_s: float
    end_s: float
    kind: ShotKind
    title: str
    view: str
    step: int = 0
    speed: float = 1.0
    pause: bool = False
    takes_s: float = 0.0


class Chapter(_Value, frozen=True, kw_only=True):
    """A chapter, from its first second to the first of the next."""

    start_s: float
    end_s: float
    title: str


class Script(_Value, frozen=True, kw_only=True):
    """What is said and shown, second by second. Chapters and shots follow each other without a gap."""

    title: str
    language: str
    wpm: int
    lines: tuple[ScriptLine, ...]
    shots: tuple[Shot, ...]
    chapters: tuple[Chapter, ...]

    @property
    def length_s(self) -> float:
        """Length of the film in seconds."""
        return self.chapters[-1].end_s


def write_script(lesson: Lesson, wpm: int = 120) -> Script:
    """Lay a lesson out in time at so many words a minute.

    Raises:
        ValueError: a pace at which nobody can follow along (outside 110 to 130 words a minute).
    """
    if not SLOWEST_WPM <= wpm <= FASTEST_WPM:
        raise RefusedError(phrase("narration-pace", wpm=wpm))
    clock = _ScriptWriter(lesson, wpm)
    clock.opening()
    for phase in lesson.phases:
        clock.phase(phase)
    return Script(
        title=lesson.title,
        language=lesson.language,
        wpm=wpm,
        lines=tuple(clock.lines),
        shots=tuple(clock.shots),
        chapters=tuple(clock.chapters),
    )


def spoken_sentences(step: LessonStep) -> tuple[str, ...]:
    """Return the sentences said for a step: words, details, rounds, what to take care of, the note."""
    warnings = (trouble.warning for trouble in step.mistakes)
    text = (step.instruction, *step.detail, *step.rounds_spoken, step.warning, *warnings, step.note)
    return split_sentences(" ".join(text))


def split_sentences(text: str) -> tuple[str, ...]:
    """Cut a text into sentences."""
    return tuple(part for part in re.split(r"(?<=[.!?…])\s+", " ".join(text.split())) if part)


def count_spoken_words(text: str) -> float:
    """Count the words of a text as speech counts them: a very long one weighs as several."""
    return sum(max(1.0, len(w) / _LETTERS_A_WORD if len(w) > _LONG_WORD else 1.0) for w in text.split())


class _ScriptWriter:
    """Runs through the lesson and notes what happens when."""

    def __init__(self, lesson: Lesson, wpm: int) -> None:
        self.lesson = lesson
        self.wpm = wpm
        self.now_s = 0.0
        self.lines: list[ScriptLine] = []
        self.shots: list[Shot] = []
        self.chapters: list[Chapter] = []

    def opening(self) -> None:
        """Say what will be made and how large it comes out, and the cautions."""
        say, finished = self.lesson.phrasebook.say, self.lesson.finished
        sentences = finished.sentences if finished.portrait else ()
        said = (
            self.lesson.title + ".",
            self.lesson.byline + ".",
            *(s for t in sentences for s in split_sentences(t)),
        )
        self.talk(said, say("shot-piece"), say("view-piece"))
        self.chapter(say("shot-piece"))
        safe = self.lesson.cautions
        said = (safe.heading + ".", *(s for text in safe.lines for s in split_sentences(text)))
        self.talk(said, safe.heading, say("view-cautions"))
        self.chapter(safe.heading)

    def phase(self, phase: Phase) -> None:
        """Say and show a phase step by step."""
        # What a film shows beside the loom, the page calls its small picture.
        intro = self.lesson.phrasebook.say("intro-work-film") if phase.name == "work" else phase.intro
        # One who only listens has not read the list of tools, and must know the loom.
        tools = (
            [f"{line.rstrip('.')}." for line in self.lesson.tools.lines] if phase.name == "prepare" else []
        )
        said = (
            phase.heading + ".",
            *(s for text in tools for s in split_sentences(text)),
            *split_sentences(intro),
        )
        view = {"prepare": "view-bench", "wear": "view-piece"}.get(phase.name, "view-standing")
        self.talk(said, phase.heading, self.lesson.phrasebook.say(view))
        for step in phase.steps:
            self.step(step)
            if step.checkpoint is not None:
                self.check(step.checkpoint)
        if phase.check is not None:
            self.check(phase.check)
        self.chapter(phase.heading)

    def step(self, step: LessonStep) -> None:
        """Say a step while it is shown; rounds that are only counted go fast."""
        start = self.now_s
        self.say(spoken_sentences(step), step.number)
        said_s = self.now_s - start
        fast = step.rounds > 1 and step.teacher_s > max(FAST_S, said_s)
        shown_s = max(FAST_S, said_s) if fast else max(said_s, step.teacher_s)
        if step.first == 0:  # nothing happens on the pegs: the talk is the shot
            shown_s = said_s
        self.shoot(
            start,
            start + shown_s + GAP_S,
            kind="fast" if fast else "show" if step.first else "talk",
            title=self.lesson.step_label.replace("{n}", str(step.number)),
            view=" ".join((step.view, *(trouble.filming_note for trouble in step.mistakes))),
            step=step.number,
            speed=step.teacher_s / shown_s if fast else 1.0,
            pause=step.rounds > 1,
            takes_s=max(step.teacher_s, said_s) if step.first else said_s,
        )

    def check(self, check: Checkpoint) -> None:
        """Say what must be seen now; the viewer stops and looks."""
        said = tuple(
            s for text in (check.heading + ".", *check.lines, check.remedy) for s in split_sentences(text)
        )
        self.talk(said, check.heading, check.view or self.lesson.phrasebook.say("view-check"), pause=True)

    def talk(self, said: tuple[str, ...], title: str, view: str, *, pause: bool = False) -> None:
        """Say something that needs no hands."""
        start = self.now_s
        self.say(said, 0)
        length = self.now_s - start
        end = self.now_s + GAP_S
        self.shoot(start, end, kind="talk", title=title, view=view, pause=pause, takes_s=length)

    def say(self, said: tuple[str, ...], step: int) -> None:
        """Say sentences, one right after the other."""
        for text in said:
            end = self.now_s + max(SHORTEST_S, count_spoken_words(text) * 60 / self.wpm)
            self.lines.append(ScriptLine(start_s=self.now_s, end_s=end, text=text, step=step))
            self.now_s = end

    def shoot(self, start_s: float, end_s: float, **facts: object) -> None:
        self.shots.append(Shot(start_s=start_s, end_s=end_s, **facts))  # type: ignore[arg-type]
        self.now_s = end_s

    def chapter(self, title: str) -> None:
        start = self.chapters[-1].end_s if self.chapters else 0.0
        self.chapters.append(Chapter(start_s=start, end_s=self.now_s, title=title))
