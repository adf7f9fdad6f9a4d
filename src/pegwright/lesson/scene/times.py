"""How long a move takes: a trained hand by predetermined motion times, a learner by the teacher's own watch.

A move is built from basic motions of MTM-1 (1 TMU = 0.00001 h = 0.036 s). Grasp G, turn T and eye focus EF
are values of the MTM-1 data card; reach R, move M, position P, release RL, disengage D and apply pressure AP
are the card's values from memory. How a move is put together from motions is ours: common practice, no
source.

A learner's n-th round takes n^b times as long as the first, b = log2(rate) (Crawford's unit curve), and never
less than the teacher's. Rate 0.80 is the guide value for mostly manual assembly. Beginners are slower still
with the hook than with their fingers, so for them hooking takes longer than placing.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence

import msgspec

from pegwright.finding import RefusedError, phrase
from pegwright.loom import AppliedMove, Board, Drawn, Fastened, History, Laid, Lifted, Moved
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

TMU_S = 0.036

REACH_C = {0.75: 2.0, 1: 3.6, 2: 5.9, 4: 8.4, 6: 10.1, 8: 11.5, 10: 12.9, 12: 14.2}
"""Reach into a heap, TMU by inches."""
MOVE_B = {0.75: 2.0, 1: 2.9, 2: 4.6, 4: 6.9, 6: 8.9, 8: 10.6, 10: 12.2, 12: 13.4}
"""Move to about a place, TMU by inches; the first entry is that of the shortest reach."""
MOVE_C = {0.75: 2.0, 1: 3.4, 2: 5.2, 4: 8.0, 6: 10.3, 8: 11.8, 10: 13.5, 12: 15.2}
"""Move to an exact place, TMU by inches."""
G1A, G3, G4B, G4C = 2.0, 5.6, 9.1, 12.9
P1NSD, P2SE, P2SD = 16.0, 16.2, 21.8
T30S, T180S = 2.8, 9.4
EF = 7.3
RL1 = 2.0
D1E, D2E = 4.0, 7.5
APA, APB = 10.6, 16.2

HEAP_IN = 10
_TABLES = {"R": REACH_C, "MB": MOVE_B, "MC": MOVE_C}
_INCH_MM = 25.4
_DEEP = 2
"""From so many loops above on, pulling a loop out takes a second-degree disengage."""

PREPARE_S = 45.0
"""Laying the loom in front of one and finding the first peg (common practice, no source)."""
COUNT_OUT_S = 1.0
"""Counting out one band (common practice, no source)."""
RELEASE_S = 0.7
"""Easing one loop off its peg at the end, and settling the piece (common practice, no source)."""
WEAR_S = 20.0
"""Trying the piece on (common practice, no source)."""


class Pace(msgspec.Struct, frozen=True, kw_only=True):
    """How fast the teacher and a learner work.

    `teacher` times the trained floor is the teacher's time; `learner` times that is a beginner's first round
    (3 to 5 is common practice); `rate` is what is left of a round's time whenever the rounds done double.
    Work with the hook takes a beginner `hook` times as long again (common practice, no source).
    """

    teacher: float = 1.0
    learner: float = 4.0
    rate: float = 0.8
    hook: float = 2.0

    def share(self, n: int, *, hooked: bool = False) -> float:
        """Return the n-th round's time over the teacher's (n from 1)."""
        first = self.learner * self.hook if hooked else self.learner
        return max(1.0, first * math.pow(n, math.log2(self.rate)))

    def __post_init__(self) -> None:
        """Refuse what cannot be meant.

        Raises:
            ValueError: a factor that is not positive, or a rate outside 0.5 to 1.
        """
        factors = (self.teacher, self.learner, self.hook)
        if not (all(0 < factor < math.inf for factor in factors) and 0.5 <= self.rate <= 1):
            raise ValueError(
                f"no pace: teacher {self.teacher}, learner {self.learner}, hook {self.hook}, rate {self.rate}"
            )


def trained_s(done: AppliedMove, board: Board) -> float:
    """Return the seconds a trained hand needs for one move."""
    return TMU_S * sum(_motions(done, board))


def pace_from_timing(
    history: History, first: int, last: int, seconds: float, *, learner: float = 4.0
) -> Pace:
    """Return the pace of a teacher who made the moves `first` to `last` (from 1) in so many seconds.

    Raises:
        RefusedError: no such moves, or a time that is not positive.
    """
    if not 1 <= first <= last <= len(history.moves) or not 0 < seconds < math.inf:
        raise RefusedError(
            phrase("timing-impossible", first=first, last=last, moves=len(history.moves), seconds=seconds)
        )
    floor = sum(trained_s(done, history.board) for done in history.moves[first - 1 : last])
    return Pace(teacher=seconds / floor, learner=learner)


def motif_moves(history: History, name: str) -> tuple[int, int]:
    """Return the first and the last move (from 1) of the first time that a motif is worked.

    A motif worked within it ends the run.

    Raises:
        RefusedError: the motif is never worked.
    """
    first = next((i for i, done in enumerate(history.moves) if done.located.motif == name), None)
    if first is None:
        raise RefusedError(phrase("motif-never-worked", name=name))
    start = history.moves[first].located
    own = "/".join(start.path.split("/")[:3]) + "/"
    outer = [each for each in start.rounds if not each[0].startswith(own)]
    last = first
    for i in range(first + 1, len(history.moves)):
        doing = history.moves[i].located
        again = (doing.path, doing.rounds) == (start.path, start.rounds)
        if doing.motif != name or list(doing.rounds[: len(outer)]) != outer or again:
            break
        last = i
    return first + 1, last + 1


def rounds_s(floors: Sequence[float], pace: Pace, start: int = 1, *, hooked: bool = False) -> float:
    """Return a learner's seconds for rounds with these trained times, the first being round `start`."""
    return sum(
        pace.teacher * floor * pace.share(n, hooked=hooked) for n, floor in enumerate(floors, start=start)
    )


