"""The routes of what lies beside the pieces: the motifs in them, and the maker's own stash of bands."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec
from litestar import get, put
from litestar.di import NamedDependency
from litestar.params import JSONBody

from pegwright.finding import phrase
from pegwright.fit.stash import Stash, read_stash, write_stash
from pegwright.pattern import Pattern, read
from pegwright.server.folder import NoPieceError
from pegwright.server.motifs import ShelvedMotif, all_motifs
from pegwright.server.routes import RefusedError, Studio
from pegwright.server.starts import starts


class Stashed(msgspec.Struct, frozen=True, kw_only=True):
    """The maker's stash and its edition, which is empty while there is none."""

    stash: Stash
    edition: str


@get("/motifs", sync_to_thread=True)
def list_motifs(studio: NamedDependency[Studio]) -> tuple[ShelvedMotif, ...]:
    """List the motifs of the pieces on the shelf, the latest first, and then those of the built-in ones."""

    def pieces() -> Iterator[tuple[str, Pattern]]:
        for name in studio.folder.names():
            try:
                pattern = read(studio.folder.open(name)).pattern
            except NoPieceError:  # removed, or grown too large, since it was listed
                continue
            if pattern is not None:
                yield name, pattern
        for start in starts():
            pattern = read(msgspec.json.encode(start.document)).pattern
            if pattern is not None:
                yield "", pattern

    return all_motifs(pieces())


@get("/stash", sync_to_thread=True)
def open_stash(studio: NamedDependency[Studio]) -> Stashed:
    """Open the stash; an empty one where there is none yet."""
    data, edition = studio.folder.open_stash()
    if not edition:
        return Stashed(stash=Stash(), edition="")
    reading = read_stash(data)
    if reading.stash is None:
        raise RefusedError(422, phrase("file-no-stash"), reading.findings)
    return Stashed(stash=reading.stash, edition=edition)


@put("/stash", sync_to_thread=True)
def save_stash(studio: NamedDependency[Studio], data: JSONBody[Stashed]) -> Stashed:
    """Save the stash, unless it was changed elsewhere since the edition that the page began from."""
    edition = studio.folder.save_stash(write_stash(data.stash), data.edition)
    return Stashed(stash=data.stash, edition=edition)


SHELF_ROUTES = (list_motifs, open_stash, save_stash)
