"""The command that lays a recording's captions beside the lesson of its pattern."""

from __future__ import annotations

from pathlib import Path

from pegwright.cli.shared import Json, answer, load_work, refuse
from pegwright.cli.terminal import exit_code, say, say_findings
from pegwright.finding import Language
from pegwright.listening import read_captions
from pegwright.pattern import PatternReading
from pegwright.workshop import listen_to_lesson, read_bytes


def listen_(pattern: Path, captions: Path, *, language: Language = "en", json: Json = False) -> int:
    """Lay a recording beside its lesson: when each chapter begins, and what it says otherwise.

    Parameters
    ----------
    pattern
        the pattern that is taught.
    captions
        what is said and when: WebVTT, SRT, or lines that begin with a time, as [1:05].
    language
        the language spoken.
    """
    data = read_bytes(captions)
    if isinstance(data, PatternReading):
        return refuse(data.findings, json, language)
    heard = read_captions(data)
    if not heard.cues:
        return refuse(heard.findings, json, language)
    told = listen_to_lesson(load_work(pattern, json, language), heard.cues, language)
    findings = (*heard.findings, *told.findings)
    if json:
        value = {
            "chapters": [one._asdict() for one in told.chapters],
            "contradictions": [one._asdict() for one in told.contradictions],
            "noise": told.noise,
        }
        return answer(value, findings, language=language)
    for chapter in told.chapters:
        minutes, seconds = divmod(int(chapter.start_s), 60)
        say(f"{minutes}:{seconds:02} {chapter.title} ({chapter.share:.0%} of the words heard)")
    say_findings(findings, language)
    return exit_code(findings)
