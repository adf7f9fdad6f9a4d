"""One line of text for every move and every state, both read back without loss.

Moves read as a maker says them: `place A over A1 ~ A2*2`, `hook A3 loop 1 to A2 through 2`. In a state,
loop `3b` is the second loop of the third band, and `2a<3b` says that 3b runs through 2a:

    near | 3 bands | A1 1a 2a | A2 1b | 2a<3b | clip 4a 4b

`docs/notation.md` gives the whole grammar.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache
from itertools import zip_longest

from immutables import Map

from pegwright.loom.events import Bight
from pegwright.loom.state import Fastener, Stack, State
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Put,
    Slide,
    Transfer,
    Turn,
    Wind,
)

# --- moves --------------------------------------------------------------------------------------------


def print_move(move: Move) -> str:
    """Return the move's line. Notes, warnings and picture hints are not part of it.

    Turns of one each and twists of none are what is meant where a placing says nothing of them; they have no
    words, and are read back as nothing said.
    """
    match move:
        case Place():
            return f"place {move.colour} over {_print_over(move)}"
        case Wind():
            return f"wind {move.colour} on {move.on} {move.turns} turns"
        case Turn():
            return "turn"
        case Hook() | Slide():
            verb = "hook" if isinstance(move, Hook) else "slide"
            through = "" if move.through is None else f" through {move.through}"
            return f"{verb} {move.source} loop {move.loop} to {move.target}{through}{_print_together(move)}"
        case Lift():
            to = "" if move.target is None else f" to {move.target}"
            return f"lift {move.at} loop {move.loop}{to}{_print_together(move)}"
        case Transfer():
            return f"transfer {move.source} to {move.target}{_print_together(move)}"
        case Hang():
            return f"hang {move.colour} {move.turns} turns"
        case Bind():
            catch = "" if move.catch is None else f" catch {move.catch}"
            return f"bind {move.colour} through {move.at}{catch}{_print_together(move)} as {move.end}"
        case Put():
            return f"put {move.end} on {' '.join(move.on)}"
        case Extend():
            return f"extend {move.end} by {move.bands} {move.colour}{_print_together(move)}"
        case Knot() | Clip():
            verb = "knot" if isinstance(move, Knot) else "clip"
            catch = "" if move.catch is None else f" catch {move.catch}"
            return f"{verb} {' '.join(move.at)}{catch}"


def _print_over(move: Place) -> str:
    """A move that the machine refuses has a line too: twists and turns that are missing count as none."""
    words = []
    for peg, twists, turns in zip_longest(move.over, (0, *move.twists), move.turns, fillvalue=0):
        if peg:
            words += [*(["~"] * twists or ["~s"] * -twists), f"{peg}*{turns}" if turns > 1 else str(peg)]
    return " ".join(words)


def _print_together(move: Hook | Slide | Lift | Transfer | Bind | Extend) -> str:
    return f" together {move.together}" if move.together > 1 else ""


_PEG = r"[A-Z]{1,2}[1-9][0-9]*"
_END = r"[a-z][a-z0-9-]*"
_HOLDER = rf"(?:{_PEG}|{_END})"
_THROUGH = r"(?: through (?P<through>\d+))?"
_TOGETHER = r"(?: together (?P<together>\d+))?"
_LOOP = r"(?: loop (?P<loop>-?\d+))?"
_CATCH = r"(?: catch (?P<catch>\d+))?"
_TURNS = r"(?: (?P<turns>\d+) turns?)?"
_GRAMMAR: tuple[tuple[str, Callable[[dict[str, str]], Move]], ...] = (
    (r"place (?P<colour>\w+) over (?P<over>.+)", lambda w: _read_place(w["colour"], w["over"].split())),
    (
        rf"wind (?P<colour>\w+) on (?P<on>{_PEG}){_TURNS}",
        lambda w: Wind(colour=w["colour"], on=w["on"], turns=int(w["turns"] or 3)),
    ),
    (r"turn", lambda _: Turn()),
    (
        rf"hook (?P<source>{_PEG}){_LOOP} to (?P<target>{_PEG}){_THROUGH}{_TOGETHER}",
        lambda w: Hook(
            source=w["source"],
            target=w["target"],
            loop=int(w["loop"] or 1),
            through=_read_number(w["through"]),
            together=_read_number(w["together"]) or 1,
        ),
    ),
    (
        rf"slide (?P<source>{_PEG}){_LOOP} to (?P<target>{_PEG}){_THROUGH}{_TOGETHER}",
        lambda w: Slide(
            source=w["source"],
            target=w["target"],
            loop=int(w["loop"] or 1),
            through=_read_number(w["through"]),
            together=_read_number(w["together"]) or 1,
        ),
    ),
    (
        rf"lift (?P<at>{_PEG}){_LOOP}(?: to (?P<target>{_PEG}))?{_TOGETHER}",
        lambda w: Lift(
            at=w["at"],
            loop=int(w["loop"] or 1),
            target=w["target"],
            together=_read_number(w["together"]) or 1,
        ),
    ),
    (
        rf"transfer (?P<source>{_PEG}) to (?P<target>{_PEG}){_TOGETHER}",
        lambda w: Transfer(source=w["source"], target=w["target"], together=_read_number(w["together"]) or 1),
    ),
    (
        rf"hang (?P<colour>\w+){_TURNS}",
        lambda w: Hang(colour=w["colour"], turns=int(w["turns"] or 3)),
    ),
    (
        rf"bind (?P<colour>\w+) through (?P<at>{_PEG}){_CATCH}{_TOGETHER}(?: as (?P<end>{_END}))?",
        lambda w: Bind(
            colour=w["colour"],
            at=w["at"],
            end=w["end"] or "end",
            catch=_read_number(w["catch"]),
            together=_read_number(w["together"]) or 1,
        ),
    ),
    (
        rf"put (?P<end>{_END}) on (?P<on>{_PEG}(?: {_PEG})*)",
        lambda w: Put(end=w["end"], on=tuple(w["on"].split())),
    ),
    (
        rf"extend (?P<end>{_END}) by (?P<bands>\d+) (?P<colour>\w+){_TOGETHER}",
        lambda w: Extend(
            colour=w["colour"],
            bands=int(w["bands"]),
            end=w["end"],
            together=_read_number(w["together"]) or 1,
        ),
    ),
    (
        rf"(?P<verb>knot|clip) (?P<at>{_HOLDER}(?: {_HOLDER})*?){_CATCH}",
        lambda w: (Knot if w["verb"] == "knot" else Clip)(
            at=tuple(w["at"].split()), catch=_read_number(w["catch"])
        ),
    ),
)


def parse_move(line: str) -> Move:
    """Read a move's line.

    Raises:
        ValueError: the line is no move; the message repeats it.
    """
    for form, make in _GRAMMAR:
        match = re.fullmatch(form, line.strip())
        if match:
            return make(match.groupdict())
    raise ValueError(f"{line!r} is not a move")


def _read_number(text: str | None) -> int | None:
    return None if text is None else int(text)


def _read_place(colour: str, words: list[str]) -> Place:
    over: list[str] = []
    turns: list[int] = []
    twists: list[int] = []
    pending = 0
    for word in words:
        if word in ("~", "~s") and pending * (way := 1 if word == "~" else -1) >= 0:
            pending += way
            continue
        peg, _, times = word.partition("*")
        if not re.fullmatch(_PEG, peg) or (times and not times.isdigit()) or (pending and not over):
            raise ValueError(f"{word!r} is not a peg")
        if over:
            twists.append(pending)
        over.append(peg)
        turns.append(int(times or 1))
        pending = 0
    if pending or len(over) < 2:
        raise ValueError("a band is placed over two or more pegs")
    return Place(
        colour=colour,
        over=tuple(over),
        turns=tuple(turns) if max(turns) > 1 else (),
        twists=tuple(twists) if any(twists) else (),
    )


# --- states -------------------------------------------------------------------------------------------


def print_state(state: State) -> str:
    """Return the state's line."""
    parts = ["far" if state.turned else "near", f"{state.bands} bands"]
    parts += [f"{holder} {_print_loops(loops)}" for holder, loops in sorted(state.stacks.items())]
    parts += [_print_inside(*item) for item in sorted(state.inside.items())]
    parts += [f"{held.kind} {_print_loops(held.caught)}" for held in state.fasteners]
    return " | ".join(parts)


