"""Real pieces: from the record to rest, with nothing passed through anything."""

from __future__ import annotations

import os

import numpy as np
import pytest

from examples.pieces import PIECES
from pegwright import loom
from pegwright.finding import RefusedError
from pegwright.loom import Bight, Fastened, Laid
from pegwright.pattern import Pattern, PatternBuilder, Rows
from pegwright.shape import BandProperties, Goal, RestingPiece, relax_piece
from pegwright.shape.crossing_count import count_corner_crossings
from pegwright.shape.initial_shape import draw_initial_shape
from pegwright.shape.tightening import CornerMoves, subdivide_curve, tighten_curves
from pegwright.structure import Curves, strand_curves
from testing.histories import Sketch, chain
from testing.oracle.diagram import diagram, linking, rotation
from testing.oracle.verdict import held
from testing.programs import KINDS, Program, program
from testing.rosettes import rosettes
from tests.structure.distance import smallest

compiled = pytest.mark.skipif(os.environ.get("NUMBA_DISABLE_JIT") == "1", reason="needs compiled kernels")
STANDARD = BandProperties(13.5, 1.5)
WHOLE = [name for name in PIECES if "/" not in name]
BRIEF = Goal(iterations=15)


def row(peg: str) -> tuple[float, float]:
    return 0.0, 16.0 * int(peg[1:])


def made(name: str) -> loom.History:
    return history(PIECES[name]())


def history(pattern: Pattern) -> loom.History:
    return loom.replay_pattern(pattern)


def relaxed(made: Program, **options) -> RestingPiece:
    bands = sum(isinstance(e, Laid) for e in made.events)
    return relax_piece(made.events, made.spots, [STANDARD] * bands, **options)


def open_chain(bands: int) -> Sketch:
    """A chain whose clip joins its two ends."""
    sketch = Sketch()
    for i in range(bands):
        sketch.lay(f"p{i}", f"p{i + 1}")
    for i in range(bands - 2, -1, -1):
        sketch.draw(Bight(i + 1, 1), f"p{i}")
    sketch.fasten("p0", f"p{bands}")
    return sketch


@compiled
def test_a_plain_chain_lies_straight_and_its_links_are_alike() -> None:
    """Links in the middle of a chain have one length, and no strand has passed another on the way."""
    rest = relax_piece(chain(9), row, [STANDARD] * 9)
    assert rest.relaxed.converged
    assert rest.crossing_check.same_threading
    assert rest.crossing_check.smallest_gap_mm > 0.7
    assert (rest.bands, rest.fasteners) == (9, (1,))
    assert rest.length_mm > 3 * rest.width_mm
    assert max(float(np.abs(t).max()) for t in rest.relaxed.tension_n) < 2
    middles = np.array([x[:, 0].mean() for x in rest.relaxed.positions_mm[:9]])
    links = np.abs(np.diff(middles))[2:-2]
    assert links == pytest.approx(np.full(len(links), links.mean()), rel=0.12)


@compiled
def test_knitting_wider_than_tall_is_laid_along_the_way_it_grew() -> None:
    """Rows lifted over on five pegs: later rows lie further along x, and every band lies across it."""
    m = PatternBuilder("Ripple", Rows(rows=1, pegs=5)).colour("A", "slate", "#34506b")
    for row in range(3):
        for peg in range(1, 5):
            m.place("A", f"A{peg}", f"A{peg + 1}")
        for peg in range(1, 6) if row else ():
            m.lift(f"A{peg}", together=1 if peg in (1, 5) else 2)
    m.knot(*(f"A{peg}" for peg in range(1, 6)))
    done = history(m.pattern())
    given = draw_initial_shape(done.events, done.board.spots, [STANDARD] * 12, 48)
    middles = np.array([b.points_mm.mean(axis=0) for b in given.bands[:12]])
    along = middles[:, 0].reshape(3, 4).mean(axis=1)
    assert np.all(np.diff(along) > 0) or np.all(np.diff(along) < 0)
    assert np.ptp(middles[:, 1]) > np.ptp(middles[:, 0]), "it is wider than tall"
    assert (given.tube, given.rows) == (False, 4.0)


