"""“No, a green one”: the last sentence once more, with what is corrected in it."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from pegwright.pattern import Hook, Lift, Move, Wind, is_address, named_pegs, with_holders
from pegwright.reading.clauses import Clause
from pegwright.reading.draft import Reading
from pegwright.reading.sentence import Sentence


def corrected_words(tokens: Clause) -> Clause:
    """Return what follows “no,” or “sorry, I mean” at the start of a sentence; empty where it has neither."""
    at = 0
    while at < len(tokens) and (
        tokens[at].kind in ("correction", "mark")
        or (tokens[at].kind == "not" and tokens[at + 1 : at + 2] and tokens[at + 1].kind == "mark")
    ):
        at += 1
    return tokens[at:] if at and any(token.kind != "mark" for token in tokens[:at]) else ()


def correct_reading(said: Sentence, last: Reading) -> Reading | None:
    """Return a reading with the colour, the pegs, the turns or the loop that a correction names instead.

    None where the correction names nothing that the reading has.
    """
    moves = list(last.moves)
    if not moves:
        return None
    changed: set[str] = set()
    if said.colour and len({getattr(move, "colour", said.colour) for move in moves}) == 1:
        moves = [
            msgspec.structs.replace(move, colour=said.colour) if hasattr(move, "colour") else move
            for move in moves
        ]
        changed.add("colour")
    if said.pegs and len(said.pegs) == len(_pegs_in_turn(moves[-1])):
        moves[-1] = _with_pegs(moves[-1], said.pegs)
        changed |= {"peg", "pegs"}
    turns = said.times()
    if turns and 1 <= turns <= 8 and all(isinstance(move, Wind) for move in moves):
        moves = [msgspec.structs.replace(move, turns=turns) for move in moves]
        changed.add("turns")
    loop = 1 if said.has("lowest") else -1 if said.has("top") else 0
    if loop and all(isinstance(move, Hook | Lift) for move in moves):
        moves = [_with_loop(move, loop) for move in moves]
        changed.add("loop")
    named = {"colour": bool(said.bands), "pegs": bool(said.pegs), "turns": turns is not None}
    if not changed or any(name not in changed for name, there in named.items() if there):
        return None
    gaps = tuple(gap for gap in last.gaps if gap.key not in changed)
    return last._replace(moves=tuple(moves), colour=said.colour or last.colour, gaps=gaps)


def _with_loop(move: Move, side: int) -> Move:
    if not isinstance(move, Hook | Lift):
        return move
    return msgspec.structs.replace(move, loop=-move.together if side < 0 else 1)


def _pegs_in_turn(move: Move) -> list[str]:
    return [peg for peg in named_pegs(move) if is_address(peg)]


def _with_pegs(move: Move, pegs: tuple[str, ...]) -> Move:
    following: Iterator[str] = iter(pegs)
    return with_holders(move, lambda holder: next(following, holder) if is_address(holder) else holder)
