"""The maker's view: the plan as it lies before the maker now, and the part of it worth showing."""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

from pegwright.lesson.scene.picture import Spot, Window
from pegwright.loom import Board

Side = Literal["left", "right", "near", "far"]
RIM_MM = 9.0
OVERLAP_MM = 7.0
_WAYS = ("right", "far-right", "far", "far-left", "left", "near-left", "near", "near-right")


class View(NamedTuple):
    """The board, the middle about which it is turned, its half extent, its pitch, and whether it is turned.

    Lengths in mm; the pitch is the smallest distance between two neighbours.
    """

    board: Board
    middle: Spot
    half: Spot
    pitch_mm: float
    turned: bool = False

    def spot(self, peg: str) -> Spot:
        """Return where a peg stands before the maker, mm."""
        there = self.board.pegs[peg]
        return self.turn((there.x_mm, there.y_mm))

    def turn(self, spot: Spot) -> Spot:
        """Bring a spot of the plan into the maker's view."""
        dx, dy = spot[0] - self.middle[0], spot[1] - self.middle[1]
        return (-dx, -dy) if self.turned else (dx, dy)

    def channel_deg(self, peg: str) -> float:
        """Return the way a peg's channel opens in the maker's view, degrees."""
        return (self.board.pegs[peg].channel_deg + (180.0 if self.turned else 0.0)) % 360


def view_of(board: Board) -> View:
    """Look at a board as it stands at the start."""
    xs = [peg.x_mm for peg in board.pegs.values()]
    ys = [peg.y_mm for peg in board.pegs.values()]
    return View(
        board,
        ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2),
        ((max(xs) - min(xs)) / 2, (max(ys) - min(ys)) / 2),
        pitch_mm(board),
    )


def pitch_mm(board: Board) -> float:
    """Return the smallest distance between two pegs, mm: stacks must keep out of each other's way.

    Looks about each peg as far as 80 mm; pegs that stand farther apart have room enough.
    """
    best = 80.0
    for peg in board.pegs.values():
        low, high = (peg.x_mm - best, peg.y_mm - best), (peg.x_mm + best, peg.y_mm + best)
        for other in board.within(low, high):
            if other.at != peg.at:
                best = min(best, math.hypot(other.x_mm - peg.x_mm, other.y_mm - peg.y_mm))
    return max(best, 1.0)


def choose_window(
    view: View, focus: list[Spot], least: Spot, room_mm: float, last: Window | None = None
) -> Window:
    """Choose the part of the plan to show: the focus with room about it, at least so large.

    `last` is kept if the focus fits into it, so that the picture stays still from step to step.
    """
    rim = RIM_MM + view.board.peg_mm / 2
    ends = [(min(s[i] for s in focus), max(s[i] for s in focus)) for i in (0, 1)]
    # A free end may lie beyond the board: then the board is taken to reach so far.
    reach = [max(view.half[i], -ends[i][0], ends[i][1]) + rim for i in (0, 1)]
    low = [max(ends[i][0] - room_mm, -reach[i]) for i in (0, 1)]
    high = [min(ends[i][1] + room_mm, reach[i]) for i in (0, 1)]
    if last is not None and (
        last.left_mm <= low[0]
        and high[0] <= last.right_mm
        and last.near_mm <= low[1]
        and high[1] <= last.far_mm
    ):
        return last
    sides = []
    for i in (0, 1):
        size = max(high[i] - low[i], least[i])
        if size >= 2 * reach[i]:
            sides.append((-reach[i], reach[i]))
            continue
        start = (low[i] + high[i] - size) / 2
        start = min(max(start, -reach[i]), reach[i] - size)
        sides.append((start, start + size))
    (left, right), (near, far) = sides
    return frame_window(view, (left, near), (right, far))


def frame_window(view: View, low: Spot, high: Spot) -> Window:
    """Return a window, and on which sides there are pegs beyond it, or cut by it."""
    beyond: list[Side] = []
    r = view.board.peg_mm / 2
    if low[0] > -view.half[0] - r:
        beyond.append("left")
    if high[0] < view.half[0] + r:
        beyond.append("right")
    if low[1] > -view.half[1] - r:
        beyond.append("near")
    if high[1] < view.half[1] + r:
        beyond.append("far")
    return Window(left_mm=low[0], near_mm=low[1], right_mm=high[0], far_mm=high[1], goes_on=tuple(beyond))


def cut_strips(
    view: View, longest_mm: float, wide_mm: float, focus: list[Spot], room_mm: float
) -> list[Window]:
    """Show what lies about the focus, cut across into strips that stand side by side, nearest first.

    As many as fit into the width without getting shorter than about half of the longest; at least so many
    that none is longer than that. Neighbours overlap a little.
    """
    rim = RIM_MM + view.board.peg_mm / 2
    low = [max(min(s[i] for s in focus) - room_mm, -view.half[i] - rim) for i in (0, 1)]
    high = [min(max(s[i] for s in focus) + room_mm, view.half[i] + rim) for i in (0, 1)]
    long, wide = high[1] - low[1], high[0] - low[0]
    fitting = min(math.floor(wide_mm / (wide + 3.0)), math.ceil(long / (0.55 * longest_mm)))
    count = max(1, math.ceil(long / longest_mm), fitting)
    over = OVERLAP_MM if count > 1 else 0.0
    return [
        frame_window(
            view,
            (low[0], low[1] + k * long / count - over),
            (high[0], low[1] + (k + 1) * long / count + over),
        )
        for k in range(count)
    ]


def contains(window: Window, spot: Spot) -> bool:
    """Say whether a spot lies in a window."""
    return window.left_mm < spot[0] < window.right_mm and window.near_mm < spot[1] < window.far_mm


def compass_way(a: Spot, b: Spot) -> str:
    """Name the eighth of the compass in which b lies from a: right, far-right, far, …"""
    angle = math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))
    # A row shifted by half a pitch still counts as straight ahead; so the four sides get the wider share.
    eighth = round(angle / 45) % 8
    if eighth % 2 and abs((angle / 90 + 0.5) % 1 - 0.5) * 90 < 25:
        eighth = (round(angle / 90) * 2) % 8
    return _WAYS[eighth]
