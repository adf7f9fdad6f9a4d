"""What a job is asked to do. It runs in its own process, so that it can be ended at any moment.

The process (`main`) reads one request from its input and writes the results to its output, both as frames of
MessagePack. When its input closes, nobody is waiting any more, and it exits.
"""

from __future__ import annotations

import os
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import Annotated, Any

import msgspec

from pegwright.finding import Language, RefusedError, WordedFinding, phrase, word_finding, word_phrase
from pegwright.lesson import Hand, Units
from pegwright.pattern import MAX_BYTES, Pattern, read_pattern
from pegwright.press import Edition, Paper
from pegwright.server.child_process import limit_memory, read_frame, take_output, write_frame
from pegwright.server.listen_responses import NothingHeardError, draft_response, listen_files
from pegwright.server.mat_responses import MatChoice, mat_files
from pegwright.server.plan_responses import OrdersResponse, find_mends, find_orders
from pegwright.server.read_responses import WordAnswer
from pegwright.server.rehearsal_responses import rehearsal_response
from pegwright.server.variant_responses import VariantChoice, variant_files
from pegwright.workshop import (
    LessonOrder,
    ReportProgress,
    Work,
    chart_of,
    first_handout,
    prepare_lesson,
    press_lesson,
    work,
)

_MOST_BYTES = 4_000_000_000
_NICE = 2
"""The bench, which the maker looks at, goes first. At 10 a job got a tenth of a busy processor, and a lesson
took ten times as long as on the command line."""


Captions = Annotated[bytes, msgspec.Meta(max_length=MAX_BYTES)]


class _WordedRequest(msgspec.Struct, frozen=True, kw_only=True):
    """A request with the language of its words and findings."""

    language: Language = "en"


class PressRequest(_WordedRequest, frozen=True, kw_only=True, tag="press", tag_field="do"):
    """Press the lesson: everything in one zip if `whole`, else only the follow-along page.

    The whole lesson shows the piece at rest and warns of what its rehearsal found; the page alone is ready at
    once, without either.
    """

    hand: Hand = "right"
    units: Units = "metric"
    paper: Paper = "a4"
    edition: Edition = "standard"
    learners: Annotated[int, msgspec.Meta(ge=1, le=500)] = 1
    whole: bool = False


class RestRequest(_WordedRequest, frozen=True, kw_only=True, tag="rest", tag_field="do"):
    """Bring the piece to rest: `rest.json` is an `AtRest`."""


class WornRequest(_WordedRequest, frozen=True, kw_only=True, tag="worn", tag_field="do"):
    """Close the piece round a wrist: `worn.json` is an `AtRest`."""

    girth_mm: Annotated[float, msgspec.Meta(ge=50, le=400)]


class MeasureRequest(_WordedRequest, frozen=True, kw_only=True, tag="measure", tag_field="do"):
    """Measure how the piece stretches: `measured.json` is a `PieceMeasurements`."""


class LengthenRequest(_WordedRequest, frozen=True, kw_only=True, tag="lengthen", tag_field="do"):
    """Try other numbers of repeats: `lengths.json` is a `RepeatOptions`, or null if nothing repeats."""


class RehearseRequest(_WordedRequest, frozen=True, kw_only=True, tag="rehearse", tag_field="do"):
    """Make every likely slip at every step: `rehearsal.json` is a `RehearsalResponse`."""


class PlanRequest(_WordedRequest, frozen=True, kw_only=True, tag="plan", tag_field="do"):
    """Propose working orders: `orders.json` is an `OrdersResponse`, made anew whenever a better one is found.

    `afresh` sets aside the working that the pattern gives. After `seconds` the best so far count.
    """

    afresh: bool = False
    seconds: Annotated[float, msgspec.Meta(gt=0, le=600)] = 10.0


class ListenRequest(_WordedRequest, frozen=True, kw_only=True, tag="listen", tag_field="do"):
    """Lay a recording beside the lesson: `heard.json` is a `ListenResponse`, the rest is to take along.

    `captions` are the bytes of a file, `spoken` is the language heard; mends that are `refused` (from 0) are
    not made in the captions.
    """

    captions: Captions
    spoken: Language
    refused: Annotated[tuple[int, ...], msgspec.Meta(max_length=20_000)] = ()


