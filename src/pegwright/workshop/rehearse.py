"""The rehearsal of a worked piece: in two processes, with progress, kept until the piece changes."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path
from typing import NamedTuple

import msgspec

from pegwright import __version__
from pegwright.finding import Finding
from pegwright.pattern import write
from pegwright.rehearsal import (
    DEFAULT,
    Outcome,
    Rehearsal,
    Slip,
    Weights,
    read_weights,
    rehearse,
    write_weights,
)
from pegwright.rehearsal.checks import choose_checks
from pegwright.rehearsal.likelihood import chances
from pegwright.rehearsal.ranking import heat, rank
from pegwright.rehearsal.slips import find_slips
from pegwright.workshop.files import read_bytes, write_whole
from pegwright.workshop.line import Work
from pegwright.workshop.progress import Progress, silent

SETTLED = 60
_KEPT = 1


class Table(NamedTuple):
    """A teacher's weights, or None where a file of them cannot be used, and what was found."""

    weights: Weights | None
    findings: tuple[Finding, ...]


class _Kept(msgspec.Struct, frozen=True, kw_only=True):
    tried: int
    judged: int
    open: int
    outcomes: tuple[Outcome, ...]
    proved: tuple[Slip, ...]


def weights_from(likelihood: Path | None, seen: Path | None) -> Table:
    """Read a table of likelihoods and, from another file of the same form, what was seen in class.

    Of the second only `seen` counts; it is added to what the first has seen.
    """
    weights = DEFAULT
    for file in (likelihood, seen):
        if file is None:
            continue
        data = read_bytes(file)
        reading = read_weights(data) if isinstance(data, bytes) else None
        if reading is None or reading.weights is None:
            return Table(None, data.findings if reading is None else reading.findings)  # type: ignore[union-attr]
        more = reading.weights
        if file is seen:
            more = msgspec.structs.replace(weights, seen=(*weights.seen, *more.seen))
        weights = more
    return Table(weights, ())


def rehearsed(
    made: Work,
    weights: Weights = DEFAULT,
    *,
    checks: int = 3,
    progress: Progress = silent,
    processes: int = 2,
    folder: Path | None = None,
) -> Rehearsal:
    """Rehearse a piece. With a folder what was found is kept there, and read again while the piece stays.

    A kept file that cannot be read, or a folder that cannot be written to, only costs the time anew.
    """
    file = folder / f"{_mark(made, weights)}.json" if folder else None
    found = _read(made, weights, checks, file) if file else None
    if found is not None:
        return found
    told = rehearse(
        made.pattern,
        made.history,
        weights=weights,
        progress=progress,
        checks=checks,
        settle=SETTLED,
        processes=min(processes, os.cpu_count() or 1),
    )
    if file:
        _keep(told, file)
    return told


def kept_folder() -> Path:
    """Return where rehearsals are kept on this machine (XDG Base Directory Specification 0.8)."""
    given = os.environ.get("XDG_CACHE_HOME", "")
    base = Path(given) if Path(given).is_absolute() else Path.home() / ".cache"
    return base / "pegwright" / "rehearsals"


def _mark(made: Work, weights: Weights) -> str:
    parts = (f"{__version__} {_KEPT} {SETTLED}".encode(), write(made.pattern), write_weights(weights))
    return hashlib.sha256(b"\0".join(parts)).hexdigest()[:32]


def _keep(told: Rehearsal, file: Path) -> None:
    kept = _Kept(
        tried=told.tried,
        judged=told.judged,
        open=told.open,
        outcomes=told.outcomes,
        proved=tuple(sorted(told.proved, key=str)),
    )
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        write_whole(file, msgspec.json.encode(kept))
    except OSError:
        return


def _read(made: Work, weights: Weights, checks: int, file: Path) -> Rehearsal | None:
    try:
        kept = msgspec.json.decode(file.read_bytes(), type=_Kept)
    except (OSError, msgspec.DecodeError, msgspec.ValidationError, UnicodeDecodeError):
        return None
    likely = chances(weights, find_slips(made.history))
    if len(likely) != kept.tried or not all(outcome.slip in likely for outcome in kept.outcomes):
        return None
    steps = len(made.history.done)
    spots = rank(kept.outcomes, likely, made.history.final.bands)
    risks = [risk for spot in spots for risk in spot.risks]
    return Rehearsal(
        made.pattern.title,
        made.history,
        kept.tried,
        kept.outcomes,
        likely,
        spots,
        heat(spots, steps),
        choose_checks(risks, steps, checks),
        kept.judged,
        kept.open,
        frozenset(kept.proved),
    )
