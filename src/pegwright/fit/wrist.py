"""Wrists: from centimetres, inches, a size or an age to a girth in mm, and the hand it has to pass over.

The surveys and what was taken from them:

- ANSUR II: C. C. Gordon et al., 2012 Anthropometric Survey of U.S. Army Personnel, NATICK/TR-15/007 (public).
- bdims: G. Heinz, L. J. Peterson, R. W. Johnson and C. J. Kerk, J. Stat. Educ. 11(2) (2003); active adults.
- Öztürk et al., J. Clin. Res. Pediatr. Endocrinol. 9(4) (2017) 329–336; 4,330 pupils of 6 to 17 years in
  Turkey. The abstract gives both ends and says that girth grows linearly with age.
- Khadilkar et al., J. Pediatr. Endocrinol. Metab. (2018); 10,199 children in India, of whom the means at 3
  years. From 3 to 6 years we interpolate to Öztürk's children, a different population: a rough guide.

There is no published sizing of bracelets. The sizes are our own, with limits taken from these surveys.
"""

from __future__ import annotations

import math
import re
from typing import Literal, NamedTuple

import msgspec

from pegwright.finding import Finding, finding, phrase

__all__ = [
    "ADULTS",
    "CHILDREN",
    "HAND_TO_WRIST",
    "PASSES_99",
    "SIZES",
    "AgeGroup",
    "Population",
    "Survey",
    "Wrist",
    "WristReading",
    "WristSize",
    "read_girth_mm",
    "read_wrist",
    "wrist_of_age",
    "wrist_of_size",
]

Population = Literal["both", "girls", "boys"]


class Survey(NamedTuple):
    """A survey's girths of one group of adults, in mm; `percentiles` maps percent to girth."""

    source: str
    group: Literal["women", "men"]
    people: int
    mean_mm: float
    sd_mm: float
    percentiles: dict[int, float]


ADULTS: tuple[Survey, ...] = (
    Survey(
        "ANSUR II",
        "women",
        1986,
        154.8,
        7.8,
        {1: 138, 2: 140, 5: 142, 10: 145, 25: 150, 50: 154, 75: 160, 90: 165, 95: 168, 98: 172, 99: 174},
    ),
    Survey(
        "ANSUR II",
        "men",
        4082,
        175.9,
        9.0,
        {1: 156, 2: 158, 5: 162, 10: 165, 25: 170, 50: 176, 75: 182, 90: 187, 95: 191, 98: 195, 99: 198},
    ),
    Survey(
        "bdims",
        "women",
        260,
        150.6,
        8.5,
        {1: 132, 5: 138, 10: 140, 25: 145, 50: 150, 75: 156, 90: 162, 95: 164, 99: 174},
    ),
    Survey(
        "bdims",
        "men",
        247,
        171.9,
        9.1,
        {1: 152, 5: 158, 10: 161, 25: 165, 50: 171, 75: 179, 90: 183, 95: 188, 99: 195},
    ),
)

HAND_TO_WRIST = (1.207, 0.042)
"""Hand girth over wrist girth, mean and sd (ANSUR II: women 1.206 ± 0.043, men 1.208 ± 0.040)."""
PASSES_99 = 1.31
"""The same ratio, 99th percentile (ANSUR II). Taped round the knuckles without the thumb."""


class AgeGroup(NamedTuple):
    """Mean and sd in mm at one age; the sd at 3 years is unpublished and taken as 7 %, as at 6."""

    years: float
    source: str
    girls: tuple[float, float]
    boys: tuple[float, float]


CHILDREN: tuple[AgeGroup, ...] = (
    AgeGroup(3, "Khadilkar et al. 2018", (100.0, 7.0), (104.0, 7.3)),
    AgeGroup(6, "Öztürk et al. 2017", (124.8, 9.3), (130.0, 8.9)),
    AgeGroup(17, "Öztürk et al. 2017", (155.8, 8.6), (168.3, 11.6)),
    AgeGroup(18, "ANSUR II", ADULTS[0][3:5], ADULTS[1][3:5]),
)


class WristSize(NamedTuple):
    """A size of our own: wrists from `low_mm` to `high_mm`, and where the two limits come from."""

    name: str
    low_mm: float
    high_mm: float
    limits: str


