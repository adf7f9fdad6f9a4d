"""The planner: how soon a proved order is there, how it compares with the hand-made one, and mending.

Each figure goes to standard error as soon as it is measured. Times are processor
time, for others may be at work on the machine.
"""

from __future__ import annotations

import random
import statistics
import time
from collections.abc import Iterator

import msgspec

from bench.real import told
from bench.report import Figure
from examples.pieces import PIECES
from pegwright.loom import replay_pattern
from pegwright.pattern import Hook, Lift, Move, Pattern, Turn, expand
from pegwright.planner import Proposals, find_mends, measure_given_working, propose, without_working
from pegwright.proof import prove
from pegwright.structure import structure_of
from testing.every_order import random_placement, some_order_holds
from testing.fewest_phrases import fewest_phrases
from testing.rosettes import rosettes
from testing.small_designs import MOST_BANDS, random_design

_DEMOS = (
    "ebb-line",
    "twin-hulls",
    "riding-lights",
    "slack-water-mat",
    "herring-tail",
    "lobster-pot",
)
_FAULTY = ("ebb-line", "twin-hulls", "riding-lights", "slack-water-mat", "herring-tail")


def run(quick: bool) -> list[Figure]:
    """Plan the strip and the demos, try every order of small pieces, mend faults; less when quick.

    Left out is the demo whose charms are hung on the hook while it is worked.
    """
    return told(_all(quick))


def _all(quick: bool) -> Iterator[Figure]:
    yield from _strip()
    yield from _long(quick)
    yield from _demos(_DEMOS[:3] if quick else _DEMOS)
    yield from _small(20 if quick else 300, 4 if quick else 6)
    yield from _optimum(10 if quick else 200, 100_000 if quick else 1_000_000)
    yield from _faults(10 if quick else 500)


def _first_s(pattern: Pattern) -> tuple[float, Proposals]:
    """Return the processor time until the first proved proposal, in s."""
    began = time.process_time()
    tries = 1
    while True:
        plans = propose(pattern, most=1, tries=tries, seconds=120)
        if plans.found or tries > 60:
            break
        tries *= 2
        began = time.process_time()  # only the run that finds it counts
    return time.process_time() - began, plans


def _strip() -> Iterator[Figure]:
    strip = without_working(rosettes(6))
    bands = replay_pattern(strip).final.bands
    first, plans = _first_s(strip)
    yield Figure(f"strip of {bands} bands: first proved proposal", first, "s", "<= 0.5 s", first <= 0.5)
    began = time.process_time()
    plans = propose(strip, most=5, tries=160, seconds=120)
    five = time.process_time() - began
    met = five <= 2 and len(plans.found) == 5
    yield Figure(
        f"the same: {len(plans.found)} different ones ({plans.tried} tried)", five, "s", "<= 2 s", met
    )


def _long(quick: bool) -> Iterator[Figure]:
    strip = without_working(rosettes(10 if quick else 35))
    bands = replay_pattern(strip).final.bands
    first, _ = _first_s(strip)
    yield Figure(f"strip of {bands} bands: first proved proposal", first, "s", "<= 5 s", first <= 5)


def _demos(names: tuple[str, ...]) -> Iterator[Figure]:
    for name in names:
        by_hand = PIECES[name]()
        draft = without_working(by_hand)
        plans = propose(draft, most=5, tries=60, seconds=60)
        if not plans.found:
            yield Figure(f"{name}: phrases", -1, "none found", "<= by hand", met=False)
            continue
        hand = measure_given_working(by_hand)
        assert hand is not None
        best = plans.found[0].measures
        pairs = [(best.phrases, hand.phrases), (best.loops_above, hand.loops_above)]
        pairs.append((round(best.travel_mm), round(hand.travel_mm)))
        never_worse = any(one <= other for one, other in pairs)
        shown = ", ".join(f"{one} : {other}" for one, other in pairs)
        met = best.phrases <= hand.phrases and never_worse
        name_ = f"{name}: phrases, loops above, travel in mm, each against by hand ({shown})"
        yield Figure(name_, best.phrases, "phrases", "<= by hand", met)


