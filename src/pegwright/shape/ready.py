"""The kernels compiled in two processes the first time; afterwards they come from the cache on disk.

Numba compiles one kernel at a time in a process, however many threads ask. So a second process compiles what
orders and factors, and then what is needed last, and leaves it in the cache, while this one draws, and
compiles distances, forces and energies.
"""

from __future__ import annotations

import functools
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import numpy as np

from pegwright.shape import contact, dissect, elastic, friction, multifrontal, near, replay
from pegwright.shape.rods import Band, Floats, Rods, build_rods

__all__ = ["begin", "compile_orders", "get_ready"]

_COMPILE = "from pegwright.shape.ready import compile_orders, compile_rest; compile_orders(); compile_rest()"
_POLL_S = 0.25


@functools.cache
def _told() -> list[bool]:
    """Whether this process has seen to its kernels."""
    return []


def begin() -> None:
    """Let the second process begin, where it has anything to do, while this one still draws."""
    if not _told():
        _second()


@functools.cache
def _second() -> subprocess.Popen[bytes] | None:
    """The second process, begun once; None where nothing is left for it or none can be had."""
    return None if _compiled(multifrontal._solve) or (os.cpu_count() or 1) < 2 else _start()


def get_ready(hear: Callable[[int], bool]) -> bool:
    """Compile whatever is not yet in the cache; False where `hear`, told of every step taken, said to stop.

    Where no second process can be had, the rest is compiled when it is first called.
    """
    if _told():
        return True
    wanted = (elastic.elastic, contact.contact, multifrontal._solve, near._find_pairs)
    if all(_compiled(kernel) for kernel in wanted):
        _told().append(True)
        return True
    helper = _second()
    going = True
    try:
        for step, (work, last) in enumerate(_FORCES):
            going = going and hear(step)
            if going and not _compiled(last):
                work(*_scene())
        while going and helper is not None and not _compiled(multifrontal._solve):
            try:
                helper.wait(_POLL_S)
                break
            except subprocess.TimeoutExpired:
                going = hear(len(_FORCES))
    finally:
        if not going and helper is not None and helper.poll() is None:
            helper.kill()
            helper.wait()
            _second.cache_clear()
    if going:
        _told().append(True)
    return going


def compile_orders() -> None:
    """Compile what orders and factors: the half that the second process takes."""
    x, rods = _scene()
    n = len(x)
    links = dissect.neighbours(rods, np.array([[0, 12]]))
    into = multifrontal.Factor(dissect.mend(dissect.dissect(x, *links, 4), *links))
    blocks = np.zeros((3, n, 3, 3))
    blocks[0] = np.eye(3)
    multifrontal.factor(into, rods, blocks, np.zeros((1, 4), np.int64), np.zeros((1, 4, 4, 3, 3)), 0)
    multifrontal.solve(into, x)


def compile_rest() -> None:
    """Compile what is needed last, and then what the first process has not come to."""
    x, rods = _scene()
    replay._pass_throughs(x, x, rods.start, rods.next)
    held = friction.build_grip(x, rods, np.array([[0, 12]]), rods.radius_mm, 0.1, 0.8)
    friction.grip(
        x, rods.next, held, np.zeros_like(x), np.zeros((1, 4), np.int64), np.zeros((1, 4, 4, 3, 3)), 0
    )
    friction.grip_energy(x, rods.next, held)
    near.least_gap(x, rods, np.array([[0, 12]]))
    for work, last in reversed(_FORCES):
        if not _compiled(last):
            work(x, rods)


def _scene() -> tuple[Floats, Rods]:
    """Two small rings side by side."""
    turn = np.linspace(0, 2 * np.pi, 12, endpoint=False)
    ring = np.column_stack([5 * np.cos(turn), 5 * np.sin(turn), 0 * turn])
    return build_rods([Band(ring, 30.0, 1.5), Band(ring + np.array([0.0, 0.0, 1.2]), 30.0, 1.5)])


def _elastic(x: Floats, rods: Rods) -> None:
    elastic.elastic(x, rods, 1.0, np.zeros_like(x), np.zeros((3, len(x), 3, 3)))
    elastic.energy_only(x, rods)


def _stretches(x: Floats, rods: Rods) -> None:
    elastic.stretches(x, rods, np.zeros(len(x)), np.zeros(len(x)))


def _contact(x: Floats, rods: Rods) -> None:
    pairs, radius = np.array([[0, 12]]), np.zeros(len(x))
    corners, stiffness = np.zeros((1, 4), np.int64), np.zeros((1, 4, 4, 3, 3))
    contact.contact(x, rods, pairs, 1.0, 0.1, 1.0, radius, np.zeros_like(x), corners, stiffness, 0)
    contact.contact_energy(x, rods, pairs, 1.0, 0.1, radius)


def _near(x: Floats, rods: Rods) -> None:
    step = 0.01 * x
    found = near.find_pairs(x, step, rods, 3.0, 3.0)
    near.near_bound(x, step, rods, found, 0.1)
    near.far_bound(x, step, rods, 1.0, 3.0)
    near.close_pairs(x, rods, found.pairs, rods.radius_mm, 1.0)


#: What the first process compiles, and by which kernel it is known to be done.
_FORCES: tuple[tuple[Callable[[Floats, Rods], None], object], ...] = (
    (_contact, contact.contact_energy),
    (_near, near._close_pairs),
    (_elastic, elastic.energy_only),
    (_stretches, elastic.stretches),
)


def _compiled(kernel: object) -> bool:
    """Whether a kernel is compiled in this process, or a cached version is no older than its source.

    Without compiling (numba told not to) there is nothing to do.
    """
    known = getattr(kernel, "stats", None)
    if known is None or kernel.signatures:  # type: ignore[attr-defined]
        return True
    function = kernel.py_func  # type: ignore[attr-defined]
    source = Path(function.__code__.co_filename)
    kept = Path(known.cache_path).glob(f"{source.stem}.{function.__name__}-*.nbi")
    return any(file.stat().st_mtime >= source.stat().st_mtime for file in kept)


def _start() -> subprocess.Popen[bytes] | None:
    """The second process, where one can be had."""
    if not sys.executable or getattr(sys, "frozen", False):
        return None
    space = {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))}
    try:
        return subprocess.Popen(
            [sys.executable, "-c", _COMPILE],
            env=space,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
    except OSError:
        return None
