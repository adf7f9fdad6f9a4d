"""The lesson: everything that will be said and shown, decided before anything is painted.

Every text is final: words chosen, numbers counted, user text made harmless. Painters lay it out.
"""

from __future__ import annotations

from typing import Literal

import msgspec

from pegwright.lesson.picture import Picture
from pegwright.lesson.portrait import Portrait
from pegwright.lesson.words import Units, Words

PhaseName = Literal["prepare", "place", "turn", "work", "finish", "extend", "close", "wear"]
Hand = Literal["right", "left"]


class _Part(msgspec.Struct, frozen=True, kw_only=True):
    """Parts of a lesson are values."""


class Swatch(_Part, frozen=True, kw_only=True):
    """An entry of the key: letter, name, tint (#rrggbb) and the number of its pattern."""

    letter: str
    name: str
    tint: str
    hatch: int


class SupplyLine(_Part, frozen=True, kw_only=True):
    """A line of the supplies table: what, how many, what for, and its weight in words or nothing."""

    letter: str
    name: str
    count: int
    purpose: str
    weight: str = ""
    tint: str = ""
    hatch: int = 0


class Supplied(_Part, frozen=True, kw_only=True):
    """The supplies: band lines, their total, and the other things, in words."""

    heading: str
    columns: tuple[str, ...]
    bands: tuple[SupplyLine, ...]
    total: str
    total_count: int
    things: tuple[str, ...]


class Check(_Part, frozen=True, kw_only=True):
    """A stop to look: what must be seen now, and what to do if it is not so."""

    heading: str
    lines: tuple[str, ...]
    cure: str


class Trouble(_Part, frozen=True, kw_only=True):
    """What goes wrong at a step: the slip, what comes of it, its first sign, a spoken warning, the way back.

    `wrong` and `right` are to be shown side by side; `film` says what to show. `kind` names the slip.
    """

    kind: str
    slip: str
    end: str
    sign: str
    warning: str
    film: str
    back: tuple[str, ...] = ()
    wrong: Picture | None = None
    right: Picture | None = None


class Guess(_Part, frozen=True, kw_only=True):
    """Slips that fit all answers, where and what each was, likeliest first, and the way back from here."""

    slips: tuple[str, ...]
    back: tuple[str, ...]


class Found(_Part, frozen=True, kw_only=True):
    """Where the questions end: what is said there, and the slips that are left, the likeliest first."""

    text: str
    guesses: tuple[Guess, ...] = ()


class Reply(_Part, frozen=True, kw_only=True):
    """An answer to choose, and what comes then."""

    text: str
    then: Fork | Found


class Fork(_Part, frozen=True, kw_only=True):
    """A question and its answers."""

    ask: str
    replies: tuple[Reply, ...]


class Step(_Part, frozen=True, kw_only=True):
    """One action: its number, what to do, and its pictures.

    `ticks` is a row of short entries to tick off, where the step counts rounds. `first` and `last` are the
    moves (from 1, in the order of the history) that it stands for; 0 where it stands for none. `rounds` says
    how often what it teaches is done. `learner_s` and `teacher_s` are the seconds that a learner and the
    teacher need for all of it. `rest` says that the work can be put down after it: nothing is on
    the hook; `off`, that the piece has been lifted off the loom before it.
    `troubles` and `look` come from a rehearsal: what goes wrong here, and a check in or after the step;
    `wrong` is what to ask a maker to whom something looks wrong now.
    """

    number: int
    words: str
    detail: tuple[str, ...] = ()
    note: str = ""
    warning: str = ""
    pictures: tuple[Picture, ...] = ()
    closeup: Picture | None = None
    ticks: tuple[str, ...] = ()
    wide: bool = False
    first: int = 0
    last: int = 0
    rounds: int = 1
    learner_s: float = 0.0
    teacher_s: float = 0.0
    rest: bool = True
    off: bool = False
    troubles: tuple[Trouble, ...] = ()
    look: Check | None = None
    wrong: Fork | None = None


class Phase(_Part, frozen=True, kw_only=True):
    """Steps that belong together."""

    name: PhaseName
    heading: str
    intro: str = ""
    steps: tuple[Step, ...] = ()
    check: Check | None = None


class Hold(_Part, frozen=True, kw_only=True):
    """What the proof says, in words."""

    heading: str
    held: bool
    lines: tuple[str, ...]


class Block(_Part, frozen=True, kw_only=True):
    """A heading with lines under it."""

    heading: str
    lines: tuple[str, ...]


class Size(_Part, frozen=True, kw_only=True):
    """The piece for one wrist: in a sentence, and in numbers; `counts` are bands, colour by colour.

    `own` says that it is made as shown in the lesson.
    """

    wrist: str
    said: str
    repeats: int
    extension: int
    counts: tuple[int, ...]
    bands: int
    own: bool = False

    def cells(self, table: Sizes) -> tuple[str, ...]:
        """Return the row under the columns of its table."""
        made = [self.repeats] if table.repeats else []
        made += [self.extension] if table.extension else []
        return (self.wrist, *map(str, (*made, *self.counts, self.bands)))


class Sizes(_Part, frozen=True, kw_only=True):
    """How the piece is made for each wrist: `now` says how it is made here.

    `repeats` and `extension` say which of the two changes and has a column, between the wrist and the bands
    of each colour; the last column is that of all bands.
    """

    heading: str
    now: str
    columns: tuple[str, ...]
    rows: tuple[Size, ...]
    repeats: bool
    extension: bool

    @property
    def lines(self) -> tuple[str, ...]:
        """The table in sentences."""
        return (self.now, *(row.said for row in self.rows))


class Finished(_Part, frozen=True, kw_only=True):
    """The piece as it comes off the loom: its portrait and what is said of it.

    `size` and `wrists` are sentences; the second is empty where no wrist was asked about. Without a portrait
    `size` says why there is none. `shown_mm` is how wide the portrait is printed, `caption` how that compares
    with the piece, `text` what it shows.
    """

    heading: str
    size: str
    wrists: str = ""
    portrait: Portrait | None = None
    shown_mm: float = 0.0
    caption: str = ""
    text: str = ""

    @property
    def said(self) -> tuple[str, ...]:
        """What is said of the piece, in sentences."""
        return tuple(text for text in (self.size, self.wrists) if text)


class Lesson(_Part, frozen=True, kw_only=True):
    """A piece taught from the first peg to the wrist.

    `labels` holds the words a painter needs for furniture (page numbers, the ruler bar), by name. `phrases`
    are the teacher's own words for ours. `mark` is the print mark: the same for the same pattern.
    """

    language: str
    hand: Hand
    title: str
    designer: str
    byline: str
    edition: str
    level: Block
    notes: str
    supplies: Supplied
    tools: Block
    key_heading: str
    key: tuple[Swatch, ...]
    hold: Hold
    finished: Finished
    phases: tuple[Phase, ...]
    cautions: Block
    colophon: tuple[str, ...]
    labels: dict[str, str]
    glossary: Block
    sizes: Sizes | None = None
    mark: str = ""
    licence: str = ""
    units: Units = "metric"
    phrases: dict[str, str] = {}

    @property
    def words(self) -> Words:
        """The words the lesson is told in."""
        return Words(self.language, self.phrases, self.units)

    @property
    def steps(self) -> tuple[Step, ...]:
        """All numbered steps in order."""
        return tuple(step for phase in self.phases for step in phase.steps)
