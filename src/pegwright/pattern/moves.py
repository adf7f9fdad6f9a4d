"""What a maker does, one noun a move, as it stands in the document.

Loops are counted from 1: `loop` 1 is the lowest on its peg, −1 the topmost. `through` is the number of
loops above it that the loop is pulled through, from the top; absent means all of them.
"""

from __future__ import annotations

from typing import Annotated

import msgspec

# `$` alone would let a line end through after it; JSON Schema's `$` would not.
ADDRESS = r"^[A-Z]{1,2}[1-9][0-9]{0,4}$(?!\n)"
END = r"^[a-z][a-z0-9-]{0,30}$(?!\n)"
HOLDER = r"^([A-Z]{1,2}[1-9][0-9]{0,4}|[a-z][a-z0-9-]{0,30})$(?!\n)"
LETTER = r"^[A-Za-z][A-Za-z0-9]{0,5}$(?!\n)"
MIRROR = r"^(rows|pegs)$(?!\n)"
PegName = Annotated[str, msgspec.Meta(pattern=ADDRESS)]
EndName = Annotated[str, msgspec.Meta(pattern=END)]
HolderName = Annotated[str, msgspec.Meta(pattern=HOLDER)]
Letter = Annotated[str, msgspec.Meta(pattern=LETTER)]
# Neither blank nor control character, nor a mark that only steers or joins the text, nor a filler.
VISIBLE = (
    r"[^\s\u0000-\u001f\u007f-\u009f\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180f"
    r"\u200b-\u200f\u2028-\u202e\u2060-\u206f\u2800\u3164\ufe00-\ufe0f\ufeff\uffa0\ufff0-\ufffb]"
)
Name = Annotated[str, msgspec.Meta(min_length=1, max_length=60, pattern=VISIBLE)]
Text = Annotated[str, msgspec.Meta(max_length=4000)]
Turns = Annotated[int, msgspec.Meta(ge=1, le=8)]
Twists = Annotated[int, msgspec.Meta(ge=-8, le=8)]
LoopNumber = Annotated[int, msgspec.Meta(ge=-10_000, le=10_000)]
Few = Annotated[int, msgspec.Meta(ge=1, le=100)]
Strands = Annotated[int, msgspec.Meta(ge=1, le=6)]


class StepFields(
    msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True, forbid_unknown_fields=True, tag_field="do"
):
    """Any step may carry a note, a warning, and a hint for its picture.

    `taught_s` is how many seconds the teacher takes to show it the first time, as heard in a recording.
    """

    note: Text = ""
    warning: Text = ""
    picture: Text = ""
    taught_s: Annotated[float, msgspec.Meta(gt=0, le=3600)] | None = None


class Place(StepFields, frozen=True, kw_only=True, tag="place"):
    """Stretch a band over two or more pegs, on top of the stacks.

    `turns` winds it round each peg so often (absent: once each); `twists` gives the half-twists between one
    peg and the next (absent: none). On the way from peg to peg the strand on the left crosses over the other;
    of half-twists counted below nothing, the strand on the right.
    """

    colour: Letter
    over: Annotated[tuple[PegName, ...], msgspec.Meta(min_length=2, max_length=40)]
    turns: tuple[Turns, ...] = ()
    twists: tuple[Twists, ...] = ()


class Wind(StepFields, frozen=True, kw_only=True, tag="wind"):
    """Wind a band round one peg: a cap band."""

    colour: Letter
    on: PegName
    turns: Annotated[int, msgspec.Meta(ge=1, le=8)] = 3


class Turn(StepFields, frozen=True, kw_only=True, tag="turn"):
    """Turn the loom round, end for end."""


class Hook(StepFields, frozen=True, kw_only=True, tag="hook", rename={"source": "from", "target": "to"}):
    """Reach down the channel inside the loops above, take a loop, pull it up and put it on another peg.

    `together` takes that many loops at once, the named one being the lowest.
    """

    source: PegName
    target: PegName
    loop: LoopNumber = 1
    through: Annotated[int, msgspec.Meta(ge=0, le=10_000)] | None = None
    together: Few = 1


class Lift(StepFields, frozen=True, kw_only=True, tag="lift", rename={"target": "to"}):
    """Carry a loop up over the loops above it and off the peg, to drop there or to go on another peg."""

    at: PegName
    loop: LoopNumber = 1
    together: Few = 1
    target: PegName | None = None


class Transfer(
    StepFields, frozen=True, kw_only=True, tag="transfer", rename={"source": "from", "target": "to"}
):
    """Put the topmost loops of a peg on another peg, as they lie, without turning them over."""

    source: PegName
    target: PegName
    together: Few = 1


