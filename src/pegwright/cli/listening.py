"""The command that lays a recording's captions beside the lesson of its pattern."""

from __future__ import annotations

from pathlib import Path

from pegwright.cli.shared import Json, answer, cannot, load_work, reason, refuse
from pegwright.cli.terminal import exit_code, say, say_findings
from pegwright.finding import Language
from pegwright.listening import (
    CaptionReading,
    draft_recording,
    hear_recording,
    is_recording,
    read_captions,
)
from pegwright.pattern import PatternReading
from pegwright.text import encode_pattern
from pegwright.workshop import keep_pace, listen_to_lesson, read_bytes, recording_files, replace_file


def listen_(
    pattern: Path,
    captions: Path | None = None,
    out: Path | None = None,
    *,
    draft: bool = False,
    language: Language = "en",
    pace: Path | None = None,
    model: Path | None = None,
    force: bool = False,
    json: Json = False,
) -> int:
    """Lay a recording beside its lesson: when each chapter begins, and what it says otherwise.

    Parameters
    ----------
    pattern
        the pattern that is taught; with --draft the captions of a recording that has no pattern.
    captions
        what is said and when: WebVTT, SRT, or lines that begin with a time, as [1:05]; with --draft the file
        of the new pattern.
    out
        a folder for the captions with garbled words put right, the chapters, and when each step is shown.
    draft
        make a draft of a recording that has no pattern: only moves that are said whole and clearly are read.
    language
        the language spoken.
    pace
        a file for the pattern with how long you showed each step; the minutes of its lesson go by that.
    model
        for sound or a film instead of captions: the folder of a model for the recogniser (extra `hear`).
    force
        replace such files if they are there.
    """
    if draft:
        return _draft(pattern, captions, language, model, force=force, json=json)
    if captions is None:
        return cannot(
            "give a pattern and the captions of its recording, or --draft and the captions alone", json
        )
    heard = _read_captions(captions, json, language, model)
    if isinstance(heard, int):
        return heard
    made = load_work(pattern, json, language)
    lesson, told = listen_to_lesson(made, heard.cues, language)
    findings = (*heard.findings, *told.findings)
    written: list[str] = []
    if pace is not None:
        if pace.exists() and not force:
            return cannot(f"{pace} is there already; give another name, or --force to replace it", json)
        try:
            replace_file(pace, encode_pattern(keep_pace(made, lesson, told), pace.name))
        except OSError as error:
            return cannot(reason(error), json)
        written = [str(pace)]
    if out is not None:
        files = recording_files(lesson, told)
        there = [name for name in files if (out / name).exists()]
        if there and not force:
            return cannot(f"{out / there[0]} is there already; give another folder, or --force", json)
        try:
            out.mkdir(parents=True, exist_ok=True)
            for name, data in files.items():
                replace_file(out / name, data)
        except OSError as error:
            return cannot(reason(error), json)
        written += [str(out / name) for name in files]
    if json:
        lists = ("chapters", "contradictions", "steps", "trims", "corrections")
        value = {name: [one._asdict() for one in getattr(told, name)] for name in lists}
        return answer({**value, "noise": told.noise, "files": written}, findings, language=language)
    for chapter in told.chapters:
        say(f"{_clock(chapter.start_s)} {chapter.title} ({chapter.share:.0%} of the words heard)")
    for file in written:
        say(file)
    say_findings(findings, language)
    return exit_code(findings)


def _read_captions(
    captions: Path, json: bool, language: Language, model: Path | None
) -> CaptionReading | int:
    """Return what is said and when, or the exit code where nothing can be read or heard."""
    if is_recording(captions):
        heard = hear_recording(captions, model, language)
        return heard if heard.cues else refuse(heard.findings, json, language)
    data = read_bytes(captions)
    if isinstance(data, PatternReading):
        return refuse(data.findings, json, language)
    heard = read_captions(data)
    return heard if heard.cues else refuse(heard.findings, json, language)


def _clock(time_s: float) -> str:
    minutes, seconds = divmod(int(time_s), 60)
    return f"{minutes}:{seconds:02}"


def _draft(
    captions: Path, out: Path | None, language: Language, model: Path | None, *, force: bool, json: bool
) -> int:
    """Make a pattern of the steps that are heard, and show every sentence with its time."""
    if out is not None and out.exists() and not force:
        return cannot(f"{out} is there already; give another name, or --force to replace it", json)
    heard = _read_captions(captions, json, language, model)
    if isinstance(heard, int):
        return heard
    told = draft_recording(heard.cues, language)
    findings = (*heard.findings, *told.reading.findings)
    if told.reading.pattern is None:
        return refuse(findings, json, language)
    if out is not None:
        try:
            replace_file(out, encode_pattern(told.reading.pattern, out.name))
        except OSError as error:
            return cannot(reason(error), json)
    if json:
        lines = [one._asdict() for one in told.lines]
        return answer({"lines": lines, "file": str(out) if out else None}, findings, language=language)
    for one in told.lines:
        say(f"{_clock(one.start_s)} {'+' if one.is_read else ' '} {one.text}")
    say_findings(findings, language)
    return exit_code(findings)
