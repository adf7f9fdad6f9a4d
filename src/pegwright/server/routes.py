"""The routes: each reads its request, calls the workshop, and answers the page."""

from __future__ import annotations

import errno
from dataclasses import dataclass
from typing import Annotated, Any

import msgspec
from litestar import Request, Response, delete, get, post, put
from litestar.di import NamedDependency
from litestar.exceptions import HTTPException
from litestar.params import FromPath, FromQuery, JSONBody

from pegwright.finding import (
    LANGUAGES,
    Finding,
    Language,
    Phrase,
    RefusedError,
    WordedFinding,
    finding,
    phrase,
    word_finding,
    word_phrase,
)
from pegwright.pattern import MAX_BYTES, Pattern, read_pattern, write_pattern
from pegwright.server.fit_responses import FitRequest, FitResponse, fit_response
from pegwright.server.folder import (
    ChangedError,
    Folder,
    FolderGoneError,
    NoPieceError,
    TooLargeError,
    edition_of,
    is_text_name,
)
from pegwright.server.jobs import BusyError, Jobs, NoJobError
from pegwright.server.line_requests import (
    FindStarters,
    LineReply,
    ReadText,
    SnapOneBand,
    SnapResponse,
    WorkDocument,
)
from pegwright.server.read_responses import ReadRequest, ReadResponse
from pegwright.server.shelf import Shelf, ShelvedPiece
from pegwright.server.starters import Starter
from pegwright.server.work_responses import WorkResponse
from pegwright.server.workers import OvertakenError, TooMuchError, Workers
from pegwright.text import encode_pattern, read_any_pattern


class OpenedPiece(msgspec.Struct, frozen=True, kw_only=True):
    """An opened piece: its edition, and its document in the newest format."""

    name: str
    edition: str
    document: dict[str, Any]


class ShelfResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The folder and its pieces."""

    folder: str
    pieces: tuple[ShelvedPiece, ...]


class NewPiece(msgspec.Struct, frozen=True, kw_only=True):
    """A document to put on the shelf as a new piece."""

    document: dict[str, Any]


class SaveRequest(msgspec.Struct, frozen=True, kw_only=True):
    """A document to save, and the edition that the page started from."""

    document: dict[str, Any]
    edition: str


class Saved(msgspec.Struct, frozen=True, kw_only=True):
    """What was saved, and its new edition."""

    name: str
    edition: str


class Version(msgspec.Struct, frozen=True, kw_only=True):
    """A kept version, and when it was kept (seconds since 1970)."""

    version: str
    kept_s: float


class WorkRequest(msgspec.Struct, frozen=True, kw_only=True):
    """A document to work. Of one page's requests, the one with the highest serial number counts."""

    document: dict[str, Any]
    page: Annotated[str, msgspec.Meta(max_length=64)] = ""
    serial: Annotated[int, msgspec.Meta(ge=0)] = 0


class SnapRequest(msgspec.Struct, frozen=True, kw_only=True):
    """A document and the band that snaps. Of one page's documents, the latest counts."""

    document: dict[str, Any]
    band: Annotated[int, msgspec.Meta(ge=1)]
    page: Annotated[str, msgspec.Meta(max_length=64)] = ""


class Refusal(msgspec.Struct, frozen=True, kw_only=True):
    """Why something was not done, in a sentence, with findings that say where."""

    reason: str
    findings: tuple[WordedFinding, ...] = ()


@dataclass(frozen=True)
class Studio:
    """What all routes share: the folder, its shelf, the workers and the jobs."""

    folder: Folder
    shelf: Shelf
    workers: Workers
    jobs: Jobs


class HttpRefusedError(Exception):
    """Ends a request with a status and a reason; without one, the first finding is the reason."""

    def __init__(self, status: int, reason: Phrase | None, findings: tuple[Finding, ...] = ()) -> None:
        super().__init__(reason)
        self.status, self.reason, self.findings = status, reason, findings

    def refusal(self, language: Language) -> Refusal:
        """Put the refusal in words."""
        findings = tuple(word_finding(each, language) for each in self.findings)
        reason = findings[0].message if self.reason is None else word_phrase(self.reason, language)
        return Refusal(reason=reason, findings=findings)


# --- pieces -------------------------------------------------------------------------------------------


