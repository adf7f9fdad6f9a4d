"""The command that makes a band type of what a maker measures."""

from __future__ import annotations

from typing import Any, Literal

import msgspec

from pegwright.cli.shared import Json, answer, cannot
from pegwright.cli.terminal import exit_code, say, say_findings
from pegwright.finding import RefusedError, phrase
from pegwright.fit import BandMeasurements, Calibration, Estimate, FittedLaw, HungReading, calibrate
from pegwright.pattern import BandType


def calibrate_(
    *,
    flat: float,
    thickness: float,
    weight: float | None = None,
    hung: str = "",
    name: str = "standard",
    material: Literal["silicone", "rubber", "tpe"] = "silicone",
    hook: float = 1.0,
    reading: float = 0.5,
    json: Json = False,
) -> int:
    """Find out from a ruler, scales and a few weights what your bands are like, and how sure that is.

    Parameters
    ----------
    flat
        length in mm of a band laid flat and pressed, from end to end outside.
    thickness
        of a band in mm: ten side by side, a tenth of that.
    weight
        of a hundred bands in grams.
    hung
        the weights hung on one band in grams, each with the length in mm that it then has outside, as
        50=26.2,100=29.8,150=34.1.
    name
        what the band type is called in the document.
    material
        silicone, rubber or tpe.
    hook
        thickness in mm of the wire that the band hangs on.
    reading
        by how many mm a hung length may be read wrong.
    """
    try:
        measured = BandMeasurements(
            flat_mm=flat,
            thickness_mm=thickness,
            weight_100_g=weight,
            hung=_read_hung(hung),
            name=name,
            material=material,
            hook_mm=hook,
            length_error_mm=reading,
        )
        if not (0 < reading < 100 and 0 < hook < 100):
            raise RefusedError(phrase("wire-or-reading"))
        found = calibrate(measured)
        band = None if found.band is None else _band(found.band)
    except (RefusedError, msgspec.ValidationError) as error:
        return cannot(str(error), json)
    if json:
        return answer(_facts(found, band), found.findings)
    if band is not None:
        _say(found, band)
    say_findings(found.findings)
    return exit_code(found.findings)


def _read_hung(listed: str) -> tuple[HungReading, ...]:
    """Read the weights and lengths.

    Raises:
        RefusedError: a part is no GRAMS=MM.
    """
    hung = []
    for part in (part.strip() for part in listed.split(",") if part.strip()):
        mass, _, length = part.partition("=")
        try:
            hung.append(HungReading(float(mass), float(length)))
        except ValueError:
            raise RefusedError(phrase("no-weight-and-length", text=part)) from None
    return tuple(hung)


def _band(band: BandType) -> dict[str, Any]:
    """Return the band type as it stands in a document, nothing left to be guessed.

    Raises:
        msgspec.ValidationError: the document would not take it, such as a name that is empty.
    """
    fields = msgspec.structs.asdict(band)
    given = {key: msgspec.to_builtins(value) for key, value in fields.items() if value is not None}
    msgspec.convert(given, BandType)
    return given


def _facts(found: Calibration, band: dict[str, Any] | None) -> dict[str, Any]:
    return {
        "band": band,
        "bore_mm": _estimate(found.bore_mm),
        "density_g_cm3": _estimate(found.density_g_cm3),
        "stretch": found.stretch,
        "stress_mpa": found.stress_mpa,
        "rubber": None if found.best is None else _law(found.best),
        "laws": [_law(law) for law in found.laws],
    }


def _estimate(one: Estimate | None) -> dict[str, float] | None:
    return None if one is None else one._asdict()


def _law(law: FittedLaw) -> dict[str, Any]:
    return {
        "form": law.form,
        "constants_mpa": [_estimate(one) for one in law.constants_mpa],
        "shear_mpa": _estimate(law.shear_mpa),
        "rms_mm": law.rms_mm,
    }


def _say(found: Calibration, band: dict[str, Any]) -> None:
    say("to be pasted into the bands of the document:", style="bold")
    say(f"  {msgspec.json.format(msgspec.json.encode(band), indent=0).decode()}")
    if found.bore_mm is not None:
        say(f"bore {_sure(found.bore_mm)} mm")
    if found.density_g_cm3 is not None:
        say(f"density {_sure(found.density_g_cm3)} g/cm³")
    for law in found.laws:
        constants = ", ".join(_sure(one, 3) for one in law.constants_mpa)
        best = "; the one to use" if law is found.best else ""
        say(f"{law.form}: {constants} MPa, off by {law.rms_mm:.1f} mm{best}")
    if found.best is not None:
        say(f"stiffness at rest (shear modulus) {_sure(found.best.shear_mpa)} MPa")


def _sure(one: Estimate, places: int = 2) -> str:
    """Say a value with the larger of its two errors."""
    return f"{one.value:.{places}f} ± {max(one.error, one.again):.{places}f}"
