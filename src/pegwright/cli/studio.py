"""The command that opens the studio."""

from __future__ import annotations

from pathlib import Path

from pegwright.cli.shared import cannot, reason
from pegwright.cli.terminal import FINE


def studio(folder: Path = Path(), *, port: int = 0, browser: bool = True) -> int:
    """Open the studio, where pieces are designed at the bench in a browser; nothing leaves this machine.

    Parameters
    ----------
    folder
        where the pieces lie.
    port
        the port to listen on; without it, a free one.
    browser
        open the browser.
    """
    from pegwright.server import serve  # noqa: PLC0415 - the other commands start without a server

    if not 0 <= port <= 65535:
        return cannot("a port is a number from 0 (a free one) to 65535", json=False)
    try:
        serve(folder, port=port, browser=browser, say=say_address)
    except FileNotFoundError as error:
        return cannot(f"the studio's page is not built ({error}); run: make frontend", json=False)
    except OSError as error:
        return cannot(f"the studio cannot be opened: {reason(error)}", json=False)
    return FINE


def say_address(address: str) -> None:
    """Print where the studio is, at once and in one piece, so that it can be read by another program."""
    print(address, flush=True)
