"""What the maker has and can buy: packs, their sizes and the maker's own prices.

A small document of its own:

    {"stash": 1, "currency": "florin",
     "bands": [{"colour": "slate", "have": 40, "packs": [{"size": 300, "price": "2.50"}]},
               {"band": "standard", "packs": [{"size": 600}]}],
     "clips": {"packs": [{"size": 25, "price": "1.00"}]}}

Prices are text, so that no hundredth is lost.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Any, Literal, NamedTuple

import msgspec

from pegwright.finding import Finding, Location, Phrase, finding
from pegwright.fit.supplies import Heap, LoomKind, LoomNeed
from pegwright.pattern import MAX_FINDINGS, decode_text, list_problems, not_json_finding

__all__ = [
    "BandGoods",
    "Goods",
    "LoomGoods",
    "Pack",
    "Stash",
    "StashReading",
    "read_stash",
    "stash_schema",
    "write_stash",
]

Price = Annotated[str, msgspec.Meta(pattern=r"^[0-9]{1,9}(\.[0-9]{1,4})?$")]
Number = Annotated[int, msgspec.Meta(ge=0, le=10_000_000)]
StashText = Annotated[str, msgspec.Meta(max_length=60)]


class _StashValue(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True, forbid_unknown_fields=True):
    """Base of a stash's parts, which refuse unknown fields."""


class Pack(_StashValue, frozen=True, kw_only=True):
    """A pack as it is sold: how many are in it, and its price if known."""

    size: Annotated[int, msgspec.Meta(ge=1, le=100_000)]
    price: Price | None = None

    @property
    def cost(self) -> Decimal | None:
        """The price as an exact number."""
        return None if self.price is None else Decimal(self.price)


class Goods(_StashValue, frozen=True, kw_only=True):
    """How many of a thing are at hand, and the packs it comes in."""

    have: Number = 0
    packs: Annotated[tuple[Pack, ...], msgspec.Meta(max_length=20)] = ()


class BandGoods(Goods, frozen=True, kw_only=True):
    """Bands of a colour (its name or letter) and kind; an empty field means any.

    A pack for any colour is a pack of one colour, whichever is needed. `tint` is the colour as
    `#rrggbb`.
    """

    colour: StashText = ""
    tint: Annotated[str, msgspec.Meta(pattern=r"^(#[0-9a-fA-F]{6})?$(?!\n)")] = ""
    band: StashText = ""

    def suits(self, heap: Heap) -> bool:
        """Return whether these bands have the heap's colour and kind."""
        names = (heap.letter, heap.name.casefold())
        colour = not self.colour or self.colour == names[0] or self.colour.casefold() == names[1]
        return colour and self.band in ("", heap.band)


class LoomGoods(Goods, frozen=True, kw_only=True):
    """Looms; an empty kind or size means any."""

    kind: LoomKind | Literal[""] = ""
    rows: Number = 0
    pegs: Number = 0

    def suits(self, loom: LoomNeed) -> bool:
        """Return whether these looms are of that sort."""
        return self.kind in ("", loom.kind) and self.rows in (0, loom.rows) and self.pegs in (0, loom.pegs)


class Stash(_StashValue, frozen=True, kw_only=True):
    """Everything at hand or for sale. `currency` is the user's own word."""

    stash: Literal[1] = 1
    currency: Annotated[str, msgspec.Meta(max_length=12)] = ""
    bands: Annotated[tuple[BandGoods, ...], msgspec.Meta(max_length=1000)] = ()
    looms: Annotated[tuple[LoomGoods, ...], msgspec.Meta(max_length=100)] = ()
    clips: Goods = Goods()
    hooks: Goods = Goods()
    scissors: Goods = Goods()


class StashReading(NamedTuple):
    """The stash, or None, and the findings."""

    stash: Stash | None
    findings: tuple[Finding, ...]


def read_stash(data: bytes) -> StashReading:
    """Read a stash from UTF-8 JSON. Never raises on bad input."""
    text = decode_text(data)
    if isinstance(text, Finding):
        return StashReading(None, (text,))
    try:
        raw = msgspec.json.decode(text)
        return StashReading(msgspec.convert(raw, Stash), ())
    except msgspec.ValidationError:
        found = list_problems(raw, Stash, "")[:MAX_FINDINGS]
        return StashReading(None, tuple(_unfit_finding(path, reason) for path, reason in found))
    except (msgspec.DecodeError, RecursionError) as error:
        return StashReading(None, (not_json_finding(text, error),))


def write_stash(stash: Stash) -> bytes:
    """Return the one canonical text: UTF-8 JSON, two spaces, newline at the end."""
    # The version comes first and is always written, although it has a default.
    raw = {"stash": stash.stash, **msgspec.to_builtins(stash)}
    return msgspec.json.format(msgspec.json.encode(raw), indent=2) + b"\n"


def stash_schema() -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of the stash."""
    body = msgspec.json.schema(Stash)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Pegwright stash, version 1",
        **body,
    }


def _unfit_finding(path: str, reason: Phrase) -> Finding:
    return finding("not-a-stash", Location(path=path), reason=reason)
