"""Compile the kernels in two processes the first time; later they come from the cache on disk.

Numba compiles one kernel at a time in a process, however many threads ask. So a second process compiles
ordering and factorisation, then what is needed last, and leaves them in the cache, while this one draws, then
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

from pegwright.shape import (
    contact,
    crossing_count,
    elastic,
    friction,
    multifrontal,
    near_pairs,
    nested_dissection,
    step_bound,
)
from pegwright.shape.elements import empty_elements
from pegwright.shape.kernel_cache import KernelCache, cache_folder
from pegwright.shape.rods import Band, Floats, Rods, build_rods

__all__ = ["compile_factorisation", "compile_kernels", "start_helper"]

_COMPILE = (
    "from pegwright.shape import kernel_compilation as kernels; "
    "kernels.compile_factorisation(); kernels.compile_remaining()"
)
_POLL_S = 0.25


@functools.cache
def _readiness() -> list[bool]:
    """Return a flag that tells whether this process has its kernels."""
    return []


def start_helper() -> None:
    """Start the second process, if it has anything to do, while this one is still drawing."""
    if not _readiness():
        _helper_process()


@functools.cache
def _helper_process() -> subprocess.Popen[bytes] | None:
    """Return the second process, started once; None if it has nothing to do or cannot be started."""
    return None if _is_compiled(multifrontal._substitute) or (os.cpu_count() or 1) < 2 else _spawn_helper()


def compile_kernels(hear: Callable[[int], bool]) -> bool:
    """Compile what is not in the cache; False if `hear`, called after every step, says to stop.

    Without a second process, the rest is compiled when it is first called.
    """
    if _readiness():
        return True
    wanted = (
        elastic.add_elastic_derivatives,
        contact.add_contact_derivatives,
        multifrontal._substitute,
        near_pairs._find_near_pairs,
    )
    if all(_is_compiled(kernel) for kernel in wanted):
        _readiness().append(True)
        return True
    helper = _helper_process()
    going = True
    try:
        for step, (work, last) in enumerate(_OWN_SHARE):
            going = going and hear(step)
            if going and not _is_compiled(last):
                work(*_scene())
        while going and helper is not None and not _is_compiled(multifrontal._substitute):
            try:
                helper.wait(_POLL_S)
                break
            except subprocess.TimeoutExpired:
                going = hear(len(_OWN_SHARE))
    finally:
        if not going and helper is not None and helper.poll() is None:
            helper.kill()
            helper.wait()
            _helper_process.cache_clear()
    if going:
        _readiness().append(True)
    return going


def compile_factorisation() -> None:
    """Compile ordering and factorisation: the second process's half."""
    x, rods = _scene()
    n = len(x)
    links = nested_dissection.vertex_adjacency(rods, np.array([[0, 12]]))
    into = multifrontal.CholeskyFactor(
        nested_dissection.mend_elimination_tree(
            nested_dissection.build_elimination_tree(x, *links, 4), *links
        )
    )
    blocks = np.zeros((3, n, 3, 3))
    blocks[0] = np.eye(3)
    multifrontal.factorise(into, rods, blocks, empty_elements(1), 0)
    multifrontal.solve_factored(into, x)


def compile_remaining() -> None:
    """Compile what is needed last, then what the first process has not reached."""
    x, rods = _scene()
    crossing_count._count_pass_throughs(x, x, rods.start, rods.next)
    held = friction.find_sticking_contacts(x, rods, np.array([[0, 12]]), rods.radius_mm, 0.1, 0.8)
    friction.add_friction_derivatives(x, rods.next, held, np.zeros_like(x), empty_elements(1), 0)
    friction.friction_energy(x, rods.next, held)
    near_pairs.smallest_gap(x, rods, np.array([[0, 12]]))
    for work, last in reversed(_OWN_SHARE):
        if not _is_compiled(last):
            work(x, rods)


def _scene() -> tuple[Floats, Rods]:
    """Return two small rings side by side."""
    turn = np.linspace(0, 2 * np.pi, 12, endpoint=False)
    ring = np.column_stack([5 * np.cos(turn), 5 * np.sin(turn), 0 * turn])
    return build_rods([Band(ring, 30.0, 1.5), Band(ring + np.array([0.0, 0.0, 1.2]), 30.0, 1.5)])


def _elastic(x: Floats, rods: Rods) -> None:
    elastic.add_elastic_derivatives(x, rods, 1.0, np.zeros_like(x), np.zeros((3, len(x), 3, 3)))
    elastic.elastic_energy(x, rods)


def _stretches(x: Floats, rods: Rods) -> None:
    elastic.fill_stretches(x, rods, np.zeros(len(x)), np.zeros(len(x)))


def _contact(x: Floats, rods: Rods) -> None:
    pairs, radius = np.array([[0, 12]]), np.zeros(len(x))
    contact.add_contact_derivatives(
        x, rods, pairs, 1.0, 0.1, 1.0, radius, np.zeros_like(x), empty_elements(1), 0
    )
    contact.contact_energy(x, rods, pairs, 1.0, 0.1, radius)


def _near(x: Floats, rods: Rods) -> None:
    step = 0.01 * x
    found = near_pairs.find_near_pairs(x, step, rods, 3.0, 3.0)
    step_bound.bound_listed_pairs(x, step, rods, found, 0.1)
    step_bound.bound_unlisted_pairs(x, step, rods, 1.0, 3.0)
    near_pairs.pairs_within(x, rods, found.pairs, rods.radius_mm, 1.0)


#: What the first process compiles, and the kernel that shows it to be done.
_OWN_SHARE: tuple[tuple[Callable[[Floats, Rods], None], object], ...] = (
    (_contact, contact.contact_energy),
    (_near, near_pairs._mark_pairs_within),
    (_elastic, elastic.elastic_energy),
    (_stretches, elastic.fill_stretches),
)


def _is_compiled(kernel: object) -> bool:
    """Return whether a kernel is compiled in this process, or cached on disk.

    If numba is disabled, there is nothing to compile.
    """
    if not hasattr(kernel, "py_func") or kernel.signatures:  # type: ignore[attr-defined]
        return True
    kept = kernel._cache  # type: ignore[attr-defined]
    return isinstance(kept, KernelCache) and kept.is_kept()


def _spawn_helper() -> subprocess.Popen[bytes] | None:
    """Return the second process, if one can be started and can leave its work where this one finds it.

    It imports from where this one does, but never from the current folder (-P), and runs elsewhere, because
    numba reads its settings from the current folder.
    """
    folder = cache_folder()
    if folder is None or not sys.executable or getattr(sys, "frozen", False):
        return None
    given = os.environ.get("PYTHONPATH", "").split(os.pathsep)
    known = [str(Path(__file__).resolve().parents[2]), *(path for path in given if Path(path).is_absolute())]
    try:
        return subprocess.Popen(
            [sys.executable, "-P", "-c", _COMPILE],
            env={**os.environ, "PYTHONPATH": os.pathsep.join(known)},
            cwd=folder,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
    except OSError:
        return None
