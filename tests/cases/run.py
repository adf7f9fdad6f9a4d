"""The ordinary line up to the findings, for one document."""

from __future__ import annotations

from pathlib import Path

from pegwright.finding import Finding
from pegwright.fit import Supplies, choose_packs, count_supplies, read_stash
from pegwright.loom import replay_pattern
from pegwright.pattern import read_pattern
from pegwright.text import read_any_pattern
from pegwright.workshop import work

HERE = Path(__file__).parent


def findings_of(data: bytes) -> tuple[Finding, ...]:
    """Read a pattern and take it through the whole line."""
    pattern, findings = read_any_pattern(data)
    return findings if pattern is None else work(pattern).findings


def findings_of_stash(data: bytes) -> tuple[Finding, ...]:
    """Read a stash and shop from it for the plainest chain."""
    stash, findings = read_stash(data)
    return findings if stash is None else choose_packs(plain_chain(), stash).findings


def plain_chain() -> Supplies:
    """Count the plain chain of the case that lacks nothing but its finish."""
    pattern, _ = read_pattern((HERE / "no-finish.json").read_bytes())
    assert pattern is not None
    return count_supplies(pattern, replay_pattern(pattern))
