"""The piece at rest as decided for a painter: tubes in space, how they are looked at, what the colours mean.

A portrait shows one lie of a piece, flat or round a wrist. Painters project, shade and write; they choose
nothing. All lengths in mm, tensions in newton.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Literal, NamedTuple

import msgspec
import numpy as np
import numpy.typing as npt

from pegwright.finding import RefusedError, phrase
from pegwright.lesson.scene.scene import HATCHES, PLAIN_TINT
from pegwright.pattern import Pattern

if TYPE_CHECKING:  # a lesson is planned without the solver
    from pegwright.shape import RestingPiece

__all__ = [
    "VIEWS",
    "Camera",
    "Portrait",
    "PortraitStrand",
    "TensionStep",
    "Tube",
    "ViewName",
    "make_portrait",
    "mirror_portrait",
    "portrait_of",
]

Floats = npt.NDArray[np.float64]
Vector = tuple[float, float, float]
ViewName = Literal["front", "back", "side", "worn"]
TubeKind = Literal["band", "fastener", "wrist"]

VIEWS: tuple[ViewName, ...] = ("front", "back", "side", "worn")
RAMP = ("#f6efca", "#e1c977", "#cfa041", "#b6793f", "#905567", "#5f3f84", "#1c1c58")
"""Tension, low to high: its lightness falls evenly, so that every eye and every printer keeps the order."""
METAL = "#aeb4b9"
ARM = "#d8d2c8"
_MARGIN_MM = 3.0
_ARM_MM = 90.0  # how far the arm goes on either side of the piece: out of the picture
_ROUND_MM = 9.0  # what a picture of a worn piece leaves free round it
_NICE = (1.0, 2.0, 2.5, 5.0, 10.0)


class PortraitStrand(NamedTuple):
    """What a portrait is made of: one band (its number from 1, its letter) or fastener where it lies.

    `points_mm` is (n, 3); `radius_mm` and `tension_n` are (n,), or one value for all.
    """

    kind: TubeKind
    number: int
    letter: str
    points_mm: Floats
    radius_mm: Floats | float
    tension_n: Floats | float = 0.0
    closed: bool = True


class Tube(msgspec.Struct, frozen=True, kw_only=True):
    """One strand: its middle line, closed or not, with radius and tension at every point.

    `letter`, `name` and `tint` (#rrggbb) are those of its colour; `hatch` numbers its pattern in grey print.
    """

    kind: TubeKind
    number: int
    letter: str
    name: str
    tint: str
    hatch: int
    closed: bool
    points_mm: tuple[Vector, ...]
    radius_mm: tuple[float, ...]
    tension_n: tuple[float, ...]


class Camera(msgspec.Struct, frozen=True, kw_only=True):
    """A way of looking, without perspective: unit vectors to the right and up, and what is seen in mm.

    `window_mm` is left, bottom, right, top along those vectors. Towards the viewer is right × up. `text` says
    what is seen.
    """

    name: ViewName
    right: Vector
    up: Vector
    window_mm: tuple[float, float, float, float]
    text: str

    @property
    def size_mm(self) -> tuple[float, float]:
        """Width and height of what is seen, mm."""
        left, bottom, right, top = self.window_mm
        return right - left, top - bottom


class TensionStep(msgspec.Struct, frozen=True):
    """One colour of the tension map: from this tension (N) on, the tint."""

    from_n: float
    tint: str


class Portrait(msgspec.Struct, frozen=True, kw_only=True):
    """One lie of a piece, ready to be painted from every camera.

    `steps` is the scale of the tension map, `most_n` where it ends. `bar_mm` is the length of the scale bar.
    `girth_mm` is that of the wrist it is worn on, or None where it lies flat. `at_rest` is false where the
    solver was stopped or did not come to rest.
    """

    title: str
    tubes: tuple[Tube, ...]
    cameras: tuple[Camera, ...]
    steps: tuple[TensionStep, ...]
    most_n: float
    bar_mm: float
    length_mm: float
    width_mm: float
    height_mm: float
    girth_mm: float | None = None
    at_rest: bool = True

    def camera(self, name: ViewName) -> Camera:
        """Return the camera of that name.

        Raises:
            KeyError: the portrait is not seen from there.
        """
        for one in self.cameras:
            if one.name == name:
                return one
        raise KeyError(name)

    @property
    def key(self) -> tuple[Tube, ...]:
        """One tube of each colour letter, in the order in which the bands are taken up."""
        found: dict[str, Tube] = {}
        for tube in self.tubes:
            if tube.kind == "band":
                found.setdefault(tube.letter, tube)
        return tuple(found.values())


def make_portrait(
    title: str,
    strands: Iterable[PortraitStrand],
    pattern: Pattern | None = None,
    *,
    colourway: Mapping[str, str] | None = None,
    girth_mm: float | None = None,
    at_rest: bool = True,
    size_mm: Vector | None = None,
) -> Portrait:
    """Decide the portrait of a piece that lies flat (x along it, z towards the viewer), or on a wrist.

    On a wrist, of that girth, the arm runs along y. Colours are those of the pattern; `colourway` maps
    letters to other tints (#rrggbb). `size_mm` is the length, width and height as the solver measured them;
    without it they are those of the box round the bands.

    Raises:
        ValueError: there is no band, or a tint is none.
    """
    given = list(strands)
    bands = [one for one in given if one.kind == "band"]
    if not bands:
        raise RefusedError(phrase("no-bands"))
    other = dict(colourway or {})
    for tint in other.values():
        if len(tint) != 7 or tint[0] != "#" or not set(tint[1:]) <= set("0123456789abcdefABCDEF"):
            raise RefusedError(phrase("not-a-tint", tint=tint))
    listed = (
        {c.letter: (c.name, c.hex, i % HATCHES) for i, c in enumerate(pattern.colours)} if pattern else {}
    )
    turn = np.eye(3) if girth_mm else _levelling_turn(np.concatenate([one.points_mm for one in bands]))
    tubes = [_tube(one, turn, listed, other) for one in given]
    low, high = _bounding_box(tubes)
    length, width, height = size_mm or (float(v) for v in high - low)
    if girth_mm:
        length = girth_mm
        width, height = float(high[1] - low[1]), _thickness(tubes, girth_mm)
        tubes.append(_arm_tube(girth_mm, float(low[1]), float(high[1])))
    most, steps = _tension_scale(tubes)
    size = f"{length:.0f} mm long and {width:.0f} mm wide"
    cameras = (_worn_camera(tubes, title, girth_mm),) if girth_mm else _flat_cameras(tubes, title, size)
    across = max(camera.size_mm[0] for camera in cameras)
    return Portrait(
        title=title,
        tubes=tuple(tubes),
        cameras=cameras,
        steps=steps,
        most_n=most,
        bar_mm=_round_number(across / 6),
        length_mm=round(length, 3),
        width_mm=round(width, 3),
        height_mm=round(height, 3),
        girth_mm=girth_mm,
        at_rest=at_rest,
    )


def portrait_of(
    piece: RestingPiece,
    pattern: Pattern,
    letters: Sequence[str],
    *,
    colourway: Mapping[str, str] | None = None,
) -> Portrait:
    """Decide the portrait of a relaxed piece.

    `letters[b - 1]` is the colour letter of band b, as in `History.colours`.

    Raises:
        ValueError: a tint of the colourway is none.
    """
    rest = piece.relaxed
    strands = []
    for i, points in enumerate(rest.positions_mm):
        band = i < piece.bands
        strands.append(
            PortraitStrand(
                "band" if band else "fastener",
                i + 1 if band else piece.fasteners[i - piece.bands],
                letters[i] if band else "",
                points,
                piece.radius_mm[i] / np.sqrt(_at_points(np.maximum(rest.stretch[i], 0.25), piece.closed[i])),
                _at_points(rest.tension_n[i], piece.closed[i]),
                piece.closed[i],
            )
        )
    return make_portrait(
        pattern.title,
        strands,
        pattern,
        colourway=colourway,
        girth_mm=piece.girth_mm,
        at_rest=rest.converged,
        size_mm=(piece.length_mm, piece.width_mm, piece.height_mm),
    )


def mirror_portrait(portrait: Portrait) -> Portrait:
    """Return the portrait of the piece that the other hand makes: a band at rest knows no left and right.

    Raises:
        ValueError: the piece is worn.
    """
    if portrait.girth_mm is not None:
        raise ValueError("only a piece that lies flat is mirrored")
    tubes = tuple(
        msgspec.structs.replace(tube, points_mm=tuple((x, -y, z) for x, y, z in tube.points_mm))
        for tube in portrait.tubes
    )
    cameras = []
    for camera in portrait.cameras:
        left, bottom, right, top = camera.window_mm
        if camera.up[1]:  # it looks on the plane in which left and right lie
            bottom, top = -top, -bottom
        cameras.append(msgspec.structs.replace(camera, window_mm=(left, bottom, right, top)))
    return msgspec.structs.replace(portrait, tubes=tubes, cameras=tuple(cameras))


def _at_points(values: Floats, closed: bool) -> Floats:
    """Return values of edges (n,) at their points: the mean of the two edges that meet there."""
    before = np.roll(values, 1)
    if not closed:
        before[0] = values[0]
        values = np.append(values[:-1], before[-1])
    return 0.5 * (values + before)


def tint_of(portrait: Portrait, tension_n: float) -> str:
    """Return the tint that the tension map gives a tension."""
    found = portrait.steps[0].tint
    for step in portrait.steps:
        if tension_n >= step.from_n:
            found = step.tint
    return found


def _tube(
    one: PortraitStrand, turn: Floats, listed: Mapping[str, tuple[str, str, int]], other: Mapping[str, str]
) -> Tube:
    name, tint, hatch = listed.get(one.letter, (one.letter, PLAIN_TINT, 0))
    if one.kind != "band":
        name, tint, hatch = "clip", METAL, 0
    points = np.round(np.asarray(one.points_mm, dtype=np.float64) @ turn.T, 4)
    n = len(points)
    return Tube(
        kind=one.kind,
        number=one.number,
        letter=one.letter,
        name=name,
        tint=other.get(one.letter, tint).lower(),
        hatch=hatch,
        closed=one.closed,
        points_mm=tuple((float(x), float(y), float(z)) for x, y, z in points),
        radius_mm=tuple(np.round(np.broadcast_to(one.radius_mm, n), 4).tolist()),
        tension_n=tuple(np.round(np.broadcast_to(one.tension_n, n), 5).tolist()),
    )


def _levelling_turn(points: Floats) -> Floats:
    """Return the rotation (3, 3) about z that lays a long piece along x; a piece that is not long stays."""
    plan = points[:, :2] - points[:, :2].mean(axis=0)
    spread, axes = np.linalg.eigh(plan.T @ plan)
    if spread[0] * 4 > spread[1]:
        return np.eye(3)
    x, y = axes[:, 1] * (1.0 if abs(axes[0, 1]) < 1e-9 or axes[0, 1] > 0 else -1.0)
    return np.array([[x, y, 0.0], [-y, x, 0.0], [0.0, 0.0, 1.0]])


def _bounding_box(tubes: Sequence[Tube]) -> tuple[Floats, Floats]:
    """Return the lowest and the highest corner of all bands, skin included."""
    lows, highs = [], []
    for tube in tubes:
        if tube.kind == "band":
            points, radius = np.array(tube.points_mm), np.array(tube.radius_mm)[:, None]
            lows.append((points - radius).min(axis=0))
            highs.append((points + radius).max(axis=0))
    return np.min(lows, axis=0), np.max(highs, axis=0)


def _thickness(tubes: Sequence[Tube], girth_mm: float) -> float:
    """Return how far the piece stands out from the wrist."""
    out = 0.0
    for tube in tubes:
        if tube.kind == "band":
            p = np.array(tube.points_mm)
            out = max(out, float((np.hypot(p[:, 0], p[:, 2]) + np.array(tube.radius_mm)).max()))
    return out - girth_mm / (2 * math.pi)


def _arm_tube(girth_mm: float, low: float, high: float) -> Tube:
    ends = ((0.0, low - _ARM_MM, 0.0), (0.0, high + _ARM_MM, 0.0))
    radius = round(girth_mm / (2 * math.pi), 4)
    return Tube(
        kind="wrist",
        number=0,
        letter="",
        name="wrist",
        tint=ARM,
        hatch=0,
        closed=False,
        points_mm=ends,
        radius_mm=(radius, radius),
        tension_n=(0.0, 0.0),
    )


def _tension_scale(tubes: Sequence[Tube]) -> tuple[float, tuple[TensionStep, ...]]:
    """Return where the scale ends, and its steps: round numbers, as many as there are tints or fewer."""
    most = max((max(tube.tension_n) for tube in tubes if tube.kind == "band"), default=0.0)
    width = _round_number(max(most, 1e-3) / len(RAMP), up=True)
    count = max(1, math.ceil(round(most / width, 6)))
    shown = [RAMP[round(i * (len(RAMP) - 1) / max(count - 1, 1))] for i in range(count)]
    return round(count * width, 6), tuple(
        TensionStep(round(i * width, 6), tint) for i, tint in enumerate(shown)
    )


def _round_number(value: float, *, up: bool = False) -> float:
    """Return the round number (1, 2, 2.5 or 5 with zeros) nearest below, or above, a value."""
    whole = 10.0 ** math.floor(math.log10(value))
    if up:
        return next(n * whole for n in _NICE if n * whole >= value * (1 - 1e-9))
    return max(n * whole for n in _NICE if n * whole <= value * (1 + 1e-9))


def _flat_cameras(tubes: Sequence[Tube], title: str, size: str) -> tuple[Camera, ...]:
    looks: tuple[tuple[ViewName, Vector, Vector, str], ...] = (
        ("front", (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), "from the front"),
        ("back", (1.0, 0.0, 0.0), (0.0, -1.0, 0.0), "turned over, from the back"),
        ("side", (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), "from the side, the front up"),
    )
    return tuple(
        _camera(tubes, name, right, up, f"{title} at rest, {size}, seen {how}")
        for name, right, up, how in looks
    )


def _worn_camera(tubes: Sequence[Tube], title: str, girth_mm: float) -> Camera:
    """Look at the piece on the arm: its middle in front, the arm rising to the right."""
    toward = np.array([-0.28, -0.52, -1.0])
    toward /= np.linalg.norm(toward)
    arm = np.array([0.0, 1.0, 0.0]) - toward[1] * toward
    arm /= np.linalg.norm(arm)
    across = np.cross(arm, toward)
    tilt = math.radians(62.0)
    up = math.sin(tilt) * arm - math.cos(tilt) * across
    right = np.cross(up, toward)
    text = f"{title} on a wrist of {girth_mm:.0f} mm"
    one = [tuple(float(v) for v in np.round(axis, 9)) for axis in (right, up)]
    return _camera(tubes, "worn", (one[0][0], one[0][1], one[0][2]), (one[1][0], one[1][1], one[1][2]), text)


def _camera(tubes: Sequence[Tube], name: ViewName, right: Vector, up: Vector, text: str) -> Camera:
    lows, highs = [], []
    margin = _ROUND_MM if name == "worn" else _MARGIN_MM
    for tube in tubes:
        if tube.kind == "wrist":
            continue  # the arm runs out of the picture
        seen = np.array(tube.points_mm) @ np.array([right, up]).T
        radius = np.array(tube.radius_mm)[:, None]
        lows.append((seen - radius).min(axis=0))
        highs.append((seen + radius).max(axis=0))
    low, high = np.min(lows, axis=0) - margin, np.max(highs, axis=0) + margin
    window = tuple(round(float(v), 3) for v in (*low, *high))
    return Camera(
        name=name,
        right=right,
        up=up,
        window_mm=(window[0], window[1], window[2], window[3]),
        text=text,
    )
