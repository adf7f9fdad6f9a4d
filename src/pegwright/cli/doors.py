"""The commands that open the studio and run the demo."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pegwright.cli import views
from pegwright.cli.shared import Json, answer, cannot, reason, table
from pegwright.cli.terminal import FINE, out, progress, say
from pegwright.workshop import demo


def studio(folder: Path = Path(), *, port: int = 0, browser: bool = True) -> int:
    """Open the studio, where pieces are designed at the bench in a browser; nothing leaves this machine.

    Parameters
    ----------
    folder
        where the pieces lie.
    port
        the port to listen on; without it, a free one.
    browser
        open the browser.
    """
    from pegwright.server import serve  # noqa: PLC0415 - the other commands start without a server

    try:
        serve(folder, port=port, browser=browser, say=say_address)
    except FileNotFoundError as error:
        return cannot(f"the studio's page is not built ({error}); run: make frontend", json=False)
    except OSError as error:
        return cannot(f"the studio cannot be opened: {reason(error)}", json=False)
    return FINE


def demo_(folder: Path = Path("demo"), *, only: str = "", json: Json = False) -> int:
    """Run the main job on the built-in pieces and say what was made and where.

    Parameters
    ----------
    folder
        where the lessons go, one folder a piece.
    only
        some pieces by name, with commas between; without it, all.
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
        return answer({"pieces": rows})
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
