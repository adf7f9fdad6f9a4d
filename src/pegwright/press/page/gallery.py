"""The gallery as one HTML file; its pictures are inside, the files that were made lie beside it."""

from __future__ import annotations

import base64
from html import escape
from itertools import chain
from urllib.parse import quote

from pegwright.lesson import Gallery, GalleryCard, GalleryLink
from pegwright.press.page.html import html_document, tag

__all__ = ["gallery_html"]


def gallery_html(gallery: Gallery) -> str:
    """Return the page. Without its script everything is shown; with it, what fits the words typed."""
    box = f'<label>{tag("span", gallery.search)} <input id="search" type="search" autocomplete="off"></label>'
    count = tag(
        "output",
        gallery.counted.replace("{n}", str(len(gallery.cards))),
        id="count",
        data_words=gallery.counted,
    )
    cards = "".join(
        _card(gallery, *each)
        for each in zip(gallery.cards, gallery.lines, gallery.files, gallery.groups, strict=True)
    )
    body = (
        f"<header>{tag('h1', gallery.title)}{box}{count}</header>"
        f"<main>{cards}{tag('p', gallery.none, id='none', hidden='hidden')}</main>"
    )
    if gallery.failures:
        items = "".join(tag("li", text) for text in gallery.failures)
        body += f"<footer>{tag('h2', gallery.failed)}<ul>{items}</ul></footer>"
    return html_document(language=gallery.language, title=gallery.title, name="gallery", body=body)


def _card(
    gallery: Gallery,
    card: GalleryCard,
    lines: tuple[str, ...],
    files: str,
    groups: tuple[tuple[str, tuple[GalleryLink, ...]], ...],
) -> str:
    chips = "".join(
        f"<li>{_dot(tint)}{tag('b', letter)} {tag('span', f'{name} × {number}')}</li>"
        for letter, name, tint, number in card.colours
    )
    links = "".join(
        f'{tag("h3", heading)}<ul class="files">'
        + "".join(f"<li>{tag('a', link.name, href=quote(link.path))}</li>" for link in group)
        + "</ul>"
        for heading, group in groups
    )
    words = " ".join(
        [card.title, *lines, *chain.from_iterable((name, letter) for letter, name, _, _ in card.colours)]
    )
    text = "".join(tag("p", line) for line in lines)
    rows = "".join(f"<tr>{tag('th', name, scope='row')}{tag('td', value)}</tr>" for name, value in card.facts)
    text += f"<table>{rows}</table>" if rows else ""
    if card.notes:
        text += tag("h3", card.notes[0]) + "".join(tag("p", note) for note in card.notes[1:])
    return (
        f'<article data-words="{escape(words.casefold())}">'
        f'{_picture(gallery, card)}{tag("h2", card.title)}{text}<ul class="chips">{chips}</ul>'
        f"<details>{tag('summary', files)}{links}</details></article>"
    )


def _picture(gallery: Gallery, card: GalleryCard) -> str:
    if not card.picture:
        return ""
    data = f"data:image/png;base64,{base64.b64encode(card.picture).decode()}"
    image = tag("img", "", src=data, alt=f"{gallery.picture}: {card.title}", loading="lazy")
    return image.removesuffix("</img>")


def _dot(tint: str) -> str:
    """Return a dot of a tint; grey if it is none, for it stands in an attribute."""
    fill = tint if len(tint) == 7 and tint[0] == "#" and tint[1:].isalnum() else "#888888"
    circle = f'<circle cx="5" cy="5" r="4.5" fill="{fill}"/>'
    return f'<svg viewBox="0 0 10 10" aria-hidden="true">{circle}</svg>'
