"""What the earlier rooms say about the piece, as far as a learner needs to hear it."""

from __future__ import annotations

import msgspec


class Snap(msgspec.Struct, frozen=True, kw_only=True):
    """What happens if one band snaps: the most that any one takes with it, and how many take none.

    `worst_loses` counts the bands that fall besides the one that snapped; `harmless` counts the bands whose
    loss frees no other; `worst_band` is the number of a band that does the worst.
    """

    worst_loses: int
    harmless: int = 0
    worst_band: int | None = None


class Verdict(msgspec.Struct, frozen=True, kw_only=True):
    """Whether the finished piece holds.

    `held` means that every band is proved held. `falling` and `unproved` are the numbers of bands, in the
    order in which they were taken up. `left_out` counts faults for which something in the pattern was left
    out: what is said is then of another piece. `lines` are further facts in words of the lesson's language.
    """

    held: bool
    bands: int
    falling: tuple[int, ...] = ()
    unproved: tuple[int, ...] = ()
    left_out: int = 0
    snap: Snap | None = None
    lines: tuple[str, ...] = ()


class Fit(msgspec.Struct, frozen=True, kw_only=True):
    """How many bands the extension takes for a wrist of that girth (mm)."""

    wrist_mm: float
    extension_bands: int
