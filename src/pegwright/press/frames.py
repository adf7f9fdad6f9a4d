"""Paint the frames of a film, one at a time, in order. What stands still is painted once."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable

from pegwright.lesson.frame import FRAME, HEAD, PICTURE, SIDE, WHOLE, Box, placed
from pegwright.lesson.motion import SWAP, moving_at, still_at
from pegwright.lesson.picture import Picture, Window
from pegwright.lesson.portrait import Portrait
from pegwright.lesson.storyboard import PAN, Cut, Storyboard
from pegwright.press.canvas import Pixels, Spot, blank, put, wide
from pegwright.press.portrait_png import portrait_pixels
from pegwright.press.strokes import (
    COLOUR,
    Letters,
    Line,
    Paint,
    Path,
    Stroke,
    Turn,
    marks_painted,
    painted,
    swatch,
    torn,
)

_GAP_PX = 24.0
_LINE = 1.32


class Painter:
    """Paints the frame at a second; asked for rising seconds, it paints no more than has changed."""

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
        """Return the frame at a second: RGBA; the very same array while nothing changes."""
        cut = self.board.cuts[max(0, bisect_right(self.starts, second + 1e-9) - 1)]
        if cut is not self.cut:
            self._begin(cut)
        if cut.motion is None or cut.window is None:
            assert self.still is not None
            return self.still
        share = (second - cut.start_s) / (cut.end_s - cut.start_s)
        return self._moving(cut, share)

    def _begin(self, cut: Cut) -> None:
        """Paint what stands still through a cut."""
        same = (
            self.cut is not None
            and self.furniture is not None
            and _told(cut) == _told(self.cut)
            and bool(cut.pictures or cut.motion) == bool(self.cut.pictures or self.cut.motion)
        )
        self.cut = cut
        self.ground = {}
        if not same or self.furniture is None:
            self.furniture = blank(self.width, self.tall, COLOUR.ground)
            put(self.furniture, self._furniture(cut), Spot(0.0, 0.0, self.scale))
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
                    words = _judged(picture.title, cut.sound[i], left, top + 26)
                    put(self.still, words, Spot(0.0, 0.0, self.scale))
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
            put(ground, marks_painted(still_at(motion, share), camera, COLOUR), self._spot(camera))
            if not panning and not motion.turned:
                self.ground[late] = ground
        else:
            ground = self.ground[late]
        shown = ground.copy()
        spot = self._spot(camera)
        put(shown, marks_painted(moving_at(motion, share), camera, COLOUR), spot)
        put(shown, torn(camera, COLOUR), spot)
        whole = self.furniture.copy()
        self._set(whole, shown, PICTURE)
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
        """Put a picture into a box, as large as fits, cut off at its own edges."""
        still = placed("", picture, box)
        window = picture.window
        own = Box(
            still.left_px,
            still.top_px,
            still.left_px + window.width_mm * still.px_a_mm,
            still.top_px + window.height_mm * still.px_a_mm,
        )
        part = self._box(own)
        spot = Spot(0.0, 0.0, still.px_a_mm * self.scale)
        put(part, painted(picture, COLOUR), spot)
        put(part, torn(window, COLOUR), spot)
        self._set(pixels, part, own)

    def _box(self, box: Box) -> Pixels:
        """Return a canvas of the size of a box."""
        left, top, right, bottom = self._edges(box)
        return blank(right - left, bottom - top, COLOUR.ground)

    def _set(self, pixels: Pixels, part: Pixels, box: Box) -> None:
        left, top, right, bottom = self._edges(box)
        pixels[top:bottom, left:right] = part

    def _edges(self, box: Box) -> tuple[int, int, int, int]:
        left, top, right, bottom = (round(v * self.scale) for v in (box.left, box.top, box.right, box.bottom))
        return left, top, max(right, left + 1), max(bottom, top + 1)

    def _spot(self, camera: Window) -> Spot:
        """Put a window into the middle of the picture's box."""
        wide_px, tall_px = PICTURE.right - PICTURE.left, PICTURE.bottom - PICTURE.top
        scale = min(wide_px / camera.width_mm, tall_px / camera.height_mm)
        left, top = (wide_px - scale * camera.width_mm) / 2, (tall_px - scale * camera.height_mm) / 2
        return Spot(left * self.scale, top * self.scale, scale * self.scale)

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
            yield from _lines(cut, box, 32.0 if shown else 44.0)
        if cut.side is None and (cut.number or cut.counted or not cut.lines):
            yield from self._key(key, cut.counted)

    def _key(self, box: Box, counted: bool) -> Iterable[Paint]:
        """Lay out the colours that are used: a piece of band, its letter, its name, and how many if asked."""
        room = min(92.0, (box.bottom - box.top) / max(1, len(self.board.key)))
        y = box.top + room / 2
        for entry, count in zip(self.board.key, self.board.counts, strict=True):
            for paint in swatch(entry.tint, entry.hatch):
                assert isinstance(paint, Stroke)
                yield _scaled(paint, box.left, y - 2.5 * 9.0, 9.0)
            named = f"{entry.letter}  {entry.name}"
            text = f"{count} × {named}" if counted else named
            yield from _at_left(text, box.left + 160, y, 32.0, end=box.right, bold=counted)
            y += room


