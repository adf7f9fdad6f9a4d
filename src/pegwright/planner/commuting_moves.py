"""Which moves of a history may change places without changing the piece, and orders to make them in.

Two moves keep their order if both touch one peg, or if bands that they lay or move cross in plan: then one
lies over the other. A turn of the loom, everything on the hook or at a free end, every fastener, and every
move that drags a loop along keep their place, and nothing passes them. Compare the rewrites of machine
knitting that keep the object (Lin et al., ACM Trans. Graph. 42, 2023, doi 10.1145/3592449); here only what
plainly commutes does.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, product
from typing import NamedTuple

from pegwright.loom import Bight, History, Laid
from pegwright.pattern import Clip, Hook, Lift, Place, Transfer, Wind, named_holders
from pegwright.planner.description import Anchor, SpokenMove, move_token
from pegwright.structure import PlanPoint

__all__ = ["Course", "course_of", "likely_orders"]

_FREE = (Place, Wind, Hook, Lift, Transfer)
_FOLLOWED = (1, 0, 2, 3, 4, 5, 6, 8, 10, 12)


class Course(NamedTuple):
    """The moves as spoken, which moves each must come after, and what each is: its kind, place and colour."""

    spoken: tuple[SpokenMove, ...]
    after: tuple[frozenset[int], ...]
    kinds: tuple[object, ...]
    places: tuple[Anchor, ...]
    colours: tuple[str, ...]


def course_of(history: History, spoken: Sequence[SpokenMove]) -> Course:
    """Find which moves of a history commute; `spoken` are its moves with their loops counted both ways."""
    spots = history.board.spots
    seats: dict[Bight, str] = {}
    after: list[frozenset[int]] = []
    last: dict[str, int] = {}
    lines: list[tuple[tuple[PlanPoint, PlanPoint], ...]] = []
    barrier = -1
    starts = any(isinstance(done.move, Clip) and "start" in done.move.at for done in history.moves)
    for at, done in enumerate(history.moves):
        pegs = {peg for peg in named_holders(done.move) if peg in spots}
        touched = set(pegs)
        for event in done.events:
            moved = event.band if isinstance(event, Laid) else getattr(event, "bight", Bight(0, 0)).band
            touched |= {holder for bight, holder in seats.items() if bight.band == moved and holder in spots}
            for seat in getattr(event, "seats", ()):
                seats[seat.bight] = seat.holder
            if not isinstance(event, Laid) and moved:
                seats[event.bight] = getattr(event, "target", "")  # type: ignore[union-attr]
        lines.append(tuple((spots[one], spots[other]) for one, other in combinations(sorted(touched), 2)))
        drags = any(getattr(event, "dragged", ()) for event in done.events)
        first_band = starts and at == 0
        if drags or first_band or not isinstance(done.move, _FREE):
            after.append(frozenset(range(at)))
            barrier = at
        else:
            must = {last[peg] for peg in pegs if peg in last}
            must |= {other for other in range(barrier + 1, at) if _cross(lines[other], lines[at])}
            after.append(frozenset(must | ({barrier} if barrier >= 0 else set())))
        last |= dict.fromkeys(pegs, at)
    tokens = [move_token(one.move) for one in spoken]
    here: Anchor = (0, 1)
    places: list[Anchor] = []
    for _, anchor in tokens:
        here = anchor or here
        places.append(here)
    return Course(
        tuple(spoken),
        tuple(after),
        tuple(token for token, _ in tokens),
        tuple(places),
        tuple(getattr(one.move, "colour", "") for one in spoken),
    )


def _cross(
    some: Sequence[tuple[PlanPoint, PlanPoint]], others: Sequence[tuple[PlanPoint, PlanPoint]]
) -> bool:
    return any(_lines_cross(*one, *other) for one in some for other in others)


def _lines_cross(a: PlanPoint, b: PlanPoint, c: PlanPoint, d: PlanPoint) -> bool:
    """Say whether two straight lines cross or touch, other than at a common end."""
    if {a, b} & {c, d}:
        return False
    if max(a[0], b[0]) < min(c[0], d[0]) or max(c[0], d[0]) < min(a[0], b[0]):
        return False
    if max(a[1], b[1]) < min(c[1], d[1]) or max(c[1], d[1]) < min(a[1], b[1]):
        return False
    return _side(a, b, c) * _side(a, b, d) <= 0 and _side(c, d, a) * _side(c, d, b) <= 0


def _side(a: PlanPoint, b: PlanPoint, at: PlanPoint) -> float:
    return (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])


def likely_orders(course: Course) -> Iterator[list[int]]:
    """Yield orders of the moves that make the same piece, each once: along the rows or across, by colour, and
    going on as so many moves ago."""
    seen: set[tuple[int, ...]] = set()
    keys = list(product((False, True), (1, -1), (1, -1)))
    for followed, by_colour, (across, row, peg) in product(_FOLLOWED, (True, False), keys):
        order = _schedule(course, followed, (across, row, peg), by_colour=by_colour)
        if tuple(order) not in seen:
            seen.add(tuple(order))
            yield order


def _schedule(course: Course, followed: int, along: tuple[bool, int, int], *, by_colour: bool) -> list[int]:
    """Make the moves one by one, each as soon as all that must come before it are made."""
    count = len(course.spoken)
    open_ = [len(must) for must in course.after]
    waiting: dict[int, list[int]] = {}
    for at, must in enumerate(course.after):
        for other in must:
            waiting.setdefault(other, []).append(at)
    ready = {at for at in range(count) if not open_[at]}
    done: list[int] = []
    across, row_sign, peg_sign = along
    keys = [(row * row_sign, peg * peg_sign) for row, peg in course.places]
    keys = [key[::-1] for key in keys] if across else keys
    while ready:
        kind, place = _expected_next(course, done, followed)
        colour = course.colours[done[-1]] if done and by_colour else None

        def doubt(
            at: int, kind: object = kind, place: Anchor | None = place, colour: str | None = colour
        ) -> tuple[object, ...]:
            like = course.kinds[at] == kind
            fits = 0 if like and course.places[at] == place else 1 if like else 2
            return colour is not None and course.colours[at] != colour, fits, keys[at], at

        best = min(ready, key=doubt)
        ready.remove(best)
        done.append(best)
        for at in waiting.get(best, ()):
            open_[at] -= 1
            if not open_[at]:
                ready.add(at)
    return done


def _expected_next(course: Course, done: list[int], followed: int) -> tuple[object, Anchor | None]:
    """Return the kind and place of the move that goes on as the one so many moves ago."""
    if not followed or len(done) < followed:
        return None, None
    model = done[-followed]
    row, peg = course.places[model]
    if len(done) <= followed:
        return course.kinds[model], None
    (row_on, peg_on), (row_was, peg_was) = course.places[done[-1]], course.places[done[-1 - followed]]
    return course.kinds[model], (row + row_on - row_was, peg + peg_on - peg_was)
