"""The command that proposes working orders."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pegwright.cli.choosing import check_choice, write_choice
from pegwright.cli.shared import Json, answer, load_pattern, table
from pegwright.cli.terminal import exit_code, out as screen, progress, say, say_findings
from pegwright.finding import Language
from pegwright.pattern import Pattern
from pegwright.planner import Effort, Measures, Proposals, measure_given_working
from pegwright.workshop import plan_piece, simplify_piece


def plan_(
    file: Path,
    *,
    out: Path | None = None,
    take: int = 1,
    most: int = 5,
    seconds: float = 10.0,
    afresh: bool = False,
    simpler: bool = False,
    rehearse: bool = True,
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
    simpler
        keep the piece as it is, and look for an order of its own moves that is simpler.
    rehearse
        rehearse each proposal too, as the time allows: how many slips that bring bands down a maker makes
        on average.
    language
        the language of what was found: en, es or de.
    """
    check_choice(take=take, most=most, limit=100, seconds=seconds, out=out, json=json)
    pattern = load_pattern(file, json, language)
    if simpler:
        return _simplify(pattern, out, seconds, json=json, language=language)
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
        given = measure_given_working(pattern) if afresh else None
        rows = [_row(str(number), one.measures) for number, one in enumerate(plans.found, start=1)]
        screen.print(table([*rows, *([_row("as it is", given)] if given else [])]))
        more = "; the time ran out before all were tried" if plans.cut_short else ""
        say(f"every band is proved held in each; {plans.tried} orders tried{more}")
        if written:
            say(f"{out}: proposal {take}")
    say_findings(plans.findings, language)
    return exit_code(plans.findings)


def _simplify(pattern: Pattern, out: Path | None, seconds: float, *, json: bool, language: Language) -> int:
    """Compare the pattern's own order with a simpler one, and write that."""
    with progress(json) as report:
        made = simplify_piece(pattern, seconds=seconds, progress=report)
    patterns = [made.pattern] if made.pattern is not None else []
    written = write_choice(patterns, 1, out, what="orders", json=json, language=language)
    if json:
        value = {
            "title": pattern.title,
            "tried": made.tried,
            "before": made.before._asdict(),
            "after": made.after._asdict() if made.after else None,
        }
        return answer(value, made.findings, language=language)
    say(pattern.title, style="bold")
    if made.after:
        screen.print(table([_effort_row("as it is", made.before), _effort_row("simpler", made.after)]))
        say(f"the same piece, band for band; {made.tried} orders compared")
    if written:
        say(f"{out}: the simpler order")
    say_findings(made.findings, language)
    return exit_code(made.findings)


def _effort_row(name: str, effort: Effort) -> dict[str, str]:
    return {
        "": name,
        "phrases": str(effort.phrases),
        "colour changes": str(effort.colour_changes),
        "travel mm": f"{effort.travel_mm:.0f}",
    }


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
        "slips that fell it": "–" if measures.failures is None else f"{measures.failures:.2f}",
        "loose loops": str(measures.loose_loops),
        "warnings": str(measures.cautions),
    }
