"""Join what is said of moves to steps: what is said first of a hook move, then of its loop, then of its peg.

A step holds what was heard of it; whatever was not stays None.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from pegwright.listening.draft_colours import Palette
from pegwright.listening.draft_sayings import Saying
from pegwright.listening.draft_slots import (
    Way,
    after_pegs,
    from_and_to,
    lead_of,
    named_steps,
    pegs_in,
    shift_in,
    signs_in,
    tail_of,
    times_in,
    ways_in,
)
from pegwright.listening.draft_words import GARBLED, DraftWord, HeardPeg, signs_of

UNCLEAR = "unclear"
"""A loop that is named by its number, which was not heard."""
LEAST_GAIN = 1.2
"""So much must speak for a move that is not said in several sentences (no source)."""
BREATH_S, ANEW_S = 5.0, 14.0
"""Within so many s a sentence goes on; within so many a step is begun anew (no source)."""
MOST_SHOWN_S = 30.0
"""So long may rounds be shown after it was said that they are done again (no source)."""


@dataclass
class SaidStep:
    """A step as far as it was heard; `kind` is that of its first saying."""

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
    sayings: Sequence[Saying], words: Sequence[DraftWord], language: str
) -> tuple[list[SaidStep], Palette]:
    """Return the steps in the order of time, and the colours of the recording."""
    palette = Palette(words, signs_of(language))
    joiner = _Joiner(palette)
    shown: set[int] = set()
    for k, saying in enumerate(sayings):
        if k in shown:
            continue
        if saying.kind == "again":
            after = _goes_on(sayings, k)
            shown |= set(range(k + 1, after))
            joiner.shown = sayings[k + 1] if after > k + 1 else None
        before = sayings[k - 1].first + len(sayings[k - 1].words) if k else 0
        follows = sayings[k + 1].first if k + 1 < len(sayings) else len(words)
        lead, tail = lead_of(saying, words, before), tail_of(saying, words, follows)
        joiner.take(saying._replace(lead=lead, tail=tail))
    joiner.end_again()
    return [one for one in joiner.steps if one.kind != "down" or one.pegs or one.target], palette


class _Joiner:
    def __init__(self, palette: Palette) -> None:
        self.palette = palette
        self.steps: list[SaidStep] = []
        self.open: SaidStep | None = None
        self.again: SaidStep | None = None
        self.waiting: list[Saying] = []
        self.showing = False
        self.turned = False
        self.shown: Saying | None = None
        self.taken_back: Saying | None = None
        self.just_put: SaidStep | None = None

    def take(self, saying: Saying) -> None:
        """Add what a saying says."""
        kind = saying.kind
        if kind not in ("put", "back"):
            self.just_put = None
        if kind == "shown":
            self.showing = self.again is not None
            return
        if self.again is not None and kind in (
            "place",
            "down",
            "catch",
            "put",
            "grip",
            "drop",
            "wind",
            "look",
            "back",
        ):
            if not (self.showing and not self.waiting and kind in ("place", "down", "grip")):
                self.waiting.append(saying)
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
        getattr(self, f"_take_{kind.replace('-', '_')}", self._nothing)(saying)
        if self.steps and kind not in ("look", "back"):
            self.steps[-1].said_at.append(saying.start_s)

    def end_again(self) -> None:
        """End the step that is done again; sayings that waited begin new steps."""
        waiting, self.waiting = self.waiting, []
        self.again, self.showing = None, False
        for saying in waiting:
            self.take(saying)

    def _nothing(self, _: Saying) -> None:
        return

    def _new(self, saying: Saying, **slots: object) -> SaidStep:
        step = SaidStep(saying.kind, saying.start_s, saying.words, turned=self.turned, **slots)  # type: ignore[arg-type]
        self.steps.append(step)
        self.open = None
        return step

    def _take_place(self, saying: Saying) -> None:
        pegs = pegs_in(saying)
        sure = signs_in(saying.words, GARBLED)
        if not pegs or not ({"band", "stretch"} & sure or any(w.colour for w in saying.words)):
            if len(pegs) == 1:
                self._take_put(saying)
            return
        slots = from_and_to(saying.words)
        step = self._new(
            saying,
            pegs=slots,
            way=ways_in(after_pegs(saying) + saying.tail),
            colour=self.palette.colour_of(saying.lead + saying.words),
        )
        self._drop_first_try(step)

    def _drop_first_try(self, step: SaidStep) -> None:
        """Drop the step before where this one says it anew: it was taken back, or broken off."""
        before = self.steps[-2] if len(self.steps) > 1 else None
        if before is None or before.kind != step.kind or step.start_s - before.start_s > 2 * ANEW_S:
            return
        if before.number == -1 or (
            self.taken_back is not None and before.start_s <= self.taken_back.start_s <= step.start_s
        ):
            self.steps.remove(before)
            self.taken_back = None
        elif _says_anew(before, step):
            self.steps.remove(before)

    def _take_back(self, saying: Saying) -> None:
        self.taken_back = saying
        if self.open is not None:
            self.open.loop = None

    def _take_wind(self, saying: Saying) -> None:
        numbers = [w.number for w in saying.words if w.number is not None and w.number > 1]
        colour = self.palette.colour_of(saying.lead + saying.words)
        if (
            not pegs_in(saying)
            or not (colour or "band" in signs_in(saying.words))
            or saying.gain < LEAST_GAIN
        ):
            return
        self._new(
            saying, pegs=pegs_in(saying), colour=colour, number=numbers[0] if len(numbers) == 1 else None
        )

    def _take_hang(self, saying: Saying) -> None:
        if (self.steps and self.steps[-1].kind == "hang") or not any(
            ("shaft", 1.0) in w.signs for w in saying.words
        ):
            return
        numbers = [w.number for w in saying.words if w.number is not None and w.number > 1]
        colour = self.palette.colour_of(saying.lead + saying.words)
        self._new(saying, colour=colour, number=numbers[0] if len(numbers) == 1 else None)

    def _take_down(self, saying: Saying) -> None:
        pegs = pegs_in(saying)
        before = self.steps[-1] if self.steps else None
        if (
            before is not None
            and before.kind == "down"
            and before.is_open
            and saying.start_s - before.start_s < ANEW_S
        ):
            if not before.gripped:
                self.steps.pop()  # begun anew, or taken back
        elif (
            before is not None
            and before.kind == "down"
            and not pegs
            and not any(s == "peg" for w in saying.words for s, _ in w.signs)
        ):
            return  # said once more of the step that has just ended
        self.open = self._new(saying, pegs=pegs[:1])

    def _take_catch(self, saying: Saying) -> None:
        open_step = self.open
        if open_step is not None and open_step.kind == "slide":
            return  # up through the loops above
        if open_step is None or open_step.kind not in ("down", "grip"):
            open_step = self.open = self._new(saying)
            open_step.kind = "down"
        elif open_step.target is not None:
            return
        _set_loop(open_step, saying)

    def _take_put(self, saying: Saying) -> None:
        open_step = self.open
        pegs = pegs_in(saying)
        if not pegs:
            return
        if open_step is None and self.steps and self.steps[-1] is self.just_put:
            open_step = self.steps[-1]  # said anew
        if open_step is None or open_step.kind not in ("down", "grip", "slide"):
            return
        if open_step.kind == "grip":
            open_step.kind = "down"
        open_step.target, open_step.way = pegs[0], ways_in(after_pegs(saying) + saying.tail)
        open_step.is_open = False
        self.open, self.just_put = None, open_step

    def _take_slide(self, _: Saying) -> None:
        if self.open is not None and self.open.kind == "down":
            self.open.kind = "slide"

    def _take_grip(self, saying: Saying) -> None:
        pegs = pegs_in(saying)
        before = self.steps[-1] if self.steps else None
        if (
            before is not None
            and before.kind == "grip"
            and before.is_open
            and saying.start_s - before.start_s < ANEW_S
        ):
            self.steps.pop()
        self.open = self._new(saying, pegs=pegs[:1])
        _set_loop(self.open, saying)
        self.open.gripped = True

    def _take_drop(self, _: Saying) -> None:
        open_step = self.open
        if open_step is None or open_step.kind not in ("grip", "down") or open_step.target is not None:
            return
        open_step.kind, open_step.is_open = "drop", False
        self.open = None

    def _take_move_over(self, saying: Saying) -> None:
        signs = signs_in(saying.words, 1.0)
        if len({"take", "off", "put", "loop"} & signs) < 3:
            return
        self._new(saying, pegs=pegs_in(saying), way=ways_in(after_pegs(saying) + saying.tail))

    def _take_only(self, saying: Saying) -> None:
        if self.steps and self.steps[-1].kind == "down" and any(word.loop == "top" for word in saying.words):
            self.steps[-1].through = 1

    def _take_twist(self, _: Saying) -> None:
        if self.steps and self.steps[-1].kind == "place":
            self.steps[-1].through = 1

    def _take_recolour(self, _: Saying) -> None:
        for step in self.steps[-1:]:
            step.recoloured = True

    def _take_again(self, saying: Saying) -> None:
        words = saying.words + saying.tail
        before = self.steps[-1] if self.steps else None
        bare = (
            before is not None and before.kind == "again" and before.number is None and before.shift is None
        )
        if before is not None and bare and before.end is None and saying.start_s - before.start_s < BREATH_S:
            words = self.steps.pop().words + words  # said in two breaths
        saying = saying._replace(words=words)
        named, rest = named_steps(words)
        number = times_in(rest)
        before_it = [word.number for word in rest[:4] if word.number != number]
        if named is None and any(before_it):
            named = (None, None)  # “do slate 6 again, 11 more times”
        step = self._new(saying, named=named, number=number, same_place="place" in signs_in(words))
        step.gripped = any(("step", 1.0) in word.signs for word in words)
        if self.shown is not None:
            step.pegs = pegs_in(self.shown)[:1]
        self.again, self.shown = step, None

    def _take_shift(self, saying: Saying) -> None:
        step = self.again
        if step is None or step.shift is not None:
            return
        step.shift = shift_in(saying.words + saying.tail)

    def _take_ends(self, saying: Saying) -> None:
        step = self.again
        pegs = pegs_in(saying)
        if step is not None and pegs and (step.end is None or pegs[-1].clear):
            step.end = pegs[-1]

    def _take_turn(self, saying: Saying) -> None:
        if self.steps and self.steps[-1].kind == "turn":
            self.steps[-1].pegs = self.steps[-1].pegs or pegs_in(saying)
            return
        signs = signs_in(saying.words, 1.0)
        if not {"turn", "whole"} & signs or not {"loom", "nearest", "ends"} & signs:
            return
        self._new(saying, pegs=pegs_in(saying))
        self.turned = not self.turned

    def _take_bind(self, saying: Saying) -> None:
        if self.steps and self.steps[-1].kind == "bind":
            return
        self.open = self._new(saying, pegs=pegs_in(saying))

    def _take_half(self, saying: Saying) -> None:
        step = self.steps[-1] if self.steps and self.steps[-1].kind in ("bind", "down") else None
        if step is not None and step.kind == "down" and step.loop is None and step.target is None:
            step.kind = "bind"
        if step is None or step.kind != "bind":
            step = self._new(saying)
            step.kind = "bind"
        step.colour, step.gripped = self.palette.colour_of(saying.lead + saying.words), True

    def _take_extend(self, saying: Saying) -> None:
        if saying.gain < LEAST_GAIN:
            return
        words = saying.words
        band = next((k for k, word in enumerate(words) if word.colour or ("band", 1.0) in word.signs), 0)
        numbers = [word.number for word in words[max(0, band - 4) : band] if word.number is not None]
        colour = self.palette.colour_of(saying.lead + words)
        self._new(saying, colour=colour, number=numbers[0] if len(numbers) == 1 else None)

    def _take_gather(self, saying: Saying) -> None:
        if self.steps and self.steps[-1].kind == "gather":
            return
        signs = signs_in(saying.words)
        step = self._new(saying, pegs=pegs_in(saying))
        step.same_place = "first" in signs and "band" in signs
        step.loop = "end" if "free" in signs else None

    def _take_clip(self, _: Saying) -> None:
        if self.steps and self.steps[-1].kind == "gather":
            self.steps[-1].gripped = True

    def _take_cord(self, saying: Saying) -> None:
        words = saying.words + saying.tail
        if self.steps and self.steps[-1].kind == "cord":
            if not pegs_in(saying) or not self.steps[-1].pegs:
                return
            words = self.steps.pop().words + words
        pegs = [word.peg for word in words if word.peg is not None]
        self._new(saying._replace(words=words), pegs=pegs, same_place="to" in signs_in(words))

    def _take_need(self, saying: Saying) -> None:
        self._new(saying._replace(words=saying.words + saying.tail))

    def _take_used(self, saying: Saying) -> None:
        numbers = [word.number for word in saying.words if word.number is not None]
        self._new(saying, number=numbers[0] if len(numbers) == 1 else None)

    def _take_keep(self, saying: Saying) -> None:
        self._new(saying, pegs=pegs_in(saying))

    def _take_look(self, saying: Saying) -> None:
        self._new(saying, pegs=pegs_in(saying))


def _goes_on(sayings: Sequence[Saying], k: int) -> int:
    """Return where it is said by how much each round is moved on: a round shown before that is no step."""
    for j in range(k + 1, min(k + 6, len(sayings))):
        if sayings[j].kind == "again" and j > k + 1:
            break
        if sayings[j].start_s - sayings[k].start_s > MOST_SHOWN_S:
            break
        if sayings[j].kind in ("shift", "ends"):
            return j
    return k + 1


def _set_loop(step: SaidStep, saying: Saying) -> None:
    words = saying.words
    loops = {word.loop for word in words if word.loop is not None}
    bottom = any(sign == "bottom" for word in words for sign, _ in word.signs)
    number = None
    for k, word in enumerate(words[:-1]):
        after = words[k + 1 : k + 3]
        if ("loop", 1.0) in word.signs and after[0].number is not None:
            number = after[0].number
        if word.number is not None and any(
            w.loop == "lowest" and "bottom" not in signs_in((w,)) for w in after
        ):
            step.together = word.number if word.number > 1 else None
    for k, word in enumerate(words[:-1]):
        if word.loop is not None and ("many", 1.0) in words[k + 1].signs and step.together is None:
            loops = set()  # how many was not heard
    lowest = any(word.loop == "lowest" and "bottom" not in signs_in((word,)) for word in words)
    if (bottom or number is not None) and not lowest:
        step.loop = number if bottom and number is not None else UNCLEAR
    elif len(loops) == 1:
        loop = loops.pop()
        step.loop = None if loop == "top" else loop  # there are loops above it, so it was not meant
    step.gripped = True


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
