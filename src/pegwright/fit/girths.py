"""What else a piece is closed round: ankles, necks, fingers, keys and bottles, each with what it passes over.

Ankles and necks are from ANSUR II (C. C. Gordon et al., NATICK/TR-15/007; the public data of 1,986 women and
4,082 men, taken by the same means as the wrists). What a piece has to pass over is the 99th percentile of the
ratios in all 6,068 people: heel-ankle over ankle, head over neck. The same reckoning gives 1.31 for hand over
wrist, which `wrist` has. Heads are measured above the brows.

A ring size is the inner circumference in mm (ISO 8653, from memory: sizes of about 41 to 76). No survey of
knuckles was found; their ratio is our own choice. Keys and bottles are as they are measured: they pass over
nothing.
"""

from __future__ import annotations

import re
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding, finding, phrase
from pegwright.fit.wrist import GROWN, Survey, Wrist, WristReading, read_girth_mm, read_wrist

__all__ = ["PARTS", "BodyPart", "read_girth"]


class BodyPart(NamedTuple):
    """Something a piece is closed round: girths that can be read and that were measured (mm).

    `passes` is the girth of what the piece has to pass over, in girths, for 99 people in 100.
    """

    name: str
    sensible_mm: tuple[float, float]
    measured_mm: tuple[float, float]
    passes: float
    adults: tuple[Survey, ...] = ()


_ANKLES = (
    Survey("ANSUR II", "women", 1986, 215.7, 14.9, {1: 185, 5: 193, 50: 215, 95: 242, 99: 255}),
    Survey("ANSUR II", "men", 4082, 229.3, 14.6, {1: 198, 5: 206, 50: 228, 95: 254, 99: 268}),
)
_NECKS = (
    Survey("ANSUR II", "women", 1986, 329.8, 19.2, {1: 291, 5: 302, 50: 328, 95: 363, 99: 384}),
    Survey("ANSUR II", "men", 4082, 397.6, 25.8, {1: 346, 5: 360, 50: 395, 95: 443, 99: 467}),
)
PARTS = (
    BodyPart("ankle", (100.0, 450.0), (170.0, 293.0), 1.66, _ANKLES),
    BodyPart("neck", (150.0, 650.0), (275.0, 514.0), 1.88, _NECKS),
    BodyPart("finger", (30.0, 90.0), (41.0, 76.0), 1.1),
    BodyPart("key", (5.0, 200.0), (5.0, 200.0), 1.0),
    BodyPart("bottle", (40.0, 500.0), (40.0, 500.0), 1.0),
)
"""In the order in which a text is searched for their names."""

_NAMES = {
    "ankle": "ankle|knöchel|fußgelenk|tobillo",
    "neck": "neck|hals|cuello",
    "finger": "finger|ring|dedo|anillo",
    "key": "key|schlüssel|llave",
    "bottle": "bottle|flasche|botella",
}
_CAUTIONS = {"neck": "girth-neck", "finger": "girth-finger"}


def read_girth(text: str) -> WristReading:
    """Read what a piece is to be closed round: `ankle 22 cm`, `neck adult`, `ring 54`, `bottle 9 cm`.

    Without the name of a part the text is a wrist, as `read_wrist` reads it. Never raises.
    """
    said = " ".join(text.split())[:60]
    for part in PARTS:
        found = re.match(rf"(?:{_NAMES[part.name]})(?: size)?\b[ ,:]*", said.lower())
        if found:
            return _read_part(part, said.lower()[found.end() :].strip(), said)
    return read_wrist(text)


def _read_part(part: BodyPart, rest: str, said: str) -> WristReading:
    groups = {"both": part.adults, "girls": part.adults[:1], "boys": part.adults[1:]}
    surveys = groups.get(GROWN.get(rest or "adult", ""), ())
    if surveys:
        wrist = Wrist(
            girth_mm=sum(one.mean_mm for one in surveys) / len(surveys),
            low_mm=min(one.percentiles[1] for one in surveys),
            high_mm=max(one.percentiles[99] for one in surveys),
            said=said,
            source=surveys[0].source,
        )
        return WristReading(_of_part(wrist, part), tuple(_cautions(part)))
    ring = part.name == "finger" and re.fullmatch(r"\d{2}(?:[.,]\d)?", rest)
    girth_mm = read_girth_mm(f"{rest} mm" if ring else rest)
    if girth_mm is None:
        return WristReading(None, (finding("girth-unreadable", said=said, part=part.name),))
    low, high = part.sensible_mm
    if not low <= girth_mm <= high:
        what = phrase("girth-of-part", said=rest, part=part.name)
        return WristReading(None, (finding("girth-nonsense", what=what, low_cm=low / 10, high_cm=high / 10),))
    findings = [*_cautions(part)]
    low, high = part.measured_mm
    if not low <= girth_mm <= high:
        found = finding("girth-unusual", said=rest, part=part.name, low_cm=low / 10, high_cm=high / 10)
        findings.append(found)
    wrist = Wrist(girth_mm=girth_mm, low_mm=girth_mm, high_mm=girth_mm, said=said)
    return WristReading(_of_part(wrist, part), tuple(findings))


def _of_part(wrist: Wrist, part: BodyPart) -> Wrist:
    return msgspec.structs.replace(wrist, part=part.name, passes=part.passes)


def _cautions(part: BodyPart) -> tuple[Finding, ...]:
    return (finding(_CAUTIONS[part.name]),) if part.name in _CAUTIONS else ()
