"""The application: routes, the built page, and the guard round both."""

from __future__ import annotations

from pathlib import Path

from litestar import Litestar, Router
from litestar.di import Provide
from litestar.openapi import OpenAPIConfig
from litestar.static_files import create_static_files_router

from pegwright import __version__
from pegwright.pattern.read import LIMIT_BYTES
from pegwright.server.desk import Desk
from pegwright.server.folder import Folder
from pegwright.server.guard import App, guarded
from pegwright.server.job_routes import JOB_ROUTES, preview_page
from pegwright.server.jobs import Jobs
from pegwright.server.routes import ROUTES, Studio, refuse
from pegwright.server.shelf_routes import SHELF_ROUTES

PAGE = Path(__file__).parent / "page"
_MOST_BYTES = LIMIT_BYTES + 100_000


def make_app(folder: Path, token: str, hosts: frozenset[str], page: Path = PAGE) -> App:
    """Return the studio on a folder, guarded (see `guard.guarded`). `page` is the built front end.

    Raises:
        FileNotFoundError: the front end is not built.
    """
    if not (page / "index.html").is_file():
        raise FileNotFoundError(page)
    return guarded(make_litestar(folder, page), token, hosts)  # type: ignore[arg-type]


def make_litestar(folder: Path, page: Path | None = None) -> Litestar:
    """Return the routes without their guard, for the guard to stand before and for the schema's sake."""
    studio = Studio(Folder(folder), Desk(), Jobs())
    api = Router("/api", route_handlers=[*ROUTES, *SHELF_ROUTES, *JOB_ROUTES])
    statics = [] if page is None else [create_static_files_router("/", [page], html_mode=True)]
    return Litestar(
        [api, preview_page, *statics],
        dependencies={"studio": Provide(lambda: studio, sync_to_thread=False)},
        exception_handlers={Exception: refuse},
        openapi_config=OpenAPIConfig(title="Pegwright studio", version=__version__, path="/api/schema"),
        request_max_body_size=_MOST_BYTES,
        debug=False,
    )
