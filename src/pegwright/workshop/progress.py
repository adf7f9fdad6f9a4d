"""How long work reports its progress."""

from __future__ import annotations

from collections.abc import Callable

ReportProgress = Callable[[str, int, int], None]
"""Called with what is being done, how many parts are done, and of how many."""


def report_nothing(_what: str, _done: int, _total: int) -> None:
    """Report to nobody."""
