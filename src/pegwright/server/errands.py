"""What a job is sent for. It runs in a process of its own, so that it can be ended at any moment.

The process (`main`) reads one errand from its input and writes what comes of it to its output: frames of a
length (4 bytes, big-endian) and MessagePack. When its input closes, nobody waits any more, and it ends.
"""

from __future__ import annotations

import os
import struct
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import Annotated, Any, BinaryIO

import msgspec

from pegwright.finding import Language, Phrase, phrase
from pegwright.finding.wording import Worded, word, worded
from pegwright.lesson import Hand, Units
from pegwright.pattern import read
from pegwright.press import Edition, Paper
from pegwright.server.rehearsing import rehearsed_piece
from pegwright.workshop import Order, Progress, Work, pressed, teach, work

MOST_FRAME_BYTES = 64_000_000
_LENGTH = struct.Struct(">I")
_NICE = 10  # the bench, which the maker is looking at, goes first


class _InWords(msgspec.Struct, frozen=True, kw_only=True):
    """An errand whose words, and findings, are in a language."""

    language: Language = "en"


class Press(_InWords, frozen=True, kw_only=True, tag="press", tag_field="do"):
    """Press the lesson; `whole` presses everything into one zip, else the page that one follows along.

    The whole lesson shows the piece at rest and warns of what its rehearsal found; the page alone is there at
    once, without them.
    """

    hand: Hand = "right"
    units: Units = "metric"
    paper: Paper = "a4"
    edition: Edition = "standard"
    learners: Annotated[int, msgspec.Meta(ge=1, le=500)] = 1
    whole: bool = False


class Rest(_InWords, frozen=True, kw_only=True, tag="rest", tag_field="do"):
    """Bring the piece to rest: `rest.json` is an `AtRest`."""


class Worn(_InWords, frozen=True, kw_only=True, tag="worn", tag_field="do"):
    """Close the piece round a wrist of that girth in mm: `worn.json` is an `AtRest`."""

    girth_mm: Annotated[float, msgspec.Meta(ge=50, le=400)]


class Measure(_InWords, frozen=True, kw_only=True, tag="measure", tag_field="do"):
    """Measure how the piece stretches: `measured.json` is a `Measured`."""


class Lengthen(_InWords, frozen=True, kw_only=True, tag="lengthen", tag_field="do"):
    """Try other numbers of repeats: `lengths.json` is a `Lengths`, or null where there are no repeats."""


class Rehearse(_InWords, frozen=True, kw_only=True, tag="rehearse", tag_field="do"):
    """Make every likely slip at every step: `rehearsal.json` is a `Rehearsed`."""


Errand = Press | Rest | Worn | Measure | Lengthen | Rehearse


class Step(msgspec.Struct, frozen=True, tag="step"):
    """How far it is: what is being done, how many parts are done, and of how many."""

    what: str
    done: int
    total: int


class File(msgspec.Struct, frozen=True, tag="file"):
    """Something that was made, by its name."""

    name: str
    data: bytes


class Ended(msgspec.Struct, frozen=True, tag="ended"):
    """The errand is done; with a reason it was not."""

    reason: str = ""
    findings: tuple[Worded, ...] = ()


Frame = Step | File | Ended
Send = Callable[[Frame], None]


class Sent(msgspec.Struct, frozen=True):
    """An errand and the document that it is for."""

    errand: Errand
    document: dict[str, Any]


def run(sent: Sent, send: Send) -> None:
    """Do an errand and send on what comes of it; the last frame is `Ended`."""
    language = sent.errand.language
    reading = read(msgspec.json.encode(sent.document))
    if reading.pattern is None:
        found = tuple(worded(each, language) for each in reading.findings)
        send(Ended(word(phrase("no-pattern"), language), found))
        return
    try:
        made = work(reading.pattern)
        for name, data in _made(made, sent.errand, lambda *how: send(Step(*how))):
            send(File(name, data))
    except ValueError as error:
        told = error.args[0] if error.args else ""
        send(Ended(word(told, language) if isinstance(told, Phrase) else str(error)))
    else:
        send(Ended())


def _made(made: Work, errand: Errand, progress: Progress) -> Iterator[tuple[str, bytes]]:
    match errand:
        case Press():
            yield from _press(made, errand, progress)
        case Rest():
            from pegwright.server.at_rest import at_rest  # noqa: PLC0415 - the solver is slow to load

            yield "rest.json", msgspec.json.encode(at_rest(made, progress, language=errand.language))
        case Worn(girth_mm=girth_mm):
            from pegwright.server.at_rest import at_rest  # noqa: PLC0415 - the same

            yield (
                "worn.json",
                msgspec.json.encode(at_rest(made, progress, girth_mm=girth_mm, language=errand.language)),
            )
        case Measure():
            from pegwright.workshop.stretched import measure  # noqa: PLC0415 - the same

            yield "measured.json", msgspec.json.encode(measure(made, progress).measured)
        case Lengthen():
            from pegwright.workshop.lengths import lengths  # noqa: PLC0415 - the same

            yield "lengths.json", msgspec.json.encode(lengths(made, progress))
        case Rehearse(language=language):
            yield "rehearsal.json", msgspec.json.encode(rehearsed_piece(made, language, progress))


def _press(made: Work, errand: Press, progress: Progress) -> Iterator[tuple[str, bytes]]:
    order = Order(
        language=errand.language,
        hand=errand.hand,
        units=errand.units,
        papers=(errand.paper,),
        editions=(errand.edition,),
        learners=errand.learners,
        rehearse=errand.whole,
        picture=errand.whole,
        fit=errand.whole,
        parts=Order().parts if errand.whole else ("page",),
    )
    return pressed(teach(made, order, progress), order, progress)


def write_frame(pipe: BinaryIO, data: bytes) -> None:
    """Write a frame and flush it.

    Raises:
        ValueError: it is larger than a frame may be.
        OSError: nobody reads at the other end.
    """
    if len(data) > MOST_FRAME_BYTES:
        raise ValueError(f"{len(data)} bytes are too many to be handed over")
    pipe.write(_LENGTH.pack(len(data)) + data)
    pipe.flush()


def read_frame(pipe: BinaryIO) -> bytes | None:
    """Read a frame; None at the end, and where the frame is cut off or larger than it may be."""
    head = pipe.read(_LENGTH.size)
    if len(head) < _LENGTH.size:
        return None
    (length,) = _LENGTH.unpack(head)
    if length > MOST_FRAME_BYTES:
        return None
    data = pipe.read(length)
    return data if len(data) == length else None


def main() -> None:
    """Wait for an errand, do it, and end."""
    with suppress(OSError, AttributeError):
        os.nice(_NICE)
    out = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())  # whatever a library prints is no frame
    given = read_frame(sys.stdin.buffer)
    if given is None:
        return
    threading.Thread(target=_end_with_input, daemon=True).start()
    run(
        msgspec.msgpack.decode(given, type=Sent),
        lambda frame: write_frame(out, msgspec.msgpack.encode(frame)),
    )


def _end_with_input() -> None:
    os.read(sys.stdin.fileno(), 1)
    os._exit(1)
