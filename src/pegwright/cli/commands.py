"""The commands. Each reads, calls the workshop, prints, and returns its exit code."""

from __future__ import annotations

import sys
import tempfile
import traceback
from pathlib import Path
from typing import Any

from cyclopts import App
from cyclopts.exceptions import CycloptsError
from rich.text import Text

from pegwright import __version__
from pegwright.cli import lessons, rehearse, views
from pegwright.cli.shared import Json, Stop, cannot, found, reason, refuse, table, worked
from pegwright.cli.terminal import (
    FAILED,
    FINE,
    FOUND,
    err,
    exit_code,
    out,
    progress,
    say,
    say_findings,
    say_json,
)
from pegwright.fit.packs import packs
from pegwright.fit.stash import read_stash
from pegwright.fit.supplies import for_class
from pegwright.pattern import schema, write
from pegwright.workshop import demo, read_bytes, starter, write_whole
from pegwright.workshop import losses as work_out_losses

app = App(
    name="pegwright",
    version=__version__,
    help="Design elastic-band pieces on a peg loom, prove that they hold, and teach them.",
    help_format="plaintext",
)
app.command(lessons.lesson_, name="lesson")
app.command(lessons.edit_, name="edit")
app.command(rehearse.rehearse_, name="rehearse")


@app.command
def new(
    file: Path, *, title: str = "", rows: int = 1, pegs: int = 13, force: bool = False, json: Json = False
) -> int:
    """Write a first pattern to change: a plain chain that holds.

    Parameters
    ----------
    file: where to write it.
    title: the name of the piece; without it, the file's name.
    rows: rows of the loom.
    pegs: pegs in a row.
    force: replace the file if there is one.
    """
    if file.exists() and not force:
        return cannot(f"{file} is there already; give another name, or --force to replace it", json)
    try:
        pattern = starter(title or file.stem.replace("-", " "), rows=rows, pegs=pegs)
        write_whole(file, write(pattern))
    except (ValueError, OSError) as error:
        return cannot(reason(error), json)
    if json:
        say_json({"ok": True, "file": str(file), "title": pattern.title})
    else:
        say(f"{file}: {pattern.title}, a plain chain of {pegs - 1} bands to begin with")
    return FINE


@app.command
def check(file: Path, *, losses: bool = False, json: Json = False) -> int:
    """Work the pattern, prove every band, and say all that was found.

    Parameters
    ----------
    file: the pattern document.
    losses: say also what falls if one band snaps, or if the last fastener misses a loop.
    """
    made = worked(file, json)
    lost = work_out_losses(made) if losses else None
    if json:
        more = {} if lost is None else views.losses(lost)
        value = {**views.verdict(made), **more, **found(made.findings)}
        say_json({"ok": exit_code(made.findings) == FINE, **value})
    else:
        say(made.pattern.title, style="bold")
        say_findings(made.findings)
        for line in [*views.verdict_lines(made), *(views.loss_lines(lost) if lost else ())]:
            say(line)
    return exit_code(made.findings)


@app.command
def show(file: Path, *, states: bool = False, json: Json = False) -> int:
    """Print every move in order, one line each.

    Parameters
    ----------
    file: the pattern document.
    states: print the loom after every move as well.
    """
    made = worked(file, json)
    if json:
        say_json({"ok": True, **views.moves(made), **found(made.findings)})
        return exit_code(made.findings)
    say(made.pattern.title, style="bold")
    for line in views.loom_lines(made):
        say(line, style="dim")
    for step in views.moves(made)["moves"]:
        say(f"{step['step']:>5}  {step['move']}" + (f"    — {step['note']}" if step["note"] else ""))
        if states:
            say(f"       {step['state']}", style="dim")
    say_findings(made.findings)
    return exit_code(made.findings)