@get("/pieces", sync_to_thread=True)
def list_pieces(studio: NamedDependency[Studio]) -> ShelfResponse:
    """List the pieces in the folder, latest first."""
    return ShelfResponse(folder=studio.folder.root.name, pieces=tuple(studio.shelf.pieces()))


@post("/pieces", sync_to_thread=True)
def add_piece(studio: NamedDependency[Studio], data: JSONBody[NewPiece]) -> Saved:
    """Put a new piece on the shelf, named after its title."""
    pattern = _pattern(data.document)
    for _ in range(100):
        name = studio.folder.free_name(pattern.title)
        try:
            return Saved(name=name, edition=studio.folder.save(name, write_pattern(pattern), None))
        except ChangedError:  # someone has just taken the name
            continue
    raise HttpRefusedError(409, phrase("no-name-free"))


@get("/pieces/{name:str}", sync_to_thread=True)
def open_piece(studio: NamedDependency[Studio], name: FromPath[str]) -> OpenedPiece:
    """Open a piece."""
    return _open(name, studio.folder.open(name))


@put("/pieces/{name:str}", sync_to_thread=True)
def save_piece(studio: NamedDependency[Studio], name: FromPath[str], data: JSONBody[SaveRequest]) -> Saved:
    """Save a piece, unless it was changed elsewhere since the edition that the page started from.

    A maker's text is written anew as text; one with a layout or remarks of the maker's own is first kept as a
    version, because the new one has neither.
    """
    made = encode_pattern(_pattern(data.document), name)
    if is_text_name(name) and _is_by_hand(studio.folder, name, data.edition):
        studio.folder.keep(name)
    return Saved(name=name, edition=studio.folder.save(name, made, data.edition))


@delete("/pieces/{name:str}", sync_to_thread=True, status_code=204)
def remove_piece(studio: NamedDependency[Studio], name: FromPath[str]) -> None:
    """Take a piece off the shelf; its file is set aside."""
    studio.folder.remove(name)


@post("/pieces/{name:str}/versions", sync_to_thread=True)
def keep_version(studio: NamedDependency[Studio], name: FromPath[str]) -> Version:
    """Keep the piece as it is now as a version."""
    version = studio.folder.keep(name)
    kept = {each.version: each.kept_s for each in studio.folder.versions(name)}
    return Version(version=version, kept_s=kept[version])


@get("/pieces/{name:str}/versions", sync_to_thread=True)
def list_versions(studio: NamedDependency[Studio], name: FromPath[str]) -> tuple[Version, ...]:
    """List the versions of a piece, latest first."""
    return tuple(Version(version=v, kept_s=s) for v, s in studio.folder.versions(name))


@get("/pieces/{name:str}/versions/{version:str}", sync_to_thread=True)
def open_version(studio: NamedDependency[Studio], name: FromPath[str], version: FromPath[str]) -> OpenedPiece:
    """Open a version of a piece."""
    return _open(name, studio.folder.open_version(name, version))


@get("/starts", sync_to_thread=True)
def list_starts(studio: NamedDependency[Studio]) -> Response[tuple[Starter, ...]]:
    """List the pieces to start from."""
    return hand_on(studio.workers.ask(FindStarters()))


# --- the line -----------------------------------------------------------------------------------------


@post("/work", sync_to_thread=True, status_code=200)
def work_pattern(
    studio: NamedDependency[Studio], data: JSONBody[WorkRequest], language: FromQuery[Language] = "en"
) -> Response[WorkResponse]:
    """Take a document through the line."""
    document = msgspec.json.encode(data.document)
    request = WorkDocument(document, language)
    return hand_on(
        studio.workers.ask(request, data.page, data.serial, edition=edition_of(document)),
    )


@post("/snap", sync_to_thread=True, status_code=200)
def snap_band(
    studio: NamedDependency[Studio], data: JSONBody[SnapRequest], language: FromQuery[Language] = "en"
) -> Response[SnapResponse]:
    """Find what falls if one band snaps."""
    document = msgspec.json.encode(data.document)
    edition = edition_of(document)
    slot = f"snap {data.page or edition}"
    serial = studio.workers.serial_of(slot, edition)
    request = SnapOneBand(document, data.band, language)
    return hand_on(studio.workers.ask(request, slot, serial, edition=edition))


