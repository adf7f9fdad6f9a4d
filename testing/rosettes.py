"""A three-row strip of rosettes, built from parameters: for tests and benches only.

Outline hexagons of six bands share their end pegs; each is filled with six bands from its middle peg and
a wound cap.
"""

from __future__ import annotations

from collections.abc import Sequence

from pegwright.pattern import Pattern, PatternBuilder, Rows


def rosettes(
    count: int = 6, fills: Sequence[str] = "BC", *, top_first: bool = True, extend: int = 0
) -> Pattern:
    """Return a strip of `count` rosettes; `top_first=False` works each filling from below: a mistake."""
    under_cap = -4  # a cap is wound three times
    last = 2 * count + 1
    m = PatternBuilder("Harbour roses", Rows(rows=3, pegs=last, shift=(0.0, 0.5, 0.0)))
    m.colour("A", "slate", "#4A5A6A")
    for letter, name in zip(fills, ("foam", "rope", "rust", "kelp"), strict=False):
        m.colour(letter, name, "#C0B090")
    for k in range(count):
        for pair in _outline(k):
            m.place("A", *pair)
    for k in range(count):
        fill = fills[k % len(fills)]
        for tip in _tips(k):
            m.place(fill, _middle(k), tip)
    m.wind("A", f"B{last}")
    for k in range(count):
        m.wind(fills[k % len(fills)], _middle(k))
    m.turn()
    for k in reversed(range(count)):
        tips = _tips(k)
        for tip in reversed(tips) if top_first else tips:
            m.hook(_middle(k), tip, loop=under_cap if top_first else 1)
        left, right = _outline(k)[:3], _outline(k)[3:]
        # The right band lies on the left one at the shared peg, so it goes first: nothing is dragged.
        for i, (near, far) in enumerate(right[::-1] + left[::-1]):
            m.hook(far, near, loop=2 if i == 0 else 1)
    m.bind("A", "B1")
    if extend:
        m.extend("A", extend)
    m.clip(f"B{last}" if extend else "end", *(["end"] if extend else []))
    return m.pattern()


def _middle(k: int) -> str:
    return f"B{2 * k + 2}"


def _tips(k: int) -> list[str]:
    n = 2 * k
    return [f"B{n + 1}", f"A{n + 2}", f"C{n + 2}", f"A{n + 3}", f"C{n + 3}", f"B{n + 3}"]


def _outline(k: int) -> list[tuple[str, str]]:
    n = 2 * k
    left = [(f"B{n + 1}", f"A{n + 2}"), (f"A{n + 2}", f"A{n + 3}"), (f"A{n + 3}", f"B{n + 3}")]
    right = [(f"B{n + 1}", f"C{n + 2}"), (f"C{n + 2}", f"C{n + 3}"), (f"C{n + 3}", f"B{n + 3}")]
    return left + right
