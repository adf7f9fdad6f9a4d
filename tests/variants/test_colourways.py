"""Colourways against a general colour library, a look at every choice, and common sense."""

from __future__ import annotations

import json
from itertools import combinations, permutations

import pytest
from coloraide import Color

from pegwright.finding import RefusedError
from pegwright.fit import read_stash
from pegwright.pattern import outdated_translations
from pegwright.variants import BandColour, band_colours_of, rank_colourways, with_colours
from pegwright.variants.colourways import ALIKE
from pegwright.workshop import example_files, open_pattern

HAD = (
    BandColour("S", "slate", "#34506b", 200),
    BandColour("F", "foam white", "#f2efe6", 90),
    BandColour("R", "buoy red", "#c23b2a", 60),
    BandColour("D", "sand", "#d9b98a", 10),
    BandColour("U", "sun", "#f2c93a", 300),
    BandColour("T", "tar", "#2a2320", 120),
    BandColour("W", "weed green", "#2f6b4f"),
)


def least_distance(tints: list[str]) -> float:
    """For every eye, by the library: CIEDE2000, and sight after Machado, Oliveira and Fernandes (2009)."""

    def seen(tint: str, sight: str) -> Color:
        colour = Color(tint)
        if sight:
            colour = colour.filter(sight, 1.0, method="machado", space="srgb-linear").clip("srgb")
        return colour

    return min(
        seen(a, sight).delta_e(seen(b, sight), method="2000")
        for a, b in combinations(tints, 2)
        for sight in ("", "protan", "deutan", "tritan")
    )


def test_distances_are_those_of_the_library() -> None:
    for way in rank_colourways({"A": 30, "B": 20, "C": 5}, HAD, 12):
        assert way.apart == pytest.approx(least_distance([c.tint for c in way.colours.values()]), abs=0.01)


def test_the_first_is_the_best_of_every_choice() -> None:
    """Seven colours for two letters are 42 choices, all of which are looked at."""
    needs = {"A": 80, "B": 50}

    def worth(choice: tuple[BandColour, ...]) -> float:
        apart = least_distance([c.tint for c in choice])
        shares = [0.0 if c.have is None else n / c.have for c, n in zip(choice, needs.values(), strict=True)]
        return min(apart, 35) / 35 - 0.5 * min(max(shares), 1) - 2 * (max(shares) > 1) - 4 * (apart < ALIKE)

    best = max(map(worth, permutations(HAD, 2)))
    (first,) = rank_colourways(needs, HAD, 1)
    assert worth(tuple(first.colours.values())) == pytest.approx(best, abs=0.002)


def test_what_is_short_comes_last() -> None:
    """Ten of sand are not enough for eleven."""
    ways = rank_colourways({"A": 11, "B": 11}, HAD, 42)
    assert len(ways) == 42
    short = [way.used > 1 for way in ways if way.told_apart]
    assert short == sorted(short)
    assert sum(short) > 0
    for way in ways:
        assert (way.used > 1) == ("sand" in {c.name for c in way.colours.values()})


def test_what_looks_alike_to_some_eyes_comes_last() -> None:
    """A red and a green of like lightness, which deutans confuse, and a white unlike both."""
    had = (
        BandColour("R", "red", "#b5483a"),
        BandColour("G", "green", "#6f7a2c"),
        BandColour("F", "white", "#f4f2ea"),
    )
    ways = rank_colourways({"A": 1, "B": 1}, had, 6)
    assert [way.told_apart for way in ways] == [True] * 4 + [False] * 2
    assert {c.name for c in ways[-1].colours.values()} == {"red", "green"}
    everybody = Color("#b5483a").delta_e("#6f7a2c", method="2000")
    assert everybody > 2 * ALIKE, "to usual eyes they are far apart"


def test_the_same_seed_gives_the_same() -> None:
    many = [BandColour(f"X{k}", f"tone {k}", f"#{(k * 2654435761) % (1 << 24):06x}", 50) for k in range(40)]
    needs = dict.fromkeys("ABCD", 5)
    one = rank_colourways(needs, many, 5, seed=3)
    assert one == rank_colourways(needs, many, 5, seed=3)
    assert one != rank_colourways(needs, many, 5, seed=4)
    for way in one:
        assert len({c.name for c in way.colours.values()}) == 4
    for a, b in combinations(one, 2):
        assert any(a.colours[letter] != b.colours[letter] for letter in needs)


def test_too_few_colours_are_refused() -> None:
    for needs, had in (({"A": 1, "B": 1}, HAD[:1]), ({}, HAD)):
        with pytest.raises(RefusedError):
            rank_colourways(needs, had, 1)


def test_a_piece_in_other_colours() -> None:
    pattern = open_pattern(example_files()["ebb-line"]).pattern
    assert pattern is not None
    changed = with_colours(pattern, {pattern.colours[0].letter: HAD[2]})
    assert (changed.colours[0].name, changed.colours[0].hex) == ("buoy red", "#c23b2a")
    assert changed.colours[0].letter == pattern.colours[0].letter
    assert changed.colours[1:] == pattern.colours[1:]
    assert changed.steps == pattern.steps
    for language in changed.translations:
        assert not list(outdated_translations(changed, language))


def test_the_colours_of_a_stash() -> None:
    bands = [
        {"colour": "slate", "tint": "#34506B", "have": 4},
        {"colour": "slate", "tint": "#34506b", "have": 3},
        {"colour": "sand", "tint": "#d9b98a", "packs": [{"size": 300}]},
        {"colour": "gone", "tint": "#ffffff"},
        {"colour": "untold", "have": 9},
        {"tint": "#000000", "have": 9},
        {"colour": "wide", "tint": "#111111", "band": "wide", "have": 9},
        {"colour": "K", "tint": "#222222", "have": 1},
    ]
    stash, _ = read_stash(json.dumps({"stash": 1, "bands": bands}).encode())
    assert stash is not None
    assert band_colours_of(stash) == (
        BandColour("S", "slate", "#34506b", 7),
        BandColour("A", "sand", "#d9b98a", 0),
        BandColour("K", "K", "#222222", 1),
    )
    assert [c.name for c in band_colours_of(stash, "wide")] == ["slate", "sand", "wide", "K"]
