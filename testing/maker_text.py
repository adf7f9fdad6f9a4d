"""A maker's text with the moves that it means; what is often meant; and how much of it was read."""

from __future__ import annotations

import difflib
from typing import NamedTuple

from pegwright.pattern import Bind, Clip, Extend, Hook, Layout, Lift, Move, Place, Turn, Wind, expand
from pegwright.reading import TextReading, read_free


class MakerText(NamedTuple):
    """A text, what it means, its style and language; colours of the moves are the names in the text."""

    name: str
    style: str
    language: str
    text: str
    moves: tuple[Move, ...]
    kept: bool = False


def chain(
    pegs: int, colours: tuple[str, ...], last: str, twin: bool = False, extension: int = 0
) -> tuple[Move, ...]:
    """A plain chain along row A: colours in turn, or with `twin` all of them on every pair of pegs."""
    moves: list[Move] = []
    for k in range(1, pegs):
        several = colours if twin else (colours[(k - 1) % len(colours)],)
        moves += [Place(colour=one, over=(f"A{k}", f"A{k + 1}")) for one in several]
    moves.append(Turn())
    together = len(colours) if twin else 1
    moves += [Hook(source=f"A{k}", target=f"A{k - 1}", together=together) for k in range(pegs - 1, 1, -1)]
    moves.append(Bind(colour=last, at="A1"))
    if extension:
        moves.append(Extend(colour=last, bands=extension))
    return (*moves, Clip(at=("end", f"A{pegs}")))


def tail(colours: tuple[str, ...], twist: bool = True) -> tuple[Move, ...]:
    """The beginning of a fish-tail on A1 and B1: three bands, then the lowest over the others on both."""
    moves: list[Move] = []
    for k, one in enumerate(colours):
        moves.append(Place(colour=one, over=("A1", "B1"), twists=(1,) if twist and not k else ()))
        if k >= 2:
            moves += [Lift(at="A1"), Lift(at="B1")]
    return tuple(moves)


def lanterns(count: int, rim: str, glass: tuple[str, ...]) -> tuple[Move, ...]:
    """Lanterns laid out along the middle row: outlines, fillings with their caps; not yet worked."""
    moves: list[Move] = []
    for n in range(1, 2 * count, 2):
        moves += [
            Place(colour=rim, over=(f"B{n}", f"A{n + 1}")),
            Place(colour=rim, over=(f"A{n + 1}", f"B{n + 2}")),
        ]
        moves += [
            Place(colour=rim, over=(f"B{n}", f"C{n + 1}")),
            Place(colour=rim, over=(f"C{n + 1}", f"B{n + 2}")),
        ]
    for k, n in enumerate(range(2, 2 * count + 1, 2)):
        one = glass[k % len(glass)]
        moves += [
            Place(colour=one, over=(f"B{n}", to)) for to in (f"B{n + 1}", f"A{n}", f"C{n}", f"B{n - 1}")
        ]
        moves.append(Wind(colour=one, on=f"B{n}"))
    return tuple(moves)


def worked_lanterns(count: int, rim: str, glass: str) -> tuple[Move, ...]:
    """A strip of lanterns along the middle row, laid, capped, worked from the far end and closed."""
    end = f"B{2 * count + 1}"
    moves: list[Move] = [*lanterns(count, rim, (glass,)), Wind(colour=rim, on=end), Turn()]
    for n in range(2 * count, 0, -2):
        moves += [
            Hook(source=f"B{n}", target=to, loop=-4) for to in (f"B{n - 1}", f"C{n}", f"A{n}", f"B{n + 1}")
        ]
        moves += [
            Hook(source=f"B{n + 1}", target=f"C{n}", loop=2),
            Hook(source=f"B{n + 1}", target=f"A{n}"),
            Hook(source=f"A{n}", target=f"B{n - 1}"),
            Hook(source=f"C{n}", target=f"B{n - 1}"),
        ]
    return (*moves, Bind(colour=rim, at="B1"), Clip(at=("end", end)))


def count_right(meant: tuple[Move, ...], read: tuple[Move, ...], names: dict[str, str]) -> tuple[int, int]:
    """Return how many of the moves meant were read, in order, and how many were read that nobody meant."""
    one = [_plain(move, {}) for move in meant]
    other = [_plain(move, names) for move in read]
    same = sum(
        block.size
        for block in difflib.SequenceMatcher(None, one, other, autojunk=False).get_matching_blocks()
    )
    return same, len(other) - same


def _plain(move: Move, names: dict[str, str]) -> str:
    colour = getattr(move, "colour", "")
    return repr(move).replace(f"colour='{colour}'", f"colour='{names.get(colour, colour).lower()}'")


def answer_as_meant(one: MakerText) -> tuple[TextReading, TextReading]:
    """Read a text, and read it again with each question answered as one who means these moves would.

    The answer is the choice, or the colour meant, that brings the reading nearest to what is meant.
    """
    first = told = read_free(one.text)
    answers: dict[tuple[str, int], str] = {}
    loom: Layout | None = None
    for _ in range(20):
        blank = next((each for each in told.blanks if each.key != "loom" or loom is None), None)
        if blank is None:
            break
        if blank.key == "loom":
            loom = told.pattern.loom if told.pattern else None
        else:
            colours = (
                tuple(getattr(move, "colour", "") for move in one.moves) if blank.key == "colour" else ()
            )
            tries = [
                {**answers, **{(blank.key, at): choice for at in blank.sentences}}
                for choice in dict.fromkeys((*blank.choices, *filter(None, colours)))
            ]
            if not tries:
                break
            answers = max(tries, key=lambda each: _nearness(one, read_free(one.text, None, loom, each)))
        told = read_free(one.text, None, loom, answers)
    return first, told


def _nearness(one: MakerText, told: TextReading) -> int:
    same, more = count_right(one.moves, *read_moves(told))
    return same - more


def read_moves(told: TextReading) -> tuple[tuple[Move, ...], dict[str, str]]:
    """Return the moves that were read, and the names of their colours."""
    if told.pattern is None:
        return (), {}
    moves = tuple(each.move for each in expand(told.pattern).moves)
    return moves, {colour.letter: colour.name for colour in told.pattern.colours}
