"""The filming plan and the script to read from, as leaves."""

from __future__ import annotations

from pegwright.lesson.film.script import Script, Shot
from pegwright.lesson.handout.leaf import Leaf, Table
from pegwright.lesson.handout.sheet import Block, Lesson
from pegwright.lesson.say.phrasebook import Phrasebook

_TIPS = ("camera", "hands", "light", "close", "faces")


def filming_plan(lesson: Lesson, script: Script) -> Leaf:
    """Plan the filming: every shot, how long the camera runs, what must be in view, what is cut how."""
    phrasebook = lesson.phrasebook
    say = phrasebook.say
    does = {step.number: step.instruction for step in lesson.steps}
    shots = tuple(
        _shot_row(phrasebook, number, shot, does.get(shot.step, ""))
        for number, shot in enumerate(script.shots, start=1)
    )
    chapters = tuple((clock_time(c.start_s), c.title) for c in script.chapters)
    camera = duration_text(phrasebook, sum(shot.takes_s for shot in script.shots))
    return Leaf(
        title=say("heading-filming", title=lesson.title),
        language=lesson.language,
        designer=lesson.designer,
        about=say(
            "filming-length",
            minutes=duration_text(phrasebook, script.length_s),
            wpm=script.wpm,
            camera=camera,
        ),
        parts=(
            Block(heading=say("heading-filming-tips"), lines=tuple(say(f"tip-{tip}") for tip in _TIPS)),
            Table(
                heading=say("heading-shots"),
                columns=tuple(say(f"column-{c}") for c in ("shot", "at", "long", "do", "view", "cut")),
                rows=shots,
                wide=4,
                right=(0, 1, 2),
            ),
            Table(
                heading=say("heading-chapters"),
                columns=(say("column-at"), say("column-chapter")),
                rows=chapters,
                wide=1,
                right=(0,),
            ),
            lesson.cautions,
        ),
        foot=lesson.colophon,
        page=lesson.page_label,
    )


def script_leaf(lesson: Lesson, script: Script) -> Leaf:
    """Lay out the script to read from: when, at which step, what is said."""
    phrasebook = lesson.phrasebook
    say = phrasebook.say
    count = sum(len(line.text.split()) for line in script.lines)
    rows = tuple((clock_time(line.start_s), str(line.step or "–"), line.text) for line in script.lines)
    return Leaf(
        title=say("heading-script", title=lesson.title),
        language=lesson.language,
        designer=lesson.designer,
        about=say(
            "script-about", words=count, wpm=script.wpm, minutes=duration_text(phrasebook, script.length_s)
        ),
        parts=(
            Table(
                heading=say("column-said"),
                columns=tuple(say(f"column-{c}") for c in ("at", "step", "said")),
                rows=rows,
                wide=2,
                right=(0, 1),
            ),
        ),
        foot=lesson.colophon,
        page=lesson.page_label,
    )


def clock_time(seconds: float) -> str:
    """Write a time of the film as minutes and seconds: 4:05."""
    return f"{int(seconds) // 60}:{int(seconds) % 60:02}"


def duration_text(phrasebook: Phrasebook, seconds: float) -> str:
    """Write a length of time in words: 4 min 5 s."""
    whole = round(seconds)
    return phrasebook.say("minutes", minutes=whole // 60, seconds=whole % 60)


def _shot_row(phrasebook: Phrasebook, number: int, shot: Shot, done: str) -> tuple[str, ...]:
    cut = []
    if shot.speed > 1:
        cut.append(phrasebook.say("cut-fast", speed=phrasebook.decimal(shot.speed)))
    if shot.pause:
        cut.append(phrasebook.say("cut-pause"))
    long = duration_text(phrasebook, shot.takes_s)
    title = f"{shot.title}: {done}" if done else shot.title
    return (str(number), clock_time(shot.start_s), long, title, shot.view, "; ".join(cut) or "–")
