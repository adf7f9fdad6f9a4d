"""A picture as decided: things to draw at places in mm, in the maker's view of that moment.

x runs to the maker's right, y away from the maker; one unit is one millimetre of the loom. Marks are drawn
in the order in which they stand. A painter translates them and adds nothing.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

import msgspec

Spot = tuple[float, float]


class Arc(NamedTuple):
    """Part of a circle: centre and radius in mm, first angle and sweep in degrees (anticlockwise > 0)."""

    x_mm: float
    y_mm: float
    r_mm: float
    start_deg: float
    sweep_deg: float


Outline = tuple[Arc, ...]
"""A closed line: each arc is joined to the next by a straight piece."""


class _Mark(msgspec.Struct, frozen=True, kw_only=True, tag_field="mark"):
    """Marks tell themselves apart by `mark`."""


class PegMark(_Mark, frozen=True, kw_only=True, tag="peg"):
    """A peg from above: its name, its circle and the way its channel opens (degrees)."""

    at: str
    x_mm: float
    y_mm: float
    r_mm: float
    channel_deg: float
    busy: bool = False


class BandMark(_Mark, frozen=True, kw_only=True, tag="band"):
    """A band or a part of one, as a stroke along closed outlines. `hatch` numbers its pattern from 0."""

    band: int
    letter: str
    tint: str
    hatch: int
    outlines: tuple[Outline, ...]
    thick_mm: float
    highlighted: bool = False


class ArrowMark(_Mark, frozen=True, kw_only=True, tag="arrow"):
    """What the hand does: a curve (quadratic Bézier) from one spot to another, with a head at its end."""

    start: Spot
    bend: Spot
    end: Spot
    act: Literal["place", "hook", "lift", "move", "turn"] = "hook"


class LabelMark(_Mark, frozen=True, kw_only=True, tag="label"):
    """Words at a spot, centred; `size_mm` is the height of the type."""

    x_mm: float
    y_mm: float
    text: str
    size_mm: float
    bold: bool = False


class BadgeMark(_Mark, frozen=True, kw_only=True, tag="badge"):
    """A short text in a disc: a colour letter or the number of a step."""

    x_mm: float
    y_mm: float
    text: str
    r_mm: float
    role: Literal["letter", "number"] = "letter"


class FastenerMark(_Mark, frozen=True, kw_only=True, tag="fastener"):
    """A clip or a knot at a spot."""

    x_mm: float
    y_mm: float
    r_mm: float
    kind: Literal["clip", "knot"]


class PostMark(_Mark, frozen=True, kw_only=True, tag="post"):
    """A peg or the hook's shaft from the side: the middle of its foot, its width and height.

    With `open_side` the peg is seen from the side that its channel opens to.
    """

    x_mm: float
    y_mm: float
    w_mm: float
    h_mm: float
    open_side: bool = False


class BarMark(_Mark, frozen=True, kw_only=True, tag="bar"):
    """A loop from the side, lying round a peg: the middle of the bar, its width and height."""

    x_mm: float
    y_mm: float
    w_mm: float
    h_mm: float
    letter: str
    tint: str
    hatch: int
    highlighted: bool = False


class HookMark(_Mark, frozen=True, kw_only=True, tag="hook"):
    """A piece of the hook, or a cord, as a stroke: through its spots in order, the last one at the tip."""

    spots: tuple[Spot, ...]
    thick_mm: float


class FingerMark(_Mark, frozen=True, kw_only=True, tag="finger"):
    """A finger or a thumb, as a stroke through its spots in order, the last one at the tip."""

    spots: tuple[Spot, ...]
    thick_mm: float


Mark = (
    PegMark
    | BandMark
    | ArrowMark
    | LabelMark
    | BadgeMark
    | FastenerMark
    | PostMark
    | BarMark
    | HookMark
    | FingerMark
)


class Window(msgspec.Struct, frozen=True, kw_only=True):
    """The part of the plan that is shown, in mm, and on which sides the loom goes on beyond it."""

    left_mm: float
    near_mm: float
    right_mm: float
    far_mm: float
    goes_on: tuple[Literal["left", "right", "near", "far"], ...] = ()

    @property
    def width_mm(self) -> float:
        """Width of the part shown, mm."""
        return self.right_mm - self.left_mm

    @property
    def height_mm(self) -> float:
        """Height of the part shown (away from the maker), mm."""
        return self.far_mm - self.near_mm


class Picture(msgspec.Struct, frozen=True, kw_only=True):
    """Marks in a window, a title and a text that says the same to those who cannot see it.

    `scale` is the size on paper of one millimetre of the loom, in mm.
    """

    title: str
    text: str
    window: Window
    marks: tuple[Mark, ...]
    scale: float = 1.0
