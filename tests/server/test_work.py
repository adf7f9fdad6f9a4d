"""What the page is told of a worked pattern."""

from __future__ import annotations

import json
import threading
from pathlib import Path
from typing import Any

import pytest

from pegwright.loom import Laid, replay_pattern
from pegwright.pattern import read_pattern
from pegwright.server.schema import api_schema
from pegwright.workshop import example_files, open_pattern, work
from tests.server.conftest import Client

Document = dict[str, Any]


@pytest.mark.parametrize("name", ["riding-lights", "lobster-pot", "broken/shallow-water"])
def test_the_page_is_told_what_the_line_says(studio: Client, name: str) -> None:
    """Moves, events, findings and verdict are those of the workshop's own line."""
    path = example_files()[name]
    pattern = open_pattern(path).pattern
    assert pattern is not None
    made = work(pattern)
    told = studio.post("/api/work", {"document": json.loads(path.read_text())}).json()
    assert len(told["moves"]) == len(made.history.moves)
    assert sum(len(move["events"]) for move in told["moves"]) == len(made.history.events)
    assert [f["code"] for f in told["findings"]] == [f.code for f in made.findings]
    assert (told["holds"], told["falls"]) == (made.holds, list(made.proof.free))
    assert len(told["colours"]) == sum(isinstance(event, Laid) for event in made.history.events)


def test_no_pattern_is_told_as_findings(studio: Client) -> None:
    """A document that is no pattern comes back with what is wrong with it."""
    told = studio.post("/api/work", {"document": {"pegwright": 2, "title": ""}}).json()
    assert told["readable"] is False
    assert {f["code"] for f in told["findings"]} == {"not-a-pattern"}


@pytest.mark.parametrize(
    ("language", "said", "label"),
    [
        ("en", "nothing closes the piece", "clip the two ends together: end and A7"),
        ("es", "nada cierra la pieza", "unir los dos extremos con un cierre: end y A7"),
        ("de", "nichts schließt das Stück", "die beiden Enden mit einem Clip verbinden: end und A7"),
    ],
)
def test_findings_come_in_the_language_of_the_request(
    studio: Client, chain: Document, language: str, said: str, label: str
) -> None:
    """Message, hint and fix; the codes and facts are the same in all. Another language is refused."""
    steps = [step for step in chain["steps"] if step["do"] != "clip"]
    open_chain = {**chain, "steps": steps}
    told = studio.post(f"/api/work?language={language}", {"document": open_chain}).json()
    (found,) = [f for f in told["findings"] if f["code"] == "no-finish"]
    assert said in found["message"]
    assert found["fix"]["label"] == label
    english = studio.post("/api/work", {"document": open_chain}).json()
    assert [(f["code"], f.get("facts")) for f in english["findings"]] == [
        (f["code"], f.get("facts")) for f in told["findings"]
    ]
    assert studio.post("/api/work?language=xx", {"document": open_chain}).status_code == 400


def test_a_refusal_comes_in_the_language_of_the_request(studio: Client) -> None:
    """The reason and its findings; an unknown language gets English."""
    for language, reason in (
        ("de", "dieses Stück gibt es hier nicht"),
        ("xx", "there is no such piece here"),
    ):
        answer = studio.get(f"/api/pieces/none?language={language}")
        assert (answer.status_code, answer.json()["reason"]) == (404, reason)
    answer = studio.post("/api/pieces?language=es", {"document": {"pegwright": 2, "title": "Ebb"}})
    assert answer.json()["reason"] == "esto no es un patrón"
    assert "falta el campo loom" in answer.json()["findings"][0]["message"]


def test_what_falls_if_a_band_snaps(studio: Client, chain: Document) -> None:
    """A plain chain is a Brunnian link: any one band lost frees all but band 6, whose loop the clip holds."""
    for band in (1, 4, 6, 7):
        told = studio.post("/api/snap", {"document": chain, "band": band}).json()
        assert told["held"] is True
        assert {*told["falls"], band, 6} == {1, 2, 3, 4, 5, 6, 7}
    assert studio.post("/api/snap", {"document": chain, "band": 8}).json()["held"] is False


def test_the_pieces_to_begin_from_hold(studio: Client) -> None:
    """Every piece on offer can be read and is held."""
    starts = studio.get("/api/starts").json()
    assert len(starts) >= 5
    for start in starts:
        reading = read_pattern(json.dumps(start["document"]).encode())
        assert reading.pattern is not None
        history = replay_pattern(reading.pattern)
        assert history.final.bands == start["bands"]
        assert not history.findings


def test_many_pages_at_once(studio: Client, chain: Document) -> None:
    """Several pages are all answered, each with its own piece."""
    told: dict[int, Any] = {}

    def ask(k: int) -> None:
        document = {**chain, "loom": {"kind": "rows", "rows": 1, "pegs": 7 + k}}
        told[k] = studio.post("/api/work", {"document": document, "page": str(k), "serial": 1}).json()

    threads = [threading.Thread(target=ask, args=(k,)) for k in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert {k: len(told[k]["pegs"]) for k in told} == {k: 7 + k for k in range(6)}


def test_the_front_end_has_the_types_of_today() -> None:
    """The front end's types are made from the server's own description; `make types` renews it."""
    kept = Path(__file__).parents[2] / "frontend" / "types.json"
    assert json.loads(kept.read_text()) == json.loads(json.dumps(api_schema()))
