"""The ordinary line up to the findings, for one document."""

from __future__ import annotations

from pathlib import Path

from pegwright.finding import Finding
from pegwright.fit.packs import packs
from pegwright.fit.stash import read_stash
from pegwright.fit.stated import check_stated
from pegwright.fit.stretch import check_stretch
from pegwright.fit.supplies import Supplies, supplies
from pegwright.loom import board, replay
from pegwright.loom.checks import check_loom
from pegwright.pattern import expand, read

HERE = Path(__file__).parent


def findings_of(data: bytes) -> tuple[Finding, ...]:
    """Read a pattern and check everything about it but the proof."""
    pattern, findings = read(data)
    if pattern is None:
        return findings
    expansion = expand(pattern)
    history = replay(board(pattern.loom), expansion.doings)
    return (
        *expansion.findings,
        *history.findings,
        *check_loom(pattern, expansion, history),
        *check_stretch(pattern, history),
        *check_stated(pattern, expansion),
    )


def findings_of_stash(data: bytes) -> tuple[Finding, ...]:
    """Read a stash and shop from it for the plainest chain."""
    stash, findings = read_stash(data)
    return findings if stash is None else packs(plain_chain(), stash).findings


def plain_chain() -> Supplies:
    """Count the plain chain of the case that lacks nothing but its finish."""
    pattern, _ = read((HERE / "no-finish.json").read_bytes())
    assert pattern is not None
    return supplies(pattern, replay(board(pattern.loom), expand(pattern).doings))
