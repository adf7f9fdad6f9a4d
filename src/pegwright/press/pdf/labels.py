"""The labels of a handout in the language of the lesson."""

from __future__ import annotations

import msgspec

from pegwright.lesson import Phrasebook


class HandoutLabels(msgspec.Struct, frozen=True, kw_only=True):
    """The labels of the printed handout, as its template names them."""

    note: str
    more: str
    warning: str
    tick: str
    way_back: str
    ruler: str
    ruler_metric: str
    ruler_inch: str


def handout_labels(phrasebook: Phrasebook) -> HandoutLabels:
    """Return the labels of the printed handout."""
    say = phrasebook.say
    return HandoutLabels(
        note=say("label-note"),
        more=say("safe-more"),
        warning=say("label-warning"),
        tick=say("label-tick"),
        way_back=say("label-back"),
        ruler=say("label-ruler"),
        ruler_metric=say("label-ruler-metric"),
        ruler_inch=say("label-ruler-inch"),
    )
