"""The routes of long work: start a job, follow it, fetch its files, end it."""

from __future__ import annotations

from pathlib import PurePosixPath
from typing import Annotated, Any

import msgspec
from litestar import Response, delete, get, post
from litestar.di import NamedDependency
from litestar.params import FromPath, FromQuery, JSONBody

from pegwright.press import MEDIA
from pegwright.server.guard import PREVIEW
from pegwright.server.job_requests import JobRequest
from pegwright.server.jobs import JobStatus, NoJobError
from pegwright.server.routes import Studio


class StartJobRequest(msgspec.Struct, frozen=True, kw_only=True):
    """A request for a piece. A newer one of the same kind for the same piece replaces it."""

    piece: Annotated[str, msgspec.Meta(max_length=200)]
    job: JobRequest
    document: dict[str, Any]


@post("/jobs", sync_to_thread=True)
def start_job(studio: NamedDependency[Studio], data: JSONBody[StartJobRequest]) -> JobStatus:
    """Start a job."""
    slot = f"{msgspec.to_builtins(data.job)['do']} {data.piece}"
    return studio.jobs.start(slot, data.job, data.document)


@get("/jobs/{job:str}", sync_to_thread=True)
def look_at_job(studio: NamedDependency[Studio], job: FromPath[str], seen: FromQuery[int] = -1) -> JobStatus:
    """Return the status of a job as soon as it is newer than `seen`."""
    return studio.jobs.status(job, seen)


@delete("/jobs/{job:str}", sync_to_thread=True, status_code=200)
def end_job(studio: NamedDependency[Studio], job: FromPath[str]) -> JobStatus:
    """End a job at once."""
    return studio.jobs.end(job)


@get("/jobs/{job:str}/files/{file:path}", sync_to_thread=True)
def fetch_file(studio: NamedDependency[Studio], job: FromPath[str], file: FromPath[str]) -> Response[bytes]:
    """Return a file that a job has made."""
    name = file.lstrip("/")
    return Response(studio.jobs.file(job, name), media_type=_media(name))


@get(PREVIEW + "{job:str}/{file:str}", sync_to_thread=True)
def preview_page(studio: NamedDependency[Studio], job: FromPath[str], file: FromPath[str]) -> Response[bytes]:
    """Return a page that a job has made, for a frame that is cut off from the studio (see `guard`).

    A frame cannot send the token. The job's name, which only the studio's own page knows, stands in for it,
    and only pages are served.
    """
    if not file.endswith(".html"):
        raise NoJobError(file)
    return Response(studio.jobs.file(job, file), media_type=MEDIA[".html"])


def _media(name: str) -> str:
    return MEDIA.get(PurePosixPath(name).suffix, "application/octet-stream")


JOB_ROUTES = (start_job, look_at_job, end_job, fetch_file)
