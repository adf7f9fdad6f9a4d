"""The command that rehearses: where makers will go wrong, what comes of it, and where to stop and look."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pegwright.cli.shared import Json, answer, cannot, load_work, reason, refuse
from pegwright.cli.terminal import exit_code, progress, say, say_findings
from pegwright.finding import Language, RefusedError, phrase
from pegwright.lesson import MistakeWriter, Phrasebook, move_label
from pegwright.loom import step_numbers
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
    Put,
    Slide,
    Transfer,
    Turn,
    Wind,
)
from pegwright.rehearsal import Rehearsal, SlipPairs, Trouble, compare_orders, find_way_back, rehearse_pairs
from pegwright.workshop import Work, picture_wrong_piece, read_weight_files, rehearse_piece, replace_file

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
    Put: "putting an end on pegs",
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
    table = read_weight_files(likelihood, seen)
    if table.weights is None:
        return refuse(table.findings, json, language)
    made = load_work(file, json, language)
    other = load_work(against, json, language) if against else None
    with progress(json) as report:
        rehearsal = rehearse_piece(made, table.weights, checks=checks, progress=report, kept=keep)
        second = (
            rehearse_piece(other, table.weights, checks=checks, progress=report, kept=keep) if other else None
        )
        sampled = rehearse_pairs(rehearsal, count=pairs, seed=seed, progress=report) if pairs else None
    findings = (*made.findings, *(other.findings if other else ()))
    numbers = step_numbers(rehearsal.history)
    writer = MistakeWriter(Phrasebook(language), rehearsal.history, numbers.__getitem__)
    try:
        shown = (
            _write_picture(file, made, rehearsal, picture, language=language, json=json) if picture else None
        )
    except (RefusedError, OSError) as error:
        return cannot(reason(error, language), json)
    if json:
        value = {
            **_facts(rehearsal, numbers),
            "troubles": [_trouble(writer, rehearsal, numbers, one) for one in rehearsal.troubles[:top]],
        }
        if second:
            value["against"] = {"file": str(against), **_comparison(rehearsal, second)}
        if sampled:
            value["pairs"] = _pairs(sampled, numbers)
        if shown:
            value["picture"] = {"name": str(shown[0]), "at_rest": shown[1]}
        return answer(value, findings, language=language)
    say(rehearsal.title, style="bold")
    for line in _lines(rehearsal, numbers):
        say(line)
    for number, one in enumerate(rehearsal.troubles[:top], start=1):
        say()
        for line in _trouble_lines(writer, rehearsal, numbers, number, one):
            say(line)
    if second:
        say()
        say(_comparison_line(rehearsal, second))
    if sampled:
        say()
        say(_pairs_line(sampled))
    if shown:
        say()
        say(f"trouble {picture}, {'at rest' if shown[1] else 'on the loom'}: {shown[0]}")
    say_findings(findings, language)
    return exit_code(findings)


def _write_picture(
    file: Path, made: Work, rehearsal: Rehearsal, number: int, *, language: str, json: bool
) -> tuple[Path, bool]:
    """Write the picture of a trouble spot; return its file, and whether it shows the pieces at rest.

    Raises:
        RefusedError: there is no such trouble spot, or nothing shows.
        OSError: the file cannot be written.
    """
    if not 0 < number <= len(rehearsal.troubles):
        raise RefusedError(phrase("no-such-trouble", count=len(rehearsal.troubles), number=number))
    with progress(json) as report:
        found = picture_wrong_piece(
            made, rehearsal, rehearsal.troubles[number - 1].failure_modes[0].worst, language, report
        )
    if found is None:
        raise RefusedError(phrase("trouble-not-seen", number=number))
    target = file.with_name(f"{file.stem}-trouble-{number}.svg")
    replace_file(target, found.svg.encode())
    return target, found.at_rest


def _facts(rehearsal: Rehearsal, numbers: tuple[int, ...]) -> dict[str, Any]:
    return {
        "title": rehearsal.title,
        "slips": rehearsal.tried,
        "outcomes": {
            result: sum(o.result == result for o in rehearsal.outcomes)
            for result in ("falls", "not-proved", "weak", "looks-different", "harmless")
        },
        "not_settled": rehearsal.open,
        "failures": round(rehearsal.failures, 4),
        "lost": round(sum(rehearsal.heat), 4),
        "heat": [
            {"step": number, "lost": round(lost, 5)}
            for number, lost in zip(numbers, rehearsal.heat, strict=True)
        ],
        "checks": {
            "after": [numbers[at] for at in rehearsal.checks.after],
            "saved": round(rehearsal.checks.saved, 4),
            "at_least": round(rehearsal.checks.at_least, 4),
            "method": "the best next check each time; greedy choice for a submodular saving",
        },
    }


def _trouble(
    writer: MistakeWriter, rehearsal: Rehearsal, numbers: tuple[int, ...], trouble: Trouble
) -> dict[str, Any]:
    return {
        "paths": list(trouble.paths),
        "steps": sorted(numbers[spot.at] for spot in trouble.risky_steps),
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
                "proved": way.worst.slip in rehearsal.proved,
                "goes_wrong": writer.slip(way.worst),
                "comes_of_it": writer.end(way.worst),
                "shows": writer.sign(way.worst),
                "warning": writer.warning(way.worst),
                "way_back": list(writer.back(find_way_back(rehearsal.history, way.worst).acts)),
            }
            for way in trouble.failure_modes[:3]
        ],
    }


def _lines(rehearsal: Rehearsal, numbers: tuple[int, ...]) -> list[str]:
    wrong = sum(o.result == "falls" for o in rehearsal.outcomes)
    lines = [
        f"{rehearsal.tried} slips rehearsed: {wrong} bring bands down; one maker makes "
        f"{rehearsal.failures:.2f} of those on average and loses "
        f"{sum(rehearsal.heat):.1f} bands by all slips",
        f"heat  |{_strip(rehearsal.heat)}|",
        f"steps  {numbers[0] if numbers else 0:<{max(1, min(_STRIP, len(numbers)) - len(str(len(numbers))))}}"
        f"{numbers[-1] if numbers else 0}",
    ]
    checks = rehearsal.checks
    if checks.after:
        after = ", ".join(str(numbers[at]) for at in checks.after)
        lines.append(
            f"stop and look after step {after}: saves {checks.saved:.1f} of {checks.lost:.1f} "
            f"bands; taken one by one, each time the best; "
            f"at least {checks.at_least:.0%} of the best possible"
        )
    if rehearsal.open:
        lines.append(f"{rehearsal.open} outcomes further down are left as not proved")
    return lines


def _strip(heat: tuple[float, ...]) -> str:
    """Draw what is lost at each step, or at so many steps in a row, as bars."""
    wide = min(_STRIP, len(heat))
    cells = [sum(heat[i * len(heat) // wide : (i + 1) * len(heat) // wide]) for i in range(wide)]
    most = max(cells, default=0.0) or 1.0
    return "".join(_HEAT[round(cell / most * (len(_HEAT) - 1))] for cell in cells)


def _trouble_lines(
    writer: MistakeWriter, rehearsal: Rehearsal, numbers: tuple[int, ...], place: int, trouble: Trouble
) -> list[str]:
    steps = sorted(numbers[spot.at] for spot in trouble.risky_steps)
    worst = trouble.failure_modes[0].worst
    move = move_label(rehearsal.history.moves[worst.slip.at].move)
    where = f"step {steps[0]}" if len(steps) == 1 else f"{len(steps)} steps, {steps[0]} to {steps[-1]}"
    lines = [
        f"{place}. {_doing(rehearsal, trouble)}, {where}: {trouble.expected:.2f} bands lost on average, "
        f"most at step {numbers[worst.slip.at]} ({move})"
    ]
    for way in trouble.failure_modes[:2]:
        proved = (
            "" if way.worst.slip in rehearsal.proved or way.worst.result == "harmless" else " (not proved)"
        )
        lines.append(f"   {writer.slip(way.worst)} {writer.end(way.worst)}{proved} {writer.sign(way.worst)}")
    lines.append(f"   → {writer.warning(worst)}")
    return lines


def _doing(rehearsal: Rehearsal, trouble: Trouble) -> str:
    """Name what is being done at the steps of a trouble."""
    return _DOING[type(rehearsal.history.moves[trouble.risky_steps[0].at].move)]


def _comparison(first: Rehearsal, second: Rehearsal) -> dict[str, Any]:
    both = compare_orders(first, second)
    return {
        "failures": [round(n, 4) for n in both.failures],
        "lost": [round(n, 4) for n in both.lost],
        "better": both.better,
    }


def _comparison_line(first: Rehearsal, second: Rehearsal) -> str:
    both = compare_orders(first, second)
    if both.failures[0] == both.failures[1]:
        return f"the other order fails as often: {both.failures[0]:.2f} slips that bring bands down"
    which = ("this order fails", "the other order fails")[both.better]
    low, high = sorted(both.failures)
    return (
        f"{which} less: {low:.2f} slips that bring bands down on average, not {high:.2f}; "
        f"bands lost here {both.lost[0]:.1f}, there {both.lost[1]:.1f}"
    )


def _pairs(sampled: SlipPairs, numbers: tuple[int, ...]) -> dict[str, Any]:
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


def _pairs_line(sampled: SlipPairs) -> str:
    results = ", ".join(f"{name} {count}" for name, count in sorted(sampled.results.items()))
    return (
        f"{sampled.sampled} pairs of slips: {results}; in {len(sampled.worse)} of them bands fall that fall "
        "with neither slip alone"
    )
