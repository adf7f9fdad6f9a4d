"""What the page waits for at every edit, done in a process that stays warm and can be ended.

The process (`main`) answers one request after another and remembers its recent work. A newer request from the
same page makes it give up the current one between two stages of the line.
"""

from __future__ import annotations

import gc
import os
import sys
import threading
from collections import OrderedDict
from itertools import islice
from queue import SimpleQueue
from typing import Literal

import msgspec

from pegwright.finding import Finding, Language, word_finding
from pegwright.judging import find_single_failures
from pegwright.loom import replay_pattern
from pegwright.pattern import PatternReading
from pegwright.proof import Loss
from pegwright.server.child_process import limit_memory, read_frame, take_output, write_frame
from pegwright.server.folder import edition_of
from pegwright.server.mat_responses import MatChoice, look_at_mat
from pegwright.server.motifs import MOST_MOTIFS, built_in_motifs, motifs_of
from pegwright.server.read_responses import WordAnswer, read_response
from pegwright.server.starters import Glance, glance, load_starters
from pegwright.server.technique_responses import list_techniques
from pegwright.server.work_responses import WorkResponse, work_response
from pegwright.text import read_any_pattern
from pegwright.workshop import ReportProgress, Work, report_nothing, starter_pattern, work

MOST_BYTES = 2_000_000_000
MOST_GLANCED_BYTES = 200_000
REMEMBERED = 6


class WorkDocument(msgspec.Struct, frozen=True, tag="work"):
    """Take a document through the line; the answer is a `WorkResponse`."""

    document: bytes
    language: Language


class SnapOneBand(msgspec.Struct, frozen=True, tag="snap"):
    """Find what falls if one band snaps; the answer is a `SnapResponse`."""

    document: bytes
    band: int
    language: Language


class GlanceAtPiece(msgspec.Struct, frozen=True, tag="glance"):
    """Look at a file on the shelf; the answer is a `PieceGlance`."""

    data: bytes


class FindMotifs(msgspec.Struct, frozen=True, tag="motifs"):
    """Find the motifs of a file, or of the built-in pieces; the answer is an array of `ShelvedMotif`."""

    piece: str
    data: bytes


class ReadText(msgspec.Struct, frozen=True, tag="read"):
    """Read a maker's words with what was answered; the answer is a `ReadResponse`."""

    text: str
    answers: tuple[WordAnswer, ...]
    language: Language


class LookAtMat(msgspec.Struct, frozen=True, tag="mat"):
    """Lay a picture out as a mat; the answer is a `MatPreview`."""

    picture: bytes
    choice: MatChoice
    language: Language


class FindTechniques(msgspec.Struct, frozen=True, tag="techniques"):
    """Find the techniques of the atlas; the answer is an array of `TechniqueResponse`."""

    language: Language


class FindStarters(msgspec.Struct, frozen=True, tag="starts"):
    """Find the pieces to start from; the answer is an array of `Starter`."""


LineRequest = (
    WorkDocument
    | SnapOneBand
    | GlanceAtPiece
    | FindMotifs
    | ReadText
    | LookAtMat
    | FindTechniques
    | FindStarters
)


class SnapResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The bands that fall with it; `held` tells whether the band was held to begin with."""

    band: int
    held: bool
    falls: tuple[int, ...]


class PieceGlance(msgspec.Struct, frozen=True):
    """What a file holds: the piece's title (empty if it is no pattern), its bands and small picture."""

    title: str
    bands: int
    glance: Glance | None


class Give(msgspec.Struct, frozen=True, tag="give"):
    """A request and its number; numbers rise."""

    number: int
    request: LineRequest


class GiveUp(msgspec.Struct, frozen=True, tag="give-up"):
    """Give up the request with that number, if it is still running."""

    number: int


class LineReply(msgspec.Struct, frozen=True):
    """The reply to a request. `data` is JSON: the answer, or a refusal's worded findings."""

    state: Literal["done", "refused", "given-up", "too-much", "failed"]
    data: bytes = b""


class _GivenUpError(Exception):
    """The request is no longer wanted."""


