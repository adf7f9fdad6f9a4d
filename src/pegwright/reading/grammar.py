"""The grammar of the trade's sentences: each has a few readings on the current loom, likeliest first.

Word order hardly matters, so the same rules read every language that has a word list: a sentence is its pegs,
its number, its directions, and one action. What a sentence does not
say is a gap of its reading, never a guess without a question.
"""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Callable

import msgspec

from pegwright.pattern import (
    Address,
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
    named_pegs,
    parse_address,
    with_holders,
    with_pegs,
)
from pegwright.reading.draft import Draft, Gap, Reading
from pegwright.reading.repetition import again_readings, chain_of
from pegwright.reading.sentence import Sentence

MOST_BANDS = 100
MOST_TURNS = 8
MOST_CHAIN_BANDS = 500


def readings(sentence: Sentence, draft: Draft) -> list[Reading]:
    """Return the readings of a sentence on this draft; none where it says nothing that the grammar knows.

    What a sentence forbids, or leaves to choose (“a red or a blue band”), is not read at all.
    """
    if sentence.has("not", "or", "half") or sentence.breaks_off():
        return []
    for rule in _RULES:
        found = [one for one in rule(sentence, draft) if _covers(one, sentence)]
        if found:
            return sorted(found, key=lambda reading: -reading.likelihood)[:8]
    return []


def _covers(reading: Reading, said: Sentence) -> bool:
    """Say whether nothing that the sentence names is left out of its reading: no peg, colour or action."""
    pegs = Counter(peg for move in reading.moves for peg in named_pegs(move))
    pegs[reading.cursor] += 1
    letters = {move.colour for move in reading.moves if hasattr(move, "colour")}
    made = {type(move) for move in reading.moves}
    return (
        all(pegs[peg] >= count for peg, count in Counter(said.pegs).items())
        and letters.issuperset(one.letter for one in said.bands if one.letter)
        and all(made & kinds for kind, kinds in _MAKES.items() if said.has(kind))
        and said.count_of("oclock") <= max(len(reading.moves), 1)
    )


_MAKES: dict[str, set[type]] = {
    "turn": {Turn},
    "clip": {Clip},
    "knot": {Knot},
    "lift": {Lift},
    "cap": {Wind},
    "wind": {Wind},
    "last-band": {Bind},
}
"""What is made where a sentence has a word of this meaning."""


# --- one function an action -------------------------------------------------------------------------------


def _read_turn(said: Sentence, draft: Draft) -> list[Reading]:
    del draft
    alone = all(token.kind in ("turn", "it", "over", "and", "at") for token in said.tokens)
    if said.has("turn") and (alone or said.has("loom")) and not said.has("band", "loop", "loops", "clip"):
        return [Reading((Turn(),), 1.0, opens=True)]
    return []


def _read_close(said: Sentence, draft: Draft) -> list[Reading]:
    if not said.has("clip", "knot") or said.has("care", "band"):
        return []
    kind = Knot if said.has("knot") else Clip
    free = sorted({holder.partition(".")[0] for holder in draft.state.stacks if "." in holder})
    if said.pegs:
        ends = tuple(free) if said.has("free-end", "ends", "both", "chain") else ()
        out = [Reading((kind(at=(*ends, *said.pegs)),), 0.9)]
        return out if ends or not free else [*out, Reading((kind(at=(*free, *said.pegs)),), 0.3)]
    loaded = draft.loaded_pegs()
    if not free:
        both = len(loaded) == 1 or (len(loaded) == 2 and said.has("ends", "both"))
        if both:
            return [Reading((kind(at=tuple(loaded)),), 0.9)]
        peg, gaps = said.peg_or_gap(loaded)
        return [Reading((kind(at=(peg,)),), 0.5, gaps=gaps)] if peg else []
    if said.has("ends", "both") and (other := _other_end(draft, loaded)):
        return [Reading((kind(at=(*free, other)),), 0.9)]
    if not loaded:
        return [Reading((kind(at=tuple(free)),), 0.9)]
    answer, gaps = said.peg_or_gap(loaded if len(loaded) > 1 else [])
    if not answer or not gaps:
        return [Reading((kind(at=(*free, answer or loaded[0])),), 0.9)]
    return [
        Reading(
            (kind(at=(*free, peg)),), 0.8 / (1 + at), gaps=(Gap("peg", (peg, *_without(loaded, peg)[:7])),)
        )
        for at, peg in enumerate(loaded[:3])
    ]


