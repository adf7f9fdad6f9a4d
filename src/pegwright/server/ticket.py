"""How the browser that the studio opens gets the key: by a ticket that works once.

Every user of the machine can read a command line. So the browser is started with a ticket, and its first use
is redirected to the page with the key; afterwards the ticket is worthless.
"""

from __future__ import annotations

import hmac

from pegwright.server.guard import START, App, Receive, Scope, Send

__all__ = ["admit_once"]

_USED = b"This address was for one use. Open the one that the studio printed when it started."


def admit_once(app: App, ticket: str, token: str) -> App:
    """Return the application with a route `/start/TICKET` that leads once to the page with its key.

    Any other ticket, and this one when used again, gets 410 Gone (RFC 9110, 15.5.11).
    """
    left = [ticket]

    async def admit(scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http" or not scope["path"].startswith(START):
            await app(scope, receive, send)
            return
        given = scope["path"].removeprefix(START)
        good = scope["method"] == "GET" and any(
            hmac.compare_digest(given.encode(), one.encode()) for one in left
        )
        status, headers, body = 410, [(b"content-type", b"text/plain; charset=utf-8")], _USED
        if good:
            left.clear()
            status, headers, body = 303, [(b"location", f"/#{token}".encode())], b""
        await send({"type": "http.response.start", "status": status, "headers": headers})
        await send({"type": "http.response.body", "body": body})

    return admit
