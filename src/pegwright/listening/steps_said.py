"""Steps that a recording leaves out, adds, or says in another order; and the hand it speaks of."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from pegwright.listening.contradictions import (
    MISHEARD,
    SLIPS,
    TAKEN_BACK,
    Contradiction,
    Evidence,
    takes_back,
)
from pegwright.listening.hearings import SURE, Hearing

WEAK = 1.0
"""What speaks for a line at least where anything of it may have been heard (no source)."""
LEAST_SHARE = 0.3
"""So much of a line is heard before its step counts as said (no source)."""


def find_unsaid(evidence: Evidence) -> list[Contradiction]:
    """Return the steps of which no line is heard, though there was no room for anything unheard."""
    heard = evidence.heard
    if len(heard) < 2:
        return []
    rate = _words_a_second(evidence)
    heard_lines = {
        one.line
        for n, one in enumerate(evidence.hearings)
        if _is_heard(evidence, one) and not evidence.shown_again(n)
    }
    found = []
    for step in sorted(set(evidence.steps) - {0}):
        lines = [i for i, s in enumerate(evidence.steps) if s == step]
        if heard_lines & set(lines):
            continue
        words = evidence.lengths.get(lines[0], 1)
        before = [h for h in evidence.hearings if h.in_order and h.line < lines[0] and h.line in heard_lines]
        past = before[-1].last if before else -1
        after = [
            h
            for n, h in enumerate(evidence.hearings)
            if h.line > lines[-1]
            and h.first > past
            and _is_heard(evidence, h)
            and not evidence.shown_again(n)
        ]
        if not after:  # the recording ends before
            start = heard[before[-1].last].end_s if before else heard[0].start_s
            found.append(Contradiction("unsaid", step, lines[0], start, "", "", 0.7))
            continue
        first, last = (before[-1].last if before else -1), after[0].first
        start = heard[first].end_s if before else heard[0].start_s
        between = range(first + 1, last)
        asides = sum(evidence.follow.at[t] < 0 for t in between)
        unheard_s = heard[last].start_s - start - sum(heard[t].end_s - heard[t].start_s for t in between)
        room = max(asides / words, 0.8 * unheard_s * rate / words)
        weak = any(one.line in lines and one.gain >= WEAK for one in evidence.hearings)
        weak = weak or any(
            evidence.follow.at[t] < 0 and evidence.vocabulary.kind_of(heard[t].text)[0] in ("colour", "loop")
            for t in between
        )
        confidence = 0.97 - 0.5 * min(1.0, max(0.0, room - 0.35)) - (0.25 if weak else 0.0)
        found.append(Contradiction("unsaid", step, lines[0], start, "", "", confidence))
    return found


def find_swapped(evidence: Evidence) -> list[Contradiction]:
    """Return the steps that are first heard after the step that follows them."""
    first: dict[int, tuple[int, Hearing]] = {}
    for n, one in enumerate(evidence.hearings):
        step = evidence.steps[one.line]
        if step and one.gain >= SURE and _is_heard(evidence, one):
            first.setdefault(step, (n, one))
    found = []
    for step, later in pairwise(sorted(first)):
        (n, one), (m, other) = first[step], first[later]
        if later != step + 1 or n < m or evidence.shown_again(n):
            continue
        if any(evidence.steps[h.line] > later for h in evidence.hearings[m:n]):
            continue
        confidence = 0.98 - 0.5 * evidence.follow.noise * (SURE / min(one.gain, other.gain)) ** 0.5
        start_s = evidence.heard[other.first].start_s
        found.append(Contradiction("swapped", step, one.line, start_s, str(step), str(later), confidence))
    return found


def find_hand(evidence: Evidence, hand: str) -> list[Contradiction]:
    """Return where the hook is said to be in the other hand."""
    kind_of, phrases = evidence.vocabulary.kind_of, evidence.vocabulary.phrases
    sides = [kind_of(word.text)[1] if kind_of(word.text)[0] == "way" else "" for word in evidence.heard]
    for t, side in enumerate(sides):
        if side not in ("left", "right") or side == hand:
            continue
        near = {word.text for word in evidence.heard[max(0, t - 1) : t + 2]}
        before = {word.text for word in evidence.heard[max(0, t - 6) : t]}
        beside = bool(near & set(phrases["hand"]))
        if not beside and not (near & set(phrases["mine"]) and before & set(phrases["held"])):
            continue
        line = _line_at(evidence, t)
        noise = evidence.follow.noise * MISHEARD["way"]
        confidence = SLIPS / (SLIPS + noise * 0.5)
        words = evidence.heard[max(0, t - 1) : t + 2]
        text = " ".join(
            word.text for word in words if word.text in phrases["hand"] or kind_of(word.text)[0] == "way"
        )
        step = evidence.steps[line]
        return [Contradiction("hand", step, line, evidence.heard[t].start_s, hand, text, confidence)]
    return []


def find_extra(evidence: Evidence, misfits: Sequence[int]) -> list[Contradiction]:
    """Return what sounds like a step and is in none."""
    runs = [(evidence.hearings[n].first, evidence.hearings[n].last, 1) for n in misfits]
    begin = None
    for t, i in enumerate([*evidence.follow.at.tolist(), 0]):
        if i < 0 and begin is None:
            begin = t
        elif i >= 0 and begin is not None:
            if t - begin >= 4:
                runs.append((begin, t - 1, 0))
            begin = None
    found = []
    for begins, last, extra in sorted(runs):
        first = begins
        while first and evidence.follow.at[first - 1] < 0 and _close(evidence, first - 1):
            first -= 1
        points = extra + _craft_points(evidence, first, last)
        line = _line_at(evidence, first)
        if points < 4 or _after_repeat(evidence, first) or takes_back(evidence, first, last + 1 + TAKEN_BACK):
            continue
        text = " ".join(word.text for word in evidence.heard[first : last + 1])
        confidence = 0.66 + 0.08 * (points - 4) + 0.1 * (1 - evidence.follow.noise)
        if _has_strange_colour(evidence, first, last):
            confidence += 0.12
        found.append(
            Contradiction(
                "extra",
                evidence.steps[line],
                line,
                evidence.heard[first].start_s,
                "",
                text,
                min(0.97, confidence),
            )
        )
    return found


def _craft_points(evidence: Evidence, first: int, last: int) -> int:
    """Count what makes words a step: something done, a thing of the craft, a colour, pegs."""
    words = [word.text for word in evidence.heard[first : last + 1]]
    text = " ".join(words)
    lists, kind_of = evidence.vocabulary.phrases, evidence.vocabulary.kind_of
    pegs = sum(kind_of(a)[0] == "row" and b.isdecimal() for a, b in pairwise(words))
    colour = any(kind_of(word)[0] == "colour" for word in words)
    act, thing = (evidence.vocabulary.find(name, text) is not None for name in ("act", "thing"))
    return int(act) + int(thing) + int(colour) + min(pegs, 2) if lists else 0


def _has_strange_colour(evidence: Evidence, first: int, last: int) -> bool:
    """Say whether a colour is named that the lesson never names."""
    ours = {value for fact in evidence.facts if fact.kind == "colour" for value in fact.values}
    kinds = (evidence.vocabulary.kind_of(word.text) for word in evidence.heard[first : last + 1])
    return any(kind == "colour" and value not in ours for kind, value in kinds)


def _is_heard(evidence: Evidence, one: Hearing) -> bool:
    return one.gain >= SURE and len(one.pairs) >= LEAST_SHARE * evidence.lengths[one.line]


def _close(evidence: Evidence, t: int) -> bool:
    return evidence.heard[t + 1].start_s - evidence.heard[t].end_s < 0.5


def _line_at(evidence: Evidence, t: int) -> int:
    """Return the line that was being said when a word was heard."""
    before = [one.line for one in evidence.hearings if one.first <= t and one.in_order]
    return before[-1] if before else 0


def _after_repeat(evidence: Evidence, t: int) -> bool:
    """Say whether rounds are shown here: the last line in order says that something is done again."""
    lines = [one.line for one in evidence.hearings if one.first <= t]
    return any(line in evidence.repeats for line in lines[-3:])


def _words_a_second(evidence: Evidence) -> float:
    spoken = sum(word.end_s - word.start_s for word in evidence.heard)
    return len(evidence.heard) / max(spoken, 1.0)
