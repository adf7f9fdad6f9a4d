"""What a variant is called: by files, and in words."""

from __future__ import annotations

import re

from pegwright.finding import Phrase, phrase

__all__ = ["describe_variant"]

_NAME = re.compile(
    r"(?P<size>.*?)-?(?:loom-(?P<rows>\d+)x(?P<pegs>\d+))?-?(?:bands-(?P<bore>[\d-]+)x(?P<thick>\d+(?:-\d+)?))?"
    r"-?(?:colours-(?P<colours>\d+))?-?(?P<left>left)?"
)
_LETTERS = re.compile(r"x{0,3}[sml]")


def describe_variant(name: str) -> tuple[Phrase, ...]:
    """Return what is different in the variant of that name, part by part: `l-colours-1` is size L, colours 1.

    The variant `same` has no parts.
    """
    found = _NAME.fullmatch("" if name == "same" else name)
    assert found is not None  # every part may be absent, and the size takes what is left
    size, left = found["size"], found["left"]
    return (
        *([phrase("variant-size", size=_size_text(size))] if size else []),
        *(
            [phrase("variant-loom", rows=int(found["rows"]), pegs=int(found["pegs"]))]
            if found["rows"]
            else []
        ),
        *(
            [phrase("variant-bands", bore_mm=_number(found["bore"]), thickness_mm=_number(found["thick"]))]
            if found["bore"]
            else []
        ),
        *([phrase("variant-colours", number=int(found["colours"]))] if found["colours"] else []),
        *([phrase("variant-left")] if left else []),
    )


def _size_text(size: str) -> str:
    return size.upper() if _LETTERS.fullmatch(size) else size.replace("-", " ")


def _number(text: str) -> float:
    return float(text.replace("-", "."))