class Hang(StepFields, frozen=True, kw_only=True, tag="hang"):
    """Wind a band on the hook's shaft."""

    colour: Letter
    turns: Annotated[int, msgspec.Meta(ge=1, le=8)] = 3


class Slide(StepFields, frozen=True, kw_only=True, tag="slide", rename={"source": "from", "target": "to"}):
    """Take a loop with the hook, slide all that hangs on the shaft on to it, and put it on a peg.

    `together` takes that many loops at once, the named one being the lowest: what hangs goes on to them all.
    """

    source: PegName
    target: PegName
    loop: LoopNumber = 1
    through: Annotated[int, msgspec.Meta(ge=0, le=10_000)] | None = None
    together: Few = 1


class Bind(StepFields, frozen=True, kw_only=True, tag="bind"):
    """Pull a band through all loops of a peg; both its ends are then the free end of that name.

    `catch` takes only so many loops, from the top; the others stay on the peg. `together` pulls that many
    bands through as one.
    """

    colour: Letter
    at: PegName
    end: EndName = "end"
    catch: Few | None = None
    together: Strands = 1


class Put(StepFields, frozen=True, kw_only=True, tag="put"):
    """Slide the loops of a free end on to a peg, or share them evenly among several, flat as they lie."""

    on: Annotated[tuple[PegName, ...], msgspec.Meta(min_length=1, max_length=10)]
    end: EndName = "end"


class Extend(StepFields, frozen=True, kw_only=True, tag="extend"):
    """Add a plain chain at a free end, each band pulled through the loops of the one before.

    `together` pulls so many bands through as one, link by link; the last link takes those that are left of
    the `bands`.
    """

    colour: Letter
    bands: Annotated[int, msgspec.Meta(ge=1, le=500)]
    end: EndName = "end"
    together: Strands = 1


class Knot(StepFields, frozen=True, kw_only=True, tag="knot"):
    """Run a cord through the loops of the holders and tie it off.

    `catch` takes only so many loops of each holder, from the top; absent means all.
    """

    at: Annotated[tuple[HolderName, ...], msgspec.Meta(min_length=1, max_length=200)]
    catch: Few | None = None


class Clip(StepFields, frozen=True, kw_only=True, tag="clip"):
    """Clip the loops of one or more holders together: pegs, free ends, and `start`.

    `start` is the first band of a piece that was made by lifting over, once its first loop is off the peg.
    """

    at: Annotated[tuple[HolderName, ...], msgspec.Meta(min_length=1, max_length=200)]
    catch: Few | None = None


Move = Place | Wind | Turn | Hook | Lift | Transfer | Hang | Slide | Bind | Put | Extend | Knot | Clip

ColoursInTurn = Annotated[tuple[Letter, ...], msgspec.Meta(min_length=1, max_length=100)]
Times = Annotated[int, msgspec.Meta(ge=0, le=10_000_000_000)] | Name


class Repeat(StepFields, frozen=True, kw_only=True, tag="repeat"):
    """Do the steps so many times, moving every address on by `rows` and `pegs` each time.

    `colours` are letters that stand, within the steps, for another colour in each round: the list's colours
    in turn, and again from its first.
    """

    times: Times
    steps: tuple[PatternStep, ...]
    rows: Annotated[int, msgspec.Meta(ge=-700, le=700)] = 0
    pegs: Annotated[int, msgspec.Meta(ge=-10_000, le=10_000)] = 0
    colours: dict[Letter, ColoursInTurn] = {}


class Use(StepFields, frozen=True, kw_only=True, tag="motif"):
    """Work a motif here: moved, mirrored, with its colours and counts filled in.

    `mirror` swaps the motif's own rows left for right (`rows`) or its pegs near for far (`pegs`).
    """

    name: Name
    rows: Annotated[int, msgspec.Meta(ge=-700, le=700)] = 0
    pegs: Annotated[int, msgspec.Meta(ge=-10_000, le=10_000)] = 0
    mirror: tuple[Annotated[str, msgspec.Meta(pattern=MIRROR)], ...] = ()
    colours: dict[Letter, Letter] = {}
    counts: dict[Name, Annotated[int, msgspec.Meta(ge=0, le=10_000_000_000)]] = {}


PatternStep = (
    Place
    | Wind
    | Turn
    | Hook
    | Lift
    | Transfer
    | Hang
    | Slide
    | Bind
    | Put
    | Extend
    | Knot
    | Clip
    | Repeat
    | Use
)