def _small(count: int, most: int) -> Iterator[Figure]:
    agree = with_order = 0
    for seed in range(count):
        pattern = random_placement(random.Random(seed), 2 + seed % (most - 1), closed=seed % 2 == 1)
        plans = propose(pattern, most=1, seconds=600, with_fix=False)
        truth = some_order_holds(pattern)
        holds = bool(plans.found) or any(f.code == "holds-already" for f in plans.findings)
        agree += holds == truth and not plans.cut_short
        with_order += truth
    yield Figure(f"random placements of up to {most} bands that have an order", with_order, f"of {count}")
    yield Figure("planner and every order agree", agree, f"of {count}", f"{count}", agree == count)


def _optimum(count: int, most_hooks: int) -> Iterator[Figure]:
    """Compare the phrases of what is proposed with the fewest possible; what is given up is not equal."""
    compared = equal = given_up = seed = 0
    while compared < count:
        seed += 1
        design = random_design(random.Random(seed), seed)
        plans = propose(design, most=5, seconds=30, with_fix=False)
        # The turn of the loom is the same for every working, and no phrase of hooks.
        turns = [sum(isinstance(step, Turn) for step in one.pattern.steps) for one in plans.found]
        if not plans.found:
            continue
        compared += 1
        least = min(one.measures.phrases - turn for one, turn in zip(plans.found, turns, strict=True))
        best = fewest_phrases(design, least, most_hooks)
        given_up += not best.settled
        equal += best.settled and best.phrases is None
    share = 100 * equal / count
    name = f"designs of up to {MOST_BANDS} bands with an order: as few phrases as possible"
    yield Figure(name, share, f"% of {count}", ">= 95 %", share >= 95)
    yield Figure("of these not settled: a million hooks did not suffice", given_up, f"of {count}")


def _faults(count: int) -> Iterator[Figure]:
    rng = random.Random(7)
    flats = {name: [m.move for m in expand(PIECES[name]()).moves] for name in _FAULTY}
    mended = same = tried = 0
    spent: list[float] = []
    while tried < count:
        name = rng.choice(_FAULTY)
        faulty = _fault(PIECES[name](), flats[name], rng)
        if faulty is None or _holds(faulty):
            continue
        tried += 1
        began = time.process_time()
        mends = find_mends(faulty, most=3, seconds=30)
        spent.append(time.process_time() - began)
        mended += bool(mends.found)
        same += any(list(one.pattern.steps) == flats[name] for one in mends.found)
    share = 100 * mended / count
    yield Figure(
        "single faults: a proved mend among the first three", share, f"% of {count}", ">= 95 %", share >= 95
    )
    yield Figure("the piece as it was among them", 100 * same / count, f"% of {count}")
    middle = statistics.median(spent)
    yield Figure("a mend, median of processor time", middle, "s", "<= 3 s", middle <= 3)
    yield Figure("a mend, the longest", max(spent), "s")


def _holds(pattern: Pattern) -> bool:
    history = replay_pattern(pattern)
    if any(f.severity == "error" for f in history.findings):
        return False
    proof = prove(structure_of(history.events, history.board.spots))
    return not (proof.free or proof.unproved)


def _fault(pattern: Pattern, moves: list[Move], rng: random.Random) -> Pattern | None:
    """Leave a move out, make two in the wrong order, take a wrong loop, or go to a wrong peg."""
    at = rng.randrange(len(moves) - 1)
    move = moves[at]
    kind = rng.choice(("left out", "swapped", "loop", "peg"))
    if kind == "left out":
        steps = [*moves[:at], *moves[at + 1 :]]
    elif kind == "swapped":
        steps = [*moves[:at], moves[at + 1], move, *moves[at + 2 :]]
    elif kind == "loop" and isinstance(move, Hook | Lift):
        steps = [*moves[:at], msgspec.structs.replace(move, loop=move.loop + 1), *moves[at + 1 :]]
    elif kind == "peg" and isinstance(move, Hook):
        pegs = [m.source for m in moves if isinstance(m, Hook) and m.source not in (move.source, move.target)]
        if not pegs:
            return None
        near = sorted(set(pegs), key=lambda peg: (abs(int(peg[1:]) - int(move.target[1:])), peg))[0]
        steps = [*moves[:at], msgspec.structs.replace(move, target=near), *moves[at + 1 :]]
    else:
        return None
    return msgspec.structs.replace(pattern, steps=tuple(steps), motifs=(), stated=None)
