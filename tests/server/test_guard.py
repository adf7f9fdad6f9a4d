"""Who may speak to the studio.

DNS rebinding and cross-site writes: the Host and Origin checks of the OWASP Cross-Site Request Forgery
Prevention Cheat Sheet ("Verifying Origin With Standard Headers"); Fetch Metadata (W3C) as the third line.
"""

from __future__ import annotations

from pathlib import Path
from urllib.parse import unquote

import httpx
import pytest
from anyio.from_thread import BlockingPortal

from pegwright.server import make_app
from pegwright.server.guard import Message
from pegwright.server.schema import api_schema
from tests.server.conftest import HOST, Client


def test_its_own_page_is_answered(studio: Client) -> None:
    """The page of this run, with its token, is answered."""
    assert studio.get("/api/pieces").status_code == 200


@pytest.mark.parametrize(
    "host", ["evil.example", "127.0.0.1", "127.0.0.1:4712", "127.0.0.1:4711.evil.example", ""]
)
def test_no_other_name_reaches_the_studio(studio: Client, host: str) -> None:
    """A name rebound to this machine is refused, for the page as for the routes."""
    for path in ("/", "/api/pieces"):
        assert studio.get(path, headers={"host": host}).status_code == 421


@pytest.mark.parametrize(
    "origin", ["http://evil.example", "null", "https://127.0.0.1:4711", "http://127.0.0.1"]
)
def test_no_other_page_may_write(studio: Client, folder: Path, origin: str, chain: dict[str, object]) -> None:
    """A request from another origin is refused even with the token, and nothing is written."""
    answer = studio.post("/api/pieces", {"document": chain}, headers={"origin": origin})
    assert answer.status_code == 403
    assert list(folder.iterdir()) == []


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_fetch_metadata_is_heeded(studio: Client, site: str) -> None:
    """A browser that says that another site asks is believed."""
    assert studio.get("/api/pieces", headers={"sec-fetch-site": site}).status_code == 403


@pytest.mark.parametrize("token", ["", "the-token-of-this-ru", "the-token-of-this-run-", "ünicode"])
def test_no_token_no_answer(studio: Client, token: str) -> None:
    """Every route asks for the whole token of this run."""
    for path in ("/api/pieces", "/api/starts", "/api/schema", "/api/nothing"):
        assert studio.get(path, headers={b"x-pegwright-token": token.encode()}).status_code == 401


def test_every_answer_carries_the_policy(studio: Client) -> None:
    """Pages, answers and refusals forbid foreign scripts, frames and guessing of types."""
    for path in ("/", "/assets/a-1.js", "/api/pieces", "/api/nothing"):
        answer = studio.get(path)
        policy = answer.headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
        assert "frame-ancestors 'none'" in policy
        assert "media-src blob:;" in policy  # a recording plays from the page's own memory, from nowhere else
        assert answer.headers["x-content-type-options"] == "nosniff"
    assert (
        "default-src 'none'" in studio.get("/", headers={"host": "evil"}).headers["content-security-policy"]
    )


def test_the_page_never_hands_out_the_token(studio: Client) -> None:
    """Whoever reaches the page without the address that was printed learns nothing from it."""
    answer = studio.get("/")
    assert answer.status_code == 200
    assert "the-token" not in answer.text + str(answer.headers)


def test_an_unbuilt_page_is_said_at_the_start(folder: Path, tmp_path: Path) -> None:
    """Without the built page the studio does not start."""
    with pytest.raises(FileNotFoundError):
        make_app(folder, "t", frozenset({HOST}), tmp_path / "nowhere")


def test_two_host_lines_are_refused(portal: BlockingPortal, studio: Client) -> None:
    """A request with two Host lines is taken for none (RFC 9112 §3.2)."""

    async def asked() -> int:
        transport = httpx.ASGITransport(app=studio.app)
        async with httpx.AsyncClient(transport=transport, base_url=f"http://{HOST}") as client:
            answer = await client.get("/", headers=[("host", HOST), ("host", "evil.example")])
            return answer.status_code

    assert portal.call(asked) == 421


