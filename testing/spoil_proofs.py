"""Proofs with one thing changed in one certificate, of whatever kind, from a seed."""

from __future__ import annotations

import random

from pegwright.proof import LeastWords, NotProved, Proof


def spoil_proof(proof: Proof, rng: random.Random) -> Proof:
    """Return the proof with one field of one certificate changed."""
    if proof.apart and rng.random() < 0.5:
        return proof._replace(apart=_spoil_least(proof.apart, rng))
    if proof.least and rng.random() < 0.5:
        return proof._replace(least=_spoil_least(proof.least, rng))
    places = [name for name in ("steps", "cancellations") if getattr(proof, name)]
    place = rng.choice([*places, "verdicts"])
    if place == "verdicts":
        band = rng.choice(list(proof.verdicts))
        verdict = proof.verdicts[band]
        other = NotProved("too-long") if isinstance(verdict, NotProved) else _changed(verdict, rng)
        return proof._replace(verdicts=proof.verdicts | {band: other})
    items = list(getattr(proof, place))
    at = rng.randrange(len(items))
    kind = rng.choice(("change", "change", "change", "drop", "double", "swap"))
    if kind == "change":
        items[at] = _changed(items[at], rng)
    elif kind == "drop":
        del items[at]
    elif kind == "double":
        items.insert(at, items[at])
    else:
        other_at = rng.randrange(len(items))
        items[at], items[other_at] = items[other_at], items[at]
    return proof._replace(**{place: tuple(items)})


def _spoil_least(least: LeastWords, rng: random.Random) -> LeastWords:
    """The least words with one field changed."""
    place = rng.choice([name for name in LeastWords._fields if getattr(least, name)])
    if place == "flows":
        band = rng.choice(list(least.flows))
        ways = list(least.flows[band])
        at = rng.randrange(len(ways))
        ways[at] = _changed(ways[at], rng)
        if rng.random() < 0.3:
            del ways[at]
        return least._replace(flows=least.flows | {band: tuple(ways)})
    items = list(getattr(least, place))
    at = rng.randrange(len(items))
    if rng.random() < 0.3:
        del items[at]
    else:
        items[at] = _changed(items[at], rng) if isinstance(items[at], tuple) else items[at] + 1
    return least._replace(**{place: tuple(items)})


def _changed(item: tuple, rng: random.Random) -> tuple:
    if not item:
        return item
    at = rng.randrange(len(item))
    value = item[at]
    if isinstance(value, bool):
        new = not value
    elif isinstance(value, int):
        new = value + rng.choice((-2, -1, 1, 2))
    elif isinstance(value, tuple) and value and rng.random() < 0.5:
        new = value[1:] if rng.random() < 0.5 else (*value[:-1], _nudged(value[-1], rng))
    elif isinstance(value, tuple):
        new = (*value, rng.randrange(1, 6))
    else:
        new = value
    return (
        item._replace(**{item._fields[at]: new})
        if hasattr(item, "_replace")
        else (*item[:at], new, *item[at + 1 :])
    )


def _nudged(value: object, rng: random.Random) -> object:
    return value + rng.choice((-1, 1)) if isinstance(value, int) else _changed(value, rng)