def _other_end(draft: Draft, loaded: list[str]) -> str:
    """Return the peg at the other end of a piece worked along one row; empty where it is not in one row."""
    bound = next((move.at for move in reversed(draft.moves) if isinstance(move, Bind)), "")
    if not bound or len({parse_address(peg).row for peg in (*loaded, bound)}) != 1:
        return ""
    here = parse_address(bound).number
    far = max(loaded, key=lambda peg: abs(parse_address(peg).number - here), default="")
    return far if far != bound else ""


def _without(pegs: list[str], peg: str) -> list[str]:
    return [one for one in pegs if one != peg]


def _read_bind(said: Sentence, draft: Draft) -> list[Reading]:
    named = said.has("band") or (said.bands and not said.has("hook", "put"))
    if not (said.has("last-band") or (said.has("through") and named and len(said.pegs) < 2)):
        return []
    if said.has("ends", "free-end"):
        return []
    last = [move.target for move in reversed(draft.moves) if isinstance(move, Hook)][:1]
    at, gaps = said.peg_or_gap([*last, *draft.loaded_pegs()[::-1]])
    colour, more = said.colour_or_gap(draft)
    return [_reading(Bind(colour=colour or "A", at=at), colour, (*gaps, *more), opens=True)] if at else []


def _reading(move: Move, colour: str, gaps: tuple[Gap, ...], *, opens: bool = False) -> Reading:
    return Reading((move,), 0.9, colour=colour, gaps=gaps, opens=opens)


def _read_extend(said: Sentence, draft: Draft) -> list[Reading]:
    if not (said.has("chain") and said.has("add", "more", "put")):
        return []
    told = said.number_before("band", reach=5)
    if told is None:
        told = next((token.number for token in said.tokens if token.kind == "number"), None)
    count, gaps = said.number_or_gap("chain-bands", told, (6, 4, 8))
    colour, more = said.colour_or_gap(draft)
    if not 1 <= count <= MOST_CHAIN_BANDS:
        return []
    return [_reading(Extend(colour=colour or "A", bands=count), colour, (*gaps, *more))]


def _read_lift(said: Sentence, draft: Draft) -> list[Reading]:
    if not (said.has("lift") and said.has("over", "lowest", "loop", "loops", "band")):
        return []
    last = next((move.over for move in reversed(draft.moves) if isinstance(move, Place)), ())
    gaps: tuple[Gap, ...] = ()
    at = said.pegs
    if not at and said.has("both", "each"):
        at = last
    elif not at:
        peg, gaps = said.peg_or_gap(list(last))
        at = (peg,) if peg else ()
    told = said.number_before("lowest", "top", reach=2)
    together = told if told is not None and said.has("loop", "loops") else 1
    if said.counted_loop() is not None:
        return []
    loop, more = said.loop_or_gap(several=not said.has("over"))
    if not 1 <= together < 100:
        return []
    moves = tuple(Lift(at=peg, loop=loop * together if loop < 0 else loop, together=together) for peg in at)
    return [Reading(moves, 0.9, gaps=(*gaps, *more))] if at else []


