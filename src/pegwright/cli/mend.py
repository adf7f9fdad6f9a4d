"""The command that mends a piece that falls."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pegwright.cli.shared import Json, answer, cannot, load_pattern, reason
from pegwright.cli.terminal import exit_code, progress, say, say_findings
from pegwright.finding import Language, word_phrase
from pegwright.pattern import write_pattern
from pegwright.planner import Mend
from pegwright.workshop import mend_piece, replace_file


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
    if not (1 <= most <= 12 and 1 <= take <= most and 0 < seconds <= 86_400):
        return cannot("most goes from 1 to 12, take from 1 to most, seconds from above 0 to 86,400", json)
    if out is not None and out.exists():
        return cannot(f"{out} is there already; choose another name", json)
    pattern = load_pattern(file, json, language)
    with progress(json) as report:
        mends = mend_piece(pattern, most=most, seconds=seconds, progress=report)
    if take > len(mends.found) > 0:
        return cannot(f"there are only {len(mends.found)} changes to take from", json)
    if out is not None and mends.found:
        try:
            replace_file(out, write_pattern(mends.found[take - 1].pattern))
        except OSError as error:
            return cannot(reason(error, language), json)
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
    if out is not None and mends.found:
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
