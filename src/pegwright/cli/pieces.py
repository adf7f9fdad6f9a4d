"""The commands about a piece: does it hold, how is it worked, what does it take."""

from __future__ import annotations

from pathlib import Path

from pegwright.cli import views
from pegwright.cli.shared import Json, answer, cannot, reason, refuse, table, worked
from pegwright.cli.terminal import exit_code, out, progress, say, say_findings
from pegwright.finding import Finding
from pegwright.fit.on_loom import on_loom
from pegwright.fit.packs import packs
from pegwright.fit.stash import read_stash
from pegwright.fit.supplies import for_class
from pegwright.workshop import Losses, read_bytes
from pegwright.workshop import losses as work_out_losses


def check(file: Path, *, losses: bool = False, json: Json = False) -> int:
    """Work the pattern, prove every band, and say all that was found.

    Parameters
    ----------
    file
        the pattern document.
    losses
        say also what falls if one band snaps, or if the last fastener misses a loop.
    """
    made = worked(file, json)
    findings = made.findings
    lost: Losses | None = None
    if losses:
        with progress(json) as report:
            worked_out = work_out_losses(made, report)
        if isinstance(worked_out, Finding):
            findings = (*findings, worked_out)
        else:
            lost = worked_out
    if json:
        more = {} if lost is None else views.losses(lost)
        return answer({**views.verdict(made), **more}, findings)
    say(made.pattern.title, style="bold")
    say_findings(findings)
    for line in [*views.verdict_lines(made), *(views.loss_lines(lost) if lost else ())]:
        say(line)
    return exit_code(findings)


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
    made = worked(file, json)
    told = views.moves(made)
    pulls = views.forces(on_loom(made.pattern, made.history), len(told["moves"])) if forces else []
    if json:
        for at, pull in enumerate(pulls):
            told["moves"][at].update(pull)
        return answer(told, made.findings)
    say(made.pattern.title, style="bold")
    for line in views.loom_lines(made):
        say(line, style="dim")
    for at, step in enumerate(told["moves"]):
        say(f"{step['step']:>5}  {step['move']}" + (f"    — {step['note']}" if step["note"] else ""))
        if states:
            say(f"       {step['state']}", style="dim")
        for line in views.force_lines(pulls[at]) if forces else ():
            say(f"       {line}", style="dim")
    say_findings(made.findings)
    return exit_code(made.findings)


def supplies(
    file: Path, *, learners: int = 1, spare: float = 0.0, stash: Path | None = None, json: Json = False
) -> int:
    """Count bands, clips and tools, and weigh the heaps; with a stash, the packs to buy and their cost.

    Parameters
    ----------
    file
        the pattern document.
    learners
        how many people make one each.
    spare
        spare bands and clips as a share, such as 0.1 for a tenth.
    stash
        a document of your own with pack sizes and prices.
    """
    made = worked(file, json)
    findings = list(made.findings)
    try:
        needs = for_class(made.supplies, learners, spare)
    except ValueError as error:
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
        shopping = packs(needs, reading.stash)
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
