"""The one way in which this room compiles: cached on disk, free of the interpreter's lock, floats as IEEE
754 says."""

from __future__ import annotations

from numba import njit

__all__ = ["dense", "kernel"]

kernel = njit(cache=True, nogil=True, error_model="numpy")
#: For inner products: sums may be reordered, so that they run in wide registers.
dense = njit(cache=True, nogil=True, error_model="numpy", fastmath={"reassoc", "contract", "nsz"})
