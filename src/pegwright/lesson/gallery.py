"""A gallery: a page of everything that was made in one go, with pictures, to be searched."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from pegwright.lesson.say.phrasebook import Phrasebook, single_line

__all__ = ["Gallery", "GalleryCard", "GalleryLink", "plan_gallery"]


class GalleryLink(msgspec.Struct, frozen=True):
    """A file that was made: the language and hand it is for, its name, and its path from the page."""

    language: str
    hand: str
    name: str
    path: str


class GalleryCard(msgspec.Struct, frozen=True, kw_only=True):
    """One piece in one variant.

    `variant` says what is different in it, empty where nothing is. `colours` has letter, name, tint and
    number of bands, `facts` what more there is to tell, as a name and a value, `notes` a heading and
    sentences under it; `picture` is a PNG, or empty.
    """

    title: str
    variant: str
    holds: bool
    bands: int
    colours: tuple[tuple[str, str, str, int], ...]
    links: tuple[GalleryLink, ...]
    facts: tuple[tuple[str, str], ...] = ()
    notes: tuple[str, ...] = ()
    picture: bytes = b""


class Gallery(msgspec.Struct, frozen=True, kw_only=True):
    """The page in one language: its texts, and the cards in order.

    `lines` says of each card what it is, `files` how many files it has, `groups` what they are. `counted` is
    how many are shown, with `{n}` for the number, which the page fills in.
    """

    language: str
    title: str
    search: str
    counted: str
    none: str
    picture: str
    cards: tuple[GalleryCard, ...]
    lines: tuple[tuple[str, ...], ...]
    files: tuple[str, ...]
    groups: tuple[tuple[tuple[str, tuple[GalleryLink, ...]], ...], ...]
    failures: tuple[str, ...] = ()
    failed: str = ""


def plan_gallery(
    cards: Sequence[GalleryCard],
    failures: Sequence[tuple[str, str]] = (),
    language: str = "en",
    *,
    title: str = "",
) -> Gallery:
    """Plan the page of some cards, under its usual title or another.

    `failures` has what could not be made, and why.

    Raises:
        ValueError: the language is unknown.
    """
    book = Phrasebook(language)
    return Gallery(
        language=language,
        title=title or book.say("gallery-title"),
        search=book.say("gallery-search"),
        counted=book.say("gallery-counted", n="{n}"),
        none=book.say("gallery-none"),
        picture=book.say("gallery-picture"),
        cards=tuple(cards),
        lines=tuple(_lines(book, card) for card in cards),
        files=tuple(book.say("gallery-files", n=len(card.links)) for card in cards),
        groups=tuple(_groups(book, card) for card in cards),
        failures=tuple(
            book.say("gallery-failure", what=single_line(what), why=single_line(why))
            for what, why in failures
        ),
        failed=book.say("gallery-failed", n=len(failures)) if failures else "",
    )


def _lines(book: Phrasebook, card: GalleryCard) -> tuple[str, ...]:
    bands = book.say("gallery-bands", n=card.bands)
    return (
        *([card.variant] if card.variant else []),
        bands if card.holds else book.say("gallery-falls", bands=bands),
    )


def _groups(book: Phrasebook, card: GalleryCard) -> tuple[tuple[str, tuple[GalleryLink, ...]], ...]:
    """Return the links by language and hand, each with its heading."""
    groups: dict[tuple[str, str], list[GalleryLink]] = {}
    for link in card.links:
        groups.setdefault((link.language, link.hand), []).append(link)
    return tuple(
        (book.say("gallery-left", language=language) if hand == "left" else language, tuple(links))
        for (language, hand), links in groups.items()
    )
