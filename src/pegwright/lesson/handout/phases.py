"""The phases of a lesson: which moves are taught under which heading."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pegwright.lesson.handout.sheet import PhaseName
from pegwright.lesson.scene.rounds import Teachable
from pegwright.loom import AppliedMove
from pegwright.pattern import Bind, Clip, Extend, Knot, Move, Place, Put, Turn, Wind


class PhasedItem(NamedTuple):
    """One thing to teach and the phase it falls in."""

    taught: Teachable
    phase: PhaseName


def group_by_phase(
    moves: tuple[AppliedMove, ...], taught: Sequence[Teachable]
) -> Iterator[tuple[PhaseName, list[PhasedItem]]]:
    """Gather what is taught into phases; a lone placing between other work is part of the work."""
    units = [PhasedItem(t, _phase_of_item(moves, t)) for t in taught]
    worked = False
    group: list[PhasedItem] = []
    for i, unit in enumerate(units):
        worked = worked or unit.phase == "work"
        beside = [u.phase for u in units[max(0, i - 1) : i + 2] if u is not unit]
        if worked and unit.phase == "place" and "place" not in beside:
            unit = unit._replace(phase="work")  # noqa: PLW2901
        if group and group[0].phase != unit.phase:
            yield group[0].phase, group
            group = []
        group.append(unit)
    if group:
        yield group[0].phase, group


def _phase_of_item(moves: tuple[AppliedMove, ...], taught: Teachable) -> PhaseName:
    indices = (taught,) if isinstance(taught, int) else taught.rounds[0]
    names = {"work" if _goes_on(moves, i) else _phase_of_move(moves[i].move) for i in indices}
    return names.pop() if len(names) == 1 else "work"


def _goes_on(moves: tuple[AppliedMove, ...], index: int) -> bool:
    """Say whether a band or chain is drawn through loops only to be put back on pegs: no finish, but work."""
    move = moves[index].move
    if not isinstance(move, Bind | Extend):
        return False
    later = (one.move for one in moves[index + 1 :])
    after = next((one for one in later if isinstance(one, Bind | Put) and one.end == move.end), None)
    return isinstance(after, Put)


def _phase_of_move(move: Move) -> PhaseName:
    match move:
        case Place() | Wind():
            return "place"
        case Turn():
            return "turn"
        case Bind() | Knot():
            return "finish"
        case Extend():
            return "extend"
        case Clip():
            return "close" if len(move.at) > 1 else "finish"
        case _:
            return "work"
