"""What a technical editor of craft patterns looks for: all of it said, used, defined and agreeing.

Numbers add up; what is listed is used and the reverse (the loom's own checks say that of colours and bands);
terms are used one way; words, pictures and counts agree; steps can be reached; contact, licence and cautions
are there. Editors of knitting, crochet and beading patterns look for these; the thresholds are ours.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from itertools import chain, pairwise
from typing import NamedTuple

from pegwright.finding import Fact, Finding, Location, Phrase, finding, phrase, sum_up
from pegwright.fit import Supplies
from pegwright.lesson.handout.finished import size_text
from pegwright.lesson.handout.front import term_variants
from pegwright.lesson.handout.sheet import Lesson, LessonStep
from pegwright.lesson.handout.sizes import resize_pattern
from pegwright.lesson.review.meaning import meaning_findings
from pegwright.lesson.review.readability import measure_readability
from pegwright.lesson.review.spelling import spelling_findings
from pegwright.lesson.say.phrasebook import Phrasebook
from pegwright.lesson.scene.palette import check_palette
from pegwright.lesson.scene.scene import highest_stack
from pegwright.loom import History, Laid, replay_pattern
from pegwright.pattern import (
    Extend,
    Hang,
    Pattern,
    PatternStep,
    Place as PlaceMove,
    Repeat,
    Slide,
    Use,
    Wind,
    is_address,
    localise,
    motifs_by_name,
    outdated_translations,
    untranslated_texts,
)

HARDEST_GRADE = 8.0
"""School grade above which a designer's own text is hard (twelve-year-olds are in grade 6 or 7)."""
HARDEST_EASE = 55.0
"""Reading ease below which it is, where there is no formula for grades."""
SHORTEST_TEXT = 8
_TALL = 6
_LEVELS = ("basic", "easy", "intermediate", "complex")
_PEG = re.compile(r"(?<![\w-])([A-Z]{1,2}[1-9][0-9]{0,4})(?![\w-])(?!\s*(?:paper|sheet|Papier|papel|Blatt))")


class DesignerText(NamedTuple):
    """A text of the designer's, where it stands, and whether its step is repeated on other pegs."""

    path: str
    text: str
    moves: bool = False


def review_lesson(
    pattern: Pattern, history: History, supplies: Supplies, lesson: Lesson
) -> tuple[Finding, ...]:
    """Return what an editor would say about a pattern and the lesson made of it."""
    languages = tuple(translation_findings(pattern, lesson.language))
    foreign = {one.text for one in untranslated_texts(pattern, lesson.language)}
    pattern = localise(pattern, lesson.language)
    said = tuple(designer_texts(pattern))
    phrasebook = lesson.phrasebook
    return sum_up(
        chain(
            languages,
            _missing_fields(pattern),
            _level_findings(pattern, history),
            _unused_parts(pattern),
            *(_text_findings(one, phrasebook, history, len(lesson.steps)) for one in said),
            meaning_findings(pattern, history, lesson, [(one.path, one.text) for one in said]),
            spelling_findings(
                pattern, lesson, [(one.path, one.text) for one in said if one.text not in foreign]
            ),
            check_palette(pattern),
            disagreements(lesson, history, supplies),
            wrong_sizes(lesson, pattern),
        )
    )


def translation_findings(pattern: Pattern, language: str) -> Iterator[Finding]:
    """Find the designer's texts that lack in a language, and translations that belong to no text any more."""
    for one in untranslated_texts(pattern, language):
        yield finding("translation-missing", Location(path=one.path), language=language, text=one.text)
    for one in outdated_translations(pattern, language):
        yield finding("translation-outdated", Location(path=one.path), language=language, text=one.text)


def designer_texts(pattern: Pattern) -> Iterator[DesignerText]:
    """Yield every text that a reader of the lesson will see, the title apart."""
    if pattern.notes:
        yield DesignerText("/notes", pattern.notes)
    yield from _step_texts(pattern.steps, "/steps", False)
    for i, motif in enumerate(pattern.motifs):
        yield from _step_texts(motif.steps, f"/motifs/{i}/steps", True)


