"""The server, spoken to in process: no port is opened."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from anyio.from_thread import BlockingPortal, start_blocking_portal
from httpx import ASGITransport, AsyncClient, Response

from pegwright.server import make_app
from pegwright.server.workers import Workers

HOST = "127.0.0.1:4711"
TOKEN = "the-token-of-this-run"


class Client:
    """Asks the studio as its own page would, unless told otherwise."""

    def __init__(self, app: Any, portal: BlockingPortal) -> None:
        self.app = app
        self.portal = portal

    def ask(self, method: str, path: str, *, headers: Any = None, **more: Any) -> Response:
        async def asked() -> Response:
            own = {"x-pegwright-token": TOKEN, "origin": f"http://{HOST}"}
            given = {k.decode() if isinstance(k, bytes) else k: v for k, v in (headers or {}).items()}
            own.update(given)
            async with AsyncClient(
                transport=ASGITransport(app=self.app), base_url=f"http://{HOST}"
            ) as client:
                return await client.request(method, path, headers=own, **more)

        return self.portal.call(asked)

    def get(self, path: str, **more: Any) -> Response:
        return self.ask("GET", path, **more)

    def post(self, path: str, json: Any, **more: Any) -> Response:
        return self.ask("POST", path, json=json, **more)

    def put(self, path: str, json: Any, **more: Any) -> Response:
        return self.ask("PUT", path, json=json, **more)


@pytest.fixture(scope="session")
def portal() -> Iterator[BlockingPortal]:
    with start_blocking_portal() as opened:
        yield opened


@pytest.fixture
def page(tmp_path: Path) -> Path:
    """A page that is built, as far as the server can tell."""
    folder = tmp_path / "page"
    (folder / "assets").mkdir(parents=True)
    (folder / "index.html").write_text("<!doctype html><title>page</title>")
    (folder / "assets" / "a-1.js").write_text("export {}")
    return folder


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "pieces"
    made.mkdir()
    return made


@pytest.fixture(scope="session")
def workers() -> Iterator[Workers]:
    """Processes that all studios of the tests share, since each takes a second to start."""
    shared = Workers()
    yield shared
    shared.close()


@pytest.fixture
def studio(portal: BlockingPortal, folder: Path, page: Path, workers: Workers) -> Client:
    return Client(make_app(folder, TOKEN, frozenset({HOST}), page, workers), portal)


@pytest.fixture
def chain() -> dict[str, object]:
    """A plain chain of seven bands that holds."""
    from msgspec.json import decode

    from pegwright.pattern import write_pattern
    from pegwright.workshop import starter_pattern

    return dict(decode(write_pattern(starter_pattern("Slack chain", pegs=7))))
