"""A careless speaker teaches a built-in piece: what is said, when, and where it is wrong.

The narration of the lesson is reworded, shortened, interrupted and corrected aloud; some facts are planted
wrong, and what they should be is kept. All of it follows from a number, so the same talk comes back.
"""

from __future__ import annotations

import random
import re
from typing import NamedTuple

from pegwright.lesson import Script
from testing.listening.rewording import reword

ASIDES = (
    "Mind the ferry outside, it hoots at noon.",
    "Oh, has everybody got a chair?",
    "The tide table on the wall is last year's, by the way.",
    "If you are cold, the radiator under the window works now.",
    "Somebody left a scarf at the desk downstairs.",
    "There is tea in the kitchen afterwards.",
    "Can everyone at the back see this?",
    "My neighbour's boat is called after this one, actually.",
    "Sorry, the camera slipped, there we are.",
    "This is my favourite part of the whole thing.",
)
FILLERS = ("so", "okay", "now", "right", "um", "well", "and then")
OTHER_COLOURS = ("green", "purple", "orange", "pink", "black")


class Utterance(NamedTuple):
    """One breath: its words, the line of the script it says (-1 for none), and the silence after it in s.

    `music` marks a stretch of music instead of words.
    """

    text: str
    line: int = -1
    pause_s: float = 0.4
    music: bool = False


class Planted(NamedTuple):
    """Something said wrong: its kind and step, what it should be and what is said, and in which utterance."""

    kind: str
    step: int
    meant: str
    said: str
    utterance: int


class Talk(NamedTuple):
    """A whole recording's words, with what was planted in them."""

    piece: str
    seed: int
    utterances: tuple[Utterance, ...]
    planted: tuple[Planted, ...]


def give_talk(piece: str, script: Script, seed: int) -> Talk:
    """Return the talk of a number: two to five facts wrong, the rest true."""
    rng = random.Random(f"talk {seed}")
    wrong = _choose_wrong(script, rng)
    said: list[Utterance] = []
    planted: list[Planted] = []
    order = _line_order(script, wrong)
    begun = False
    for i in order:
        line = script.lines[i]
        if line.step and not begun:
            begun = True
        if not _is_said(script, i, wrong, rng):
            continue
        if begun and rng.random() < 0.05:
            said.append(Utterance(rng.choice(ASIDES), pause_s=rng.uniform(0.5, 2.0)))
        text = reword(line.text, rng)
        plan = wrong.get(i)
        if plan is not None and plan[0] not in ("swapped", "unsaid", "extra", "hand"):
            text = text.replace(*plan[1:3], 1) if plan[1] in text else _swap_in(line.text, plan)
            planted.append(Planted(plan[0], line.step, plan[3], plan[4], len(said)))
        elif line.step and rng.random() < 0.05 and (slip := _slip(text, rng)) is not None:
            said.append(Utterance(slip, pause_s=0.3))
            said.append(Utterance(rng.choice(CORRECTIONS), pause_s=0.5))
        if rng.random() < 0.2:
            text = f"{rng.choice(FILLERS)} {text[0].lower()}{text[1:]}"
        if rng.random() < 0.03 and len(text.split()) > 7:  # breaks off and begins again
            said.append(Utterance(" ".join(text.split()[: rng.randint(3, 5)]), i, 0.6))
        said.append(Utterance(text, i, rng.uniform(0.2, 0.9)))
        if plan is not None and plan[0] in ("extra", "hand"):
            planted.append(Planted(plan[0], line.step, plan[3], plan[4], len(said)))
            said.append(Utterance(plan[2], pause_s=0.6))
        if plan is not None and plan[0] in ("swapped", "unsaid"):
            planted.append(Planted(plan[0], line.step, plan[3], plan[4], len(said) - 1))
        if re.search(r"\bagain, (once|\d+) more", line.text):
            said += _after_repeat(script, i, rng)
        elif i + 1 < len(script.lines) and script.lines[i + 1].step != line.step:
            said[-1] = said[-1]._replace(pause_s=rng.uniform(0.8, 3.0))
    planted += [
        Planted("unsaid", script.lines[i].step, "", "", len(said))
        for i, plan in wrong.items()
        if plan[0] == "unsaid" and i == min(k for k, p in wrong.items() if p is plan)
    ]
    return Talk(piece, seed, tuple(said), tuple(dict.fromkeys(planted)))


