"""Hypothesis strategies: looms, documents, and programs of moves that the machine accepts."""

from __future__ import annotations

import random

from hypothesis import strategies as st

from pegwright import loom, pattern
from pegwright.pattern import (
    BandType,
    Bind,
    Clip,
    Colour,
    Extend,
    Hang,
    Hook,
    JoinedLooms,
    Knot,
    Lift,
    Motif,
    Pattern,
    PegAt,
    Pegs,
    Place,
    Put,
    Repeat,
    Round,
    Rows,
    Slide,
    Transfer,
    Turn,
    Use,
    Wind,
)

letters = st.sampled_from(["A", "B", "C", "Tide", "x9"])
addresses = st.builds(lambda r, n: f"{r}{n}", st.sampled_from(["A", "B", "C", "D", "AB"]), st.integers(1, 40))
ends = st.sampled_from(["end", "tail", "bow-1"])
few = st.integers(1, 5)
loops = st.integers(-6, 6)
texts = st.text(max_size=30)
lengths = st.floats(0.5, 60, allow_nan=False).map(lambda x: round(x, 3))

rows = st.builds(
    Rows,
    rows=st.integers(1, 5),
    pegs=st.integers(1, 12),
    pitch_mm=lengths,
    row_gap_mm=lengths,
    shift=st.lists(st.sampled_from([0.0, 0.5, -0.5]), max_size=5).map(tuple),
    channel=st.sampled_from(["near", "far", "left", "right"]),
)
looms = st.one_of(
    rows,
    st.builds(
        Round, pegs=st.integers(3, 20), diameter_mm=lengths.map(lambda x: x + 80), rings=st.integers(1, 2)
    ),
    st.builds(
        JoinedLooms,
        looms=st.lists(rows, min_size=2, max_size=3).map(tuple),
        side=st.sampled_from(["beside", "beyond"]),
    ),
    st.builds(
        Pegs,
        pegs=st.lists(st.builds(PegAt, at=addresses, x_mm=lengths, y_mm=lengths), min_size=1, max_size=6).map(
            tuple
        ),
    ),
)


@st.composite
def places(draw: st.DrawFn) -> Place:
    over = tuple(draw(st.lists(addresses, min_size=2, max_size=4)))
    turns = tuple(draw(st.lists(few, min_size=len(over), max_size=len(over)))) if draw(st.booleans()) else ()
    twists = tuple(draw(st.lists(st.integers(-2, 2), min_size=len(over) - 1, max_size=len(over) - 1)))
    return Place(
        colour=draw(letters),
        over=over,
        turns=turns if turns and max(turns) > 1 else (),
        twists=twists if any(twists) else (),
        note=draw(texts),
        taught_s=draw(st.none() | st.integers(1, 36_000).map(lambda tenths: tenths / 10)),
    )


moves = st.one_of(
    places(),
    st.builds(Wind, colour=letters, on=addresses, turns=few),
    st.just(Turn()),
    st.builds(
        Hook,
        source=addresses,
        target=addresses,
        loop=loops,
        through=st.none() | st.integers(0, 4),
        together=few,
    ),
    st.builds(
        Slide,
        source=addresses,
        target=addresses,
        loop=loops,
        through=st.none() | st.integers(0, 4),
        together=few,
    ),
    st.builds(Lift, at=addresses, loop=loops, together=few, target=st.none() | addresses),
    st.builds(Transfer, source=addresses, target=addresses, together=few),
    st.builds(Hang, colour=letters, turns=few),
    st.builds(Bind, colour=letters, at=addresses, end=ends, catch=st.none() | few, together=few),
    st.builds(Put, end=ends, on=st.lists(addresses, min_size=1, max_size=3).map(tuple)),
    st.builds(Extend, colour=letters, bands=few, end=ends, together=few),
    st.builds(Knot, at=st.lists(addresses | ends, min_size=1, max_size=3).map(tuple), catch=st.none() | few),
    st.builds(Clip, at=st.lists(addresses | ends, min_size=1, max_size=3).map(tuple), catch=st.none() | few),
)
steps = st.recursive(
    moves
    | st.builds(Use, name=st.sampled_from(["wave", "keel"]), rows=st.integers(0, 1), pegs=st.integers(0, 3)),
    lambda inner: st.builds(
        Repeat,
        times=st.integers(0, 3) | st.just("n"),
        steps=st.lists(inner, max_size=3).map(tuple),
        pegs=st.integers(-1, 2),
        colours=st.dictionaries(letters, st.lists(letters, min_size=1, max_size=3).map(tuple), max_size=2),
    ),
    max_leaves=6,
)
patterns = st.builds(
    Pattern,
    pegwright=st.just(pattern.VERSION),
    title=st.text(max_size=39).map(lambda text: text + "e"),
    notes=texts,
    language=st.sampled_from(["en", "de", "pt-BR"]),
    translations=st.dictionaries(
        st.sampled_from(["en", "de", "es"]), st.dictionaries(texts, texts, max_size=2), max_size=2
    ),
    level=st.sampled_from(["basic", "easy", "intermediate", "complex"]),
    loom=looms,
    bands=st.lists(
        st.builds(BandType, name=st.sampled_from(["standard", "wide"]), bore_mm=lengths), max_size=2
    ).map(tuple),
    colours=st.lists(
        st.builds(Colour, letter=letters, name=st.just("slate"), hex=st.just("#445566")), max_size=3
    ).map(tuple),
    motifs=st.lists(
        st.builds(
            Motif, name=st.sampled_from(["wave", "keel"]), steps=st.lists(steps, max_size=3).map(tuple)
        ),
        max_size=2,
    ).map(tuple),
    steps=st.lists(steps, max_size=8).map(tuple),
)

SMALL = loom.board_of(Rows(rows=2, pegs=3))


@st.composite
def programs(draw: st.DrawFn, most: int = 12) -> list[pattern.Move]:
    """Draw moves that the machine accepts one after the other on a board of two rows of three pegs."""
    rng = random.Random(draw(st.integers(0, 2**32)))
    state = loom.State()
    made: list[pattern.Move] = []
    for _ in range(draw(st.integers(1, most))):
        options = list(loom.legal_moves(SMALL, state))
        kind = rng.choice(sorted({type(m).__name__ for m in options}))
        move = rng.choice([m for m in options if type(m).__name__ == kind])
        outcome = loom.apply_move(SMALL, state, move)
        assert isinstance(outcome, loom.Effect)
        made.append(move)
        state = outcome.state
    return made