@app.command
def supplies(
    file: Path, *, learners: int = 1, spare: float = 0.0, stash: Path | None = None, json: Json = False
) -> int:
    """Count bands, clips and tools, and weigh the heaps; with a stash, the packs to buy and their cost.

    Parameters
    ----------
    file: the pattern document.
    learners: how many people make one each.
    spare: spare bands and clips as a share, such as 0.1 for a tenth.
    stash: a document of your own with pack sizes and prices.
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
        say_json({"ok": True, **views.supplies(needs, shopping), **found(tuple(findings))})
        return exit_code(findings)
    say(made.pattern.title, style="bold")
    out.print(table(views.supply_rows(needs)))
    for line in views.tool_lines(needs):
        say(line)
    if shopping is not None:
        out.print(table(views.shopping_rows(shopping)))
        say(views.cost_line(shopping))
    say_findings(findings)
    return exit_code(findings)


@app.command(name="schema")
def schema_(*, json: Json = True) -> int:
    """Print the JSON Schema of the pattern document (always JSON)."""
    del json
    say_json(schema())
    return FINE


@app.command
def studio(folder: Path = Path(), *, port: int = 0, browser: bool = True) -> int:
    """Open the studio, where pieces are designed at the bench in a browser; nothing leaves this machine.

    Parameters
    ----------
    folder: where the pieces lie.
    port: the port to listen on; without it, a free one.
    browser: open the browser.
    """
    from pegwright.server import serve  # noqa: PLC0415 - the other commands start without a server

    try:
        serve(folder, port=port, browser=browser, say=say_address)
    except FileNotFoundError as error:
        return cannot(f"the studio's page is not built ({error}); run: make frontend", json=False)
    except OSError as error:
        return cannot(f"the studio cannot be opened: {reason(error)}", json=False)
    return FINE


@app.command(name="demo")
def demo_(folder: Path = Path("demo"), *, only: str = "", json: Json = False) -> int:
    """Run the main job on the built-in pieces and say what was made and where.

    Parameters
    ----------
    folder: where the lessons go, one folder a piece.
    only: some pieces by name, with commas between; without it, all.
    """
    rows: list[dict[str, Any]] = []
    try:
        with progress(json) as report:
            for made in demo(folder, report, [name for name in only.split(",") if name]):
                rows.append(
                    {
                        "piece": made.name,
                        "title": made.work.pattern.title,
                        **views.verdict(made.work),
                        "supplies": made.work.supplies.bands,
                        "files": [str(f) for f in made.files],
                    }
                )
    except OSError as error:
        return cannot(f"{folder} cannot be written to: {reason(error)}", json)
    except ValueError as error:
        return cannot(reason(error), json)
    if json:
        say_json({"ok": True, "pieces": rows})
        return FINE
    made_of: list[dict[str, str]] = [
        {
            "piece": row["title"],
            "bands": str(row["bands"]),
            "holds": "yes" if row["holds"] else f"no: {len(row['falls'])} fall",
            "made": f"{len(row['files'])} files" if row["files"] else "no lesson: it does not hold",
        }
        for row in rows
    ]
    out.print(table(made_of))
    say(f"{sum(bool(row['files']) for row in rows)} lessons in {folder.resolve()}, one folder a piece:")
    say("handouts, pictures, captions, a page to follow, a kit sheet for 12, and all of it in lesson.zip")
    return FINE


def say_address(address: str) -> None:
    """Print where the studio is, at once and in one piece, so that it can be read by another program."""
    print(address, flush=True)


def main(arguments: list[str] | None = None) -> None:
    """Run the command line and exit with 0 fine, 1 findings, 2 could not run. Never shows a stack trace."""
    try:
        code = app(arguments, exit_on_error=False, print_error=False, result_action="return_value")
        sys.exit(code if isinstance(code, int) else FINE)
    except Stop as stop:
        sys.exit(stop.code)
    except CycloptsError as error:
        err.print(Text(str(error)))
        err.print(Text("see: pegwright --help"))
        sys.exit(FAILED)
    except KeyboardInterrupt:
        err.print(Text("stopped"))
        sys.exit(FAILED)
    except BrokenPipeError:
        sys.stderr.close()
        sys.exit(FAILED)
    except Exception:  # the last net: the maker sees a sentence, the details go to a file
        with tempfile.NamedTemporaryFile(
            "w", prefix="pegwright-", suffix=".txt", delete=False, encoding="utf-8"
        ) as report:
            report.write(traceback.format_exc())
        err.print(Text(f"something went wrong inside pegwright; the details are in {report.name}"))
        sys.exit(FAILED)


__all__ = ["FOUND", "app", "main"]
