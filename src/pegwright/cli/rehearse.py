"""The command that rehearses: where makers will go wrong, what comes of it, and where to stop and look."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pegwright.cli.shared import Json, answer, cannot, reason, refuse, worked
from pegwright.cli.terminal import exit_code, progress, say, say_findings
from pegwright.finding import Language
from pegwright.lesson import Teller, Words, move_label
from pegwright.loom.steps import step_numbers
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Slide,
    Transfer,
    Turn,
    Wind,
)
from pegwright.rehearsal import Pairs, Rehearsal, Trouble, compare, rehearse_pairs, way_back
from pegwright.workshop import Work, beside, rehearsed, weights_from, write_whole

_DOING: dict[type[Move], str] = {
    Place: "putting bands on",
    Wind: "winding",
    Hang: "winding on the hook",
    Turn: "turning the loom",
    Hook: "hooking",
    Slide: "sliding on",
    Lift: "lifting over",
    Transfer: "moving loops across",
    Bind: "the last band",
    Extend: "the extension",
    Clip: "closing",
    Knot: "closing",
}
_HEAT = " ▁▂▃▄▅▆▇█"
_STRIP = 72


def rehearse_(
    file: Path,
    *,
    against: Path | None = None,
    likelihood: Path | None = None,
    seen: Path | None = None,
    checks: int = 3,
    top: int = 5,
    pairs: int = 0,
    seed: int = 0,
    picture: int = 0,
    language: Language = "en",
    keep: bool = True,
    json: Json = False,
) -> int:
    """Make every likely slip of a maker at every step, and say where it goes wrong and where to look.

    Parameters
    ----------
    file
        the pattern document.
    against
        another working order of the piece, to be compared by what goes wrong in it.
    likelihood
        a table of your own that says how likely each kind of slip is.
    seen
        a table of the same form with what happened in class, to sharpen the chances.
    checks
        how many "stop and look" checks to place.
    top
        how many trouble spots to tell.
    pairs
        so many pairs of slips are drawn and rehearsed too.
    seed
        the same seed draws the same pairs.
    picture
        the number of a trouble spot: the right piece beside the wrong one, at rest if it comes to rest, else
        on the loom, goes into an SVG beside the pattern.
    language
        the language of the trouble spots and of what was found: en, es or de.
    keep
        keep what was found on this machine, and read it again while the piece is the same.
    """
    if not (0 <= checks <= 1000 and 1 <= top <= 1000 and 0 <= pairs <= 1_000_000 and picture >= 0):
        return cannot("checks go from 0 to 1000, top from 1 to 1000, pairs from 0 to 1,000,000", json)
    table = weights_from(likelihood, seen)
    if table.weights is None:
        return refuse(table.findings, json, language)
    made = worked(file, json, language)
    other = worked(against, json, language) if against else None
    with progress(json) as report:
        told = rehearsed(made, table.weights, checks=checks, progress=report, kept=keep)
        second = rehearsed(other, table.weights, checks=checks, progress=report, kept=keep) if other else None
        sampled = rehearse_pairs(told, count=pairs, seed=seed, progress=report) if pairs else None
    findings = (*made.findings, *(other.findings if other else ()))
    numbers = step_numbers(told.history)
    teller = Teller(Words(language), told.history, numbers.__getitem__)
    try:
        shown = _pictured(file, made, told, picture, language=language, json=json) if picture else None
    except (ValueError, OSError) as error:
        return cannot(reason(error), json)
    if json:
        value = {
            **_facts(told, numbers),
            "troubles": [_trouble(teller, told, numbers, one) for one in told.troubles[:top]],
        }
        if second:
            value["against"] = {"file": str(against), **_comparison(told, second)}
        if sampled:
            value["pairs"] = _pairs(sampled, numbers)
        if shown:
            value["picture"] = {"name": str(shown[0]), "at_rest": shown[1]}
        return answer(value, findings, language=language)
    say(told.title, style="bold")
    for line in _lines(told, numbers):
        say(line)
    for number, one in enumerate(told.troubles[:top], start=1):
        say()
        for line in _trouble_lines(teller, told, numbers, number, one):
            say(line)
    if second:
        say()
        say(_comparison_line(told, second))
    if sampled:
        say()
        say(_pairs_line(sampled))
    if shown:
        say()
        say(f"trouble {picture}, {'at rest' if shown[1] else 'on the loom'}: {shown[0]}")
    say_findings(findings, language)
    return exit_code(findings)


def _pictured(
    file: Path, made: Work, told: Rehearsal, number: int, *, language: str, json: bool
) -> tuple[Path, bool]:
    """Write the picture of a trouble spot; return its file, and whether it shows the pieces at rest.

    Raises:
        ValueError: there is no such trouble spot, or nothing shows.
        OSError: the file cannot be written.
    """
    if not 0 < number <= len(told.troubles):
        raise ValueError(f"there are {len(told.troubles)} trouble spots, so none of number {number}")
    with progress(json) as report:
        found = beside(made, told, told.troubles[number - 1].ways[0].worst, language, report)
    if found is None:
        raise ValueError(f"trouble {number} shows neither on the loom nor in the piece")
    target = file.with_name(f"{file.stem}-trouble-{number}.svg")
    write_whole(target, found.svg.encode())
    return target, found.at_rest


def _facts(told: Rehearsal, numbers: tuple[int, ...]) -> dict[str, Any]:
    return {
        "title": told.title,
        "slips": told.tried,
        "outcomes": {
            result: sum(o.result == result for o in told.outcomes)
            for result in ("falls", "not-proved", "weak", "looks-different", "harmless")
        },
        "not_settled": told.open,
        "failures": round(told.failures, 4),
        "lost": round(sum(told.heat), 4),
        "heat": [
            {"step": number, "lost": round(lost, 5)} for number, lost in zip(numbers, told.heat, strict=True)
        ],
        "checks": {
            "after": [numbers[at] for at in told.checks.after],
            "saved": round(told.checks.saved, 4),
            "at_least": round(told.checks.at_least, 4),
            "method": "the best next check each time; greedy choice for a submodular saving",
        },
    }


def _trouble(teller: Teller, told: Rehearsal, numbers: tuple[int, ...], trouble: Trouble) -> dict[str, Any]:
    return {
        "paths": list(trouble.paths),
        "steps": sorted(numbers[spot.at] for spot in trouble.spots),
        "lost": round(trouble.expected, 4),
        "ways": [
            {
                "slip": way.kind,
                "lost": round(way.expected, 4),
                "worst_step": numbers[way.worst.slip.at],
                "result": way.worst.result,
                "falls": list(way.worst.falls),
                "not_proved": list(way.worst.unproved),
                "differs": list(way.worst.differs),
                "proved": way.worst.slip in told.proved,
                "goes_wrong": teller.slip(way.worst),
                "comes_of_it": teller.end(way.worst),
                "shows": teller.sign(way.worst),
                "warning": teller.warning(way.worst),
                "way_back": list(teller.back(way_back(told.history, way.worst).acts)),
            }
            for way in trouble.ways[:3]
        ],
    }


def _lines(told: Rehearsal, numbers: tuple[int, ...]) -> list[str]:
    wrong = sum(o.result == "falls" for o in told.outcomes)
    lines = [
        f"{told.tried} slips rehearsed: {wrong} bring bands down; one maker makes {told.failures:.2f} of "
        f"those on average and loses {sum(told.heat):.1f} bands by all slips",
        f"heat  |{_strip(told.heat)}|",
        f"steps  {numbers[0] if numbers else 0:<{max(1, min(_STRIP, len(numbers)) - len(str(len(numbers))))}}"
        f"{numbers[-1] if numbers else 0}",
    ]
    if told.checks.after:
        after = ", ".join(str(numbers[at]) for at in told.checks.after)
        lines.append(
            f"stop and look after step {after}: saves {told.checks.saved:.1f} of {told.checks.lost:.1f} "
            f"bands; taken one by one, each time the best; "
            f"at least {told.checks.at_least:.0%} of the best possible"
        )
    if told.open:
        lines.append(f"{told.open} outcomes further down are left as not proved")
    return lines


def _strip(heat: tuple[float, ...]) -> str:
    """Draw what is lost at each step, or at so many steps in a row, as bars."""
    wide = min(_STRIP, len(heat))
    cells = [sum(heat[i * len(heat) // wide : (i + 1) * len(heat) // wide]) for i in range(wide)]
    most = max(cells, default=0.0) or 1.0
    return "".join(_HEAT[round(cell / most * (len(_HEAT) - 1))] for cell in cells)


def _trouble_lines(
    teller: Teller, told: Rehearsal, numbers: tuple[int, ...], place: int, trouble: Trouble
) -> list[str]:
    steps = sorted(numbers[spot.at] for spot in trouble.spots)
    worst = trouble.ways[0].worst
    move = move_label(told.history.done[worst.slip.at].doing.move)
    where = f"step {steps[0]}" if len(steps) == 1 else f"{len(steps)} steps, {steps[0]} to {steps[-1]}"
    lines = [
        f"{place}. {_doing(told, trouble)}, {where}: {trouble.expected:.2f} bands lost on average, "
        f"most at step {numbers[worst.slip.at]} ({move})"
    ]
    for way in trouble.ways[:2]:
        proved = "" if way.worst.slip in told.proved or way.worst.result == "harmless" else " (not proved)"
        lines.append(f"   {teller.slip(way.worst)} {teller.end(way.worst)}{proved} {teller.sign(way.worst)}")
    lines.append(f"   → {teller.warning(worst)}")
    return lines


def _doing(told: Rehearsal, trouble: Trouble) -> str:
    """Name what is being done at the steps of a trouble."""
    return _DOING[type(told.history.done[trouble.spots[0].at].doing.move)]


def _comparison(first: Rehearsal, second: Rehearsal) -> dict[str, Any]:
    both = compare(first, second)
    return {
        "failures": [round(n, 4) for n in both.failures],
        "lost": [round(n, 4) for n in both.lost],
        "better": both.better,
    }


def _comparison_line(first: Rehearsal, second: Rehearsal) -> str:
    both = compare(first, second)
    if both.failures[0] == both.failures[1]:
        return f"the other order fails as often: {both.failures[0]:.2f} slips that bring bands down"
    which = ("this order fails", "the other order fails")[both.better]
    low, high = sorted(both.failures)
    return (
        f"{which} less: {low:.2f} slips that bring bands down on average, not {high:.2f}; "
        f"bands lost here {both.lost[0]:.1f}, there {both.lost[1]:.1f}"
    )


def _pairs(sampled: Pairs, numbers: tuple[int, ...]) -> dict[str, Any]:
    return {
        "sampled": sampled.sampled,
        "results": sampled.results,
        "worse": [
            {
                "slips": [{"slip": one.kind, "step": numbers[one.at]} for one in (first, second)],
                "falls": list(outcome.falls),
            }
            for first, second, outcome in sampled.worse
        ],
    }


def _pairs_line(sampled: Pairs) -> str:
    results = ", ".join(f"{name} {count}" for name, count in sorted(sampled.results.items()))
    return (
        f"{sampled.sampled} pairs of slips: {results}; in {len(sampled.worse)} of them bands fall that fall "
        "with neither slip alone"
    )