def _told(cut: Cut) -> tuple[object, ...]:
    """Return all that is set beside the picture."""
    return (cut.heading, cut.number, cut.speed, cut.side, cut.lines, cut.strong, cut.counted)


def _camera(cut: Cut, window: Window, share: float) -> Window:
    """Return what the camera sees: it goes to its place first."""
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
        disc = Path((Turn(left + 38, middle, 36.0, 0.0, 360.0),), closed=True)
        yield Stroke((disc,), fill=COLOUR.accent)
        yield Letters(left + 38, middle, str(cut.number), 40.0, "#ffffff", True)
        left += 100
    end = HEAD.right
    if cut.speed > 1:
        text = f"× {cut.speed:.0f}" if cut.speed >= 1.95 else f"× {cut.speed:.1f}"
        long = wide(text, True) * 40
        end -= long + 90
        for i in (0, 1):
            x = end + 20 + i * 26
            head = (Line(x, middle - 20), Line(x + 26, middle), Line(x, middle + 20))
            yield Stroke((Path(head, closed=True),), fill=COLOUR.graphite)
        yield Letters(HEAD.right - long / 2, middle, text, 40.0, COLOUR.graphite, True)
    yield from _at_left(cut.heading, left, middle, 44.0, end=end - 20, bold=True)


def _judged(title: str, sound: bool, left: float, middle: float) -> Iterable[Paint]:
    """Set a picture's title with a tick, or with a cross."""
    x, r = left + 20, 15.0
    tick = (Path((Line(x - r, middle), Line(x - 4, middle + r), Line(x + r, middle - r))),)
    cross = (
        Path((Line(x - r, middle - r), Line(x + r, middle + r))),
        Path((Line(x - r, middle + r), Line(x + r, middle - r))),
    )
    ink = COLOUR.graphite if sound else COLOUR.accent
    yield Stroke(tick if sound else cross, ink=ink, width=7.0, round_cap=True)
    yield from _at_left(title, left + 56, middle, 36.0, end=left + 560, bold=True)


def _lines(cut: Cut, box: Box, size: float) -> Iterable[Paint]:
    """Set lines one under the other, the one being said strong; smaller where they would not fit."""
    while True:
        rows = [
            (row, i) for i, text in enumerate(cut.lines) for row in _wrapped(text, size, box.right - box.left)
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
        strong = i == cut.strong or cut.strong < 0
        ink = COLOUR.graphite if strong else COLOUR.name
        yield Letters(box.left + wide(row, strong) * size / 2, y, row, size, ink, strong)
        y += size * _LINE


def _wrapped(text: str, size: float, room: float) -> list[str]:
    rows: list[str] = []
    for word in text.split():
        if rows and wide(f"{rows[-1]} {word}", True) * size <= room:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
    return rows


def _at_left(
    text: str, left: float, middle: float, size: float, *, end: float, bold: bool = False
) -> Iterable[Paint]:
    """Set a text from the left, smaller where it would not fit."""
    long = wide(text, bold)
    size = min(size, (end - left) / long) if long else size
    yield Letters(left + long * size / 2, middle, text, size, COLOUR.graphite, bold)


def _scaled(stroke: Stroke, left: float, top: float, scale: float) -> Stroke:
    """Return a stroke of straight lines moved and enlarged."""
    paths = tuple(
        Path(tuple(Line(left + p.x * scale, top + p.y * scale) for p in path.pieces), path.closed)
        for path in stroke.paths
    )
    return stroke._replace(
        paths=paths, width=stroke.width * scale, dash=tuple(length * scale for length in stroke.dash)
    )