class DraftRequest(_WordedRequest, frozen=True, kw_only=True, tag="draft", tag_field="do"):
    """Make a draft of a recording that has no pattern: `draft.json` is a `DraftResponse`.

    The document that comes with it is not looked at.
    """

    captions: Captions
    spoken: Language
    answers: Annotated[tuple[WordAnswer, ...], msgspec.Meta(max_length=5_000)] = ()


class MendRequest(_WordedRequest, frozen=True, kw_only=True, tag="mend", tag_field="do"):
    """Find the smallest changes that make the piece hold: `mends.json` is a `MendsResponse`."""

    seconds: Annotated[float, msgspec.Meta(gt=0, le=600)] = 15.0


class VariantsRequest(_WordedRequest, frozen=True, kw_only=True, tag="variants", tag_field="do"):
    """Make variants: `variants.json` is a `VariantsResponse`; a picture of each comes after it."""

    choice: VariantChoice


class MatRequest(_WordedRequest, frozen=True, kw_only=True, tag="mat", tag_field="do"):
    """Make a mat of a picture: `mat.json` is a `MatMade`. The document of the request is not looked at."""

    picture: bytes
    choice: MatChoice


JobRequest = (
    PressRequest
    | RestRequest
    | WornRequest
    | MeasureRequest
    | LengthenRequest
    | RehearseRequest
    | PlanRequest
    | MendRequest
    | ListenRequest
    | DraftRequest
    | VariantsRequest
    | MatRequest
)


class ProgressFrame(msgspec.Struct, frozen=True, tag="step"):
    """The progress: what is being done, how many parts are done, and of how many."""

    what: str
    done: int
    total: int


class FileFrame(msgspec.Struct, frozen=True, tag="file"):
    """A file that was made."""

    name: str
    data: bytes


class EndFrame(msgspec.Struct, frozen=True, tag="ended"):
    """The end of a request; with a `reason` if it could not be met."""

    reason: str = ""
    findings: tuple[WordedFinding, ...] = ()


Frame = ProgressFrame | FileFrame | EndFrame
SendFrame = Callable[[Frame], None]


class JobMessage(msgspec.Struct, frozen=True):
    """A request and its document."""

    request: JobRequest
    document: dict[str, Any]


def run_job(sent: JobMessage, send: SendFrame) -> None:
    """Carry out a request and send the results; the last frame is an `EndFrame`."""
    language = sent.request.language
    try:
        if isinstance(sent.request, DraftRequest):
            _draft_recording(sent.request, send)
            return
        if isinstance(sent.request, MatRequest):
            _make_mat(sent.request, send)
            return
        _run_for_pattern(sent, send)
    except NothingHeardError as nothing:
        found = tuple(word_finding(each, language) for each in nothing.findings)
        send(EndFrame(found[-1].message, found))


def _draft_recording(request: DraftRequest, send: SendFrame) -> None:
    told = draft_response(
        request.captions,
        request.spoken,
        request.answers,
        request.language,
        lambda *how: send(ProgressFrame(*how)),
    )
    send(FileFrame("draft.json", msgspec.json.encode(told)))
    send(EndFrame())


def _run_for_pattern(sent: JobMessage, send: SendFrame) -> None:
    language = sent.request.language
    reading = read_pattern(msgspec.json.encode(sent.document))
    if reading.pattern is None:
        found = tuple(word_finding(each, language) for each in reading.findings)
        send(EndFrame(word_phrase(phrase("no-pattern"), language), found))
        return
    try:
        if isinstance(sent.request, PlanRequest | MendRequest):
            _look_for_orders(reading.pattern, sent.request, send)
        else:
            made = work(reading.pattern)
            for name, data in _carry_out(made, sent.request, lambda *how: send(ProgressFrame(*how))):
                send(FileFrame(name, data))
    except RefusedError as refused:
        send(EndFrame(word_phrase(refused.reason, language)))
    else:
        send(EndFrame())


