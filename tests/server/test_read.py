"""A maker's words are read for the page: the document, the sentences, the questions, the answers."""

from __future__ import annotations

import json

import pytest

from pegwright.text import write_pattern_text
from pegwright.workshop import example_files, open_pattern
from tests.server.conftest import Client

CHAIN = """Ebb
Stretch a red band from A1 to A2. Carry on up to A6.
Turn the loom round.
Take the lowest loop of each peg and put it on the next peg, all along the row.
Pull a last band through the loops on A1.
Close the two ends with a clip.
"""


def test_words_come_back_as_a_document_with_sentences_and_questions(studio: Client) -> None:
    told = studio.post("/api/read", {"text": CHAIN}).json()
    assert told["language"] == "en"
    assert [blank["key"] for blank in told["blanks"]] == ["loom", "colour"]
    assert told["blanks"][0]["choices"] == ["1 x 6"]
    uses = [(one["line"], one["use"], one["done"]) for one in told["sentences"]]
    assert uses == [
        (1, "head", 0),
        (2, "steps", 1),
        (2, "steps", 5),
        (3, "steps", 6),
        (4, "steps", 10),
        (5, "steps", 11),
        (6, "steps", 12),
    ]
    assert len(told["work"]["moves"]) == told["sentences"][-1]["done"]
    assert told["work"]["holds"]


def test_an_answer_is_taken_and_asked_no_more(studio: Client) -> None:
    first = studio.post("/api/read", {"text": CHAIN}).json()
    answers = [
        {"key": blank["key"], "sentence": at, "answer": {"loom": "2 x 6", "colour": "navy"}[blank["key"]]}
        for blank in first["blanks"]
        for at in blank["sentences"]
    ]
    told = studio.post("/api/read", {"text": CHAIN, "answers": answers}).json()
    assert told["blanks"] == []
    assert told["document"]["loom"]["rows"] == 2
    assert [colour["name"] for colour in told["document"]["colours"]] == ["red", "navy"]


@pytest.mark.parametrize(
    ("language", "question"),
    [("de", "welche Farbe hat das Gummi in Zeile 5?"), ("es", "¿de qué color es la gomita de la línea 5?")],
)
def test_questions_come_in_the_language_of_the_page(studio: Client, language: str, question: str) -> None:
    told = studio.post(f"/api/read?language={language}", {"text": CHAIN}).json()
    assert told["blanks"][1]["question"] == question


def test_a_pattern_file_is_opened_as_it_is(studio: Client) -> None:
    pattern = open_pattern(example_files()["ebb-line"]).pattern
    assert pattern is not None
    for text in (write_pattern_text(pattern), example_files()["ebb-line"].read_text()):
        told = studio.post("/api/read", {"text": text}).json()
        assert (told["sentences"], told["blanks"]) == ([], [])
        assert told["document"]["title"] == "Ebb line"
        assert json.dumps(told["document"]["steps"])


def test_a_slip_in_a_pattern_file_is_told_by_its_line(studio: Client) -> None:
    told = studio.post("/api/read", {"text": "pegwright 3\ntitle: Ebb\nloom: kind rows, rows x\n"}).json()
    assert told["document"] is None
    assert told["findings"][0]["place"]["line"] == 3


def test_no_words_of_a_pattern_are_told_as_findings(studio: Client) -> None:
    told = studio.post("/api/read", {"text": "Buy milk."}).json()
    assert told["document"] is None
    assert [found["code"] for found in told["findings"]] == ["no-steps-read"]
    assert studio.post("/api/read", {"text": "a" * 500_001}).status_code == 400
    assert studio.post("/api/read", {"text": ""}).json()["document"] is None
