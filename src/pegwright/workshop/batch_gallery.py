"""The page of a batch: one card for each piece in each variant, with links to what was made of it."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from pathlib import Path

from pegwright.finding import phrase, word_phrase
from pegwright.lesson import GalleryCard, GalleryLink, plan_gallery
from pegwright.press import gallery_html
from pegwright.variants import describe_variant
from pegwright.workshop.batch import BatchPlace, BatchRun
from pegwright.workshop.files import read_plain_file
from pegwright.workshop.folder import write_into

__all__ = ["write_gallery"]

_PICTURE = "picture.png"


def write_gallery(run: BatchRun, folder: Path, language: str = "en") -> Path:
    """Write `index.html` of a batch into its folder, and return its path.

    Raises:
        OSError: the folder cannot be written to.
        ValueError: the language is unknown.
    """
    places = sorted(run.places, key=lambda place: (place.piece, place.variant, place.folder))
    cards = [
        _card(list(group), folder, language)
        for _, group in groupby(places, key=lambda place: (place.piece, place.variant))
    ]
    failures = [(failure.folder, failure.why) for failure in run.failures]
    page = gallery_html(plan_gallery(cards, failures, language))
    return write_into(folder, "index.html", page.encode())


def _card(places: Sequence[BatchPlace], folder: Path, language: str) -> GalleryCard:
    first = next((place for place in places if place.language == language), places[0])
    pictured = next((place for place in (first, *places) if _PICTURE in place.files), None)
    return GalleryCard(
        title=first.title,
        variant=_say_variant(first.variant, language),
        holds=first.holds,
        bands=first.bands,
        colours=first.colours,
        links=tuple(
            GalleryLink(place.language, place.hand, name, f"{place.folder}/{name}")
            for place in places
            for name in place.files
        ),
        picture=read_plain_file(folder / pictured.folder / _PICTURE) if pictured else b"",
    )


def _say_variant(name: str, language: str) -> str:
    """Say what is different in a variant; empty for the piece as it is."""
    parts = describe_variant(name)
    said = word_phrase(phrase("variant-name", parts=parts), language) if parts else ""  # type: ignore[arg-type]
    return said[:1].upper() + said[1:]
