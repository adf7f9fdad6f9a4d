"""The command that proposes working orders."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pegwright.cli.choosing import check_choice, write_choice
from pegwright.cli.shared import Json, answer, load_pattern, table
from pegwright.cli.terminal import exit_code, out as screen, progress, say, say_findings
from pegwright.finding import Language
from pegwright.planner import Measures, Proposals, measure_given_working
from pegwright.workshop import plan_piece


def plan_(
    file: Path,
    *,
    out: Path | None = None,
    take: int = 1,
    most: int = 5,
    seconds: float = 10.0,
    afresh: bool = False,
    rehearse: bool = False,
    language: Language = "en",
    json: Json = False,
) -> int:
    """Propose working orders for bands that are laid, each proved to hold, and write the one you take.

    Parameters
    ----------
    file
        the pattern document; what it works already stays, and so does its finish.
    out
        write the pattern with the order you take into this new file.
    take
        which of the proposals to write, counted from 1.
    most
        how many different proposals to show.
    seconds
        how long to look for them; the best found so far are shown.
    afresh
        set aside the working that the pattern gives, and plan it from the bands alone.
    rehearse
        rehearse each proposal too: how many slips that bring bands down a maker makes on average.
    language
        the language of what was found: en, es or de.
    """
    check_choice(take=take, most=most, limit=100, seconds=seconds, out=out, json=json)
    pattern = load_pattern(file, json, language)
    with progress(json) as report:
        plans = plan_piece(
            pattern, most=most, seconds=seconds, afresh=afresh, rehearsed=rehearse, progress=report
        )
    patterns = [one.pattern for one in plans.found]
    written = write_choice(patterns, take, out, what="proposals", json=json, language=language)
    if json:
        return answer(_facts(pattern.title, plans), plans.findings, language=language)
    say(pattern.title, style="bold")
    if plans.found:
        given = measure_given_working(pattern) if afresh and not rehearse else None
        rows = [_row(str(number), one.measures) for number, one in enumerate(plans.found, start=1)]
        screen.print(table([*rows, *([_row("as it is", given)] if given else [])]))
        more = "; the time ran out before all were tried" if plans.cut_short else ""
        say(f"every band is proved held in each; {plans.tried} orders tried{more}")
        if written:
            say(f"{out}: proposal {take}")
    say_findings(plans.findings, language)
    return exit_code(plans.findings)


def _facts(title: str, plans: Proposals) -> dict[str, Any]:
    return {
        "title": title,
        "tried": plans.tried,
        "cut_short": plans.cut_short,
        "proposals": [one.measures._asdict() for one in plans.found],
    }


def _row(name: str, measures: Measures) -> dict[str, str]:
    symmetry = "–" if measures.symmetry is None else f"{measures.symmetry:.0%}"
    return {
        "": name,
        "phrases": str(measures.phrases),
        "loops above": str(measures.loops_above),
        "travel mm": f"{measures.travel_mm:.0f}",
        "symmetry": symmetry,
        **({} if measures.failures is None else {"slips that fell it": f"{measures.failures:.2f}"}),
        "loose loops": str(measures.loose_loops),
        "warnings": str(measures.cautions),
    }
