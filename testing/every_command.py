"""Every command of the program that reads a document, run in this process, and what is wrong with its end."""

from __future__ import annotations

import contextlib
import io
import random
from pathlib import Path
from typing import NamedTuple

from pegwright.cli import main
from testing.mutate import ODD
from testing.mutate_text import RUBBISH

PLACES = {
    "FILE": "piece.json",
    "TEXT": "piece.pegwright",
    "WORDS": "words.txt",
    "CAPTIONS": "captions.vtt",
    "STASH": "stash.json",
    "OUT": "out",
    "NEW": "new.json",
}
_LESSON = "--no-picture --no-fit --no-rehearse"


class Command(NamedTuple):
    """A command and its arguments: FILE, TEXT, WORDS, CAPTIONS and STASH are read, OUT is written.

    It is tried on every so many documents, a prime, so that it meets all kinds of them. `kind` is "quick",
    "search" (given one second to look in) or "solver".
    """

    arguments: str
    every: int = 1
    kind: str = "quick"

    def is_due(self, seed: int) -> bool:
        """Say whether the document of that seed meets it; within the first forty all do that do not solve."""
        if self.kind == "solver":
            return seed % self.every == self.every - 1
        return seed % self.every == (self.every % 29 if self.every > 29 else 0)

    def run(self, folder: Path) -> str:
        """Run it in a folder where its files lie; return what went wrong with the program, or nothing."""
        return fault_of([str(folder / PLACES[a]) if a in PLACES else a for a in self.arguments.split()])


COMMANDS = (
    Command("check FILE"),
    Command("show FILE --states"),
    Command("supplies FILE --learners 3"),
    Command("check FILE --losses --json", 23, "solver"),
    Command("show FILE --forces", 19),
    Command("review FILE", 29),
    Command("review FILE --language de", 37),
    Command("convert FILE NEW --force", 13),
    Command("check TEXT", 7),
    Command("supplies FILE --stash STASH", 11),
    Command("read WORDS NEW --force", 17),
    Command("read FILE", 31),
    Command("mat FILE --stash STASH", 47),
    Command("variants FILE --hand both --looms 2x30 --bands 15x1.8", 53),
    Command("variants FILE --colourways 2 --stash STASH", 59),
    Command("listen FILE CAPTIONS", 43),
    Command("listen FILE FILE", 211),
    Command(f"lesson FILE OUT --parts page,captions,script {_LESSON}", 41),
    Command(f"lesson FILE OUT --parts handout,kit --language es --edition large {_LESSON}", 103),
    Command("plan FILE --seconds 1", 97, "search"),
    Command("plan FILE --seconds 1 --afresh", 101, "search"),
    Command("mend FILE --seconds 1 --json", 89, "search"),
    Command("plan FILE --seconds 1 --rehearse", 1999, "solver"),
    Command("rehearse FILE", 499, "solver"),
    Command("fit FILE --wrist 16cm", 1997, "solver"),
    Command("picture FILE OUT --width 200", 1993, "solver"),
    Command("picture FILE OUT --view all --girth 16cm --format glb", 3989, "solver"),
)
"""The commands that read a document; `calibrate` and `new` read none and get odd arguments instead."""


def odd_arguments(folder: Path, rng: random.Random) -> list[str]:
    """Return `calibrate` or `new` with arguments that nobody means."""

    def odd() -> str:
        return str(rng.choice((*ODD, *RUBBISH, "nan", "inf", "-inf", "1e-320", "16", "2.5", "1.5"))).replace(
            "\x00", ""
        )

    if rng.random() < 0.5:
        hung = ",".join(f"{odd()}={odd()}" for _ in range(rng.randint(0, 4)))
        numbers = [f"--{name}={odd()}" for name in ("flat", "thickness", "weight", "hook", "reading")]
        usual = ["--flat=16", "--thickness=1.5"] if rng.random() < 0.5 else []
        return ["calibrate", *rng.sample(numbers, 3), *usual, f"--hung={hung}", f"--name={odd()}"]
    return [
        "new",
        str(folder / PLACES["NEW"]),
        "--force",
        f"--title={odd()}",
        f"--rows={odd()}",
        f"--pegs={odd()}",
    ]


def fault_of(arguments: list[str]) -> str:
    """Run a command line in this process; say what went wrong, if it was more than the document."""
    said = io.StringIO()
    code: object = None
    try:
        with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said):
            main(arguments)
    except SystemExit as end:
        code = end.code
    except Exception as error:  # any at all is what we are looking for
        return repr(error)
    if code not in (0, 1, 2):
        return f"ended with {code}"
    return said.getvalue()[-300:] if "went wrong inside" in said.getvalue() else ""
