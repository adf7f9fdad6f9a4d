"""A real piece at rest: from the machine's record to where every strand lies.

    record ▶ curves (drawn) ▶ taut (few corners) ▶ grown (true thickness) ▶ dressed ▶ at rest

Drawn strands are twice as long as the bands and lie a tenth of their thickness apart. So corners are cut
first, each proved free of other strands (`tighten`); the drawing is brought to the bands' size as a whole;
then the bands thicken at the length they were drawn, which moves them hardly more than their thickness; and
only then do they pull themselves together, tugged and pressed as a maker does with a piece fresh off the
loom, and are let go. A drawing at the wrong size would have to slide for centimetres through gaps of a tenth
of a millimetre, and no proof of every step comes cheap there: 26 links take 50 steps so, and over 200 else.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

import msgspec
import numpy as np

from pegwright.loom.events import Event
from pegwright.shape.hold import Dressing, Hold, Pull
from pegwright.shape.newton import Goal
from pegwright.shape.on_the_loom import rest_length_mm
from pegwright.shape.relax import Progress, Relaxed, relax
from pegwright.shape.replay import pass_throughs
from pegwright.shape.rods import Band, Floats
from pegwright.shape.rubber import Rubber, neo_hookean
from pegwright.shape.tighten import subdivide, tighten
from pegwright.structure.curves import Curves, Positions, curves

__all__ = ["Certified", "Handling", "Kind", "Piece", "piece_at_rest"]

_LOOSE = 1.5  # how much longer than at rest the bands are while they thicken, so that all have room
_GROWING = Goal(residual_drop=0.2, length_change=1.0, iterations=80)
_CLIP_MM, _CLIP_THICK_MM, _CLIP_POINTS = 5.0, 1.5, 24
_CLIP = neo_hookean(4.0)  # a clip hardly gives where bands pull at it


class Kind(NamedTuple):
    """What a band is: inner diameter and thickness at rest, and its rubber."""

    bore_mm: float
    thickness_mm: float
    rubber: Rubber = Rubber()


class Handling(NamedTuple):
    """How the piece is dressed and then measured.

    While it settles it is tugged lengthwise by `tug_n` and drawn to its middle plane by `press_n_per_mm` at
    every point. Then it is laid out straight: `straight_n` is the lasting pull of that, a tenth of what a
    hand feels. Without friction a piece with no pull at all would creep together.
    """

    tug_n: float = 0.3
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
        progress: hears of every step (stages `growing`, `dressing`, `resting`); answering False stops, and
            the piece so far is returned with the finding that says so.
        threads: 1 or 2.

    Raises:
        KeyError: a peg has no position.
        ValueError: there are no bands, or not one kind for each, or they make no sense (`curves`, `relax`).
    """
    drawn = curves(events, spots, float(np.mean([k.thickness_mm for k in kinds])) if kinds else 1.0)
    if len(kinds) != len(drawn.bands) or not kinds:
        raise ValueError(f"{len(kinds)} kinds for {len(drawn.bands)} bands")
    bands, numbers = _bands(drawn, kinds, points)
    tug = _Tug(bands)
    hear = progress or (lambda _: True)
    goal = goal or Goal()
    told = 0

    def growing(p: Progress) -> object:
        nonlocal told
        told = p.iteration
        return hear(p if p.stage == "getting ready" else p._replace(stage="growing"))

    def settling(p: Progress) -> object:
        return p.stage == "getting ready" or hear(p._replace(iteration=told + p.iteration))

    loose = [b._replace(rest_length_mm=_length(b.points_mm)) for b in bands]
    grown = relax(loose, goal=_GROWING, progress=growing, keep_iterates=True, threads=threads)
    crossings = pass_throughs(grown.iterates_mm, loose)
    if {f.code for f in grown.findings} & {"rest-interrupted", "bands-drawn-crossing"}:
        return _piece(grown, bands, numbers, crossings, girth_mm)
    thick = [b._replace(points_mm=x) for b, x in zip(bands, grown.positions_mm, strict=True)]
    how = dressing or Handling(0.0, 0.0, 0.0, 0.0)
    hold = Hold(pulls=tug.of(how.straight_n))
    dress = Dressing(tug.of(how.tug_n), how.press_n_per_mm, how.friction) if dressing else None
    rest = relax(thick, hold, dress, goal=goal, progress=settling, keep_iterates=True, threads=threads)
    crossings += pass_throughs(rest.iterates_mm, thick)
    return _piece(rest, bands, numbers, crossings, girth_mm)


