"""The catalogue: two workers beside one, growth, a killed worker; colourways, and a picture to a proved mat.

Processor time where one process works, wall time where workers do: on a busy machine those are too long.
"""

from __future__ import annotations

import io
import os
import resource
import signal
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import numpy as np
import psutil
from PIL import Image

from bench.real import told
from bench.report import Figure
from pegwright.pattern import Pattern, PatternBuilder, Rows
from pegwright.variants import BandColour, linear_of_tints, match_cells, rank_colourways
from pegwright.workshop import (
    BatchCluster,
    BatchOrder,
    MatOrder,
    VariantOrder,
    make_mat,
    run_batch,
    start_cluster,
)

_PARTS = ("pattern", "captions", "page")


def run(quick: bool) -> list[Figure]:
    """Measure everything on 200 patterns × 3 looms, or on a tenth of that when quick."""
    return told(_all(quick))


def _all(quick: bool) -> Iterator[Figure]:
    yield from _colours()
    yield from _picture()
    yield from _clusters(12 if quick else 200)


def _colours() -> Iterator[Figure]:
    rng = np.random.default_rng(1)
    colours = [BandColour(f"C{k}", f"tone {k}", f"#{rng.integers(1 << 24):06x}", 90) for k in range(60)]
    began = time.process_time()
    rank_colourways(dict.fromkeys("ABCDEF", 30), colours, 8, drawn=1000)
    spent = time.process_time() - began
    yield Figure("1,000 colourways ranked", spent, "s", "<= 2 s", spent <= 2)
    cells, palette = rng.random((50, 60, 3)), linear_of_tints(colour.tint for colour in colours[:16])
    for diffuse in (False, True):
        times = []
        for _ in range(5):
            began = time.process_time()
            match_cells(cells, palette, diffuse=diffuse)
            times.append(1000 * (time.process_time() - began))
        goal = "" if diffuse else "<= 20 ms"
        met = None if diffuse else min(times) <= 20
        name = "3,000 cells × 16 colours" + (", diffused" if diffuse else "")
        yield Figure(name, min(times), "ms", goal, met)


def _picture() -> Iterator[Figure]:
    y, x = np.mgrid[:1200, :1600]
    waves = np.stack([(np.sin(x / 90 + k) + np.cos(y / 70 - k)) * 60 + 128 for k in range(3)], axis=-1)
    into = io.BytesIO()
    Image.fromarray(waves.astype(np.uint8)).save(into, "JPEG")
    tints = ("#f2efe6", "#34506b", "#c23b2a", "#d9b98a", "#f2c93a", "#2a2320", "#2f6b4f", "#8fc0de")
    colours = [BandColour(letter, letter, tint) for letter, tint in zip("ABCDEFGH", tints, strict=True)]
    for diffuse in (False, True):
        began = time.process_time()
        mat = make_mat(into.getvalue(), colours, MatOrder(title="Waves", across=40, down=60, diffuse=diffuse))
        spent = time.process_time() - began
        assert mat.work is not None
        assert mat.work.holds
        name = "picture 40 × 60 to proved pattern" + (", diffused" if diffuse else "")
        yield Figure(name, spent, "s", "<= 3 s", spent <= 3)


def _patterns(count: int) -> dict[str, Pattern]:
    """Return strips of chains side by side, each of another length and width."""
    made = {}
    for number in range(count):
        rows, pegs = 1 + number % 4, 8 + number % 23
        strip = PatternBuilder(f"Strip {number}", Rows(rows=rows, pegs=pegs))
        strip.colour("A", "slate", "#34506b").colour("F", "foam", "#f2efe6")
        for row in "ABCD"[:rows]:
            for peg in range(1, pegs):
                strip.place("AF"[(peg + number) % 2], f"{row}{peg}", f"{row}{peg + 1}")
        for row in "ABCD"[:rows]:
            for peg in range(pegs, 1, -1):
                strip.hook(f"{row}{peg}", f"{row}{peg - 1}")
        strip.knot(*(f"{row}1" for row in "ABCD"[:rows]))
        made[f"strip-{number}"] = strip.pattern()
    return made