CORRECTIONS = (
    "No, that was the wrong one, put it back.",
    "Sorry, that's wrong, I mean",
    "Oh no, take that back.",
    "Wait, not like that. Again.",
)
Plan = tuple[str, str, str, str, str]
"""A kind, the words that are replaced, the words that replace them, the true value, the wrong one."""


def _is_said(script: Script, i: int, wrong: dict[int, Plan], rng: random.Random) -> bool:
    """Cautions are mostly left to the handout; of a step's sentences some of the later ones are skipped."""
    line = script.lines[i]
    plan = wrong.get(i)
    if plan is not None:
        return plan[0] != "unsaid"
    first = i == 0 or script.lines[i - 1].step != line.step
    chapter = next(c for c in script.chapters if c.start_s <= line.start_s < c.end_s)
    if chapter is script.chapters[1]:
        return line.start_s == chapter.start_s or rng.random() < 0.35
    if line.step and not first and not re.search(r"\d|one peg|lowest|top", line.text):
        return rng.random() < 0.8
    return bool(line.step) or line.start_s == chapter.start_s or rng.random() < 0.8


def _line_order(script: Script, wrong: dict[int, Plan]) -> list[int]:
    """The lines in the order in which they are said: steps planted as swapped change places."""
    order = list(range(len(script.lines)))
    for i, plan in wrong.items():
        if plan[0] == "swapped":
            one = [k for k in order if script.lines[k].step == script.lines[i].step]
            next_step = script.lines[i].step + 1
            two = [k for k in order if script.lines[k].step == next_step]
            at = order.index(one[0])
            order = [k for k in order if k not in one and k not in two]
            order[at:at] = two + one
    return order


def _choose_wrong(script: Script, rng: random.Random) -> dict[int, Plan]:
    ways: dict[str, list[dict[int, Plan]]] = {}
    for i, line in enumerate(script.lines):
        for plan in _wrong_ways(script, i, rng):
            if plan[0] == "unsaid":
                lines = [k for k, one in enumerate(script.lines) if one.step == line.step]
                ways.setdefault("unsaid", []).append(dict.fromkeys(lines, plan))
            else:
                ways.setdefault(plan[0], []).append({i: plan})
    chosen: dict[int, Plan] = {}
    steps: set[int] = set()
    kinds = sorted(ways)
    rng.shuffle(kinds)
    for kind in kinds[: rng.randint(3, 6)]:
        free = [
            way
            for way in ways[kind]
            if not any(
                abs(script.lines[i].step - s) <= 1 and script.lines[i].step for i in way for s in steps
            )
        ]
        if free:
            way = rng.choice(free)
            chosen |= way
            steps |= {script.lines[i].step for i in way}
    return chosen


