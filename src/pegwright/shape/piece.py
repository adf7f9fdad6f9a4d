"""A real piece at rest: from the events of a history to where every strand lies.

    record ▶ curves (drawn) ▶ taut, at the bands' size (`initial_shape`) ▶ grown ▶ dressed ▶ let go ▶ (closed)

The whole drawing is scaled to the bands' size. Then the bands thicken without pulling, at whatever length
they need, which moves them hardly more than their thickness. Only then do they contract, tugged and pressed
as a maker does with a piece fresh off the loom, and are let go. A drawing at the wrong size would have to
slide for centimetres through gaps of a tenth of a millimetre, where safe steps are short: 26 links take 50
steps this way and over 200 otherwise.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

import msgspec
import numpy as np

from pegwright.finding import Location, finding
from pegwright.loom import Event
from pegwright.shape.crossing_count import count_pass_throughs
from pegwright.shape.ends import Tug, find_clips
from pegwright.shape.falling_apart import circle, lay_beside, split_groups
from pegwright.shape.initial_shape import BandProperties, InitialShape, closed_length_mm, draw_initial_shape
from pegwright.shape.kernel_compilation import start_helper
from pegwright.shape.loads import Dressing, Supports, wrap_round_wrist
from pegwright.shape.newton import Goal
from pegwright.shape.plausibility import is_longer_than_bands, rests_otherwise
from pegwright.shape.relaxation import RelaxationProgress, RelaxedBands, relax_bands
from pegwright.shape.rods import Band, Floats
from pegwright.structure import Positions

__all__ = [
    "BandProperties",
    "CrossingCheck",
    "GrownPiece",
    "Handling",
    "RestingPiece",
    "grow_piece",
    "relax_piece",
]

_GROWING = Goal(iterations=120)
_ROOM = 0.3  # bands thicken until touching strands are this share of their thickness apart
_POINTS = 48  # points of a band that `press_n_per_mm` refers to
_FORCE_N = 3.0  # reference force for one band
_WIDE = 2.0  # rows of links from which a piece is pressed
_SEAM_MM = 2.0  # gap between the two ends when the piece is bent round


class Handling(NamedTuple):
    """How the piece is dressed and then measured.

    While it settles it is tugged lengthwise by `tug_n` for every row of links and drawn to its middle plane
    by `press_n_per_mm` at each of 48 points of a band, as a maker does with a piece fresh off the loom
    (common practice, no source; the amounts were chosen so that plain chains come out as long as makers
    report). Then it is let go, and `friction`, μ of rubber on rubber (about 0.8 dry, from memory), keeps much
    of the shape. `straight_n` is a pull that lasts. Tubes are not pressed, nor is a single row of links,
    which would tip over.
    """

    tug_n: float = 0.1
    press_n_per_mm: float = 0.02
    straight_n: float = 0.0
    friction: float = 0.8


_NOTHING = RelaxedBands((), (), (), 0.0, 0.0, 0, 0.0, 0.0, 0.0, 0.0, 0.0, True, (), (), ())

USUAL_HANDLING = Handling()


class CrossingCheck(NamedTuple):
    """What a replay of the whole path found.

    `smallest_gap_mm` is the least distance between centrelines of touching strands at rest, two thicknesses
    if none touch; `crossings` is how often strands passed through each other, by a test independent of the
    solver's bound.
    """

    smallest_gap_mm: float
    crossings: int

    @property
    def same_threading(self) -> bool:
        """Whether the threading is still that of the made piece: no strand ever passed through another."""
        return self.crossings == 0


class RestingPiece(msgspec.Struct, frozen=True):
    """A piece at rest. x runs along it, y across, z towards the maker; it is centred on the origin.

    Round a wrist (`girth_mm`) the arm runs along y through the origin; length, width and height are those it
    had lying flat, without its fasteners.

    Bands in `loose` are not connected to the rest: the tug pulled them off. They lie beside the piece, single
    ones as rings, and the sizes are those of the largest part that hangs together, 0 if none does. Such a
    piece is not closed round a wrist.

    Curve i < `bands` of `relaxed` is band i + 1; the others are fasteners' rings, `fasteners[k]` the number
    of the one that curve `bands` + k belongs to. `radius_mm` and `closed` have an entry for every curve.
    """

    relaxed: RelaxedBands
    bands: int
    fasteners: tuple[int, ...]
    radius_mm: tuple[float, ...]
    closed: tuple[bool, ...]
    length_mm: float
    width_mm: float
    height_mm: float
    girth_mm: float | None
    crossing_check: CrossingCheck
    loose: tuple[int, ...] = ()

    @property
    def hangs_together(self) -> bool:
        """Whether there is a piece at all: bands connected to each other or to a fastener."""
        return self.length_mm > 0


class GrownPiece(NamedTuple):
    """A piece whose bands are as thick as they are and do not pull yet: the start of every handling of it."""

    shape: InitialShape
    bands: RelaxedBands
    crossings: int
    iterations: int


def grow_piece(
    events: Iterable[Event],
    spots: Positions,
    kinds: Sequence[BandProperties],
    *,
    points: int = 48,
    progress: Callable[[RelaxationProgress], object] | None = None,
    threads: int = 2,
) -> GrownPiece:
    """Draw a made piece and let its bands grow. Arguments and errors as of `relax_piece`."""
    hear = progress or (lambda _: True)
    stopped = hear(RelaxationProgress("getting ready", 0, 1.0, 0.0, 0.0)) is False
    start_helper()  # while this process draws
    given = draw_initial_shape(tuple(events), spots, kinds, points)
    runs = _Relaxations(given, _GROWING, hear, stopped, threads)
    loose = [b._replace(rest_length_mm=closed_length_mm(b.points_mm)) for b in given.bands]
    grown = runs.run("growing", loose, goal=_GROWING, room_mm=_ROOM * _thinnest_mm(given))
    return GrownPiece(given, grown, runs.crossings, runs.iterations)


def relax_piece(
    events: Iterable[Event],
    spots: Positions,
    kinds: Sequence[BandProperties],
    *,
    points: int = 48,
    goal: Goal | None = None,
    dressing: Handling | None = USUAL_HANDLING,
    girth_mm: float | None = None,
    progress: Callable[[RelaxationProgress], object] | None = None,
    threads: int = 2,
    grown: GrownPiece | None = None,
) -> RestingPiece:
    """Relax a made piece.

    Args:
        events: the events of a history, from the empty loom on.
        spots: centre in mm of every peg.
        kinds: the properties of every band; `kinds[b - 1]` is band b.
        points: the least number of points of each band's curve.
        goal: when the dressed piece, and later the released piece, counts as at rest.
        dressing: how it is handled; None leaves it as it comes off the loom.
        girth_mm: the girth of the wrist to close it round; None lays it flat.
        progress: called after every step (stages `growing`, `dressing`, `resting`, `closing`); returning
            False stops, and the piece so far is returned with a finding that says so.
        threads: 1 or 2.
        grown: the same events, spots, kinds and points, grown before; by default that is done first.

    Raises:
        KeyError: a peg has no position.
        ValueError: there are no bands, not one kind for each, or they are invalid (see `relax_bands`); or
            a girth is given and no clip closes the piece.
    """
    hear = progress or (lambda _: True)
    events = tuple(events)
    if grown is None:
        grown = grow_piece(events, spots, kinds, points=points, progress=progress, threads=threads)
        stopped = False
    else:
        stopped = hear(RelaxationProgress("getting ready", 0, 1.0, 0.0, 0.0)) is False
    given = grown.shape
    how = dressing or Handling(0.0, 0.0, 0.0, 0.0)
    how = how._replace(tug_n=given.rows * how.tug_n)
    if given.tube or given.rows < _WIDE:
        how = how._replace(press_n_per_mm=0.0)
    how = how._replace(press_n_per_mm=how.press_n_per_mm * _POINTS / points)
    clips = find_clips(given) if girth_mm is not None else ()
    runs = _Relaxations(given, goal or Goal(), hear, stopped, threads, grown)
    if _has_not_settled(grown.bands):
        return _piece(grown.bands, grown.bands, given, None, runs.crossings)
    begun = grown.bands.positions_mm
    flat, kept, fallen = _rest_flat(runs, given, begun, how, dressed=dressing is not None)
    if flat is None or fallen:
        beside = _rest_beside(runs, given, begun, fallen)
        apart = _fallen_piece(flat, given, kept, fallen, beside, runs.crossings)
        return _doubt_length(apart, apart.relaxed.positions_mm)
    rest = flat
    if girth_mm is not None and not _has_not_settled(flat):
        long = float(np.ptp(np.concatenate(flat.positions_mm)[:, 0])) + _SEAM_MM
        bent = wrap_round_wrist(flat.positions_mm, max(girth_mm, long), _SEAM_MM)
        rest = runs.run("closing", _move_bands(given.bands, bent), Supports(ties=clips, girth_mm=girth_mm))
    piece = _piece(rest, flat, given, girth_mm, runs.crossings)
    found = (finding("rests-otherwise"),) if rests_otherwise(events, flat.positions_mm[: piece.bands]) else ()
    relaxed = msgspec.structs.replace(piece.relaxed, findings=(*piece.relaxed.findings, *found))
    return _doubt_length(msgspec.structs.replace(piece, relaxed=relaxed), flat.positions_mm)


def _doubt_length(piece: RestingPiece, flat: Sequence[Floats]) -> RestingPiece:
    """Return the piece without its sizes where its curves, lying flat, could not span such a length."""
    if not is_longer_than_bands(flat, piece.length_mm):
        return piece
    found = finding("length-impossible", length_mm=piece.length_mm)
    relaxed = msgspec.structs.replace(piece.relaxed, findings=(*piece.relaxed.findings, found))
    return msgspec.structs.replace(piece, relaxed=relaxed, length_mm=0.0, width_mm=0.0, height_mm=0.0)


class _Relaxations:
    """Relaxes the curves of one piece time and again, and counts iterations and pass-throughs over all."""

    def __init__(
        self,
        given: InitialShape,
        goal: Goal,
        hear: Callable[[RelaxationProgress], object],
        stopped: bool,
        threads: int,
        grown: GrownPiece | None = None,
    ) -> None:
        self.goal, self.hear, self.stopped, self.threads = goal, hear, stopped, threads
        self.crossings = grown.crossings if grown else given.crossings
        self.iterations = grown.iterations if grown else 0
        self._force_n = _FORCE_N * math.sqrt(len(given.bands))

    def run(
        self,
        stage: str,
        bands: Sequence[Band],
        hold: Supports | None = None,
        dress: Dressing | None = None,
        *,
        goal: Goal | None = None,
        room_mm: float = 0.0,
        stop_when: Callable[[tuple[Floats, ...]], bool] | None = None,
    ) -> RelaxedBands:
        """Relax curves once; without a `stage` of its own it is told by those of `relax_bands`."""
        before = self.iterations

        def report(p: RelaxationProgress) -> object:
            self.iterations = before + p.iteration
            if p.stage == "getting ready":
                return not self.stopped and (before > 0 or self.hear(p))
            return self.hear(p._replace(stage=stage or p.stage, iteration=self.iterations))

        relaxed = relax_bands(
            bands,
            hold,
            dress,
            goal=goal or self.goal,
            progress=report,
            keep_iterates=True,
            stop_when=stop_when,
            reference_n=self._force_n,
            room_mm=room_mm,
            threads=self.threads,
        )
        self.crossings += count_pass_throughs(relaxed.iterates_mm, bands)
        return relaxed


class _Flat(NamedTuple):
    """The curves `kept` lying flat, or None where none hang together, and the parts that came off."""

    relaxed: RelaxedBands | None
    kept: list[int]
    fallen: list[list[int]]


def _rest_flat(
    runs: _Relaxations, whole: InitialShape, grown: Sequence[Floats], how: Handling, *, dressed: bool
) -> _Flat:
    """Tug the piece and let it go; where it comes apart, go on with the part that still hangs together."""
    given, kept = whole, list(range(len(whole.bands)))
    fallen: list[list[int]] = []
    thin = _thinnest_mm(whole)
    while True:
        tug = Tug(given)
        dress = Dressing(tug.of(how.tug_n), how.press_n_per_mm, how.friction) if dressed else None
        supports = Supports(pulls=tug.of(how.straight_n))
        groups: list[list[int]] = []

        def is_apart(curves: tuple[Floats, ...], groups: list[list[int]] = groups) -> bool:
            groups[:] = split_groups(curves, thin)
            return len(groups) > 1

        moved = _move_bands(given.bands, [grown[i] for i in kept])
        flat = runs.run("", moved, supports, dress, stop_when=is_apart)
        if len(groups) < 2:
            return _Flat(flat, kept, fallen)
        parts = [[kept[i] for i in group] for group in groups]
        kept = next((part for part in parts if _hangs_together(part, whole)), [])
        fallen += [part for part in parts if part != kept]
        if not kept:
            return _Flat(None, [], fallen)
        given = _part_of(whole, kept)


def _rest_beside(
    runs: _Relaxations, whole: InitialShape, grown: Sequence[Floats], fallen: Sequence[Sequence[int]]
) -> list[list[Floats]]:
    """Return the curves of the parts that came off: at rest without a tug, or single ones as rings."""
    bands = whole.bands
    beside = []
    for part in fallen:
        if _hangs_together(part, whole):
            lone = runs.run("", _move_bands([bands[i] for i in part], [grown[i] for i in part]))
            beside.append(list(lone.positions_mm))
        else:
            beside.append([circle(bands[i].rest_length_mm, len(bands[i].points_mm)) for i in part])
    return beside


def _thinnest_mm(given: InitialShape) -> float:
    return min(band.thickness_mm for band in given.bands)


def _part_of(given: InitialShape, kept: Sequence[int]) -> InitialShape:
    """Return the shape with only the curves of these numbers."""
    count = len(given.bands) - len(given.fasteners)
    return given._replace(
        bands=[given.bands[i] for i in kept],
        fasteners=tuple(given.fasteners[i - count] for i in kept if i >= count),
    )


def _hangs_together(part: Sequence[int], given: InitialShape) -> bool:
    """Return whether a group has more than one curve, with a band among them."""
    return len(part) > 1 and min(part) < len(given.bands) - len(given.fasteners)


def _fallen_piece(
    flat: RelaxedBands | None,
    given: InitialShape,
    kept: Sequence[int],
    fallen: Sequence[Sequence[int]],
    beside: Sequence[Sequence[Floats]],
    crossings: int,
) -> RestingPiece:
    """Return a piece with the curves `kept` lying as in `flat` and the others beside it."""
    count = len(given.bands) - len(given.fasteners)
    away = [i for part in fallen for i in part]
    loose = tuple(sorted(i + 1 for i in away if i < count))
    part = None if flat is None else _piece(flat, flat, _part_of(given, kept), None, crossings)
    corners = np.concatenate(part.relaxed.positions_mm) if part else np.zeros((1, 3))
    sizes = [len(given.bands[i].points_mm) for i in away]
    laid = lay_beside(corners.min(axis=0), corners.max(axis=0), beside)
    rings = [x for block in laid for x in block]
    curves = dict(zip(away, rings, strict=True))
    tension = {i: np.zeros(n) for i, n in zip(away, sizes, strict=True)}
    stretch = {i: np.ones(n) for i, n in zip(away, sizes, strict=True)}
    if part is not None:
        held = part.relaxed
        curves |= dict(zip(kept, held.positions_mm, strict=True))
        tension |= dict(zip(kept, held.tension_n, strict=True))
        stretch |= dict(zip(kept, held.stretch, strict=True))
        found = finding(
            "bands-lie-loose", Location(band=loose[0]) if loose else None, loose=len(loose), bands=count
        )
        relaxed = msgspec.structs.replace(held, findings=(found, *held.findings) if loose else held.findings)
    else:
        relaxed = msgspec.structs.replace(
            _NOTHING, findings=(finding("nothing-hangs-together", bands=count),)
        )
    each = range(len(given.bands))
    relaxed = msgspec.structs.replace(
        relaxed,
        positions_mm=tuple(_frozen(curves[i]) for i in each),
        tension_n=tuple(_frozen(tension[i]) for i in each),
        stretch=tuple(_frozen(stretch[i]) for i in each),
    )
    return RestingPiece(
        relaxed=relaxed,
        bands=count,
        fasteners=given.fasteners,
        radius_mm=tuple(b.thickness_mm / 2 for b in given.bands),
        closed=tuple(b.closed for b in given.bands),
        length_mm=part.length_mm if part else 0.0,
        width_mm=part.width_mm if part else 0.0,
        height_mm=part.height_mm if part else 0.0,
        girth_mm=None,
        crossing_check=CrossingCheck(part.relaxed.gap_mm if part else _apart_mm(given), crossings),
        loose=loose,
    )


def _apart_mm(given: InitialShape) -> float:
    """Return the gap reported if no strands touch: two thicknesses, as for a relaxed piece."""
    return 2 * max(b.thickness_mm for b in given.bands)


def _frozen(values: Floats) -> Floats:
    values = values.copy()
    values.flags.writeable = False
    return values


def _has_not_settled(rest: RelaxedBands) -> bool:
    return bool({f.code for f in rest.findings} & {"rest-interrupted", "bands-drawn-crossing"})


def _move_bands(bands: Sequence[Band], curves: Sequence[Floats]) -> list[Band]:
    return [b._replace(points_mm=x) for b, x in zip(bands, curves, strict=True)]


_BETWEEN = 0.7  # the middle share of the length


def _piece(
    rest: RelaxedBands, flat: RelaxedBands, given: InitialShape, girth_mm: float | None, crossings: int
) -> RestingPiece:
    bands, count = given.bands, len(given.bands) - len(given.fasteners)
    made = np.concatenate(flat.positions_mm[:count])
    middle = 0.5 * (made.min(axis=0) + made.max(axis=0)) if rest is flat else np.zeros(3)
    moved = tuple(x - middle for x in rest.positions_mm)
    for x in moved:
        x.flags.writeable = False
    size = np.ptp(made, axis=0) + max(b.thickness_mm for b in bands[:count])
    if given.fasteners:  # the last bands spread round a clip, so the width is measured between the ends
        between = np.abs(made[:, 0] - 0.5 * (made[:, 0].min() + made[:, 0].max())) <= _BETWEEN * size[0] / 2
        if between.any():
            size[1:] += np.ptp(made[between, 1:], axis=0) - np.ptp(made[:, 1:], axis=0)
    return RestingPiece(
        relaxed=msgspec.structs.replace(rest, positions_mm=moved, iterates_mm=()),
        bands=count,
        fasteners=given.fasteners,
        radius_mm=tuple(b.thickness_mm / 2 for b in bands),
        closed=tuple(b.closed for b in bands),
        length_mm=float(size[0]),
        width_mm=float(size[1]),
        height_mm=float(size[2]),
        girth_mm=girth_mm,
        crossing_check=CrossingCheck(rest.gap_mm, crossings),
    )