def _step_texts(steps: tuple[PatternStep, ...], path: str, moves: bool) -> Iterator[DesignerText]:
    for i, step in enumerate(steps):
        for name in ("note", "warning", "picture"):
            text = getattr(step, name)
            if text and not isinstance(step, Repeat | Use):
                yield DesignerText(f"{path}/{i}/{name}", text, moves)
        if isinstance(step, Repeat):
            yield from _step_texts(step.steps, f"{path}/{i}/steps", moves or bool(step.rows or step.pegs))


def _missing_fields(pattern: Pattern) -> Iterator[Finding]:
    for name, code in (
        ("designer", "contact-missing"),
        ("licence", "licence-missing"),
        ("notes", "about-missing"),
    ):
        if not getattr(pattern, name).strip():
            yield finding(code, Location(path=f"/{name}"))


def _level_findings(pattern: Pattern, history: History) -> Iterator[Finding]:
    """Compare the level with what the piece asks for."""
    moves = [done.move for done in history.moves]
    caps = any(isinstance(m, Wind) for m in moves)
    wide = any(isinstance(m, PlaceMove) and len(m.over) > 2 for m in moves)
    twist = any(isinstance(m, PlaceMove) and any(m.twists) for m in moves)
    hung = any(isinstance(m, Hang | Slide) for m in moves)
    tall = highest_stack(history) > _TALL
    reckoned = (
        "intermediate" if caps and tall else "easy" if caps or wide or twist or hung or tall else "basic"
    )
    if _LEVELS.index(pattern.level) < _LEVELS.index(reckoned):
        why = {"caps": caps, "wide": wide, "twists": twist, "hung": hung, "tall": tall}
        reasons = tuple(phrase(f"level-{name}") for name, so in why.items() if so)
        yield finding(
            "level-low", Location(path="/level"), level=pattern.level, reckoned=reckoned, reasons=reasons
        )


def _unused_parts(pattern: Pattern) -> Iterator[Finding]:
    """Find motifs that are never worked, and repeats of no rounds."""
    used: set[str] = set()
    waiting = [pattern.steps]
    motifs = motifs_by_name(pattern)
    while waiting:
        for step in waiting.pop():
            if isinstance(step, Repeat):
                waiting.append(step.steps)
            elif isinstance(step, Use) and step.name not in used:
                used.add(step.name)
                if step.name in motifs:
                    waiting.append(motifs[step.name].steps)
    for i, motif in enumerate(pattern.motifs):
        if motif.name not in used:
            yield finding("motif-unused", Location(path=f"/motifs/{i}"), name=motif.name)
    yield from _none(pattern.steps, "/steps")
    for i, motif in enumerate(pattern.motifs):
        yield from _none(motif.steps, f"/motifs/{i}/steps")


def _none(steps: tuple[PatternStep, ...], path: str) -> Iterator[Finding]:
    for i, step in enumerate(steps):
        if isinstance(step, Repeat):
            if step.times == 0:
                yield finding("repeat-of-none", Location(path=f"{path}/{i}/times"))
            yield from _none(step.steps, f"{path}/{i}/steps")


def _text_findings(
    said: DesignerText, phrasebook: Phrasebook, history: History, steps: int
) -> Iterator[Finding]:
    place = Location(path=said.path)
    for peg in dict.fromkeys(_PEG.findall(said.text)):
        if is_address(peg) and peg not in history.board.pegs:
            yield finding("text-peg-unknown", place, peg=peg)
        elif is_address(peg) and said.moves:
            yield finding("text-peg-moves", place, peg=peg)
    numbers = rf"\b(?:{_alternatives(phrasebook.say('words-step'))})\s+([0-9]{{1,6}})\b"
    for number in re.findall(numbers, said.text, re.IGNORECASE):
        if not 1 <= int(number) <= steps:
            yield finding("text-step-unknown", place, number=int(number), steps=steps)
    side = re.search(rf"\b(?:{_alternatives(phrasebook.say('words-side'))})\b", said.text, re.IGNORECASE)
    if side:
        yield finding("side-named", place, word=side[0])
    for term, others in term_variants(phrasebook).items():
        mixed = [
            o for o in others if re.search(rf"(?<![\w-]){re.escape(o)}(?![\w-])", said.text, re.IGNORECASE)
        ]
        if mixed:
            yield finding("term-mixed", place, word=mixed[0], term=term)
    if len(said.text.split()) >= SHORTEST_TEXT:
        measured = measure_readability(said.text, phrasebook.language)
        hard = measured.grade > HARDEST_GRADE if measured.grade is not None else measured.ease < HARDEST_EASE
        if hard:
            yield finding("text-hard", place, words=round(measured.words_a_sentence))


