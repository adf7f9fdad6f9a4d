"""The schema for the front end's types: the routes, their values, and the pattern document.

`python -m pegwright.server.schema FILE` writes it as one OpenAPI 3.1 document.
"""

from __future__ import annotations

import json
import sys
import tempfile
from pathlib import Path
from typing import Any

import msgspec

from pegwright.fit import PieceMeasurements, RepeatOptions
from pegwright.pattern import Pattern
from pegwright.server import routes
from pegwright.server.app import make_litestar
from pegwright.server.fit_responses import FitRequest, FitResponse
from pegwright.server.job_routes import StartJobRequest
from pegwright.server.jobs import JobStatus
from pegwright.server.line_requests import SnapResponse
from pegwright.server.listen_responses import DraftResponse, ListenResponse
from pegwright.server.mat_responses import MatLook, MatMade, MatPreview
from pegwright.server.motifs import ShelvedMotif
from pegwright.server.plan_responses import MendsResponse, OrdersResponse
from pegwright.server.read_responses import ReadRequest, ReadResponse
from pegwright.server.rehearsal_responses import RehearsalResponse
from pegwright.server.resting import AtRest
from pegwright.server.shelf_routes import StashResponse
from pegwright.server.starters import Starter
from pegwright.server.technique_responses import TechniquePiece, TechniqueResponse
from pegwright.server.variant_responses import VariantsResponse
from pegwright.server.work_responses import WorkResponse

_VALUES = (
    Pattern,
    WorkResponse,
    Starter,
    routes.OpenedPiece,
    routes.ShelfResponse,
    routes.NewPiece,
    routes.SaveRequest,
    routes.Saved,
    routes.Version,
    routes.WorkRequest,
    routes.SnapRequest,
    SnapResponse,
    routes.Refusal,
    StartJobRequest,
    AtRest,
    PieceMeasurements,
    RepeatOptions,
    FitRequest,
    FitResponse,
    ReadRequest,
    ReadResponse,
    RehearsalResponse,
    OrdersResponse,
    MendsResponse,
    ListenResponse,
    DraftResponse,
    ShelvedMotif,
    StashResponse,
    JobStatus,
    MatLook,
    MatPreview,
    MatMade,
    VariantsResponse,
    TechniqueResponse,
    TechniquePiece,
)


def api_schema() -> dict[str, Any]:
    """Return the OpenAPI document.

    The paths are the server's. The values are described by the library that encodes them, which knows tags
    and renamed fields.
    """
    with tempfile.TemporaryDirectory() as folder:
        paths = make_litestar(Path(folder)).openapi_schema.to_schema()
    _, values = msgspec.json.schema_components(_VALUES, ref_template="#/components/schemas/{name}")
    named = paths["components"]["schemas"]
    missing = named.keys() - values.keys()
    return {
        "openapi": "3.1.0",
        "info": paths["info"],
        "paths": {path: given for path, given in paths["paths"].items() if path.startswith("/api/")},
        "components": {"schemas": {**{name: named[name] for name in missing}, **values}},
    }


def main(target: str) -> None:
    """Write the document to a file."""
    text = json.dumps(api_schema(), indent=1, sort_keys=True, ensure_ascii=False)
    Path(target).write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1])
