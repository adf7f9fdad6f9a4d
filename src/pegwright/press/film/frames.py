"""Paint the frames of a film one at a time, in order. What does not move is painted once."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable

from pegwright.lesson import (
    FRAME,
    HEAD,
    PAN,
    PICTURE,
    SIDE,
    SWAP,
    WHOLE,
    Box,
    Cut,
    Picture,
    Portrait,
    Storyboard,
    Window,
    moving_marks_at,
    place_in_frame,
    stack_at,
    still_marks_at,
)
from pegwright.press.paint.bands import paint_swatch
from pegwright.press.paint.inks import COLOUR
from pegwright.press.paint.marks import paint_marks, paint_picture
from pegwright.press.paint.paths import ArcTo, Letters, LineTo, Paint, Stroke, VectorPath
from pegwright.press.paint.torn_edges import paint_torn_edges
from pegwright.press.portrait.pixels import portrait_pixels
from pegwright.press.raster.canvas import Placement, blank_canvas, paint_on, text_width
from pegwright.press.raster.png import Pixels

_GAP_PX = 24.0
_LINE = 1.32


class FramePainter:
    """Paints the frame at a given second. Called in order of time, it repaints only what has changed."""

    def __init__(self, board: Storyboard, tall_px: int) -> None:
        self.board = board
        self.scale = tall_px / FRAME[1]
        self.width = FRAME[0] * tall_px // FRAME[1] // 2 * 2
        self.tall = tall_px
        self.starts = [cut.start_s for cut in board.cuts]
        self.cut: Cut | None = None
        self.furniture: Pixels | None = None
        self.ground: dict[bool, Pixels] = {}
        self.still: Pixels | None = None
        self.cover: Pixels | None = None

    def frame(self, second: float) -> Pixels:
        """Return the frame at a second as RGBA: the same array object while nothing changes."""
        cut = self.board.cuts[max(0, bisect_right(self.starts, second + 1e-9) - 1)]
        if cut is not self.cut:
            self._begin(cut)
        if cut.motion is None or cut.window is None:
            assert self.still is not None
            return self.still
        share = (second - cut.start_s) / (cut.end_s - cut.start_s)
        return self._moving(cut, share)

    def _begin(self, cut: Cut) -> None:
        """Paint what does not move during a cut."""
        same = (
            self.cut is not None
            and self.furniture is not None
            and _side_content(cut) == _side_content(self.cut)
            and bool(cut.pictures or cut.motion) == bool(self.cut.pictures or self.cut.motion)
        )
        self.cut = cut
        self.ground = {}
        if not same or self.furniture is None:
            self.furniture = blank_canvas(self.width, self.tall, COLOUR.ground)
            paint_on(self.furniture, self._furniture(cut), Placement(0.0, 0.0, self.scale))
            if cut.side is not None:
                self._picture(self.furniture, cut.side, SIDE)
        self.still = self.furniture.copy()
        if cut.opening and self.board.portrait is not None:
            self._set(self.still, self._cover(self.board.portrait), PICTURE)
        if cut.pictures:
            long = (PICTURE.right - PICTURE.left + _GAP_PX) / len(cut.pictures)
            for i, picture in enumerate(cut.pictures):
                left, top = PICTURE.left + i * long, PICTURE.top
                if cut.sound:
                    words = _verdict_heading(picture.title, cut.sound[i], left, top + 26)
                    paint_on(self.still, words, Placement(0.0, 0.0, self.scale))
                    top += 64
                box = Box(left, top, left + long - _GAP_PX, PICTURE.bottom)
                self._picture(self.still, picture, box)

    def _moving(self, cut: Cut, share: float) -> Pixels:
        motion, window = cut.motion, cut.window
        assert motion is not None
        assert window is not None
        assert self.furniture is not None
        camera = _camera(cut, window, share)
        panning = camera is not window
        late = share >= SWAP
        if panning or motion.turned or late not in self.ground:
            ground = self._box(PICTURE)
            paint_on(ground, paint_marks(still_marks_at(motion, share), camera, COLOUR), self._spot(camera))
            if not panning and not motion.turned:
                self.ground[late] = ground
        else:
            ground = self.ground[late]
        shown = ground.copy()
        spot = self._spot(camera)
        paint_on(shown, paint_marks(moving_marks_at(motion, share), camera, COLOUR), spot)
        paint_on(shown, paint_torn_edges(camera, COLOUR), spot)
        whole = self.furniture.copy()
        self._set(whole, shown, PICTURE)
        if cut.side is not None and not motion.turned:
            self._set(whole, self._box(SIDE), SIDE)
            self._picture(whole, stack_at(cut.side, share, taken=bool(motion.hook)), SIDE)
        return whole

    def _cover(self, portrait: Portrait) -> Pixels:
        """Return the finished piece in the middle of the picture's box, painted once."""
        if self.cover is None:
            self.cover = self._box(PICTURE)
            tall, wide = self.cover.shape[:2]
            long, high = portrait.camera("front").size_mm
            seen = portrait_pixels(portrait, "front", min(wide, int(tall * long / high)), COLOUR.ground)
            top, left = (tall - seen.shape[0]) // 2, (wide - seen.shape[1]) // 2
            self.cover[top : top + seen.shape[0], left : left + seen.shape[1], :3] = seen[:tall]
        return self.cover

    def _picture(self, pixels: Pixels, picture: Picture, box: Box) -> None:
        """Put a picture into a box as large as it fits, clipped to its own edges."""
        still = place_in_frame("", picture, box)
        window = picture.window
        own = Box(
            still.left_px,
            still.top_px,
            still.left_px + window.width_mm * still.px_a_mm,
            still.top_px + window.height_mm * still.px_a_mm,
        )
        part = self._box(own)
        spot = Placement(0.0, 0.0, still.px_a_mm * self.scale)
        paint_on(part, paint_picture(picture, COLOUR), spot)
        paint_on(part, paint_torn_edges(window, COLOUR), spot)
        self._set(pixels, part, own)

    def _box(self, box: Box) -> Pixels:
        """Return a blank canvas the size of a box."""
        left, top, right, bottom = self._edges(box)
        return blank_canvas(right - left, bottom - top, COLOUR.ground)

    def _set(self, pixels: Pixels, part: Pixels, box: Box) -> None:
        left, top, right, bottom = self._edges(box)
        pixels[top:bottom, left:right] = part

    def _edges(self, box: Box) -> tuple[int, int, int, int]:
        left, top, right, bottom = (round(v * self.scale) for v in (box.left, box.top, box.right, box.bottom))
        return left, top, max(right, left + 1), max(bottom, top + 1)

    def _spot(self, camera: Window) -> Placement:
        """Centre a window in the picture's box."""
        wide_px, tall_px = PICTURE.right - PICTURE.left, PICTURE.bottom - PICTURE.top
        scale = min(wide_px / camera.width_mm, tall_px / camera.height_mm)
        left, top = (wide_px - scale * camera.width_mm) / 2, (tall_px - scale * camera.height_mm) / 2
        return Placement(left * self.scale, top * self.scale, scale * self.scale)

    # --- words and key ---

    def _furniture(self, cut: Cut) -> Iterable[Paint]:
        yield from _heading(cut)
        shown = bool(cut.pictures or cut.motion or (cut.opening and self.board.portrait))
        key = SIDE
        if cut.lines:
            box = SIDE if shown else PICTURE if cut.number or cut.counted else WHOLE
            if box is SIDE and cut.counted:
                half = (SIDE.top + SIDE.bottom) / 2
                box, key = (
                    Box(SIDE.left, SIDE.top, SIDE.right, half),
                    Box(SIDE.left, half, SIDE.right, SIDE.bottom),
                )
            yield from _line_block(cut, box, 32.0 if shown else 44.0)
        if cut.side is None and (cut.number or cut.counted or not cut.lines):
            yield from self._key(key, cut.counted)

    def _key(self, box: Box, counted: bool) -> Iterable[Paint]:
        """Lay out the colours in use: a swatch, the letter, the name, and the count if `counted`."""
        room = min(92.0, (box.bottom - box.top) / max(1, len(self.board.key)))
        y = box.top + room / 2
        for entry, count in zip(self.board.key, self.board.counts, strict=True):
            for paint in paint_swatch(entry.tint, entry.hatch):
                assert isinstance(paint, Stroke)
                yield _scale_stroke(paint, box.left, y - 2.5 * 9.0, 9.0)
            named = f"{entry.letter}  {entry.name}"
            text = f"{count} × {named}" if counted else named
            yield from _left_aligned(text, box.left + 160, y, 32.0, end=box.right, bold=counted)
            y += room


