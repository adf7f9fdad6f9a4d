"""Can the colours be told apart? By everybody, also by those who see reds, greens or blues differently.

Distances are CIEDE2000 (Sharma, Wu and Dalal 2005); colour-vision deficiency is simulated at full severity
after Machado, Oliveira and Fernandes (2009); both by the library. The thresholds are ours: common practice,
no source. Patterns and letters tell bands apart in every picture; this is about the bands in the hand.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import combinations

from coloraide import Color

from pegwright.finding import Finding, Fix, Location, finding, phrase, sum_up
from pegwright.pattern import Pattern

ALIKE = 10.0
"""Under this CIEDE2000 distance two bands are easily taken for each other."""
APART = 16.0
"""A suggested tint keeps at least this distance from all others, for everybody."""
MOST_COLOURS = 40
SIGHTS = {"everybody": "", "protan": "protan", "deutan": "deutan", "tritan": "tritan"}


def check_palette(pattern: Pattern) -> tuple[Finding, ...]:
    """Return a finding for each pair of colours that are hard to tell apart, with a better tint."""
    return sum_up(_alike_pairs(pattern))


def _alike_pairs(pattern: Pattern) -> Iterator[Finding]:
    colours = pattern.colours[:MOST_COLOURS]
    for (_, a), (j, b) in combinations(enumerate(colours), 2):
        close = [who for who, sight in SIGHTS.items() if colour_distance(a.hex, b.hex, sight) < ALIKE]
        if not close:
            continue
        who = tuple(phrase(f"sight-{one}") for one in (close[:1] if close[0] == "everybody" else close))
        others = [c.hex for i, c in enumerate(colours) if i != j]
        better = suggest_tint(b.hex, others)
        fix = None
        if better:
            patch = {"op": "replace", "path": f"/colours/{j}/hex", "value": better}
            fix = Fix(phrase("fix-tint", letter=b.letter, tint=better), (patch,))
        place = Location(path=f"/colours/{j}/hex")
        yield finding("colours-alike", place, fix=fix, one=a.letter, other=b.letter, who=who)


def colour_distance(a: str, b: str, sight: str = "") -> float:
    """Return the CIEDE2000 distance of two tints (#rrggbb) as a kind of sight sees them.

    `sight` is empty, or `protan`, `deutan` or `tritan`.
    """
    return float(_simulate_sight(a, sight).delta_e(_simulate_sight(b, sight), method="2000"))


def contrast_ratio(a: str, b: str) -> float:
    """Return the contrast of two tints, 1 to 21 (WCAG 2.2, relative luminance)."""
    low, high = sorted((luminance(a), luminance(b)))
    return (high + 0.05) / (low + 0.05)


def luminance(tint: str) -> float:
    """Return the relative luminance of a tint (#rrggbb), 0 to 1 (WCAG 2.2)."""
    linear = []
    for i in (1, 3, 5):
        v = int(tint[i : i + 2], 16) / 255
        linear.append(v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4)
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def suggest_tint(tint: str, others: Sequence[str]) -> str:
    """Return the nearest lighter or darker tint that all can tell from the others, or nothing."""
    base = Color(tint).convert("oklch")
    for step in range(1, 41):
        for sign in (1, -1):
            light = base["lightness"] + sign * step * 0.02
            if not 0.08 <= light <= 0.97:
                continue
            tried = base.clone().set("lightness", light).fit("srgb").convert("srgb").to_string(hex=True)
            if all(
                colour_distance(tried, other, sight) >= APART for other in others for sight in SIGHTS.values()
            ):
                return str(tried)
    return ""


@lru_cache(maxsize=4096)
def _simulate_sight(tint: str, sight: str) -> Color:
    colour = Color(tint)
    if sight:
        colour = colour.filter(sight, 1.0, method="machado", space="srgb-linear").clip("srgb")
    return colour
