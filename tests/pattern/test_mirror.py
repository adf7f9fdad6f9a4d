"""The mirrored pattern: the same piece seen in a mirror, loom, working and verdict."""

from __future__ import annotations

import math
from typing import Any

import msgspec
import pytest
from hypothesis import assume, given, settings

from examples.pieces import PIECES
from pegwright.finding import RefusedError
from pegwright.loom import check_loom, replay_pattern
from pegwright.pattern import (
    Address,
    JoinedLooms,
    Layout,
    Pattern,
    PatternBuilder,
    PegAt,
    Pegs,
    Round,
    Rows,
    expand,
    is_address,
    mirror,
    parse_address,
    pegs,
    read_pattern,
    write_pattern,
)
from pegwright.pattern.mirroring import mirror_layout
from pegwright.proof import prove
from pegwright.structure import structure_of
from testing import strategies

piece = pytest.mark.parametrize("name", PIECES)


def mapped(loom: Layout, holder: str) -> str:
    """Mirror an address the slow way: by the list of all rows, or of all numbers of a ring."""
    if not is_address(holder):
        return holder
    row, number = parse_address(holder)
    if isinstance(loom, Round):
        return str(Address(row, list(range(loom.pegs, 0, -1))[number - 1]))
    rows = sorted({parse_address(p.at).row for p in pegs(loom)})
    full = list(range(rows[0], rows[-1] + 1))
    return str(Address(full[::-1][full.index(row)], number))


def swapped(value: Any, loom: Layout) -> Any:
    """Mirror every holder in a value."""
    if isinstance(value, str):
        return mapped(loom, value)
    if isinstance(value, list | tuple):
        return [swapped(v, loom) for v in value]
    if isinstance(value, dict):
        return {k: v if k in ("type", "kind") else swapped(v, loom) for k, v in value.items()}
    return value


@piece
def test_every_event_is_the_mirror_image(name: str) -> None:
    """What happens to every loop is the same, on the mirrored pegs."""
    pattern = PIECES[name]()
    other = mirror(pattern)
    here = replay_pattern(pattern)
    there = replay_pattern(other)
    assert not there.findings
    assert there.colours == here.colours
    want = [swapped(msgspec.to_builtins(e), pattern.loom) for e in here.events]
    assert want == [_lists(msgspec.to_builtins(e)) for e in there.events]


def _lists(value: Any) -> Any:
    if isinstance(value, list | tuple):
        return [_lists(v) for v in value]
    return {k: _lists(v) for k, v in value.items()} if isinstance(value, dict) else value


@piece
def test_the_verdict_is_the_same(name: str) -> None:
    """The mirrored piece, proved again: the same bands fall, by number; the same things are found."""
    pattern = PIECES[name]()
    proofs, codes = [], []
    for each in (pattern, mirror(pattern)):
        expansion = expand(each)
        history = replay_pattern(each, expansion)
        proof = prove(structure_of(history.events))
        proofs.append((proof.free, proof.unproved, len(proof.verdicts)))
        codes.append(sorted(f.code for f in check_loom(each, expansion, history)))
    assert proofs[0] == proofs[1]
    assert codes[0] == codes[1]


@piece
def test_mirrored_twice_is_the_same_document(name: str) -> None:
    """Byte for byte; and a mirrored document can be read."""
    pattern = PIECES[name]()
    assert write_pattern(mirror(mirror(pattern))) == write_pattern(pattern)
    again = read_pattern(write_pattern(mirror(pattern)))
    assert again.pattern == mirror(pattern)
    assert not again.findings


@settings(max_examples=150, deadline=None)
@given(strategies.patterns)
def test_mirroring_twice_changes_nothing_on_any_pattern(pattern: Pattern) -> None:
    """Any document at all: twice is once undone; three times is once."""
    try:
        once = mirror(pattern)
    except RefusedError:
        assume(False)
    twice = mirror(once)
    assert mirror(twice) == once
    assert twice.steps == pattern.steps
    assert twice.motifs == pattern.motifs
    if not isinstance(pattern.loom, JoinedLooms):
        assert [p.at for p in pegs(twice.loom)] == [p.at for p in pegs(pattern.loom)]