@compiled
def test_a_chain_of_about_25_bands_is_13_to_16_cm_long() -> None:
    """Common practice, no source: plain chains of about 25 bands come out so long."""
    rest = relax_piece(chain(25), row, [STANDARD] * 25)
    assert rest.relaxed.converged
    assert rest.crossing_check.same_threading
    assert 130 <= rest.length_mm <= 160


@compiled
def test_finer_points_change_the_length_little() -> None:
    """From 48 to 96 points a band the finished length changes by less than 2 %."""
    coarse = relax_piece(chain(10), row, [STANDARD] * 10)
    fine = relax_piece(chain(10), row, [STANDARD] * 10, points=96)
    assert coarse.length_mm == pytest.approx(fine.length_mm, rel=0.02)


@compiled
@pytest.mark.parametrize("name", WHOLE)
def test_demo_pieces_thicken_with_nothing_passed(name: str) -> None:
    """From the drawing to full thickness, and the first steps after it (the bench goes to the end)."""
    done = made(name)
    count = done.final.bands
    rest = relax_piece(done.events, done.board.spots, [STANDARD] * count, goal=BRIEF)
    assert rest.crossing_check.same_threading
    assert rest.crossing_check.smallest_gap_mm > 0.2
    assert rest.bands == count
    assert all(len(x) >= 48 for x in rest.relaxed.positions_mm[:count])
    assert set(rest.fasteners) == {e.fastener for e in done.events if isinstance(e, Fastened)}


@compiled
def test_a_piece_of_which_nothing_is_left_has_no_strands_that_touch() -> None:
    """Seed 907114860 of the winds: every band lies loose, and the gap between none was said to be 0 mm."""
    rest = relaxed(program(907114860, "winds"), goal=BRIEF)
    assert not rest.hangs_together
    assert rest.crossing_check.same_threading
    assert rest.crossing_check.smallest_gap_mm > 0


@compiled
@pytest.mark.parametrize("kind", KINDS)
def test_random_programs_thicken_with_nothing_passed(kind: str) -> None:
    """Whatever hands might do, fresh every run."""
    seed = int(np.random.default_rng().integers(10**9))
    rest = relaxed(program(seed, kind), goal=BRIEF)
    assert rest.crossing_check.same_threading, seed
    assert rest.crossing_check.smallest_gap_mm > 0, seed


@compiled
@pytest.mark.parametrize("kind", KINDS)
def test_linking_numbers_are_those_of_the_drawing(kind: str) -> None:
    """A strand that passed another would change one by 1: fresh programs, bands and the fasteners' rings."""
    seed = int(np.random.default_rng().integers(10**9))
    work = program(seed, kind)
    drawn = strand_curves(work.events, work.spots, 1.5)
    rest = relaxed(work, goal=BRIEF)
    cords = {e.fastener for e in work.events if isinstance(e, Fastened) and e.kind == "knot"}
    rings = [x for number, parts in drawn.rings.items() for x in parts if number not in cords]
    kept = [k for k, number in enumerate(rest.fasteners) if number not in cords]
    before = [drawn.bands[b] for b in sorted(drawn.bands)] + rings
    after = [
        *rest.relaxed.positions_mm[: rest.bands],
        *(rest.relaxed.positions_mm[rest.bands + k] for k in kept),
    ]
    turn = rotation(np.random.default_rng(seed))
    assert np.array_equal(linking(diagram(after, turn)), linking(diagram(before, turn))), seed


@compiled
@pytest.mark.parametrize(
    ("seed", "kind"),
    [(3, "hooks"), (8, "hooks"), (11, "hooks"), (20, "hooks"), *((5, kind) for kind in KINDS)],
)
def test_knot_theory_sees_the_same_link_before_and_after(seed: int, kind: str) -> None:
    """The bands that no projection splits from the fastener are the same, drawn and at rest."""
    work = next(
        p
        for k in range(99)
        for p in [program(100 * seed + k, kind)]
        if [len(e.holders) for e in p.events if isinstance(e, Fastened)] == [1]
        and sum(isinstance(e, Laid) for e in p.events) <= 8
    )
    drawn = strand_curves(work.events, work.spots, 1.5)
    rest = relaxed(work, goal=BRIEF)
    lie = rest.relaxed.positions_mm
    after = Curves(
        {b: lie[b - 1] for b in drawn.bands}, {1: lie[-1]}, {}, (), drawn.half_twists, drawn.clear_mm
    )
    nothing: frozenset[int] = frozenset()
    assert held(after, nothing, tries=8) == held(drawn, nothing, tries=8)


