"""Sixty-six faults planted in texts, in six styles and three languages; and none found in the demos.

The texts are ours. Each style says the eleven faults in its own way: plainly, chattily, in a shout, in notes,
and as a German and a Spanish teacher would.
"""

from __future__ import annotations

import msgspec
import pytest

from examples.pieces import PIECES
from pegwright.finding import Finding
from pegwright.fit import count_supplies
from pegwright.lesson import UNKNOWN_FINISH, FinishedPiece, HoldResult, plan_lesson, review_lesson
from pegwright.pattern import Pattern, PatternBuilder, Rows
from tests.lesson.pieces import work
from tests.lesson.test_sizes import LONG

MEANING = {
    "text-length-wrong",
    "text-time-wrong",
    "text-unsafe",
    "text-vague",
    "text-loop-wrong",
    "text-colour-wrong",
    "colour-name-twice",
    "clip-unwarned",
    "text-misspelt",
}
FAULTS = (
    "length", "time", "age", "night", "neck", "vague", "loop", "colour", "spelling", "twice", "clip",
)  # fmt: skip
CODES = dict(
    zip(
        FAULTS,
        (
            "text-length-wrong", "text-time-wrong", "text-unsafe", "text-unsafe", "text-unsafe", "text-vague",
            "text-loop-wrong", "text-colour-wrong", "text-misspelt", "colour-name-twice", "clip-unwarned",
        ),
        strict=True,
    )
)  # fmt: skip
STYLES: dict[str, tuple[str, tuple[str, ...]]] = {
    "plain": (
        "en",
        (
            "The bracelet is 21 cm long.", "It takes 2 hours.", "Made for a child of 2.",
            "Wear it all night.",
            "Hang it round your neck.", "Go over or under as you like.", "Take the top loop.",
            "Lay a red band next.",
            "Strech the band gently.",
        ),
    ),
    "chatty": (
        "en",
        (
            "You will end up with a lovely 25 cm of chain, promise!",
            "Put the kettle on: 3 hours and you are done.",
            "My neighbour’s kids, 1 and 5, adore it.", "Mine stays on overnight and looks as new.",
            "It also looks great around the neck.", "Honestly, either way works.",
            "Grab the topmost loop and off you go.", "Now one of those pretty pink ones!",
            "Keep goign, you have got this!",
        ),
    ),
    "shouting": (
        "en",
        (
            "FINISHED LENGTH: 30 CM", "TIME: 90 MINUTES", "AGE 2 AND UP", "KEEP IT ON IN BED",
            "GOOD ROUND THE NECK", "ANY LOOP WILL DO", "THE UPPERMOST LOOP", "YELLOW HERE",
            "PUSH IT DWON",
        ),
    ),
    "notes": (
        "en",
        (
            "approx. 12 in", "ca. 45 min", "ok for toddlers", "wear: to sleep, too", "or: round the neck",
            "whichever you like", "upper loop", "then green",
            "push dowm, then next peg",
        ),
    ),
    "German": (
        "de",
        (
            "Das Armband wird 21 cm lang.", "Es dauert 2 Stunden.", "Auch für ein Kind von 2 Jahren.",
            "Trag es die ganze Nacht.", "Häng es um den Hals.", "Darüber oder darunter, wie du magst.",
            "Nimm die oberste Schlaufe.", "Jetzt das rote Gummi.",
            "Zieh die Schlafue durch.",
        ),
    ),
    "Spanish": (
        "es",
        (
            "La pulsera mide 21 cm.", "Se tarda 2 horas.", "Para niños de 2 años.", "Llévala toda la noche.",
            "Queda bien en el cuello.", "Por encima o por debajo, da igual.", "Toma el lazo de arriba.",
            "Ahora la gomita roja.",
            "Pasa el laazo por la clavija.",
        ),
    ),
}  # fmt: skip
_NAMES = {"en": ("slate", "foam"), "de": ("schiefer", "schaum"), "es": ("pizarra", "espuma")}
_WARN = {"en": "Hold the ends.", "de": "Halt die Enden fest.", "es": "Sujeta los extremos."}


def planted(style: str, fault: str) -> Pattern:
    """A sound chain with one fault in its texts, or none."""
    language, texts = STYLES[style]
    said = dict(zip(FAULTS, texts, strict=False))
    notes = said[fault] if fault in ("length", "time", "age", "night", "neck") else ""
    first, second = _NAMES[language]
    m = PatternBuilder("Skiff", Rows(rows=1, pegs=9), language=language, notes=notes)
    m.colour("A", first, "#4a5a6a").colour("B", first if fault == "twice" else second, "#cfe8e2")
    with m.repeat(8, pegs=1):
        m.place("A", "A1", "A2", note=said[fault] if fault == "colour" else "")
    m.turn()
    with m.repeat(7, pegs=-1):
        m.hook("A8", "A7", note=said[fault] if fault in ("vague", "loop", "spelling") else "")
    m.bind("B", "A1")
    m.extend("B", 3)
    m.clip("end", "A9", warning="" if fault == "clip" else _WARN[language])
    return m.pattern()


