"""A recording without a pattern becomes a draft: what is said clearly is read, the rest is left blank.

A sentence of garbled speech is read only if it says all of a move by itself: what is done, every peg by name,
the colour or the loop. Nothing is guessed from words half heard.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from pegwright.listening.captions import Cue
from pegwright.pattern import Layout
from pegwright.reading import Answers, Lexicon, TextReading, read_free

PAUSE_S = 1.2
"""A silence of so long ends a sentence that has no full stop (no source)."""
_NEVER = frozenset(("not", "or", "again", "go-on", "correction", "state", "care", "each", "both", "until"))
_MUST = (
    (("place", "put"), ("colour",), 2),
    (("wind",), ("colour", "number"), 1),
    (("hook",), ("lowest", "top"), 2),
    (("lift",), ("lowest", "top"), 1),
    (("turn",), ("loom",), 0),
)
"""For each action the words that say it, those that must be there too (of loops only one), and the pegs."""


class DraftLine(NamedTuple):
    """A sentence of a recording: when it begins in s, its words, and whether it was read as a step."""

    start_s: float
    text: str
    is_read: bool


class RecordingDraft(NamedTuple):
    """What a recording without a pattern comes to: its sentences, and the reading of the clear ones."""

    lines: tuple[DraftLine, ...]
    reading: TextReading


def draft_recording(
    cues: Sequence[Cue], language: str, loom: Layout | None = None, answers: Answers | None = None
) -> RecordingDraft:
    """Return the draft of a recording. `loom` and `answers` are what the maker answered to its blanks."""
    lexicon = Lexicon(language)
    sentences = _join_sentences(cues)
    clear = [i for i, (_, text) in enumerate(sentences) if says_a_whole_move(lexicon, text)]
    reading = read_free("\n".join(sentences[i][1] for i in clear), language, loom, answers)
    read = {clear[one.line - 1] for one in reading.sentences if one.steps and one.line <= len(clear)}
    lines = tuple(DraftLine(start, text, i in read) for i, (start, text) in enumerate(sentences))
    return RecordingDraft(lines, reading)


def says_a_whole_move(lexicon: Lexicon, text: str) -> bool:
    """Say whether a sentence says one move, with everything that belongs to it."""
    tokens = lexicon.tokens(text)
    kinds = [token.kind for token in tokens]
    if _NEVER & set(kinds):
        return False
    pegs = kinds.count("peg-name")
    present = set(kinds)
    if any(token.text in lexicon.colours for token in tokens):
        present.add("colour")
    actions = [one for one in _MUST if present & set(one[0])]
    if len(actions) != 1:
        return False
    _, needed, count = actions[0]
    loops = {"lowest", "top"}
    whole = bool(loops & present) if loops & set(needed) else set(needed) <= present
    return whole and pegs == count


def _join_sentences(cues: Sequence[Cue]) -> list[tuple[float, str]]:
    """Return sentences with the times at which they begin: up to a full stop or a silence."""
    found: list[tuple[float, str]] = []
    open_sentence = False
    end_s = 0.0
    for cue in cues:
        if cue.text.startswith(("[", "(", "♪")):
            open_sentence = False
            continue
        rest = cue.text
        while rest:
            stop = min((rest.find(sign) + 1 for sign in (". ", "! ", "? ") if sign in rest), default=0)
            part, rest = (rest[:stop], rest[stop:].strip()) if stop else (rest, "")
            at = 1 - (len(part) + len(rest)) / max(1, len(cue.text))
            start = cue.start_s + at * (cue.end_s - cue.start_s)
            if open_sentence and start - end_s < PAUSE_S:
                found[-1] = (found[-1][0], f"{found[-1][1]} {part}")
            else:
                found.append((start, part))
            open_sentence = part[-1] not in ".!?"
        end_s = cue.end_s
    return found
