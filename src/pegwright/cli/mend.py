"""The command that mends a piece that falls."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pegwright.cli.choosing import check_choice, write_choice
from pegwright.cli.shared import Json, answer, load_pattern
from pegwright.cli.terminal import exit_code, progress, say, say_findings
from pegwright.finding import Language, word_phrase
from pegwright.planner import Mend
from pegwright.workshop import mend_piece


def mend_(
    file: Path,
    *,
    out: Path | None = None,
    take: int = 1,
    most: int = 3,
    seconds: float = 10.0,
    language: Language = "en",
    json: Json = False,
) -> int:
    """Find the smallest changes that make a piece hold, each proved, and write the one you take.

    Parameters
    ----------
    file
        the pattern document.
    out
        write the pattern with the change you take into this new file.
    take
        which of the changes to write, counted from 1.
    most
        how many changes to show.
    seconds
        how long to look for them; the best found so far are shown.
    language
        the language of what was found: en, es or de.
    """
    check_choice(take=take, most=most, limit=12, seconds=seconds, out=out, json=json)
    pattern = load_pattern(file, json, language)
    with progress(json) as report:
        mends = mend_piece(pattern, most=most, seconds=seconds, progress=report)
    patterns = [one.pattern for one in mends.found]
    written = write_choice(patterns, take, out, what="changes", json=json, language=language)
    if json:
        value = {
            "title": pattern.title,
            "tried": mends.tried,
            "cut_short": mends.cut_short,
            "mends": [_facts(one, language) for one in mends.found],
        }
        return answer(value, mends.findings, language=language)
    say(pattern.title, style="bold")
    say_findings(mends.findings, language)
    for number, one in enumerate(mends.found, start=1):
        say(f"{number}  {word_phrase(one.fix.label, language)}")
    if written:
        say(f"{out}: change {take}; every band is proved held")
    return exit_code(mends.findings)


def _facts(one: Mend, language: Language) -> dict[str, Any]:
    return {
        "label": word_phrase(one.fix.label, language),
        "patch": one.fix.patch,
        "changed": one.changed,
        "more_bands": one.more_bands,
        "phrases": one.phrases,
    }
