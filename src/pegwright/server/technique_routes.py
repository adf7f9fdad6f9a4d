"""The routes of the library of techniques: all of them with their measures, and one to work with."""

from __future__ import annotations

from litestar import Response, get
from litestar.di import NamedDependency
from litestar.params import FromPath, FromQuery

from pegwright.finding import Language
from pegwright.server.line_requests import FindTechniques
from pegwright.server.routes import Studio, hand_on
from pegwright.server.technique_responses import TechniquePiece, TechniqueResponse, piece_of_technique


@get("/techniques", sync_to_thread=True)
def list_all(
    studio: NamedDependency[Studio], language: FromQuery[Language] = "en"
) -> Response[tuple[TechniqueResponse, ...]]:
    """List the techniques of the atlas."""
    return hand_on(studio.workers.ask(FindTechniques(language)))


@get("/techniques/{name:str}", sync_to_thread=True)
def open_technique(name: FromPath[str], language: FromQuery[Language] = "en") -> TechniquePiece:
    """Open a technique, to begin with it or to lay it."""
    return piece_of_technique(name, language)


TECHNIQUE_ROUTES = (list_all, open_technique)
