"""The command that makes variants of a piece."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Literal

import msgspec

from pegwright.cli.fitting import CARE
from pegwright.cli.mat import read_colours
from pegwright.cli.shared import Json, answer, cannot, load_work, reason, table
from pegwright.cli.terminal import exit_code, out as screen, progress, say, say_findings
from pegwright.finding import Language, RefusedError, phrase, word_phrase
from pegwright.pattern import write_pattern
from pegwright.variants import describe_variant, read_band_size, read_loom_size
from pegwright.workshop import PieceVariant, VariantOrder, make_variants, write_into


def variants_(
    file: Path,
    *,
    sizes: str = "",
    colourways: int = 0,
    stash: Path | None = None,
    colours: str = "",
    bands: str = "",
    looms: str = "",
    hand: Literal["right", "left", "both"] = "right",
    seed: int = 1,
    out: Path | None = None,
    language: Language = "en",
    json: Json = False,
) -> int:
    """Make the same piece in other sizes, colours, bands and looms, and for the other hand, each proved.

    Parameters
    ----------
    file
        the pattern document.
    sizes
        sizes, girths or ages with commas between, as S,M,L.
    colourways
        how many other choices of colour, from your stash or the colours told: those that every eye can tell
        apart, and that you have enough of, come first.
    stash
        your stash, for the colourways.
    colours
        instead of a stash: names and tints, as "foam white=#f2efe6, slate=#4a5a6a".
    bands
        other bands: bore x thickness in mm with commas between, as 15x1.8; strain on the loom is checked
        again.
    looms
        other straight looms: rows x pegs with commas between, as 3x26.
    hand
        right, left, or both.
    seed
        another number draws other colourways; the same gives the same.
    out
        write the pattern of each variant into this folder.
    language
        the language of what was found: en, es or de.
    """
    if not 0 <= colourways <= 100:
        return cannot("there are 0 to 100 colourways", json)
    made = load_work(file, json, language)
    try:
        had = read_colours(stash, colours, json, language) if colourways else ()
        if isinstance(had, int):
            return had
        order = VariantOrder(
            sizes=tuple(_parts(sizes)),
            bands=tuple(read_band_size(text) for text in _parts(bands)),
            looms=tuple(read_loom_size(text) for text in _parts(looms)),
            colourways=colourways,
            hands=("right", "left") if hand == "both" else (hand,),
            seed=seed,
        )
        with progress(json) as report:
            variants = make_variants(made, order, had, report)
        files = {}
        if out is not None:
            for one in variants.made:
                file_name = f"{one.name}.json"
                differs = "" if one.name == "same" else f", {_variant_words(one.name, language)}"
                named = msgspec.structs.replace(
                    one.work.pattern, title=f"{made.pattern.title}{differs}"[:200]
                )
                files[one.name] = str(write_into(out, file_name, write_pattern(named)))
    except (RefusedError, OSError) as error:
        return cannot(reason(error, language), json)
    findings = (*variants.findings, *(found for one in variants.made for found in one.findings))
    if json:
        told = [{**_facts(one), "file": files.get(one.name)} for one in variants.made]
        return answer({"title": made.pattern.title, "variants": told}, findings, language=language)
    say(made.pattern.title, style="bold")
    if variants.made:
        screen.print(table([_row(one, language) for one in variants.made]))
        say(f"{len(variants.made)} variants, each worked and proved like the piece itself")
    if sizes:
        say(CARE)
    if files:
        say(f"their patterns are in {out}")
    say_findings(findings, language)
    return exit_code(findings)


def _parts(text: str) -> list[str]:
    return [part.strip() for part in text.split(",") if part.strip()]


def _facts(one: PieceVariant) -> dict[str, Any]:
    way = one.colourway
    return {
        "name": one.name,
        "size": one.size,
        "length_mm": one.length_mm,
        "hand": one.hand,
        "holds": one.work.holds,
        "bands": one.work.supplies.bands,
        "colours": None
        if way is None
        else {letter: {"name": c.name, "tint": c.tint} for letter, c in way.colours.items()},
        "apart": None if way is None or len(way.colours) < 2 else round(way.apart, 1),
        "used": None if way is None else round(way.used, 3),
    }


def _variant_words(name: str, language: Language) -> str:
    parts = describe_variant(name)
    return word_phrase(phrase("variant-name", parts=parts), language) if parts else name


def _row(one: PieceVariant, language: Language) -> dict[str, str]:
    way = one.colourway
    return {
        "variant": _variant_words(one.name, language),
        "bands": str(one.work.supplies.bands),
        "mm": "" if one.length_mm is None else f"{one.length_mm:.0f}",
        "colours": "" if way is None else ", ".join(f"{key} {c.name}" for key, c in way.colours.items()),
        "holds": "yes" if one.work.holds else "no",
    }
