"""The atlas that is kept with the program speaks of the techniques that the program has."""

from __future__ import annotations

import io
import re

import pytest
from PIL import Image

from pegwright.variants import TECHNIQUES
from pegwright.workshop import load_measured_techniques, work

FAST = {one.measures.name: one.measures for one in load_measured_techniques()}


def test_every_technique_is_kept_and_at_rest() -> None:
    """`make atlas` measures anew what is missing here or not as the line has it."""
    assert list(FAST) == list(TECHNIQUES)
    assert [name for name, one in FAST.items() if not (one.holds and one.at_rest)] == []
    for one in load_measured_techniques():
        assert max(Image.open(io.BytesIO(one.picture)).size) == 200
        assert one.measures.group == TECHNIQUES[one.measures.name].group
        assert all(re.search("[.:]", text) for slip in one.measures.slips for text in slip.says["de"])


@pytest.mark.parametrize("name", list(TECHNIQUES)[::5])
def test_what_is_counted_is_still_so(name: str) -> None:
    technique, kept = TECHNIQUES[name], FAST[name]
    short, long = (work(technique.make(repeats)) for repeats in technique.repeats)
    assert kept.bands == long.supplies.bands
    repeats = technique.repeats[1] - technique.repeats[0]
    assert kept.repeat_bands == (long.supplies.bands - short.supplies.bands) / repeats
    if kept.bracelet is not None:
        assert work(technique.make(kept.bracelet.repeats)).supplies.bands == kept.bracelet.bands
