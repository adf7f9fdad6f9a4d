"""Lessons of pieces whose repeats name no peg: turning the loom, hanging bands, extending an end."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from pegwright.lesson import Lesson
from pegwright.pattern import read_pattern
from pegwright.workshop import lesson_of, review_piece, work

EBB = json.loads((Path(__file__).parents[2] / "examples" / "ebb-line.json").read_text("utf-8"))
TURNS = {"do": "repeat", "times": 4, "steps": [{"do": "turn"}]}
HANGS = {"do": "repeat", "times": 4, "steps": [{"do": "hang", "colour": "A", "turns": 2}]}
EXTENDS = {"do": "repeat", "times": 4, "steps": [{"do": "extend", "end": "end", "bands": 2, "colour": "A"}]}


def lesson_with(steps: list[object], language: str = "en") -> Lesson:
    pattern, _ = read_pattern(json.dumps({**EBB, "steps": steps}).encode())
    assert pattern is not None
    made = work(pattern)
    review_piece(made, language)
    return lesson_of(made, language)


@pytest.mark.parametrize(
    "steps",
    [
        [TURNS, *EBB["steps"]],
        [HANGS, *EBB["steps"]],
        [*EBB["steps"][:-1], EXTENDS, EBB["steps"][-1]],
    ],
    ids=["turn", "hang", "extend"],
)
@pytest.mark.parametrize("language", ["en", "de", "es"])
def test_rounds_that_name_no_peg_are_taught_without_an_overview(steps: list[object], language: str) -> None:
    plain, made = lesson_with(EBB["steps"], language), lesson_with(steps, language)
    again = [step for step in made.steps if step.rounds == 3]
    assert len(again) == 1
    assert again[0].pictures == ()
    assert len(made.steps) > len(plain.steps)


def test_pegs_in_one_place_are_told_and_nothing_is_divided_by_their_distance() -> None:
    pegs = [{"at": f"A{k}", "x_mm": 0, "y_mm": 0} for k in (1, 2)]
    steps = [{"do": "place", "colour": "A", "over": ["A1", "A2"]}]
    document = {**EBB, "loom": {"kind": "pegs", "pegs": pegs}, "steps": steps, "motifs": []}
    pattern, _ = read_pattern(json.dumps(document).encode())
    assert pattern is not None
    made = work(pattern)
    assert "pegs-in-one-place" in {found.code for found in made.findings}
    review_piece(made)
