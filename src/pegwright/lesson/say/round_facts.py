"""What holds in every round of a repeat, so that a sentence taught once is true of all of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal, NamedTuple

from pegwright.lesson.scene.rounds import CountedRounds, Teachable
from pegwright.lesson.scene.view import View, compass_way
from pegwright.loom import AppliedMove, Drawn, History, Laid, Lifted, Moved
from pegwright.pattern import Extend, Hook, Lift, Place, Slide, Transfer

LoopName = Literal["only", "lowest", "top", "counted"]
_NAMES: tuple[LoopName, ...] = ("only", "lowest", "top", "counted")


class MoveFacts(NamedTuple):
    """What the sentence of a move says that another round may not share.

    `above` counts the loops it goes through or over; `low` is the index of the lowest loop taken, `taken` how
    many are, `height` how many lie on the peg; `way` is the direction as the maker sees it; `letters` are the
    colours of the bands it lays or moves. −1 and an empty text stand for what the move does not have.
    """

    above: int = -1
    low: int = -1
    taken: int = 0
    height: int = 0
    way: str = ""
    letters: tuple[str, ...] = ()

    @property
    def names(self) -> tuple[LoopName, ...]:
        """The true names of what it takes, the plainest first."""
        true = {
            "only": self.height == self.taken == 1,
            "lowest": self.low == 0,
            "top": self.low + self.taken == self.height,
            "counted": True,
        }
        return tuple(name for name in _NAMES if true[name])


class Wording(NamedTuple):
    """How to word a move so that it is true of every round: the loops above, which loop, which way."""

    above: int | Literal["all", "any"]
    name: LoopName
    says_way: bool = True


def facts_of(history: History, view: View, index: int) -> MoveFacts:
    """Return the facts of the move of that index."""
    applied, before = history.moves[index], history.before(index)
    now = view._replace(turned=before.turned)
    letters = tuple(dict.fromkeys(history.colours[band - 1] for band in _bands_of(applied)))
    way = ""
    if isinstance(applied.move, Place) and len(applied.move.over) == 2:
        way = _way(now, *applied.move.over)
    works_loops = isinstance(applied.move, Hook | Slide | Transfer | Lift)
    for event in applied.events if works_loops else ():
        match event:
            case Drawn():
                stack, above = before.stack(event.source), len(event.through) - len(event.slid)
                way = _way(now, event.source, event.target)
            case Moved():
                stack, above = before.stack(event.source), -1
                way = _way(now, event.source, event.target)
            case Lifted():
                stack = before.stack(event.holder)
                above = len(event.over) if isinstance(applied.move, Lift) else 0  # drawn outside them
                target = getattr(applied.move, "target", None)
                way = _way(now, event.holder, target) if target else ""
            case _:
                continue
        taken = {e.bight for e in applied.events if isinstance(e, Drawn | Moved | Lifted)}
        low = min(stack.index(bight) for bight in taken if bight in stack)
        return MoveFacts(above, low, len(taken), len(stack), way, letters)
    return MoveFacts(way=way, letters=letters)


def wordings(history: History, view: View, taught: Sequence[Teachable]) -> dict[int, Wording]:
    """Return how to word each move that is taught in full and done again in rounds that are only counted.

    Moves that no round repeats are not in it.
    """
    model = models_of(taught)
    groups: dict[int, list[int]] = {}
    for index in model:
        groups.setdefault(_root(model, index), []).append(index)
    return {
        root: _common_wording([facts_of(history, view, index) for index in (root, *indices)])
        for root, indices in groups.items()
    }


def models_of(taught: Iterable[Teachable]) -> dict[int, int]:
    """Map each move of a counted round to the move of the first round that it follows."""
    model: dict[int, int] = {}
    for each in taught:
        if isinstance(each, CountedRounds):
            for indices in each.rounds:
                model |= {a: b for a, b in zip(indices, each.model, strict=True) if a not in model}
    return model


def _root(model: dict[int, int], index: int) -> int:
    while index in model:
        index = model[index]
    return index


def _common_wording(facts: Sequence[MoveFacts]) -> Wording:
    """Choose words that are true of all of them, the first one's where there are none."""
    first = facts[0]
    above: int | Literal["all", "any"] = first.above
    if any(each.above != first.above for each in facts):
        above = "all" if all(each.above for each in facts) else "any"
    same_place = all(each.low == first.low and each.taken == first.taken for each in facts)
    names = [
        name
        for name in first.names
        if all(name in each.names for each in facts) and (name != "counted" or same_place)
    ]
    return Wording(above, (names or first.names)[0], all(each.way == first.way for each in facts))


def _bands_of(applied: AppliedMove) -> list[int]:
    if isinstance(applied.move, Extend):
        return []
    found = []
    for event in applied.events:
        match event:
            case Laid():
                found.append(event.band)
            case Drawn() | Moved() | Lifted():
                found.append(event.bight.band)
            case _:
                pass
    return found


def _way(view: View, a: str, b: str) -> str:
    pegs = view.board.pegs
    return compass_way(view.spot(a), view.spot(b)) if a in pegs and b in pegs else ""
