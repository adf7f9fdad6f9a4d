"""The command line: a thin door on the workshop."""

import signal
import sys

__all__ = ["STOPPED", "main"]

STOPPED = 130
"""The exit code after Ctrl-C: 128 and the number of the signal, as shells have it."""


def main(arguments: list[str] | None = None) -> None:
    """Run the command line and exit with 0 fine, 1 findings, 2 could not run, 130 stopped.

    Everything else is loaded in here, so that Ctrl-C is understood from the first moment. Never shows a stack
    trace.
    """
    given = sys.argv[1:] if arguments is None else arguments
    try:
        from pegwright.cli.commands import run  # noqa: PLC0415 - loading takes time, and may be stopped

        code = run(given)
    except KeyboardInterrupt:
        signal.signal(signal.SIGINT, signal.SIG_DFL)  # who presses twice does not wait for the end
        reason = "stopped; nothing is left half written"
        if "--json" in given:
            print(f'{{"ok": false, "reason": "{reason}", "findings": []}}', flush=True)
        print(reason, file=sys.stderr, flush=True)
        code = STOPPED
    sys.exit(code)
