"""How a long piece of work tells how far it is."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Progress = Callable[[str, int, int], None]
"""Called with what is being done, how many parts are done, and of how many."""


def silent(_what: str, _done: int, _total: int) -> None:
    """Tell nobody."""


@contextmanager
def collector_at_rest() -> Iterator[None]:
    """Pause the cycle collector: a history is a long list of small acyclic values that it would walk in vain.

    Measured on 20,000 moves: 0.4 s with the collector at rest, 1.0 s without.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