@post("/read", sync_to_thread=True, status_code=200)
def read_text(
    studio: NamedDependency[Studio], data: JSONBody[ReadRequest], language: FromQuery[Language] = "en"
) -> Response[ReadResponse]:
    """Read a maker's words, with what the maker has answered so far."""
    slot = f"read {data.page}" if data.page else ""
    return hand_on(studio.workers.ask(ReadText(data.text, data.answers, language), slot, data.serial))


@post("/fit", sync_to_thread=True, status_code=200)
def fit_wrist(data: JSONBody[FitRequest], language: FromQuery[Language] = "en") -> FitResponse:
    """Find whom a measured piece fits, and what would make it fit a wrist."""
    return fit_response(_pattern(data.document), data.measured, data.wrist, data.lengths, language)


ROUTES = (
    list_pieces,
    add_piece,
    open_piece,
    save_piece,
    remove_piece,
    keep_version,
    list_versions,
    open_version,
    list_starts,
    work_pattern,
    snap_band,
    read_text,
    fit_wrist,
)


# --- refusals -----------------------------------------------------------------------------------------


def refuse(request: Request[Any, Any, Any], error: Exception) -> Response[Refusal]:
    """Answer an error with a sentence in the request's language; internal details are not sent."""
    asked = request.query_params.get("language")
    language: Language = next((each for each in LANGUAGES if each == asked), "en")

    def refusal(status: int, reason: Phrase) -> Response[Refusal]:
        return _answer(status, Refusal(reason=word_phrase(reason, language)))

    match error:
        case HttpRefusedError():
            return _answer(error.status, error.refusal(language))
        case RefusedError():
            return refusal(422, error.reason)
        case NoPieceError():
            return refusal(404, phrase("no-such-piece"))
        case NoJobError():
            return refusal(404, phrase("no-such-work"))
        case BusyError():
            return refusal(429, phrase("too-much-under-way"))
        case ChangedError():
            return refusal(409, phrase("changed-elsewhere"))
        case TooMuchError():
            return refusal(422, phrase("piece-asks-too-much"))
        case OvertakenError():
            return refusal(409, phrase("overtaken"))
        case TooLargeError():
            found = finding("too-large", limit_mb=MAX_BYTES // 1_000_000)
            return refuse(request, HttpRefusedError(422, phrase("file-no-pattern"), (found,)))
        case FolderGoneError():
            return refusal(507, phrase("folder-gone", folder=str(error.filename)))
        case OSError():
            known = errno.errorcode.get(error.errno or 0, "")
            why = phrase("write-reason", errno=known, text=error.strerror or type(error).__name__)
            return refusal(507, phrase("folder-read-only", reason=why))
        case HTTPException(status_code=413):
            return refusal(413, phrase("request-too-large", limit_mb=MAX_BYTES // 1_000_000))
        case HTTPException():
            return _answer(error.status_code, Refusal(reason=error.detail[:200]))
        case _:
            return refusal(500, phrase("wrong-inside"))


def _answer(status: int, refusal: Refusal) -> Response[Refusal]:
    return Response(refusal, status_code=status, media_type="application/json")


def hand_on(reply: LineReply) -> Response[Any]:
    """Answer with what a worker has already encoded."""
    if reply.state == "refused":
        found = msgspec.json.decode(reply.data, type=tuple[WordedFinding, ...])
        return _answer(422, Refusal(reason=found[0].message, findings=found))
    if reply.state == "failed":
        return _answer(500, Refusal(reason=word_phrase(phrase("wrong-inside"))))
    return Response(reply.data, media_type="application/json")


def _pattern(document: dict[str, Any]) -> Pattern:
    reading = read_pattern(msgspec.json.encode(document))
    if reading.pattern is None:
        raise HttpRefusedError(422, phrase("no-pattern"), reading.findings)
    return reading.pattern


def _is_by_hand(folder: Folder, name: str, edition: str) -> bool:
    """Say whether the text of that edition is not as the program writes it."""
    try:
        data = folder.open(name)
    except NoPieceError:
        return False
    pattern = read_any_pattern(data, name).pattern
    return edition_of(data) == edition and (pattern is None or encode_pattern(pattern, name) != data)


def _open(name: str, data: JSONBody[bytes]) -> OpenedPiece:
    reading = read_any_pattern(data, name)
    if reading.pattern is None:
        raise HttpRefusedError(422, phrase("file-no-pattern"), reading.findings)
    return OpenedPiece(
        name=name, edition=edition_of(data), document=msgspec.json.decode(write_pattern(reading.pattern))
    )