@settings(max_examples=150, deadline=None)
@given(strategies.looms)
def test_the_loom_is_seen_in_a_mirror(loom: Layout) -> None:
    """Each peg stands where its image stands, the channel turned with it; a ring is turned on by a peg."""
    found = {p.at: p for p in pegs(mirror_layout(loom))}
    if len({p.at for p in pegs(loom)}) < len(pegs(loom)):
        return
    assert len(found) == len(pegs(loom))
    # Where the mirror stands is free: the leftmost peg of the image is the image of the rightmost.
    middle = min(p.x_mm for p in found.values()) + max(p.x_mm for p in pegs(loom))
    for peg in pegs(loom):
        image = found[mapped(loom, peg.at)]
        x, y, channel = -peg.x_mm + middle, peg.y_mm, (180.0 - peg.channel_deg) % 360
        if isinstance(loom, Round):
            turn = 2 * math.pi / loom.pegs
            x, y = -peg.x_mm, peg.y_mm
            x, y = x * math.cos(-turn) - y * math.sin(-turn), x * math.sin(-turn) + y * math.cos(-turn)
            channel = (channel - math.degrees(turn)) % 360
        assert image.x_mm == pytest.approx(x, abs=1e-4)
        assert image.y_mm == pytest.approx(y, abs=1e-4)
        assert math.cos(math.radians(image.channel_deg - channel)) == pytest.approx(1.0)


def test_looms_of_different_widths_stand_flush_right() -> None:
    """Three rows beyond two: mirrored, the lone row is on the other side."""
    loom = JoinedLooms(looms=(Rows(rows=3, pegs=2), Rows(rows=2, pegs=2)), side="beyond")
    image = mirror_layout(loom)
    assert isinstance(image, Pegs)
    there = {p.at: (p.x_mm, p.y_mm) for p in pegs(image)}
    assert there["A1"] == (0.0, 0.0)
    assert "A3" not in there
    assert there["C3"] == (28.0, 30.0)


def test_a_motif_within_a_motif_and_mirrored_in_place_comes_out_right() -> None:
    """A sail used plain, moved, mirrored, and inside another motif: every move is the mirror image."""
    m = PatternBuilder("Regatta", Rows(rows=7, pegs=9)).colour("S", "sail white", "#f5f2ea")
    with m.motif("sail"):
        m.place("S", "B1", "B2")
        m.place("S", "B2", "D3")
    with m.motif("pair"):
        m.use("sail")
        m.use("sail", rows=2, mirror=("rows",))
        m.place("S", "A1", "F2")
    m.use("sail")
    m.use("sail", rows=3, pegs=2)
    m.use("pair", rows=1, pegs=3)
    m.use("pair", rows=1, pegs=5, mirror=("rows",))
    pattern = m.pattern()
    assert not expand(pattern).findings
    here = [d.move for d in expand(pattern).moves]
    there = [d.move for d in expand(mirror(pattern)).moves]
    assert [tuple(mapped(pattern.loom, p) for p in move.over) for move in here] == [
        move.over for move in there
    ]  # type: ignore[union-attr]


def test_a_peg_beyond_the_loom_is_not_mirrored() -> None:
    """There is nothing to mirror it to."""
    m = PatternBuilder("Adrift", Rows(rows=2, pegs=3)).colour("A", "slate", "#445566")
    m.place("A", "A1", "D1")
    with pytest.raises(RefusedError, match="D1 lies beyond the loom"):
        mirror(m.pattern())
    m = PatternBuilder("The last row", Pegs(pegs=(PegAt("ZZ1", 0, 0),))).colour("A", "slate", "#445566")
    m.place("A", "ZZ1", "B1")
    with pytest.raises(RefusedError, match="B1 lies beyond the loom"):
        mirror(m.pattern())
