"""“Five more times”: which steps to repeat, how far along each time, and how often."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pegwright.pattern import Address, Move, named_pegs, parse_address, peg_name, with_pegs
from pegwright.reading.draft import Draft, Gap, Reading

if TYPE_CHECKING:
    from pegwright.reading.sentence import Sentence

MOST_MOVES = 5_000
MOST_UNITS = 8
"""How many sentences a repeat is tried to reach back."""
LAST_PEG = 10_000


def chain_of(pair: tuple[str, str], end: str) -> tuple[tuple[str, str], ...]:
    """Return the pair and its successors at equal steps until one ends on `end`; empty if none does."""
    one, other = parse_address(pair[0]), parse_address(pair[1])
    step = other.row - one.row, other.number - one.number
    found = [pair]
    last = parse_address(end) if end else None
    while last is not None and parse_address(found[-1][1]) != last:
        row, number = (a + b for a, b in zip(parse_address(found[-1][1]), step, strict=True))
        following = peg_name(row, number)
        if step == (0, 0) or following is None or number > LAST_PEG or len(found) > MOST_MOVES:
            return ()
        found.append((found[-1][1], following))
    return tuple(found) if last is not None else ()


def again_readings(said: Sentence, draft: Draft) -> list[Reading]:
    """Return the readings of a repeat: units from the whole block down, shifts as stated or as inferred."""
    found = []
    told = said.times()
    bands = said.number_before("band", "step", reach=2) if said.has("last") else None
    starts = [draft.block, *(unit for unit in draft.units if unit > draft.block)]
    if bands is not None:
        starts = [len(draft.moves) - bands] if 0 < bands <= len(draft.moves) else []
    units = [draft.moves[start:] for start in list(dict.fromkeys(starts))[:MOST_UNITS]]
    for rank, unit in enumerate([draft.moves_of(said.earlier)] if said.earlier else units):
        if not unit or (told or 1) * len(unit) > MOST_MOVES:
            continue
        for shift, likely in _shifts(said, draft, unit):
            count, gaps = _times(said, draft, unit, shift, told)
            if not count or count * len(unit) > MOST_MOVES:
                continue
            moved: list[Move] = []
            for k in range(1, count + 1):
                moved += [move for move in (_shift(one, k, shift) for one in unit) if move is not None]
            if len(moved) == count * len(unit):
                found.append(Reading(tuple(moved), likely * 0.9 * 0.4**rank, gaps=gaps))
    return found


def _times(
    said: Sentence, draft: Draft, unit: tuple[Move, ...], shift: tuple[int, int], told: int | None
) -> tuple[int, tuple[Gap, ...]]:
    """Return how often the unit is done again, and the gap where nothing says when to stop."""
    if told is not None:
        if said.has("more", "again", "go-on", "same") or said.earlier or told < 2:
            return told, ()
        return said.number_or_gap("times", None, (told - 1, told))
    if said.earlier:
        return 1, ()
    if said.pegs:
        return _times_until(said, unit, shift), ()
    if said.has("until") and not said.has("all-along"):
        return 0, ()
    fits = _times_that_fit(draft, unit, shift)
    if said.has("all-along"):
        return fits, ()
    if said.has("again", "same") and not said.has("go-on"):
        return 1, ()
    return said.number_or_gap("times", None, (fits or 1, 1) if fits > 1 else (1,))


def _times_that_fit(draft: Draft, unit: tuple[Move, ...], shift: tuple[int, int]) -> int:
    """Return how often the unit can be moved on before it leaves the loom; 0 where it stays in place."""
    if shift == (0, 0):
        return 0
    for count in range(1, MOST_MOVES // len(unit) + 1):
        moved = [_shift(move, count, shift) for move in unit]
        if any(move is None or not set(named_pegs(move)) <= set(draft.board.pegs) for move in moved):
            return count - 1
    return 0


def _shifts(said: Sentence, draft: Draft, unit: tuple[Move, ...]) -> list[tuple[tuple[int, int], float]]:
    if said.has("same-place") or (said.earlier and not said.has("step-on")):
        return [((0, 0), 1.0)]
    way = said.direction()
    told = said.number_before("step-on", "peg", reach=1)
    if told and told < LAST_PEG:
        away = -1 if way is not None and way[1] < 0 else 1
        return [((0, told * away * draft.side), 0.95), ((0, -told * away * draft.side), 0.2)]
    pegs = [peg for move in unit for peg in named_pegs(move)]
    if not pegs:
        return []
    first, last = parse_address(pegs[0]), parse_address(pegs[-1])
    numbers = [parse_address(peg).number for peg in pegs]
    span = max(numbers) - min(numbers)
    own = (last.row - first.row, last.number - first.number)
    along = (0, span if own[1] >= 0 else -span)
    moves_on = said.pegs or said.has("all-along", "step-on") or (said.has("go-on") and said.times() is None)
    in_place = 0.2 if moves_on else 0.5
    found = [(own, 0.8 if own != (0, 0) else 0.4), (along, 0.7), ((0, 0), in_place)]
    if said.has("step-on"):  # how far is not said, but it is not in the same place
        found = [(shift, 0.7) for shift, _ in found if shift != (0, 0)]
    return list(dict.fromkeys(found))


def _times_until(said: Sentence, unit: tuple[Move, ...], shift: tuple[int, int]) -> int:
    """Return how often to repeat the unit until it ends on the named peg; 0 if it never does."""
    if shift == (0, 0):
        return 0
    end = parse_address(said.pegs[-1])
    here = parse_address([peg for move in unit for peg in named_pegs(move)][-1])
    axis = 1 if shift[1] else 0
    times, rest = divmod(end[axis] - here[axis], shift[axis])
    return times if not rest and 0 < times <= MOST_MOVES else 0


def _shift(move: Move, times: int, shift: tuple[int, int]) -> Move | None:
    rows, pegs = shift[0] * times, shift[1] * times
    moved = with_pegs(move, lambda peg: Address(peg.row + rows, peg.number + pegs))
    if moved is None or any(parse_address(peg).number > LAST_PEG for peg in named_pegs(moved)):
        return None
    return moved