@compiled
def test_closed_round_a_wrist() -> None:
    """The clip brings both ends together, and the piece lies on the wrist; one end alone is refused."""
    girth = 70.0
    rest = relax_piece(open_chain(12).events, row, [STANDARD] * 12, girth_mm=girth)
    assert rest.relaxed.converged
    assert rest.crossing_check.same_threading
    lie = rest.relaxed.positions_mm
    assert min(float(np.hypot(x[:, 0], x[:, 2]).min()) for x in lie) > girth / (2 * np.pi) + 0.4
    apart = np.linalg.norm(lie[12][:, None] - lie[13][None], axis=2).min()
    assert apart < 4.5
    with pytest.raises(RefusedError, match="no clip"):
        relax_piece(chain(4), row, [STANDARD] * 4, girth_mm=girth)


def test_corners_go_and_strands_keep_apart() -> None:
    """Cut taut, a drawing has far fewer corners, its strands keep the margin, and the moves replay clean."""
    drawn = strand_curves(chain(4), row, 1.5)
    strands = [*drawn.bands.values(), *drawn.fasteners.values()]
    taut, moves = tighten_curves(strands, 0.5 * drawn.clear_mm, 4)
    assert sum(map(len, taut)) < 0.4 * sum(map(len, strands))
    assert smallest(taut) >= 0.45 * drawn.clear_mm
    assert count_corner_crossings(strands, moves) == 0


def test_a_corner_pulled_through_a_strand_is_counted() -> None:
    """The second test of corners can fail."""
    square = np.array([[0.0, 0, 0], [10, 0, 0], [10, 10, 0], [0, 10, 0]])
    other = np.array([[8.0, 3, -5], [8, 3, 5], [30, 3, 5], [30, 3, -5]])
    assert count_corner_crossings([square, other], CornerMoves(np.array([-2]), np.array([[5.0, 5, 0]]))) == 1
    assert count_corner_crossings([square, other], CornerMoves(np.array([-1]), np.array([[5.0, 5, 0]]))) == 0


def test_splitting_edges_keeps_the_shape() -> None:
    square = np.array([[0.0, 0, 0], [10, 0, 0], [10, 4, 0], [0, 4, 0]])
    fine = subdivide_curve(square, 14)
    assert len(fine) == 14
    assert all(any(np.allclose(c, p) for p in fine) for c in square)
    assert np.linalg.norm(np.roll(fine, -1, axis=0) - fine, axis=1).sum() == pytest.approx(28)


@compiled
def test_progress_may_stop_a_piece() -> None:
    told = []

    def hear(progress) -> bool:
        told.append(progress.stage)
        return len(told) < 5

    rest = relax_piece(chain(4), row, [STANDARD] * 4, progress=hear)
    assert [f.code for f in rest.relaxed.findings] == ["rest-interrupted"]
    assert told[0] == "getting ready"
    assert told[-1] == "growing"


@pytest.mark.parametrize("count", [1, 4])
def test_width_in_links_is_that_of_the_loom_however_long_the_piece(count: int) -> None:
    """Rosettes span three rows of pegs, and a chain one: the tug goes by it."""
    done = history(rosettes(count))
    wide = draw_initial_shape(done.events, done.board.spots, [STANDARD] * done.final.bands, 12)
    assert 2.5 <= wide.rows <= 3
    assert draw_initial_shape(chain(5), row, [STANDARD] * 5, 12).rows == pytest.approx(1)


def test_a_tube_has_as_many_rows_as_pegs_round_it() -> None:
    done = made("lobster-pot")
    tube = draw_initial_shape(done.events, done.board.spots, [STANDARD] * done.final.bands, 12)
    assert tube.tube
    assert tube.rows == pytest.approx(12, rel=0.05)


def test_kinds_must_match_the_bands() -> None:
    with pytest.raises(ValueError, match="kinds"):
        relax_piece(chain(3), row, [STANDARD] * 2)
    with pytest.raises(RefusedError, match="no bands"):
        relax_piece([], row, [])
