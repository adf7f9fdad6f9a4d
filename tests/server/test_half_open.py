"""A connection on which no whole request comes is closed; one that waits for its answer is not."""

from __future__ import annotations

import asyncio
import socket
import threading
from collections.abc import Iterator
from typing import Any

import pytest
import uvicorn

from pegwright.server.half_open import PatientProtocol

SLOW_S = 1.5


class Hasty(PatientProtocol):
    """The same, with less patience than the answer takes."""

    wait_s = 0.5


async def answer_slowly(scope: Any, receive: Any, send: Any) -> None:
    while (await receive()).get("more_body"):
        pass
    await asyncio.sleep(SLOW_S)
    await send({"type": "http.response.start", "status": 204, "headers": []})
    await send({"type": "http.response.body", "body": b""})


@pytest.fixture(scope="module")
def address() -> Iterator[tuple[str, int]]:
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        listening.listen(8)
        server = uvicorn.Server(
            uvicorn.Config(answer_slowly, http=Hasty, lifespan="off", log_level="critical", ws="none")
        )
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
        thread.start()
        yield listening.getsockname()
        server.should_exit = True
        thread.join(30)


def all_that_comes(address: tuple[str, int], *parts: bytes) -> bytes:
    with socket.create_connection(address, timeout=30) as line:
        for part in parts:
            line.sendall(part)
        return b"".join(iter(lambda: line.recv(4096), b""))


@pytest.mark.parametrize(
    "parts",
    [
        (),
        (b"GET / HTTP/1.1\r\nHost: a",),
        (b"GET / HTTP/1.1\r\n", b"Host: a\r\n"),
    ],
)
def test_a_request_that_is_never_finished_is_given_up(
    address: tuple[str, int], parts: tuple[bytes, ...]
) -> None:
    assert all_that_comes(address, *parts).startswith(b"HTTP/1.1 408 ")


def test_a_request_has_ten_seconds() -> None:
    assert PatientProtocol.wait_s == 10


def test_a_body_that_never_comes_ends_the_connection(address: tuple[str, int]) -> None:
    begun = b"PUT / HTTP/1.1\r\nHost: a\r\nContent-Length: 9\r\n\r\nab"
    assert b" 204 " not in all_that_comes(address, begun)


def test_an_answer_may_take_longer_than_a_request(address: tuple[str, int]) -> None:
    whole = b"PUT / HTTP/1.1\r\nHost: a\r\nConnection: close\r\nContent-Length: 2\r\n\r\nab"
    assert all_that_comes(address, whole).startswith(b"HTTP/1.1 204 ")


def test_the_second_request_of_a_connection_is_waited_for_like_the_first(address: tuple[str, int]) -> None:
    whole = b"GET / HTTP/1.1\r\nHost: a\r\n\r\n"
    came = all_that_comes(address, whole + b"GET / HTTP/1.1\r\nHos")
    assert came.startswith(b"HTTP/1.1 204 ")
    assert came.count(b"HTTP/1.1 204 ") == 1
