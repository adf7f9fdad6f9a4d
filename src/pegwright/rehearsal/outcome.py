"""What comes of a slip: what happens to the piece, and when the maker could first have seen it."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby
from typing import Literal, NamedTuple

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Lifted, step_numbers
from pegwright.proof import find_first_loose
from pegwright.rehearsal.judge import Judge, SlipVerdict
from pegwright.rehearsal.prepared_history import PreparedHistory
from pegwright.rehearsal.slip_run import SlipRun
from pegwright.rehearsal.slips import Slip

__all__ = ["Outcome", "Result", "Symptom", "outcome_of", "with_loose_band"]

Result = Literal["harmless", "looks-different", "weak", "not-proved", "falls"]


class Symptom(NamedTuple):
    """What shows after the move of index `at`, on which holder: colour letters, bottom loop first.

    `how` says how closely one must look: `refused`: a move cannot be made; `glance`: the number or the
    colours of the loops on a peg; `close`: the ribbons that run through the loops on it (`wrong` and `right`
    are then the letters of the ribbons through one of its loops); `loose`: all looks right, but `band` comes
    off when tugged at.
    """

    at: int
    step: int
    how: Literal["refused", "glance", "close", "loose"]
    holder: str
    wrong: tuple[str, ...] = ()
    right: tuple[str, ...] = ()
    band: int = 0


class Outcome(NamedTuple):
    """A slip and what comes of it. Bands are numbered as in the intended piece.

    `step` is the number of the slip's step as the maker counts, `falls` the bands that fall though they were
    held, `unproved` those about which nothing is proved any more, `weak` those that bring the whole piece
    down if they snap and did not before, `differs` those that lie or pass otherwise, are missing or of
    another colour. `first` is the first sign seen at a glance or by a move that cannot be made; `close` an
    earlier or only sign for who looks closely. `shows` are the runs of steps (index from, index past the
    last) after which a glance tells wrong from right. `stuck` is the first later move (index) that cannot be
    made; the maker is taken to leave it out and go on.
    """

    slip: Slip
    step: int
    result: Result
    falls: tuple[int, ...] = ()
    unproved: tuple[int, ...] = ()
    weak: tuple[int, ...] = ()
    differs: tuple[int, ...] = ()
    first: Symptom | None = None
    close: Symptom | None = None
    shows: tuple[tuple[int, int], ...] = ()
    stuck: int | None = None

    @property
    def harmful(self) -> bool:
        """Whether the piece is worse for it than in its looks."""
        return self.result in ("falls", "not-proved", "weak")


def outcome_of(
    prepared: PreparedHistory,
    judge: Judge,
    run: SlipRun,
    proved: SlipVerdict | None = None,
    thorough: bool = False,
) -> Outcome | None:
    """Classify a run, or return None where it comes to the intended piece and loom.

    Where none of the slip's moves can be made there is no slip: the maker is stopped at once. `proved` is a
    verdict to take in place of the judge's own.
    """
    if not run.wrong and any(slip.moves for slip in run.slips):
        return None
    fastened = any(
        changes.roots != prepared.word_changes[at].roots for at, changes in run.word_changes.items()
    )
    if not (run.stacks or run.inside or run.colours or run.factors or run.refused or fastened):
        return None
    slip = run.slips[0]
    verdict, intended = proved or judge.judge_run(run, thorough), judge.intended
    total = prepared.history.final.bands
    falls = tuple(sorted(b for b in verdict.falls - intended.falls if b <= total))
    unproved = tuple(sorted(b for b in verdict.unproved - intended.unproved - intended.falls if b <= total))
    weak = tuple(sorted(b for b in verdict.keystones - intended.keystones if b <= total))
    differs = _differing_bands(prepared, run)
    result: Result = "harmless"
    if falls:
        result = "falls"
    elif unproved:
        result = "not-proved"
    elif weak:
        result = "weak"
    elif differs:
        result = "looks-different"
    numbers = step_numbers(prepared.history)
    first, close, shows = _symptoms(prepared, run, numbers)
    stuck = next((at for at in run.refused if at not in _own_steps(run)), None)
    return Outcome(slip, numbers[slip.at], result, falls, unproved, weak, differs, first, close, shows, stuck)


def with_loose_band(prepared: PreparedHistory, run: SlipRun, outcome: Outcome) -> Outcome:
    """Add which band comes off on the loom first, to an outcome of which nothing else shows there."""
    if outcome.result != "falls" or outcome.first or outcome.close:
        return outcome
    history = prepared.history
    moves = [run.made.get(at, done.events) for at, done in enumerate(history.moves)]
    loose = find_first_loose(moves, history.board.spots, frozenset(range(1, history.final.bands + 1)))
    if loose is None:
        return outcome
    at = _last_step_of_slip(run, loose.at)
    return outcome._replace(close=Symptom(at, step_numbers(history)[at], "loose", "", band=loose.band))


def _caught_bands(events: Iterable[Event]) -> set[int]:
    return {loop.band for event in events if isinstance(event, Fastened) for loop in event.caught}


def _own_steps(run: SlipRun) -> set[int]:
    return {at for slip in run.slips for at in range(slip.at, slip.at + slip.replaces)}


def _differing_bands(prepared: PreparedHistory, run: SlipRun) -> tuple[int, ...]:
    """Return the bands of which another ribbon, or none, runs through a loop, or that are not as intended."""
    intended = prepared.history.final.inside
    found = set(run.colours)
    order: set[int] = set()
    for loop, ribbons in run.inside.items():
        meant = intended.get(loop, ())
        other = set(ribbons).symmetric_difference(meant)
        if other:
            found.add(loop.band)
            found.update(ribbon.band for ribbon in other)
        else:
            order.update(ribbon.band for ribbon in ribbons)
    laid = {e.band for at in run.made for e in prepared.history.moves[at].events if isinstance(e, Laid)}
    found |= laid ^ {e.band for events in run.made.values() for e in events if isinstance(e, Laid)}
    for at, changes in run.word_changes.items():
        if changes.roots != prepared.word_changes[at].roots:
            order.update(_caught_bands(run.made[at]) ^ _caught_bands(prepared.history.moves[at].events))
    if not found and (run.factors or order):
        found = order or {loop.band for loop in run.factors}
    return tuple(sorted(found))


def _symptoms(
    prepared: PreparedHistory, run: SlipRun, numbers: tuple[int, ...]
) -> tuple[Symptom | None, Symptom | None, tuple[tuple[int, int], ...]]:
    """Return the first sign at a glance or by a refusal, the first on a close look, and when it shows."""
    history, own = prepared.history, _own_steps(run)
    end = next((at for at in run.refused if at not in own), None)

    def letter(loop: Bight) -> str:
        return run.colours.get(loop.band) or history.colours[loop.band - 1]

    def name_loop(loop: Bight) -> str:
        return history.colours[loop.band - 1]

    glance: list[Symptom] = []
    close: Symptom | None = None
    shows: list[tuple[int, int]] = []
    odd: set[str] = set()
    since: int | None = None
    for at, changed in groupby(run.changes, key=lambda change: change.at):
        last = _last_step_of_slip(run, at)
        after = history.moves[last].after
        for _, where, loops in changed:
            intended = after.stack(where) if isinstance(where, str) else after.inside.get(where, ())
            wrong = right = tuple(map(name_loop, intended))
            if loops is not None:
                wrong = tuple(map(letter, loops))
            if isinstance(where, Bight):
                if wrong != right and close is None:
                    holder = _holder_seen((*run.made.get(at, ()), *history.moves[at].events), where)
                    close = Symptom(last, numbers[last], "close", holder, wrong, right)
            elif wrong != right:
                odd.add(where)
                glance.append(Symptom(last, numbers[last], "glance", where, wrong, right))
            else:
                odd.discard(where)
        if odd and since is None:
            since = last
        elif not odd and since is not None:
            shows.append((since, last))
            since = None
    if since is not None:
        shows.append((since, len(history.moves)))
    first = glance[0] if glance else None
    if end is not None and (first is None or end <= first.at):
        first = Symptom(end, numbers[end], "refused", "")
    return first, close if close and (first is None or close.at < first.at) else None, tuple(shows)


def _last_step_of_slip(run: SlipRun, at: int) -> int:
    return next((slip.at + slip.replaces - 1 for slip in run.slips if slip.at == at), at)


def _holder_seen(events: tuple[Event, ...], loop: Bight) -> str:
    for event in events:
        if isinstance(event, Drawn) and loop in event.through:
            return event.source
        if isinstance(event, Lifted) and loop == event.bight:
            return event.holder
    return ""
