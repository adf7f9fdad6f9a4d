"""The routes: each reads its request, asks the workshop, and tells the page what came of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any

import msgspec
from litestar import Request, Response, delete, get, post, put
from litestar.di import NamedDependency
from litestar.exceptions import HTTPException
from litestar.params import FromPath, FromQuery, JSONBody

from pegwright.finding import Finding, Language, Phrase, phrase
from pegwright.finding.wording import LANGUAGES, Worded, word, worded
from pegwright.loom import board, replay
from pegwright.pattern import Pattern, Reading, expand, read, write
from pegwright.server.desk import Desk, OvertakenError
from pegwright.server.fitting import Fitted, Fitting, fitted
from pegwright.server.folder import ChangedError, Folder, NoPieceError, edition_of
from pegwright.server.jobs import BusyError, Jobs, NoJobError
from pegwright.server.seen import Seen, seen
from pegwright.server.starts import Glance, Start, glance, starts

MOST_GLANCED_BYTES = 200_000


class Piece(msgspec.Struct, frozen=True, kw_only=True):
    """A piece that was opened: its edition and its document in the newest format."""

    name: str
    edition: str
    document: dict[str, Any]


class Shelved(msgspec.Struct, frozen=True, kw_only=True):
    """A piece on the shelf: its title, when it was saved (seconds since 1970), its small picture."""

    name: str
    title: str
    saved_s: float
    bands: int
    readable: bool
    glance: Glance | None


class Shelf(msgspec.Struct, frozen=True, kw_only=True):
    """The folder and what lies in it."""

    folder: str
    pieces: tuple[Shelved, ...]


class NewPiece(msgspec.Struct, frozen=True, kw_only=True):
    """A document to be laid on the shelf under a name of its own."""

    document: dict[str, Any]


class Saving(msgspec.Struct, frozen=True, kw_only=True):
    """A document to be saved, and the edition that the page began from."""

    document: dict[str, Any]
    edition: str


class Saved(msgspec.Struct, frozen=True, kw_only=True):
    """What was saved, and its new edition."""

    name: str
    edition: str


class Version(msgspec.Struct, frozen=True, kw_only=True):
    """A version that was kept, and when (seconds since 1970)."""

    version: str
    kept_s: float


class Working(msgspec.Struct, frozen=True, kw_only=True):
    """A document to be worked. Of one page the request with the highest serial number counts."""

    document: dict[str, Any]
    page: Annotated[str, msgspec.Meta(max_length=64)] = ""
    serial: Annotated[int, msgspec.Meta(ge=0)] = 0


class Snapping(msgspec.Struct, frozen=True, kw_only=True):
    """A document, and the band that snaps."""

    document: dict[str, Any]
    band: Annotated[int, msgspec.Meta(ge=1)]


class Snapped(msgspec.Struct, frozen=True, kw_only=True):
    """The bands that fall with it; `held` says whether the band was held in the first place."""

    band: int
    held: bool
    falls: tuple[int, ...]


class Refusal(msgspec.Struct, frozen=True, kw_only=True):
    """Why something was not done, in a sentence, with the findings that say where."""

    reason: str
    findings: tuple[Worded, ...] = ()


@dataclass(frozen=True)
class Studio:
    """What all routes share: the folder of pieces, the desk, and what is done in the background."""

    folder: Folder
    desk: Desk
    jobs: Jobs


class RefusedError(Exception):
    """Ends a request with its status and the reason; without one, the first finding is the reason."""

    def __init__(self, status: int, reason: Phrase | None, findings: tuple[Finding, ...] = ()) -> None:
        super().__init__(reason)
        self.status, self.reason, self.findings = status, reason, findings

    def refusal(self, language: Language) -> Refusal:
        """Put the refusal in words."""
        told = tuple(worded(each, language) for each in self.findings)
        reason = told[0].message if self.reason is None else word(self.reason, language)
        return Refusal(reason=reason, findings=told)


# --- pieces -------------------------------------------------------------------------------------------


@get("/pieces", sync_to_thread=True)
def list_pieces(studio: NamedDependency[Studio]) -> Shelf:
    """List the pieces in the folder, the latest first."""
    folder = studio.folder
    found = []
    for name in folder.names():
        try:
            found.append(_shelved(name, folder.open(name), folder.saved_s(name)))
        except NoPieceError:  # removed, or grown too large, since it was listed
            continue
    return Shelf(folder=folder.root.name, pieces=tuple(found))


@post("/pieces", sync_to_thread=True)
def add_piece(studio: NamedDependency[Studio], data: JSONBody[NewPiece]) -> Saved:
    """Lay a new piece on the shelf, named after its title."""
    pattern = _pattern(data.document)
    for _ in range(100):
        name = studio.folder.free_name(pattern.title)
        try:
            return Saved(name=name, edition=studio.folder.save(name, write(pattern), None))
        except ChangedError:  # someone took the name just now
            continue
    raise RefusedError(409, phrase("no-name-free"))


@get("/pieces/{name:str}", sync_to_thread=True)
def open_piece(studio: NamedDependency[Studio], name: FromPath[str]) -> Piece:
    """Open a piece."""
    return _opened(name, studio.folder.open(name))


@put("/pieces/{name:str}", sync_to_thread=True)
def save_piece(studio: NamedDependency[Studio], name: FromPath[str], data: JSONBody[Saving]) -> Saved:
    """Save a piece, unless it was changed elsewhere since the edition that the page began from."""
    text = write(_pattern(data.document))
    return Saved(name=name, edition=studio.folder.save(name, text, data.edition))


@delete("/pieces/{name:str}", sync_to_thread=True, status_code=204)
def remove_piece(studio: NamedDependency[Studio], name: FromPath[str]) -> None:
    """Take a piece off the shelf; its file is kept aside."""
    studio.folder.remove(name)


@post("/pieces/{name:str}/versions", sync_to_thread=True)
def keep_version(studio: NamedDependency[Studio], name: FromPath[str]) -> Version:
    """Keep the piece as it is now as a version."""
    version = studio.folder.keep(name)
    kept = {each.version: each.kept_s for each in studio.folder.versions(name)}
    return Version(version=version, kept_s=kept[version])


@get("/pieces/{name:str}/versions", sync_to_thread=True)
def list_versions(studio: NamedDependency[Studio], name: FromPath[str]) -> tuple[Version, ...]:
    """List the versions of a piece, the latest first."""
    return tuple(Version(version=v, kept_s=s) for v, s in studio.folder.versions(name))


@get("/pieces/{name:str}/versions/{version:str}", sync_to_thread=True)
def open_version(studio: NamedDependency[Studio], name: FromPath[str], version: FromPath[str]) -> Piece:
    """Open a version of a piece."""
    return _opened(name, studio.folder.open_version(name, version))


@get("/starts", sync_to_thread=True)
def list_starts() -> tuple[Start, ...]:
    """List the pieces to begin from."""
    return starts()


# --- the line -----------------------------------------------------------------------------------------


@post("/work", sync_to_thread=True, status_code=200)
def work_pattern(
    studio: NamedDependency[Studio], data: JSONBody[Working], language: FromQuery[Language] = "en"
) -> Seen:
    """Take a document through the line."""
    made = studio.desk.work(msgspec.json.encode(data.document), data.page, data.serial)
    if isinstance(made, Reading):
        return Seen(readable=False, findings=tuple(worded(each, language) for each in made.findings))
    return seen(made, language)


@post("/snap", sync_to_thread=True, status_code=200)
def snap_band(studio: NamedDependency[Studio], data: JSONBody[Snapping]) -> Snapped:
    """Say what falls if one band snaps."""
    falls = studio.desk.lost_with(msgspec.json.encode(data.document), data.band)
    if isinstance(falls, Finding):
        raise RefusedError(422, None, (falls,))
    return Snapped(band=data.band, held=falls is not None, falls=falls or ())


@post("/fit", sync_to_thread=True, status_code=200)
def fit_wrist(data: JSONBody[Fitting], language: FromQuery[Language] = "en") -> Fitted:
    """Say whom a measured piece fits, and what would make it fit a wrist."""
    return fitted(_pattern(data.document), data.measured, data.wrist, data.lengths, language)


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
    fit_wrist,
)


# --- refusals -----------------------------------------------------------------------------------------


def refuse(request: Request[Any, Any, Any], error: Exception) -> Response[Refusal]:
    """Answer an error with a sentence, in the language of the request; what is our own stays inside."""
    asked = request.query_params.get("language")
    language: Language = next((each for each in LANGUAGES if each == asked), "en")

    def told(status: int, reason: Phrase) -> Response[Refusal]:
        return _answer(status, Refusal(reason=word(reason, language)))

    match error:
        case RefusedError():
            return _answer(error.status, error.refusal(language))
        case NoPieceError():
            return told(404, phrase("no-such-piece"))
        case NoJobError():
            return told(404, phrase("no-such-work"))
        case BusyError():
            return told(429, phrase("too-much-under-way"))
        case ChangedError():
            return told(409, phrase("changed-elsewhere"))
        case OvertakenError():
            return told(409, phrase("overtaken"))
        case OSError():
            return told(507, phrase("folder-read-only", reason=str(error.strerror)))
        case HTTPException():
            return _answer(error.status_code, Refusal(reason=error.detail[:200]))
        case _:
            return told(500, phrase("wrong-inside"))


def _answer(status: int, refusal: Refusal) -> Response[Refusal]:
    return Response(refusal, status_code=status, media_type="application/json")


def _pattern(document: dict[str, Any]) -> Pattern:
    reading = read(msgspec.json.encode(document))
    if reading.pattern is None:
        raise RefusedError(422, phrase("no-pattern"), reading.findings)
    return reading.pattern


def _opened(name: str, data: JSONBody[bytes]) -> Piece:
    reading = read(data)
    if reading.pattern is None:
        raise RefusedError(422, phrase("file-no-pattern"), reading.findings)
    return Piece(name=name, edition=edition_of(data), document=msgspec.json.decode(write(reading.pattern)))


def _shelved(name: str, data: JSONBody[bytes], saved_s: float) -> Shelved:
    pattern = read(data).pattern
    if pattern is None:
        return Shelved(name=name, title=name, saved_s=saved_s, bands=0, readable=False, glance=None)
    if len(data) > MOST_GLANCED_BYTES:
        return Shelved(name=name, title=pattern.title, saved_s=saved_s, bands=0, readable=True, glance=None)
    history = replay(board(pattern.loom), expand(pattern).doings)
    return Shelved(
        name=name,
        title=pattern.title,
        saved_s=saved_s,
        bands=history.final.bands,
        readable=True,
        glance=glance(pattern, history),
    )
