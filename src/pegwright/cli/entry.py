"""Where the command line starts and ends: exit codes, and Ctrl-C from the first moment."""

import os
import signal
import sys
from contextlib import suppress

__all__ = ["STOPPED", "main"]

STOPPED = 130
"""The exit code after Ctrl-C: 128 and the number of the signal, as shells have it."""


def main(arguments: list[str] | None = None) -> None:
    """Run the command line and exit with 0 fine, 1 findings, 2 could not run, 130 stopped.

    Everything else is loaded in here, so that Ctrl-C is understood from the first moment. Never shows a stack
    trace.
    """
    given = sys.argv[1:] if arguments is None else arguments
    if sys.stdout is None:  # closed by the caller
        sys.exit(_say_output_fails("it is closed"))
    try:
        from pegwright.cli.commands import run  # noqa: PLC0415 - loading takes time, and may be stopped

        code = run(given)
        sys.stdout.flush()
        if arguments is None:  # all is said: who stops it now changes nothing
            signal.signal(signal.SIGINT, signal.SIG_IGN)
    except OSError as error:  # whatever else the system refuses, `run` has told
        with suppress(OSError, ValueError):  # else the interpreter tries again at the end, and complains
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = _say_output_fails(error.strerror or type(error).__name__)
    except KeyboardInterrupt:
        signal.signal(signal.SIGINT, signal.SIG_DFL)  # who presses twice does not wait for the end
        reason = "stopped; nothing is left half written"
        if "--json" in given:
            print(f'{{"ok": false, "reason": "{reason}", "findings": []}}', flush=True)
        print(reason, file=sys.stderr, flush=True)
        code = STOPPED
    sys.exit(code)


def _say_output_fails(reason: str) -> int:
    """Say on the error stream, if there is one, that nothing can be printed; return the exit code."""
    with suppress(OSError, AttributeError):
        sys.stderr.write(f"the output cannot be written: {reason}\n")
        sys.stderr.flush()
    return 2
