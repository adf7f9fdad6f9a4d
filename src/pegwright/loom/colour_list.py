"""Colours and kinds of band: what is listed against what is used."""

from __future__ import annotations

import string
from collections import Counter
from collections.abc import Iterator
from difflib import get_close_matches

import msgspec

from pegwright.finding import Finding, Fix, Location, Phrase, finding, phrase
from pegwright.pattern import Expansion, Pattern


def check_colour_list(pattern: Pattern, expansion: Expansion) -> Iterator[Finding]:
    """Yield what is wrong with the lists of colours and of kinds of band."""
    yield from _check_kinds(pattern)
    yield from _check_letters(pattern)
    used = Counter(d.move.colour for d in expansion.moves if hasattr(d.move, "colour"))
    first = {
        d.move.colour: (step, d)
        for step, d in reversed(list(enumerate(expansion.moves, start=1)))
        if hasattr(d.move, "colour")
    }
    listed = {colour.letter for colour in pattern.colours}
    for letter in sorted(used.keys() - listed):
        step, doing = first[letter]
        other = letter.swapcase()
        if other in listed and not doing.motif and used[letter] == 1:
            fix = _patch_fix(phrase("fix-call-it", letter=other), "replace", f"{doing.path}/colour", other)
        else:
            new = {"letter": letter, "name": f"colour {letter}", "hex": "#808080"}
            # A list left out of the document has no end to add to.
            where, value = ("/colours/-", new) if pattern.colours else ("/colours", [new])
            fix = _patch_fix(phrase("fix-list-colour", letter=letter), "add", where, value)
        yield finding(
            "colour-not-listed",
            Location(path=doing.path, step=step),
            fix=fix,
            letter=letter,
            count=used[letter],
        )
    if expansion.findings:
        return  # steps are missing, so a colour may only seem to be unused
    for i, colour in enumerate(pattern.colours):
        if colour.letter not in used:
            label = phrase("fix-take-off", letter=colour.letter)
            fix = Fix(label, ({"op": "remove", "path": f"/colours/{i}"},))
            place = Location(path=f"/colours/{i}")
            yield finding("colour-unused", place, fix=fix, letter=colour.letter, name=colour.name)


def _check_letters(pattern: Pattern) -> Iterator[Finding]:
    letters = [colour.letter for colour in pattern.colours]
    kinds = [band.name for band in pattern.bands]
    fix: Fix | None
    free = iter(a for a in string.ascii_uppercase if a not in letters)
    for i, colour in enumerate(pattern.colours):
        if colour.letter in letters[:i]:
            where = f"/colours/{i}"
            if colour == pattern.colours[letters.index(colour.letter)]:
                fix = Fix(phrase("fix-take-second"), ({"op": "remove", "path": where},))
            else:
                new = next(free, "")
                label = phrase("fix-call-second", letter=new)
                fix = _patch_fix(label, "replace", f"{where}/letter", new) if new else None
            yield finding("letter-twice", Location(path=f"{where}/letter"), fix=fix, letter=colour.letter)
        if colour.band not in kinds:
            near = kinds if len(kinds) == 1 else get_close_matches(colour.band, kinds, n=1)
            where = f"/colours/{i}/band"  # the field may be left out; to add is right either way
            fix = _patch_fix(phrase("fix-use-kind", name=near[0]), "add", where, near[0]) if near else None
            yield finding(
                "band-kind-unknown",
                Location(path=where),
                fix=fix,
                letter=colour.letter,
                band=colour.band,
                known=tuple(kinds),
                count=len(kinds),
            )


def _check_kinds(pattern: Pattern) -> Iterator[Finding]:
    names = [band.name for band in pattern.bands]
    for i, band in enumerate(pattern.bands):
        if band.name in names[:i]:
            same = band == pattern.bands[names.index(band.name)]
            fix = Fix(phrase("fix-take-second"), ({"op": "remove", "path": f"/bands/{i}"},))
            yield finding(
                "band-kind-twice", Location(path=f"/bands/{i}"), fix=fix if same else None, name=band.name
            )


def _patch_fix(label: Phrase, op: str, path: str, value: object) -> Fix:
    return Fix(label, ({"op": op, "path": path, "value": msgspec.to_builtins(value)},))
