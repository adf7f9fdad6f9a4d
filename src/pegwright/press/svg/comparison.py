"""Two finished pictures side by side, the right one and the wrong one, with a few lines of text."""

from __future__ import annotations

import re
from base64 import b64encode
from collections.abc import Sequence
from html import escape
from textwrap import wrap
from typing import NamedTuple

from pegwright.press.paint.inks import COLOUR
from pegwright.press.svg.pictures import FONT

_GAP_MM, _HEAD_MM, _LINE_MM, _LETTER_MM = 8.0, 9.0, 5.0, 3.6
_LETTERS_TO_MM = 0.52  # the mean width of a letter, as a share of its height
_NARROWEST_MM = 90.0
_LONG = 2.0  # pictures wider than this many times their height are stacked
_SIZE = re.compile(r'<svg [^>]*?width="([0-9.]+)mm" height="([0-9.]+)mm"')


class HeadedPicture(NamedTuple):
    """One of the pictures: its heading, and an SVG that states its size in mm."""

    heading: str
    svg: str


def comparison_svg(pictures: Sequence[HeadedPicture], lines: Sequence[str]) -> str:
    """Return an SVG with the pictures side by side, or wide ones stacked, each under its heading.

    The lines are wrapped below. Each picture is embedded as an image, so that it keeps its own styles.

    Raises:
        ValueError: a picture does not state its size in mm.
    """
    sizes = []
    for one in pictures:
        size = _SIZE.match(one.svg)
        if size is None:
            raise ValueError("a picture without a size in mm")
        sizes.append((float(size[1]), float(size[2])))
    stacked = max(w for w, _ in sizes) > _LONG * max(h for _, h in sizes)
    x, y = _GAP_MM, 0.0
    wide = below = 0.0
    body = []
    for (heading, svg), (w, h) in zip(pictures, sizes, strict=True):
        data = b64encode(svg.encode()).decode()
        body.append(
            f'<text x="{x:.2f}" y="{y + _HEAD_MM - 3:.2f}" font-weight="bold">{escape(heading)}</text>'
            f'<image x="{x:.2f}" y="{y + _HEAD_MM:.2f}" width="{w:.2f}" height="{h:.2f}" '
            f'href="data:image/svg+xml;base64,{data}"/>'
        )
        wide, below = max(wide, x + w + _GAP_MM), max(below, y + _HEAD_MM + h)
        x, y = (x, below) if stacked else (x + w + _GAP_MM, y)
    wide, below = max(wide, _NARROWEST_MM), below + _LINE_MM
    most = int((wide - 2 * _GAP_MM) / (_LETTER_MM * _LETTERS_TO_MM))
    broken = [part for line in lines for part in wrap(line, most)]
    for number, line in enumerate(broken):
        at = below + _LINE_MM * (number + 0.6)
        body.append(f'<text x="{_GAP_MM:.2f}" y="{at:.2f}">{escape(line)}</text>')
    tall = below + _LINE_MM * len(broken) + _GAP_MM / 2
    title = ", ".join(one.heading for one in pictures)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {wide:.2f} {tall:.2f}" '
        f'width="{wide:.2f}mm" height="{tall:.2f}mm" font-family="{FONT}" font-size="{_LETTER_MM}">'
        f"<title>{escape(title)}</title><desc>{escape(' '.join(lines))}</desc>"
        f'<rect width="{wide:.2f}" height="{tall:.2f}" fill="{COLOUR.ground}"/>'
        f'<g fill="{COLOUR.graphite}">{"".join(body)}</g></svg>'
    )
