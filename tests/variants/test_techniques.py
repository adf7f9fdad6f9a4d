"""Every technique of the atlas holds, whatever its number of repeats, and says so in every language."""

from __future__ import annotations

import pytest

from pegwright.finding import LANGUAGES, word_phrase
from pegwright.proof import check
from pegwright.variants import TECHNIQUES
from pegwright.workshop import work


@pytest.mark.parametrize("name", TECHNIQUES)
def test_it_holds_however_often_it_is_repeated(name: str) -> None:
    technique = TECHNIQUES[name]
    bands = []
    for repeats in (1, 2, 5):
        made = work(technique.make(repeats))
        assert made.holds
        assert check(made.history.events, made.proof, made.history.board.spots) is None
        assert [found.code for found in made.findings if found.severity != "note"] == []
        bands.append(made.supplies.bands)
    assert bands[2] - bands[1] == 3 * (bands[1] - bands[0]) > 0


def test_there_are_enough_and_each_has_a_name_of_its_own() -> None:
    assert len(TECHNIQUES) >= 48
    for language in LANGUAGES:
        titles = [word_phrase(one.title, language) for one in TECHNIQUES.values()]
        assert len(set(titles)) == len(titles)
