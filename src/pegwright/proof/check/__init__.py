"""The checker: accepts or rejects a proof from the machine's record alone. It trusts nothing else.

Nothing here is merely likely. A band accepted as held is held, no isotopy takes it off: by the argument at
the head of `carriers`, or by peak reduction of a word written out (Collins 1989, McCool 1986). A band
accepted as free has a word without it after slips and slides; that these are motions in space too, not of
the word only, rests on the rule of `slips` that two loops of a twisted band never undo each other.

`link` reads the words from the events, `paths` follows paths of carriers, `short` writes out short words and
takes off what is free. They need the record, the shape of a proof and the standard library.
"""

from __future__ import annotations

from collections.abc import Sequence

from pegwright.loom.events import Event
from pegwright.proof.check.link import Link, need
from pegwright.proof.check.paths import Paths
from pegwright.proof.check.short import check_free
from pegwright.proof.values import Proof

__all__ = ["check"]


def check(events: Sequence[Event], proof: Proof) -> str | None:
    """Return None if every verdict of the proof is certified, else the first reason why not."""
    try:
        link = Link(events)
        need(list(proof.verdicts) == sorted(link.bands), "the verdicts are not those of the bands")
        Paths(link, proof.steps).check(proof)
        check_free(link, proof)
    except (ValueError, LookupError, TypeError, AttributeError) as reason:
        return f"not accepted: {reason}"
    return None
