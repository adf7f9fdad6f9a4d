"""Variants of a piece: other sizes, bands, looms, colours and the other hand, each worked and proved anew."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

import msgspec

from pegwright.finding import Finding, Phrase, RefusedError, finding, phrase
from pegwright.fit import RepeatOptions, advise_fit, grade_sizes, with_extension
from pegwright.pattern import Pattern, mirror, with_repeats
from pegwright.variants import (
    BandColour,
    Colourway,
    describe_variant,
    rank_colourways,
    with_band_size,
    with_colours,
    with_loom,
)
from pegwright.workshop.lengths import measure_lengths
from pegwright.workshop.line import Work, work
from pegwright.workshop.progress import ReportProgress, report_nothing
from pegwright.workshop.stretch_measures import measure_piece

__all__ = ["PieceVariant", "VariantOrder", "Variants", "make_variants"]

_NOT_IN_A_NAME = re.compile(r"[^a-z0-9]+")


class VariantOrder(msgspec.Struct, frozen=True, kw_only=True):
    """Which variants of a piece to make: every combination of what is listed.

    `sizes` are girths, sizes or ages; `bands` bore and thickness in mm; `looms` rows and pegs. An empty
    list leaves that as it is. `colourways` is how many, drawn with `seed`.
    """

    sizes: tuple[str, ...] = ()
    bands: tuple[tuple[float, float], ...] = ()
    looms: tuple[tuple[int, int], ...] = ()
    colourways: int = 0
    hands: tuple[Literal["right", "left"], ...] = ("right",)
    seed: int = 1


class PieceVariant(NamedTuple):
    """One variant: a name for its file, what is different, and the piece, worked and proved.

    `length_mm` is that of its size at rest, None if no size was asked for. `findings` are those that the
    piece itself does not give.
    """

    name: str
    work: Work
    size: str | None
    length_mm: float | None
    hand: str
    colourway: Colourway | None
    findings: tuple[Finding, ...]


class Variants(NamedTuple):
    """All variants that hold, and why others were left out."""

    made: tuple[PieceVariant, ...]
    findings: tuple[Finding, ...]


class _Draft(NamedTuple):
    parts: tuple[str, ...]
    pattern: Pattern
    size: str | None = None
    length_mm: float | None = None
    hand: str = "right"
    colourway: Colourway | None = None


def make_variants(
    made: Work,
    order: VariantOrder,
    colours: Sequence[BandColour] = (),
    progress: ReportProgress = report_nothing,
) -> Variants:
    """Make every variant ordered; those that do not hold, or cannot be worked, are left out with a finding.

    Raises:
        RefusedError: there are too few colours, sizes are asked for a piece that has none, or the loom is
        not straight.
    """
    found: list[Finding] = []
    drafts = list(_in_sizes(made, order, progress, found))
    drafts = [each for draft in drafts for each in _on_looms(draft, order)]
    drafts = [each for draft in drafts for each in _of_bands(draft, order)]
    drafts = list(_in_colours(drafts, made, order, colours, found))
    drafts = [each for draft in drafts for each in _in_hands(draft, order, found)]
    known = {each.code for each in made.findings} | {"stated-count-wrong", "text-count-wrong"}
    variants: list[PieceVariant] = []
    for done, draft in enumerate(drafts):
        progress("working and proving the variants", done, len(drafts))
        name = "-".join(draft.parts) or "same"
        worked = work(draft.pattern)
        why = _fault_of(worked, made)
        if why is not None:
            found.append(finding("variant-left-out", name=describe_variant(name), why=why))
            continue
        new = tuple(each for each in worked.findings if each.code not in known)
        variants.append(
            PieceVariant(name, worked, draft.size, draft.length_mm, draft.hand, draft.colourway, new)
        )
    return Variants(tuple(variants), tuple(found))


def _fault_of(worked: Work, made: Work) -> Phrase | None:
    if worked.left_out > made.left_out:
        return phrase("variant-refused")
    if made.holds and not worked.holds:
        return phrase("variant-falls")
    return None


def _in_sizes(
    made: Work, order: VariantOrder, progress: ReportProgress, found: list[Finding]
) -> Iterator[_Draft]:
    if not order.sizes:
        yield _Draft((), made.pattern)
        return
    measured = measure_piece(made, progress).measured
    longer = measure_lengths(made, progress) if measured.state == "closed" else None
    gauge = advise_fit(measured, None, longer).gauge
    if gauge is None:
        raise RefusedError(phrase("no-other-size"))
    graded = grade_sizes(
        lambda repeats, extension: _resize(made.pattern, longer, repeats, extension),
        gauge,
        order.sizes,
        least_repeats=longer.least if longer else 0,
        most_repeats=longer.most if longer else 0,
    )
    for one in graded:
        found += one.findings
        if one.pattern is not None and one.plan is not None:
            yield _Draft((_plain(one.asked),), one.pattern, one.asked, one.plan.length_mm)


def _resize(pattern: Pattern, longer: RepeatOptions | None, repeats: int, extension: int) -> Pattern | None:
    changes = longer is not None and repeats != longer.now
    return with_extension(with_repeats(pattern, repeats) if changes else pattern, extension)


def _on_looms(draft: _Draft, order: VariantOrder) -> Iterator[_Draft]:
    if not order.looms:
        yield draft
    for rows, pegs in order.looms:
        yield draft._replace(
            parts=(*draft.parts, f"loom-{rows}x{pegs}"), pattern=with_loom(draft.pattern, rows, pegs)
        )


def _of_bands(draft: _Draft, order: VariantOrder) -> Iterator[_Draft]:
    if not order.bands:
        yield draft
    for bore, thick in order.bands:
        parts = (*draft.parts, f"bands-{_plain(f'{bore:g}')}x{_plain(f'{thick:g}')}")
        yield draft._replace(parts=parts, pattern=with_band_size(draft.pattern, bore, thick))


def _in_colours(
    drafts: Sequence[_Draft],
    made: Work,
    order: VariantOrder,
    colours: Sequence[BandColour],
    found: list[Finding],
) -> Iterator[_Draft]:
    if not order.colourways:
        yield from drafts
        return
    needs = {heap.letter: heap.total for heap in made.supplies.heaps}
    ranked = rank_colourways(needs, colours, order.colourways, seed=order.seed)
    for number, colourway in enumerate(ranked, start=1):
        if not colourway.told_apart:
            found.append(finding("colourway-alike", number=number))
        if colourway.used > 1:
            found.append(finding("colourway-runs-short", number=number))
    for draft in drafts:
        for number, colourway in enumerate(ranked, start=1):
            yield draft._replace(
                parts=(*draft.parts, f"colours-{number}"),
                pattern=with_colours(draft.pattern, colourway.colours),
                colourway=colourway,
            )


def _in_hands(draft: _Draft, order: VariantOrder, found: list[Finding]) -> Iterator[_Draft]:
    for hand in order.hands:
        if hand == "right":
            yield draft
            continue
        parts = (*draft.parts, "left")
        try:
            yield draft._replace(parts=parts, pattern=mirror(draft.pattern), hand="left")
        except RefusedError as refused:
            found.append(
                finding("variant-left-out", name=describe_variant("-".join(parts)), why=refused.reason)
            )


def _plain(text: str) -> str:
    return _NOT_IN_A_NAME.sub("-", text.lower()).strip("-")
