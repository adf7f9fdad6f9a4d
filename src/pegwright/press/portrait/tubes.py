"""The tubes of a portrait as arrays: smoothed, seen from a camera, or as a mesh."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.lesson import Camera, Portrait, Tube, tint_of

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]


class CentreLine(NamedTuple):
    """A smoothed centre line: points (n, 3) in mm, radius (n,) in mm, tension (n,) in N."""

    points: Floats
    radius: Floats
    tension: Floats
    closed: bool


class Mesh(NamedTuple):
    """A tube's surface: corners (n, 3) in mm, unit normals (n, 3), triangles (m, 3) anticlockwise."""

    corners: Floats
    normals: Floats
    triangles: Ints


def smooth(tube: Tube, parts: int) -> CentreLine:
    """Put `parts` − 1 points between each two, on cubics through all points (Catmull and Rom 1974).

    Tangents are scaled by chord length, so that unevenly spaced points give no loops.
    """
    points = np.array(tube.points_mm)
    values = np.column_stack([tube.radius_mm, tube.tension_n])
    if len(points) < 3 or parts == 1:
        return CentreLine(points, values[:, 0], values[:, 1], tube.closed)
    after, before = np.roll(points, -1, axis=0), np.roll(points, 1, axis=0)
    ahead = np.linalg.norm(after - points, axis=1)
    behind = np.roll(ahead, 1)
    slope = (after - points) / ahead[:, None] * behind[:, None] + (points - before) / behind[:, None] * ahead[
        :, None
    ]
    slope /= (ahead + behind)[:, None]
    if not tube.closed:
        slope[0], slope[-1] = (after - points)[0] / ahead[0], (points - before)[-1] / behind[-1]
    t = (np.arange(parts) / parts)[None, :, None]
    h1, h2 = 2 * t**3 - 3 * t**2 + 1, t**3 - 2 * t**2 + t
    reach = ahead[:, None, None]
    found = (
        h1 * points[:, None]
        + h2 * reach * slope[:, None]
        + (1 - h1) * after[:, None]
        + (t**3 - t**2) * reach * np.roll(slope, -1, axis=0)[:, None]
    ).reshape(-1, 3)
    between = ((1 - t) * values[:, None] + t * np.roll(values, -1, axis=0)[:, None]).reshape(-1, 2)
    if not tube.closed:
        last = (len(points) - 1) * parts + 1
        found, between = found[:last], between[:last]
    return CentreLine(found, between[:, 0], between[:, 1], tube.closed)


def project(line: CentreLine, camera: Camera) -> Floats:
    """Return points (n, 3) as the camera sees them, in mm from the window's upper left corner.

    The axes are right, down (as on paper), and towards the viewer.
    """
    right, up = np.array(camera.right), np.array(camera.up)
    found = line.points @ np.array([right, up, np.cross(right, up)]).T
    left, _, _, top = camera.window_mm
    return np.column_stack([found[:, 0] - left, top - found[:, 1], found[:, 2]])


def point_tints(portrait: Portrait, tube: Tube, line: CentreLine, *, tension: bool) -> list[str]:
    """Return the tint at every point of a line: that of its colour or, with `tension`, of its tension."""
    if not tension or tube.kind != "band":
        return [tube.tint] * len(line.points)
    return [tint_of(portrait, float(t)) for t in line.tension]


def parse_rgb(tint: str) -> tuple[int, int, int]:
    """Return red, green and blue (0 to 255) of a tint (#rrggbb)."""
    return int(tint[1:3], 16), int(tint[3:5], 16), int(tint[5:7], 16)


def linear_rgb(tint: str) -> Floats:
    """Return a tint in linear light (3,), 0 to 1 (sRGB: IEC 61966-2-1)."""
    v = np.array(parse_rgb(tint)) / 255
    return np.where(v <= 0.04045, v / 12.92, ((v + 0.055) / 1.055) ** 2.4)


def tube_mesh(line: CentreLine, sides: int) -> Mesh:
    """Return the surface of a tube with `sides` sides, its frames carried along without twist.

    The frames are rotation-minimising (W. Wang, B. Jüttler, D. Zheng and Y. Liu, ACM Trans. Graph. 27(1)
    (2008) 2, double reflection); on a closed tube the mismatch at the seam is spread along it.
    """
    points, n = line.points, len(line.points)
    tangent = np.roll(points, -1, axis=0) - np.roll(points, 1, axis=0)
    if not line.closed:
        tangent[0], tangent[-1] = points[1] - points[0], points[-1] - points[-2]
    tangent /= np.linalg.norm(tangent, axis=1)[:, None]
    first = np.cross(tangent[0], np.eye(3)[np.argmin(np.abs(tangent[0]))])
    normal = [first / np.linalg.norm(first)]
    for i in range(n if line.closed else n - 1):
        normal.append(
            _reflect_normal(points[i], points[(i + 1) % n], tangent[i], tangent[(i + 1) % n], normal[-1])
        )
    frame = np.array(normal[:n])
    side = np.cross(tangent, frame)
    spin = 0.0
    if line.closed:
        spin = -float(np.arctan2(normal[n] @ side[0], normal[n] @ frame[0]))
    angle = np.arange(sides) * 2 * np.pi / sides + (np.arange(n) / n * spin)[:, None]
    out = np.cos(angle)[:, :, None] * frame[:, None] + np.sin(angle)[:, :, None] * side[:, None]
    corners = points[:, None] + line.radius[:, None, None] * out
    ring = np.arange(n if line.closed else n - 1)[:, None]
    edge = np.arange(sides)[None, :]
    here, there = ring * sides, (ring + 1) % n * sides
    a, b = here + edge, here + (edge + 1) % sides
    c, d = there + edge, there + (edge + 1) % sides
    triangles = np.concatenate(
        [np.stack([a, b, c], axis=-1).reshape(-1, 3), np.stack([b, d, c], axis=-1).reshape(-1, 3)]
    )
    made = Mesh(corners.reshape(-1, 3), out.reshape(-1, 3), triangles)
    return made if line.closed else _cap_ends(made, line, tangent, sides)


def _reflect_normal(a: Floats, b: Floats, along: Floats, next_along: Floats, normal: Floats) -> Floats:
    """Carry a normal from one point to the next by two reflections."""
    step = b - a
    square = float(step @ step)
    reflected = normal - 2 / square * float(step @ normal) * step
    turned = along - 2 / square * float(step @ along) * step
    other = next_along - turned
    square = float(other @ other)
    found = reflected if square < 1e-24 else reflected - 2 / square * float(other @ reflected) * other
    return np.asarray(found / np.linalg.norm(found), dtype=np.float64)


def _cap_ends(made: Mesh, line: CentreLine, tangent: Floats, sides: int) -> Mesh:
    """Close both ends of an open tube with flat caps, which have their own corners."""
    corners, normals, triangles = [made.corners], [made.normals], [made.triangles]
    count = len(made.corners)
    for at, outward in ((0, -tangent[0]), (len(line.points) - 1, tangent[-1])):
        ring = made.corners[at * sides : (at + 1) * sides]
        corners += [line.points[at : at + 1], ring]
        normals.append(np.tile(outward, (sides + 1, 1)))
        rim = np.arange(sides)
        fan = np.stack([np.full(sides, 0), 1 + rim, 1 + (rim + 1) % sides], axis=1)
        triangles.append(count + (fan[:, ::-1] if at == 0 else fan))
        count += sides + 1
    return Mesh(np.concatenate(corners), np.concatenate(normals), np.concatenate(triangles))
