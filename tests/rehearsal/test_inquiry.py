"""Something looks wrong: the questions on the finished page, answered as makers would, lead to the slip."""

from __future__ import annotations

import json
from typing import Any
from xml.etree.ElementTree import SubElement

import html5lib
import pytest

from pegwright.lesson import MistakeWriter, languages
from pegwright.lesson.handout.troubleshooting import likely_slips_at
from pegwright.press import page_html
from pegwright.rehearsal import Diagnostician, Question, answer_from_appearance, find_way_back
from tests.rehearsal.pieces import SMALL, lesson_of, rehearsed

H = "{http://www.w3.org/1999/xhtml}"
ON_THE_WHOLE = ("where", "inside", "crossed")
ON_A_PEG = ("loops", "top", "lowest", "colours", "strands", "strand-colours", "leads")


def words(node: Any) -> str:
    return " ".join("".join(node.itertext()).split())


def replies(node: Any) -> dict[str, Any]:
    """Return the answers that stand right below a question, each with what unfolds under it."""
    found = [d for d in node if d.tag == f"{H}details" and d.get("class") == "reply"]
    told = {words(next(d.iter(f"{H}summary"))): d for d in found}
    assert len(told) == len(found), "two answers to one question read alike"
    return told


def opened(name: str, language: str = "en") -> dict[int, Any]:
    """Return the folded-up questions of a page by the number of their step."""
    page = html5lib.HTMLParser(strict=True).parse(page_html(lesson_of(name, language)))
    leaves = [
        leaf for leaf in page.iter(f"{H}section") if leaf.find(f"{H}details[@class='wrong']") is not None
    ]
    tables = json.loads(next("".join(d.itertext()) for d in page.iter(f"{H}div") if d.get("id") == "asked"))
    boxes = [leaf.find(f"{H}details[@class='wrong']") for leaf in leaves]
    for box in boxes:
        box.remove(box.find(f"{H}p"))
        unfold(box, tables, int(box.get("data-asked")))
    asked = [step.number for step in lesson_of(name, language).steps if step.troubleshooting]
    return dict(zip(asked, boxes, strict=True))


def unfold(node: Any, tables: Any, number: int) -> None:
    """Put below a node what the page's tables hold for it: naive, in Python, where the page has a script."""

    def put(into: Any, kind: str, text: int | None = None, name: str = "") -> Any:
        part = SubElement(into, f"{H}{kind}", {"class": name} if name else {})
        part.text = None if text is None else tables["texts"][text]
        return part

    entry = tables["entries"][number]
    if len(entry) > 2:
        found = put(node, "div", name="found")
        put(found, "p", entry[0])
        for slips, back in entry[1]:
            guess = put(found, "div", name="guess")
            for slip in slips:
                put(guess, "p", slip)
            for line in back:
                put(guess, "li", line)
        return
    put(node, "p", entry[0])
    for text, then in entry[1]:
        reply = put(node, "details", name="reply")
        put(reply, "summary", text)
        unfold(reply, tables, then)


@pytest.mark.parametrize("name", SMALL)
@pytest.mark.parametrize("language", languages())
def test_what_is_answered_on_the_page_leads_to_the_true_slip(name: str, language: str) -> None:
    """Every slip that a step asks about is found in at most five questions, and its way back stands there."""
    told, lesson = rehearsed(name), lesson_of(name, language)
    diagnostician = Diagnostician(told)
    numbers = {at: s.number for s in lesson.steps if s.first for at in range(s.first - 1, s.last)}
    teller = MistakeWriter(lesson.phrasebook, told.history, lambda at: numbers.get(at, 0))
    asks = [Question(ask, "") for ask in ON_THE_WHOLE]
    holders = {h for done in told.history.moves for h in done.after.stacks} | set(told.history.board.pegs)
    asks += [Question(ask, holder) for holder in holders for ask in ON_A_PEG]  # type: ignore[arg-type]
    question_of = {teller.question(question): question for question in asks}
    page, tried = opened(name, language), 0
    for step in lesson.steps:
        if not step.first or step.rounds > 1:
            continue
        after = step.last - 1
        diagnosis = likely_slips_at(diagnostician, after)
        for case in diagnosis.cases:
            node = replies(page[step.number])[lesson.phrasebook.say("wrong-look")]
            asked = 0
            while replies(node):
                question = question_of[words(node.find(f"{H}p"))]
                seen = answer_from_appearance(case.appearance, diagnosis.intended, question)
                node = replies(node)[teller.answer(question, seen)]
                asked += 1
            assert asked <= 5
            back = teller.back(find_way_back(told.history, case.outcome, after).acts)
            slip = " ".join(teller.slip(case.outcome).split())
            at = case.outcome.slip.at
            where = teller.step(at, told.history.moves[at].move)
            where = where[:1].upper() + where[1:]
            fits = [
                guess
                for guess in node.iter(f"{H}div")
                if guess.get("class") == "guess"
                and any(words(p).startswith(where) and words(p).endswith(slip) for p in guess.iter(f"{H}p"))
                and [words(li) for li in guess.iter(f"{H}li")] == [" ".join(b.split()) for b in back]
            ]
            assert fits
            tried += 1
    assert tried > 20


def test_what_repeats_stands_on_the_page_once() -> None:
    """No text and no question is written twice, and no entry is without use."""
    text = page_html(lesson_of("jetty"))
    page = html5lib.HTMLParser(strict=True).parse(text)
    tables = json.loads(next("".join(d.itertext()) for d in page.iter(f"{H}div") if d.get("id") == "asked"))
    for table in tables.values():
        assert len({json.dumps(one) for one in table}) == len(table)
    used = {int(d.get("data-asked")) for d in page.iter(f"{H}details") if d.get("data-asked")}
    for at, entry in reversed(list(enumerate(tables["entries"]))):
        assert at in used
        used |= {then for _, then in entry[1]} if len(entry) == 2 else set()


def test_who_cannot_make_a_move_is_led_to_what_stopped_her() -> None:
    """Every move that some slip stops has, under that answer, such a slip; the others say there is none."""
    told, lesson = rehearsed("jetty"), lesson_of("jetty")
    page = opened("jetty")
    stops = {outcome.stuck for outcome in told.outcomes if outcome.stuck is not None}
    assert stops
    for step in lesson.steps:
        if step.first:
            node = replies(page[step.number])[lesson.phrasebook.say("wrong-stuck")]
            some = any(at in stops for at in range(step.first - 1, step.last))
            assert some == any(div.get("class") == "guess" for div in node.iter(f"{H}div"))


def test_every_question_has_a_way_out() -> None:
    """Below each question about the loom the last answer is that none fits, and it says what to do."""
    lesson, found = lesson_of("jetty"), 0
    for whole in opened("jetty").values():
        for node in whole.iter(f"{H}details"):
            below = replies(node)
            if (
                below
                and node is not whole
                and words(node.find(f"{H}p")) != lesson.phrasebook.say("wrong-round")
            ):
                last = list(below)[-1]
                assert last == lesson.phrasebook.say("wrong-other")
                assert lesson.phrasebook.say("wrong-lost") in words(below[last])
                found += 1
    assert found > 10


def test_a_lesson_without_a_rehearsal_asks_nothing() -> None:
    """No box, no word of it."""
    lesson = lesson_of("jetty", carried=False)
    assert not any(step.troubleshooting for step in lesson.steps)
    assert lesson.phrasebook.say("wrong-open") not in page_html(lesson)
