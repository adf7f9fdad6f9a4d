"""The atlas: measured numbers that makers know, and nothing measured twice."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

import html5lib
import pytest

from pegwright.finding import RefusedError
from pegwright.workshop import atlas, build_atlas, open_pattern, work
from pegwright.workshop.batch_engine import TaskOutcome
from pegwright.workshop.swatches import growth_of


def run_here(
    cluster: Any, function: Callable[[bytes], bytes], tasks: Sequence[bytes]
) -> Iterator[TaskOutcome]:
    """Do the tasks in this process: what becomes of workers is the business of the batch's tests."""
    for number, task in enumerate(tasks):
        cluster.append(number)
        yield TaskOutcome(number, function(task))


def test_a_plain_chain_is_as_makers_know_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(atlas, "run_tasks", run_here)
    done: list[int] = []
    (chain,) = build_atlas(tmp_path, done, only=["chain-1"], language="de")  # type: ignore[arg-type]
    assert chain.repeat_mm is not None
    # About 25 bands make a bracelet of 13 to 16 cm: common practice, no source. A repeat is two bands.
    assert 130 / 25 <= chain.repeat_mm / chain.repeat_bands <= 160 / 25
    assert chain.repeat_bands == 2
    assert chain.holds
    assert chain.at_rest
    assert chain.stack == 3
    assert chain.snap_loses == chain.bands - 1  # a chain is as strong as its weakest link
    assert chain.stretch is not None
    assert 1.0 < chain.stretch < 3.0
    assert 1.0 < chain.strain < 3.0
    assert chain.minutes > 1
    assert chain.failures > 0
    page = (tmp_path / "index.html").read_bytes()
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    (card,) = tree.findall(".//article")
    assert card.find("h2").text == "einfache Kette"
    assert len(card.findall(".//tr")) == 13
    assert card.find("h3").text == "Wo Fehler passieren"
    worn = chain.bracelet
    assert worn is not None
    # The same rule of thumb: 13 to 16 cm of 25 bands.
    assert 130 <= worn.length_mm <= 170
    assert 0.8 <= worn.bands / 25 / (worn.length_mm / 145) <= 1.25
    assert worn.wrists_mm is not None
    assert worn.length_mm <= worn.wrists_mm[0] < worn.wrists_mm[1]
    assert [slip.steps for slip in chain.slips]
    pattern = open_pattern(tmp_path / card.find(".//a").get("href")).pattern
    assert pattern is not None
    assert work(pattern).supplies.bands == chain.bands
    assert json.loads((tmp_path / "atlas.json").read_text())[0]["name"] == "chain-1"
    again = build_atlas(tmp_path, done, only=["chain-1"])  # type: ignore[arg-type]
    assert again == (chain,)
    assert done == [0]


@pytest.mark.parametrize(
    ("less", "more", "grown"),
    [
        ((30.0, 10.0), (50.0, 10.5), 20.0),  # both longer than wide
        ((40.0, 20.0), (42.0, 32.0), 12.0),  # both wider than long: they lie turned
        ((40.0, 30.0), (50.0, 41.0), 20.0),  # the short one lies turned, the long one does not
        ((40.0, 30.0), (30.0, 20.0), None),
        ((0.0, 0.0), (30.0, 20.0), None),
    ],
)
def test_what_repeats_add_is_found_however_the_swatches_lie(
    less: tuple[float, float], more: tuple[float, float], grown: float | None
) -> None:
    found = growth_of(less, more)
    assert (None if found is None else found[0]) == (None if grown is None else pytest.approx(grown))
    if found is not None:
        assert sorted(found[1:]) == sorted(more)


def test_an_unknown_technique_is_refused(tmp_path: Path) -> None:
    with pytest.raises(RefusedError):
        build_atlas(tmp_path, [], only=["none"])  # type: ignore[arg-type]
