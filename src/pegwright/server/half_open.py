"""Close connections whose request never arrives in full."""

from __future__ import annotations

import asyncio
from typing import Any

import h11
from uvicorn.protocols.http.h11_impl import H11Protocol

__all__ = ["PatientProtocol"]

_TIMED_OUT = b"HTTP/1.1 408 Request Timeout\r\nConnection: close\r\nContent-Length: 0\r\n\r\n"


class PatientProtocol(H11Protocol):
    """uvicorn's HTTP/1.1 protocol, with a limit on how long a request may take to arrive.

    If no whole request has come within `wait_s`, the connection gets a 408 (RFC 9110, 15.5.9) and is closed.
    The limit covers the whole request, so that a byte now and then does not extend it, but not the response.
    """

    wait_s = 10.0

    def connection_made(self, transport: Any) -> None:
        """Start waiting for a request."""
        super().connection_made(transport)
        self._late: asyncio.TimerHandle | None = None
        self._watch()

    def data_received(self, data: bytes) -> None:
        """Read data; the wait ends with the last byte of a request."""
        super().data_received(data)
        self._watch()

    def connection_lost(self, exc: Exception | None) -> None:
        """Stop waiting."""
        self._stop()
        super().connection_lost(exc)

    def _watch(self) -> None:
        if self.conn.their_state not in (h11.IDLE, h11.SEND_BODY):
            self._stop()
        elif self._late is None:
            self._late = self.loop.call_later(self.wait_s, self._give_up)

    def _stop(self) -> None:
        if self._late is not None:
            self._late.cancel()
            self._late = None

    def _give_up(self) -> None:
        self._late = None
        if self.conn.their_state not in (h11.IDLE, h11.SEND_BODY) or self.transport.is_closing():
            return
        if self.conn.our_state is h11.IDLE:
            self.transport.write(_TIMED_OUT)
        self.transport.close()
