"""A worker process of a batch: `python -m pegwright.workshop.batch_worker ADDRESS FOLDER`.

It takes one task at a time, and ends when its scheduler does. The folder belongs to its starter, who clears
it away: a worker may be killed.
"""

from __future__ import annotations

import asyncio
import sys

from pegwright.workshop.batch_cluster import import_distributed

__all__ = ["run_worker"]


async def run_worker(address: str, folder: str) -> None:
    """Work for the scheduler at an address until it ends; `folder` takes what the library lays down."""
    worker = import_distributed().Worker(
        address,
        nthreads=1,
        memory_limit=0,
        host="127.0.0.1",  # nobody else's business
        dashboard=False,
        dashboard_address="127.0.0.1:0",
        local_directory=folder,
        death_timeout=30,
    )
    async with worker:
        await worker.finished()


if __name__ == "__main__":
    asyncio.run(run_worker(*sys.argv[1:3]))
