"""A real piece at rest: from the machine's record to where every strand lies.

    record ▶ curves (drawn) ▶ taut, at the bands' size (`start`) ▶ grown ▶ dressed ▶ let go ▶ (closed)

The drawing is brought to the bands' size as a whole; then the bands thicken without any pull, as long as
they need to be, which moves them hardly more than their thickness; and only then do they pull themselves
together, tugged and pressed as a maker does with a piece fresh off the loom, and are let go. A drawing at the
wrong size would have to slide for centimetres through gaps of a tenth of a millimetre, and no proof of every
step comes cheap there: 26 links take 50 steps so, and over 200 else.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

import msgspec
import numpy as np

from pegwright.loom.events import Event
from pegwright.shape.hold import Dressing, Hold, Pull, Tie, wrap
from pegwright.shape.newton import Goal
from pegwright.shape.ready import begin
from pegwright.shape.relax import Progress, Relaxed, relax
from pegwright.shape.replay import pass_throughs
from pegwright.shape.rods import Band, Floats
from pegwright.shape.start import Kind, Start, length_mm, start
from pegwright.structure.curves import Positions

__all__ = ["Certified", "Handling", "Kind", "Piece", "piece_at_rest"]

_GROWING = Goal(iterations=120)
_ROOM = 0.3  # bands thicken until touching strands are this part of their thickness apart
_POINTS = 48  # of a band, for which a press at every point is given
_FORCE_N = 3.0  # what forces are measured against, for one band
_WIDE = 2.0  # rows of links from which a piece is pressed
_CLIP_MM = 3.0  # from one eye of a clip to the other
_SEAM_MM = 2.0  # free way between the two ends when the piece is bent round


class Handling(NamedTuple):
    """How the piece is dressed and then measured.

    While it settles it is tugged lengthwise by `tug_n` for every row of links and drawn to its middle plane
    by `press_n_per_mm` at each of 48 points of a band, as a maker does with a piece fresh off the loom
    (common practice, no source; the amounts were chosen so that plain chains come out as long as makers say).
    Then it is let go, and `friction`, μ of rubber on rubber (about 0.8 dry, from memory), keeps much of what
    was done. `straight_n` is a pull that lasts. Tubes are not pressed, nor is a single row of links, which
    would tip over.
    """

    tug_n: float = 0.1
    press_n_per_mm: float = 0.02
    straight_n: float = 0.0
    friction: float = 0.8


USUAL = Handling()


class Certified(NamedTuple):
    """What was found when the whole way was gone over again.

    `smallest_gap_mm` is the least distance between centrelines of touching strands at rest, `crossings` how
    often strands passed each other on the way, by a test that shares nothing with the solver's own bound.
    """

    smallest_gap_mm: float
    crossings: int

    @property
    def same_threading(self) -> bool:
        """Whether what passes through what is still what was made: no strand ever passed another."""
        return self.crossings == 0


class Piece(msgspec.Struct, frozen=True):
    """A piece at rest. x runs along it, y across, z towards the maker; its middle is the origin.

    Round a wrist (`girth_mm`) the arm runs along y through the origin; length, width and height are those it
    had before, lying flat, without its fasteners.

    Curve i < `bands` of `relaxed` is band i + 1; the others are fasteners' rings, `fasteners[k]` the number
    of the one that curve `bands` + k belongs to. `radius_mm` and `closed` have an entry for every curve.
    """

    relaxed: Relaxed
    bands: int
    fasteners: tuple[int, ...]
    radius_mm: tuple[float, ...]
    closed: tuple[bool, ...]
    length_mm: float
    width_mm: float
    height_mm: float
    girth_mm: float | None
    certified: Certified


def piece_at_rest(
    events: Iterable[Event],
    spots: Positions,
    kinds: Sequence[Kind],
    *,
    points: int = 48,
    goal: Goal | None = None,
    dressing: Handling | None = USUAL,
    girth_mm: float | None = None,
    progress: Callable[[Progress], object] | None = None,
    threads: int = 2,
) -> Piece:
    """Relax a made thing. `kinds[b - 1]` says what band b is, `spots` where the pegs stand in mm.

    Args:
        events: the machine's record, from the empty loom on.
        spots: centre in mm of every peg.
        kinds: one for each band.
        points: points of each band's curve, at least.
        goal: when the dressed piece, and then the piece let go, counts as at rest.
        dressing: how it is handled; None leaves it as it comes off the loom.
        girth_mm: closes it round a wrist of this girth; None lays it flat.
        progress: hears of every step (stages `growing`, `dressing`, `resting`, `closing`); answering False
            stops, and the piece so far is returned with the finding that says so.
        threads: 1 or 2.

    Raises:
        KeyError: a peg has no position.
        ValueError: there are no bands, or not one kind for each, or they make no sense (`curves`, `relax`);
            a girth for a piece that no clip closes.
    """
    hear = progress or (lambda _: True)
    stopped = hear(Progress("getting ready", 0, 1.0, 0.0, 0.0)) is False
    begin()  # while this process draws
    given = start(tuple(events), spots, kinds, points)
    bands = given.bands
    goal = goal or Goal()
    how = dressing or Handling(0.0, 0.0, 0.0, 0.0)
    how = how._replace(tug_n=given.rows * how.tug_n)
    if given.tube or given.rows < _WIDE:
        how = how._replace(press_n_per_mm=0.0)
    press = how.press_n_per_mm * _POINTS / points
    clips = _clips(given) if girth_mm is not None else ()
    told = 0
    crossings = given.crossings
    thin = min(b.thickness_mm for b in bands)
    force = _FORCE_N * math.sqrt(len(bands))

    def run(
        first: str,
        bands: Sequence[Band],
        hold: Hold | None = None,
        dress: Dressing | None = None,
        *,
        goal: Goal = goal,
        room: float = 0.0,
    ) -> Relaxed:
        nonlocal told, crossings
        before = told

        def said(p: Progress) -> object:
            nonlocal told
            told = before + p.iteration
            if p.stage == "getting ready":
                return not stopped and (before > 0 or hear(p))
            return hear(p._replace(stage=first or p.stage, iteration=told))

        made = relax(
            bands,
            hold,
            dress,
            goal=goal,
            progress=said,
            keep_iterates=True,
            reference_n=force,
            room_mm=room,
            threads=threads,
        )
        crossings += pass_throughs(made.iterates_mm, bands)
        return made

    loose = [b._replace(rest_length_mm=length_mm(b.points_mm)) for b in bands]
    rest = run("growing", loose, goal=_GROWING, room=_ROOM * thin)
    if _unfinished(rest):
        return _piece(rest, rest, given, None, crossings)
    tug = _Tug(given)
    dress = Dressing(tug.of(how.tug_n), press, how.friction) if dressing else None
    flat = rest = run("", _moved(bands, rest.positions_mm), Hold(pulls=tug.of(how.straight_n)), dress)
    if girth_mm is not None and not _unfinished(flat):
        long = float(np.ptp(np.concatenate(flat.positions_mm)[:, 0])) + _SEAM_MM
        bent = wrap(flat.positions_mm, max(girth_mm, long), _SEAM_MM)
        rest = run("closing", _moved(bands, bent), Hold(ties=clips, girth_mm=girth_mm))
    return _piece(rest, flat, given, girth_mm, crossings)


def _unfinished(rest: Relaxed) -> bool:
    return bool({f.code for f in rest.findings} & {"rest-interrupted", "bands-drawn-crossing"})


def _moved(bands: Sequence[Band], curves: Sequence[Floats]) -> list[Band]:
    return [b._replace(points_mm=x) for b, x in zip(bands, curves, strict=True)]


def _ends(given: Start) -> list[tuple[int, int]]:
    """For every clip that joins two ends, its two rings: the first and the last along the piece."""
    count = len(given.bands) - len(given.fasteners)
    found = []
    for number in dict.fromkeys(given.fasteners):
        rings = [count + k for k, f in enumerate(given.fasteners) if f == number]
        rings.sort(key=lambda i: float(given.bands[i].points_mm[:, 0].mean()))
        if len(rings) > 1:
            found.append((rings[0], rings[-1]))
    return found


def _clips(given: Start) -> tuple[Tie, ...]:
    """Ties that close the clips when the two ends are brought together.

    Raises:
        ValueError: no fastener joins two ends.
    """
    ends = _ends(given)
    if not ends:
        raise ValueError("no clip joins two ends of this piece: it does not close round a wrist")
    return tuple(
        Tie(
            (i, int(given.bands[i].points_mm[:, 0].argmin())),
            (j, int(given.bands[j].points_mm[:, 0].argmax())),
            _CLIP_MM,
        )
        for i, j in ends
    )


class _Tug:
    """Where a hand takes hold of a piece that lies along x: at its clip's two rings, else at its two ends."""

    def __init__(self, given: Start) -> None:
        bands = given.bands
        self.ends: list[list[tuple[int, int]]] = []
        for side, sign in enumerate((-1.0, 1.0)):
            rings = [pair[side] for pair in _ends(given)]
            if rings:
                self.ends.append([(i, j) for i in rings for j in range(len(bands[i].points_mm))])
                continue
            far = max(float((sign * b.points_mm[:, 0]).max()) for b in bands)
            self.ends.append(
                [
                    (i, int(j))
                    for i, b in enumerate(bands)
                    for j in np.flatnonzero(sign * b.points_mm[:, 0] > far - 2 * b.thickness_mm)
                ]
            )

    def of(self, force_n: float) -> tuple[Pull, ...]:
        """The same pull at both ends, shared among their points."""
        if force_n == 0.0:
            return ()
        return tuple(
            Pull(at, (sign * force_n / len(end), 0.0, 0.0))
            for sign, end in zip((-1.0, 1.0), self.ends, strict=True)
            for at in end
        )


def _piece(rest: Relaxed, flat: Relaxed, given: Start, girth_mm: float | None, crossings: int) -> Piece:
    bands, count = given.bands, len(given.bands) - len(given.fasteners)
    made = np.concatenate(flat.positions_mm[:count])
    middle = 0.5 * (made.min(axis=0) + made.max(axis=0)) if rest is flat else np.zeros(3)
    moved = tuple(x - middle for x in rest.positions_mm)
    for x in moved:
        x.flags.writeable = False
    size = np.ptp(made, axis=0) + max(b.thickness_mm for b in bands[:count])
    return Piece(
        relaxed=msgspec.structs.replace(rest, positions_mm=moved, iterates_mm=()),
        bands=count,
        fasteners=given.fasteners,
        radius_mm=tuple(b.thickness_mm / 2 for b in bands),
        closed=tuple(b.closed for b in bands),
        length_mm=float(size[0]),
        width_mm=float(size[1]),
        height_mm=float(size[2]),
        girth_mm=girth_mm,
        certified=Certified(rest.gap_mm, crossings),
    )
