"""The numbers of the moves that were made, as the maker counts them."""

from __future__ import annotations

from itertools import count, islice

from pegwright.loom.history import History


def step_numbers(history: History) -> tuple[int, ...]:
    """Return, for each move made, its number from 1 among all moves of the pattern, refused ones included."""
    refused = {found.place.step for found in history.findings}
    return tuple(islice((n for n in count(1) if n not in refused), len(history.moves)))
