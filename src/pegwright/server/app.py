"""The application: routes, the built page, and a guard in front of both."""

from __future__ import annotations

from pathlib import Path

from litestar import Litestar, Router
from litestar.di import Provide
from litestar.openapi import OpenAPIConfig
from litestar.static_files import create_static_files_router

from pegwright import __version__
from pegwright.pattern import MAX_BYTES
from pegwright.server.folder import Folder
from pegwright.server.guard import App, guard_app
from pegwright.server.job_routes import JOB_ROUTES, preview_page
from pegwright.server.jobs import Jobs
from pegwright.server.mat_routes import MAT_ROUTES
from pegwright.server.routes import ROUTES, Studio, refuse
from pegwright.server.shelf import Shelf
from pegwright.server.shelf_routes import SHELF_ROUTES
from pegwright.server.technique_routes import TECHNIQUE_ROUTES
from pegwright.server.ticket import admit_once
from pegwright.server.workers import Workers

PAGE = Path(__file__).parent / "page"
_MOST_BYTES = MAX_BYTES + 100_000


def make_app(
    folder: Path,
    token: str,
    hosts: frozenset[str],
    page: Path = PAGE,
    workers: Workers | None = None,
    *,
    ticket: str = "",
) -> App:
    """Return the studio on a folder, guarded (see `guard.guard_app`). `page` is the built front end.

    Studios can share `workers`; without any, this one starts its own. A `ticket` opens the page with its key
    once (see `ticket.admit_once`).

    Raises:
        FileNotFoundError: the front end has not been built.
    """
    if not (page / "index.html").is_file():
        raise FileNotFoundError(page)
    app: App = make_litestar(folder, page, workers)  # type: ignore[assignment]
    return guard_app(admit_once(app, ticket, token) if ticket else app, token, hosts, page)


def make_litestar(folder: Path, page: Path | None = None, workers: Workers | None = None) -> Litestar:
    """Return the routes without their guard, for `make_app` and for the schema."""
    shelf_folder, workers = Folder(folder), workers or Workers()
    studio = Studio(shelf_folder, Shelf(shelf_folder, workers), workers, Jobs())
    api = Router("/api", route_handlers=[*ROUTES, *SHELF_ROUTES, *JOB_ROUTES, *MAT_ROUTES, *TECHNIQUE_ROUTES])
    statics = [] if page is None else [create_static_files_router("/", [page], html_mode=True)]
    return Litestar(
        [api, preview_page, *statics],
        dependencies={"studio": Provide(lambda: studio, sync_to_thread=False)},
        exception_handlers={Exception: refuse},
        openapi_config=OpenAPIConfig(title="Pegwright studio", version=__version__, path="/api/schema"),
        request_max_body_size=_MOST_BYTES,
        debug=False,
    )
