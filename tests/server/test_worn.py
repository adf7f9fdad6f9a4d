"""Round the wrist, and made to fit one by repeats: what the page asks for in the background."""

from __future__ import annotations

import math
from typing import Any

import msgspec
import numpy as np
import pytest

from pegwright.pattern import PatternBuilder, Rows, read_pattern, write_pattern
from pegwright.workshop import measure_lengths, work
from tests.server.conftest import Client

Document = dict[str, Any]
GIRTH_MM = 50.0


def boats(repeats: int, pegs: int, *, clip: bool = True) -> Document:
    """A plain chain of so many bands on a loom with room for more, closed with a clip or tied with a cord."""
    m = PatternBuilder("Row of boats", Rows(rows=1, pegs=pegs)).colour("A", "slate blue", "#34506b")
    with m.repeat(repeats, pegs=1):
        m.place("A", "A1", "A2")
    m.turn()
    with m.repeat(repeats - 1, pegs=-1):
        m.hook(f"A{repeats}", f"A{repeats - 1}")
    if clip:
        m.bind("A", "A1")
        m.clip("end", f"A{repeats + 1}")
    else:
        m.knot("A1")
    return dict(msgspec.json.decode(write_pattern(m.pattern())))


def made(studio: Client, document: Document, request: Document, file: str) -> tuple[Document, Any]:
    """Return how the job ended and what it made."""
    told = studio.post("/api/jobs", {"piece": "boats", "job": request, "document": document}).json()
    while told["state"] in ("waiting", "running"):
        told = studio.get(f"/api/jobs/{told['job']}?seen={told['serial']}").json()
    if told["state"] != "done":
        return told, None
    return told, studio.get(f"/api/jobs/{told['job']}/files/{file}").json()


def test_it_is_closed_round_the_wrist(studio: Client) -> None:
    """Nothing of it lies within the wrist, it goes all round, no strand passed another, the clip is shut."""
    document = boats(8, 9)
    _, worn = made(studio, document, {"do": "worn", "girth_mm": GIRTH_MM}, "worn.json")
    assert worn["settled"]
    assert worn["crossings"] == 0
    strands = [np.reshape(strand["points_mm"], (-1, 3)) for strand in worn["strands"]]
    every = np.concatenate(strands)
    assert np.hypot(every[:, 0], every[:, 2]).min() > 0.97 * GIRTH_MM / (2 * math.pi)
    around = np.sort(np.arctan2(every[:, 0], every[:, 2]))
    gaps = np.diff(np.append(around, around[0] + 2 * math.pi))
    assert gaps.max() < math.radians(30)
    rings = [s for s, of in zip(strands, worn["strands"], strict=True) if of["band"] == 0]
    assert len(rings) == 2
    between = np.linalg.norm(rings[0][:, None] - rings[1][None], axis=2).min()
    assert between < 6.0  # the clip's own size, 3 mm, and the thickness of its rings


def test_what_no_clip_closes_is_refused_with_a_reason(studio: Client) -> None:
    """A piece that is tied at one end has no two ends to bring together."""
    told, _ = made(studio, boats(4, 5, clip=False), {"do": "worn", "girth_mm": GIRTH_MM}, "worn.json")
    assert told["state"] == "refused"
    assert "clip" in told["reason"]


@pytest.mark.parametrize("girth", [0, -1, 49, 401, "wide", None])
def test_no_wrist_is_like_that(studio: Client, girth: object) -> None:
    """A girth is between that of a small child's wrist and an ankle; anything else is refused at once."""
    body = {"piece": "p", "job": {"do": "worn", "girth_mm": girth}, "document": boats(3, 4)}
    assert studio.post("/api/jobs", body).status_code == 400


def test_other_lengths_are_tried_in_the_background(studio: Client) -> None:
    """What the page is told is what the workshop finds, and one repeat of a chain is one band."""
    document = boats(6, 12)
    _, told = made(studio, document, {"do": "lengthen"}, "lengths.json")
    own = measure_lengths(work(read_pattern(msgspec.json.encode(document)).pattern))  # type: ignore[arg-type]
    assert told == msgspec.to_builtins(own)
    assert (told["now"], told["bands"]) == (5, 1)  # what is repeated least: five hooks
    assert told["most"] <= 10  # the loom has 12 pegs
    assert 3 < told["one_mm"] < 12


@pytest.mark.parametrize(("wrist_mm", "sign"), [(95, -1), (130, 0), (160, 1), (190, 1)])
def test_the_wrist_is_served_by_repeats_first(studio: Client, wrist_mm: int, sign: int) -> None:
    """The page gets how many repeats more or fewer, and the document that has them, which holds.

    Counted anew: the bands of that document are those of now, one for each repeat, and the extension's.
    """
    document = boats(8, 20)
    body = {
        "document": document,
        "measured": {
            "length_mm": 120.0,
            "width_mm": 8.0,
            "pulls": [[0, 120.0], [0.5, 140.0], [1, 160.0], [2, 200.0], [4, 260.0]],
            "extension_mm": 6.0,
            "extension": 0,
        },
        "lengths": {"now": 7, "least": 2, "most": 18, "one_mm": 12.0, "bands": 1},
        "wrist": f"{wrist_mm} mm",
    }
    told = studio.post("/api/fit", body).json()
    if not sign:
        low, high = told["fit"]["wrists_mm"]
        assert low <= wrist_mm <= high
        assert (told["document"], told["more"]) == (None, 0)
        return
    assert told["more"] * sign > 0
    assert not told["nearest"]
    assert told["repeats"] == 7 + told["more"]
    assert 0.85 * wrist_mm <= told["length_mm"] <= wrist_mm
    assert told["length_mm"] == pytest.approx(120 + 12 * told["more"] + 6 * told["extension"])
    longer = work(read_pattern(msgspec.json.encode(told["document"])).pattern)  # type: ignore[arg-type]
    assert longer.holds
    assert len(longer.proof.verdicts) == 9 + told["more"] + told["extension"]


def test_it_says_where_even_the_most_does_not_suit(studio: Client) -> None:
    """With no room for more repeats and no end for extension bands, the nearest is told as such."""
    body = {
        "document": boats(8, 9),
        "measured": {
            "length_mm": 60.0,
            "width_mm": 8.0,
            "pulls": [[0, 60.0], [0.5, 70.0], [1, 80.0], [2, 100.0], [4, 130.0]],
            "extension_mm": None,
            "extension": 0,
        },
        "lengths": {"now": 7, "least": 2, "most": 8, "one_mm": 7.0, "bands": 1},
        "wrist": "16 cm",
    }
    told = studio.post("/api/fit", body).json()
    assert (told["more"], told["nearest"]) == (1, True)
    assert told["length_mm"] < 0.85 * 160
