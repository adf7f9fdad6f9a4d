"""A sentence that says several things, taken apart: what is done in each clause, and what it takes over."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from pegwright.reading.lexicon import Token

MOST_CLAUSES = 12
_HANDED_ON = frozenset(
    "place put hook lift loop loops lowest top over wind cap half-twist from".split()  # noqa: SIM905
)
"""What a clause takes over from the one before where it names no action: “… to A4, then A4 to A3”."""

_SAYS_MORE = frozenset(
    (  # noqa: SIM905
        "from to until at through ends free-end loop loops center left right back same turn half half-twist "
        "oclock both each"
    ).split()
)
"""What makes a clause more than “Dear all”, though it names no action."""

Clause = tuple[Token, ...]


def action_of(clause: Clause) -> str:
    """Return which of the maker's actions a clause is about; empty where it names none."""
    kinds = {token.kind for token in clause}
    pegs = sum(token.kind == "peg-name" for token in clause)
    for action, named in (
        ("close", kinds & {"clip", "knot"}),
        ("lift", kinds & {"lift"}),
        ("wind", kinds & {"cap", "wind"}),
        ("bind", kinds & {"last-band"} or ({"through", "band"} <= kinds)),
        ("extend", "chain" in kinds and kinds & {"add", "more", "put"}),
        ("turn", {"turn", "loom"} <= kinds),
        (
            "hook",
            (kinds & {"loop", "loops"} or ("band" in kinds and kinds & {"lowest", "top"}))
            and (kinds & {"hook", "put"} or pegs),
        ),
        ("again", kinds & {"again", "go-on", "same"} or {"more", "times"} <= kinds),
        ("place", "band" in kinds or ("place" in kinds and "it" not in kinds)),
    ):
        if named:
            return action
    first = next((token.kind for token in clause if token.kind != "and"), "")
    return "place" if first == "number" and pegs > 1 else ""  # “one from A2 to B3”


def clauses_of(tokens: Clause) -> list[Clause]:
    """Return the clauses of a sentence: what stands between its commas and its “and”."""
    found: list[list[Token]] = [[]]
    for token in tokens:
        if token.kind == "and" or (token.kind == "mark" and token.text in ",;:"):
            found.append([])
        else:
            found[-1].append(token)
    return [tuple(one) for one in found if one]


def says_several_things(clauses: list[Clause]) -> bool:
    """Say whether the clauses of a sentence name different actions."""
    return len({action_of(clause) for clause in clauses} - {""}) > 1


def groupings(clauses: list[Clause]) -> Iterator[list[Clause]]:
    """Yield the ways to read clauses together, the longest stretches first; in none do actions mix."""
    if not clauses:
        yield []
        return
    for size in range(len(clauses), 0, -1):
        head = clauses[:size]
        if not says_several_things(head):
            for rest in groupings(clauses[size:]):
                joined = itertools.chain.from_iterable((Token("and", ","), *clause) for clause in head)
                yield [tuple(joined)[1:], *rest]


def hand_on(clause: Clause, before: Clause) -> Clause:
    """Return a clause without an action of its own with that of the clause before it."""
    if action_of(clause) or not action_of(before):
        return clause
    return (*(token for token in before if token.kind in _HANDED_ON), *clause)


def is_empty(clause: Clause) -> bool:
    """Say whether a clause names nothing that is made: “Dear all”."""
    said = {"peg-name", "number", *_SAYS_MORE}
    return not action_of(clause) and not any(token.kind in said for token in clause)
