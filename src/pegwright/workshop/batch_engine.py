"""Run tasks on a cluster: a few at a time, each result as it comes, nothing lost when a worker dies.

A task that loses its workers may be innocent: another one on the same worker may have killed it. So what
was given up in the crowd is tried once more by itself at the end; only what kills its workers then too is
lost.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from queue import Empty, SimpleQueue
from typing import Any, NamedTuple

from pegwright.workshop.batch_cluster import BatchCluster, import_distributed

__all__ = ["TaskOutcome", "run_tasks"]

_AHEAD = 3  # tasks under way for each thread: so none is idle, and no results pile up
_LOOK_S = 0.5


class TaskOutcome(NamedTuple):
    """What came of one task: its number, and its result or error; `lost` if it killed its workers."""

    number: int
    result: bytes | None
    error: str = ""
    lost: bool = False


def run_tasks(
    cluster: BatchCluster,
    function: Callable[[bytes], bytes],
    tasks: Sequence[bytes],
    look: Callable[[], object] = lambda: None,
) -> Iterator[TaskOutcome]:
    """Yield the outcome of `function` on each task, in the order in which they end.

    `look` is called about twice a second while nothing comes.

    Raises:
        RefusedError: there are no workers any more.
    """
    if not tasks:
        return
    alone: list[int] = []
    for outcome in _run(cluster, function, tasks, range(len(tasks)), look):
        if outcome.lost:
            alone.append(outcome.number)
        else:
            yield outcome
    for number in alone:
        yield from _run(cluster, function, tasks, (number,), look, at_once=1)


def _run(
    cluster: BatchCluster,
    function: Callable[[bytes], bytes],
    tasks: Sequence[bytes],
    numbers: Sequence[int],
    look: Callable[[], object],
    *,
    at_once: int | None = None,
) -> Iterator[TaskOutcome]:
    ended: SimpleQueue[Any] = SimpleQueue()
    under_way: dict[Any, int] = {}
    waiting = iter(numbers)
    try:
        while True:
            room = (at_once or _AHEAD * max(cluster.threads(), 1)) - len(under_way)
            for number in (next(waiting, None) for _ in range(room)):
                if number is not None:
                    future = cluster.client.submit(function, tasks[number], pure=False)
                    under_way[future] = number
                    future.add_done_callback(ended.put)
            if not under_way:
                return
            try:
                future = ended.get(timeout=_LOOK_S)
            except Empty:
                cluster.check_health()
                look()
                continue
            yield _outcome(future, under_way.pop(future))
    finally:
        if under_way:
            cluster.client.cancel(list(under_way), force=True)


def _outcome(future: Any, number: int) -> TaskOutcome:
    error = future.exception() if future.status == "error" else None
    if error is None:
        return TaskOutcome(number, future.result())
    lost = isinstance(error, import_distributed().KilledWorker)
    return TaskOutcome(number, None, f"{type(error).__name__}: {error}", lost)
