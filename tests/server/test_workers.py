"""Pieces are worked in processes: what takes too long is ended, and keeps nobody waiting but its own page."""

from __future__ import annotations

import json
import threading
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from pegwright.pattern import write_pattern
from pegwright.server import shelf
from pegwright.server.line_requests import RecentWork, WorkDocument, answer_request
from pegwright.server.workers import OvertakenError, TooMuchError, Workers
from pegwright.workshop import report_nothing, starter_pattern
from tests.server.conftest import Client

Document = dict[str, Any]


def work_of(document: Document) -> WorkDocument:
    return WorkDocument(json.dumps(document).encode(), "en")


@pytest.fixture(scope="module")
def endless() -> bytes:
    """A piece that takes minutes: a chain of thousands on a loom as long."""
    return write_pattern(starter_pattern("Mole", pegs=9_000))


@pytest.fixture(scope="module")
def own_workers() -> Iterator[Workers]:
    """Processes that these tests may spoil."""
    made = Workers(most=2)
    yield made
    made.close()


def test_a_process_answers_as_the_line_does(workers: Workers, chain: Document) -> None:
    request = work_of(chain)
    expected = answer_request(request, RecentWork(), report_nothing)
    assert workers.ask(request, "page", 1) == expected
    assert b'"readable":true' in expected.data


def test_newer_work_overtakes_older(workers: Workers, chain: Document) -> None:
    """Work that the page no longer waits for is dropped, also when it comes late."""
    workers.ask(work_of({**chain, "title": "newer"}), "overtaken page", 7)
    with pytest.raises(OvertakenError):
        workers.ask(work_of(chain), "overtaken page", 6)
    assert workers.ask(work_of(chain), "other page", 1).state == "done"


def test_what_takes_too_long_is_ended_and_replaced(
    own_workers: Workers, chain: Document, endless: bytes
) -> None:
    """One page's bad piece ends with a refusal; another page's was answered in the meantime."""
    refused: list[type[Exception]] = []

    def ask() -> None:
        try:
            own_workers.ask(WorkDocument(endless, "en"), "bad page", 1)
        except TooMuchError as error:
            refused.append(type(error))

    # The good page's process is up first: starting it may take as long as the bad piece does.
    assert own_workers.ask(work_of(chain), "good page", 0).state == "done"
    asking = threading.Thread(target=ask)
    asking.start()
    for _ in range(6000):
        if any(each.slot == "bad page" for each in own_workers._workers):
            break
        time.sleep(0.01)
    bad = next(each for each in own_workers._workers if each.slot == "bad page")
    for serial in range(1, 4):
        assert own_workers.ask(work_of({**chain, "notes": f"{serial}"}), "good page", serial).state == "done"
        assert bad.busy, "answered while the bad piece was still under way"
    with own_workers._changed:
        bad.until_s = 0.0  # its time is over
    asking.join(60)
    assert refused == [TooMuchError]
    assert own_workers.ask(work_of(chain), "bad page", 2).state == "done", "the process was replaced"


@pytest.fixture
def moles(workers: Workers, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """From now on every piece with a mole in it takes too long; the list grows with each."""
    met: list[str] = []

    def ask(request: Any, *more: Any, **named: Any) -> Any:
        if b"Mole" in (getattr(request, "document", b"") or getattr(request, "data", b"")):
            met.append("mole")
            time.sleep(0.02)  # as if it took longer than its limit
            raise TooMuchError
        return Workers.ask(workers, request, *more, **named)

    monkeypatch.setattr(workers, "ask", ask)
    return met


@pytest.mark.usefixtures("moles")
def test_a_page_is_told_that_its_piece_asks_too_much(studio: Client, chain: Document) -> None:
    """422 with a sentence in the language of the page, and the next edit is answered."""
    answer = studio.post("/api/work?language=de", {"document": {**chain, "title": "Mole"}})
    assert (answer.status_code, answer.json()["reason"][:12]) == (422, "dieses Stück")
    assert studio.post("/api/work", {"document": chain}).json()["holds"] is True


def test_memory_is_bounded() -> None:
    """A child process refuses more memory than it is given, and says so instead of taking the machine's."""
    from subprocess import run
    from sys import executable

    code = (
        "from pegwright.server.child_process import limit_memory as l; l(500_000_000); bytearray(600_000_000)"
    )
    done = run([executable, "-c", code], capture_output=True, text=True, check=False, timeout=60)
    assert "MemoryError" in done.stderr


def test_a_process_that_dies_is_replaced(own_workers: Workers, chain: Document) -> None:
    own_workers.ask(work_of(chain), "page", 1)
    for worker in own_workers._workers:
        worker.process.kill()
        worker.process.wait()
    assert own_workers.ask(work_of(chain), "page", 2).state == "done"


def test_bad_files_on_the_shelf_take_seconds_once(
    studio: Client, folder: Path, chain: Document, moles: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Twenty files that take long each: the shelf answers within its bound, and what it knows it keeps."""
    monkeypatch.setattr(shelf, "SHELF_S", 0.1)
    for number in range(20):
        (folder / f"bad-{number}.json").write_text(json.dumps({**chain, "title": "Mole"}))
    assert len(studio.get("/api/pieces").json()["pieces"]) == 20
    assert 0 < len(moles) < 20, "the rest is looked at the next time"
    monkeypatch.setattr(shelf, "SHELF_S", 60.0)
    (folder / "good.json").write_text(json.dumps(chain))
    for _ in range(2):
        found = {piece["name"]: piece for piece in studio.get("/api/pieces").json()["pieces"]}
    assert len(moles) == 20, "each is looked at once"
    assert found["good"]["bands"] == 7
    assert found["bad-3"]["readable"] is False
