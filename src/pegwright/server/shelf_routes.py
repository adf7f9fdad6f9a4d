"""The routes for what goes with the pieces: their motifs, and the maker's stash of bands."""

from __future__ import annotations

import msgspec
from litestar import get, put
from litestar.di import NamedDependency
from litestar.params import JSONBody

from pegwright.finding import phrase
from pegwright.fit import Stash, read_stash, write_stash
from pegwright.server.motifs import ShelvedMotif
from pegwright.server.routes import HttpRefusedError, Studio


class StashResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The maker's stash and its edition, which is empty while there is none."""

    stash: Stash
    edition: str


@get("/motifs", sync_to_thread=True)
def list_motifs(studio: NamedDependency[Studio]) -> tuple[ShelvedMotif, ...]:
    """List the motifs of the pieces on the shelf, latest first, then those of the built-in pieces."""
    return studio.shelf.motifs()


@get("/stash", sync_to_thread=True)
def open_stash(studio: NamedDependency[Studio]) -> StashResponse:
    """Open the stash, an empty one if there is none yet."""
    data, edition = studio.folder.open_stash()
    if not edition:
        return StashResponse(stash=Stash(), edition="")
    reading = read_stash(data)
    if reading.stash is None:
        raise HttpRefusedError(422, phrase("file-no-stash"), reading.findings)
    return StashResponse(stash=reading.stash, edition=edition)


@put("/stash", sync_to_thread=True)
def save_stash(studio: NamedDependency[Studio], data: JSONBody[StashResponse]) -> StashResponse:
    """Save the stash, unless it was changed elsewhere since the edition that the page started from."""
    edition = studio.folder.save_stash(write_stash(data.stash), data.edition)
    return StashResponse(stash=data.stash, edition=edition)


SHELF_ROUTES = (list_motifs, open_stash, save_stash)
