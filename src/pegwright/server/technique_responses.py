"""The techniques of the atlas as the page shows them: measured, to be chosen by numbers, begun or laid."""

from __future__ import annotations

import base64
from collections.abc import Iterator
from typing import Any

import msgspec

from pegwright.finding import Language, RefusedError, phrase
from pegwright.lesson import Phrasebook
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Knot,
    Level,
    Motif,
    Pattern,
    PatternStep,
    Round,
    Turn,
    write_pattern,
)
from pegwright.server.motifs import ShelvedMotif, motifs_of
from pegwright.variants import TECHNIQUES
from pegwright.workshop import MeasuredTechnique, load_measured_techniques

__all__ = ["TechniquePiece", "TechniqueResponse", "list_techniques", "piece_of_technique"]

_FINISH = (Bind, Clip, Knot, Extend)


class TechniqueResponse(msgspec.Struct, frozen=True, kw_only=True):
    """A technique with its measures (see `SwatchMeasures`), in words of one language.

    `minutes`, `bands` and `wrists_mm` are of some 15 cm of it, or of the swatch where there is no telling;
    `round` is worked on a round loom; `slips` say where makers slip. `picture` is a PNG in base 64.
    """

    name: str
    title: str
    group: str
    round: bool
    level: Level
    level_words: str
    colours: int
    width_mm: float
    height_mm: float
    repeat_mm: float | None
    repeat_bands: float
    bands: int
    minutes: float
    bracelet: bool
    wrists_mm: tuple[float, float] | None
    stretch: float | None
    stack: int
    strain: float
    snap_loses: int | None
    slips: tuple[str, ...]
    picture: str


class TechniquePiece(msgspec.Struct, frozen=True, kw_only=True):
    """A technique to begin with, about 15 cm of it, proved; and as a motif to be laid in another piece."""

    document: dict[str, Any]
    motif: ShelvedMotif


def list_techniques(language: Language) -> tuple[TechniqueResponse, ...]:
    """Return all techniques, in the order of their groups."""
    book = Phrasebook(language)
    return tuple(_response(one, book, language) for one in load_measured_techniques())


def piece_of_technique(name: str, language: Language) -> TechniquePiece:
    """Return a technique as a piece of its own and as a motif, called as the language calls it.

    Raises:
        RefusedError: there is no such technique.
    """
    known = next((one for one in load_measured_techniques() if one.measures.name == name), None)
    if known is None:
        raise RefusedError(phrase("no-such-technique", name=name))
    technique, title = TECHNIQUES[name], known.measures.titles[language]
    worn = known.measures.bracelet
    whole = technique.make(max(1, worn.repeats) if worn else technique.repeats[1])
    whole = msgspec.structs.replace(whole, title=title)
    (motif, *_) = motifs_of("", _as_motif(technique.make(technique.repeats[0]), title))
    return TechniquePiece(document=msgspec.json.decode(write_pattern(whole)), motif=motif)


def _as_motif(pattern: Pattern, title: str) -> Pattern:
    """Return the pattern with a motif of all its steps up to the finish, or to where the loom is turned."""
    steps: list[PatternStep] = []
    for step in pattern.steps:
        if isinstance(step, (Turn, *_FINISH)):
            break
        steps.append(step)
    return msgspec.structs.replace(
        pattern, title=title, motifs=(Motif(name=title, steps=tuple(steps)),), steps=()
    )


def _response(one: MeasuredTechnique, book: Phrasebook, language: Language) -> TechniqueResponse:
    measures, worn = one.measures, one.measures.bracelet
    return TechniqueResponse(
        name=measures.name,
        title=measures.titles[language],
        group=book.say(f"atlas-group-{measures.group}"),
        round=isinstance(TECHNIQUES[measures.name].make(1).loom, Round),
        level=measures.level,
        level_words=book.say(f"level-{measures.level}"),
        colours=measures.colours,
        width_mm=measures.width_mm,
        height_mm=measures.height_mm,
        repeat_mm=measures.repeat_mm,
        repeat_bands=measures.repeat_bands,
        bands=worn.bands if worn else measures.bands,
        minutes=worn.minutes if worn else measures.minutes,
        bracelet=worn is not None,
        wrists_mm=worn.wrists_mm if worn else None,
        stretch=measures.stretch,
        stack=measures.stack,
        strain=measures.strain,
        snap_loses=measures.snap_loses,
        slips=tuple(_slips(one, language)),
        picture=base64.b64encode(one.picture).decode(),
    )


def _slips(one: MeasuredTechnique, language: Language) -> Iterator[str]:
    for slip in one.measures.slips:
        yield " ".join(slip.says[language])