class RecentWork:
    """Recently worked pieces by document, and what is lost with each of their bands."""

    def __init__(self) -> None:
        self._made: OrderedDict[str, Work] = OrderedDict()
        self._losses: OrderedDict[str, dict[int, Loss] | Finding] = OrderedDict()

    def work(self, document: bytes, progress: ReportProgress = report_nothing) -> Work | PatternReading:
        """Return the worked document, or the reading that says why it is not a pattern."""
        key = edition_of(document)
        known = self._made.get(key)
        if known is not None:
            return known
        reading = read_any_pattern(document)
        if reading.pattern is None:
            return reading
        made = self._made[key] = work(reading.pattern, progress)
        while len(self._made) > REMEMBERED:
            self._made.popitem(last=False)
        return made

    def lost_with(
        self, document: bytes, band: int, progress: ReportProgress = report_nothing
    ) -> tuple[int, ...] | Finding | None:
        """Return the bands that fall if only `band` snaps; None if that band is not held anyway.

        Returns a finding if the piece has too many bands to try each.
        """
        made = self.work(document, progress)
        if isinstance(made, PatternReading) or band not in made.proof.held:
            return None
        key = edition_of(document)
        if key not in self._losses:
            lost = find_single_failures(made.structure, made.proof, progress)
            self._losses[key] = lost if isinstance(lost, Finding) else lost.snaps
            while len(self._losses) > REMEMBERED:
                self._losses.popitem(last=False)
        known = self._losses[key]
        return known if isinstance(known, Finding) else known[band].falls


def answer_request(request: LineRequest, recent: RecentWork, progress: ReportProgress) -> LineReply:
    """Carry out a request."""
    match request:
        case WorkDocument(document, language):
            made = recent.work(document, progress)
            if isinstance(made, PatternReading):
                found = tuple(word_finding(each, language) for each in made.findings)
                return _done(WorkResponse(readable=False, findings=found))
            return _done(work_response(made, language))
        case SnapOneBand(document, band, language):
            falls = recent.lost_with(document, band, progress)
            if isinstance(falls, Finding):
                return LineReply("refused", msgspec.json.encode((word_finding(falls, language),)))
            return _done(SnapResponse(band=band, held=falls is not None, falls=falls or ()))
        case GlanceAtPiece(data):
            return _done(_glance_at(data))
        case FindMotifs("", _):
            return _done(tuple(built_in_motifs()))
        case FindMotifs(piece, data):
            pattern = read_any_pattern(data).pattern
            return _done(() if pattern is None else tuple(islice(motifs_of(piece, pattern), MOST_MOTIFS)))
        case ReadText(text, answers, language):
            return _done(read_response(text, answers, language, progress))
        case LookAtMat(picture, choice, language):
            return _done(look_at_mat(picture, choice, language, progress))
        case FindTechniques(language):
            return _done(list_techniques(language))
        case FindStarters():
            return _done(load_starters())


def _done(value: object) -> LineReply:
    return LineReply("done", msgspec.json.encode(value))


def _glance_at(data: bytes) -> PieceGlance:
    pattern = read_any_pattern(data).pattern
    if pattern is None:
        return PieceGlance("", 0, None)
    if len(data) > MOST_GLANCED_BYTES:
        return PieceGlance(pattern.title, 0, None)
    history = replay_pattern(pattern)
    return PieceGlance(pattern.title, history.final.bands, glance(pattern, history))


def main() -> None:
    """Answer requests until the input closes."""
    out = take_output()
    limit_memory(MOST_BYTES)
    given: SimpleQueue[Give] = SimpleQueue()
    unwanted = 0

    def listen() -> None:
        nonlocal unwanted
        while (data := read_frame(sys.stdin.buffer)) is not None:
            said = msgspec.msgpack.decode(data, type=Give | GiveUp)
            if isinstance(said, Give):
                given.put(said)
            else:
                unwanted = said.number
        os._exit(0)  # nobody is waiting any more

    threading.Thread(target=listen, daemon=True).start()
    _warm()
    write_frame(out, b"")  # ready
    recent = RecentWork()
    while True:
        asked = given.get()

        def give_up_if_unwanted(
            _what: str = "", _done: int = 0, _total: int = 0, mine: int = asked.number
        ) -> None:
            if unwanted >= mine:
                raise _GivenUpError

        reply = _try_to_answer(asked.request, recent, give_up_if_unwanted)
        write_frame(out, msgspec.msgpack.encode(reply))
        if reply.state == "too-much":  # its remains may be in the way of the next request
            return


def _try_to_answer(request: LineRequest, recent: RecentWork, progress: ReportProgress) -> LineReply:
    try:
        reply = answer_request(request, recent, progress)
    except _GivenUpError:
        return LineReply("given-up")
    except (MemoryError, RecursionError):
        return LineReply("too-much")
    except Exception:
        sys.excepthook(*sys.exc_info())
        return LineReply("failed")
    return reply if len(reply.data) < 60_000_000 else LineReply("too-much")


def _warm() -> None:
    """Load what the first page needs, and keep the garbage collector from scanning all of it at every edit.

    A worked piece is tens of thousands of small values without cycles. Measured at 300 bands: 14 ms of each
    answer went into three young-generation collections.
    """
    work(starter_pattern("Warm"))
    gc.collect()
    gc.freeze()
    gc.set_threshold(200_000, 10, 10)