def _wrong_ways(script: Script, i: int, rng: random.Random) -> list[Plan]:
    """All ways in which a line of the script could be said wrong."""
    line = script.lines[i]
    text = line.text
    ways: list[Plan] = []
    if not line.step:
        return ways
    first = script.lines[i - 1].step != line.step
    if found := re.search(r"Lay out .*?(\d+) ([a-z ]+) bands? \((\w)\)", text):
        n = int(found[1])
        other = str(n + rng.choice((-2, -1, 1, 2, 10)))
        ways.append(("supplies", f"{n} {found[2]}", f"{other} {found[2]}", str(n), other))
        return ways
    if found := re.search(r"one ([a-z ]+) band \((\w)\) (?:from|\d times)", text):
        colour = found[1]
        others = [c for c in _colours(script) if c != colour] + [rng.choice(OTHER_COLOURS)]
        other = rng.choice(others)
        ways.append(("colour", f"{colour} band", f"{other} band", colour, other))
    if found := re.search(r"(?:from|round|on|side of) peg ([A-Z])(\d+)", text):
        peg, n = found[1] + found[2], int(found[2])
        other = found[1] + str(max(1, n + rng.choice((-1, 1, 2))) if n > 1 else n + rng.choice((1, 2, 3)))
        ways.append(("peg", peg, other, peg, other))
    if found := re.search(r"(?:over|inside) the (\d) loops above|through all (\d) (?:of|loops)", text):
        n = int(found[1] or found[2])
        other = str(n + rng.choice((-1, 1, 2))) if n > 2 else str(n + rng.choice((1, 2)))
        ways.append(("count", f"{n} ", f"{other} ", str(n), other))
    if "to your left" in text or "to your right" in text:
        one, other = ("left", "right") if "to your left" in text else ("right", "left")
        ways.append(("direction", f"your {one}", f"your {other}", one, other))
    elif found := re.search(r"(?:peg \w+,|further) (away from|towards) you", text):
        other = "towards" if found[1] == "away from" else "away from"
        ways.append(("direction", f"{found[1]} you", f"{other} you", found[1].split()[0], other.split()[0]))
    if "the lowest loop" in text and first:
        ways.append(("order", "lowest", "top", "lowest", "top"))
    if found := re.search(r"again.*, (\d+) more times", text):
        n = int(found[1])
        other = str(n + rng.choice((-1, 1, 2, -2)) if n > 3 else n + rng.choice((1, 2)))
        ways.append(("repeats", f"{n} more", f"{other} more", str(n), other))
    if first and text.startswith("Stretch one"):
        following = [one for one in script.lines if one.step == line.step + 1]
        if following and following[0].text.startswith("Stretch one") and following[0].text != text:
            ways.append(("swapped", "", "", "", ""))
        peg = f"{rng.choice('AB')}{rng.randint(2, 9)}"
        extra = (
            f"Then stretch one {rng.choice(OTHER_COLOURS)} band from peg {peg} to peg D{rng.randint(2, 9)}."
        )
        ways.append(("extra", "", extra, "", extra))
    if first and re.match(r"Stretch one|On peg|Push the hook|Wind one|Take the loop", text):
        ways.append(("unsaid", "", "", "", ""))
    if text.startswith("Push the hook") or text.startswith("On peg"):
        ways.append(("hand", "", "I hold the hook in my left hand, and so do you.", "right", "left"))
    return ways


def _swap_in(text: str, plan: Plan) -> str:
    """Plant in the printed words where the reworded ones lack the place."""
    bare = re.sub(r" \([^)]*\)", "", text)
    assert plan[1] in bare, (bare, plan)
    return bare.replace(plan[1], plan[2], 1)


def _colours(script: Script) -> list[str]:
    found = [re.findall(r"one ([a-z ]+?) band \(", line.text) for line in script.lines]
    return sorted({colour for line in found for colour in line})


def _slip(text: str, rng: random.Random) -> str | None:
    """A wrong version that is taken back at once."""
    for one, other in (("left", "right"), ("right", "left"), ("lowest", "top"), ("away from", "towards")):
        if f" {one} " in text:
            return text.replace(f" {one} ", f" {other} ", 1)
    if found := re.search(r"\b([A-Z])(\d+)\b", text):
        return text.replace(found[0], f"{found[1]}{int(found[2]) + rng.choice((1, 2))}", 1)
    return None


def _after_repeat(script: Script, i: int, rng: random.Random) -> list[Utterance]:
    """Some rounds are done aloud, or the film is speeded up with music."""
    if rng.random() < 0.5:
        return [Utterance("", pause_s=rng.uniform(4, 9), music=True)]
    text = script.lines[i].text
    if found := re.search(r"[Ss]teps? (\d+)", text):
        first = [one.text for one in script.lines if one.step == int(found[1])]
        shift = int(n[1]) if (n := re.search(r"Move (\d+) pegs", script.lines[i + 1].text)) else 1
        back = bool(re.match(r"Push", first[0]))
        said = reword(first[0], rng)
        said = re.sub(
            r"\b([A-Z])(\d+)\b", lambda m: f"{m[1]}{max(1, int(m[2]) + (-shift if back else shift))}", said
        )
        return [
            Utterance("Like this, " + said[0].lower() + said[1:], pause_s=1.0),
            Utterance("and so on, I will be quick.", pause_s=rng.uniform(2, 6)),
        ]
    return []