def _alternatives(listed: str) -> str:
    return "|".join(re.escape(word.strip()) for word in listed.split(","))


def disagreements(lesson: Lesson, history: History, supplies: Supplies) -> Iterator[Finding]:
    """Yield every place where the lesson's words, pictures and counts disagree with the working.

    A lesson as planned has none; one that was changed by hand may.
    """
    laid = [event.band for event in history.events if isinstance(event, Laid)]
    table = {row.letter: row.count for row in lesson.supplies.bands}
    yield from _disagreement(phrase("what-bands"), lesson.supplies.total_count, sum(table.values()))
    yield from _disagreement(phrase("what-bands"), lesson.supplies.total_count, supplies.bands)
    for letter, count in table.items():
        counted = sum(history.colours[band - 1] == letter for band in laid)
        spares = sum(heap.spares for heap in supplies.heaps if heap.letter == letter)
        yield from _disagreement(
            phrase("what-bands-of", letter=letter), count, counted * supplies.pieces + spares
        )
    yield from _disagreement(phrase("what-key"), len(lesson.key), len(table))
    numbers = [step.number for step in lesson.steps]
    for a, b in pairwise([0, *numbers]):
        yield from _disagreement(phrase("what-number"), b, a + 1)
    spans = [step for step in lesson.steps if step.first]
    for one, other in pairwise(spans):
        yield from _disagreement(phrase("what-first", step=other.number), other.first, one.last + 1)
    if spans:
        yield from _disagreement(phrase("what-moves"), spans[-1].last, len(history.moves))
    for step in spans:
        yield from _step_disagreements(step, history)
    finished = lesson.finished
    if finished.portrait is not None:
        yield from _disagreement(
            phrase("what-size"), finished.size, size_text(lesson.phrasebook, finished.portrait)
        )


def wrong_sizes(lesson: Lesson, pattern: Pattern) -> Iterator[Finding]:
    """Yield every size whose numbers of bands are not those of the piece, made in that size and counted."""
    table = lesson.sizes
    for row in table.rows if table else ():
        assert table is not None
        made = resize_pattern(
            pattern, row.repeats if table.repeats else None, row.extension if table.extension else None
        )
        done = replay_pattern(made) if made else None
        used = Counter(done.colours if done else ())
        letters = table.columns[-1 - len(row.counts) : -1]
        what = phrase("what-size-bands", wrist=row.wrist)
        yield from _disagreement(what, row.bands, sum(row.counts))
        yield from _disagreement(what, row.bands, used.total())
        for letter, count in zip(letters, row.counts, strict=True):
            yield from _disagreement(what, f"{count} {letter}", f"{used[letter]} {letter}")


def _step_disagreements(step: LessonStep, history: History) -> Iterator[Finding]:
    """Compare a step's rounds, boxes and highlighted bands with its moves."""
    moves = history.moves[step.first - 1 : step.last]
    if step.rounds > 1 and len(moves) % step.rounds:
        yield from _disagreement(phrase("what-rounds", step=step.number), step.rounds, len(moves))
    if step.ticks and len(step.ticks) < 95:
        yield from _disagreement(phrase("what-boxes", step=step.number), len(step.ticks), step.rounds)
    if step.rounds == 1 and step.pictures:
        # Of a long chain the picture shows the end only.
        placed = [done for done in moves if not isinstance(done.move, Extend)]
        fresh = {event.band for done in placed for event in done.events if isinstance(event, Laid)}
        highlighted = {
            m.band
            for p in step.pictures
            for m in p.marks
            if getattr(m, "highlighted", False) and hasattr(m, "band")
        }
        if fresh and highlighted and not fresh <= highlighted:
            yield from _disagreement(
                phrase("what-strong", step=step.number), tuple(sorted(highlighted)), tuple(sorted(fresh))
            )


def _disagreement(what: Phrase, said: Fact, counted: Fact) -> Iterator[Finding]:
    if said != counted:
        yield finding("lesson-disagrees", what=what, said=said, counted=counted)
