"""Where things stand in a film frame: a 16:9 picture with its safe areas.

In pixels of a frame 1920 × 1080; a frame of 3840 × 2160 is the same, twice as large. Action safe leaves
3.5 % free at every edge, graphics (title) safe 5 % (EBU R 95 and SMPTE ST 2046-1 for 16:9; both from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from pegwright.lesson.handout.sheet import Lesson, LessonStep
from pegwright.lesson.scene.picture import Picture

FRAME = (1920, 1080)
ACTION_SAFE = 0.035
TITLE_SAFE = 0.05
CAPTION_SHARE = 0.17
"""The lowest part of a film frame, kept free of pictures: captions must not hide what is shown."""


class Box(msgspec.Struct, frozen=True):
    """A part of the frame in pixels: left, top, right, bottom."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def middle(self) -> tuple[float, float]:
        """The middle of the box."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2


_LEFT, _RIGHT = FRAME[0] * TITLE_SAFE, FRAME[0] * (1 - TITLE_SAFE)
_LOW = FRAME[1] * (1 - CAPTION_SHARE)
HEAD = Box(_LEFT, FRAME[1] * TITLE_SAFE, _RIGHT, 138.0)
WHOLE = Box(_LEFT, 160.0, _RIGHT, _LOW - 16.0)
PICTURE = Box(_LEFT, 160.0, 1330.0, _LOW - 16.0)
SIDE = Box(1366.0, 160.0, _RIGHT, _LOW - 16.0)
"""Where a film has its heading, what it shows, and what is told about it."""


class Still(msgspec.Struct, frozen=True, kw_only=True):
    """A picture put into a frame: the corner of its window in pixels, and the pixels a millimetre takes."""

    name: str
    picture: Picture
    left_px: float
    top_px: float
    px_a_mm: float


def safe_area(share: float) -> Box:
    """Return the frame without so much of its width and height at every edge."""
    w, h = FRAME
    return Box(w * share, h * share, w * (1 - share), h * (1 - share))


def place_in_frame(name: str, picture: Picture, box: Box) -> Still:
    """Put a picture in the middle of a box, as large as fits."""
    w, h = picture.window.width_mm, picture.window.height_mm
    scale = min((box.right - box.left) / w, (box.bottom - box.top) / h)
    x, y = box.middle
    return Still(
        name=name, picture=picture, left_px=x - scale * w / 2, top_px=y - scale * h / 2, px_a_mm=scale
    )


def frame_stills(lesson: Lesson) -> Iterator[Still]:
    """Put every step picture and every stack into a frame of its own, inside the title-safe area.

    They are named as `named_pictures` does.
    """
    box = safe_area(TITLE_SAFE)
    for step in lesson.steps:
        for name, picture in named_pictures(step):
            yield place_in_frame(name, picture, box)


def named_pictures(step: LessonStep) -> Iterator[tuple[str, Picture]]:
    """Name the pictures of a step: `step-003`, `step-003-2` where there are several, `step-003-stack`."""
    for i, picture in enumerate(step.pictures, start=1):
        part = f"-{i}" if len(step.pictures) > 1 else ""
        yield f"step-{step.number:03}{part}", picture
    if step.closeup:
        yield f"step-{step.number:03}-stack", step.closeup
