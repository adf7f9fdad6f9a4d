"""The list of commands, and how each of them ends. A command is loaded when it is called.

Each reads, calls the workshop, prints, and returns its exit code.
"""

from __future__ import annotations

import tempfile
import traceback
from collections.abc import Sequence

from cyclopts import App
from cyclopts.exceptions import CycloptsError

from pegwright import __version__
from pegwright.cli.shared import Stop, cannot, reason
from pegwright.cli.terminal import FINE
from pegwright.finding import RefusedError

COMMANDS = {
    "new": ("documents:new", "Write a first pattern to change: a plain chain that holds."),
    "convert": (
        "documents:convert_",
        "Write a pattern as plain text or as JSON, whichever the new name asks for.",
    ),
    "read": ("reading:read_", "Read what a maker wrote, or a printed lesson, and make the pattern of it."),
    "listen": (
        "listening:listen_",
        "Lay a recording beside its lesson: when each chapter begins, and what it says otherwise.",
    ),
    "check": ("pieces:check", "Work the pattern, prove every band, and say all that was found."),
    "show": ("pieces:show", "Print every move in order, one line each."),
    "supplies": (
        "pieces:supplies",
        "Count bands, clips and tools, and weigh the heaps; with a stash, the packs to buy and their cost.",
    ),
    "lesson": (
        "lessons:lesson_",
        "Write everything a teacher hands out, films and puts on a screen into a folder.",
    ),
    "picture": (
        "picture:picture_",
        "Bring the piece to rest and picture it from the front, the back, the side or on a wrist.",
    ),
    "review": (
        "lessons:review_",
        "Read a pattern and its lesson as a technical editor would, and say all that was found.",
    ),
    "mat": (
        "mat:mat_",
        "Make a mat of a picture, in the colours you have, every band proved held, to be worked row by row.",
    ),
    "mend": (
        "mend:mend_",
        "Find the smallest changes that make a piece hold, each proved, and write the one you take.",
    ),
    "plan": (
        "plan:plan_",
        "Propose working orders for bands that are laid, each proved to hold, and write the one you take.",
    ),
    "rehearse": (
        "rehearse:rehearse_",
        "Make every likely slip of a maker at every step, and say where it goes wrong and where to look.",
    ),
    "fit": (
        "fitting:fit_",
        "Bring the piece to rest, pull at it, say which wrists it suits, and what would make it fit yours.",
    ),
    "calibrate": (
        "calibrate:calibrate_",
        "Find out from a ruler, scales and a few weights what your bands are like, and how sure that is.",
    ),
    "variants": (
        "variants:variants_",
        "Make the same piece in other sizes, colours, bands and looms, and for the other hand, each proved.",
    ),
    "atlas": (
        "atlas:atlas_",
        "Measure every technique of the atlas and show them on one page, to choose one by its numbers.",
    ),
    "batch": (
        "batch:batch_",
        "Make lessons, pictures and patterns of many pieces, sizes, colourways, languages and hands at once.",
    ),
    "studio": (
        "studio:studio",
        "Open the studio, where pieces are designed at the bench in a browser; nothing leaves this machine.",
    ),
    "schema": ("documents:schema_", "Print the JSON Schema of the pattern document (always JSON)."),
    "demo": ("demo:demo_", "Run the main job on the built-in pieces and say what was made and where."),
}
"""Each command by name: where it stands under `pegwright.cli`, and what it does, as its docstring says."""

app = App(
    name="pegwright",
    version=__version__,
    help="Design elastic-band pieces on a peg loom, prove that they hold, and teach them.",
    help_format="plaintext",
    suppress_keyboard_interrupt=False,
)
for _name, (_home, _about) in COMMANDS.items():
    app.command(f"pegwright.cli.{_home}", name=_name, help=_about)


def run(arguments: Sequence[str]) -> int:
    """Run a command and return its exit code; whatever goes wrong is said in a sentence."""
    json = "--json" in arguments
    try:
        code = app(arguments, exit_on_error=False, print_error=False, result_action="return_value")
        return code if isinstance(code, int) else FINE
    except Stop as stop:
        return stop.code
    except CycloptsError as error:
        return cannot(str(error), json, hint="see: pegwright --help")
    except RefusedError as refused:
        return cannot(str(refused), json)
    except OSError as error:
        if error.filename is None:  # it is the output that fails, which cannot tell so
            raise
        return cannot(reason(error), json)
    except Exception:  # the last net: the maker sees a sentence, the details go to a file
        with tempfile.NamedTemporaryFile(
            "w", prefix="pegwright-", suffix=".txt", delete=False, encoding="utf-8"
        ) as report:
            report.write(traceback.format_exc())
        return cannot(f"something went wrong inside pegwright; the details are in {report.name}", json)
