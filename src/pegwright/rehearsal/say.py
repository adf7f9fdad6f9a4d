"""Trouble spots in words, as an experienced teacher would put them. English only."""

from __future__ import annotations

from pegwright.loom import History
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Slide,
    Transfer,
    Turn,
    Wind,
)
from pegwright.rehearsal.consequence import Outcome, Sign
from pegwright.rehearsal.ranking import Spot, Trouble

__all__ = ["say_outcome", "say_spot", "say_trouble"]


def say_trouble(history: History, trouble: Trouble) -> str:
    """Say where a step goes wrong most, and of a step done many times where it is worst."""
    said = say_spot(history, trouble.worst)
    rounds = len(trouble.spots)
    if rounds == 1:
        return said
    steps = sorted(spot.step for spot in trouble.spots)
    return f"{said} The same at {rounds} steps in all, {steps[0]} to {steps[-1]}; this is the worst of them."


def say_spot(history: History, spot: Spot) -> str:
    """Say where a step goes wrong most, what comes of it and how it shows: two or three sentences."""
    first, *others = spot.risks
    said = (
        f"Step {spot.step} ({_step(history.done[spot.at].doing.move)}): {say_outcome(history, first.outcome)}"
    )
    also = next((r.outcome for r in others if r.outcome.slip.kind != first.outcome.slip.kind), None)
    if also is None:
        return said
    return f"{said} Also here: {_slip(history, also)}, and {_end(also)}."


def say_outcome(history: History, outcome: Outcome) -> str:
    """Say a slip, what comes of it, and when it first shows."""
    return f"if {_slip(history, outcome)}, {_end(outcome)}. {_shows(outcome)}"


def _step(move: Move) -> str:
    match move:
        case Place():
            return f"place a band over {' and '.join(move.over)}"
        case Wind():
            return f"wind the cap on {move.on}"
        case Turn():
            return "turn the loom"
        case Hook():
            return f"hook {move.source} to {move.target}"
        case Slide():
            return f"slide the charm on, {move.source} to {move.target}"
        case Lift():
            return f"lift over on {move.at}"
        case Transfer():
            return f"put the loop of {move.source} on {move.target}"
        case Hang():
            return "wind a band on the hook"
        case Bind():
            return f"pull the last band through {move.at}"
        case Extend():
            return f"add {move.bands} bands at the end"
        case Knot() | Clip():
            word = "tie" if isinstance(move, Knot) else "clip"
            where = " and ".join(move.at) if len(move.at) < 4 else f"{len(move.at)} pegs"
            return f"{word} the loops of {where}"


def _slip(history: History, outcome: Outcome) -> str:
    slip = outcome.slip
    move = history.done[slip.at].doing.move
    wrong = slip.moves[-1] if slip.moves else None
    source = getattr(move, "source", getattr(move, "at", ""))
    match slip.kind:
        case "loop-above":
            return f"the second loop on {source} is taken and not the one below it"
        case "loop-below":
            return f"the loop below is taken on {source}"
        case "too-shallow":
            assert isinstance(wrong, Hook | Slide)
            only = _loops(wrong.through or 0)
            return f"the hook goes down through only {only} on {source} and not through all above"
        case "outside":
            return f"the loop on {source} is pulled up outside the loops above it"
        case "wrong-peg" | "mirrored-peg":
            side = "the peg on the other side" if slip.kind == "mirrored-peg" else "a neighbouring peg"
            return f"it goes to {side}, {_pegs(wrong, move)}"
        case "wrong-start":
            assert isinstance(wrong, Hook | Slide)
            return f"the loop is taken from {wrong.source}, next to {source}"
        case "step-skipped":
            return "the step is left out"
        case "step-doubled":
            return "the step is done twice"
        case "steps-swapped":
            return f"the next step ({_step(slip.moves[0])}) is done first"
        case "wrong-order":
            return f"the loops on {source} are worked from the bottom up and not from the top down"
        case "wrong-colour":
            return f"a band of colour {getattr(wrong, 'colour', '')} is taken"
        case "cap-forgotten":
            return "the cap is forgotten"
        case "cap-wound-once":
            return "the band is wound once only"
        case "twist-forgotten":
            return "the band is put on without its half-twist"
        case "one-of-several":
            return "one loop too few is taken"
        case "charm-not-slid":
            return "what hangs on the hook is not slid on"
        case "miscounted":
            return "one band too few is added" if len(slip.moves) < 2 else "one band too many is added"
        case "not-all-caught":
            return "one loop is missed"
        case "one-loop-caught":
            return f"the {'cord' if isinstance(move, Knot) else 'clip'} goes through one loop only"
        case "end-slips-off":
            missed = [at for at in getattr(move, "at", ()) if at not in getattr(wrong, "at", ())]
            return f"the loops of {' and '.join(missed)} slip off before they are caught"
        case _:
            return "the loom is left as it stands and everything after is worked at the opposite pegs"