def _bands(drawn: Curves, kinds: Sequence[Kind], points: int) -> tuple[list[Band], tuple[int, ...]]:
    """The solver's bands, then the fasteners' rings: taut, lengthwise along x, at the right size."""
    numbers = tuple(f for f, rings in drawn.rings.items() for _ in rings)
    strands = [drawn.bands[b] for b in sorted(drawn.bands)] + [r for rs in drawn.rings.values() for r in rs]
    taut = tighten(strands, 0.5 * drawn.clear_mm)
    rest = [rest_length_mm(k.bore_mm, k.thickness_mm) for k in kinds]
    scale = _LOOSE * float(np.median([r / _length(x) for r, x in zip(rest, taut, strict=False)]))
    taut = _lengthwise([scale * x for x in taut])
    made = [
        Band(subdivide(x, points), r, k.thickness_mm, k.rubber)
        for x, r, k in zip(taut, rest, kinds, strict=False)
    ]
    clip = rest_length_mm(_CLIP_MM, _CLIP_THICK_MM)
    made += [Band(subdivide(x, _CLIP_POINTS), clip, _CLIP_THICK_MM, _CLIP) for x in taut[len(kinds) :]]
    return made, numbers


def _length(x: Floats) -> float:
    return float(np.sqrt(((np.roll(x, -1, axis=0) - x) ** 2).sum(axis=1)).sum())


def _lengthwise(curves: Sequence[Floats]) -> list[Floats]:
    """Turn a drawing about the vertical so that its longer side runs along x, its middle at the origin."""
    every = np.concatenate(list(curves))
    middle = every.mean(axis=0)
    _, axes = np.linalg.eigh(np.cov((every - middle)[:, :2].T))
    along = axes[:, -1] * np.sign(axes[np.argmax(np.abs(axes[:, -1])), -1])
    turn = np.array([[along[0], along[1], 0.0], [-along[1], along[0], 0.0], [0.0, 0.0, 1.0]])
    return [(c - middle) @ turn.T for c in curves]


class _Tug:
    """The points at the two ends of a piece that lies along x, at which a hand takes hold of it."""

    def __init__(self, bands: Sequence[Band]) -> None:
        self.ends: list[list[tuple[int, int]]] = []
        for sign in (-1.0, 1.0):
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


def _piece(
    rest: Relaxed, bands: Sequence[Band], numbers: tuple[int, ...], crossings: int, girth_mm: float | None
) -> Piece:
    every = np.concatenate(rest.positions_mm)
    middle = 0.5 * (every.min(axis=0) + every.max(axis=0))
    if girth_mm is None:
        moved = tuple(x - middle for x in rest.positions_mm)
        for x in moved:
            x.flags.writeable = False
        rest = msgspec.structs.replace(rest, positions_mm=moved, iterates_mm=())
    count = len(bands) - len(numbers)
    made = np.concatenate(rest.positions_mm[:count])
    size = np.ptp(made, axis=0) + max(b.thickness_mm for b in bands[:count])
    return Piece(
        relaxed=rest,
        bands=count,
        fasteners=numbers,
        radius_mm=tuple(b.thickness_mm / 2 for b in bands),
        closed=tuple(b.closed for b in bands),
        length_mm=float(size[0]),
        width_mm=float(size[1]),
        height_mm=float(size[2]),
        girth_mm=girth_mm,
        certified=Certified(rest.smallest_gap_mm, crossings),
    )
