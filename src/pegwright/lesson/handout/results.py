"""What the earlier rooms say about the piece, as far as a learner needs to hear it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

import msgspec

from pegwright.finding import Finding
from pegwright.lesson.scene.portrait import Portrait

if TYPE_CHECKING:  # what reads stretch curves is slow to load, and seldom asked
    from pegwright.fit import PieceMeasurements, RepeatOptions


class SnapResult(msgspec.Struct, frozen=True, kw_only=True):
    """What happens if one band snaps: the most that any one takes with it, and how many take none.

    `worst_loses` counts the bands that fall besides the one that snapped; `harmless` counts the bands whose
    loss frees no other; `worst_band` is the number of a band that does the worst.
    """

    worst_loses: int
    harmless: int = 0
    worst_band: int | None = None


class HoldResult(msgspec.Struct, frozen=True, kw_only=True):
    """Whether the finished piece holds.

    `held` means that every band is proved held. `falling` and `unproved` are the numbers of bands, in the
    order in which they were taken up. `left_out` counts faults for which something in the pattern was left
    out: what is said is then of another piece. `causes` are the findings that say why.
    """

    held: bool
    bands: int
    falling: tuple[int, ...] = ()
    unproved: tuple[int, ...] = ()
    left_out: int = 0
    snap: SnapResult | None = None
    causes: tuple[Finding, ...] = ()


MissingReason = Literal["unasked", "nothing", "restless"]
"""Why there is no portrait: nobody asked, there is no band, it came not to rest."""


class FinishedPiece(msgspec.Struct, frozen=True, kw_only=True):
    """How the finished piece comes out: its portrait, with its size, and what pulling at it told.

    Without a portrait, `missing` says why. `measured` is there where the piece closes round a wrist and was
    pulled at; then `lengths` too, where another number of repeats is what makes it fit.
    """

    portrait: Portrait | None = None
    measured: PieceMeasurements | None = None
    lengths: RepeatOptions | None = None
    missing: MissingReason = "unasked"


UNKNOWN_FINISH = FinishedPiece()
"""Nothing is known of the finished piece, because nobody asked."""
