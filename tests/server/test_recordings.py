"""A recording is laid beside its lesson for the page, or becomes a draft; what cannot be read is told."""

from __future__ import annotations

import base64
from typing import Any

import msgspec
import pytest

from pegwright.finding import Language
from pegwright.listening import read_captions
from pegwright.pattern import write_pattern
from pegwright.server.job_requests import (
    DraftRequest,
    EndFrame,
    FileFrame,
    Frame,
    JobMessage,
    JobRequest,
    ListenRequest,
    ProgressFrame,
    run_job,
)
from pegwright.server.read_responses import WordAnswer
from pegwright.workshop import example_files, open_pattern
from testing.listening.by_hand import BY_HAND
from tests.server.conftest import Client
from tests.server.test_jobs import finish_in

CHAIN = """[0:02] Hello and welcome to the workshop.
[0:06] Stretch a red band from A1 to A2.
[0:12] Stretch a red band from A2 to A3.
[0:20] Mind the ferry, it hoots at noon.
[0:25] Turn the whole loom round.
"""


@pytest.fixture(scope="module")
def document() -> dict[str, Any]:
    pattern = open_pattern(example_files()["ebb-line"]).pattern
    assert pattern is not None
    return dict(msgspec.json.decode(write_pattern(pattern)))


def run(request: JobRequest, document: dict[str, Any]) -> list[Frame]:
    frames: list[Frame] = []
    run_job(JobMessage(request, document), frames.append)
    return frames


def files_of(frames: list[Frame]) -> dict[str, bytes]:
    return {one.name: one.data for one in frames if isinstance(one, FileFrame)}


@pytest.fixture(scope="module")
def heard(document: dict[str, Any]) -> list[Frame]:
    return run(ListenRequest(captions=BY_HAND[1].text.encode(), spoken="en", language="de"), document)


def test_a_recording_comes_back_with_all_that_the_page_shows(heard: list[Frame]) -> None:
    files = files_of(heard)
    told = msgspec.json.decode(files["heard.json"])
    assert heard[-1] == EndFrame()
    assert any(isinstance(one, ProgressFrame) for one in heard)
    assert [(one["kind"], one["step"]) for one in told["contradictions"] if one["confidence"] > 0.8] == list(
        BY_HAND[1].wrong
    )
    assert all("Schritt" in one["finding"]["message"] for one in told["contradictions"] if one["step"])
    assert len(told["chapters"]) > 5
    assert told["length_s"] == read_captions(BY_HAND[1].text.encode()).cues[-1].end_s
    assert {one["number"] for one in told["steps"]} >= {3, 4, 8}
    for mend in told["mends"]:
        start, end = mend["span"]
        assert told["cues"][mend["cue"]]["text"][start:end] == mend["before"]
    assert {"captions.vtt", "captions.srt", "chapters.vtt", "chapters.txt", "steps.json"} <= files.keys()


def test_a_mend_that_is_refused_is_not_made(heard: list[Frame], document: dict[str, Any]) -> None:
    files = files_of(heard)
    mends = msgspec.json.decode(files["heard.json"])["mends"]
    at = next(i for i, one in enumerate(mends) if one["before"] == "pegg")
    captions = BY_HAND[1].text.encode()
    kept = files_of(run(ListenRequest(captions=captions, spoken="en", refused=(at,)), document))
    assert b"from pegg A1" not in files["captions.vtt"]
    assert b"from pegg A1" in kept["captions.vtt"]
    assert b"from pegg A1" in kept["captions.srt"]
    assert msgspec.json.decode(kept["heard.json"])["mends"] == mends


@pytest.mark.parametrize("language", ["en", "de", "es"])
def test_captions_in_which_nothing_is_said_are_refused_with_a_reason(
    document: dict[str, Any], language: Language
) -> None:
    for request in (
        ListenRequest(captions=b"\x00\xff", spoken="en", language=language),
        DraftRequest(captions=b"", spoken="en", language=language),
    ):
        (end,) = [one for one in run(request, document) if isinstance(one, EndFrame)]
        assert end.reason == end.findings[-1].message
        assert end.findings[-1].code == "captions-empty"


def test_a_recording_without_a_pattern_becomes_a_draft_with_times_and_questions() -> None:
    frames = run(DraftRequest(captions=CHAIN.encode(), spoken="en"), {})
    told = msgspec.json.decode(files_of(frames)["draft.json"])
    assert [(one["start_s"], one["moves"], one["done"]) for one in told["lines"]] == [
        (2.0, 0, 0),
        (6.0, 1, 1),
        (12.0, 1, 2),
        (20.0, 0, 2),
        (25.0, 1, 3),
    ]
    blanks = told["read"]["blanks"]
    assert [one["key"] for one in blanks] == ["loom"]
    answers = tuple(WordAnswer(key="loom", sentence=at, answer="1 x 9") for at in blanks[0]["sentences"])
    again = files_of(run(DraftRequest(captions=CHAIN.encode(), spoken="en", answers=answers), {}))
    read = msgspec.json.decode(again["draft.json"])["read"]
    assert read["blanks"] == []
    assert read["document"]["loom"]["pegs"] == 9


def test_the_page_sends_the_bytes_of_a_file(studio: Client, document: dict[str, Any]) -> None:
    captions = base64.b64encode("[0:01] größer".encode("latin-1")).decode()
    job = {"do": "draft", "captions": captions, "spoken": "de"}
    told = finish_in(studio, "draft", job, {})
    assert told["state"] == "done"
    draft = studio.get(f"/api/jobs/{told['job']}/files/draft.json").json()
    assert draft["read"]["findings"][0]["code"] == "captions-bad-bytes"
