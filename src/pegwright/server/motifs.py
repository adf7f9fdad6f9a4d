"""The motifs of the pieces at hand, each with a small picture and everything needed to work it elsewhere."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

import msgspec

from pegwright.loom import board_of
from pegwright.pattern import (
    Hook,
    Move,
    Pattern,
    PatternStep,
    Place,
    Repeat,
    Slide,
    Transfer,
    Use,
    Wind,
    colours_by_letter,
    expand,
    motifs_by_name,
    read_pattern,
    texts_of,
    write_pattern,
)
from pegwright.server.starters import Glance, GlanceBand, load_starters

MOST_MOTIFS = 500
_ABOUT_MM = 17.0  # pegs this close to those of a motif are shown too


class ShelvedMotif(msgspec.Struct, frozen=True, kw_only=True):
    """A motif of a piece on the shelf; `piece` is empty for a motif of a built-in piece.

    `motifs` are itself, first, and those that it works within; `colours` those of the letters it names.
    `slots` fills in its colours as the piece does. `language` is that of its texts, `translations` has
    them in others, as in the document.
    """

    piece: str
    title: str
    name: str
    bands: int
    glance: Glance
    loom: dict[str, Any]
    motifs: tuple[dict[str, Any], ...]
    colours: tuple[dict[str, Any], ...]
    slots: dict[str, str]
    language: str
    translations: dict[str, dict[str, str]]


def built_in_motifs() -> Iterator[ShelvedMotif]:
    """Yield the motifs of the pieces to start from."""
    for start in load_starters():
        pattern = read_pattern(msgspec.json.encode(start.document)).pattern
        if pattern is not None:
            yield from motifs_of("", pattern)


def motifs_of(piece: str, pattern: Pattern) -> Iterator[ShelvedMotif]:
    """Yield the motifs of a pattern that name a peg."""
    document = msgspec.json.decode(write_pattern(pattern))
    documents = {motif["name"]: motif for motif in reversed(document.get("motifs", []))}
    for motif in pattern.motifs:
        slots = _slots(pattern, motif.name)
        use = Use(name=motif.name, colours=slots)
        moves = [
            doing.move for doing in expand(msgspec.structs.replace(pattern, steps=(use,), stated=None)).moves
        ]
        glance = _glance(pattern, moves)
        if glance is None:
            continue
        letters = {move.colour for move in moves if isinstance(move, Place | Wind)} | set(slots.values())
        within = _within(pattern, motif.name)
        yield ShelvedMotif(
            piece=piece,
            title=pattern.title,
            name=motif.name,
            bands=sum(isinstance(move, Place | Wind) for move in moves),
            glance=glance,
            loom=document["loom"],
            motifs=tuple(documents[name] for name in within),
            colours=tuple(each for each in document.get("colours", []) if each["letter"] in letters),
            slots=slots,
            language=pattern.language,
            translations=_translations(pattern, set(within), letters),
        )


def _translations(pattern: Pattern, names: set[str], letters: set[str]) -> dict[str, dict[str, str]]:
    """Return the translations of what is written in some motifs and of the names of some colours."""
    part = msgspec.structs.replace(
        pattern,
        notes="",
        steps=(),
        motifs=tuple(motif for motif in pattern.motifs if motif.name in names),
        colours=tuple(colour for colour in pattern.colours if colour.letter in letters),
    )
    here = {one.text for one in texts_of(part) if not one.is_name}
    found = {
        language: {text: said for text, said in table.items() if text in here}
        for language, table in pattern.translations.items()
    }
    return {language: table for language, table in found.items() if table}


def _slots(pattern: Pattern, name: str) -> dict[str, str]:
    """Return the colours that a piece fills in where it first works a motif."""
    motif = next(each for each in pattern.motifs if each.name == name)
    every = (pattern.steps, *(each.steps for each in pattern.motifs))
    given = next((use.colours for steps in every for use in _uses(steps) if use.name == name), {})
    usual = pattern.colours[0].letter if pattern.colours else "A"
    known = {colour.letter for colour in pattern.colours}
    return {slot: given[slot] if given.get(slot) in known else usual for slot in motif.colours}


def _within(pattern: Pattern, name: str) -> list[str]:
    """Return the names of a motif and of all motifs that it uses, each once."""
    motifs = motifs_by_name(pattern)
    found, open_ = [], [name]
    while open_:
        now = open_.pop(0)
        if now in found or now not in motifs:
            continue
        found.append(now)
        open_ += [use.name for use in _uses(motifs[now].steps)]
    return found


def _uses(steps: Iterable[PatternStep]) -> Iterator[Use]:
    for step in steps:
        if isinstance(step, Use):
            yield step
        elif isinstance(step, Repeat):
            yield from _uses(step.steps)


def _glance(pattern: Pattern, moves: list[Move]) -> Glance | None:
    """Return a small picture of moves: bands laid, arrows for loops carried; None if they name no peg."""
    pegs = board_of(pattern.loom).pegs
    tints = {letter: colour.hex for letter, colour in colours_by_letter(pattern).items()}
    laid: list[tuple[str, list[str]]] = []
    carried: list[tuple[str, str]] = []
    for move in moves:
        match move:
            case Place(colour=colour, over=over):
                laid.append((tints.get(colour, "#b9b4a8"), [at for at in over if at in pegs]))
            case Wind(colour=colour, on=on):
                laid.append((tints.get(colour, "#b9b4a8"), [at for at in (on,) if at in pegs]))
            case Hook() | Transfer() | Slide():
                if move.source in pegs and move.target in pegs:
                    carried.append((move.source, move.target))
            case _:
                pass
    used = [pegs[at] for _, over in laid for at in over] + [pegs[at] for pair in carried for at in pair]
    if not used:
        return None
    left, right = min(p.x_mm for p in used) - _ABOUT_MM, max(p.x_mm for p in used) + _ABOUT_MM
    near, far = min(p.y_mm for p in used) - _ABOUT_MM, max(p.y_mm for p in used) + _ABOUT_MM
    shown = [at for at, p in pegs.items() if left < p.x_mm < right and near < p.y_mm < far]
    index = {at: i for i, at in enumerate(shown)}
    return Glance(
        pegs=tuple((round(pegs[at].x_mm, 2), round(pegs[at].y_mm, 2)) for at in shown),
        bands=tuple(GlanceBand(tint, tuple(index[at] for at in over)) for tint, over in laid if over),
        arrows=tuple((index[a], index[b]) for a, b in carried),
    )