def split_by_tool(done: Sequence[AppliedMove], board: Board) -> tuple[float, float]:
    """Return the seconds that a trained hand needs for moves: those by hand, and those with the hook."""
    by_hand, hooked = 0.0, 0.0
    for each in done:
        if isinstance(each.move, Hook | Slide | Lift | Transfer | Bind | Put | Extend):
            hooked += trained_s(each, board)
        else:
            by_hand += trained_s(each, board)
    return by_hand, hooked


def _card_value(kind: str, mm: float) -> float:
    """Read a table of the card at a distance in mm; in proportion between its rows, no further beyond."""
    table = _TABLES[kind]
    inches = mm / _INCH_MM
    rows = list(table)
    i = bisect_left(rows, inches)
    if i == 0:
        return table[rows[0]]
    if i == len(rows):
        return table[rows[-1]]
    a, b = rows[i - 1], rows[i]
    return table[a] + (table[b] - table[a]) * (inches - a) / (b - a)


def _fetch_band() -> list[float]:
    """See the next band, take it from a jumbled heap, bring it, take it between both hands."""
    return [EF, REACH_C[HEAP_IN], G4B, MOVE_C[HEAP_IN], G3]


def _reach_down(above: int) -> list[float]:
    """Bring the hook to the peg, down its channel, see and catch the loop, draw it up and out."""
    return [MOVE_C[2], P2SE, EF, T30S, MOVE_B[1], D2E if above > _DEEP else D1E]


def _put_loop(mm: float) -> list[float]:
    """Carry a loop on the hook to a peg, put it over, free the hook."""
    return [_card_value("MC", mm), P2SE, D1E, RL1]


def _motions(done: AppliedMove, board: Board) -> list[float]:
    """Return the motions of a move, TMU each."""
    move = done.move
    bights = len({e.bight for e in done.events if isinstance(e, Drawn | Moved | Lifted)})
    extra = [MOVE_B[1], D1E] * max(0, bights - 1)
    match move:
        case Place():
            turned = sum(n - 1 for n in move.turns)
            reaches = [board.distance_mm(a, b) for a, b in zip(move.over, move.over[1:], strict=False)]
            seats = [motion for mm in reaches for motion in (_card_value("MC", mm), P2SD)]
            return [
                *_fetch_band(),
                P2SE,
                *seats,
                *[T180S] * sum(map(abs, move.twists)),
                *[T180S, MOVE_C[1], P2SD] * turned,
                APA,
                RL1,
            ]
        case Wind() | Hang():
            return [*_fetch_band(), P2SE, *[T180S, MOVE_C[1], P2SD] * (move.turns - 1), APA, RL1]
        case Turn():
            return [REACH_C[10], G1A, T180S, T180S, MOVE_B[10], RL1]
        case Hook() | Slide():
            drawn = [e for e in done.events if isinstance(e, Drawn)]
            slid = [MOVE_B[1]] * len(drawn[0].slid)
            mm = board.distance_mm(move.source, move.target)
            return [*_reach_down(len(drawn[0].through)), *slid, *extra, *_put_loop(mm)]
        case Lift():
            lifted = next(e for e in done.events if isinstance(e, Lifted))
            mm = 0.0 if move.target is None else board.distance_mm(move.at, move.target)
            there = [RL1] if move.target is None else _put_loop(mm)
            return [*_reach_down(len(lifted.over)), MOVE_B[1], *extra, *there]
        case Transfer():
            return [*_reach_down(0), *extra, *_put_loop(board.distance_mm(move.source, move.target))]
        case Put():
            return [G3, *[MOVE_C[2], P2SE, RL1] * bights]
        case Bind():
            return [*_fetch_band(), *_reach_down(_DEEP), MOVE_B[2], G3, D1E]
        case Extend():
            count = sum(isinstance(e, Laid) for e in done.events)
            return [*_fetch_band(), P2SD, MOVE_B[2], G3] * count
        case Knot() | Clip():
            return _fastening_motions(move, done)


def _fastening_motions(move: Move, done: AppliedMove) -> list[float]:
    """Thread a cord and tie it twice, or fetch a small clip, thread it and press it shut."""
    caught = sum(len(e.caught) for e in done.events if isinstance(e, Fastened))
    if isinstance(move, Knot):
        return [
            EF,
            REACH_C[HEAP_IN],
            G1A,
            MOVE_C[HEAP_IN],
            *[P2SE, MOVE_B[1]] * caught,
            *[G3, P1NSD, APB] * 2,
        ]
    return [EF, REACH_C[HEAP_IN], G4C, MOVE_C[HEAP_IN], *[P2SE] * caught, APB, RL1]
