"""Join what is said of moves to steps: what is said first of a hook move, then of its loop, then of its peg.

A step holds what was heard of it; whatever was not stays None.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field

from pegwright.listening.draft_frames import Frame
from pegwright.listening.draft_words import GARBLED, DraftWord, HeardPeg, Signs, signs_of

TAIL = 9
"""Words after the last sign of a frame in which its direction may still be said."""
LONG_TAIL = 60
"""The same where many pegs may be named."""
MOST_SHOWN_S = 30.0
"""So long may rounds be shown after it was said that they are done again (no source)."""
Way = frozenset[str]


@dataclass
class SaidStep:
    """A step as far as it was heard; `kind` is that of its first frame."""

    kind: str
    start_s: float
    words: tuple[DraftWord, ...] = ()
    pegs: list[HeardPeg] = field(default_factory=list)
    target: HeardPeg | None = None
    way: Way = frozenset()
    colour: str | None = None
    loop: str | int | None = None
    together: int | None = None
    through: int | None = None
    """Through how many loops; of a band that is placed, its half-twists."""
    number: int | None = None
    """How many times, turns, or bands."""
    named: tuple[int | None, int | None] | None = None
    """The numbers of the first and last step that are done again, where they are said."""
    same_place: bool = False
    shift: tuple[int | None, str | None, Way] | None = None
    """By how many of what (peg or row), and which way, each round is moved on."""
    end: HeardPeg | None = None
    recoloured: bool = False
    gripped: bool = False
    turned: bool = False
    """Whether the loom was turned before."""

    is_open: bool = True
    said_at: list[float] = field(default_factory=list)
    """When each thing was said of it, in s."""


def join_steps(
    frames: Sequence[Frame], words: Sequence[DraftWord], language: str
) -> tuple[list[SaidStep], Palette]:
    """Return the steps in the order of time, and the colours of the recording."""
    palette = Palette(words, signs_of(language))
    joiner = _Joiner(palette, words)
    shown: set[int] = set()
    for k, frame in enumerate(frames):
        if k in shown:
            continue
        if frame.kind == "again":
            after = _goes_on(frames, k)
            shown |= set(range(k + 1, after))
            joiner.shown = frames[k + 1] if after > k + 1 else None
        before = frames[k - 1].first + len(frames[k - 1].words) if k else 0
        joiner.lead = _lead(frame, words, before)
        follows = frames[k + 1].first if k + 1 < len(frames) else len(words)
        joiner.take(frame, _tail(frame, words, follows))
    joiner.end_again()
    return [one for one in joiner.steps if one.kind != "down" or one.pegs or one.target], palette


class Palette:
    """The colours that are named beside bands, with the words before them: “slate” of “slate blue”."""

    def __init__(self, words: Sequence[DraftWord], signs: Signs) -> None:
        self.signs = signs
        pairs: Counter[tuple[str, str]] = Counter()
        before: Counter[str] = Counter()
        self.heads: Counter[str] = Counter()
        for one, other in zip(words, words[1:], strict=False):
            if one.peg or one.number is not None or one.colour or len(one.text) < 3 or other.peg:
                continue
            before[one.text] += 1
            if other.colour and not {s for s, w in one.signs if w == 1.0}:
                pairs[one.text, other.colour] += 1
        for word in words:
            if word.colour:
                self.heads[word.colour] += 1
        self.names: dict[str, str] = {}
        self.by_first: dict[str, str] = {}
        for (first, head), count in pairs.most_common():
            if count >= 2 and count >= 0.4 * before[first]:
                self.by_first.setdefault(first, head)
                if head not in self.names and count >= 0.3 * self.heads[head]:
                    self.names[head] = f"{first} {head}"

    def colour_of(self, words: Sequence[DraftWord]) -> str | None:
        """Return the one colour that words name, or None."""
        heads = {word.colour for word in words if word.colour}
        if not heads:
            heads = {
                self.by_first[one]
                for word in words
                for one in (word.text, *self.signs.misheard.get(word.text, ()))
                if one in self.by_first
            }
        if not heads and len(self.heads) == 1 and self.heads.total() >= 3:
            return next(iter(self.heads))  # there is no other
        return heads.pop() if len(heads) == 1 else None

    def name(self, head: str) -> str:
        """Return the name of a colour as it is mostly said."""
        return self.names.get(head, head)


class _Joiner:
    def __init__(self, palette: Palette, words: Sequence[DraftWord]) -> None:
        self.palette = palette
        self.words = words
        self.steps: list[SaidStep] = []
        self.open: SaidStep | None = None
        self.again: SaidStep | None = None
        self.waiting: list[tuple[Frame, tuple[DraftWord, ...]]] = []
        self.showing = False
        self.turned = False
        self.shown: Frame | None = None
        self.lead: tuple[DraftWord, ...] = ()
        self.taken_back: Frame | None = None
        self.just_put: SaidStep | None = None

    def take(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        """Add what a frame says."""
        kind = frame.kind
        if kind not in ("put", "back"):
            self.just_put = None
        if kind == "shown":
            self.showing = self.again is not None
            return
        if self.again is not None and kind in ("place", "down", "catch", "put", "grip", "drop", "wind", "look", "back"):
            if not (self.showing and not self.waiting and kind in ("place", "down", "grip")):
                self.waiting.append((frame, tail))
            self.showing = False
            if len(self.waiting) > 2 or (kind in ("put", "drop") and self.waiting):
                self.end_again()
            return
        if self.again is not None and kind in ("shift", "ends", "again"):
            if kind != "again":
                self.waiting = []  # a round was shown in between
            else:
                self.end_again()
        elif self.again is not None:
            self.end_again()
        getattr(self, f"_{kind.replace('-', '_')}", self._nothing)(frame, tail)
        if self.steps and kind not in ("look", "back"):
            self.steps[-1].said_at.append(frame.start_s)

    def end_again(self) -> None:
        """End the step that is done again; frames that waited begin new steps."""
        waiting, self.waiting = self.waiting, []
        self.again, self.showing = None, False
        for frame, tail in waiting:
            self.take(frame, tail)

    def _nothing(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        return

    def _new(self, frame: Frame, **slots: object) -> SaidStep:
        step = SaidStep(frame.kind, frame.start_s, frame.words, turned=self.turned, **slots)  # type: ignore[arg-type]
        self.steps.append(step)
        self.open = None
        return step

    def _place(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        pegs = _pegs(frame)
        sure = {sign for word in frame.words for sign, weight in word.signs if weight >= GARBLED}
        if not pegs or not ({"band", "stretch"} & sure or any(w.colour for w in frame.words)):
            if len(pegs) == 1:
                self._put(frame, tail)
            return
        slots = _slots_by_order(frame.words)
        step = self._new(frame, pegs=slots, way=_ways(_after_pegs(frame) + tail), colour=self.palette.colour_of(self.lead + frame.words))
        self._drop_first_try(step)

    def _drop_first_try(self, step: SaidStep) -> None:
        """Drop the step before where this one says it anew: it was taken back, or broken off."""
        before = self.steps[-2] if len(self.steps) > 1 else None
        if before is None or before.kind != step.kind or step.start_s - before.start_s > 30:
            return
        if before.number == -1 or (self.taken_back is not None and before.start_s <= self.taken_back.start_s <= step.start_s):
            self.steps.remove(before)
            self.taken_back = None
        elif _says_anew(before, step):
            self.steps.remove(before)

    def _back(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        self.taken_back = frame
        if self.open is not None:
            self.open.loop = None

    def _wind(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        numbers = [w.number for w in frame.words if w.number is not None and w.number > 1]
        colour = self.palette.colour_of(self.lead + frame.words)
        if not _pegs(frame) or not (colour or "band" in _signs(frame.words)):
            return
        self._new(frame, pegs=_pegs(frame), colour=colour, number=numbers[0] if len(numbers) == 1 else None)

    def _hang(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        if self.steps and self.steps[-1].kind == "hang":
            return
        numbers = [w.number for w in frame.words if w.number is not None and w.number > 1]
        colour = self.palette.colour_of(self.lead + frame.words)
        self._new(frame, colour=colour, number=numbers[0] if len(numbers) == 1 else None)

    def _down(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        pegs = _pegs(frame)
        before = self.steps[-1] if self.steps else None
        if before is not None and before.kind == "down" and before.is_open and frame.start_s - before.start_s < 14:
            if not before.gripped:
                self.steps.pop()  # begun anew, or taken back
        elif before is not None and before.kind == "down" and not pegs and not any(s == "peg" for w in frame.words for s, _ in w.signs):
            return  # said once more of the step that has just ended
        self.open = self._new(frame, pegs=pegs[:1])

    def _catch(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        open_step = self.open
        if open_step is not None and open_step.kind == "slide":
            return  # up through the loops above
        if open_step is None or open_step.kind not in ("down", "grip"):
            open_step = self.open = self._new(frame)
            open_step.kind = "down"
        elif open_step.target is not None:
            return
        _set_loop(open_step, frame)

    def _put(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        open_step = self.open
        pegs = _pegs(frame)
        if not pegs:
            return
        if open_step is None and self.steps and self.steps[-1] is self.just_put:
            open_step = self.steps[-1]  # said anew
        if open_step is None or open_step.kind not in ("down", "grip", "slide"):
            return
        if open_step.kind == "grip":
            open_step.kind = "down"
        open_step.target, open_step.way = pegs[0], _ways(_after_pegs(frame) + tail)
        open_step.is_open = False
        self.open, self.just_put = None, open_step

    def _slide(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        if self.open is not None and self.open.kind == "down":
            self.open.kind = "slide"

    def _grip(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        pegs = _pegs(frame)
        before = self.steps[-1] if self.steps else None
        if before is not None and before.kind == "grip" and before.is_open and frame.start_s - before.start_s < 12:
            self.steps.pop()
        self.open = self._new(frame, pegs=pegs[:1])
        _set_loop(self.open, frame)
        self.open.gripped = True

    def _drop(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        open_step = self.open
        if open_step is None or open_step.kind not in ("grip", "down") or open_step.target is not None:
            return
        open_step.kind, open_step.is_open = "drop", False
        self.open = None

    def _move_over(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        self._new(frame, pegs=_pegs(frame), way=_ways(_after_pegs(frame) + tail))

    def _only(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        if self.steps and self.steps[-1].kind == "down" and any(word.loop == "top" for word in frame.words):
            self.steps[-1].through = 1

    def _twist(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        if self.steps and self.steps[-1].kind == "place":
            self.steps[-1].through = 1

    def _recolour(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        for step in self.steps[-1:]:
            step.recoloured = True

    def _again(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        words = frame.words + tail
        before = self.steps[-1] if self.steps else None
        if before is not None and before.kind == "again" and before.number is None and before.shift is None:
            if frame.start_s - before.start_s < 5 and before.end is None:
                words = self.steps.pop().words + words  # said in two breaths
        frame = frame._replace(words=words)
        named, rest = _named_steps(words)
        step = self._new(frame, named=named, number=_times(rest), same_place="place" in _signs(words))
        if self.shown is not None:
            step.pegs = _pegs(self.shown)[:1]
        self.again, self.shown = step, None

    def _shift(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        step = self.again
        if step is None or step.shift is not None:
            return
        step.shift = _shift_of(frame.words + tail)

    def _ends(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        step = self.again
        pegs = _pegs(frame)
        if step is not None and pegs and (step.end is None or pegs[-1].clear):
            step.end = pegs[-1]

    def _turn(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        if self.steps and self.steps[-1].kind == "turn":
            self.steps[-1].pegs = self.steps[-1].pegs or _pegs(frame)
            return
        self._new(frame, pegs=_pegs(frame))
        self.turned = not self.turned

    def _bind(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        if self.steps and self.steps[-1].kind == "bind":
            return
        self.open = self._new(frame, pegs=_pegs(frame))

    def _half(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        step = self.steps[-1] if self.steps and self.steps[-1].kind in ("bind", "down") else None
        if step is not None and step.kind == "down" and step.loop is None and step.target is None:
            step.kind = "bind"
        if step is None or step.kind != "bind":
            step = self._new(frame)
            step.kind = "bind"
        step.colour, step.gripped = self.palette.colour_of(self.lead + frame.words), True

    def _extend(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        numbers = [word.number for word in frame.words if word.number is not None and word.number > 1]
        colour = self.palette.colour_of(self.lead + frame.words)
        self._new(frame, colour=colour, number=numbers[0] if len(numbers) == 1 else None)

    def _gather(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        if self.steps and self.steps[-1].kind == "gather":
            return
        signs = _signs(frame.words)
        step = self._new(frame, pegs=_pegs(frame))
        step.same_place = "first" in signs and "band" in signs
        step.loop = "end" if "free" in signs else None

    def _clip(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        if self.steps and self.steps[-1].kind == "gather":
            self.steps[-1].gripped = True

    def _cord(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        words = frame.words + tail
        if self.steps and self.steps[-1].kind == "cord":
            if not _pegs(frame) or not self.steps[-1].pegs:
                return
            words = self.steps.pop().words + words
        pegs = [word.peg for word in words if word.peg is not None]
        self._new(frame._replace(words=words), pegs=pegs, same_place="to" in _signs(words))

    def _need(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        self._new(frame._replace(words=frame.words + tail))

    def _used(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        numbers = [word.number for word in frame.words if word.number is not None]
        self._new(frame, number=numbers[0] if len(numbers) == 1 else None)

    def _keep(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        self._new(frame, pegs=_pegs(frame))

    def _look(self, frame: Frame, tail: tuple[DraftWord, ...]) -> None:
        self._new(frame, pegs=_pegs(frame))


def _lead(frame: Frame, words: Sequence[DraftWord], before: int) -> tuple[DraftWord, ...]:
    """Return the words of the sentence before its first sign."""
    first = frame.first
    while first > max(before, frame.first - TAIL) and not words[first].begins:
        first -= 1
    return tuple(words[first : frame.first])


def _goes_on(frames: Sequence[Frame], k: int) -> int:
    """Return where it is said by how much each round is moved on: a round shown before that is no step."""
    for j in range(k + 1, min(k + 6, len(frames))):
        if frames[j].kind == "again" and j > k + 1:
            break
        if frames[j].start_s - frames[k].start_s > MOST_SHOWN_S:
            break
        if frames[j].kind in ("shift", "ends"):
            return j
    return k + 1


def _tail(frame: Frame, words: Sequence[DraftWord], follows: int) -> tuple[DraftWord, ...]:
    last = frame.first + len(frame.words)
    end = last
    most = LONG_TAIL if frame.kind in ("cord", "need") else TAIL
    while end < min(follows, last + most, len(words)) and not words[end].begins:
        end += 1
    return tuple(words[last:end])


def _signs(words: Sequence[DraftWord]) -> set[str]:
    return {sign for word in words for sign, _ in word.signs}


def _pegs(frame: Frame) -> list[HeardPeg]:
    return [word.peg for word in frame.words if word.peg is not None]


def _slots_by_order(words: Sequence[DraftWord]) -> list[HeardPeg]:
    """Return where a band goes from and to; a side of “to” on which no peg was heard is empty."""
    found: list[HeardPeg] = []
    at = [k for k, word in enumerate(words) if word.peg is not None]
    if len(at) == 1:
        before = {sign for word in words[max(0, at[0] - 3) : at[0]] for sign, weight in word.signs if weight == 1.0}
        start = {sign for word in words[: at[0]] for sign, weight in word.signs if weight == 1.0}
        peg = words[at[0]].peg
        assert peg is not None
        empty = HeardPeg(None, None)
        if "from" in before and "to" not in before:
            return [peg, empty]
        if "to" in before or "over" in before or "from" in start:
            return [empty, peg]
        return [empty, empty]
    found = [words[k].peg for k in at]  # type: ignore[misc]
    return found


def _after_pegs(frame: Frame) -> tuple[DraftWord, ...]:
    last = max((k for k, word in enumerate(frame.words) if word.peg is not None), default=len(frame.words) - 1)
    return frame.words[last + 1 :]


def _ways(words: Sequence[DraftWord]) -> Way:
    return frozenset(word.way for word in words if word.way is not None)


def _set_loop(step: SaidStep, frame: Frame) -> None:
    words = frame.words
    loops = {word.loop for word in words if word.loop is not None}
    bottom = any(sign == "bottom" for word in words for sign, _ in word.signs)
    number = None
    for k, word in enumerate(words[:-1]):
        sign = {s for s, _ in word.signs}
        if "loop" in sign and words[k + 1].number is not None:
            number = words[k + 1].number
        if word.number is not None and word.number > 1 and any(w.loop == "lowest" for w in words[k + 1 : k + 3]) and word.text != "to":
            step.together = word.number
    if bottom and not any(word.loop == "lowest" and word.text != "bottom" for word in words):
        step.loop = number
    elif len(loops) == 1:
        loop = loops.pop()
        step.loop = None if loop == "top" and step.gripped else loop  # said anew: it was taken back
    step.gripped = True


def _named_steps(words: Sequence[DraftWord]) -> tuple[tuple[int | None, int | None] | None, list[DraftWord]]:
    """Return the numbers of the steps that are named, and the words that remain."""
    at = next((k for k, word in enumerate(words) if any(s == "step" and w == 1.0 for s, w in word.signs)), None)
    if at is None:
        return None, list(words)
    end = at + 1
    numbers: list[int] = []
    single = words[at].text == "step"
    while end < len(words) and end - at < 5:
        word = words[end]
        value = word.peg.number if word.peg is not None else word.number
        if value is None and word.text != "to" and word.perhaps is not None:
            value = word.perhaps
        if any(s in ("again", "place", "more") for s, _ in word.signs):
            break
        if value is not None and word.text not in ("to",):
            numbers.append(value)
        end += 1
        if len(numbers) == 2:
            break
    adjacent = words[end - 2].number is not None and words[end - 2].text.isdecimal()
    if len(numbers) == 2 and adjacent and _signs(words[end : end + 2]) & {"more", "times"}:
        numbers, end = numbers[:1], end - 1  # “repeat steps 7, 20 more times”
    first = numbers[0] if numbers else None
    if len(numbers) == 2 and numbers[1] > numbers[0]:
        named: tuple[int | None, int | None] = (numbers[0], numbers[1])
    elif len(numbers) == 1 and (single or end - at == 2):
        named = (first, first)
    elif len(numbers) == 2:
        return (None, None), [*words[:at], *words[end - 1 :]]
    else:
        named = (None, None)
    return named, [*words[:at], *words[end:]]


def _times(words: Sequence[DraftWord]) -> int | None:
    """Return how many more times; None where it was not heard."""
    for k, word in enumerate(words):
        near = [_signs(words[j : j + 1]) for j in (k + 1, k + 2)]
        if word.number is not None and {"more", "times"} & (near[0] | near[1]):
            return word.number
        if word.perhaps is not None and "more" in near[0]:
            return word.perhaps
    return None


def _shift_of(words: Sequence[DraftWord]) -> tuple[int | None, str | None, Way]:
    number, unit = None, None
    for k, word in enumerate(words):
        signs = {sign for sign, _ in word.signs}
        if unit is None and ("pegs" in signs or "peg" in signs or word.text in ("peg", "pegs")):
            unit = "peg"
        elif unit is None and "row" in signs:
            unit = "row"
        if number is None and word.number is not None and k < 8:
            number = word.number
        elif number is None and word.perhaps is not None and _signs(words[k + 1 : k + 2]) & {"peg", "row"}:
            number = word.perhaps
        if word.peg is not None and word.peg.number is not None and number is None:
            number = word.peg.number
    way = _ways(words)
    if any(sign == "round-way" for word in words for sign, _ in word.signs):
        way = way | {"round"}
    return number, unit, way


def _says_anew(before: SaidStep, step: SaidStep) -> bool:
    """Say whether a step is said once more: the same colour and a peg, but another way or no second peg."""
    if before.kind != "place" or before.colour != step.colour:
        return False
    pairs = list(zip(before.pegs, step.pegs, strict=False))
    same = [one.name == other.name and one.name is not None for one, other in pairs]
    whole = len(before.pegs) > 1 and all(peg.name for peg in before.pegs)
    if len(same) == 2 and all(same):
        return before.way != step.way and bool(before.way)
    return bool(same) and same[0] and not whole