SIZES: tuple[WristSize, ...] = (
    WristSize("XXS", 107, 125, "girls of 6, Öztürk: mean − 1.96 sd, and mean"),
    WristSize("XS", 125, 138, "girls of 6, Öztürk: mean; women, ANSUR II: 1 %"),
    WristSize("S", 138, 154, "women, ANSUR II: 1 % and 50 %"),
    WristSize("M", 154, 165, "women, ANSUR II: 50 % and 90 %; the latter is the men's 10 %"),
    WristSize("L", 165, 176, "men, ANSUR II: 10 % and 50 %"),
    WristSize("XL", 176, 198, "men, ANSUR II: 50 % and 99 %"),
)

_SENSIBLE_MM = (70.0, 300.0)
_MEASURED_MM = (86.0, 216.0)  # a girl of 3 two sd below the mean; the largest of the men in ANSUR II
_TOO_YOUNG = 3.0
_GROWN_UP = 18.0
_OLDEST = 120.0


class Wrist(msgspec.Struct, frozen=True, kw_only=True):
    """A wrist: the girth to make for in mm, the range that it stands for, and how it was given.

    A measured girth stands for itself, a size for its range, an age for 19 in 20 children of that age. It may
    be another `part` than a wrist (`girths`); what is put on it has to pass over `passes` times its girth.
    """

    girth_mm: float
    low_mm: float
    high_mm: float
    said: str
    source: str = "measured"
    part: str = "wrist"
    passes: float = PASSES_99


class WristReading(NamedTuple):
    """The wrist, or None, and the findings."""

    wrist: Wrist | None
    findings: tuple[Finding, ...]


