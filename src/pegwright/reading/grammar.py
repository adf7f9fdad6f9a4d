"""The grammar of the trade's sentences: each has a few readings on the current loom, likeliest first.

Word order hardly matters, so the same rules read every language that has a word list: a sentence is its pegs,
its number, its directions, and one action.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable
from typing import NamedTuple

import msgspec

from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Turn,
    Wind,
    is_address,
    named_pegs,
    parse_address,
)
from pegwright.reading.draft import Draft, Reading
from pegwright.reading.lexicon import Token
from pegwright.reading.repetition import again_readings, chain_of

CLOCK = {12: (0, 1), 1: (1, 1), 2: (1, 1), 3: (1, 0), 4: (1, -1), 5: (1, -1), 6: (0, -1)}
CLOCK |= {7: (-1, -1), 8: (-1, -1), 9: (-1, 0), 10: (-1, 1), 11: (-1, 1)}
"""What lies in the direction of each hour: so many rows to the right and pegs away."""


class Sentence(NamedTuple):
    """The words of a sentence by meaning, and the letter of the band colour that it names."""

    tokens: tuple[Token, ...]
    colour: str = ""
    colours: tuple[str, ...] = ()

    def has(self, *kinds: str) -> bool:
        """Return whether a word has one of these meanings."""
        return any(token.kind in kinds for token in self.tokens)

    @property
    def pegs(self) -> tuple[str, ...]:
        """Return the pegs that are named, in order."""
        return tuple(token.text for token in self.tokens if token.kind == "peg-name")

    def number_before(self, *kinds: str, reach: int = 4) -> int | None:
        """Return the number at most `reach` words before a word with one of these meanings, or None."""
        for at, token in enumerate(self.tokens):
            if token.kind in kinds:
                for back in range(at - 1, max(at - 1 - reach, -1), -1):
                    if self.tokens[back].kind == "number":
                        return self.tokens[back].number
                    if self.tokens[back].kind == "mark":
                        break
        return None

    def direction(self) -> tuple[int, int] | None:
        """Return the direction of the sentence as (rows to the right, pegs away), or None."""
        for at, token in enumerate(self.tokens):
            if token.kind == "oclock" and at and self.tokens[at - 1].kind == "number":
                return CLOCK.get(self.tokens[at - 1].number)
        rows = self.has("right") - self.has("left")
        pegs = self.has("far") - self.has("near")
        return (rows, pegs) if rows or pegs else None


def readings(sentence: Sentence, draft: Draft) -> list[Reading]:
    """Return the readings of a sentence on this draft; none if the grammar does not know it."""
    for rule in _RULES:
        found = rule(sentence, draft)
        if found:
            return sorted(found, key=lambda reading: -reading.likelihood)[:8]
    return []


# --- one function an action -------------------------------------------------------------------------------


def _read_turn(said: Sentence, draft: Draft) -> list[Reading]:
    del draft
    if said.has("turn") and said.has("loom") and not said.has("band"):
        return [Reading((Turn(),), 1.0, opens=True)]
    return []


def _read_close(said: Sentence, draft: Draft) -> list[Reading]:
    if not said.has("clip", "knot") or said.has("care"):
        return []
    kind = Knot if said.has("knot") else Clip
    free = sorted({holder.partition(".")[0] for holder in draft.state.stacks if "." in holder})
    loaded = draft.loaded_pegs()
    if said.pegs:
        ends = tuple(free) if said.has("free-end", "ends", "both", "chain") else ()
        out = [Reading((kind(at=(*ends, *said.pegs)),), 0.9)]
        return out if ends or not free else [*out, Reading((kind(at=(*free, *said.pegs)),), 0.6)]
    if not free:
        return [Reading((kind(at=tuple(loaded)),), 0.8)] if loaded else []
    joined = [Reading((kind(at=(*free, peg)),), 0.8 / (1 + at)) for at, peg in enumerate(loaded[:3])]
    return joined or [Reading((kind(at=tuple(free)),), 0.8)]


def _read_bind(said: Sentence, draft: Draft) -> list[Reading]:
    if not (said.has("last-band") or (said.has("through") and said.has("band") and len(said.pegs) < 2)):
        return []
    last = next((m.target for m in reversed(draft.moves) if isinstance(m, Hook)), "")
    at = said.pegs[-1] if said.pegs else last or next(iter(draft.loaded_pegs()[-1:]), "")
    colour = said.colour or draft.colour
    return [Reading((Bind(colour=colour, at=at),), 0.9, colour=colour, opens=True)] if at else []


def _read_extend(said: Sentence, draft: Draft) -> list[Reading]:
    if not (said.has("chain") and said.has("add", "more", "put")):
        return []
    count = said.number_before("band", reach=5) or next(
        (t.number for t in said.tokens if t.kind == "number"), 0
    )
    colour = said.colour or draft.colour
    blanks = () if count else ("chain-bands",)
    return [
        Reading((Extend(colour=colour, bands=min(max(count, 1), 500)),), 0.9, colour=colour, blanks=blanks)
    ]


def _read_lift(said: Sentence, draft: Draft) -> list[Reading]:
    if not (said.has("lift") and said.has("over", "lowest", "loop", "band")):
        return []
    last = next((m.over for m in reversed(draft.moves) if isinstance(m, Place)), ())
    at = said.pegs or (last if said.has("both", "each") else last[:1])
    together = said.number_before("lowest", reach=2) or 1
    together = together if said.has("lowest") and said.has("loop") and together < 100 else 1
    return [Reading(tuple(Lift(at=peg, together=together) for peg in at), 0.9)] if at else []


def _read_hook(said: Sentence, draft: Draft) -> list[Reading]:
    if not (said.has("hook", "put") and said.has("loop")):
        return []
    loop = -1 if said.has("top") and not said.has("lowest") else 1
    together = 2 if said.has("both") else said.number_before("lowest", "top", "loop", reach=2) or 1
    if loop < 0:
        loop = -together
    colour = draft.colour
    if said.has("each", "all-along") or (said.has("until") and len(said.pegs) == 3):
        return [
            Reading(
                tuple(Hook(source=a, target=b, loop=loop, together=min(together, 100)) for a, b in pairs),
                likely,
            )
            for pairs, likely in _hook_runs(said, draft)
        ]
    pegs = said.pegs
    if len(pegs) >= 2 and len(pegs) % 2 == 0:
        pairs = tuple(zip(pegs[::2], pegs[1::2], strict=True))
        moves = tuple(Hook(source=a, target=b, loop=loop, together=min(together, 100)) for a, b in pairs)
        return [Reading(moves, 0.95, colour=colour)]
    way = said.direction()
    if len(pegs) == 1 and way:
        target = draft.beside(pegs[0], *way)
        move = Hook(source=pegs[0], target=target or pegs[0], loop=loop, together=min(together, 100))
        return [Reading((move,), 0.85)]
    return []


def _hook_runs(said: Sentence, draft: Draft) -> list[tuple[tuple[tuple[str, str], ...], float]]:
    """Return the ways to work along a row, as (from, to) pairs of pegs, and their likelihoods."""
    if len(said.pegs) == 3:
        run = chain_of((said.pegs[0], said.pegs[1]), said.pegs[2])
        return [(run, 0.95)] if run else []
    loaded = draft.loaded_pegs()
    found = []
    for row in sorted({parse_address(peg).row for peg in loaded}):
        line = [peg for peg in loaded if parse_address(peg).row == row]
        if len(line) < 3:
            continue
        away = tuple(itertools.pairwise(line[1:]))
        back = tuple(itertools.pairwise(line[-2::-1]))
        way = said.direction()
        nearer = 0.15 if way is None or way[1] >= 0 else 0.8
        found += [(away, 0.95 - nearer), (back, nearer)]
    if len(said.pegs) == 2:
        return [
            (run, likely) for run, likely in found if run[0][0] == said.pegs[0] and run[-1][1] == said.pegs[1]
        ] or [(run, likely * 0.5) for run, likely in found if run[0][0] == said.pegs[0]]
    return found


def _read_wind(said: Sentence, draft: Draft) -> list[Reading]:
    if not said.has("cap", "wind"):
        return []
    if said.has("place") and len(said.pegs) > 1:
        return []
    turns = said.number_before("times") or (2 if any(t.text == "twice" for t in said.tokens) else 3)
    colour = said.colour or draft.colour
    if said.pegs:
        at: tuple[str, ...] = said.pegs
    elif said.has("each") and said.has("center"):
        at = _centers(draft)
    else:
        at = (draft.cursor,) if draft.cursor else ()
    moves = tuple(Wind(colour=colour, on=peg, turns=min(max(turns, 1), 8)) for peg in at)
    return [Reading(moves, 0.9, colour=colour)] if moves else []


def _centers(draft: Draft) -> tuple[str, ...]:
    """Return the pegs with bands to four sides or more, in the order in which they were filled."""
    froms: dict[str, int] = {}
    for move in draft.moves:
        if isinstance(move, Place):
            froms[move.over[0]] = froms.get(move.over[0], 0) + 1
    return tuple(peg for peg, count in froms.items() if count >= 4)


def _read_start(said: Sentence, draft: Draft) -> list[Reading]:
    if not said.has("start") or said.has("band") or len(said.pegs) != 1:
        return []
    del draft
    return [Reading((), 1.0, cursor=said.pegs[0], opens=not said.has("from"))]


def _read_place(said: Sentence, draft: Draft) -> list[Reading]:
    short = (
        bool(said.tokens)
        and said.tokens[0].kind == "number"
        and bool(said.pegs or said.direction() or said.has("center"))
    )
    if not (said.has("band", "place") or short) or said.has("need") or said.has("times"):
        return []
    colour = said.colour or draft.colour
    blanks = () if colour else ("colour",)
    count = min(said.number_before("band", reach=5) or 1, 100)
    twist = 1 if said.has("half-turn") else 0
    pegs = said.pegs
    if len(pegs) < 2:
        return _place_by_way(said, draft, colour, count, blanks)
    if len(pegs) == 2 and len(said.colours) > 1:
        moves = tuple(_band(one, pegs, twist) for one in said.colours)
        return [Reading(moves, 0.95, colour=said.colours[-1])]
    over = said.has("over") and not said.has("from") and len(pegs) > 2
    if said.has("until", "all-along", "again") or (
        len(pegs) == 4
        and parse_address(pegs[2]).number == parse_address(pegs[1]).number
        and count == 1
        and said.has("each")
    ):
        end = pegs[-1] if len(pegs) > 2 and said.has("until", "again") else ""
        run = chain_of((pegs[0], pegs[1]), end)
        if run:
            moves = tuple(_band(colour, pair, twist) for pair in run for _ in range(count))
            return [Reading(moves, 0.9, colour=colour, blanks=blanks)]
    if over or len(pegs) % 2:
        return [Reading((_band(colour, pegs, twist),) * count, 0.85, colour=colour, blanks=blanks)]
    pairs = tuple(zip(pegs[::2], pegs[1::2], strict=True))
    each = count if len(pairs) == 1 else max(count // len(pairs), 1)
    moves = tuple(_band(colour, pair, twist) for pair in pairs for _ in range(each))
    return [Reading(moves, 0.95, colour=colour, blanks=blanks)]


def _place_by_way(
    said: Sentence, draft: Draft, colour: str, count: int, blanks: tuple[str, ...]
) -> list[Reading]:
    """Read a band placed in some direction from where the last one ended, or from the one peg named."""
    start = said.pegs[0] if said.pegs and not said.has("to", "until") else draft.cursor
    if not start:
        return []
    if said.pegs and said.has("to", "until"):
        return [Reading((_band(colour, (start, said.pegs[0])),) * count, 0.9, colour=colour, blanks=blanks)]
    way = said.direction()
    if said.has("center"):
        row = parse_address(start).row
        ways = [(1 - row, 1, 0.6), (1 - row, 0, 0.3), (1 - row, -1, 0.1)]
        ways = [(rows * draft.side, pegs, likely) for rows, pegs, likely in ways if rows]
    elif way is None:
        return []
    elif way[0] and not way[1] and not said.has("oclock"):
        ways = [(way[0], 1, 0.5), (way[0], 0, 0.5)]
    else:
        ways = [(*way, 0.9)]
    found = []
    for rows, pegs, likely in ways:
        target = draft.beside(start, rows, pegs)
        if target:
            moves = (_band(colour, (start, target)),) * count
            found.append(Reading(moves, likely, colour=colour, blanks=blanks))
    return found


def _band(colour: str, over: tuple[str, ...], twist: int = 0) -> Place:
    return Place(colour=colour or "A", over=over, twists=(twist,) + (0,) * (len(over) - 2) if twist else ())


def _read_mirror(said: Sentence, draft: Draft) -> list[Reading]:
    """“The same on the right”: the block so far, mirrored at the row where it started."""
    if not said.has("same") or not said.has("left", "right") or said.has("band", "same-place"):
        return []
    unit = draft.moves[draft.block :]
    if not unit:
        return []
    axis = parse_address(named_pegs(unit[0])[0]).row
    moves = tuple(_mirror(move, axis) for move in unit)
    return [] if any(move is None for move in moves) else [Reading(tuple(m for m in moves if m), 0.9)]


def _mirror(move: Move, axis: int) -> Move | None:
    from pegwright.pattern import Address, with_holders  # noqa: PLC0415

    if any(2 * axis - parse_address(peg).row < 0 for peg in named_pegs(move)):
        return None
    return with_holders(
        move,
        lambda peg: (
            str(Address(2 * axis - parse_address(peg).row, parse_address(peg).number))
            if is_address(peg)
            else peg
        ),
    )


def _read_same_colour(said: Sentence, draft: Draft) -> list[Reading]:
    """“The same with yellow”: the block so far once more, in another colour."""
    if not said.has("same") or not said.colour or not draft.moves[draft.block :]:
        return []
    unit = draft.moves[draft.block :]
    moves = tuple(
        msgspec.structs.replace(move, colour=said.colour) if hasattr(move, "colour") else move
        for move in unit
    )
    return [Reading(moves, 0.9, colour=said.colour)]


def _read_again(said: Sentence, draft: Draft) -> list[Reading]:
    if not said.has("again", "same") and not (said.has("more") and said.has("times")):
        return []
    return again_readings(said, draft)


_RULES: tuple[Callable[[Sentence, Draft], list[Reading]], ...] = (
    _read_turn,
    _read_close,
    _read_extend,
    _read_bind,
    _read_lift,
    _read_mirror,
    _read_same_colour,
    _read_start,
    _read_hook,
    _read_wind,
    _read_place,
    _read_again,
)