def _read_hook(said: Sentence, draft: Draft) -> list[Reading]:
    named = said.has("band") and not said.has("lowest", "top")
    if not said.takes_loop() or named or said.has("lift", "through"):
        return []
    if not said.has("hook", "put") and (len(said.pegs) < 2 or said.has("over")):
        return []
    run = said.has("each", "all-along") or (said.has("until") and len(said.pegs) == 3)
    counted = said.counted_loop()
    told: int | None = 1
    if counted is None:
        told = 2 if said.has("both") else said.number_before("lowest", "top", "loops", reach=2)
    many: tuple[Gap, ...] = ()
    if told is None and said.has("loops"):
        told, many = said.number_or_gap("loops", None, (1, 2))
    together = told if told is not None else 1
    if not 1 <= together < 100:
        return []
    if run:
        ways = _hook_runs(said, draft)
    else:
        pegs = said.pegs
        way = said.direction()
        if len(pegs) >= 2 and said.leads_on() and (said.has("to") or not said.has("and")):
            ways = [(tuple(zip(pegs[::2], pegs[1::2], strict=True)), 0.95)]
        elif len(pegs) == 1 and way and (target := draft.beside(pegs[0], *way)):
            ways = [(((pegs[0], target),), 0.85)]
        else:
            return []
    found = []
    for pairs, likely in ways:
        several = any(len(draft.state.stacks.get(source, ())) > together for source, _ in pairs)
        side, gaps = said.loop_or_gap(several)
        loop = -together if side < 0 else 1
        if counted is not None:
            loop, gaps = counted, ()
        moves = tuple(Hook(source=a, target=b, loop=loop, together=together) for a, b in pairs)
        found.append(Reading(moves, likely, colour=draft.colour, gaps=(*gaps, *many)))
    return found


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
    if len(said.pegs) > 1 and said.has("place", "from"):
        return []
    turns, gaps = said.number_or_gap("turns", said.times(), (3, 2, 4))
    colour, more = said.colour_or_gap(draft)
    at = said.pegs
    if not at and said.has("each") and said.has("center"):
        at = _centers(draft)
    elif not at:
        peg, other = said.peg_or_gap([draft.cursor, *draft.loaded_pegs()] if draft.cursor else [])
        at, more = ((peg,) if peg else ()), (*more, *other)
    if not 1 <= turns <= MOST_TURNS:
        return []
    moves = tuple(Wind(colour=colour or "A", on=peg, turns=turns) for peg in at)
    return [Reading(moves, 0.9, colour=colour, gaps=(*gaps, *more))] if moves else []


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
    first = next((token.kind for token in said.tokens if token.kind != "and"), "")
    short = first == "number" and bool(said.pegs or said.direction() or said.has("center"))
    short = short or (len(said.pegs) > 1 and bool(said.bands or said.has_one()))
    if not (said.has("band", "place") or short) or said.has("need", "times", "loop", "loops", "through"):
        return []
    if said.takes_loop() or (said.has("state") and not said.has("place", "put")):
        return []
    bands, gaps = _bands_to_place(said, draft)
    twist = 1 if said.has("half-twist") else 0
    pegs = said.pegs
    if not bands or len(bands) > MOST_BANDS:
        return []
    if len(pegs) < 2:
        return _place_by_way(said, draft, bands, gaps)
    if len(pegs) == 2 and said.kinds_before_pegs() == ("to", "to"):
        return []
    colour = bands[-1]
    if said.has("until", "all-along", "again"):
        end = pegs[-1] if len(pegs) > 2 and said.has("until", "again") else ""
        run = chain_of((pegs[0], pegs[1]), end) if end else draft.run_of((pegs[0], pegs[1]))
        whole = end or (said.has("all-along") and len(pegs) == 2)
        if not whole or not run:
            return []
        moves = tuple(_band(one, pair, twist) for pair in run for one in bands)
        return [Reading(moves, 0.9, colour=colour, gaps=gaps)]
    if len(pegs) == 2:
        return [Reading(tuple(_band(one, pegs, twist) for one in bands), 0.95, colour=colour, gaps=gaps)]
    found: list[tuple[tuple[Move, ...], float]] = []
    over = said.count_of("over") == 1 and not said.has("from")
    if pairs := said.pairs():
        return [
            Reading(moves, 0.95, colour=colour, gaps=gaps)
            for moves in _spread(bands, pairs, twist, len(said.bands) > 1)
        ]
    if over:
        found.append((tuple(_band(one, pegs, twist) for one in bands), 0.9))
    elif len(pegs) % 2 and said.count_of("to") >= len(pegs) - 1:
        ways = itertools.pairwise(pegs)
        found.append((tuple(_band(one, pegs, twist) for one in bands), 0.85))
        found.append((tuple(_band(one, pair, twist) for pair in ways for one in bands), 0.85))
    if len(pegs) % 2 == 0 and not over:
        pairs = tuple(zip(pegs[::2], pegs[1::2], strict=True))
        found += [(moves, 0.95) for moves in _spread(bands, pairs, twist, len(said.bands) > 1)]
    return [Reading(moves, likely, colour=colour, gaps=gaps) for moves, likely in found]


