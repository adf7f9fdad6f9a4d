from __future__ import annotations

from decimal import Decimal
from itertools import product
from pathlib import Path

import jsonschema
import msgspec
import pytest
from hypothesis import given, settings, strategies as st

from pegwright.finding import worst_severity
from pegwright.fit import Heap, Stash, Supplies, choose_packs, read_stash, write_stash
from pegwright.fit.packs import cheapest_packs
from pegwright.fit.stash import BandGoods, Goods, LoomGoods, Pack, stash_schema
from pegwright.fit.supplies import LoomNeed

SLATE = Heap(letter="A", name="slate", band="standard", placed=38)
FOAM = Heap(letter="B", name="foam", band="standard", placed=21)
STRIP = Supplies(
    heaps=(SLATE, FOAM), clips=1, hooks=1, looms=(LoomNeed(kind="straight", rows=3, pegs=13, pitch_mm=16.0),)
)


def naive_least(needed: int, offers: list[Pack]) -> tuple[Decimal, int, int]:
    """Try every number of every pack."""
    ranges = [range(-(-needed // pack.size) + 1) for pack in offers]
    found = []
    for numbers in product(*ranges):
        held = sum(n * pack.size for n, pack in zip(numbers, offers, strict=True))
        if held >= needed:
            cost = sum((n * (p.cost or Decimal(0)) for n, p in zip(numbers, offers, strict=True)), Decimal(0))
            found.append((cost, held, sum(numbers)))
    return min(found)


def key(chosen: tuple[tuple[int, Pack], ...]) -> tuple[Decimal, int, int]:
    return (
        sum((n * (pack.cost or Decimal(0)) for n, pack in chosen), Decimal(0)),
        sum(n * pack.size for n, pack in chosen),
        sum(n for n, _ in chosen),
    )


@given(
    st.integers(1, 60),
    st.lists(st.tuples(st.integers(1, 12), st.integers(0, 9)), min_size=1, max_size=3),
    st.booleans(),
)
@settings(max_examples=150)
def test_packs_against_trying_everything(needed: int, sizes: list[tuple[int, int]], priced: bool) -> None:
    offers = [Pack(size=size, price=f"{price}.50" if priced else None) for size, price in sizes]
    best = naive_least(needed, offers)
    got = key(cheapest_packs(needed, offers))
    assert got[:2] == best[:2]
    if (
        needed <= min(size for size, _ in sizes) ** 2
    ):  # no packs set aside before the table: the count is least too
        assert got[2] == best[2]


def test_packs_by_hand() -> None:
    """110 bands from packs of 50 at 2.00 and 100 at 3.00: 100 + 50 costs 5.00; three 50s cost 6.00."""
    small, large = Pack(size=50, price="2.00"), Pack(size=100, price="3.00")
    assert cheapest_packs(110, [small, large]) == ((1, large), (1, small))
    assert cheapest_packs(0, [small]) == cheapest_packs(5, []) == ()
    assert cheapest_packs(60, [Pack(size=10), large]) == ((1, large),)  # the one with a price is chosen
    assert cheapest_packs(1_000_000, [small, large]) == ((10_000, large),)


def test_a_whole_list() -> None:
    stash = Stash(
        currency="florin",
        bands=(
            BandGoods(band="standard", have=5, packs=(Pack(size=300, price="2.40"),)),
            BandGoods(colour="Slate", have=30, packs=(Pack(size=25, price="0.50"),)),
        ),
        clips=Goods(packs=(Pack(size=25),)),
        hooks=Goods(have=3),
        looms=(LoomGoods(rows=2, have=9), LoomGoods(kind="straight", rows=3, pegs=13, have=1)),
    )
    shopping = choose_packs(STRIP, stash)
    slate, foam, clips, loom, hooks = shopping.lines
    assert (slate.have, slate.missing, slate.bought, slate.cost) == (35, 3, 25, Decimal("0.50"))
    assert slate.left_over == 22
    assert (foam.have, foam.bought, foam.cost) == (0, 300, Decimal("2.40"))  # the five at hand went to slate
    assert (clips.bought, clips.cost) == (25, None)
    assert (loom.have, loom.missing, loom.cost) == (1, 0, Decimal(0))
    assert (hooks.have, hooks.left_over, hooks.cost) == (1, 0, Decimal(0))
    assert (shopping.cost, shopping.complete, shopping.findings) == (Decimal("2.90"), False, ())


def test_what_the_stash_lacks_is_said() -> None:
    shopping = choose_packs(STRIP, Stash(bands=(BandGoods(colour="A", packs=(Pack(size=50, price="1"),)),)))
    assert [f.code for f in shopping.findings] == ["stash-lacks"] * 4 + ["currency-missing"]
    assert worst_severity(shopping.findings) == "note"
    assert shopping.lines[0].cost == Decimal(1)


def test_letters_keep_their_case_and_names_do_not() -> None:
    assert BandGoods(colour="A").suits(SLATE)
    assert not BandGoods(colour="a").suits(SLATE)
    assert BandGoods(colour="SLATE").suits(SLATE)
    assert not BandGoods(band="thick").suits(SLATE)


goods = st.builds(
    BandGoods,
    colour=st.text(max_size=10),
    have=st.integers(0, 999),
    packs=st.lists(
        st.builds(Pack, size=st.integers(1, 999), price=st.sampled_from([None, "0", "2.50"])), max_size=3
    ).map(tuple),
)


@given(st.builds(Stash, currency=st.text(max_size=12), bands=st.lists(goods, max_size=4).map(tuple)))
def test_the_stash_round_trips_and_obeys_its_schema(stash: Stash) -> None:
    text = write_stash(stash)
    assert read_stash(text) == (stash, ())
    assert write_stash(stash) == text
    jsonschema.validate(msgspec.json.decode(text), stash_schema())


@pytest.mark.parametrize(
    ("text", "code", "path"),
    [
        (b"\xff\xfe", "not-text", ""),
        (b"{", "not-json", ""),
        (b"[" * 100_000, "not-json", ""),
        (b"[]", "not-a-stash", ""),
        (b'{"stash": 2}', "not-a-stash", "/stash"),
        (b'{"clips": {"packs": [{"size": 0}]}}', "not-a-stash", "/clips/packs/0/size"),
        (b'{"bands": [{"packs": [{"size": 5, "price": "-1"}]}]}', "not-a-stash", "/bands/0/packs/0/price"),
        (b'{"shoes": 1}', "not-a-stash", "/shoes"),
        (b" " * 8_000_001, "too-large", ""),
    ],
)
def test_a_bad_stash_is_found_out(text: bytes, code: str, path: str) -> None:
    stash, findings = read_stash(text)
    assert stash is None
    assert [(f.code, f.place.path) for f in findings] == [(code, path)]


def test_the_page_about_the_stash_shows_a_true_one() -> None:
    page = (Path(__file__).parents[2] / "docs" / "stash.md").read_bytes()
    stash, findings = read_stash(page.partition(b"```json")[2].partition(b"```")[0])
    assert findings == ()
    assert stash is not None
    assert choose_packs(STRIP, stash).complete


@given(st.binary(max_size=60))
def test_anything_at_all_may_be_read(data: bytes) -> None:
    stash, findings = read_stash(data)
    assert (stash is None) == bool(findings)