def parse_state(line: str) -> State:
    """Read a state's line.

    Raises:
        ValueError: the line is no state; the message repeats the part that is not.
    """
    facing, _, rest = line.partition(" | ")
    if facing not in ("near", "far"):
        raise ValueError(f"{facing!r} is not a facing: near or far")
    count, *parts = rest.split(" | ")
    if not re.fullmatch(r"\d+ bands", count):
        raise ValueError(f"{count!r} does not count the bands")
    stacks: dict[str, Stack] = {}
    inside: dict[Bight, Stack] = {}
    fasteners = []
    for part in parts:
        head, _, tail = part.partition(" ")
        if "<" in head:
            loop, _, first = part.partition("<")
            inside[parse_bight(loop)] = _read_loops(first)
        elif head in ("knot", "clip"):
            fasteners.append(Fastener(head, _read_loops(tail)))
        elif re.fullmatch(rf"{_PEG}|hook|[a-z][a-z0-9-]*\.\d+", head):
            stacks[head] = _read_loops(tail)
        else:
            raise ValueError(f"{part!r} is not part of a state")
    return State(Map(stacks), Map(inside), int(count.split()[0]), tuple(fasteners), facing == "far")


def parse_bight(text: str) -> Bight:
    """Read a loop such as 3b.

    Raises:
        ValueError: the text names no loop.
    """
    match = re.fullmatch(r"([1-9][0-9]*)([a-z]+)", text)
    if match is None:
        raise ValueError(f"{text!r} is not a loop: a band's number and a letter, as in 3b")
    index = 0
    for letter in match[2]:
        index = index * 26 + ord(letter) - 96
    return Bight(int(match[1]), index - 1)


@lru_cache(maxsize=4096)  # from one state to the next nearly all stacks are the same
def _print_loops(loops: Stack) -> str:
    return " ".join(str(loop) for loop in loops)


@lru_cache(maxsize=16_384)
def _print_inside(loop: Bight, ribbons: Stack) -> str:
    return f"{loop}<{_print_loops(ribbons)}"


def _read_loops(text: str) -> Stack:
    return tuple(parse_bight(word) for word in text.split())