def _spread(
    bands: list[str], pairs: tuple[tuple[str, str], ...], twist: int, separate: bool
) -> list[tuple[Move, ...]]:
    """Return the ways to lay bands over several pairs of pegs: one each, shared out, or all on every pair.

    `separate` says that the bands are named one by one.
    """
    ways = []
    alike = len(set(bands)) == 1 and not separate
    if len(bands) == len(pairs):
        ways.append([(one, pair) for one, pair in zip(bands, pairs, strict=True)])
    elif len(pairs) == 1:
        ways.append([(one, pairs[0]) for one in bands])
    elif len(bands) % len(pairs) == 0 and alike:
        ways.append([(bands[0], pair) for pair in pairs for _ in range(len(bands) // len(pairs))])
    if len(bands) != len(pairs) > 1 and alike:
        ways.append([(one, pair) for pair in pairs for one in bands])
    return [tuple(_band(one, pair, twist) for one, pair in way) for way in ways]


def _bands_to_place(said: Sentence, draft: Draft) -> tuple[list[str], tuple[Gap, ...]]:
    """Return the colour of each band that the sentence puts down in one place, and what it leaves open."""
    colour, gaps = said.colour_or_gap(draft)
    if len(said.bands) > 1:
        found = [one.letter for one in said.bands for _ in range(min(one.number or 1, MOST_BANDS))]
        if all(found):
            return found, ()
        return [letter or draft.colour or colour for letter in found], (
            Gap("colour", (draft.colour or colour,)),
        )
    told = said.bands[0].number if said.bands else None
    count = told if told is not None else said.number_before("band", reach=5)
    return [colour] * (1 if count is None else min(count, MOST_BANDS + 1)), gaps


def _place_by_way(said: Sentence, draft: Draft, bands: list[str], gaps: tuple[Gap, ...]) -> list[Reading]:
    """Read a band placed in some direction from where the last one ended, or from the one peg named."""
    before = next(iter(said.kinds_before_pegs()), "")
    bare: list[tuple[str, str]] = []
    if said.pegs and before not in ("to", "until"):
        starts = [(said.pegs[0], 1.0)]
        unsure = draft.cursor if before not in ("from", "start", "at", "over") else ""
        if unsure and unsure != said.pegs[0]:
            bare = [(unsure, said.pegs[0])]
    elif draft.started or said.has("back") or not draft.moves:
        starts = [(draft.cursor, 1.0)] if draft.cursor else []
    else:  # from where the last band ended, or from where it began, like the spokes of a wheel
        last = next((move.over[0] for move in reversed(draft.moves) if isinstance(move, Place)), "")
        starts = [(start, likely) for start, likely in ((draft.cursor, 1.0), (last, 0.5)) if start]
    found = [
        Reading(tuple(_band(one, pair) for one in bands), 0.9, colour=bands[-1], gaps=gaps) for pair in bare
    ]
    for start, sure in starts:
        if said.pegs and before in ("to", "until"):
            ways = [(said.pegs[0], 0.9)]
        else:
            ways = [
                (target, likely)
                for rows, pegs, likely in _ways(said, draft, start)
                if (target := draft.beside(start, rows, pegs))
            ]
        for target, likely in ways:
            moves = tuple(_band(one, (start, target)) for one in bands)
            found.append(Reading(moves, likely * sure, colour=bands[-1], gaps=gaps))
    return found


def _ways(said: Sentence, draft: Draft, start: str) -> list[tuple[int, int, float]]:
    """Return how far a band may go by the direction that is said: rows, pegs, and how likely that is."""
    way = said.direction()
    if said.has("center"):
        across = (1 - parse_address(start).row) * draft.side
        return [(across, 1, 0.6), (across, 0, 0.3), (across, -1, 0.1)] if across else []
    if way is None:
        return []
    if way[0] and not way[1] and not said.has("oclock"):
        return [(way[0], 1, 0.5), (way[0], 0, 0.5)]
    return [(*way, 0.9)]


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
    return with_pegs(move, lambda peg: Address(2 * axis - peg.row, peg.number))


def _read_same_there(said: Sentence, draft: Draft) -> list[Reading]:
    """“The same on B1”: what was done last at one peg, at another."""
    last = draft.moves[-1] if draft.moves else None
    if not said.has("same") or len(said.pegs) != 1 or not isinstance(last, Lift | Wind):
        return []
    return [Reading((with_holders(last, lambda _: said.pegs[0]),), 0.9)]


def _read_same_colour(said: Sentence, draft: Draft) -> list[Reading]:
    """“The same with yellow”: the block so far once more, in another colour."""
    unit = draft.moves[draft.block :]
    colours = {move.colour for move in unit if hasattr(move, "colour")}
    if not said.has("same") or not said.colour or said.has("times") or len(colours) != 1:
        return []
    moves = tuple(
        msgspec.structs.replace(move, colour=said.colour) if hasattr(move, "colour") else move
        for move in unit
    )
    return [Reading(moves, 0.9, colour=said.colour)]


def _read_again(said: Sentence, draft: Draft) -> list[Reading]:
    further = said.has("more", "times") and said.has("step-on")
    if said.tokens and said.tokens[-1].kind == "with":
        return []
    if not (said.has("again", "go-on", "same") or (said.has("more") and said.has("times")) or further):
        return again_readings(said, draft) if said.earlier else []
    return again_readings(said, draft)


_RULES: tuple[Callable[[Sentence, Draft], list[Reading]], ...] = (
    _read_turn,
    _read_close,
    _read_extend,
    _read_bind,
    _read_lift,
    _read_mirror,
    _read_same_there,
    _read_same_colour,
    _read_start,
    _read_hook,
    _read_wind,
    _read_place,
    _read_again,
)