def review(pattern: Pattern, language: str, finish: FinishedPiece = UNKNOWN_FINISH) -> tuple[Finding, ...]:
    history = work(pattern)
    supplies = count_supplies(pattern, history)
    verdict = HoldResult(held=True, bands=history.final.bands)
    planned = plan_lesson(pattern, history, supplies, verdict, finish=finish, language=language)
    return review_lesson(pattern, history, supplies, planned)


def test_planted_faults_are_found() -> None:
    """Sixty-six, of which at least 95 in a hundred; the list says which were missed."""
    missed = []
    for style, (language, _) in STYLES.items():
        for fault in FAULTS:
            finish = LONG if fault == "length" else UNKNOWN_FINISH
            found = {f.code for f in review(planted(style, fault), language, finish)} & MEANING
            if found != {CODES[fault]}:
                missed.append((style, fault, found))
    assert len(STYLES) * len(FAULTS) == 66
    assert len(missed) <= 3, missed  # 66 of 66 when this was written


@pytest.mark.parametrize("language", ["en", "de", "es"])
@pytest.mark.parametrize("name", [name for name in PIECES if not name.startswith("broken/")])
def test_no_false_alarm_in_the_demos(name: str, language: str) -> None:
    """Nothing at all is said of what the demo pieces' texts mean, in any language."""
    piece = PIECES[name]()
    history = work(piece)
    supplies = count_supplies(piece, history)
    verdict = HoldResult(held=True, bands=history.final.bands)
    planned = plan_lesson(piece, history, supplies, verdict, language=language)
    found = review_lesson(piece, history, supplies, planned)
    assert [f for f in found if f.code in MEANING] == []


@pytest.mark.parametrize(
    "note",
    [
        "Never wear it in bed.", "Not for children under 3.", "Take the lowest loop.",
        "Lay a slate band next.", "Put 5 in a row.",
        "Keep it away from babies.", "Under the loops above.",
        "As Aoife and Skyler do.", "The teacher's hook, the learners’ hooks.",
    ],
)  # fmt: skip
def test_a_sound_text_is_left_alone(note: str) -> None:
    base = planted("plain", "none")
    steps = list(base.steps)
    inner = msgspec.structs.replace(steps[2].steps[0], note=note)  # type: ignore[union-attr]
    steps[2] = msgspec.structs.replace(steps[2], steps=(inner,))
    if "slate" in note:
        inner = msgspec.structs.replace(steps[0].steps[0], note=note)  # type: ignore[union-attr]
        steps = [msgspec.structs.replace(steps[0], steps=(inner,)), *base.steps[1:]]
    found = review(msgspec.structs.replace(base, steps=tuple(steps)), "en")
    assert [f for f in found if f.code in MEANING] == []


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "Work the Ebbline colourway at your own pace: unhook it, re-lay it."),
        ("de", "Fädel den Quergummi auf, häng den Netzbeutel an den Gummihaken und schieb ihn hinunter."),
        ("es", "Anúdalo, cuéntalas, pásaselo a otra y sujétala con la gomita de la bolsita."),
    ],
)
def test_compounds_pronouns_and_names_are_spelled_right(language: str, text: str) -> None:
    """What a dictionary of word forms does not hold and is right all the same."""
    style = {"en": "plain", "de": "German", "es": "Spanish"}[language]
    piece = msgspec.structs.replace(planted(style, "none"), notes=text)
    assert [f for f in review(piece, language) if f.code == "text-misspelt"] == []


def test_a_misspelt_word_comes_with_the_one_that_is_meant() -> None:
    """The craft's words are offered first."""
    piece = msgspec.structs.replace(planted("plain", "none"), notes="A lopp of teh Skiff, and a lopp more.")
    found = [(f.facts["word"], f.facts["meant"]) for f in review(piece, "en") if f.code == "text-misspelt"]
    assert [word for word, _ in found] == ["lopp", "teh"]
    assert [meant[0] for _, meant in found] == ["loop", "the"]  # type: ignore[index]


def test_a_text_without_a_translation_is_not_read_as_one() -> None:
    """It is said once that the translation lacks; its words are not misspelt German."""
    found = {f.code for f in review(msgspec.structs.replace(planted("plain", "age")), "de")}
    assert "translation-missing" in found
    assert "text-misspelt" not in found
