"""The route by which the page looks at a picture as a mat, before it has one made."""

from __future__ import annotations

from litestar import Response, post
from litestar.di import NamedDependency
from litestar.params import FromQuery, JSONBody

from pegwright.finding import Language
from pegwright.server.line_requests import LookAtMat
from pegwright.server.mat_responses import MatLook, MatPreview
from pegwright.server.routes import Studio, hand_on


@post("/mat", sync_to_thread=True, status_code=200)
def look_at_picture(
    studio: NamedDependency[Studio], data: JSONBody[MatLook], language: FromQuery[Language] = "en"
) -> Response[MatPreview]:
    """Lay the cells of a picture out as the maker chose."""
    slot = f"mat {data.page}" if data.page else ""
    return hand_on(studio.workers.ask(LookAtMat(data.picture, data.choice, language), slot, data.serial))


MAT_ROUTES = (look_at_picture,)
