"""A piece from which something was left out is not the pattern: nothing says that it holds."""

from __future__ import annotations

import msgspec
import pytest

from pegwright.pattern import Place
from pegwright.workshop import example_files, lesson_of, open_pattern, work


@pytest.fixture
def spoiled():
    pattern = open_pattern(example_files()["ebb-line"]).pattern
    return msgspec.structs.replace(pattern, steps=(*pattern.steps, Place(colour="A", over=("A1", "A99"))))


def test_what_is_left_holds_yet_the_pattern_does_not(spoiled):
    made = work(spoiled)
    assert not made.proof.free
    assert not made.proof.unproved
    assert made.left_out == 1
    assert not made.holds


@pytest.mark.parametrize(("language", "word"), [("en", "left out"), ("de", "fehlt"), ("es", "falta")])
def test_the_handout_says_so_first(spoiled, language, word):
    first = lesson_of(work(spoiled), language=language).hold.lines[0]
    assert word in str(first)
