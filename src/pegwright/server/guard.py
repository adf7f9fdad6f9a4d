"""Who may talk to the studio: its own page, in a browser on this machine, with this run's token."""

from __future__ import annotations

import hmac
import re
import string
from collections.abc import Awaitable, Callable, MutableMapping
from pathlib import Path
from typing import Any
from urllib.parse import unquote_to_bytes

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

TOKEN_HEADER = "x-pegwright-token"
PREVIEW = "/preview/"
START = "/start/"
_POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "font-src 'self'",
        "img-src 'self' data: blob:",
        "media-src blob:",
        "connect-src 'self'",
        "worker-src 'self'",
        "frame-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
        "require-trusted-types-for 'script'",
        "trusted-types svelte-trusted-html",
    )
)
# A lesson's page in a frame has no origin, so it cannot talk to the studio, and no network. It brings its own
# style and script, and names both by their hash.
_PREVIEW_POLICY = "; ".join(
    (
        "sandbox allow-scripts",
        "default-src 'none'",
        "style-src 'unsafe-inline'",
        "script-src 'unsafe-inline'",
        "font-src data:",
        "img-src data:",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'self'",
    )
)
_HEADERS = (
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"permissions-policy", b"camera=(), microphone=(), geolocation=(), usb=()"),
)
_ESCAPE = re.compile(rb"%[0-9A-Fa-f]{0,2}")
_NOT_ESCAPED = frozenset(b"/\\%.-_~" + string.ascii_letters.encode() + string.digits.encode())
_JOB_FILE = re.compile(rb"(?<=/files/)[^/]*$")  # its name may contain folders, which the page escapes
_CONTROL = re.compile(rb"[\x00-\x1f\x7f]")


def guard_app(app: App, token: str, hosts: frozenset[str], page: Path) -> App:
    """Return the application behind a guard.

    Every request must name one of `hosts` as its Host (so no other name can be rebound to this machine), come
    from no other origin, have a path in plain form, and carry the token unless it reads a file of the built
    `page`, a preview or a ticket. A refusal is plain text that says which rule was broken. Every response
    carries the content security policy.
    """

    async def guard(scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await app(scope, receive, send)
            return
        if scope["type"] != "http":  # no websockets, no lifespan
            return

        async def send_with_policy(message: Message) -> None:
            if message["type"] == "http.response.start":
                kept = [(k, v) for k, v in message["headers"] if k.lower() != b"server"]
                message = {
                    **message,
                    "headers": [*kept, *_HEADERS, _policy(scope["path"]), *_freshness(scope["path"])],
                }
            await send(message)

        refused = _refusal(scope, token, hosts, page)
        if refused is None:
            await app(scope, receive, send_with_policy)
            return
        status, reason = refused
        headers = [(b"content-type", b"text/plain; charset=utf-8")]
        await send_with_policy({"type": "http.response.start", "status": status, "headers": headers})
        await send({"type": "http.response.body", "body": reason.encode()})

    return guard


def _refusal(scope: Scope, token: str, hosts: frozenset[str], page: Path) -> tuple[int, str] | None:
    given: dict[str, list[str]] = {}
    for key, value in scope["headers"]:
        given.setdefault(key.decode("latin-1").lower(), []).append(value.decode("latin-1"))
    host = given.get("host", [])
    if len(host) != 1 or host[0].lower() not in hosts:
        return 421, "this is not the address of the studio"
    origins = {f"http://{name}" for name in hosts}
    if any(origin.lower() not in origins for origin in given.get("origin", [])):
        return 403, "another page may not speak to the studio"
    if any(site not in ("same-origin", "none") for site in given.get("sec-fetch-site", [])):
        return 403, "another page may not speak to the studio"
    if not _is_plain(scope.get("raw_path") or scope["path"].encode()):
        return 400, "the address is not written as the page writes it"
    if not _is_open(scope["method"], scope["path"], page):
        tokens = given.get(TOKEN_HEADER, [])
        if len(tokens) != 1 or not hmac.compare_digest(tokens[0].encode(), token.encode()):
            return 401, "open the studio from the address that it printed when it started"
    return None


def _is_plain(raw: bytes) -> bool:
    """Return whether a path has the one form that router, guard and files all read alike.

    The router merges slashes and decodes escapes, so `//api` and `/%61pi` would both reach it as `/api`.
    """
    escapes = _ESCAPE.findall(_JOB_FILE.sub(b"", raw))
    if any(len(escape) < 3 or int(escape[1:], 16) in _NOT_ESCAPED for escape in escapes):
        return False
    path = unquote_to_bytes(raw)
    if not path.startswith(b"/") or _CONTROL.search(path) or b"\\" in path:
        return False
    try:
        path.decode()
    except UnicodeDecodeError:
        return False
    *inner, last = path.split(b"/")[1:]
    return b"" not in inner and not {b".", b".."} & {*inner, last}


def _is_open(method: str, path: str, page: Path) -> bool:
    """Return whether a plain path needs no token: the page, one of its files, a preview, a ticket."""
    if method not in ("GET", "HEAD"):
        return False
    if path.startswith(START):
        return path.count("/") == 2
    if path.startswith(PREVIEW):
        return path.count("/") == 3
    return path == "/" or (page / path[1:]).is_file()


def _policy(path: str) -> tuple[bytes, bytes]:
    policy = _PREVIEW_POLICY if path.startswith(PREVIEW) else _POLICY
    return (b"content-security-policy", policy.encode())


def _freshness(path: str) -> tuple[tuple[bytes, bytes], ...]:
    """Return the cache headers: built files are named by content and never change; the rest is not cached."""
    if path.startswith("/assets/"):
        return ((b"cache-control", b"public, max-age=31536000, immutable"),)
    return ((b"cache-control", b"no-store"),)