def _side_content(cut: Cut) -> tuple[object, ...]:
    """Return everything that is set beside the picture."""
    return (cut.heading, cut.number, cut.speed, cut.side, cut.lines, cut.line_said, cut.counted)


def _camera(cut: Cut, window: Window, share: float) -> Window:
    """Return what the camera sees: it moves to its place first."""
    start = cut.came_from
    if start is None or start == window or share >= PAN:
        return window
    at = share / PAN
    at = at * at * (3 - 2 * at)
    sides = {
        side: getattr(start, side) + (getattr(window, side) - getattr(start, side)) * at
        for side in ("left_mm", "near_mm", "right_mm", "far_mm")
    }
    return Window(**sides)


def _heading(cut: Cut) -> Iterable[Paint]:
    left, middle = HEAD.left, (HEAD.top + HEAD.bottom) / 2
    if cut.number:
        disc = VectorPath((ArcTo(left + 38, middle, 36.0, 0.0, 360.0),), closed=True)
        yield Stroke((disc,), fill=COLOUR.accent)
        yield Letters(left + 38, middle, str(cut.number), 40.0, "#ffffff", True)
        left += 100
    end = HEAD.right
    if cut.speed > 1:
        text = f"× {cut.speed:.0f}" if cut.speed >= 1.95 else f"× {cut.speed:.1f}"
        long = text_width(text, True) * 40
        end -= long + 90
        for i in (0, 1):
            x = end + 20 + i * 26
            head = (LineTo(x, middle - 20), LineTo(x + 26, middle), LineTo(x, middle + 20))
            yield Stroke((VectorPath(head, closed=True),), fill=COLOUR.graphite)
        yield Letters(HEAD.right - long / 2, middle, text, 40.0, COLOUR.graphite, True)
    yield from _left_aligned(cut.heading, left, middle, 44.0, end=end - 20, bold=True)