def _clusters(count: int) -> Iterator[Figure]:
    """Run the same batch on one worker and on two, half of it on two, and all with one worker killed."""
    order = BatchOrder(parts=_PARTS, variants=VariantOrder(looms=((4, 31), (4, 40), (5, 50))))
    patterns = _patterns(count)
    half = dict(list(patterns.items())[: count // 2])
    began = time.monotonic()
    with start_cluster(1) as one:
        assert one.threads() == 1
        started = time.monotonic() - began
        yield Figure("scheduler and a worker started", started, "s", "<= 3 s", started <= 3)
        alone = _timed(patterns, order, one)
    with start_cluster(2) as two:
        part = _timed(half, order, two)
        both = _timed(patterns, order, two)
        killed, lost = _run_with_a_kill(patterns, order, two)
    efficiency = alone.wall_s / (2 * both.wall_s)
    yield Figure("one worker", alone.wall_s, "s")
    yield Figure("two workers", both.wall_s, "s")
    yield Figure("efficiency at two workers", efficiency, "", ">= 0.8", efficiency >= 0.8)
    # What two processors left to themselves could come to at best: those who hand out and gather share them.
    at_best = alone.workers_s / (both.workers_s + both.own_s)
    yield Figure("efficiency at two workers, by processor time", at_best, "", ">= 0.8", at_best >= 0.8)
    yield Figure("processor time of one worker", alone.workers_s, "s")
    yield Figure("processor time of two workers", both.workers_s, "s")
    yield Figure("processor time of handing out and gathering", both.own_s, "s")
    grown = both.wall_s / part.wall_s
    yield Figure("twice as many take", grown, "times", "<= 2.3", grown <= 2.3)
    spent = (both.workers_s + both.own_s) / (part.workers_s + part.own_s)
    yield Figure("twice as many take, by processor time", spent, "times", "<= 2.3", spent <= 2.3)
    yield Figure("most memory of the workers", both.workers_mb, "MB")
    more = both.workers_mb / part.workers_mb
    yield Figure("memory of the workers for twice as many", more, "times", "<= 1.3", more <= 1.3)
    yield Figure("with one worker killed", killed, "s")
    yield Figure("results lost to the kill", lost, "", "0", lost == 0)
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    yield Figure("most memory of this process", peak, "MB")


class _Timing(NamedTuple):
    """Wall time, processor time of the workers and of this process, in s; the workers' memory in MB."""

    wall_s: float
    workers_s: float
    own_s: float
    workers_mb: float


def _timed(patterns: dict[str, Pattern], order: BatchOrder, cluster: BatchCluster) -> _Timing:
    """Time a batch, after a small one that loads everything on each worker."""
    with tempfile.TemporaryDirectory() as folder:
        run_batch(_patterns(4), order, Path(folder) / "warm", cluster)
        workers = [psutil.Process(number) for number in cluster.process_ids()]
        began, own, theirs = time.monotonic(), time.process_time(), _processor_s(workers)
        made = run_batch(patterns, order, Path(folder) / "all", cluster)
        timing = _Timing(
            time.monotonic() - began,
            _processor_s(workers) - theirs,
            time.process_time() - own,
            sum(each.memory_info().rss for each in workers) / 2**20,
        )
    assert made.failures == ()
    assert len(made.places) == 3 * len(patterns)
    return timing


def _processor_s(processes: list[psutil.Process]) -> float:
    return sum(sum(each.cpu_times()[:2]) for each in processes)


def _run_with_a_kill(
    patterns: dict[str, Pattern], order: BatchOrder, cluster: BatchCluster
) -> tuple[float, int]:
    """Kill a worker in mid-run; return the wall time in s and how many results are missing."""
    seen = 0

    def kill_once(what: str, done: int, total: int) -> None:
        nonlocal seen
        if what.startswith("making") and seen == 0 and done > total // 3:
            seen = 1
            os.kill(cluster.process_ids()[0], signal.SIGKILL)

    with tempfile.TemporaryDirectory() as folder:
        began = time.monotonic()
        made = run_batch(patterns, order, Path(folder), cluster, progress=kill_once)
        spent = time.monotonic() - began
    assert seen
    return spent, 3 * len(patterns) - len(made.places)
