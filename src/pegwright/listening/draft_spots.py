"""Where on the loom the pegs of a draft's steps are, and which way is which."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from pegwright.listening.draft_steps import SaidStep
from pegwright.listening.draft_words import HeardPeg
from pegwright.pattern import Address, Hang, Move, Place, Wind, row_letter, with_pegs

PegSpot = tuple[int, int]
"""A row and a peg's number in it, or how far one is from another."""


def colours_of(moves: Iterable[Move]) -> list[str]:
    """Return the colours of the bands that moves add."""
    return [move.colour for move in moves if isinstance(move, (Place, Wind, Hang))]


def supplies_in(steps: Sequence[SaidStep], letter: Callable[[str], str]) -> dict[str, int]:
    """Return how many bands of each colour are to be laid out, as far as it was heard."""
    found: dict[str, int] = {}
    for step in steps:
        if step.kind != "need":
            continue
        number = None
        for word in step.words:
            if word.number is not None:
                number = word.number
            if word.colour and number is not None:
                found.setdefault(letter(word.colour), number)
                number = None
    return found


def is_off_loom(step: SaidStep) -> bool:
    """Say whether a band is said to go to a row that the loom, by all else that is said, does not have."""
    return step.kind == "place" and any(
        peg.row and peg.number and not peg.clear for peg in step.pegs if peg.row != "a"
    )


def spot_of(peg: HeardPeg | None) -> PegSpot | None:
    """Return where a peg is, None if its name was not heard whole."""
    if peg is None or not peg.row or not peg.number:
        return None
    return ord(peg.row) - ord("a"), peg.number


def spot_named(name: str) -> PegSpot:
    """Return where a peg of this name is."""
    return ord(name[0].lower()) - ord("a"), int(name[1:])


def name_of(spot: PegSpot) -> str:
    """Return the name of a peg."""
    return f"{row_letter(spot[0])}{spot[1]}"


def is_part_of(vector: PegSpot, whole: PegSpot) -> bool:
    """Say whether a direction is what is left of a slanting one of which a half was not heard."""
    return vector != whole and all(
        part in (0, all_of_it) for part, all_of_it in zip(vector, whole, strict=True)
    )


def are_near(one: PegSpot, other: PegSpot) -> bool:
    """Say whether two pegs are neighbours."""
    return max(abs(one[0] - other[0]), abs(one[1] - other[1])) == 1


def may_be(peg: HeardPeg, spot: PegSpot) -> bool:
    """Say whether what was heard of a peg's name leaves it open that it is this one."""
    row = ord(peg.row) - ord("a") if peg.row else spot[0]
    return row == spot[0] and (not peg.number or peg.number == spot[1])


def pair_of(step: SaidStep) -> tuple[HeardPeg, HeardPeg] | None:
    """Return the two pegs that a direction leads between, or None."""
    if step.kind == "place" and len(step.pegs) == 2:
        return step.pegs[0], step.pegs[1]
    if step.kind in ("down", "slide") and step.pegs and step.target is not None:
        return step.pegs[0], step.target
    return None


def vector_of(way: frozenset[str], turned: bool) -> PegSpot | None:
    """Return which way a direction goes on the loom as it lies: rows to the right, pegs away."""
    rows = ("right" in way) - ("left" in way)
    pegs = ("away" in way) - ("towards" in way)
    if {"left", "right"} <= way or {"away", "towards"} <= way or not (rows or pegs):
        return None
    return (-rows, -pegs) if turned else (rows, pegs)


def shift_of(step: SaidStep) -> PegSpot | None:
    """Return how far each round is moved on, or None where that was not heard."""
    if step.shift is None:
        return None
    number, unit, way = step.shift
    if "round" in way:
        return (0, number) if number == 1 or number else None
    vector = vector_of(way, step.turned)
    if number is None or vector is None or not (vector[0] == 0 or vector[1] == 0):
        return None
    if unit is not None and (unit == "row") != (vector[0] != 0):
        return None
    return vector[0] * number, vector[1] * number


def last_spot(move: Move) -> PegSpot | None:
    """Return the peg that a move ends on, or None."""
    name = getattr(move, "target", None) or getattr(move, "on", None) or getattr(move, "at", None)
    if isinstance(move, Place):
        name = move.over[-1]
    return spot_named(name) if isinstance(name, str) else None


def first_spot(move: Move) -> PegSpot | None:
    """Return the peg that a move begins with, or None."""
    if isinstance(move, Place):
        return spot_named(move.over[0])
    name = getattr(move, "source", None) or getattr(move, "on", None) or getattr(move, "at", None)
    return spot_named(name) if isinstance(name, str) else None


def move_on(move: Move, rows: int, pegs: int, ring: int) -> Move | None:
    """Return a move further on; None where no such peg can be."""

    def change(address: Address) -> Address:
        number = address.number + pegs
        return Address(address.row + rows, (number - 1) % ring + 1 if ring else number)

    return with_pegs(move, change)
