"""The browser that the studio opens gets its key by a ticket for one use; its command line holds none."""

from __future__ import annotations

import socket
import threading
from functools import partial
from pathlib import Path
from typing import Any

import httpx
import pytest

from pegwright.server import make_app, run
from tests.server.conftest import HOST, TOKEN, Client


@pytest.fixture
def ticketed(portal: Any, folder: Path, page: Path) -> Client:
    return Client(make_app(folder, TOKEN, frozenset({HOST}), page, ticket="once-only"), portal)


def test_the_ticket_leads_to_the_key_once(ticketed: Client) -> None:
    bare = {"x-pegwright-token": "none"}
    assert ticketed.ask("HEAD", "/start/once-only", headers=bare).status_code == 410, (
        "a look does not use it up"
    )
    first = ticketed.ask("GET", "/start/once-only", headers=bare)
    assert (first.status_code, first.headers["location"]) == (303, f"/#{TOKEN}")
    assert first.headers["cache-control"] == "no-store"
    again = ticketed.ask("GET", "/start/once-only", headers=bare)
    assert again.status_code == 410
    assert TOKEN not in again.text
    assert "location" not in again.headers


@pytest.mark.parametrize("path", ["/start/", "/start/another", "/start/once-onl", "/start/once-only/"])
def test_any_other_ticket_leads_nowhere(ticketed: Client, path: str) -> None:
    found = ticketed.ask("GET", path, headers={"x-pegwright-token": "none"})
    assert found.status_code in (401, 410)
    assert "location" not in found.headers


def test_a_ticket_is_no_key_for_another_page(ticketed: Client) -> None:
    elsewhere = {"x-pegwright-token": "none", "origin": "http://elsewhere.example"}
    assert ticketed.ask("GET", "/start/once-only", headers=elsewhere).status_code == 403
    assert ticketed.get("/start/once-only").status_code == 303, "it was not used up"


def test_the_browser_is_started_without_the_key(
    folder: Path, page: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What `webbrowser` is given comes to the page with the key that was printed."""
    opened: list[str] = []
    printed: list[str] = []
    there = threading.Event()

    class Served:
        def __init__(self, config: Any) -> None:
            self.app = config.app

        def run(self, sockets: list[socket.socket]) -> None:
            assert there.wait(30), "no browser was opened"

    def open_browser(address: str) -> None:
        opened.append(address)
        there.set()

    monkeypatch.setattr(run.uvicorn, "Server", Served)
    monkeypatch.setattr(run.webbrowser, "open", open_browser)
    monkeypatch.setattr(run, "make_app", partial(make_app, page=page))
    run.serve(folder / "pieces", say=printed.append)
    key = httpx.URL(printed[0]).fragment
    assert len(key) >= 32
    assert key not in opened[0]
    assert httpx.URL(opened[0]).path.startswith("/start/")