WAYS = [
    lambda path: "/" + path,
    lambda path: "//" + path,
    lambda path: "///" + path,
    lambda path: path.replace("/api", "/api/", 1),
    lambda path: path.replace("/api/", "//api//", 1),
    lambda path: path + "//",
    lambda path: "/." + path,
    lambda path: "/./" + path[1:],
    lambda path: "/x/.." + path,
    lambda path: "/assets/.." + path,
    lambda path: "/preview/../" + path[1:],
    lambda path: "/preview/a/b/../../.." + path,
    lambda path: path.replace("/api", "/%61pi", 1),
    lambda path: path.replace("/api", "/%61%70%69", 1),
    lambda path: path.replace("/api", "/ap%69", 1),
    lambda path: path.replace("/api/", "/api%2f", 1),
    lambda path: path.replace("/api/", "/api%2F", 1),
    lambda path: path.replace("/api/", "/api%5c", 1),
    lambda path: path.replace("/api/", "/api\\", 1),
    lambda path: "/%2e" + path,
    lambda path: "/%2e%2e" + path,
    lambda path: "/%2f" + path[1:],
    lambda path: "%2f" + path,
    lambda path: path.replace("/api", "/API", 1),
    lambda path: path.replace("/api", "/Api", 1),
    lambda path: path + "%00",
    lambda path: "/%00" + path,
    lambda path: path.replace("/api", "/api%00", 1),
    lambda path: path.replace("/api", "/api%20", 1),
    lambda path: path.replace("/api", "/%2561pi", 1),
    lambda path: path.replace("/api", "/api;x=1", 1),
    lambda path: path + "/",
    lambda path: path,
]


def routes() -> list[tuple[str, str]]:
    """Return every method and path of the schema, its names filled in."""
    import re

    paths = api_schema()["paths"]
    return [
        (method.upper(), re.sub(r"\{[^}]*\}", "ebb", path))
        for path, methods in paths.items()
        for method in methods
        if method in ("get", "put", "post", "delete")
    ]


@pytest.mark.parametrize(("method", "path"), routes())
def test_no_way_of_writing_a_path_goes_round_the_key(
    portal: BlockingPortal, studio: Client, folder: Path, method: str, path: str
) -> None:
    """`//api/pieces` was answered without the token: the guard and the router read it differently."""
    (folder / "ebb.json").write_text("{}")
    for way in WAYS:
        raw = way(path).encode()

        async def status(raw: bytes = raw) -> int:
            answered: list[int] = []

            async def send(message: Message) -> None:
                answered.append(message.get("status", 0))

            async def receive() -> Message:
                return {"type": "http.request", "body": b"{}", "more_body": False}

            scope = {
                "type": "http",
                "asgi": {"version": "3.0"},
                "http_version": "1.1",
                "method": method,
                "scheme": "http",
                "path": unquote(raw.decode()),
                "raw_path": raw,
                "query_string": b"",
                "headers": [(b"host", HOST.encode()), (b"content-type", b"application/json")],
                "client": ("127.0.0.1", 1),
                "server": ("127.0.0.1", 4711),
            }
            await studio.app(scope, receive, send)
            return answered[0]

        assert portal.call(status) in (400, 401), raw
    assert (folder / "ebb.json").read_text() == "{}"


@pytest.mark.parametrize("path", ["/%00", "/%ff", "/a%00b", "/assets/%00", "/preview/%00/x.html"])
def test_a_path_that_no_file_can_have_is_refused(studio: Client, path: str) -> None:
    """`/%00` ended in an error inside."""
    assert studio.get(path).status_code == 400


def test_a_name_with_a_space_and_an_accent_is_plain(studio: Client, chain: dict[str, object]) -> None:
    """Escapes that a name needs are no other way of writing it."""
    studio.post("/api/pieces", {"document": chain})
    assert studio.get("/api/pieces/H%C3%A9ring%20tail").status_code == 404
