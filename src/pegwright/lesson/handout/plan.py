"""Decide the whole lesson: phases, steps, words, pictures, checks."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping

from pegwright import __version__
from pegwright.fit import Supplies
from pegwright.lesson.handout.finished import finished_section
from pegwright.lesson.handout.front import (
    bands_lines,
    cautions_block,
    colour_key,
    glossary_block,
    hold_statement,
    is_worn,
    level_block,
    safety_box,
    supplies_table,
    tools_block,
)
from pegwright.lesson.handout.mistakes import add_mistakes
from pegwright.lesson.handout.phase_writer import write_phases
from pegwright.lesson.handout.results import UNKNOWN_FINISH, FinishedPiece, HoldResult
from pegwright.lesson.handout.sheet import Hand, Lesson
from pegwright.lesson.handout.sizes import size_table
from pegwright.lesson.handout.step_writer import StepWriter
from pegwright.lesson.handout.troubleshooting import add_troubleshooting
from pegwright.lesson.say.phrasebook import Phrasebook, Units, plain_text, single_line
from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.scene import look_of
from pegwright.lesson.scene.times import Pace
from pegwright.loom import History
from pegwright.pattern import (
    Pattern,
    localise,
    write_pattern,
)
from pegwright.rehearsal import Rehearsal


def plan_lesson(
    pattern: Pattern,
    history: History,
    supplies: Supplies,
    verdict: HoldResult,
    *,
    finish: FinishedPiece = UNKNOWN_FINISH,
    language: str = "en",
    hand: Hand = "right",
    pace: Pace | None = None,
    units: Units = "metric",
    phrases: Mapping[str, str] | None = None,
    rehearsal: Rehearsal | None = None,
) -> Lesson:
    """Decide the lesson of a pattern from its history, its supplies and its verdict.

    `finish` is the piece off the loom, as far as it is known. For the left hand give the mirrored pattern;
    `hand` only says so and says which hand holds the hook. `pace` is that of the teacher and the learners.
    `phrases` maps words of ours to the teacher's own, as in `Words`. With the rehearsal of this history the
    lesson warns of what goes wrong, shows it beside the right, and stops to look.

    Raises:
        ValueError: there are no words for the language.
    """
    phrasebook = Phrasebook(language, phrases, units)
    say = phrasebook.say
    mark = hashlib.sha256(write_pattern(pattern)).hexdigest()[:8]
    pattern = localise(pattern, language)
    speaker = Speaker(phrasebook, look_of(pattern, history))
    writer = StepWriter(speaker, pattern, history, pace or Pace())
    phases = write_phases(writer, supplies, hand)
    if rehearsal is not None:
        phases = add_troubleshooting(phrasebook, add_mistakes(speaker, phases, rehearsal), rehearsal)
    designer = single_line(pattern.designer)
    sizes = size_table(phrasebook, pattern, finish, writer.taught_steps())
    colophon = [
        say("colophon-version", version=__version__, format=str(pattern.pegwright)),
        say("colophon-errata", designer=designer) if designer else say("colophon-errata-none"),
        say("colophon-print", mark=mark),
    ]
    if pattern.licence:
        colophon.append(say("colophon-licence", licence=single_line(pattern.licence)))
    return Lesson(
        language=language,
        hand=hand,
        title=single_line(pattern.title),
        designer=designer,
        byline=say("byline", designer=designer) if designer else say("byline-none"),
        edition=say(f"edition-{hand}"),
        level=level_block(
            phrasebook,
            pattern,
            history,
            sum(step.learner_s for step in writer.made),
            sum(step.is_timed for step in writer.made),
        ),
        notes=plain_text(pattern.notes),
        supplies=supplies_table(phrasebook, speaker.look, supplies),
        safety=safety_box(phrasebook, is_worn(history)),
        bands=bands_lines(phrasebook, pattern, dict.fromkeys(history.colours)),
        tools=tools_block(phrasebook, supplies, pattern, history),
        key_heading=say("heading-key"),
        key=colour_key(speaker.look, supplies),
        hold=hold_statement(speaker, verdict, writer),
        finished=finished_section(phrasebook, single_line(pattern.title), speaker.look, finish),
        phases=phases,
        cautions=cautions_block(phrasebook, is_worn(history)),
        sizes=sizes,
        glossary=glossary_block(
            phrasebook,
            " ".join(
                (
                    *(t for step in writer.made for t in (step.instruction, *step.detail)),
                    *(sizes.lines if sizes else ()),
                )
            ),
        ),
        units=units,
        mark=mark,
        licence=say("licence-as", licence=single_line(pattern.licence))
        if pattern.licence
        else say("licence-none"),
        phrases=dict(phrases or {}),
        colophon=tuple(colophon),
        page_label=say("label-page", page="{page}", pages="{pages}"),
        step_label=say("picture-step", n="{n}"),
    )
