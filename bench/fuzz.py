"""Spoiled documents: every one must end in findings or in a piece, never in a crash or a hang."""

from __future__ import annotations

import random
import resource
import time

from bench.report import Figure
from pegwright.pattern import read_pattern
from pegwright.workshop import example_files, work
from testing.mutate import mutate


def run(quick: bool) -> list[Figure]:
    """Spoil the built-in pieces 20,000 times (500 when quick) and take each through the line."""
    count = 500 if quick else 20_000
    originals = [path.read_bytes() for path in example_files().values()]
    slowest = 0.0
    worked = crashes = 0
    for seed in range(count):
        rng = random.Random(seed)
        document = mutate(rng.choice(originals), rng)
        began = time.process_time()
        try:
            pattern = read_pattern(document).pattern
            if pattern is not None:
                work(pattern)
                worked += 1
        except Exception as error:  # any exception at all is what we are looking for
            crashes += 1
            print(f"seed {seed}: {type(error).__name__}: {error}")
        slowest = max(slowest, time.process_time() - began)
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return [
        Figure("documents", count, "documents"),
        Figure("still a pattern", worked, "documents"),
        Figure("crashes", crashes, "documents", "0", crashes == 0),
        Figure("slowest document", slowest, "s", "< 2 s", slowest < 2),
        Figure("peak memory", peak_mb, "MB", "< 500 MB", peak_mb < 500),
    ]
