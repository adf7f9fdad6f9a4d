"""Start the studio: on loopback only, on a free port, with a token of its own, and open the browser."""

from __future__ import annotations

import secrets
import socket
import threading
import webbrowser
import zlib
from collections.abc import Callable
from pathlib import Path

import uvicorn

from pegwright.server.app import make_app
from pegwright.server.guard import START
from pegwright.server.half_open import PatientProtocol
from pegwright.server.workers import Workers

LOOPBACK = "127.0.0.1"


def serve(folder: Path, *, port: int = 0, browser: bool = True, say: Callable[[str], None] = print) -> None:
    """Serve the studio on a folder until it is stopped. `say` is told the address once it can be opened.

    The token stands in the address behind `#`, where no browser sends it on; the browser that is opened here
    fetches it with a ticket for one use.

    Raises:
        FileNotFoundError: the front end is not built.
        OSError: the port is taken, or the folder cannot be made.
    """
    folder.mkdir(parents=True, exist_ok=True)
    token = secrets.token_urlsafe(24)
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as listening:
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        _bind(listening, folder, port)
        port = listening.getsockname()[1]
        hosts = frozenset({f"{LOOPBACK}:{port}", f"localhost:{port}"})
        workers = Workers()
        workers.prepare()
        ticket = secrets.token_urlsafe(24)
        app = make_app(folder, token, hosts, workers=workers, ticket=ticket)
        config = uvicorn.Config(
            app,
            http=PatientProtocol,
            log_level="error",
            access_log=False,
            server_header=False,
            lifespan="off",
            ws="none",
        )
        listening.listen(64)  # from here on the browser is answered as soon as the server runs
        address = f"http://{LOOPBACK}:{port}"
        say(f"{address}/#{token}")
        if browser:  # its command line can be read by others: it gets no key
            threading.Thread(target=webbrowser.open, args=(f"{address}{START}{ticket}",), daemon=True).start()
        try:
            uvicorn.Server(config).run(sockets=[listening])
        finally:
            workers.close()


def _bind(listening: socket.socket, folder: Path, port: int) -> None:
    """Bind to the port; without one, to the folder's own, or any free one where that is taken.

    A browser keeps what it remembers by host and port: only a studio that comes back at the same port finds
    the edits that a page could not save when the last one stopped.
    """
    if not port:
        try:
            listening.bind((LOOPBACK, usual_port(folder)))
        except OSError:
            pass
        else:
            return
    listening.bind((LOOPBACK, port))


def usual_port(folder: Path) -> int:
    """Return the port that a folder's studio asks for first: a dynamic port (RFC 6335), by its path."""
    first, count = 49152, 16384
    return first + zlib.crc32(str(folder.resolve()).encode()) % count
