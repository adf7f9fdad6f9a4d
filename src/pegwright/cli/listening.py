"""The command that lays a recording's captions beside the lesson of its pattern."""

from __future__ import annotations

from pathlib import Path

from pegwright.cli.shared import Json, answer, cannot, load_work, reason, refuse
from pegwright.cli.terminal import exit_code, say, say_findings
from pegwright.finding import Language
from pegwright.listening import read_captions
from pegwright.pattern import PatternReading
from pegwright.workshop import listen_to_lesson, read_bytes, recording_files, replace_file


def listen_(
    pattern: Path,
    captions: Path,
    out: Path | None = None,
    *,
    language: Language = "en",
    force: bool = False,
    json: Json = False,
) -> int:
    """Lay a recording beside its lesson: when each chapter begins, and what it says otherwise.

    Parameters
    ----------
    pattern
        the pattern that is taught.
    captions
        what is said and when: WebVTT, SRT, or lines that begin with a time, as [1:05].
    out
        a folder for the captions with garbled words put right, the chapters, and when each step is shown.
    language
        the language spoken.
    force
        replace such files if they are there.
    """
    data = read_bytes(captions)
    if isinstance(data, PatternReading):
        return refuse(data.findings, json, language)
    heard = read_captions(data)
    if not heard.cues:
        return refuse(heard.findings, json, language)
    told = listen_to_lesson(load_work(pattern, json, language), heard.cues, language)
    findings = (*heard.findings, *told.findings)
    written: list[str] = []
    if out is not None:
        files = recording_files(told, language)
        there = [name for name in files if (out / name).exists()]
        if there and not force:
            return cannot(f"{out / there[0]} is there already; give another folder, or --force", json)
        try:
            out.mkdir(parents=True, exist_ok=True)
            for name, data in files.items():
                replace_file(out / name, data)
        except OSError as error:
            return cannot(reason(error), json)
        written = [str(out / name) for name in files]
    if json:
        lists = ("chapters", "contradictions", "steps", "trims", "corrections")
        value = {name: [one._asdict() for one in getattr(told, name)] for name in lists}
        return answer({**value, "noise": told.noise, "files": written}, findings, language=language)
    for chapter in told.chapters:
        minutes, seconds = divmod(int(chapter.start_s), 60)
        say(f"{minutes}:{seconds:02} {chapter.title} ({chapter.share:.0%} of the words heard)")
    for file in written:
        say(file)
    say_findings(findings, language)
    return exit_code(findings)
