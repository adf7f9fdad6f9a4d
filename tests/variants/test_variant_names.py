"""Variants are named for files and described for makers."""

from __future__ import annotations

import pytest

from pegwright.finding import phrase, word_phrase
from pegwright.variants import describe_variant


@pytest.mark.parametrize(
    ("name", "language", "said"),
    [
        ("l-colours-1", "en", "size L, colours 1"),
        ("xxl-left", "de", "Größe XXL, für die linke Hand"),
        (
            "16-cm-loom-3x26-bands-13-5x1-8-left",
            "en",
            ("size 16 cm, on a loom of 3 × 26 pegs, of bands of 13.5 × 1.8 mm, for the left hand"),
        ),
        ("bands-15x1-8", "es", "de gomitas de 15 × 1,8 mm"),
        ("bands-12x1-colours-2", "en", "of bands of 12 × 1 mm, colours 2"),
        ("left", "es", "para la mano izquierda"),
    ],
)
def test_a_variant_is_described_by_what_is_different(name: str, language: str, said: str) -> None:
    assert word_phrase(phrase("variant-name", parts=describe_variant(name)), language) == said  # type: ignore[arg-type]


def test_the_piece_itself_has_nothing_different() -> None:
    assert describe_variant("same") == ()
