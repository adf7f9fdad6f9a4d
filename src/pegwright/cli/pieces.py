"""The commands about a piece: does it hold, how is it worked, what does it take."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from pegwright.cli import views
from pegwright.cli.shared import Json, Share, answer, cannot, load_work, reason, refuse, table
from pegwright.cli.terminal import FAILED, exit_code, out, progress, say, say_findings
from pegwright.finding import Finding, RefusedError
from pegwright.fit import choose_packs, find_loom_loads, read_stash, supplies_for_class
from pegwright.workshop import open_pattern, read_bytes

if TYPE_CHECKING:
    from pegwright.workshop import Work


def check(file: Path, *more: Path, losses: bool = False, json: Json = False) -> int:
    """Work the pattern, prove every band, and say all that was found.

    Parameters
    ----------
    file
        the pattern document.
    more
        further documents, to be checked in turn.
    losses
        say also what falls if one band snaps, or if the last fastener misses a loop.
    """
    if not more:
        checked = _check(load_work(file, json), losses, json)
        if json:
            return answer(checked.facts, checked.findings)
        return _say_checked(checked)
    from pegwright.finding import word_finding  # noqa: PLC0415 - slow to load
    from pegwright.workshop import work  # noqa: PLC0415 - the same

    codes: list[int] = []
    values: list[dict[str, Any]] = []
    for each in (file, *more):
        reading = open_pattern(each)
        if reading.pattern is None:
            codes.append(FAILED)
            values.append({"file": str(each), "findings": [word_finding(one) for one in reading.findings]})
            if not json:
                say_findings(reading.findings)
            continue
        with progress(json) as report:
            checked = _check(work(reading.pattern, report), losses, json)
        codes.append(exit_code(checked.findings))
        found = [word_finding(one) for one in checked.findings]
        values.append({"file": str(each), **checked.facts, "findings": found})
        if not json:
            _say_checked(checked)
    return answer({"pieces": values}, (), max(codes)) if json else max(codes)


class _Checked(NamedTuple):
    """What was found of one piece, as facts and as lines."""

    facts: dict[str, Any]
    findings: tuple[Finding, ...]
    lines: list[str]


def _check(made: Work, losses: bool, json: bool) -> _Checked:
    findings, facts, lines = made.findings, views.verdict(made), views.verdict_lines(made)
    if losses:
        from pegwright.judging import find_single_failures  # noqa: PLC0415 - brings numpy

        with progress(json) as report:
            lost = find_single_failures(made.structure, made.proof, report)
        if isinstance(lost, Finding):
            findings = (*findings, lost)
        else:
            facts |= views.losses(lost)
            lines += views.loss_lines(lost)
    return _Checked(facts, findings, lines)


def _say_checked(checked: _Checked) -> int:
    say(checked.facts["title"], style="bold")
    say_findings(checked.findings)
    for line in checked.lines:
        say(line)
    return exit_code(checked.findings)


def show(file: Path, *, states: bool = False, forces: bool = False, json: Json = False) -> int:
    """Print every move in order, one line each.

    Parameters
    ----------
    file
        the pattern document.
    states
        print the loom after every move as well.
    forces
        print how far every move stretches the bands, and what the pegs then bear.
    """
    made = load_work(file, json)
    document = views.moves(made, states=states)
    pulls = (
        views.forces(find_loom_loads(made.pattern, made.history), len(document["moves"])) if forces else []
    )
    if json:
        for at, pull in enumerate(pulls):
            document["moves"][at].update(pull)
        return answer(document, made.findings)
    say(made.pattern.title, style="bold")
    for line in views.loom_lines(made):
        say(line, style="dim")
    for at, step in enumerate(document["moves"]):
        say(f"{step['step']:>5}  {step['move']}" + (f"    — {step['note']}" if step["note"] else ""))
        if states:
            say(f"       {step['state']}", style="dim")
        for line in views.force_lines(pulls[at]) if forces else ():
            say(f"       {line}", style="dim")
    say_findings(made.findings)
    return exit_code(made.findings)


def supplies(
    file: Path, *, learners: int = 1, spare: Share = 0.0, stash: Path | None = None, json: Json = False
) -> int:
    """Count bands, clips and tools, and weigh the heaps; with a stash, the packs to buy and their cost.

    Parameters
    ----------
    file
        the pattern document.
    learners
        how many people make one each.
    spare
        spare bands and clips as a share, such as 10% or 0.1.
    stash
        a document of your own with pack sizes and prices.
    """
    made = load_work(file, json)
    findings = list(made.findings)
    try:
        needs = supplies_for_class(made.supplies, learners, spare)
    except RefusedError as error:
        return cannot(reason(error), json)
    shopping = None
    if stash is not None:
        data = read_bytes(stash)
        if not isinstance(data, bytes):
            return refuse(data.findings, json)
        reading = read_stash(data)
        findings += reading.findings
        if reading.stash is None:
            return refuse(reading.findings, json)
        shopping = choose_packs(needs, reading.stash)
        findings += shopping.findings
    if json:
        return answer(views.supplies(needs, shopping), tuple(findings))
    say(made.pattern.title, style="bold")
    out.print(table(views.supply_rows(needs)))
    for line in views.tool_lines(needs):
        say(line)
    if shopping is not None:
        out.print(table(views.shopping_rows(shopping)))
        say(views.cost_line(shopping))
    say_findings(findings)
    return exit_code(findings)
