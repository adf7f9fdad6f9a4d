"""Start the studio, on loopback only, on a free port, with its own token, and open the browser."""

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
    """Serve the studio on a folder until it is stopped. `say` gets the address as soon as it can be opened.

    The token is in the fragment of the address, which browsers never send. The browser opened here gets it
    with a ticket that works once.

    Raises:
        FileNotFoundError: the front end has not been built.
        OSError: the port is taken, or the folder cannot be created.
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
        listening.listen(64)  # from here on, requests wait until the server runs
        address = f"http://{LOOPBACK}:{port}"
        say(f"{address}/#{token}")
        if browser:  # other users can read its command line, so it gets no key
            threading.Thread(target=webbrowser.open, args=(f"{address}{START}{ticket}",), daemon=True).start()
        try:
            uvicorn.Server(config).run(sockets=[listening])
        finally:
            workers.close()


def _bind(listening: socket.socket, folder: Path, port: int) -> None:
    """Bind to the port; without one, to the folder's usual port, or any free one if that is taken.

    Browsers store data by host and port: only a studio that returns on the same port finds the edits that a
    page could not save when the last one stopped.
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
    """Return the port that a folder's studio tries first: a dynamic port (RFC 6335) chosen by its path."""
    first, count = 49152, 16384
    return first + zlib.crc32(str(folder.resolve()).encode()) % count
