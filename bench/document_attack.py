"""Documents of every kind of badness through every command of the program."""

from __future__ import annotations

import json
import os
import random
import resource
import sys
import tempfile
import time
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path
from typing import NamedTuple

from bench.report import Figure
from pegwright.pattern import write_pattern
from pegwright.text import encode_pattern
from pegwright.workshop import example_files, open_pattern
from testing.every_command import COMMANDS, PLACES, Command, fault_of, odd_arguments
from testing.maker_texts import TEXTS
from testing.mutate import ODD, mutate
from testing.mutate_text import mutate_text
from testing.random_documents import random_pattern

_HOSTILE = [each for each in ODD if isinstance(each, str) and each]
_STASH = {
    "stash": 1,
    "bands": [{"colour": "slate blue", "have": 40, "packs": [{"size": 300, "price": "2.40"}]}],
}
_PARTS = "--parts page,handout --no-picture --no-fit --no-rehearse"
_CAPTIONS = (
    "WEBVTT\n\n00:00.000 --> 00:04.000\nPlace a band over A1 and A2.\n\n00:04.000 --> 00:08.500\nTurn.\n"
)


class _Attack(NamedTuple):
    """What came of some documents; `slowest_s` is by kind of command."""

    documents: int
    commands: int
    crashes: int
    slowest_s: dict[str, float]
    peak_mb: float


def attack_documents(seeds: Sequence[int]) -> list[Figure]:
    """Take a document of each seed through the commands; every seed is the same document on every machine.

    Two processes take 250 documents at a time and end then: what a long life gathers is no document's.
    """
    heaps = [seeds[at : at + 250] for at in range(0, len(seeds), 250)]
    with ProcessPoolExecutor(2, get_context("spawn"), max_tasks_per_child=1) as pool:
        found = list(pool.map(_attack, heaps))
    slowest_s = {kind: max(one.slowest_s[kind] for one in found) for kind in found[0].slowest_s}
    crashes, quick_s = sum(one.crashes for one in found), slowest_s["quick"]
    peak_mb = max(one.peak_mb for one in found)
    return [
        Figure("documents", sum(one.documents for one in found), "documents"),
        Figure("commands run on them", sum(one.commands for one in found), "commands"),
        Figure("crashes", crashes, "commands", "0", crashes == 0),
        Figure("slowest command that neither searches nor solves", quick_s, "s", "≤ 2", quick_s <= 2),
        Figure("slowest search, given one second", slowest_s["search"], "s"),
        Figure("slowest rehearsal, fit, picture or losses", slowest_s["solver"], "s"),
        Figure("peak memory", peak_mb, "MB", "≤ 500", peak_mb <= 500),
    ]


def _attack(seeds: Sequence[int]) -> _Attack:
    slowest_s = dict.fromkeys(("quick", "search", "solver"), 0.0)
    commands = crashes = 0
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        os.environ["PEGWRIGHT_CACHE"] = str(folder / "cache")
        (folder / PLACES["FILE"]).write_bytes(example_files()["herring-tail"].read_bytes())
        lesson = f"lesson FILE OUT {_PARTS}"
        for once in ("review FILE", "review FILE --language de", lesson, f"{lesson} --language es"):
            Command(once).run(folder)  # what is loaded once, such as a list of words, is not measured
        for seed in seeds:
            rng = random.Random(seed)
            _write_files(folder, rng)
            for command in COMMANDS:
                if not command.is_due(seed):
                    continue
                began_s = time.process_time()
                fault = command.run(folder)
                took_s = time.process_time() - began_s
                slowest_s[command.kind] = max(slowest_s[command.kind], took_s)
                if took_s > (2 if command.kind == "quick" else 10):
                    print(f"seed {seed}: {command.arguments}: {took_s:.1f} s", file=sys.stderr)
                commands += 1
                if fault:
                    crashes += 1
                    print(f"seed {seed}: {command.arguments}: {fault}", file=sys.stderr)
            if seed % 3 == 0:
                arguments = odd_arguments(folder, rng)
                fault = fault_of(arguments)
                commands += 1
                if fault:
                    crashes += 1
                    print(f"seed {seed}: {arguments}: {fault}", file=sys.stderr)
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return _Attack(len(seeds), commands, crashes, slowest_s, peak_mb)


def _write_files(folder: Path, rng: random.Random) -> None:
    """Write a document, spoilt in one of the four ways or made from the schema, and what goes with it."""
    original = rng.choice([path.read_bytes() for path in example_files().values()])
    kind = rng.randrange(10)
    if kind < 2:
        document = _with_hostile_texts(original, rng)
    elif kind < 3:
        document = write_pattern(random_pattern(rng))
    else:
        document = mutate(original, rng)
    file = folder / PLACES["FILE"]
    file.write_bytes(document)
    pattern = open_pattern(file).pattern
    if pattern is None:
        (folder / PLACES["TEXT"]).write_bytes(document)
    else:
        text = encode_pattern(pattern, PLACES["TEXT"]).decode()
        (folder / PLACES["TEXT"]).write_bytes(mutate_text(text, rng).encode("utf-8", "surrogatepass"))
    (folder / PLACES["WORDS"]).write_bytes(mutate_text(rng.choice(TEXTS).text, rng).encode())
    (folder / PLACES["CAPTIONS"]).write_bytes(mutate_text(_CAPTIONS, rng).encode())
    (folder / PLACES["STASH"]).write_bytes(mutate(json.dumps(_STASH).encode(), rng) if kind else document)


def _with_hostile_texts(document: bytes, rng: random.Random) -> bytes:
    value = json.loads(document)
    for field in ("title", "notes", "designer", "licence"):
        if rng.random() < 0.7:
            value[field] = (rng.choice(_HOSTILE) + rng.choice(_HOSTILE))[:200]
    for colour in value.get("colours", []):
        colour["name"] = rng.choice(_HOSTILE)[:60]
    return json.dumps(value).encode()
