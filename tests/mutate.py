"""Spoil a document in every way that comes to mind, from a seed."""

from __future__ import annotations

import json
import random
from copy import deepcopy
from typing import Any

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
    """Return a spoiled document; one in three is spoiled as bytes, the others as JSON, one to four times."""
    if rng.random() < 0.33:
        return _spoil_bytes(document, rng)
    value = json.loads(document)
    for _ in range(rng.randint(1, 4)):
        _spoil_value(value, rng)
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