def _verdict_heading(title: str, sound: bool, left: float, middle: float) -> Iterable[Paint]:
    """Set a picture's title with a tick, or with a cross."""
    x, r = left + 20, 15.0
    tick = (VectorPath((LineTo(x - r, middle), LineTo(x - 4, middle + r), LineTo(x + r, middle - r))),)
    cross = (
        VectorPath((LineTo(x - r, middle - r), LineTo(x + r, middle + r))),
        VectorPath((LineTo(x - r, middle + r), LineTo(x + r, middle - r))),
    )
    ink = COLOUR.graphite if sound else COLOUR.accent
    yield Stroke(tick if sound else cross, ink=ink, width=7.0, round_cap=True)
    yield from _left_aligned(title, left + 56, middle, 36.0, end=left + 560, bold=True)


def _line_block(cut: Cut, box: Box, size: float) -> Iterable[Paint]:
    """Set lines one below the other, the spoken one in bold, and smaller if they would not fit."""
    while True:
        rows = [
            (row, i) for i, text in enumerate(cut.lines) for row in _wrap(text, size, box.right - box.left)
        ]
        gaps = 0.45 * size * (len(cut.lines) - 1)
        if len(rows) * size * _LINE + gaps <= box.bottom - box.top or size <= 18:
            break
        size *= 0.92
    y = box.top + size / 2
    last = 0
    for row, i in rows:
        y += 0.45 * size if i != last else 0.0
        last = i
        bold = i == cut.line_said or cut.line_said < 0
        ink = COLOUR.graphite if bold else COLOUR.name
        yield Letters(box.left + text_width(row, bold) * size / 2, y, row, size, ink, bold)
        y += size * _LINE


def _wrap(text: str, size: float, room: float) -> list[str]:
    rows: list[str] = []
    for word in text.split():
        if rows and text_width(f"{rows[-1]} {word}", True) * size <= room:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
    return rows


def _left_aligned(
    text: str, left: float, middle: float, size: float, *, end: float, bold: bool = False
) -> Iterable[Paint]:
    """Set a text flush left, and smaller if it would not fit."""
    long = text_width(text, bold)
    size = min(size, (end - left) / long) if long else size
    yield Letters(left + long * size / 2, middle, text, size, COLOUR.graphite, bold)


def _scale_stroke(stroke: Stroke, left: float, top: float, scale: float) -> Stroke:
    """Return a stroke of straight lines moved and enlarged."""
    paths = tuple(
        VectorPath(tuple(LineTo(left + p.x * scale, top + p.y * scale) for p in path.segments), path.closed)
        for path in stroke.paths
    )
    return stroke._replace(
        paths=paths, width=stroke.width * scale, dash=tuple(length * scale for length in stroke.dash)
    )
