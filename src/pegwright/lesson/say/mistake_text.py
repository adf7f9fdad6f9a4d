"""Slips in words: what goes wrong, what comes of it, how it shows, how it is mended, what to look at."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from pegwright.lesson.say.phrasebook import Phrasebook
from pegwright.loom import HOOK, Effect, Event, Fastened, History, apply_move
from pegwright.pattern import (
    HOLDER_FIELDS,
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Put,
    Slide,
    Transfer,
    Turn,
    Wind,
    is_address,
    named_pegs,
)
from pegwright.rehearsal import Act, Answer, Outcome, Question, Slip, Symptom

_BANDS_NAMED, _ACTS_NAMED, _MOVES_NAMED = 4, 6, 6
_UNDONE_AT_MOST = 24
"""Whoever has more moves to undo than this starts again from a step."""


class MistakeWriter(NamedTuple):
    """Who tells of slips: the words, the working they happen in, the numbers of its moves (by index)."""

    phrasebook: Phrasebook
    history: History
    number: Callable[[int], int]

    def slip(self, outcome: Outcome) -> str:
        """Say what is done in place of what was meant."""
        slip, say = outcome.slip, self.phrasebook.say
        move = self.history.moves[slip.at].move
        wrong = slip.moves[-1] if slip.moves else None
        match slip.kind:
            case "too-shallow":
                return say("slip-too-shallow", n=getattr(wrong, "through", None) or 0)
            case "wrong-peg" | "mirrored-peg" | "wrong-start":
                here, meant = _swapped_pegs(wrong, move)
                return say(
                    f"slip-{_message_kind(slip, move)}", wrong=self.places(here), right=self.places(meant)
                )
            case "wrong-order":
                return say("slip-wrong-order", where=self.places((getattr(move, "source", ""),)))
            case "wrong-colour":
                return say("slip-wrong-colour", letter=str(getattr(wrong, "colour", "")))
            case "miscounted":
                return say("slip-miscounted-few" if len(slip.moves) < 2 else "slip-miscounted-many")
            case "one-loop-caught" | "not-all-caught":
                tool = {Clip: "clip", Knot: "knot"}.get(type(move), "bind")
                if isinstance(move, Bind) and move.catch is not None:
                    tool = "some"
                return say(f"slip-{slip.kind}-{tool}")
            case "end-slips-off":
                kept = getattr(wrong, "at", ())
                return say(
                    "slip-end-slips-off",
                    where=self.places([at for at in getattr(move, "at", ()) if at not in kept]),
                )
            case _:
                return say(f"slip-{_message_kind(slip, move)}")

    def end(self, outcome: Outcome) -> str:
        """Say what comes of it in the end."""
        say, bands = self.phrasebook.say, self.history.final.bands
        match outcome.result:
            case "falls" if len(outcome.falls) + len(outcome.unproved) >= max(2, bands - 2):
                return say("end-all")
            case "falls":
                return say("end-falls", n=len(outcome.falls))
            case "not-proved" if len(outcome.unproved) >= max(2, bands - 2):
                return say("end-unproved-all")
            case "not-proved":
                return say("end-unproved", n=len(outcome.unproved))
            case "weak":
                return say("end-weak")
            case "looks-different" if len(outcome.differs) > _BANDS_NAMED:
                return say("end-looks-many", n=len(outcome.differs))
            case "looks-different":
                return say("end-looks", bands=self.bands(outcome.differs))
            case _:
                return say("end-harmless")

    def sign(self, outcome: Outcome) -> str:
        """Say how it first shows."""
        caught = self._say_missed_loops(outcome)
        if caught is not None:
            return caught
        sign = outcome.first or outcome.close
        if sign is None:
            return self.phrasebook.say("sign-none")
        if sign.how == "refused":
            return self.phrasebook.say("sign-refused", step=self.number(sign.at))
        if sign.how == "loose":
            letter = self.history.colours[sign.band - 1]
            step = self.number(sign.at)
            return self.phrasebook.say("sign-loose", number=sign.band, letter=letter, step=step)
        when = "now" if sign.at < outcome.slip.at + outcome.slip.replaces else "step"
        return self._say_sign(sign, self.phrasebook.say(f"sign-{sign.how}-{when}", step=self.number(sign.at)))

    def _say_missed_loops(self, outcome: Outcome) -> str | None:
        """Say how many loops a clip or cord has missed: one looks there, not at the pegs they lay on."""
        slip = outcome.slip
        meant = self.history.moves[slip.at]
        if not slip.moves or not isinstance(meant.move, Clip | Knot) or slip.about:
            return None
        made = apply_move(self.history.board, self.history.before(slip.at), slip.moves[-1])
        if type(slip.moves[-1]) is not type(meant.move) or not isinstance(made, Effect):
            return None
        wrong, right = (count_caught_loops(events) for events in (made.events, meant.events))
        if wrong >= right:
            return None
        name = "sign-clip" if isinstance(meant.move, Clip) else "sign-cord"
        return self.phrasebook.say(name, when=self.phrasebook.say("sign-glance-now"), n=wrong, right=right)

    def _say_sign(self, sign: Symptom, when: str) -> str:
        say, where = self.phrasebook.say, self.places((sign.holder,))
        wrong, right = len(sign.wrong), len(sign.right)
        if sign.how == "close":
            if wrong == right:
                return say("sign-strands-colour", when=when, where=where)
            if wrong < right:
                return say("sign-strands-few", when=when, where=where)
            return say("sign-strands", when=when, where=where, n=wrong, right=right)
        if wrong == right:
            shown = {"wrong": " ".join(sign.wrong), "right": " ".join(sign.right)}
            return say("sign-colours", when=when, where=where, **shown)
        return say("sign-loops", when=when, where=where, n=wrong, right=right)

    def warning(self, outcome: Outcome) -> str:
        """Warn of it, in one short sentence."""
        move = self.history.moves[outcome.slip.at].move
        return self.phrasebook.say(f"warn-{_message_kind(outcome.slip, move)}")

    def back(self, acts: Sequence[Act]) -> tuple[str, ...]:
        """Say a way back, move by move; a long one is summed up."""
        undo = [act for act in acts if act.do == "undo"]
        redo = [act for act in acts if act.do == "do"]
        if len(undo) > _UNDONE_AT_MOST and redo and redo[0].at <= min(act.at for act in undo):
            return (self.phrasebook.say("back-start-again", n=self.number(redo[0].at)),)
        again = [self.step(act.at, act.move) for act in redo]
        lines = []
        if len(undo) > _ACTS_NAMED:
            last = self.step(undo[-1].at, undo[-1].move)
            lines.append(self.phrasebook.say("back-undo-all", n=len(undo), move=last))
        else:
            lines += [self.undo(act.move) for act in undo]
        if len(again) > _MOVES_NAMED:
            lines.append(self.phrasebook.say("back-do-all", n=len(again), first=again[0], last=again[-1]))
        elif again:
            name = "back-do" if undo else "back-only"
            lines.append(self.phrasebook.say(name, steps=self.phrasebook.both(again)))
        return tuple(lines)

    def step(self, at: int, move: Move) -> str:
        """Name a move by its step, and its pegs and colour, of which it may have many."""
        number = self.number(at)
        if isinstance(move, Turn | Clip | Knot | Extend):
            return self.phrasebook.say("back-step", n=number)
        joint = " → " if isinstance(move, Hook | Slide | Transfer) else "–"
        summary = " ".join(
            part for part in (joint.join(named_pegs(move)), getattr(move, "colour", "")) if part
        )
        return self.phrasebook.say("back-step-at", n=number, move=summary)

    def undo(self, move: Move) -> str:
        """Say how a move that was the last on its loops is undone."""
        say = self.phrasebook.say
        match move:
            case Place():
                return say("back-place", letter=move.colour, where=self.places(move.over))
            case Wind():
                return say("back-wind", where=self.places((move.on,)))
            case Hang():
                return say("back-hang")
            case Turn():
                return say("back-turn")
            case Hook() | Slide() | Transfer():
                name = "back-slide" if isinstance(move, Slide) else "back-hook"
                return say(name, source=self.places((move.source,)), target=self.places((move.target,)))
            case Lift(target=str(peg)):
                there = self.places((move.at,))
                return say("back-lift-on", source=there, target=self.places((peg,)))
            case Lift():
                return say("back-lift", where=self.places((move.at,)))
            case Bind() | Extend():
                return say("back-bind")
            case Put():
                return say("back-put", where=self.places(move.on))
            case Clip():
                return say("back-clip")
            case Knot():
                return say("back-knot")

    def question(self, question: Question) -> str:
        """Ask what a maker can see."""
        facts = {"where": self.places((question.holder,))} if question.holder else {}
        return self.phrasebook.say(f"ask-{question.ask}", **facts)

    def answer(self, question: Question, answer: Answer) -> str:
        """Word an answer: a number, pegs, letters or `none`, loop by loop from the bottom up."""
        none = self.phrasebook.say("answer-none")
        if isinstance(answer, int):
            return str(answer) if answer else self.phrasebook.say("answer-no-loop")
        if answer == "none":
            return none
        parts = answer.split(" ")
        if question.holder and question.ask in ("strand-colours", "leads"):
            pairs = (
                none if part == "none" else self.phrasebook.both([self._short(p) for p in part.split("+")])
                for part in parts
            )
            return "; ".join(pairs)
        if question.holder and question.ask == "strands" and len(parts) > 1:
            return self.phrasebook.say("answer-strands", first=parts[0], rest=self.phrasebook.both(parts[1:]))
        return self.phrasebook.both([self._short(part) for part in parts])

    def _short(self, name: str) -> str:
        """Name a peg or a letter by itself; the hook and the ends of a cord in words."""
        return self.places((name,)) if name in (HOOK, "start", "end") else name

    def bands(self, numbers: Sequence[int]) -> str:
        """Name bands by number and letter; of many the first few."""
        say, colours = self.phrasebook.say, self.history.colours
        named = [
            say("looks-band", number=band, letter=colours[band - 1])
            if band <= len(colours)
            else say("looks-band-more")
            for band in numbers[:_BANDS_NAMED]
        ]
        if len(numbers) > _BANDS_NAMED:
            named.append(say("hold-more", n=len(numbers) - _BANDS_NAMED))
        return self.phrasebook.both(named)

    def places(self, holders: Sequence[str]) -> str:
        """Name pegs, the hook or free ends."""
        say = self.phrasebook.say
        pegs = [holder for holder in holders if is_address(holder)]
        named = [
            say("label-hook") if holder == HOOK else say("end-start" if holder == "start" else "end-plain")
            for holder in holders
            if not is_address(holder)
        ]
        if len(pegs) > 4:
            named.append(say("peg-many", pegs=say("span", first=pegs[0], last=pegs[-1])))
        elif len(pegs) > 1:
            named.append(say("peg-many", pegs=self.phrasebook.both(pegs)))
        elif pegs:
            named.append(say("peg-one", peg=pegs[0]))
        return self.phrasebook.both(list(dict.fromkeys(named)))


def count_caught_loops(events: Sequence[Event]) -> int:
    """Count the loops that clip and cord go through."""
    return sum(len(event.caught) for event in events if isinstance(event, Fastened))


def _message_kind(slip: Slip, move: Move) -> str:
    """Name the kind of a slip, with the kind of move where that calls for other words."""
    match slip.kind, move:
        case "wrong-peg", Lift():
            return "wrong-peg-lift"
        case "step-skipped", Place() | Hang():
            return "step-skipped-place"
        case "step-skipped", Hook() | Slide() | Lift() | Transfer():
            return "step-skipped-hook"
        case "step-skipped", Put():
            return "step-skipped-hook"
        case "step-skipped", Bind():
            return "step-skipped-bind"
        case "step-skipped", Clip() | Knot():
            return "step-skipped-shut"
        case _:
            return slip.kind


def move_label(move: Move) -> str:
    """Name a move by its pegs and colour only: A1–A2 (F), A3 → A2."""
    joint = "–" if isinstance(move, Place | Wind | Put | Knot | Clip) else " → "
    letter = getattr(move, "colour", "")
    pegs = list(named_pegs(move))
    if len(pegs) > 4:
        pegs = [pegs[0], "…", pegs[-1]]
    named = joint.join(pegs) + (f" ({letter})" if letter else "")
    match move:
        case Wind() | Hang():
            return f"{named} ×{move.turns}".strip()
        case Lift():
            return f"↑ {named}"
        case Turn():
            return "↻"
        case Slide():
            return f"{named} +"
        case _:
            return named.strip() or "+"


def _swapped_pegs(wrong: Move | None, meant: Move) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the pegs taken in place of others, and those."""
    for name in HOLDER_FIELDS:
        here, there = getattr(wrong, name, None), getattr(meant, name, None)
        if here is None or here == there:
            continue
        if isinstance(here, tuple) and isinstance(there, tuple):
            pairs = [(a, b) for a, b in zip(here, there, strict=False) if a != b]
            return tuple(a for a, _ in pairs), tuple(b for _, b in pairs)
        return (here,), (str(there),)
    return named_pegs(meant), named_pegs(meant)
