"""How this room compiles its kernels: cached on disk, without the interpreter lock, with IEEE 754 floats."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from numba import njit

from pegwright.shape.kernel_cache import use_kernel_cache

__all__ = ["dense_kernel", "kernel"]

_Function = TypeVar("_Function", bound=Callable[..., Any])


def kernel(function: _Function) -> _Function:
    """Compile a function on its first call, for each set of types."""
    return _compile(function)


def dense_kernel(function: _Function) -> _Function:
    """Compile as `kernel`, for inner products: sums may be reordered, so that they run in wide registers."""
    return _compile(function, fastmath={"reassoc", "contract", "nsz"})


def _compile(function: _Function, **options: Any) -> _Function:
    compiled: _Function = njit(nogil=True, error_model="numpy", **options)(function)
    use_kernel_cache(compiled)
    return compiled
