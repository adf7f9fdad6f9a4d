"""What the front end's types are made from: the routes, their values, and the pattern document.

`python -m pegwright.server.schema FILE` writes it as one OpenAPI 3.1 document.
"""

from __future__ import annotations

import json
import sys
import tempfile
from pathlib import Path
from typing import Any

import msgspec

from pegwright.fit.measured import Lengths, Measured
from pegwright.pattern import Pattern
from pegwright.server import routes
from pegwright.server.app import make_litestar
from pegwright.server.fitting import Fitted, Fitting
from pegwright.server.job_routes import Sending
from pegwright.server.jobs import Told
from pegwright.server.motifs import ShelvedMotif
from pegwright.server.rehearsing import Rehearsed
from pegwright.server.seen import Seen
from pegwright.server.shelf_routes import Stashed
from pegwright.server.solid import AtRest
from pegwright.server.starts import Start

_VALUES = (
    Pattern,
    Seen,
    Start,
    routes.Piece,
    routes.Shelf,
    routes.NewPiece,
    routes.Saving,
    routes.Saved,
    routes.Version,
    routes.Working,
    routes.Snapping,
    routes.Snapped,
    routes.Refusal,
    Sending,
    AtRest,
    Measured,
    Lengths,
    Fitting,
    Fitted,
    Rehearsed,
    ShelvedMotif,
    Stashed,
    Told,
)


def schema() -> dict[str, Any]:
    """Return the OpenAPI document.

    The paths are the server's; the values are described by the library that encodes them, which knows the
    tags and other names of their fields.
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
    text = json.dumps(schema(), indent=1, sort_keys=True, ensure_ascii=False)
    Path(target).write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1])
