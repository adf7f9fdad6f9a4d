"""Who may speak to the studio: its own page, in a browser on this machine, with this run's token."""

from __future__ import annotations

import hmac
from collections.abc import Awaitable, Callable, MutableMapping
from typing import Any

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

TOKEN_HEADER = "x-pegwright-token"
PREVIEW = "/preview/"
_POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "font-src 'self'",
        "img-src 'self' data: blob:",
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
# A page of a lesson, shown in a frame: of no origin, so that it may not speak to the studio, and shut off
# from any network. It brings its own style and script, and names both by their hash.
_PREVIEW_POLICY = "; ".join(
    (
        "sandbox allow-scripts",
        "default-src 'none'",
        "style-src 'unsafe-inline'",
        "script-src 'unsafe-inline'",
        "font-src data:",
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


def guarded(app: App, token: str, hosts: frozenset[str]) -> App:
    """Return the application behind its guard.

    Every request must name one of `hosts` as its Host (so no other name can be rebound to this machine),
    come from no other origin, and, outside the page itself, carry the token. A refusal is plain text and
    says which of the three it was. Every answer carries the content policy.
    """

    async def guard(scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await app(scope, receive, send)
            return
        if scope["type"] != "http":  # there is nothing here but pages and answers
            return

        async def send_with_policy(message: Message) -> None:
            if message["type"] == "http.response.start":
                kept = [(k, v) for k, v in message["headers"] if k.lower() != b"server"]
                message = {
                    **message,
                    "headers": [*kept, *_HEADERS, _policy(scope["path"]), *_freshness(scope["path"])],
                }
            await send(message)

        refused = _refusal(scope, token, hosts)
        if refused is None:
            await app(scope, receive, send_with_policy)
            return
        status, reason = refused
        headers = [(b"content-type", b"text/plain; charset=utf-8")]
        await send_with_policy({"type": "http.response.start", "status": status, "headers": headers})
        await send({"type": "http.response.body", "body": reason.encode()})

    return guard


def _refusal(scope: Scope, token: str, hosts: frozenset[str]) -> tuple[int, str] | None:
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
    if scope["path"].startswith("/api/"):
        tokens = given.get(TOKEN_HEADER, [])
        if len(tokens) != 1 or not hmac.compare_digest(tokens[0].encode(), token.encode()):
            return 401, "open the studio from the address that it printed when it started"
    return None


def _policy(path: str) -> tuple[bytes, bytes]:
    policy = _PREVIEW_POLICY if path.startswith(PREVIEW) else _POLICY
    return (b"content-security-policy", policy.encode())


def _freshness(path: str) -> tuple[tuple[bytes, bytes], ...]:
    """Built files are named after what they hold and never change; all else is asked for anew."""
    if path.startswith("/assets/"):
        return ((b"cache-control", b"public, max-age=31536000, immutable"),)
    return ((b"cache-control", b"no-store"),)
