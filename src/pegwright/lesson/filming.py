"""The filming plan and the script to read from, as leaves."""

from __future__ import annotations

from pegwright.lesson.leaf import Grid, Leaf
from pegwright.lesson.script import Script, Shot
from pegwright.lesson.sheet import Block, Lesson
from pegwright.lesson.words import Words

_TIPS = ("camera", "hands", "light", "close", "faces")


def filming(lesson: Lesson, script: Script) -> Leaf:
    """Plan the filming: every shot, how long the camera runs, what must be in view, what is cut how."""
    words = lesson.words
    say = words.say
    does = {step.number: step.words for step in lesson.steps}
    shots = tuple(
        _row(words, number, shot, does.get(shot.step, ""))
        for number, shot in enumerate(script.shots, start=1)
    )
    chapters = tuple((clock(c.start_s), c.title) for c in script.chapters)
    camera = minutes(words, sum(shot.takes_s for shot in script.shots))
    return Leaf(
        title=say("heading-filming", title=lesson.title),
        language=lesson.language,
        designer=lesson.designer,
        about=say("filming-length", minutes=minutes(words, script.length_s), wpm=script.wpm, camera=camera),
        parts=(
            Block(heading=say("heading-filming-tips"), lines=tuple(say(f"tip-{tip}") for tip in _TIPS)),
            Grid(
                heading=say("heading-shots"),
                columns=tuple(say(f"column-{c}") for c in ("shot", "at", "long", "do", "view", "cut")),
                rows=shots,
                wide=4,
                right=(0, 1, 2),
            ),
            Grid(
                heading=say("heading-chapters"),
                columns=(say("column-at"), say("column-chapter")),
                rows=chapters,
                wide=1,
                right=(0,),
            ),
            lesson.cautions,
        ),
        foot=lesson.colophon,
        page=lesson.labels["page"],
    )


def script_leaf(lesson: Lesson, script: Script) -> Leaf:
    """Lay out the script to read from: when, at which step, what is said."""
    words = lesson.words
    say = words.say
    count = sum(len(line.text.split()) for line in script.lines)
    rows = tuple((clock(line.start_s), str(line.step or "–"), line.text) for line in script.lines)
    return Leaf(
        title=say("heading-script", title=lesson.title),
        language=lesson.language,
        designer=lesson.designer,
        about=say("script-about", words=count, wpm=script.wpm, minutes=minutes(words, script.length_s)),
        parts=(
            Grid(
                heading=say("column-said"),
                columns=tuple(say(f"column-{c}") for c in ("at", "step", "said")),
                rows=rows,
                wide=2,
                right=(0, 1),
            ),
        ),
        foot=lesson.colophon,
        page=lesson.labels["page"],
    )


def clock(seconds: float) -> str:
    """Write a time of the film as minutes and seconds: 4:05."""
    return f"{int(seconds) // 60}:{int(seconds) % 60:02}"


def minutes(words: Words, seconds: float) -> str:
    """Write a length of time in words: 4 min 5 s."""
    whole = round(seconds)
    return words.say("minutes", minutes=whole // 60, seconds=whole % 60)


def _row(words: Words, number: int, shot: Shot, done: str) -> tuple[str, ...]:
    cut = []
    if shot.speed > 1:
        cut.append(words.say("cut-fast", speed=words.decimal(shot.speed)))
    if shot.pause:
        cut.append(words.say("cut-pause"))
    long = minutes(words, shot.takes_s)
    title = f"{shot.title}: {done}" if done else shot.title
    return (str(number), clock(shot.start_s), long, title, shot.view, "; ".join(cut) or "–")
