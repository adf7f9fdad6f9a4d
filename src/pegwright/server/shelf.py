"""What the files on the shelf hold: a worker looks once at each state of a file, for a few seconds."""

from __future__ import annotations

import time
from collections import OrderedDict
from collections.abc import Iterator
from threading import Lock

import msgspec

from pegwright.server.folder import Folder, NoPieceError, TooLargeError
from pegwright.server.line_requests import FindMotifs, GlanceAtPiece, LineRequest, PieceGlance
from pegwright.server.motifs import MOST_MOTIFS, ShelvedMotif
from pegwright.server.starters import Glance
from pegwright.server.workers import TooMuchError, Workers

PIECE_S = 2.0  # a file that takes longer is shown without its picture
SHELF_S = 4.0  # files not reached by then wait for the next time
_REMEMBERED = 10_000


class ShelvedPiece(msgspec.Struct, frozen=True, kw_only=True):
    """A piece on the shelf: title, time saved (seconds since 1970), small picture."""

    name: str
    title: str
    saved_s: float
    bands: int
    readable: bool
    glance: Glance | None


class Shelf:
    """Looks at the files of a folder. All methods are thread-safe."""

    def __init__(self, folder: Folder, workers: Workers) -> None:
        self._folder = folder
        self._workers = workers
        self._known: OrderedDict[tuple[str, str, int, int], bytes] = OrderedDict()
        self._turn = Lock()

    def pieces(self) -> Iterator[ShelvedPiece]:
        """Yield the piece of every file, latest saved first."""
        for name, saved_s, found in self._answers(GlanceAtPiece):
            if found is None:
                glance = PieceGlance(name, 0, None)
            else:
                glance = msgspec.json.decode(found, type=PieceGlance) if found else PieceGlance("", 0, None)
            yield ShelvedPiece(
                name=name,
                title=glance.title or name,
                saved_s=saved_s,
                bands=glance.bands,
                readable=bool(glance.title),
                glance=glance.glance,
            )

    def motifs(self) -> tuple[ShelvedMotif, ...]:
        """Return the motifs of the files, then of the built-in pieces, each motif once."""
        built_in = self._workers.ask(FindMotifs("", b"")).data
        shelved: dict[bytes, ShelvedMotif] = {}
        for found in (*(found for _, _, found in self._answers(FindMotifs)), built_in):
            for one in msgspec.json.decode(found, type=tuple[ShelvedMotif, ...]) if found else ():
                shelved.setdefault(msgspec.json.encode((one.name, one.motifs)), one)
        return tuple(shelved.values())[:MOST_MOTIFS]

    def _answers(
        self, kind: type[GlanceAtPiece] | type[FindMotifs]
    ) -> Iterator[tuple[str, float, bytes | None]]:
        """Yield each file's name, when it was saved, and what was found in it.

        The last is empty if looking took too long, and None if there was no time to look.
        """
        with self._turn:
            self._workers.wait_until_ready()
            until_s = time.monotonic() + SHELF_S
            for name in self._folder.names():
                try:
                    state = self._folder.state(name)
                    key = (kind.__name__, name, state.st_mtime_ns, state.st_size)
                    if key not in self._known and time.monotonic() < until_s:
                        self._known[key] = self._look(kind, name)
                        while len(self._known) > _REMEMBERED:
                            self._known.popitem(last=False)
                except NoPieceError:  # removed in the meantime
                    continue
                yield name, state.st_mtime, self._known.get(key)

    def _look(self, kind: type[GlanceAtPiece] | type[FindMotifs], name: str) -> bytes:
        """Return what is found in a file; nothing if it is too large or takes too long."""
        try:
            data = self._folder.open(name)
            request: LineRequest = GlanceAtPiece(data) if kind is GlanceAtPiece else FindMotifs(name, data)
            return self._workers.ask(request, "the shelf", limit_s=PIECE_S).data
        except (TooLargeError, TooMuchError):
            return b""
