"""Which pegs a maker takes for one another: the nearest ones, the one on the other side, the opposite one."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import NamedTuple

from pegwright.loom import Board

_AS_NEAR = 1.3  # pegs up to so many times as far off as the nearest one are taken for neighbours
_SAME_MM = 1.0


class PegNeighbours(NamedTuple):
    """For every peg: its neighbours, nearest first, and the peg opposite when the loom is not turned."""

    near: Mapping[str, tuple[str, ...]]
    opposite: Mapping[str, str]
    board: Board

    def mirror_peg(self, peg: str, about: str) -> str | None:
        """Return the peg that lies on the other side, as seen along the channel of the peg `about`."""
        one, axis = self.board.pegs[peg], self.board.pegs[about]
        turn = math.radians(2 * axis.channel_deg)
        dx, dy = one.x_mm - axis.x_mm, one.y_mm - axis.y_mm
        x = axis.x_mm + dx * math.cos(turn) + dy * math.sin(turn)
        y = axis.y_mm + dx * math.sin(turn) - dy * math.cos(turn)
        found = _peg_near(self.board, x, y)
        return None if found in (peg, about) else found


def find_peg_neighbours(board: Board) -> PegNeighbours:
    """Work out the neighbourhoods of a board. Distances in mm; time grows with the pegs, not their square."""
    near = {}
    reach = _pitch_mm(board) * _AS_NEAR
    for peg in board.pegs.values():
        low, high = (peg.x_mm - reach, peg.y_mm - reach), (peg.x_mm + reach, peg.y_mm + reach)
        found = sorted((board.distance_mm(peg.at, p.at), p.at) for p in board.within(low, high))
        near[peg.at] = tuple(at for d, at in found if at != peg.at and d <= reach)
    xs = [p.x_mm for p in board.pegs.values()]
    ys = [p.y_mm for p in board.pegs.values()]
    x2, y2 = (min(xs) + max(xs), min(ys) + max(ys)) if xs else (0.0, 0.0)
    across = {p.at: _peg_near(board, x2 - p.x_mm, y2 - p.y_mm) or p.at for p in board.pegs.values()}
    return PegNeighbours(near, across, board)


def _pitch_mm(board: Board) -> float:
    """Return the distance from a peg to the nearest other, of all pegs the middle value."""
    nearest = []
    for peg in board.pegs.values():
        reach = 10.0
        while reach < 1e6:
            low, high = (peg.x_mm - reach, peg.y_mm - reach), (peg.x_mm + reach, peg.y_mm + reach)
            found = [board.distance_mm(peg.at, p.at) for p in board.within(low, high) if p.at != peg.at]
            if found or len(board.pegs) < 2:
                nearest += [min(found)] if found else []
                break
            reach *= 2
    nearest.sort()
    return nearest[len(nearest) // 2] if nearest else 0.0


def _peg_near(board: Board, x_mm: float, y_mm: float) -> str | None:
    low, high = (x_mm - _SAME_MM, y_mm - _SAME_MM), (x_mm + _SAME_MM, y_mm + _SAME_MM)
    return next((peg.at for peg in board.within(low, high)), None)