def _make_mat(request: MatRequest, send: SendFrame) -> None:
    try:
        made = mat_files(
            request.picture, request.choice, request.language, lambda *how: send(ProgressFrame(*how))
        )
        for name, data in made:
            send(FileFrame(name, data))
    except RefusedError as refused:
        send(EndFrame(word_phrase(refused.reason, request.language)))
    else:
        send(EndFrame())


def _look_for_orders(pattern: Pattern, request: PlanRequest | MendRequest, send: SendFrame) -> None:
    def progress(what: str, done: int, total: int) -> None:
        send(ProgressFrame(what, done, total))

    def send_orders(orders: OrdersResponse) -> None:
        send(FileFrame("orders.json", msgspec.json.encode(orders)))

    match request:
        case PlanRequest(language=language, afresh=afresh, seconds=seconds):
            found = find_orders(pattern, language, progress, send_orders, afresh=afresh, seconds=seconds)
            send_orders(found)
        case MendRequest(language=language, seconds=seconds):
            mends = find_mends(pattern, language, progress, seconds=seconds)
            send(FileFrame("mends.json", msgspec.json.encode(mends)))


def _carry_out(made: Work, request: JobRequest, progress: ReportProgress) -> Iterator[tuple[str, bytes]]:
    match request:
        case PressRequest():
            yield from _press_lesson(made, request, progress)
        case RestRequest():
            from pegwright.server.at_rest import rest_piece  # noqa: PLC0415 - the solver is slow to load

            yield "rest.json", msgspec.json.encode(rest_piece(made, progress, language=request.language))
        case WornRequest(girth_mm=girth_mm):
            from pegwright.server.at_rest import rest_piece  # noqa: PLC0415 - the same

            yield (
                "worn.json",
                msgspec.json.encode(rest_piece(made, progress, girth_mm=girth_mm, language=request.language)),
            )
        case MeasureRequest():
            from pegwright.workshop import measure_piece  # noqa: PLC0415 - the same

            yield "measured.json", msgspec.json.encode(measure_piece(made, progress).measured)
        case LengthenRequest():
            from pegwright.workshop import measure_lengths  # noqa: PLC0415 - the same

            yield "lengths.json", msgspec.json.encode(measure_lengths(made, progress))
        case ListenRequest(language=language, captions=captions, spoken=spoken, refused=refused):
            yield from listen_files(
                made, captions, spoken, refused=refused, language=language, progress=progress
            )
        case VariantsRequest(language=language, choice=choice):
            yield from variant_files(made, choice, language, progress)
        case RehearseRequest(language=language):
            yield "rehearsal.json", msgspec.json.encode(rehearsal_response(made, language, progress))


def _press_lesson(made: Work, request: PressRequest, progress: ReportProgress) -> Iterator[tuple[str, bytes]]:
    order = LessonOrder(
        language=request.language,
        hand=request.hand,
        units=request.units,
        papers=(request.paper,),
        editions=(request.edition,),
        learners=request.learners,
        rehearse=request.whole,
        picture=request.whole,
        fit=request.whole,
        parts=LessonOrder().parts if request.whole else ("page",),
    )
    if request.whole:  # to read while the rest is made; the full handout replaces it
        yield first_handout(made, order)
        chart = chart_of(made.pattern, request.language)
        if chart is not None:
            yield "chart.html", chart
    yield from press_lesson(prepare_lesson(made, order, progress), order, progress)


def main() -> None:
    """Wait for a request, carry it out, and exit."""
    with suppress(OSError, AttributeError):
        os.nice(_NICE)
    out = take_output()
    limit_memory(_MOST_BYTES)
    given = read_frame(sys.stdin.buffer)
    if given is None:
        return
    threading.Thread(target=_end_with_input, daemon=True).start()
    run_job(
        msgspec.msgpack.decode(given, type=JobMessage),
        lambda frame: write_frame(out, msgspec.msgpack.encode(frame)),
    )


def _end_with_input() -> None:
    os.read(sys.stdin.fileno(), 1)
    os._exit(1)
