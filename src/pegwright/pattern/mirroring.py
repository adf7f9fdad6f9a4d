"""The left-handed edition: a whole pattern mirrored left for right, loom and all.

Rows change places (A with the last), what runs along a row stays. On a round loom, which has no left or right
row, the pegs are counted the other way round: A1 changes with the last peg, so that counting stays even; that
is the mirror image turned on by one peg, which the round loom does not feel.

A half-twist stays as it is: its sense is the maker's, and follows the hand.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

import msgspec

from pegwright.finding import RefusedError, phrase
from pegwright.pattern.address import is_address, parse_address, peg_name
from pegwright.pattern.document import Motif, Pattern
from pegwright.pattern.expansion import addresses_in
from pegwright.pattern.holders import with_holders
from pegwright.pattern.layout import CHANNEL_DEG, JoinedLooms, Layout, PegAt, Pegs, Round, Rows, pegs
from pegwright.pattern.lookup import motifs_by_name
from pegwright.pattern.moves import PatternStep, Repeat, Use

_OTHER = {"left": "right", "right": "left", "near": "near", "far": "far"}


class _Axis(NamedTuple):
    """A mirror: row or peg number n becomes `total` − n."""

    what: str
    total: int

    def mirror_holder(self, holder: str) -> str:
        """Mirror a peg's address; other holders stay.

        Raises:
            RefusedError: the peg would have no address.
        """
        if not is_address(holder):
            return holder
        row, number = parse_address(holder)
        if self.what == "rows":
            row = self.total - row
        else:
            number = self.total - number
        mirrored = peg_name(row, number)
        if mirrored is None:
            raise RefusedError(phrase("beyond-the-loom", peg=holder))
        return mirrored


def mirror(pattern: Pattern) -> Pattern:
    """Return the pattern mirrored left for right. Mirrored again it is the pattern, in its normal form.

    Texts stay as they are: what a designer wrote about left and right must be read again.

    Raises:
        RefusedError: a step names a peg that lies beyond the loom.
    """
    axis = _axis_of(pattern.loom)
    sizes = {name: _mirror_total(axis, motif) for name, motif in motifs_by_name(pattern).items()}
    return msgspec.structs.replace(
        pattern,
        loom=mirror_layout(pattern.loom),
        motifs=tuple(
            msgspec.structs.replace(m, steps=_mirror_steps(m.steps, _Axis(axis.what, sizes[m.name]), sizes))
            for m in pattern.motifs
        ),
        steps=_mirror_steps(pattern.steps, axis, sizes),
    )


def mirror_holder(pattern: Pattern) -> Callable[[str], str]:
    """Return what `mirror` does to the holders of the piece's own moves: its pegs change places, ends stay.

    What it returns raises RefusedError where the peg would have no address.
    """
    return _axis_of(pattern.loom).mirror_holder


def mirror_layout(loom: Layout) -> Layout:
    """Return a loom mirrored left for right: the pegs of row A are then those of the last row."""
    match loom:
        case Rows():
            return _mirror_rows(loom, loom.rows)
        case JoinedLooms() if loom.side == "beside":
            return msgspec.structs.replace(
                loom, looms=tuple(_mirror_rows(one, one.rows) for one in loom.looms[::-1])
            )
        case JoinedLooms() if (
            len({(one.rows, one.row_gap_mm if one.rows > 1 else 0.0) for one in loom.looms}) == 1
        ):
            return msgspec.structs.replace(
                loom, looms=tuple(_mirror_rows(one, one.rows) for one in loom.looms)
            )
        case JoinedLooms():
            # Looms of different widths stand flush left; mirrored they stand flush right, peg by peg.
            sides = {degrees: side for side, degrees in CHANNEL_DEG.items()}
            standing = tuple(PegAt(p.at, p.x_mm, p.y_mm, sides[p.channel_deg]) for p in pegs(loom))  # type: ignore[arg-type]
            return mirror_layout(Pegs(pegs=standing, peg_mm=loom.peg_mm, height_mm=loom.height_mm))
        case Round():
            return loom
        case Pegs():
            axis = _axis_of(loom)
            middle = min(p.x_mm for p in loom.pegs) + max(p.x_mm for p in loom.pegs)
            return msgspec.structs.replace(
                loom,
                pegs=tuple(
                    PegAt(axis.mirror_holder(p.at), round(middle - p.x_mm, 6), p.y_mm, _OTHER[p.channel])  # type: ignore[arg-type]
                    for p in loom.pegs
                ),
            )


def _mirror_rows(loom: Rows, rows: int) -> Rows:
    shift = (*loom.shift[:rows], *(0.0,) * (rows - len(loom.shift)))[::-1]
    while shift and not shift[-1]:
        shift = shift[:-1]
    return msgspec.structs.replace(loom, shift=shift, channel=_OTHER[loom.channel])


def _axis_of(loom: Layout) -> _Axis:
    """Return the mirror of a loom's addresses."""
    if isinstance(loom, Round):
        return _Axis("pegs", loom.pegs + 1)
    rows = [parse_address(peg.at).row for peg in pegs(loom)]
    return _Axis("rows", min(rows) + max(rows))


def _mirror_total(axis: _Axis, motif: Motif) -> int:
    """Return the sum of the least and the greatest number that a motif names itself.

    Any number would do, since every use of the motif is moved to make up for it; this one keeps all that the
    motif names on the loom, whatever its counts are.
    """
    places = [parse_address(text) for text in addresses_in(motif.steps)]
    numbers = [place.row if axis.what == "rows" else place.number for place in places]
    return min(numbers) + max(numbers) if numbers else 0


def _mirror_steps(
    steps: tuple[PatternStep, ...], axis: _Axis, sizes: dict[str, int]
) -> tuple[PatternStep, ...]:
    return tuple(_mirror_step(step, axis, sizes) for step in steps)


def _mirror_step(step: PatternStep, axis: _Axis, sizes: dict[str, int]) -> PatternStep:
    match step:
        case Repeat():
            moved: dict[str, Any] = {axis.what: -getattr(step, axis.what)}
            return msgspec.structs.replace(step, steps=_mirror_steps(step.steps, axis, sizes), **moved)
        case Use():
            # The motif's own steps are mirrored already: what is left to do is to put it in its place.
            offset = axis.total - sizes.get(step.name, 0) - getattr(step, axis.what)
            return msgspec.structs.replace(step, **{axis.what: offset})
        case _:
            return with_holders(step, axis.mirror_holder)
