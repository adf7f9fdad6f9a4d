"""How a piece fits a wrist, as the page shows it."""

from __future__ import annotations

from typing import Annotated, Any

import msgspec

from pegwright.finding import Language, RefusedError, WordedFinding, word_finding
from pegwright.fit import Fit, PieceMeasurements, RepeatOptions, advise_fit, with_extension
from pegwright.pattern import Pattern, with_repeats, write_pattern


class FitRequest(msgspec.Struct, frozen=True, kw_only=True):
    """A document, its measurements, and a wrist: `16 cm`, `6 1/4 in`, `M`, `age 8`.

    Without `lengths` its repeats stay as they are.
    """

    document: dict[str, Any]
    measured: PieceMeasurements
    lengths: RepeatOptions | None = None
    wrist: Annotated[str, msgspec.Meta(max_length=60)]


class FitResponse(msgspec.Struct, frozen=True, kw_only=True):
    """How a piece fits a wrist, or another `part`; only `fit` if what is wanted cannot be read.

    `extension` is the number of extension bands that would suit, `more` the change in repeats (negative for
    fewer), and `repeats` their new number, with the resulting length and document. All are None if nothing
    needs to be changed, or nothing can be. `nearest` means that the piece still does not suit.
    """

    fit: Fit | None = None
    part: str = "wrist"
    wrist_mm: float | None = None
    extension: int | None = None
    repeats: int | None = None
    more: int = 0
    length_mm: float | None = None
    nearest: bool = False
    document: dict[str, Any] | None = None
    findings: tuple[WordedFinding, ...] = ()


def fit_response(
    pattern: Pattern,
    measured: PieceMeasurements,
    wrist: str,
    lengths: RepeatOptions | None = None,
    language: Language = "en",
) -> FitResponse:
    """Return whom a measured piece fits and what would make it fit the wrist, with worded findings."""
    suited = advise_fit(measured, wrist, lengths)
    fit, plan = suited.fit, suited.plan
    girth_mm = suited.wrist.girth_mm if suited.wrist and fit else None
    findings = tuple(word_finding(each, language) for each in suited.findings)
    fit = fit and msgspec.structs.replace(fit, findings=())  # the response carries them
    part = suited.wrist.part if suited.wrist else "wrist"
    found = FitResponse(fit=fit, part=part, wrist_mm=girth_mm, findings=findings)
    low, high = (fit and fit.wrists_mm) or (0.0, 0.0)
    suits = girth_mm is not None and low <= girth_mm <= high
    more = plan.repeats - lengths.now if plan and lengths else 0
    if plan is None or suits or (not more and plan.extension == measured.extension):
        return found
    try:
        longer = with_extension(with_repeats(pattern, plan.repeats) if more else pattern, plan.extension)
    except RefusedError:  # the lengths belong to another piece
        return found
    return msgspec.structs.replace(
        found,
        extension=plan.extension,
        repeats=plan.repeats if lengths else None,
        more=more,
        length_mm=plan.length_mm,
        nearest=bool(plan.findings),
        document=None if longer is None else msgspec.json.decode(write_pattern(longer)),
    )
