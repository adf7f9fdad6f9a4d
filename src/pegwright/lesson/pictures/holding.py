"""How band and hook are held: two plain drawings, the same for every piece but for the hand."""

from __future__ import annotations

from pegwright.lesson.say.phrasebook import Phrasebook
from pegwright.lesson.scene.outline import Disc, FlatStrand
from pegwright.lesson.scene.picture import (
    ArrowMark,
    BandMark,
    BarMark,
    FingerMark,
    HookMark,
    Mark,
    PegMark,
    Picture,
    PostMark,
    Spot,
    Window,
)
from pegwright.lesson.scene.scene import PLAIN_TINT

_FINGER_MM = 7.0
_PITCH_MM = 16.0
_PEG_MM = 3.2
_GREY = "#8b9aa3"


def draw_band_held(phrasebook: Phrasebook, left: bool = False) -> Picture:
    """Show from above how a band is laid: one hand keeps it on its first peg, the other stretches it.

    `left` says that the hook, and with it the hand that stretches, is the left one.
    """
    side = -1.0 if left else 1.0

    def finger(*spots: Spot) -> FingerMark:
        return FingerMark(spots=tuple((side * x, y) for x, y in spots), thick_mm=_FINGER_MM)

    # The band is on its first peg and held open a little past the second, ready to be let down on it.
    band = FlatStrand((Disc(0.0, 0.0, _PEG_MM + 1.2), Disc(side * 1.0, _PITCH_MM + 7.0, 2.2)))
    pegs = (
        PegMark(at="", x_mm=0.0, y_mm=y, r_mm=_PEG_MM, channel_deg=90.0, busy=True) for y in (0.0, _PITCH_MM)
    )
    marks: tuple[Mark, ...] = (
        *pegs,
        BandMark(
            band=1,
            letter="",
            tint=_GREY,
            hatch=0,
            outlines=(band.outline,),
            thick_mm=1.8,
            highlighted=True,
        ),
        # The hand that stays: one finger on the band, beside the first peg.
        finger((-32.0, -16.0), (-14.0, -7.5), (-4.8, -1.2)),
        # The hand that stretches: thumb below, finger above, the band between their tips.
        finger((36.0, 10.0), (15.0, 15.5), (4.2, 21.2)),
        finger((38.0, 25.0), (17.0, 30.0), (4.6, 27.8)),
        ArrowMark(start=(side * 9.5, 1.0), bend=(side * 10.5, 4.5), end=(side * 9.5, 8.0), act="place"),
    )
    frame = Window(left_mm=-22.0, near_mm=-11.0, right_mm=27.0, far_mm=33.0)
    return _picture(phrasebook, "band", marks, frame, left)


def draw_hook_held(phrasebook: Phrasebook, left: bool = False) -> Picture:
    """Show from the side how the hook is held: like a pencil, a finger of the other hand on the loops below.

    `left` says that the hook is in the left hand.
    """
    side = -1.0 if left else 1.0

    def spots(*there: Spot) -> tuple[Spot, ...]:
        return tuple((side * x, y) for x, y in there)

    def finger(*there: Spot) -> FingerMark:
        return FingerMark(spots=spots(*there), thick_mm=_FINGER_MM)

    lowest, *upper = (
        BarMark(
            x_mm=0.0,
            y_mm=3.5 + 3.3 * level,
            w_mm=11.0,
            h_mm=2.6,
            letter="",
            tint=PLAIN_TINT,
            hatch=0,
        )
        for level in range(3)
    )
    marks: tuple[Mark, ...] = (
        PostMark(x_mm=0.0, y_mm=0.0, w_mm=5.0, h_mm=17.0, open_side=True),
        lowest,
        # The middle finger lies behind the shaft, the thumb and the finger before it hold it.
        finger((46.0, 17.0), (24.0, 17.0), (7.2, 22.5)),
        # A straight shaft, inside the two upper loops; its barb is round the lowest.
        HookMark(spots=spots((13.6, 50.0), (0.9, 4.0)), thick_mm=1.2),
        *upper,
        HookMark(spots=spots((1.1, 4.8), (0.4, 1.6), (2.6, 1.6), (2.6, 3.4)), thick_mm=1.2),
        finger((46.0, 36.0), (28.0, 39.5), (10.2, 31.5)),
        finger((46.0, 26.5), (28.0, 25.0), (10.6, 26.4)),
        # The other hand keeps the loops down.
        finger((-40.0, 26.0), (-18.0, 20.5), (-6.2, 12.4)),
    )
    frame = Window(left_mm=-28.0, near_mm=-2.0, right_mm=36.0, far_mm=44.0)
    return _picture(phrasebook, "hook", marks, frame, left)


def _picture(
    phrasebook: Phrasebook, what: str, marks: tuple[Mark, ...], frame: Window, mirrored: bool
) -> Picture:
    if mirrored:
        frame = Window(
            left_mm=-frame.right_mm, near_mm=frame.near_mm, right_mm=-frame.left_mm, far_mm=frame.far_mm
        )
    return Picture(
        title=phrasebook.say(f"label-held-{what}"),
        text=phrasebook.say(f"picture-held-{what}"),
        window=frame,
        marks=marks,
        scale=0.6,
    )
