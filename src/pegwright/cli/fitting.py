"""The command that says whom a piece fits."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from pegwright.cli import views
from pegwright.cli.shared import Json, answer, cannot, load_work, reason, refuse
from pegwright.cli.terminal import exit_code, progress, say, say_findings
from pegwright.finding import RefusedError
from pegwright.fit import (
    Fit,
    GradedSize,
    PieceMeasurements,
    RepeatOptions,
    SizePlan,
    WornFit,
    advise_fit,
    grade_sizes as grade_,
    read_girth,
    with_extension,
)
from pegwright.pattern import Pattern, with_repeats
from pegwright.text import encode_pattern
from pegwright.workshop import replace_file, work

CARE = (
    "Take care: a finger must slip under the piece easily. Take it off for sleep, and at once where skin "
    "turns pale, blue, puffy or numb. Never put a band tightly round a finger, toe, neck or a baby's wrist. "
    "A stretched band can snap: mind your eyes. Some bands are natural rubber: mind latex allergies. Small "
    "bands and clips are not for children under 3. Follow the rules where you live."
)


def fit_(
    file: Path,
    *,
    wrist: str = "",
    size: str = "",
    age: str = "",
    grade: str = "",
    out: Path | None = None,
    json: Json = False,
) -> int:
    """Bring the piece to rest, pull at it, say which wrists it suits, and what would make it fit yours.

    Parameters
    ----------
    file
        the pattern document.
    wrist
        its girth, as "16.5 cm" or "6 1/2 in"; or another part: "ankle 22 cm", "ring 54", "bottle 9 cm".
    size
        instead of a girth: XXS, XS, S, M, L or XL.
    age
        instead of a girth: years, as 8; a rough guide.
    grade
        a list of sizes, girths or ages with commas between, as S,M,L: the piece for each, with its supplies.
    out
        write the pattern with the repeats and extension bands that suit the wrist into this new file.
    """
    asked = [text for text in (wrist, size, age and f"age {age}") if text]
    if len(asked) > 1:
        return cannot("give one of --wrist, --size and --age", json)
    if out is not None and not asked:
        return cannot("give --out together with --wrist, --size or --age", json)
    if out is not None and out.exists():
        return cannot(f"{out} is there already; choose another name", json)
    reading = read_girth(asked[0]) if asked else None
    if reading is not None and reading.wrist is None:  # said before the piece is solved
        return refuse(reading.findings, json)
    made = load_work(file, json)
    from pegwright.workshop import measure_lengths, measure_piece  # noqa: PLC0415 - the solver is slow to load

    try:
        with progress(json) as report:
            measured, findings = measure_piece(made, report)
            closed = measured.state == "closed"
            longer = measure_lengths(made, report) if closed and (asked or grade) else None
    except RefusedError as error:
        return cannot(reason(error), json)
    found, _, gauge, plan, advice_findings = advise_fit(measured, asked[0] if asked else None, longer)
    findings = (*findings, *advice_findings)
    if found is None:
        at_rest = {"length_mm": measured.length_mm, "width_mm": measured.width_mm, "wrists_mm": None}
        if json:
            return answer({"title": made.pattern.title, **at_rest}, findings)
        _say_size(made.pattern.title, measured)
        say_findings(findings)
        return exit_code(findings)
    sizes = [text.strip() for text in grade.split(",") if text.strip()]
    least, most = (longer.least, longer.most) if longer else (0, 0)
    design = _design(made.pattern, longer)
    graded = grade_(design, gauge, sizes, least_repeats=least, most_repeats=most) if gauge and sizes else ()
    findings = (*findings, *(one for each in graded for one in each.findings))
    if out is not None and plan is not None:
        suiting = design(plan.repeats, plan.extension)
        if suiting is None or work(suiting).holds < made.holds:
            return cannot("there is no place in this piece for extension bands", json)
        try:
            replace_file(out, encode_pattern(suiting, out.name))
        except OSError as error:
            return cannot(reason(error), json)
    facts = {
        "title": made.pattern.title,
        "length_mm": measured.length_mm,
        "width_mm": measured.width_mm,
        "curve": [{"pull_n": pull, "length_mm": length} for pull, length in measured.pulls],
        "wrists_mm": found.wrists_mm,
        "limited_by": found.limited_by,
        "worn": found.worn,
        "extension": measured.extension,
        "extension_mm": measured.extension_mm,
        "repeats": longer,
        "plan": None if plan is None else _plan(plan, longer),
        "grades": [_grade(each, longer) for each in graded],
    }
    if json:
        return answer(facts, findings)
    _say(made.pattern.title, measured, found)
    if longer is not None:
        say(
            f"one repeat is {_count(longer.bands, 'band')} and {longer.one_mm:.0f} mm; from {longer.least} to"
            f" {longer.most} of them are proved to hold"
        )
    if plan is not None:
        say(f"for this wrist: {_making(plan, longer, measured.extension)}, {plan.length_mm:.0f} mm")
    if out is not None and plan is not None:
        say(f"that is written to {out}")
    for each in graded:
        say(_line(each, longer))
    if gauge is None and (sizes or asked):
        say("neither repeats nor extension bands can be put in, so its length stays as it is")
    say(CARE)
    say_findings(findings)
    return exit_code(findings)


def _design(pattern: Pattern, longer: RepeatOptions | None) -> Callable[[int, int], Pattern | None]:
    """Return what makes the piece with other numbers of repeats and extension bands."""

    def resize(repeats: int, extension: int) -> Pattern | None:
        changes = longer is not None and repeats != longer.now
        return with_extension(with_repeats(pattern, repeats) if changes else pattern, extension)

    return resize


def _plan(plan: SizePlan, longer: RepeatOptions | None) -> dict[str, Any]:
    return {
        "repeats": plan.repeats if longer else None,
        "extension": plan.extension,
        "length_mm": plan.length_mm,
    }


def _making(plan: SizePlan, longer: RepeatOptions | None, extension: int | None = None) -> str:
    """Say how a piece is made, with what it is now in brackets where that is given."""
    now, bands = "", _count(plan.extension, "extension band")
    if extension is not None:
        bands += f" (now {extension})"
        now = f" (now {longer.now})" if longer else ""
    if longer is None:
        return bands
    return f"{_count(plan.repeats, 'repeat')}{now}, {bands}"


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"


def _grade(one: GradedSize, longer: RepeatOptions | None) -> dict[str, Any]:
    plan, needs = one.plan, one.supplies
    return {
        "asked": one.asked,
        "wrist_mm": None if plan is None else plan.wrist.girth_mm,
        **({"repeats": None, "extension": None, "length_mm": None} if plan is None else _plan(plan, longer)),
        "supplies": None if needs is None else views.supplies(needs, None),
    }


def _line(one: GradedSize, longer: RepeatOptions | None) -> str:
    if one.plan is None or one.supplies is None:
        return f"{one.asked}: cannot be made"
    plan, needs = one.plan, one.supplies
    return f"{one.asked}: {_making(plan, longer)}, {plan.length_mm:.0f} mm, {needs.bands} bands in all"


def _say_size(title: str, measured: PieceMeasurements) -> None:
    say(title, style="bold")
    if measured.length_mm:
        say(f"{measured.length_mm:.0f} mm long at rest, {measured.width_mm:.0f} mm wide")


def _say(title: str, measured: PieceMeasurements, found: Fit) -> None:
    _say_size(title, measured)
    say("pulled at its ends: " + ", ".join(f"{f:g} N {mm:.0f} mm" for f, mm in measured.pulls[1:]))
    part = found.worn.part if found.worn else "wrist"
    if found.wrists_mm is None:
        say(f"it suits no {part} as it is")
    else:
        low, high = found.wrists_mm
        why = {
            "ease": "larger ones find it tight",
            "hand": "it does not pass over larger ones",
            "known": "it was not pulled further",
        }[found.limited_by]
        say(f"suits {part}s of {low / 10:.1f} to {high / 10:.1f} cm; {why}")
    if found.worn is not None:
        _say_worn(found.worn)


def _say_worn(worn: WornFit) -> None:
    over = {"wrist": "hand", "ankle": "heel", "neck": "head", "finger": "knuckle"}.get(worn.part, worn.part)
    opens = f"was not pulled far enough to tell how it passes over the {over}"
    if worn.pull_n is not None:
        opens = f"opens over the {over} with {worn.pull_n:.1f} N"
    article = "an" if worn.part == "ankle" else "a"
    say(f"on {article} {worn.part} of {worn.wrist_mm / 10:.1f} cm: {worn.feel}; {opens}")