_NUMBER = (
    r"(?:(?P<whole>\d{1,5}(?:[.,]\d{1,4})?)(?![\d/⁄])[ \-]*)?"
    r"(?:(?P<over>\d{1,2})\s*[/⁄]\s*(?P<under>\d{1,2})|(?P<sign>[½¼¾⅛⅜⅝⅞]))?"
)
_GIRTH = re.compile(
    rf"{_NUMBER}\s*(?P<unit>mm|cm|m|inches|inch|in|zoll|pulgadas?|[\"″”]|"
    r"mil[ií]met(?:re|er|ro)s?|cent[ií]met(?:re|er|ro)s?|zentimeter)\.?"
)
_GIRLS, _BOYS = "girls?|mädchen|niñas?", "boys?|jungen?|niños?"
_AGE = re.compile(
    rf"(?:(?P<who>{_GIRLS}|{_BOYS})(?:,| of| aged?| von| de)*\s+)?(?:(?:aged?|alter|edad)\s+)?"
    r"(?P<years>\d{1,4}(?:[.,]\d{1,2})?)\s*(?:years?(?: old)?|yrs?|y|jahr(?:en?)?(?: alt)?|años?)?"
    rf"(?:,?\s*(?P<also>{_GIRLS}|{_BOYS}))?"
)
_GROWN_WORDS: dict[Population, tuple[str, ...]] = {
    "both": ("adult", "erwachsene", "erwachsener", "adulto", "adulta"),
    "girls": ("woman", "frau", "mujer"),
    "boys": ("man", "mann", "hombre"),
}
GROWN = {word: table for table, words in _GROWN_WORDS.items() for word in words}
"""Words for grown people, and which of the two tables they are of."""
_SIGNS = {"½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8}
_UNIT_MM = {"mm": 1.0, "mi": 1.0, "cm": 10.0, "ce": 10.0, "ze": 10.0, "m": 1000.0}


def read_wrist(text: str) -> WristReading:
    """Read a girth (`16.5 cm`, `16,5 cm`, `165 mm`, `6 1/2 in`, `6½"`), a size (`M`), an age
    (`age 8`, `girl 8`), `adult`, `woman` or `man`; all of it in German and Spanish too.

    Never raises: a text that cannot be read, or cannot be a wrist, gives a finding.
    """
    said = " ".join(text.split())[:60]
    folded = re.sub(r"^(?:size|größe|talla) ", "", said.lower()).strip()
    size = next((size for size in SIZES if size.name.casefold() == folded), None)
    if size is not None:
        return WristReading(wrist_of_size(size), ())
    girth_mm = read_girth_mm(folded)
    if girth_mm is not None:
        return _measured_wrist(girth_mm, said)
    if folded in GROWN:
        wrist, _ = wrist_of_age(_GROWN_UP, GROWN[folded])
        return WristReading(msgspec.structs.replace(wrist, said=folded) if wrist else None, ())
    age = _AGE.fullmatch(folded)
    if (
        age is not None and not folded.replace(".", "").replace(",", "").isdigit()
    ):  # a bare number could be anything
        told = age["who"] or age["also"] or ""
        who: Population = "both" if not told else "girls" if re.fullmatch(_GIRLS, told) else "boys"
        return wrist_of_age(float(age["years"].replace(",", ".")), who)
    return WristReading(None, (finding("wrist-unreadable", said=said, sizes=tuple(s.name for s in SIZES)),))


def read_girth_mm(text: str) -> float | None:
    """Return a girth written with its unit (`16,5 cm`, `6 1/2 in`, in lower case) in mm, or None."""
    girth = _GIRTH.fullmatch(text)
    value = None if girth is None else _parse_number(girth)
    return None if girth is None or value is None else value * _UNIT_MM.get(girth["unit"][:2], 25.4)


def wrist_of_size(size: WristSize) -> Wrist:
    """Return the wrist in the middle of a size."""
    return Wrist(
        girth_mm=(size.low_mm + size.high_mm) / 2,
        low_mm=size.low_mm,
        high_mm=size.high_mm,
        said=f"size {size.name}",
        source=size.limits,
    )


def wrist_of_age(years: float, table: Population = "both") -> WristReading:
    """Return the mean wrist at an age, with the range mean ± 1.96 sd; `both` spans girls and boys.

    From 18 years on it is the adults' wrist.
    """
    if not 0 <= years <= _OLDEST:
        return WristReading(None, (finding("wrist-nonsense", what=phrase("wrist-of-age", years=years)),))
    if years < _TOO_YOUNG:
        return WristReading(None, (finding("wrist-too-young", years=years),))
    after = next((i for i, age in enumerate(CHILDREN) if age.years > years), len(CHILDREN))
    near, far = CHILDREN[after - 1], CHILDREN[min(after, len(CHILDREN) - 1)]
    part = 0.0 if near is far else (years - near.years) / (far.years - near.years)
    girls, boys = (
        (a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1]))
        for a, b in ((near.girls, far.girls), (near.boys, far.boys))
    )
    groups = {"both": (girls, boys), "girls": (girls,), "boys": (boys,)}[table]
    named = table if years < _GROWN_UP else {"girls": "women", "boys": "men"}.get(table, table)
    return WristReading(
        Wrist(
            girth_mm=sum(mean for mean, _ in groups) / len(groups),
            low_mm=min(mean - 1.96 * sd for mean, sd in groups),
            high_mm=max(mean + 1.96 * sd for mean, sd in groups),
            said=f"age {years:g}" if table == "both" else f"age {years:g}, {named}",
            source=near.source if part == 0 or near.source == far.source else f"{near.source}; {far.source}",
        ),
        (),
    )


def _parse_number(match: re.Match[str]) -> float | None:
    if match["whole"] is None and match["over"] is None and match["sign"] is None:
        return None
    value = float((match["whole"] or "0").replace(",", "."))
    if match["over"] is not None:
        if int(match["under"]) == 0:
            return None
        value += int(match["over"]) / int(match["under"])
    return value + _SIGNS.get(match["sign"] or "", 0.0)


def _measured_wrist(girth_mm: float, said: str) -> WristReading:
    low, high = _SENSIBLE_MM
    if not low <= girth_mm <= high or not math.isfinite(girth_mm):
        return WristReading(None, (finding("wrist-nonsense", what=phrase("wrist-of-girth", said=said)),))
    wrist = Wrist(girth_mm=girth_mm, low_mm=girth_mm, high_mm=girth_mm, said=said)
    if not _MEASURED_MM[0] <= girth_mm <= _MEASURED_MM[1]:
        low, high = _MEASURED_MM
        return WristReading(wrist, (finding("wrist-unusual", said=said, low_cm=low / 10, high_cm=high / 10),))
    return WristReading(wrist, ())
