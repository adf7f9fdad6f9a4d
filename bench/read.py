"""Reading: the maker's text and the document say the same."""

from __future__ import annotations

import itertools
import random
import time

from bench.report import Figure
from pegwright.lesson import languages, script_leaf, write_script
from pegwright.loom import replay_pattern
from pegwright.pattern import Pattern, mirror, read_pattern, write_pattern
from pegwright.press import handout_pdf, leaf_pdf
from pegwright.reading import read_free, read_printed
from pegwright.text import read_pattern_text, write_pattern_text
from pegwright.workshop import Work, example_files, lesson_of, work
from testing.maker_text import answer_as_meant, count_right, read_moves
from testing.maker_texts import TEXTS
from testing.mutate_text import mutate_text
from testing.printed_text import copied_texts, print_script, print_steps
from testing.random_documents import random_pattern
from testing.struck_words import strike_words


def run(quick: bool) -> list[Figure]:
    """Write and read 2,000 random documents (200 when quick); print the pieces and read them."""
    return [
        *_text_round_trips(200 if quick else 2000),
        *_printed(quick),
        *_free(),
        *_struck(12 if quick else 1),
        *_spoilt(500 if quick else 10_000),
    ]


def _text_round_trips(count: int) -> list[Figure]:
    began = time.process_time()
    pieces = [read_pattern(path.read_bytes()).pattern for path in example_files().values()]
    demos = [piece for piece in pieces if piece is not None and _comes_back(piece)]
    exact = sum(_comes_back(random_pattern(random.Random(seed))) for seed in range(count))
    spent = time.process_time() - began
    return [
        Figure(
            "built-in pieces, text and back",
            len(demos),
            "pieces",
            f"{len(pieces)}",
            len(demos) == len(pieces),
        ),
        Figure("random documents, text and back", exact, "documents", f"{count}", exact == count),
        Figure("a document, text and back", spent / (count + len(pieces)) * 1000, "ms"),
    ]


def _comes_back(piece: Pattern) -> bool:
    """Say whether text and document of a piece read back as the same value, document and text."""
    text = write_pattern_text(piece)
    back = read_pattern_text(text.encode()).pattern
    return (
        back is not None
        and back == piece
        and write_pattern(back) == write_pattern(piece)
        and write_pattern_text(back) == text
    )


def _printed(quick: bool) -> list[Figure]:
    """Print every built-in piece in every language for both hands, and read it back."""
    count = same = pages = copied = 0
    spent = 0.0
    for name, path in example_files().items():
        if quick and name not in ("ebb-line", "herring-tail"):
            continue
        piece = read_pattern(path.read_bytes()).pattern
        for made in () if piece is None else (work(piece), work(mirror(piece))):
            for language in languages():
                lesson = lesson_of(made, language)
                for text in (print_steps(lesson), print_script(lesson)):
                    began = time.process_time()
                    same += _is_same(text, made)
                    spent += time.process_time() - began
                    count += 1
                leaf = script_leaf(lesson, write_script(lesson))
                for pdf in () if quick else (handout_pdf(lesson), leaf_pdf(leaf)):
                    texts = copied_texts(pdf).values()
                    pages += len(texts)
                    copied += sum(_is_same(text, made) for text in texts)
    return [
        Figure("printed steps and scripts read back", same, "texts", f"{count}", same == count),
        Figure("copied out of PDFs and read back", copied, "texts", f"{pages}", copied == pages),
        Figure("reading a printed lesson", spent / count, "s", "< 2 s", spent / count < 2),
    ]


def _is_same(text: str, made: Work) -> bool:
    """Say whether a printed text is read as the same events on the loom, and all of it."""
    told = read_printed(text)
    return (
        told.pattern is not None
        and not told.findings
        and replay_pattern(told.pattern).events == made.history.events
    )


def _free() -> list[Figure]:
    """Read the makers' texts, those that were looked at and those kept apart, and answer what is asked."""
    figures = []
    invented = silent = 0
    asked = 0
    for language, kept in itertools.product(("en", "de", "es"), (False, True)):
        texts = [one for one in TEXTS if (one.language, one.kept) == (language, kept)]
        right = at_once = meant = 0
        for one in texts:
            first, told = answer_as_meant(one)
            same, more = count_right(one.moves, *read_moves(told))
            at_once += count_right(one.moves, *read_moves(first))[0]
            right, meant, invented = right + same, meant + len(one.moves), invented + more
            asked += len(first.blanks)
            flagged = {found.place.line for found in told.findings}
            silent += sum(each.use == "unread" and each.line not in flagged for each in told.sentences)
        name, goal = (f"{language}, kept", 0.90) if kept else (f"{language}, looked-at", 0.97)
        figures += [
            Figure(f"{name}", len(texts), "texts"),
            Figure(f"{name}, steps right", 100 * right / meant, "%", f">= {goal:.0%}", right / meant >= goal),
            Figure(f"{name}, before any answer", 100 * at_once / meant, "%"),
        ]
    figures.append(Figure("questions asked in all", asked, "questions"))
    began = time.process_time()
    told = read_free(LONG)
    bands = 0 if told.pattern is None else work(told.pattern).history.final.bands
    spent = time.process_time() - began
    return [
        *figures,
        Figure("sentences neither read nor flagged", silent, "sentences", "0", silent == 0),
        Figure("invented steps", invented, "steps", "0", invented == 0),
        Figure(f"a text of {bands} bands, with its proof", spent, "s", "<= 2 s", bands >= 60 and spent <= 2),
    ]


LONG = """Long line. A loom with one row of 61 pegs.
Stretch one blue band from A1 to A2. Do this fifty-nine more times, one peg further each time.
Turn the loom. Take the lowest loop of each peg and put it on the next peg, the whole row.
Pull a last blue band through the loops on A1. Close both ends with a clip."""


def _struck(every: int) -> list[Figure]:
    """Strike the words of the makers' texts one at a time: how often does the pattern change unnoticed?"""
    strikes = [one for text in TEXTS for one in strike_words(text, every)]
    changed = [one for one in strikes if one.new or one.gone]
    return [
        Figure("words struck, one at a time", len(strikes), "words"),
        Figure("of them, the pattern changed", len(changed), "words"),
        Figure("of these, without a question or finding", sum(one.silent for one in changed), "words"),
    ]


def _spoilt(count: int) -> list[Figure]:
    """Spoil the makers' texts: each must end in findings or in a piece, soon."""
    slowest = 0.0
    crashes = 0
    for seed in range(count):
        rng = random.Random(seed)
        text = mutate_text(rng.choice(TEXTS).text, rng)
        began = time.process_time()
        try:
            told = read_free(text)
            crashes += told.pattern is None and not told.findings
        except Exception as error:  # any exception at all is what we are looking for
            crashes += 1
            print(f"seed {seed}: {type(error).__name__}: {error}")
        slowest = max(slowest, time.process_time() - began)
    return [
        Figure("spoilt texts", count, "texts"),
        Figure("crashes", crashes, "texts", "0", crashes == 0),
        Figure("slowest spoilt text", slowest, "s", "<= 2 s", slowest <= 2),
    ]