def _end(outcome: Outcome) -> str:
    match outcome.result:
        case "falls":
            end = f"{_bands(len(outcome.falls), 'falls', 'fall')} off in the end"
        case "not-proved":
            end = f"{_bands(len(outcome.unproved))} can no longer be proved to hold"
        case "weak":
            which = "it" if len(outcome.weak) == 1 else "one of them"
            end = f"the piece hangs on {_bands(len(outcome.weak))}: if {which} snaps, all comes apart"
        case "looks-different":
            end = f"{_bands(len(outcome.differs), 'lies', 'lie')} otherwise; all hold"
        case "harmless":
            end = "nothing comes of it"
    return end if outcome.stuck is None else f"{end}, unless the maker asks when a later move cannot be made"


def _shows(outcome: Outcome) -> str:
    first, close = outcome.first, outcome.close
    if first is not None and close is not None:
        return f"{_sign(outcome, first)} Who looks closely sees it {_when(outcome, close)} on {close.holder}."
    sign = first or close
    return "Nothing shows on the pegs until the piece comes off." if sign is None else _sign(outcome, sign)


def _sign(outcome: Outcome, sign: Sign) -> str:
    when = _when(outcome, sign)
    if sign.how == "refused":
        return f"It is noticed {when}, which cannot be done."
    if sign.how == "close":
        many = "no strand comes" if not sign.wrong else f"{len(sign.wrong)} strands come"
        many = "one strand comes" if len(sign.wrong) == 1 else many
        strands = f"{many} up inside a loop on {sign.holder}, not {len(sign.right) or 'none'}"
        if len(sign.wrong) == len(sign.right):
            strands = f"strands of another colour come up inside a loop on {sign.holder}"
        return f"The pegs look right; only a close look shows it {when}: {strands}."
    here = "the free end" if "." in sign.holder else "the hook" if sign.holder == "hook" else sign.holder
    if len(sign.wrong) != len(sign.right):
        return f"It shows {when}: {_loops(len(sign.wrong))} on {here} and not {len(sign.right)}."
    return f"It shows {when}: {' '.join(sign.wrong)} on {here}, lowest first, and not {' '.join(sign.right)}."


def _when(outcome: Outcome, sign: Sign) -> str:
    same = sign.at < outcome.slip.at + outcome.slip.replaces
    return "at once" if same else f"at step {sign.step}"


def _pegs(wrong: Move | None, move: Move) -> str:
    for name in ("over", "target", "on", "at"):
        given, meant = getattr(wrong, name, None), getattr(move, name, None)
        if given is None or given == meant:
            continue
        if isinstance(given, tuple) and isinstance(meant, tuple):
            pairs = [f"{a} for {b}" for a, b in zip(given, meant, strict=False) if a != b]
            return ", ".join(pairs)
        return f"{given} for {meant}"
    return "another one"


def _bands(count: int, one: str = "", many: str = "") -> str:
    return f"one band {one}".strip() if count == 1 else f"{count} bands {many}".strip()


def _loops(count: int) -> str:
    return "one loop" if count == 1 else "no loop" if not count else f"{count} loops"
