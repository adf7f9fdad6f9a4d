"""The command that runs the demo."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from pegwright.cli import views
from pegwright.cli.shared import Json, answer, cannot, reason, table
from pegwright.cli.terminal import FINE, out, progress, say
from pegwright.finding import RefusedError
from pegwright.lesson import MistakeWriter, Phrasebook
from pegwright.loom import step_numbers
from pegwright.workshop import run_demo

if TYPE_CHECKING:
    from pegwright.rehearsal import Rehearsal
    from pegwright.workshop import DemoPiece


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
            for made in run_demo(folder, report, [name for name in only.split(",") if name]):
                rows.append(_row(made))
    except OSError as error:
        return cannot(f"{folder} cannot be written to: {reason(error)}", json)
    except RefusedError as error:
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
    for row in rows:
        if row["files"]:
            say()
            say(row["title"], style="bold")
            say(f"  {_size_line(row)}")
            say(f"  {_worst_line(row)}")
    say()
    say(f"{sum(bool(row['files']) for row in rows)} lessons in {folder.resolve()}, one folder a piece:")
    say("handouts, pictures, captions, a page to follow, a kit sheet for 12, and all of it in lesson.zip")
    return FINE


def _row(made: DemoPiece) -> dict[str, Any]:
    """Return what the demo made of a piece, as data."""
    portrait, suited = made.finish.portrait, made.suited
    fit = suited.fit if suited else None
    return {
        "piece": made.name,
        "title": made.work.pattern.title,
        **views.verdict(made.work),
        "supplies": made.work.supplies.bands,
        "length_mm": portrait.length_mm if portrait else None,
        "width_mm": portrait.width_mm if portrait else None,
        "height_mm": portrait.height_mm if portrait else None,
        "wrists_mm": fit.wrists_mm if fit else None,
        "wrist_mm": suited.wrist.girth_mm if suited and suited.wrist else None,
        "more_bands": _more_bands(made),
        "worst": _worst(made.rehearsal),
        "files": [str(f) for f in made.files],
    }


def _more_bands(made: DemoPiece) -> int | None:
    """Return how many bands more the wrist of the demo asks for; None where no number of them suits it."""
    suited, measured, lengths = made.suited, made.finish.measured, made.finish.lengths
    if suited is None or suited.fit is None or suited.wrist is None or measured is None:
        return None
    low, high = suited.fit.wrists_mm or (0.0, 0.0)
    if low <= suited.wrist.girth_mm <= high:
        return 0
    if suited.plan is None or suited.plan.findings:
        return None
    repeats = (suited.plan.repeats - lengths.now) * lengths.bands if lengths else 0
    return repeats + suited.plan.extension - measured.extension


def _worst(rehearsal: Rehearsal | None) -> dict[str, Any] | None:
    """Return where makers go wrong most, and how."""
    if rehearsal is None or not rehearsal.troubles:
        return None
    trouble = rehearsal.troubles[0]
    numbers = step_numbers(rehearsal.history)
    outcome = trouble.failure_modes[0].worst
    return {
        "step": numbers[outcome.slip.at],
        "steps": sorted(numbers[spot.at] for spot in trouble.risky_steps),
        "lost": round(trouble.expected, 4),
        "goes_wrong": MistakeWriter(Phrasebook("en"), rehearsal.history, numbers.__getitem__).slip(outcome),
    }


def _size_line(row: dict[str, Any]) -> str:
    if row["length_mm"] is None:
        return "not brought to rest: no picture of it"
    size = f"{row['length_mm']:.0f} mm long, {row['width_mm']:.0f} mm wide, {row['height_mm']:.0f} mm thick"
    if row["wrist_mm"] is None:
        return f"{size} at rest; not made to go round a wrist"
    wrist = f"a wrist of {row['wrist_mm'] / 10:g} cm"
    if row["wrists_mm"] is not None:
        size += f"; suits wrists of {row['wrists_mm'][0] / 10:.1f} to {row['wrists_mm'][1] / 10:.1f} cm"
    match row["more_bands"]:
        case None if row["length_mm"] > row["wrist_mm"]:
            return f"{size}; too long for {wrist}: work fewer repeats"
        case None:
            return f"{size}; no number of bands makes it suit {wrist}"
        case 0:
            return f"{size}; suits {wrist} as it is"
        case more:
            bands = "1 band" if abs(more) == 1 else f"{abs(more)} bands"
            return f"{size}; for {wrist} it needs {bands} {'more' if more > 0 else 'fewer'}"


def _worst_line(row: dict[str, Any]) -> str:
    worst = row["worst"]
    if worst is None:
        return "nothing that goes wrong was found"
    first, last = worst["steps"][0], worst["steps"][-1]
    where = f"step {first}" if first == last else f"steps {first} to {last}"
    return f"goes wrong most at {where}, worst at {worst['step']}: {worst['goes_wrong']}"
