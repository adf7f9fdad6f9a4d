"""Spoil a document in every way that comes to mind, from a seed."""

from __future__ import annotations

import json
import random
import re
from copy import deepcopy
from typing import Any

_PEG = re.compile(r"[A-Y][1-9][0-9]*")

ODD: tuple[Any, ...] = (
    None,
    True,
    -1,
    0,
    10**9,
    10**30,
    -(2**63),
    1e308,
    0.1,
    "",
    "A0",
    "ZZ99999",
    "start",
    "end.0",
    "hook",
    "x" * 5000,
    "<script>alert(1)</script>",
    '#eval("1+1") $x^2$ *bold* \\u202e',
    "\u202eevil\u2066\x1b[31m",
    "../../etc/passwd",
    "{place!r:>1000000}",
    [],
    {},
    [[[[[[[[[[]]]]]]]]]],
    {"do": "turn"},
    {"do": "repeat", "times": 10**9, "steps": [{"do": "repeat", "times": 10**9, "steps": []}]},
    {"do": "motif", "name": "outline"},
    {"do": "place", "colour": "A", "over": ["A1", "A2", "A3", "A1"]},
)


def mutate(document: bytes, rng: random.Random) -> bytes:
    """Return a spoiled document: one in four as bytes, one in four as JSON, and two muddled as a maker might.

    Those that are muddled are mostly still patterns, so that what comes after reading is tried too.
    """
    way = rng.randrange(4)
    if way == 0:
        return _spoil_bytes(document, rng)
    value = json.loads(document)
    for _ in range(rng.randint(1, 4) if way == 1 else rng.randint(1, 12)):
        (_spoil_value if way == 1 else _muddle)(value, rng)
    return json.dumps(value).encode()


def _spoil_bytes(document: bytes, rng: random.Random) -> bytes:
    data = bytearray(document)
    for _ in range(rng.randint(1, 6)):
        at = rng.randrange(len(data) + 1)
        match rng.randrange(5):
            case 0:
                data[at : at + 1] = bytes([rng.randrange(256)])
            case 1:
                del data[at : at + rng.randint(1, 40)]
            case 2:
                data[at:at] = rng.randbytes(rng.randint(1, 8))
            case 3:
                data[at:at] = data[at : at + rng.randint(1, 200)]
            case 4:
                del data[at:]
    return bytes(data)


def _spoil_value(value: Any, rng: random.Random) -> None:
    spots = list(_spots(value))
    if not spots:
        return
    parent, key = rng.choice(spots)
    match rng.randrange(6):
        case 0:
            del parent[key]
        case 1 | 2:
            parent[key] = deepcopy(rng.choice(ODD))
        case 3:
            other_parent, other_key = rng.choice(spots)
            parent[key] = deepcopy(other_parent[other_key]) if other_key in _keys(other_parent) else 0
        case 4 if isinstance(parent, list):
            parent.insert(rng.randrange(len(parent) + 1), deepcopy(parent[key]))
        case 4:
            parent[str(rng.choice(ODD))[:20]] = deepcopy(rng.choice(ODD))
        case 5 if isinstance(parent[key], int | float) and not isinstance(parent[key], bool):
            parent[key] = parent[key] * rng.choice((-1, 2, 1000)) + rng.choice((0, 1, 0.5))
        case 5 if isinstance(parent, list):
            rng.shuffle(parent)


def _muddle(document: dict[str, Any], rng: random.Random) -> None:
    """Change a peg, a number or a letter for another of its kind; or leave out, double or swap a step."""
    spots = list(_spots(document))
    steps = [parent[key] for parent, key in spots if key == "steps" and parent[key]]
    if rng.random() < 0.4 and steps:
        among = rng.choice(steps)
        at, other = rng.randrange(len(among)), rng.randrange(len(among))
        match rng.randrange(4):
            case 0 if len(among) > 1:
                del among[at]
            case 1:
                among.insert(other, deepcopy(among[at]))
            case 2:
                among.insert(other, deepcopy(rng.choice(rng.choice(steps))))
            case _:
                among[at], among[other] = among[other], among[at]
        return
    plain = [(p, k) for p, k in spots if not isinstance(p[k], dict | list)]
    if not plain:
        return
    parent, key = rng.choice(plain)
    match parent[key]:
        case bool(flag):
            parent[key] = not flag
        case int(number) if key != "pegwright":
            parent[key] = max(0, number + rng.choice((-2, -1, 1, 2, 7)))
        case float(size):
            parent[key] = size * rng.choice((0.5, 0.9, 1.1, 3.0))
        case str(text) if _PEG.fullmatch(text):
            row, number = text[0], int(text[1:])
            row = rng.choice((row, row, chr(ord(row) + 1)))
            parent[key] = f"{row}{max(1, number + rng.randint(-3, 3))}"
        case str(text):
            like = [p[k] for p, k in spots if k == key and isinstance(p[k], str)]
            parent[key] = rng.choice(like)


def _keys(parent: Any) -> Any:
    return range(len(parent)) if isinstance(parent, list) else parent


def _spots(value: Any) -> Any:
    if isinstance(value, dict):
        for key, child in list(value.items()):
            yield value, key
            yield from _spots(child)
    elif isinstance(value, list):
        for index, child in enumerate(list(value)):
            yield value, index
            yield from _spots(child)
