"""Random histories for the proof, made on the bare sketch of a loom: six pegs, every kind of move."""

from __future__ import annotations

import random
from collections.abc import Sequence

from hypothesis import strategies as st

from pegwright.loom import Bight, Event
from testing.histories import Sketch

PEGS = ("a", "b", "c", "d", "e", "f")
KINDS = ("lay", "lay", "draw", "draw", "draw", "home", "home", "home", "shallow", "lift", "move", "wind")


def program(
    seed: int, most_bands: int = 6, moves: int = 14, *, kinds: Sequence[str] = KINDS, twists: bool = True
) -> list[Event]:
    """A history of `moves` random moves with at least one fastener, from a seed."""
    rng = random.Random(seed)
    loom = Sketch()
    for _ in range(moves):
        _move(loom, rng, most_bands, rng.choice(kinds) if loom.bands >= 2 else "lay", twists)
    pegs = [peg for peg in PEGS if loom.stacks.get(peg)]
    if pegs:
        loom.fasten(*rng.sample(pegs, min(len(pegs), rng.choice((1, 1, 2)))))
        if rng.random() < 0.2:
            loom.fasten(rng.choice(pegs), kind="knot")
    return loom.events


def _move(loom: Sketch, rng: random.Random, most_bands: int, kind: str, twists: bool) -> None:
    if kind in ("lay", "wind"):
        if loom.bands == most_bands:
            return
        if kind == "wind":
            loom.lay(*[rng.choice(PEGS)] * rng.choice((2, 3)))
        else:
            over = rng.sample(PEGS, rng.choice((2, 2, 2, 3)))
            loom.lay(*over, twists=[int(twists and rng.random() < 0.25) for _ in over[1:]])
        return
    full = [peg for peg in PEGS if loom.stacks.get(peg)]
    if not full:
        return
    source = rng.choice(full)
    stack = loom.stacks[source]
    bight = rng.choice(stack)
    above = len(stack) - 1 - stack.index(bight)
    if kind in ("draw", "home", "shallow"):
        seats = [peg for peg in loom.homes[bight.band] if peg != source]
        if kind != "draw" and not (seats and source in loom.homes[bight.band]):
            return
        target = rng.choice(seats if kind != "draw" else [peg for peg in PEGS if peg != source])
        loom.draw(bight, target, rng.randint(0, above) if kind == "shallow" else None)
    elif kind == "lift" and above:
        loom.lift(bight)
    elif kind == "move":
        loom.move(source, rng.choice([peg for peg in PEGS if peg != source]))


programs = st.integers(0, 2**48).map(program)


def ring(bands: int, half_twists: int = 0) -> list[Event]:
    """A plain chain whose fastener goes through both its ends; the last band laid with half-twists."""
    loom = Sketch()
    for i in range(bands):
        loom.lay(f"p{i}", f"p{i + 1}", twists=(half_twists if i == bands - 1 else 0,))
    for i in range(bands - 1, 0, -1):
        loom.draw(Bight(i, 1), f"p{i - 1}")
    loom.fasten("p0", f"p{bands}")
    return loom.events


def lattice(seed: int) -> list[Event]:
    """Bands between the pegs of a grid, straight, aslant and across, hooked back towards its first row.

    Many products are shared by many carriers here, so that paths borrow from each other.
    """
    rng = random.Random(seed)
    rows, columns = rng.choice(((4, 3), (5, 3), (6, 2), (5, 4), (8, 2)))
    loom = Sketch()
    along = []
    for r in range(rows):
        for c in range(columns):
            for to in (c, c, c + 1, c - 1):
                if 0 <= to < columns and rng.random() < (0.7 if to == c else 0.35):
                    along.append((r, c, loom.lay(f"{c}.{r}", f"{to}.{r + 1}")))
            if c + 1 < columns and rng.random() < 0.25:
                along.append((r, c, loom.lay(f"{c}.{r}", f"{c + 1}.{r}")))
    for r, c, band in sorted(along, key=lambda one: (-one[0], rng.random())):
        if rng.random() < 0.97:
            loom.draw(Bight(band, 1), f"{c}.{r}")
    ends = [f"{c}.0" for c in range(columns)][: rng.randint(1, columns)]
    if rng.random() < 0.3:
        ends.append(f"{rng.randrange(columns)}.{rows}")
    loom.fasten(*([end for end in ends if loom.stacks.get(end)] or list(loom.stacks)[:1]))
    return loom.events
